package org.handwheel.rules.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Owned;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.rules.size.UnitSuspect;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.CuttingConditions.Bite;
import org.handwheel.work.CuttingConditions.FeedFrom;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;

/** A pass that asks more than the motor gives. */
public final class MotorPower extends SimpleRule implements EachSetup {
  private static final Length FINEST = Length.mm("0.05");

  public MotorPower() {
    super("power", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .run()
        .knownSteps()
        .filter(
            step ->
                step.feature() != null
                    || (step.cut() != null && !UnitSuspect.isSuspectDepth(checkup, step.cut())))
        .forEach(
            step ->
                CuttingCalculator.of(checkup.run(), step)
                    .ifPresent(conditions -> check(step, conditions, out)));
  }

  private void check(StepRun step, CuttingConditions conditions, Consumer<Finding> out) {
    Double inHand = conditions.powerInHand();
    Owned.Machine machine = conditions.asked().machine();
    Bite bite = conditions.asked().bite();
    if (inHand == null || inHand >= 1 || conditions.load() == null) {
      return;
    }
    if (machine == null || bite == null) {
      return;
    }
    CutRun cut = step.cut();
    FeatureRun feature = step.feature();
    Origin where =
        cut != null
            ? HeavyPass.origin(cut)
            : feature != null ? HeavyPass.origin(feature) : step.step().origin();
    boolean isOfLine = Rubbing.own(step) != null;
    List<Related> related = new ArrayList<>();
    related.add(new Related(machine.origin(), "the motor's power is given here"));
    if (conditions.feed() != null
        && conditions.feed().from() == FeedFrom.STATED
        && !isOfLine
        && step.benchBefore().cutter() != null) {
      related.add(new Related(step.benchBefore().cutter().origin(), "the feed is given here"));
    }
    out.accept(
        finding(
            where,
            "this pass asks about "
                + RateText.power(conditions.load().motorKilowatts())
                + " of the motor, which gives "
                + RateText.power(machine.watts() / 1000)
                + bears(cut != null ? cut.passDepth() : bite.depth(), inHand)
                + ", or feed more slowly",
            related.toArray(Related[]::new)));
  }

  /** The power goes about as the depth of the pass. */
  private static String bears(Length pass, double inHand) {
    long steps = (long) (pass.millimetres() * inHand / FINEST.millimetres());
    return steps < 1
        ? "; take less at a time"
        : "; take about " + FINEST.times(steps) + " at a time";
  }
}
