package org.handwheel.rules.size;

import java.util.function.Consumer;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;
import org.jspecify.annotations.Nullable;

/** A cut to size on work whose size is not known well enough to stay inside the limits. */
public final class MeasureBeforeFinish extends SimpleRule {
  public MeasureBeforeFinish() {
    super("measure-before-finish", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .wholeSetups()
        .forEach(
            setup ->
                setup.steps().stream()
                    .filter(step -> step.cut() != null)
                    .forEach(step -> check(checkup, step.cut(), out)));
  }

  private void check(Checkup checkup, @Nullable CutRun cut, Consumer<Finding> out) {
    if (cut == null || cut.goal() == null) {
      return;
    }
    Demand demand = checkup.demand(cut.face().dimension());
    if (demand == null || DialRounding.isDialTooCoarse(cut, demand)) {
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
    Length known = cut.before().uncertainty();
    String word = demand.dimension().word();
    String advice =
        cut.before().known() == null
            ? "measure the " + word + " first"
            : "measure the " + word + " with a finer instrument first";
    out.accept(
        finding(
            cut.cut().origin(),
            "the "
                + word
                + " is known only to +-"
                + known
                + " here, so this may end anywhere in "
                + after
                + "; the drawing allows "
                + demand.limits()
                + "; "
                + advice,
            new Related(cut.before().since(), "the " + word + " comes from here")));
  }
}
