package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bearing;
import org.handwheel.work.Obstacle;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** A cut that relies on the work sitting on its parallels, and nothing proves that it does. */
public final class SeatNotProved extends SimpleRule implements EachSetup {
  public SeatNotProved() {
    super("seat-not-proved", Severity.WARNING);
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
      if (bearing == null || step.cut() == null || bearing.seat() == null) {
        continue;
      }
      if (bearing.seat().kind() == Obstacle.Kind.SEAT_NOT_PROVED) {
        Face under = setup.grip().underFace();
        boolean pair = setup.grip().parallelCount() == 2;
        out.accept(
            finding(
                setup.grip().hold().support() == null
                    ? setup.grip().hold().origin()
                    : setup.grip().hold().support().origin(),
                "the "
                    + under.word()
                    + " is clean and should seat, but nothing proves it; tap the work down"
                    + (pair
                        ? ", try that neither parallel moves, and say `seat tapped, both parallels"
                            + " tight`"
                        : " and say `seat tapped`"),
                new Related(
                    setup.before().face(under).since(),
                    "the " + under.word() + " becomes clean here")));
      }
      return;
    }
  }
}
