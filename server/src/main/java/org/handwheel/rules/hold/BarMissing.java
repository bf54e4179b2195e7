package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bearing;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.Obstacle;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** No bar at the moving jaw although the face there is not parallel to the fixed one. */
public final class BarMissing extends SimpleRule {
  public BarMissing() {
    super("bar-missing", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(checkup, setup, out));
  }

  private void check(Checkup checkup, SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null) {
      return;
    }
    for (StepRun step : setup.steps()) {
      Bearing bearing = step.bearing();
      if (bearing == null || step.cut() == null) {
        continue;
      }
      Obstacle jaw = bearing.jaw();
      boolean flat = bearing.lean() == Bearing.Ruler.SEAT && Holding.baseRules(setup.grip());
      if (jaw != null
          && isHere(setup.grip(), jaw)
          && !flat
          && !isWantedParallel(checkup, setup, setup.grip())) {
        out.accept(
            finding(
                setup.grip().hold().origin(),
                jaw.why()
                    + "; the jaw can lay the work against itself instead of the fixed jaw: put a"
                    + " round bar between"));
      }
      return;
    }
  }

  /** Whether the bar misses in this setup, and not in the one that made a face of this one. */
  private static boolean isHere(Grip grip, Obstacle jaw) {
    return jaw.kind() == Obstacle.Kind.NO_BAR && jaw.origin().equals(grip.hold().origin());
  }

  /**
   * Whether the drawing wants the faces at the two jaws parallel and the plan never makes them so:
   * then that is the mistake, and it is reported by its own rule.
   */
  private static boolean isWantedParallel(Checkup checkup, SetupRun setup, Grip grip) {
    Part part = checkup.plan().part();
    if (part == null
        || !setup.before().face(grip.movingFace()).isMachined()
        || checkup.run().end().relation(grip.fixedFace(), grip.movingFace()) != null) {
      return false;
    }
    return part.callouts().stream()
        .anyMatch(
            callout ->
                callout instanceof Callout.SquareAll
                    || (callout instanceof Callout.Parallel parallel
                        && parallel.face().dimension() == grip.fixedFace().dimension()));
  }
}
