package org.handwheel.rules.hole;

import java.util.function.Consumer;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.Crossing;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.HoleRun;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleState;

/** A hole drilled into a bore that is finished already: its burr stands in the bore. */
public final class BurrInBore extends SimpleRule implements EachSetup {
  public BurrInBore() {
    super("burr-in-bore", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    HoleLines.forEach(checkup, (setup, step) -> check(step, out));
  }

  private void check(StepRun step, Consumer<Finding> out) {
    HoleRun made = step.holes();
    if (made == null || made.cut().verb() != HoleVerb.DRILL) {
      return;
    }
    for (Result result : made.results().toList()) {
      for (DrawnHole bore : made.drawn().all()) {
        HoleState state = step.before().holes().getOrDefault(bore.name(), HoleState.UNTOUCHED);
        Origin finishedBy = state.reamedBy();
        Length dia = state.bore();
        if (finishedBy != null
            && dia != null
            && !bore.equals(result.hole())
            && Crossing.meets(result, bore, dia)) {
          out.accept(
              finding(
                  step.step().origin(),
                  "`"
                      + result.hole().name()
                      + "` breaks into the finished bore `"
                      + bore.name()
                      + "` and leaves its burr there; drill it before the bore is finished",
                  new Related(finishedBy, "the bore is finished here")));
          return;
        }
      }
    }
  }
}
