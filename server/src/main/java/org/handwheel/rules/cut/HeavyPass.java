package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
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
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.FeatureBite;
import org.handwheel.work.feature.FeatureRun;

/** A pass deeper than a small mill takes well. */
public final class HeavyPass extends SimpleRule implements EachSetup {
  /** What the polygons of round sweeps may be off. */
  private static final Length FACETS = Length.mm("0.02");

  public HeavyPass() {
    super("heavy-pass", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.cuts().forEach(cut -> check(checkup, cut, out));
    checkup.forEachKnownFeature(
        (setup, step, feature) ->
            feature.bite().ifPresent(bite -> check(checkup, feature, bite, out)));
  }

  /** Between walls what counts is the depth of a level, against the cutter's diameter. */
  private void check(Checkup checkup, FeatureRun feature, FeatureBite bite, Consumer<Finding> out) {
    Owned.Cutter cutter = feature.cutter();
    DrawnFeature drawn = feature.drawn();
    if (cutter == null || drawn == null) {
      return;
    }
    double dia = cutter.dia().millimetres();
    Length limit = slotPass(checkup.limits(), cutter);
    if (!limit.isPositive()) {
      return; // A cutter without a diameter, or a limit of nothing, is reported where it is given.
    }
    if (bite.width().millimetres() * 2 >= dia) {
      if (bite.depth().isMoreThan(limit)) {
        out.accept(
            finding(
                origin(feature),
                "cutting "
                    + bite.width()
                    + " wide with `"
                    + cutter.name()
                    + "`, "
                    + bite.depth()
                    + " at once is heavy for a small mill; keep it to "
                    + limit
                    + " ("
                    + drawn.depth().stepsOf(limit)
                    + " levels for "
                    + drawn.depth()
                    + ")",
                new Related(feature.spec().origin(), "it is drawn here")));
      }
      return;
    }
    Length side = Length.ofMillimetres(checkup.limits().number(Limit.SIDE_PASS) * dia);
    if (bite.width().isMoreThan(side.plus(FACETS)) && bite.depth().isMoreThan(limit)) {
      out.accept(
          finding(
              origin(feature),
              "taking "
                  + bite.width()
                  + " off a wall "
                  + bite.depth()
                  + " deep at once is heavy for a small mill; leave at most "
                  + side
                  + " for it, or go down by "
                  + limit
                  + " at a time",
              new Related(feature.spec().origin(), "it is drawn here")));
    }
  }

  /** How deep a cutter goes at once with half its diameter or more in the metal. */
  public static Length slotPass(Limits limits, Owned.Cutter cutter) {
    return Length.ofMillimetres(limits.number(Limit.SLOT_PASS) * cutter.dia().millimetres());
  }

  /** The clause that sets the depth of a level, or the whole line where none does. */
  static Origin origin(FeatureRun feature) {
    return feature.cut().way().pass() == null
        ? feature.cut().origin()
        : feature.cut().way().pass().origin();
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
    if (!limit.isPositive()
        || !cut.removal().high().isPositive()
        || cut.cut().purpose() instanceof Purpose.Clean) {
      return "";
    }
    long count = cut.removal().high().stepsOf(limit);
    return " (" + count + " passes for " + cut.removal().high() + ")";
  }
}
