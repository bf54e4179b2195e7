package org.handwheel.rules.hole;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleRun;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleState;

/** A tool that comes before the one it needs: nothing drilled, or not the tapping size. */
public final class DrillSequence extends SimpleRule {
  private static final double LEAST_THREAD = 55;

  public DrillSequence() {
    super("drill-sequence", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    HoleLines.forEach(checkup, (setup, step) -> check(checkup, setup, step, out));
  }

  private void check(Checkup checkup, SetupRun setup, StepRun step, Consumer<Finding> out) {
    HoleRun made = step.holes();
    if (made == null || made.cut().verb() == HoleVerb.SPOT || made.cut().verb() == HoleVerb.DRILL) {
      return;
    }
    for (Result result : made.results().toList()) {
      Optional<Finding> found = check(checkup, setup, step, made, result);
      if (found.isPresent()) {
        out.accept(found.get());
        return;
      }
    }
  }

  private Optional<Finding> check(
      Checkup checkup, SetupRun setup, StepRun step, HoleRun made, Result result) {
    HoleVerb verb = made.cut().verb();
    HoleState before = result.before();
    String name = result.hole().name();
    if (before.bore() == null || before.boredBy() == null) {
      return Optional.of(
          finding(
              step.step().origin(),
              "`" + name + "` has no hole yet to " + verb.name().toLowerCase(Locale.ROOT),
              new Related(setup.setup().header(), "nothing drills it up to here")));
    }
    ScrewThread thread = result.hole().thread();
    if (verb != HoleVerb.TAP || thread == null || fits(thread, before.bore())) {
      return Optional.empty();
    }
    Length usual = thread.tapDrill().diameter();
    String side = before.bore().isMoreThan(usual) ? "too large" : "too small";
    Finding finding =
        finding(
            step.step().origin(),
            "`"
                + name
                + "` was drilled "
                + before.bore()
                + ", "
                + side
                + " for "
                + thread.designation()
                + "; its tapping drill is "
                + thread.tapDrill().diameter(),
            new Related(before.boredBy(), "it is drilled here"));
    return Optional.of(
        before.size() == null || !HoleLines.drillsOnly(checkup, before.boredBy(), made.holes())
            ? finding
            : finding.withFix(
                Fix.replace(
                    "Drill " + thread.tapDrill().words(),
                    before.size().origin(),
                    thread.tapDrill().words())));
  }

  /**
   * Whether a bore suits a tap: its usual drill, one within printed limits, or one that is not
   * below the thread's minor diameter and leaves at least 55 per cent of thread. Source of the 55
   * per cent: common practice, no source.
   */
  static boolean fits(ScrewThread thread, Length bore) {
    boolean isPrinted = thread.minorLimits().map(limits -> limits.contains(bore)).orElse(false);
    boolean leavesThread =
        !bore.isLessThan(thread.minorDiameter()) && thread.percentOfThread(bore) >= LEAST_THREAD;
    return thread.tapDrill().diameter().equals(bore) || isPrinted || leavesThread;
  }
}
