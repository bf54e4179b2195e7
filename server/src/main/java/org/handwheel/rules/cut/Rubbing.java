package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Bench;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.CuttingConditions.FeedFrom;
import org.handwheel.work.CuttingConditions.ToothFeed;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** A feed so small that the teeth rub instead of cutting. */
public final class Rubbing extends SimpleRule implements EachSetup {
  public Rubbing() {
    super("rubbing", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().knownSteps().forEach(step -> check(checkup, step, out));
  }

  private void check(Checkup checkup, StepRun step, Consumer<Finding> out) {
    if (step.step() instanceof Step.UseCutter use && use.feedPerTooth() != null) {
      if (isTooSmall(checkup, use.feedPerTooth().value())) {
        out.accept(feed(checkup, use.cutter(), use.feedPerTooth()));
      }
      return;
    }
    Bench.Tool mounted = step.benchBefore().cutter();
    if (step.step() instanceof Step.Cut cut && mounted != null) {
      if (cut.feedPerTooth() != null && isTooSmall(checkup, cut.feedPerTooth().value())) {
        out.accept(feed(checkup, mounted.cutter(), cut.feedPerTooth()));
      } else {
        CuttingCalculator.of(checkup.run(), step)
            .ifPresent(conditions -> chip(checkup, step, mounted, conditions, out));
      }
    } else if (step.feature() != null
        && step.feature().cutter() != null
        && step.feature().cut().way().feedPerTooth() != null
        && isTooSmall(checkup, step.feature().cut().way().feedPerTooth().value())) {
      out.accept(feed(checkup, step.feature().cutter(), step.feature().cut().way().feedPerTooth()));
    } else if (step.feature() != null && mounted != null) {
      CuttingCalculator.of(checkup.run(), step)
          .ifPresent(conditions -> chip(checkup, step, mounted, conditions, out));
    }
  }

  private static boolean isTooSmall(Checkup checkup, Length feed) {
    return feed.isLessThan(checkup.limits().length(Limit.LEAST_CHIP));
  }

  /** A stated feed below the thinnest chip, whatever is cut. */
  private Finding feed(Checkup checkup, Owned.Cutter cutter, Located<Length> feed) {
    Length least = checkup.limits().length(Limit.LEAST_CHIP);
    Finding finding =
        finding(
            feed.origin(),
            "a feed of "
                + feed.value()
                + " a tooth is below "
                + least
                + ": the teeth rub and grow dull instead of cutting",
            new Related(cutter.origin(), "the cutter is described here"));
    KnownMaterial material = checkup.run().material();
    Length usual =
        material == null
            ? null
            : material.feedPerTooth(cutter.cutterKind(), cutter.dia()).orElse(null);
    return usual == null || usual.isLessThan(least)
        ? finding
        : finding.withFix(write(feed.origin(), usual));
  }

  /** A stated feed that the side of the cutter makes into too thin a chip. */
  private void chip(
      Checkup checkup,
      StepRun step,
      Bench.Tool mounted,
      CuttingConditions conditions,
      Consumer<Finding> out) {
    ToothFeed feed = conditions.feed();
    CutRun cut = step.cut();
    if ((cut == null && step.feature() == null)
        || feed == null
        || feed.chip() == null
        || feed.from() != FeedFrom.STATED
        || isTooSmall(checkup, feed.perTooth())
        || !isTooSmall(checkup, feed.chip().greatest())) {
      return;
    }
    Located<Length> own = own(step);
    Origin origin = own != null ? own.origin() : step.step().origin();
    out.accept(
        finding(
            origin,
            "so narrow a cut makes a chip of at most "
                + feed.chip().greatest()
                + " from a feed of "
                + feed.perTooth()
                + " a tooth, below "
                + checkup.limits().length(Limit.LEAST_CHIP)
                + ": the teeth rub; feed faster or cut wider",
            own != null
                ? new Related(mounted.cutter().origin(), "the cutter is described here")
                : new Related(mounted.origin(), "the feed is given here")));
  }

  /** The feed that the line itself says. */
  static @Nullable Located<Length> own(StepRun step) {
    if (step.cut() != null) {
      return step.cut().cut().feedPerTooth();
    }
    return step.feature() == null ? null : step.feature().cut().way().feedPerTooth();
  }

  private static Fix write(Origin origin, Length feed) {
    String words = "feed " + LengthText.number(feed, LengthUnit.MM, 3, 2) + " mm/tooth";
    return Fix.replace("Write `" + words + "`", origin, words);
  }
}
