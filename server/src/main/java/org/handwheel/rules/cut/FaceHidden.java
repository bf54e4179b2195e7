package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** A cut on a face that the cutter cannot reach as the work is held. */
public final class FaceHidden extends SimpleRule implements EachSetup {
  public FaceHidden() {
    super("face-hidden", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    Orientation orientation = setup.orientation();
    if (orientation == null) {
      return;
    }
    for (StepRun step : setup.steps()) {
      if (step.step() instanceof Step.Cut cut
          && orientation.directionOf(cut.face()) == Direction.DOWN) {
        out.accept(
            finding(
                cut.faceOrigin(),
                "the " + cut.face().word() + " is underneath here; the cutter cannot reach it",
                new Related(up(setup, cut), "the work lies this way")));
      }
    }
  }

  private static Origin up(SetupRun setup, Step.Cut cut) {
    Hold hold = setup.setup().hold();
    return hold == null || hold.up() == null ? cut.origin() : hold.up().origin();
  }
}
