package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bearing;
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
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null) {
      return;
    }
    for (StepRun step : setup.steps()) {
      Bearing bearing = step.bearing();
      if (bearing == null || step.cut() == null) {
        continue;
      }
      Obstacle jaw = bearing.jaw();
      boolean seatRules =
          bearing.lean() == Bearing.Ruler.SEAT || bearing.lean() == Bearing.Ruler.BOTH;
      if (jaw != null && jaw.kind() == Obstacle.Kind.NO_BAR && !seatRules) {
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
}
