package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.rules.Checked;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;

/**
 * Openings made without taking the work out of the vise after the last face was cut: what is not
 * moved cannot be put back wrongly (common practice, no source).
 */
final class Continued {
  private final Task task;
  private final OpeningLines lines;

  Continued(Task task) {
    this.task = task;
    this.lines = new OpeningLines(task);
  }

  /**
   * The last setup with the openings of a face at its end.
   *
   * @param checked the plan with that setup at its end
   * @param last the same setup as text
   * @return nothing if the face does not look up, the finder does not get to the edges, or a tool
   *     that goes through would meet what the work sits on
   */
  Optional<SetupDraft> with(Checked checked, SetupDraft last, Face face, List<Opening> openings) {
    Optional<Owned.Finder> finder = finder(task);
    if (finder.isEmpty() || checked.run() == null || checked.run().setups().isEmpty()) {
      return Optional.empty();
    }
    SetupRun run = checked.run().setups().get(checked.run().setups().size() - 1);
    Orientation orientation = run.orientation();
    Hold hold = run.setup().hold();
    if (orientation == null || hold == null || !looksUp(orientation, face, openings)) {
      return Optional.empty();
    }
    if (!isReached(run, hold, finder.get(), Opening.beside(openings))
        || !isClear(hold, openings, run.after())) {
      return Optional.empty();
    }
    List<String> all = new ArrayList<>(last.lines());
    last.lines().stream()
        .filter(line -> line.startsWith("lock "))
        .reduce((one, other) -> other)
        .ifPresent(line -> all.add("un" + line));
    Face up = orientation.up();
    String cutter = lines.add(up, openings, orientation, finder.get(), last.cutter(), all);
    List<String> why = new ArrayList<>(last.why());
    String what = OpeningLines.what(openings);
    why.add("The work stays where it is for the " + OpeningLines.lower(what) + ".");
    return Optional.of(
        new SetupDraft(
            last.way(),
            last.title() + "; " + OpeningLines.lower(what),
            Words.filled(why),
            last.beforeHold(),
            all,
            last.face(),
            cutter,
            last.trued(),
            last.cost()));
  }

  /** The thinnest of the shop's edge finders: it leaves the most room beside it. */
  static Optional<Owned.Finder> finder(Task task) {
    return task.shop().all(Owned.Finder.class).stream()
        .min(Comparator.comparing(Owned.Finder::dia).thenComparing(Owned.Finder::name));
  }

  /** What goes through and looks the same at both ends may be made from either. */
  private static boolean looksUp(Orientation orientation, Face face, List<Opening> openings) {
    return orientation.up() == face
        || (orientation.up() == face.opposite()
            && openings.stream().allMatch(Opening::isSameFromBelow));
  }

  private boolean isReached(SetupRun run, Hold hold, Owned.Finder finder, Length cutterBeside) {
    Length stands =
        Length.max(
            task.numbers().usual("0.8", "0.030"),
            cutterBeside.plus(task.limits().length(Limit.JAW_CLEARANCE)));
    boolean above = run.gripped().map(grip -> isAbove(grip, run.after(), stands)).orElse(false);
    boolean beside =
        hold.overhang() != null && !hold.overhang().value().length().isLessThan(finder.dia());
    return above || (beside && cutterBeside.isZero());
  }

  private static boolean isAbove(Grip grip, Workpiece after, Length least) {
    SizeState height = after.size(grip.orientation().up().dimension());
    return height != null
        && !grip.seat().plus(height.range().low()).minus(grip.vise().jawDepth()).isLessThan(least);
  }

  private boolean isClear(Hold hold, List<Opening> openings, Workpiece work) {
    boolean through = openings.stream().anyMatch(one -> one.below().isPositive());
    if (!through) {
      return true;
    }
    if (hold.fixed() == null
        || hold.support() == null
        || !(hold.support().value() instanceof Hold.Support.Pair pair)) {
      return false;
    }
    Face fixed = hold.fixed().value();
    return openings.stream()
        .allMatch(
            one ->
                !one.below().isMoreThan(pair.parallels().height())
                    && one.isClearOf(pair.parallels().thickness(), fixed, work, task.numbers()));
  }
}
