package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
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

/** A pass deeper than a small mill takes well. */
public final class HeavyPass extends SimpleRule implements EachSetup {
  public HeavyPass() {
    super("heavy-pass", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.cuts().forEach(cut -> check(checkup, cut, out));
  }

  private void check(Checkup checkup, CutRun cut, Consumer<Finding> out) {
    Length limit =
        cut.mode() == CutRun.Mode.END
            ? checkup.limits().length(Limit.HEAVY_PASS)
            : Length.ofMillimetres(
                checkup.limits().number(Limit.SIDE_PASS) * cut.cutter().dia().millimetres());
    if (!cut.passDepth().isMoreThan(limit) || UnitSuspect.isSuspectDepth(checkup, cut)) {
      return;
    }
    out.accept(
        finding(
            origin(cut),
            "a pass of "
                + cut.passDepth()
                + " is heavy for a small mill; keep it to "
                + limit
                + passes(cut, limit),
            new Related(cut.before().since(), "the size it starts from comes from here")));
  }

  /** The clause that sets the depth, or the whole line where none does. */
  static Origin origin(CutRun cut) {
    Passes passes = null;
    if (cut.cut().purpose() instanceof Purpose.Clean clean) {
      return clean.at().origin();
    }
    if (cut.cut().purpose() instanceof Purpose.Rough rough) {
      passes = rough.passes();
    } else if (cut.cut().purpose() instanceof Purpose.Finish finish) {
      passes = finish.passes();
    }
    return passes == null ? cut.cut().origin() : passes.origin();
  }

  private static String passes(CutRun cut, Length limit) {
    if (!cut.removal().high().isPositive() || cut.cut().purpose() instanceof Purpose.Clean) {
      return "";
    }
    long count = cut.removal().high().stepsOf(limit);
    return " (" + count + " passes for " + cut.removal().high() + ")";
  }
}
