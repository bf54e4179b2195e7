package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Thing;

/** The cutter cuts into a jaw or comes too near it. */
public final class CutterMeetsJaw extends SimpleRule {
  public CutterMeetsJaw() {
    super("cutter-meets-jaw", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().cuts().forEach(cut -> check(checkup, cut, out));
  }

  private void check(Checkup checkup, CutRun cut, Consumer<Finding> out) {
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
                        : "the cutter goes " + hit.clearance().abs() + " into " + hit.name()));
        return;
      }
    }
  }
}
