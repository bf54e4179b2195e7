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

/** The cutter runs into a clamp. */
public final class CutterMeetsClamp extends SimpleRule implements EachSetup {
  public CutterMeetsClamp() {
    super("cutter-meets-clamp", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.forEachKnownCut((setup, cut) -> check(setup, cut, out));
  }

  private void check(SetupRun setup, CutRun cut, Consumer<Finding> out) {
    for (Hit hit : cut.hits()) {
      if (hit.thing() == Thing.CLAMP && !hit.clearance().isPositive()) {
        out.accept(
            finding(
                severity(),
                cut.cut().origin(),
                hit.clearance().isZero()
                    ? "the cutter comes down on " + hit.name()
                    : "the cutter goes " + hit.clearance().abs() + " into " + hit.name(),
                new Related(clamp(setup, cut, hit), "it stands here")));
        return;
      }
    }
  }

  private static Origin clamp(SetupRun setup, CutRun cut, Hit hit) {
    Hold hold = setup.setup().hold();
    if (hold == null) {
      return cut.cut().origin();
    }
    return hold.clamps().stream()
        .filter(clamping -> hit.name().endsWith(" " + clamping.clamp().name()))
        .map(Hold.Clamping::origin)
        .findFirst()
        .orElse(hold.origin());
  }
}
