package org.handwheel.rules.size;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.LogSection;
import org.handwheel.model.Part;
import org.handwheel.model.Part.DimensionSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.model.Stock;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;
import org.handwheel.work.Drawing.Demand;
import org.jspecify.annotations.Nullable;

/** A size or depth that looks like a slip between millimetres and inches. */
public final class UnitSuspect extends SimpleRule implements EachSetup {
  /** No one means to wind so many passes over one face (common practice, no source). */
  private static final int MOST_PASSES = 50;

  public UnitSuspect() {
    super("unit-suspect", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.cuts().forEach(cut -> checkCut(checkup, cut, out));
  }

  @Override
  public void checkPlan(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    Stock stock = checkup.plan().stock();
    if (part != null && stock != null) {
      for (PartDimension dimension : Drawing.suspects(part, stock)) {
        DimensionSpec spec = part.dimension(dimension);
        Length size = stock.sizes().get(dimension);
        if (spec != null && size != null) {
          reportSize(spec, size, stock, out);
        }
      }
    }
    if (checkup.run().log() != null) {
      checkup.run().log().readings().forEach(reading -> checkReading(checkup, reading, out));
    }
  }

  /**
   * A pass so deep that a slip of unit is likelier than courage: ten times the heavy one, or with
   * the side of the cutter more than its diameter.
   */
  public static boolean isSuspectDepth(Checkup checkup, CutRun cut) {
    Length most = cut.mode() == CutRun.Mode.END ? tooMuch(checkup) : cut.cutter().dia();
    return writtenDepth(cut) != null && cut.writtenPass().isMoreThan(most);
  }

  private static Length tooMuch(Checkup checkup) {
    return checkup.limits().length(Limit.HEAVY_PASS).times(10);
  }

  /** Where the depth of a pass is written; nothing if it only follows from the size. */
  private static @Nullable Origin writtenDepth(CutRun cut) {
    if (cut.cut().purpose() instanceof Purpose.Clean clean) {
      return clean.at().origin();
    }
    Passes passes =
        cut.cut().purpose() instanceof Purpose.Rough rough
            ? rough.passes()
            : cut.cut().purpose() instanceof Purpose.Finish finish ? finish.passes() : null;
    return passes == null || passes instanceof Passes.Single ? null : passes.origin();
  }

  private void checkCut(Checkup checkup, CutRun cut, Consumer<Finding> out) {
    Origin depth = writtenDepth(cut);
    Related size = new Related(cut.before().since(), "the size before comes from here");
    if (depth != null && isSuspectDepth(checkup, cut)) {
      out.accept(
          finding(
              depth,
              "a pass of " + cut.writtenPass() + " is many times the usual; is the unit right?",
              size));
    } else if (depth != null && cut.passes() > MOST_PASSES) {
      out.accept(
          finding(
              depth,
              "passes of "
                  + cut.writtenPass()
                  + " would be "
                  + cut.passes()
                  + " in number; is the unit right?",
              size));
    }
    if (cut.cut().purpose() instanceof Purpose.Rough rough
        && rough.leaving() != null
        && rough.leaving().value().isMoreThan(tooMuch(checkup))) {
      out.accept(
          finding(
              rough.leaving().origin(),
              "leaving " + rough.leaving().value() + " is many times the usual; is the unit right?",
              size));
    }
  }

  private void checkReading(Checkup checkup, LogSection.Reading reading, Consumer<Finding> out) {
    Demand demand = checkup.demand(reading.dimension());
    if (demand == null) {
      return;
    }
    reading.values().stream()
        .filter(value -> Drawing.isSlip(value, demand.aim()))
        .findFirst()
        .ifPresent(
            value ->
                out.accept(
                    finding(
                        reading.origin(),
                        "a reading of "
                            + value
                            + " for a "
                            + demand.dimension().word()
                            + " of "
                            + demand.nominal()
                            + " differs about 25.4 times: mm or in?",
                        new Related(
                            demand.origin(),
                            "the " + demand.dimension().word() + " on the drawing"))));
  }

  private void reportSize(DimensionSpec spec, Length size, Stock stock, Consumer<Finding> out) {
    out.accept(
        finding(
            spec.origin(),
            "a "
                + spec.dimension().word()
                + " of "
                + spec.nominal()
                + " from stock of "
                + size
                + " differs about 25.4 times: mm or in?",
            new Related(
                stock.sizeOrigin() == null ? stock.origin() : stock.sizeOrigin(),
                "the stock's size")));
  }
}
