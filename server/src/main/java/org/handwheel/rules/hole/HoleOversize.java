package org.handwheel.rules.hole;

import java.util.function.Consumer;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleRun;
import org.handwheel.work.hole.HoleRun.Result;

/** A tool larger than the hole may become. */
public final class HoleOversize extends SimpleRule implements EachSetup {
  public HoleOversize() {
    super("hole-oversize", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    HoleLines.forEach(checkup, (setup, step) -> check(checkup, step, out));
  }

  private void check(Checkup checkup, StepRun step, Consumer<Finding> out) {
    HoleRun made = step.holes();
    if (made == null || !bores(made.cut().verb())) {
      return;
    }
    for (Result result : made.results().toList()) {
      LengthRange limits = HoleLines.limits(result.hole().spec(), checkup);
      Length dia = result.bit().dia();
      if (limits == null || dia == null || result.hole().thread() != null) {
        continue;
      }
      if (dia.isMoreThan(limits.high())) {
        out.accept(
            finding(
                step.step().origin(),
                "`"
                    + result.hole().name()
                    + "` becomes "
                    + dia
                    + ", but may be at most "
                    + limits.high(),
                new Related(result.hole().spec().origin(), "the hole is drawn here")));
        return;
      }
    }
  }

  private static boolean bores(HoleVerb verb) {
    return verb == HoleVerb.DRILL || verb == HoleVerb.REAM || verb == HoleVerb.BORE;
  }
}
