package org.handwheel.rules.hole;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.HoleRun.Side;
import org.handwheel.work.hole.HoleState;

/** A hole of the drawing that the plan does not make, or not to the end. */
public final class HoleNotMade extends SimpleRule {
  public HoleNotMade() {
    super("hole-not-made", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Optional<Origin> last =
        checkup
            .run()
            .steps()
            .filter(step -> step.holes() != null)
            .map(step -> step.step().origin())
            .reduce((first, second) -> second);
    // A plan that makes no holes at all has not come to them yet, unless it inspects the part.
    Related end =
        last.map(line -> new Related(line, "the last holes are made here"))
            .or(
                () ->
                    checkup
                        .inspected()
                        .map(check -> new Related(check, "the finished part is inspected here")))
            .orElse(null);
    if (end == null || !checkup.isWhole()) {
      return;
    }
    Set<Origin> reported = new HashSet<>();
    Set<String> hidden = hidden(checkup);
    for (DrawnHole hole : checkup.drawnHoles()) {
      HoleState state = checkup.run().end().holes().getOrDefault(hole.name(), HoleState.UNTOUCHED);
      String missing = missing(checkup, hole, state);
      if (!missing.isEmpty() && !hidden.contains(hole.name()) && reported.add(hole.origin())) {
        out.accept(
            finding(
                hole.origin(),
                "`" + hole.name() + "` " + missing,
                state.boredBy() == null
                    ? end
                    : new Related(state.boredBy(), "it is drilled here")));
      }
    }
  }

  /** Holes that a line means to make from a side where it cannot: that is reported there. */
  private static Set<String> hidden(Checkup checkup) {
    return checkup
        .run()
        .steps()
        .flatMap(step -> step.holes() == null ? Stream.empty() : step.holes().results())
        .filter(result -> result.side() == Side.NONE)
        .map(result -> result.hole().name())
        .collect(Collectors.toSet());
  }

  private static boolean isCutUndrilled(HoleState state) {
    return state.tappedBy() != null || state.counterbore() != null || state.countersink() != null;
  }

  private static String missing(Checkup checkup, DrawnHole hole, HoleState state) {
    if (state.bore() == null && isCutUndrilled(state)) {
      // What came before its time is reported there.
      return "";
    }
    if (state.bore() == null) {
      return state.spotted() ? "is spotted, but never drilled" : "is never drilled";
    }
    if (hole.spec().thread() != null) {
      if (state.tappedBy() == null) {
        return "is never tapped " + hole.spec().thread();
      }
    } else {
      LengthRange limits = HoleLines.limits(hole.spec(), checkup);
      if (limits != null && state.bore().isLessThan(limits.low())) {
        return "is only brought to " + state.bore() + ", but is to be at least " + limits.low();
      }
    }
    if (hole.spec().through() && !state.through() && state.depth() != null) {
      return "is only " + state.depth() + " deep, but is to go through";
    }
    // How deep a tapped hole is has a rule of its own.
    Length deep = hole.spec().thread() == null ? hole.spec().depth() : null;
    Length slack = checkup.limits().length(Limit.UNTOLERANCED);
    if (deep != null
        && !state.through()
        && state.depth() != null
        && state.depth().plus(slack).isLessThan(deep)) {
      return "is only " + state.depth() + " deep, but is to be " + deep;
    }
    if (hole.spec().counterboreDia() != null && state.counterbore() == null) {
      return "has no counterbore yet";
    }
    if (hole.spec().spotface() != null && state.counterbore() == null) {
      return "is never spotfaced; `counterbore` does that, too";
    }
    return hole.spec().countersink() != null && state.countersink() == null
        ? "is never countersunk"
        : "";
  }
}
