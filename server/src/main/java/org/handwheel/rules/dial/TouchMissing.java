package org.handwheel.rules.dial;

import java.util.EnumSet;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bench;
import org.handwheel.work.Bench.Loss.Cause;
import org.handwheel.work.Bench.Zero;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;

/**
 * A cut whose depth starts from nowhere: the cutter never touched in this setup, or was changed
 * since.
 */
public final class TouchMissing extends SimpleRule implements EachSetup {
  public TouchMissing() {
    super("touch-missing", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    Orientation orientation = setup.orientation();
    Set<Axis> reported = EnumSet.noneOf(Axis.class);
    for (StepRun step : setup.steps()) {
      if (step.feature() != null && orientation != null) {
        checkFeature(setup, step, step.feature(), reported, out);
        continue;
      }
      if (!(step.step() instanceof Step.Cut cut) || orientation == null) {
        continue;
      }
      if (step.benchBefore().cutter() == null) {
        out.accept(
            finding(
                cut.origin(),
                "no cutter is in the spindle yet: say `cutter NAME` before this",
                new Related(setup.setup().header(), "the setup begins here")));
        return;
      }
      Axis axis = orientation.axisOf(cut.face());
      Zero zero = step.benchBefore().zeros().get(axis);
      if (reported.contains(axis)) {
        continue;
      }
      if (zero == null) {
        reported.add(axis);
        out.accept(
            finding(
                cut.origin(),
                "the depth of this cut starts from nowhere: touch the "
                    + cut.face().word()
                    + " first, for example `touch "
                    + cut.face().word()
                    + ", zero "
                    + axis.word()
                    + "`",
                new Related(
                    setup.setup().header(), "the setup begins here, and all zeros with it")));
      } else if (zero.loss() != null && zero.loss().cause() == Cause.CUTTER_CHANGED) {
        reported.add(axis);
        out.accept(
            finding(
                cut.origin(),
                "the cutter was changed since it touched; touch the "
                    + cut.face().word()
                    + " again",
                new Related(zero.loss().origin(), "the cutter is changed here"),
                new Related(zero.origin(), "the zero was taken here")));
      }
    }
  }

  /**
   * The depth of a slot, an outline or a chamfer is counted from a touch of the cutter that cuts
   * it; where it lies along X and Y is the matter of another rule.
   */
  private void checkFeature(
      SetupRun setup, StepRun step, FeatureRun feature, Set<Axis> reported, Consumer<Finding> out) {
    Owned.Cutter cutter = feature.cutter();
    if (cutter == null || feature.refusal().isPresent() || feature.drawn() == null) {
      return;
    }
    String face = feature.drawn().frame().face().word();
    Bench.Tool mounted = step.benchBefore().cutter();
    Zero zero = step.benchBefore().zeros().get(Axis.Z);
    boolean isMounted = mounted != null && mounted.cutter().name().equalsIgnoreCase(cutter.name());
    boolean isChanged =
        zero != null && zero.loss() != null && zero.loss().cause() == Cause.CUTTER_CHANGED;
    if ((zero != null && isMounted && !isChanged) || !reported.add(Axis.Z)) {
      return;
    }
    if (zero == null) {
      out.accept(
          finding(
              step.step().origin(),
              "the depth of this cut starts from nowhere: touch the "
                  + face
                  + " with "
                  + cutter.name()
                  + " first, for example `touch "
                  + face
                  + ", zero z`",
              new Related(setup.setup().header(), "the setup begins here, and all zeros with it")));
    } else {
      out.accept(
          finding(
              step.step().origin(),
              isMounted
                  ? "the cutter was changed since it touched; touch the " + face + " again"
                  : cutter.name()
                      + " has not touched the "
                      + face
                      + ": put it in with `cutter "
                      + cutter.name()
                      + "`, and touch",
              new Related(zero.origin(), "the zero was taken here")));
    }
  }
}
