package org.handwheel.rules.hole;

import java.util.function.Consumer;
import org.handwheel.model.Located;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.shop.thread.Tapping;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleRun.Result;
import org.jspecify.annotations.Nullable;

/** A blind hole too shallow for the end of the tap that makes its thread. */
public final class TapDepth extends SimpleRule {
  public TapDepth() {
    super("tap-depth", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    if (checkup.plan().part() == null) {
      return;
    }
    for (HoleSpec spec : checkup.plan().part().holes()) {
      drawn(spec, checkup, out);
    }
    HoleLines.forEach(checkup, (setup, step) -> tapped(step, out));
  }

  /** By the drawing: the depth of the drill against that of the thread. */
  private void drawn(HoleSpec spec, Checkup checkup, Consumer<Finding> out) {
    Located<Length> drill = spec.drillDepth();
    ScrewThread thread =
        spec.thread() == null ? null : checkup.tables().threads().find(spec.thread()).orElse(null);
    if (drill == null || thread == null || spec.threadDepth() == null || spec.through()) {
      return;
    }
    Length least = Tapping.leastFullDepth(thread, spec.threadDepth());
    if (drill.value().isLessThan(least)) {
      out.accept(
          finding(
                  drill.origin(),
                  words(spec.name(), thread, drill.value(), spec.threadDepth(), least),
                  new Related(spec.origin(), "the thread is given here"))
              .withFix(Fix.replace("Drill " + least + " deep", drill.origin(), written(least))));
    }
  }

  private static String written(Length length) {
    return LengthText.number(length, LengthUnit.MM, 3, 0) + " mm";
  }

  /** By what was really drilled, if that is not what the drawing says. */
  private void tapped(StepRun step, Consumer<Finding> out) {
    if (step.holes() == null || step.holes().cut().verb() != HoleVerb.TAP) {
      return;
    }
    for (Result result : step.holes().results().toList()) {
      HoleSpec spec = result.hole().spec();
      ScrewThread thread = result.hole().thread();
      Length drilled = result.before().depth();
      Origin drilledBy = result.before().boredBy();
      if (thread == null
          || drilled == null
          || drilledBy == null
          || result.depth() == null
          || result.before().through()
          || isDrawn(spec, drilled)) {
        continue;
      }
      Length least = Tapping.leastFullDepth(thread, result.depth());
      if (drilled.isLessThan(least)) {
        out.accept(
            finding(
                step.step().origin(),
                words(result.hole().name(), thread, drilled, result.depth(), least),
                new Related(drilledBy, "it is drilled here")));
        return;
      }
    }
  }

  private static boolean isDrawn(HoleSpec spec, @Nullable Length drilled) {
    return spec.drillDepth() != null && spec.drillDepth().value().equals(drilled);
  }

  private static String words(
      String name, ScrewThread thread, Length drilled, Length wanted, Length least) {
    return "`"
        + name
        + "` is drilled "
        + drilled
        + " deep: too shallow for "
        + wanted
        + " of "
        + thread.designation()
        + " thread and the end of the tap, which needs "
        + least;
  }
}
