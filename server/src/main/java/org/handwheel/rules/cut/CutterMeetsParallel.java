package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Thing;

/** The cutter reaches a parallel. */
public final class CutterMeetsParallel extends SimpleRule {
  public CutterMeetsParallel() {
    super("cutter-meets-parallel", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().cuts().forEach(cut -> check(cut, out));
  }

  private void check(CutRun cut, Consumer<Finding> out) {
    for (Hit hit : cut.hits()) {
      if (hit.thing() == Thing.PARALLEL && hit.clearance().isNegative()) {
        out.accept(
            finding(
                severity(),
                cut.cut().origin(),
                "the cutter goes " + hit.clearance().abs() + " deep into " + hit.name()));
        return;
      }
    }
  }
}
