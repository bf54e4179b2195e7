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

/** A hole whose place is counted from nowhere: no edge or centre was found. */
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
      if (!(step.step() instanceof Step.HoleCut)) {
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
                "the place of this hole is counted from nowhere in "
                    + String.join(" and ", missing)
                    + ": find an edge or a centre first",
                new Related(
                    setup.setup().header(), "the setup begins here, and all zeros with it")));
        return;
      }
    }
  }
}
