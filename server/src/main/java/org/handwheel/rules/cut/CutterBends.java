package org.handwheel.rules.cut;

import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.rules.size.UnitSuspect;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Edit;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureSizes;

/** A finishing cut in which the end mill bends away by much of the tolerance. */
public final class CutterBends extends SimpleRule implements EachSetup {
  public CutterBends() {
    super("deflection", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .run()
        .knownSteps()
        .forEach(
            step -> {
              CutRun cut = step.cut();
              if (cut != null
                  && cut.cut().purpose() instanceof Purpose.Finish
                  && cut.mode() != CutRun.Mode.END
                  && cut.cut().springPasses() == 0
                  && !UnitSuspect.isSuspectDepth(checkup, cut)) {
                check(checkup, step, cut, out);
              }
            });
    checkup.forEachKnownFeature(
        (setup, step, feature) -> {
          if (feature.left().isZero() && feature.refusal().isEmpty()) {
            check(checkup, step, feature, out);
          }
        });
  }

  /** The last cut of an outline or along a wall: what the cutter bends away by stays on. */
  private void check(Checkup checkup, StepRun step, FeatureRun feature, Consumer<Finding> out) {
    CuttingConditions conditions = CuttingCalculator.of(checkup.run(), step).orElse(null);
    Owned.Cutter cutter = feature.cutter();
    if (conditions == null || conditions.load() == null || cutter == null) {
      return;
    }
    Length width =
        FeatureSizes.narrowest(feature.spec())
            .orElse(checkup.limits().length(Limit.UNTOLERANCED).times(2));
    Length bent = conditions.load().deflection();
    double part = checkup.limits().number(Limit.DEFLECTION);
    if (bent == null || bent.millimetres() <= part * width.millimetres()) {
      return;
    }
    out.accept(
        finding(
            feature.cut().origin(),
            "`"
                + cutter.name()
                + "` bends by up to "
                + bent
                + " in this cut; the tolerance of `"
                + feature.spec().name()
                + "` is "
                + width
                + " in all; first leave a little on, go down in shallower passes, or hold the"
                + " cutter shorter",
            new Related(feature.spec().origin(), "it is drawn here"),
            new Related(cutter.origin(), "the cutter is described here")));
  }

  private void check(Checkup checkup, StepRun step, CutRun cut, Consumer<Finding> out) {
    Demand demand = checkup.demand(cut.face().dimension());
    CuttingConditions conditions = CuttingCalculator.of(checkup.run(), step).orElse(null);
    if (demand == null || conditions == null || conditions.load() == null) {
      return;
    }
    Length bent = conditions.load().deflection();
    Length width = demand.limits().width();
    double part = checkup.limits().number(Limit.DEFLECTION);
    if (bent == null || bent.millimetres() <= part * width.millimetres()) {
      return;
    }
    Origin line = cut.cut().origin();
    out.accept(
        finding(
                line,
                "`"
                    + cut.cutter().name()
                    + "` bends by up to "
                    + bent
                    + " in this cut and leaves that much on; the tolerance is "
                    + width
                    + " in all; repeat the pass without a new depth, leave less for finishing, or"
                    + " hold the cutter shorter",
                new Related(
                    demand.origin(), "the " + demand.dimension().word() + " on the drawing"),
                new Related(cut.cutter().origin(), "the cutter is described here"))
            .withFix(repeat(line)));
  }

  /** A second pass at the same depth takes off what the bending left. */
  private static Fix repeat(Origin line) {
    Origin end = new Origin(line.section(), line.end(), line.end());
    return new Fix("Repeat the pass without a new depth", List.of(new Edit(end, ", repeat")));
  }
}
