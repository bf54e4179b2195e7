package org.handwheel.rules.dial;

import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.handwheel.model.Axis;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bench.Loss.Cause;
import org.handwheel.work.Bench.Zero;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** A dial's zero that no longer holds because the head was moved. */
public final class ZeroLost extends SimpleRule implements EachSetup {
  public ZeroLost() {
    super("zero-lost", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    Orientation orientation = setup.orientation();
    Set<Axis> reported = EnumSet.noneOf(Axis.class);
    for (StepRun step : setup.steps()) {
      Set<Axis> needed = new TreeSet<>();
      if (step.step() instanceof Step.Cut cut && orientation != null) {
        needed.add(orientation.axisOf(cut.face()));
      } else if (step.step() instanceof Step.HoleCut || step.step() instanceof Step.FeatureCut) {
        needed.add(Axis.X);
        needed.add(Axis.Y);
      }
      needed.removeIf(axis -> !isLost(step.benchBefore().zeros().get(axis)));
      needed.removeAll(reported);
      if (needed.isEmpty()) {
        continue;
      }
      reported.addAll(needed);
      Zero zero = step.benchBefore().zeros().get(needed.iterator().next());
      if (zero != null && zero.loss() != null) {
        String axes = needed.stream().map(Axis::word).collect(Collectors.joining(" and "));
        out.accept(
            finding(
                step.step().origin(),
                "the zero of " + axes + " was lost when the head was moved; find it again",
                new Related(zero.loss().origin(), "the head is moved here"),
                new Related(zero.origin(), "the zero was taken here")));
      }
    }
  }

  private static boolean isLost(@Nullable Zero zero) {
    return zero != null && zero.loss() != null && zero.loss().cause() == Cause.HEAD_MOVED;
  }
}
