package org.handwheel.rules.size;

import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Bench.Zero;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;

/** A cut to size on work whose size is not known well enough to stay inside the limits. */
public final class MeasureBeforeFinish extends SimpleRule implements EachSetup {
  public MeasureBeforeFinish() {
    super("measure-before-finish", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .wholeSetups()
        .forEach(
            setup -> {
              for (int i = 0; i < setup.steps().size(); i++) {
                StepRun step = setup.steps().get(i);
                if (step.cut() != null && !isMeasuredInVain(setup.steps().subList(0, i), step)) {
                  check(checkup, step, step.cut(), out);
                }
              }
            });
  }

  /**
   * Whether the size was measured since it was cut, with an instrument that cannot measure it: that
   * is the mistake, and it is reported there.
   */
  private static boolean isMeasuredInVain(List<StepRun> before, StepRun step) {
    PartDimension dimension = Objects.requireNonNull(step.cut()).face().dimension();
    for (int i = before.size() - 1; i >= 0; i--) {
      StepRun earlier = before.get(i);
      if (earlier.cut() != null && earlier.cut().face().dimension() == dimension) {
        return false;
      }
      if (earlier.step() instanceof Step.Measure measure && measure.dimension() == dimension) {
        SizeState size = earlier.before().size(dimension);
        LengthRange range = measure.instrument().range();
        return earlier.reading() == null
            && (!measure.instrument().instrumentKind().measuresSizes()
                || (range != null && size != null && !range.overlaps(size.range())));
      }
    }
    return false;
  }

  private void check(Checkup checkup, StepRun step, @Nullable CutRun cut, Consumer<Finding> out) {
    if (cut == null || cut.goal() == null) {
      return;
    }
    Demand demand = checkup.demand(cut.face().dimension());
    Zero zero = step.benchBefore().zeros().get(cut.depthAxis());
    boolean startsFromNowhere = zero == null || zero.loss() != null;
    if (demand == null || startsFromNowhere || DialRounding.isDialTooCoarse(cut, demand)) {
      return;
    }
    LengthRange after = cut.after().range();
    boolean roughing = cut.cut().purpose() instanceof Purpose.Rough;
    if (roughing && NoFinishAllowance.isStraightToSize(checkup, cut, demand)) {
      // Nothing is left on: that is the mistake, and leaving enough cures this one too.
      return;
    }
    boolean mayGoBelow =
        after.low().isLessThan(demand.limits().low())
            && !cut.goal().isLessThan(demand.limits().low());
    boolean mayStayAbove =
        !roughing
            && after.high().isMoreThan(demand.limits().high())
            && !cut.goal().isMoreThan(demand.limits().high());
    if (!mayGoBelow && !mayStayAbove) {
      return;
    }
    String word = demand.dimension().word();
    out.accept(
        finding(
            cut.cut().origin(),
            "the "
                + word
                + " is known only within +-"
                + cut.before().uncertainty()
                + ", so with the errors of touch and dial this may end anywhere in "
                + after
                + "; the drawing allows "
                + demand.limits()
                + "; "
                + advice(cut, step, word),
            new Related(cut.before().since(), "the " + word + " comes from here"),
            new Related(demand.origin(), "the " + word + " on the drawing")));
  }

  private static String advice(CutRun cut, StepRun step, String word) {
    if (cut.before().known() == null) {
      return "measure the " + word + " first";
    }
    return step.benchBefore().calibrated().contains(cut.face().dimension())
        ? "measure the " + word + " with a finer instrument first"
        : "take a roughing pass, measure in the same grip, and go on from that reading";
  }
}
