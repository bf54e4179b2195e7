package org.handwheel.rules.hole;

import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.Daylight;
import org.handwheel.work.hole.HoleRun;

/** Too little room under the spindle for the work, the chuck and the drill. */
public final class TooLittleDaylight extends SimpleRule implements EachSetup {
  public TooLittleDaylight() {
    super("daylight", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    HoleLines.forEach(checkup, (setup, step) -> check(checkup, setup, step, out));
  }

  private void check(Checkup checkup, SetupRun setup, StepRun step, Consumer<Finding> out) {
    HoleRun made = step.holes();
    var machine = checkup.plan().machine();
    if (made == null || machine == null) {
      return;
    }
    Optional<Daylight> worst =
        made.results()
            .flatMap(result -> Daylight.of(checkup.run(), setup, step, result.bit()).stream())
            .filter(daylight -> daylight.left().isNegative())
            .reduce((a, b) -> b.left().isLessThan(a.left()) ? b : a);
    worst.ifPresent(
        found ->
            out.accept(
                finding(
                    step.step().origin(),
                    "a drill of "
                        + found.bit().dia()
                        + " needs "
                        + found.needed()
                        + " under the spindle: work up to "
                        + found.top()
                        + ", drill "
                        + found.stickOut()
                        + ", chuck "
                        + found.chuck()
                        + ", to get by "
                        + Daylight.CLEARANCE
                        + "; there is "
                        + found.room()
                        + ", "
                        + found.left().abs()
                        + " too little",
                    new Related(machine.origin(), "the machine's room is given here"))));
  }
}
