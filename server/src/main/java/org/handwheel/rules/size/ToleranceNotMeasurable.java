package org.handwheel.rules.size;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.model.Inspection;
import org.handwheel.model.Owned.Instrument;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.PlanRun.StepRun;

/** The last measurement of a size is made with an instrument too coarse for its tolerance. */
public final class ToleranceNotMeasurable extends SimpleRule {
  /** An instrument should be at least four times finer (common practice, no source). */
  private static final int FINER = 4;

  public ToleranceNotMeasurable() {
    super("tolerance-not-measurable", Severity.WARNING);
  }

  private record Last(Instrument instrument, Origin origin) {}

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Map<PartDimension, Last> last = new EnumMap<>(PartDimension.class);
    for (StepRun step : checkup.run().steps().toList()) {
      if (step.reading() != null) {
        last.put(
            step.reading().dimension(),
            new Last(step.reading().instrument(), step.reading().origin()));
      } else if (step.step() instanceof Step.Measure measure) {
        last.put(measure.dimension(), new Last(measure.instrument(), measure.origin()));
      }
    }
    for (Inspection inspection : checkup.plan().inspections()) {
      if (inspection instanceof Inspection.OfDimension check) {
        last.put(check.dimension(), new Last(check.instrument(), check.origin()));
      }
    }
    last.forEach((dimension, measure) -> check(checkup, dimension, measure, out));
  }

  private void check(Checkup checkup, PartDimension dimension, Last last, Consumer<Finding> out) {
    Demand demand = checkup.demand(dimension);
    if (demand == null) {
      return;
    }
    Instrument instrument = last.instrument();
    Related drawing = new Related(demand.origin(), "the " + dimension.word() + " on the drawing");
    if (!instrument.instrumentKind().measuresSizes()) {
      out.accept(
          finding(last.origin(), "`" + instrument.name() + "` does not measure sizes", drawing));
      return;
    }
    if (instrument.range() != null && !instrument.range().contains(demand.aim())) {
      out.accept(
          finding(
              last.origin(),
              "`"
                  + instrument.name()
                  + "` measures "
                  + instrument.range()
                  + "; the "
                  + dimension.word()
                  + " is "
                  + demand.aim(),
              drawing));
      return;
    }
    Length width = demand.limits().width();
    if (instrument.accuracy().times(FINER).isMoreThan(width)) {
      out.accept(
          finding(
              last.origin(),
              "`"
                  + instrument.name()
                  + "` is good to "
                  + LengthText.both(instrument.accuracy())
                  + "; for a tolerance of "
                  + LengthText.both(width)
                  + " in all it should be four times finer than that",
              drawing));
    }
  }
}
