package org.handwheel.rules.hole;

import java.util.function.Consumer;
import org.handwheel.model.Step.HoleSize;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.DrillSeries;
import org.handwheel.shop.drill.Reaming;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleRun;
import org.handwheel.work.hole.HoleRun.Result;
import org.jspecify.annotations.Nullable;

/** Too much or too little left in a hole for the reamer. */
public final class ReamAllowance extends SimpleRule {
  public ReamAllowance() {
    super("ream-allowance", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    HoleLines.forEach(checkup, (setup, step) -> check(checkup, step, out));
  }

  private void check(Checkup checkup, StepRun step, Consumer<Finding> out) {
    HoleRun made = step.holes();
    if (made == null || made.cut().verb() != HoleVerb.REAM) {
      return;
    }
    for (Result result : made.results().toList()) {
      Length reamer = result.bit().dia();
      Length bore = result.before().bore();
      Origin boredBy = result.before().boredBy();
      if (reamer == null || bore == null || boredBy == null) {
        continue;
      }
      LengthRange allowed = allowed(reamer, made.cut().way().byHand());
      Length left = reamer.minus(bore);
      if (!allowed.contains(left)) {
        String much = left.isMoreThan(allowed.high()) ? "too much" : "too little";
        Finding finding =
            finding(
                step.step().origin(),
                "the hole `"
                    + result.hole().name()
                    + "` is "
                    + bore
                    + " before the reamer: "
                    + left
                    + " to ream is "
                    + much
                    + ", "
                    + allowed
                    + " is usual",
                new Related(boredBy, "it is drilled here"));
        HoleSize size =
            HoleLines.drillsOnly(checkup, boredBy, made.holes()) ? result.before().size() : null;
        out.accept(mended(finding, checkup, size, reamer, allowed));
        return;
      }
    }
  }

  /** For a machine reamer; by hand down to the least a hand reamer takes. */
  private static LengthRange allowed(Length reamer, boolean byHand) {
    LengthRange machine = Reaming.machineAllowance(reamer);
    return byHand ? new LengthRange(Reaming.handAllowance().low(), machine.low()) : machine;
  }

  private static Finding mended(
      Finding finding,
      Checkup checkup,
      @Nullable HoleSize size,
      Length reamer,
      LengthRange allowed) {
    if (size == null) {
      return finding;
    }
    LengthRange bores = LengthRange.exactly(reamer).minus(allowed);
    return checkup
        .tables()
        .drills()
        .nearest(
            bores.middle(),
            drill -> drill.series() == DrillSeries.METRIC && bores.contains(drill.diameter()))
        .map(Drill::words)
        .map(words -> finding.withFix(Fix.replace("Drill " + words, size.origin(), words)))
        .orElse(finding);
  }
}
