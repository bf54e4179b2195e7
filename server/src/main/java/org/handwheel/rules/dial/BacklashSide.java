package org.handwheel.rules.dial;

import java.util.function.Consumer;
import org.handwheel.model.Direction;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.LengthText;
import org.handwheel.work.Bench.Zero;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun.StepRun;

/** A size set from the other side than the dial's zero: it is off by the backlash. */
public final class BacklashSide extends SimpleRule implements EachSetup {
  public BacklashSide() {
    super("backlash-side", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> setup.steps().forEach(step -> check(step, out)));
  }

  private void check(StepRun step, Consumer<Finding> out) {
    CutRun cut = step.cut();
    if (cut == null || cut.screw() == null || !cut.screw().backlash().isPositive()) {
      return;
    }
    Zero zero = step.benchBefore().zeros().get(cut.depthAxis());
    boolean measured = step.benchBefore().calibrated().contains(cut.face().dimension());
    if (zero == null || zero.approach() == null || zero.loss() != null || measured) {
      // Once a cut from this side was measured, the dial is read from there.
      return;
    }
    Direction depth = cut.normal().opposite();
    if (zero.approach() != depth) {
      out.accept(
          finding(
              cut.cut().origin(),
              "the zero of "
                  + cut.depthAxis().word()
                  + " was taken with the cutter going "
                  + zero.approach().words()
                  + ", this cut goes "
                  + depth.words()
                  + "; the size is off by the backlash of "
                  + LengthText.both(cut.screw().backlash())
                  + " unless it is taken up",
              new Related(zero.origin(), "the zero was taken here")));
    }
  }
}
