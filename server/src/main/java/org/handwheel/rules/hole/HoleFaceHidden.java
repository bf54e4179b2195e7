package org.handwheel.rules.hole;

import java.util.HashSet;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleRun;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleRun.Side;

/** A hole in a face that does not look up, so that the spindle cannot get at it. */
public final class HoleFaceHidden extends SimpleRule {
  public HoleFaceHidden() {
    super("hole-face-hidden", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<String> reported = new HashSet<>();
    HoleLines.forEach(checkup, (setup, step) -> check(setup, step, reported, out));
  }

  private void check(SetupRun setup, StepRun step, Set<String> reported, Consumer<Finding> out) {
    HoleRun made = step.holes();
    Orientation lies = setup.orientation();
    if (made == null || lies == null) {
      return;
    }
    HoleVerb verb = made.cut().verb();
    made.results()
        .filter(result -> isHidden(verb, result))
        .filter(result -> reported.add(setup.setup().words() + " " + result.hole().name()))
        .findFirst()
        .ifPresent(
            result ->
                out.accept(
                    finding(
                        step.step().origin(),
                        "`"
                            + result.hole().name()
                            + "` is in the "
                            + result.hole().spec().face().word()
                            + ", but here the "
                            + lies.up().word()
                            + " looks up",
                        new Related(setup.setup().header(), "it lies so in this setup"))));
  }

  /** Whether the work lies so that a hole to be cut here is out of the spindle's reach. */
  public static boolean isAnyHidden(SetupRun setup) {
    return setup.steps().stream()
        .map(StepRun::holes)
        .filter(Objects::nonNull)
        .anyMatch(made -> made.results().anyMatch(result -> isHidden(made.cut().verb(), result)));
  }

  /** From the other side only what goes right through, or begins such a hole, is the same. */
  private static boolean isHidden(HoleVerb verb, Result result) {
    boolean sameFromBelow =
        result.hole().spec().through()
            && verb != HoleVerb.COUNTERBORE
            && verb != HoleVerb.COUNTERSINK;
    return result.side() == Side.NONE || (result.side() == Side.OPPOSITE && !sameFromBelow);
  }
}
