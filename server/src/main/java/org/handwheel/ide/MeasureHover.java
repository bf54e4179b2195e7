package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.model.Inspection;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Step;
import org.handwheel.shop.fit.MeasuringCapability;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.Drawing;
import org.jspecify.annotations.Nullable;

/** How well an instrument tells whether a size keeps its tolerance. */
final class MeasureHover {
  private MeasureHover() {}

  /** A line that measures or checks a size of the part. */
  static Optional<HoverText> text(View view, Origin line) {
    Plan plan = view.plan();
    if (plan == null || view.run() == null) {
      return Optional.empty();
    }
    Optional<HoverText> measured =
        view.run()
            .steps()
            .filter(step -> step.step().origin().equals(line))
            .map(step -> step.step() instanceof Step.Measure measure ? measure : null)
            .filter(measure -> measure != null)
            .findFirst()
            .map(measure -> text(view, measure.dimension(), measure.instrument()));
    return measured.or(
        () ->
            plan.inspections().stream()
                .filter(inspection -> inspection instanceof Inspection.OfDimension)
                .map(inspection -> (Inspection.OfDimension) inspection)
                .filter(check -> within(check.origin(), line))
                .findFirst()
                .map(check -> text(view, check.dimension(), check.instrument())));
  }

  private static boolean within(Origin inner, Origin line) {
    return inner.section() == line.section()
        && line.start() <= inner.start()
        && inner.end() <= line.end();
  }

  private static HoverText text(View view, PartDimension dimension, Owned.Instrument instrument) {
    HoverText.Builder text =
        HoverText.titled("the " + dimension.word() + ", with " + instrument.name());
    Drawing.Demand demand = view.run() == null ? null : view.run().drawing().demand(dimension);
    text.fact("Shows", instrument.resolution().toString());
    text.fact("Is good to", instrument.accuracy().toString());
    if (demand != null) {
      Length width = demand.limits().width();
      text.fact("Tolerance", width + " in all");
      text.fact("By what it shows", verdict(width, instrument.resolution()));
      text.fact("By what it is good to", verdict(width, instrument.accuracy()));
      text.formula(
          "ten times finer than the tolerance is good, four times will do: common practice, no"
              + " source");
    }
    return text.build();
  }

  private static String verdict(Length width, @Nullable Length step) {
    if (step == null || !step.isPositive()) {
      return "not known";
    }
    String ratio = QuantityText.number(width.over(step).doubleValue(), 1) + " to one: ";
    return ratio
        + switch (MeasuringCapability.of(width, step)) {
          case GOOD -> "good";
          case FAIR -> "will do";
          case DOUBTFUL -> "doubtful near a limit";
          case TOO_COARSE -> "too coarse";
        };
  }
}
