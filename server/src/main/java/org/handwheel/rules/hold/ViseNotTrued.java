package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bearing;
import org.handwheel.work.CutRun;
import org.handwheel.work.Obstacle;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** An end or a wall is cut by the side of the cutter in a vise that was never set true. */
public final class ViseNotTrued extends SimpleRule implements EachSetup {
  public ViseNotTrued() {
    super("vise-not-trued", Severity.WARNING);
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
      CutRun cut = step.cut();
      if (cut != null
          && cut.mode() != CutRun.Mode.END
          && bearing != null
          && bearing.plan() != null
          && bearing.plan().kind() == Obstacle.Kind.NOT_TRUED) {
        out.accept(
            finding(
                cut.cut().origin(),
                "this face gets its direction from the table, and `"
                    + setup.grip().vise().name()
                    + "` was not set true to it; true it with an indicator first: `true "
                    + setup.grip().vise().name()
                    + " with INSTRUMENT`",
                new Related(setup.grip().hold().origin(), "the work is held here")));
        return;
      }
    }
  }
}
