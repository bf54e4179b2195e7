package org.handwheel.rules.cut;

import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun.SetupRun;

/** The cutter cuts into a jaw or comes too near it. */
public final class CutterMeetsJaw extends SimpleRule implements EachSetup {
  public CutterMeetsJaw() {
    super("cutter-meets-jaw", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.run().knownSetups().toList()) {
      Grip grip = setup.grip();
      if (grip != null) {
        setup.steps().stream()
            .flatMap(step -> Optional.ofNullable(step.cut()).stream())
            .forEach(cut -> check(checkup, grip, cut, out));
      }
    }
  }

  private void check(Checkup checkup, Grip grip, CutRun cut, Consumer<Finding> out) {
    for (Hit hit : cut.hits()) {
      if (hit.thing() == Thing.JAW
          && hit.clearance().isLessThan(checkup.limits().length(Limit.JAW_CLEARANCE))) {
        out.accept(
            finding(
                hit.clearance().isPositive() ? Severity.WARNING : severity(),
                cut.cut().origin(),
                hit.clearance().isPositive()
                    ? "the cutter passes only " + hit.clearance() + " above " + hit.name()
                    : hit.clearance().isZero()
                        ? "the cutter comes down on " + hit.name()
                        : "the cutter goes " + hit.clearance().abs() + " into " + hit.name(),
                new Related(grip.hold().origin(), "the work is held here")));
        return;
      }
    }
  }
}
