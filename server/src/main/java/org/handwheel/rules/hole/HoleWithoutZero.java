package org.handwheel.rules.hole;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;

/** A hole, slot or outline whose place is counted from nowhere: no edge or centre was found. */
public final class HoleWithoutZero extends SimpleRule implements EachSetup {
  public HoleWithoutZero() {
    super("hole-without-zero", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.wholeSetups()) {
      if (setup.setup().damage() == Setup.Damage.NONE) {
        check(setup, out);
      }
    }
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    for (StepRun step : setup.steps()) {
      if (!isPlaced(step)) {
        continue;
      }
      List<String> missing = new ArrayList<>();
      for (Axis axis : List.of(Axis.X, Axis.Y)) {
        if (step.benchBefore().zeros().get(axis) == null) {
          missing.add(axis.word());
        }
      }
      if (!missing.isEmpty()) {
        out.accept(
            finding(
                step.step().origin(),
                "the place of this "
                    + (step.step() instanceof Step.HoleCut ? "hole" : "cut")
                    + " is counted from nowhere in "
                    + String.join(" and ", missing)
                    + ": find an edge or a centre first",
                new Related(
                    setup.setup().header(), "the setup begins here, and all zeros with it")));
        return;
      }
    }
  }

  /** Holes, slots, pockets and outlines have a place; a chamfer follows its edge. */
  private static boolean isPlaced(StepRun step) {
    return step.step() instanceof Step.HoleCut
        || (step.feature() != null
            && step.feature().refusal().isEmpty()
            && !(step.feature().result() instanceof FeatureRun.Result.AlongEdges));
  }
}
