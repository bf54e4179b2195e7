package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned.Hand;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** An end is cut where the cutter pushes the work against the moving jaw. */
public final class ForceToMovingJaw extends SimpleRule implements EachSetup {
  public ForceToMovingJaw() {
    super("force-to-moving-jaw", Severity.INFO);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null) {
      return;
    }
    for (StepRun step : setup.steps()) {
      CutRun cut = step.cut();
      if (cut == null || cut.mode() != CutRun.Mode.SIDE) {
        continue;
      }
      // A clockwise spindle pushes the operator-right end away from the operator, whatever the
      // travel.
      boolean right = cut.normal() == Direction.OPERATOR_RIGHT;
      boolean away = right == (cut.cutter().hand() == Hand.RIGHT);
      boolean jawIsAway = setup.grip().vise().fixedJaw() == Direction.OPERATOR_BACK;
      if (away != jawIsAway) {
        out.accept(
            finding(
                setup.grip().hold().overhang() == null
                    ? setup.grip().hold().origin()
                    : setup.grip().hold().overhang().origin(),
                "at this end the cutter pushes the work against the moving jaw; turn the work round"
                    + " so that the end stands out at "
                    + (right ? "operator-left" : "operator-right"),
                new Related(cut.cut().origin(), "the cut is here")));
        return;
      }
    }
  }
}
