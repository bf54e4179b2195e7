package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.PlanRun.SetupRun;

/** The cutter reaches a parallel. */
public final class CutterMeetsParallel extends SimpleRule implements EachSetup {
  public CutterMeetsParallel() {
    super("cutter-meets-parallel", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.forEachKnownCut((setup, cut) -> check(setup, cut, out));
  }

  private void check(SetupRun setup, CutRun cut, Consumer<Finding> out) {
    for (Hit hit : cut.hits()) {
      if (hit.thing() == Thing.PARALLEL && hit.clearance().isNegative()) {
        out.accept(
            finding(
                severity(),
                cut.cut().origin(),
                "the cutter goes " + hit.clearance().abs() + " into " + hit.name(),
                new Related(support(setup, cut), "it lies under the work here")));
        return;
      }
    }
  }

  private static Origin support(SetupRun setup, CutRun cut) {
    Hold hold = setup.setup().hold();
    if (hold == null) {
      return cut.cut().origin();
    }
    return hold.support() == null ? hold.origin() : hold.support().origin();
  }
}
