package org.handwheel.rules.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Inspection;
import org.handwheel.model.Owned.Instrument;
import org.handwheel.model.Part;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.fit.MeasuringCapability;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.DrawnLimits;
import org.handwheel.work.DrawnLimits.Source;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.feature.FeatureSizes;
import org.jspecify.annotations.Nullable;

/** An instrument that cannot measure the size, or is too coarse for the size's tolerance. */
public final class ToleranceNotMeasurable extends SimpleRule {
  /** An instrument should be at least four times finer (common practice, no source). */
  private static final BigFraction FINER = BigFraction.of(1, 4);

  /** Limits that stand beside the size itself. */
  private static final Set<Source> OWN = Set.of(Source.OWN, Source.FIT);

  public ToleranceNotMeasurable() {
    super("tolerance-not-measurable", Severity.WARNING);
  }

  /**
   * One measurement.
   *
   * @param size what the size is about then, if that is known
   */
  private record Measured(
      PartDimension dimension, Instrument instrument, Origin origin, @Nullable LengthRange size) {
    Related described() {
      return new Related(instrument.origin(), "`" + instrument.name() + "` is described here");
    }
  }

  /**
   * What one setup says of a dimension at last.
   *
   * @param measured how it was measured after the last cut along it, or nothing if a cut came after
   */
  private record Last(PartDimension dimension, @Nullable Measured measured) {}

  /**
   * The measuring in one setup.
   *
   * @param unfit what is measured with an instrument that cannot
   */
  private record MeasuredIn(List<Last> last, List<Measured> unfit) {
    static MeasuredIn of(SetupRun setup) {
      Map<PartDimension, Last> last = new EnumMap<>(PartDimension.class);
      List<Measured> unfit = new ArrayList<>();
      for (StepRun step : setup.steps()) {
        if (step.step() instanceof Step.Cut cut) {
          PartDimension dimension = cut.face().dimension();
          last.put(dimension, new Last(dimension, null));
        } else if (step.step() instanceof Step.Measure measure) {
          Measured measured = measured(step, measure);
          if (isFit(measured)) {
            last.put(measured.dimension(), new Last(measured.dimension(), measured));
          } else {
            unfit.add(measured);
          }
        }
      }
      return new MeasuredIn(List.copyOf(last.values()), List.copyOf(unfit));
    }
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    // Only what is measured after the last cut tells whether the finished size is right.
    Map<PartDimension, Measured> last = new EnumMap<>(PartDimension.class);
    for (MeasuredIn setup : checkup.gathered(MeasuredIn.class, MeasuredIn::of)) {
      setup.unfit().forEach(measured -> reportUnfit(measured, out));
      for (Last of : setup.last()) {
        if (of.measured() == null) {
          last.remove(of.dimension());
        } else {
          last.put(of.dimension(), of.measured());
        }
      }
    }
    for (Inspection inspection : checkup.plan().inspections()) {
      if (inspection instanceof Inspection.OfDimension check) {
        Demand demand = checkup.demand(check.dimension());
        LengthRange range = demand == null ? null : demand.limits();
        Measured measured =
            new Measured(check.dimension(), check.instrument(), check.origin(), range);
        if (isFit(measured)) {
          last.put(measured.dimension(), measured);
        } else {
          reportUnfit(measured, out);
        }
      } else if (inspection instanceof Inspection.OfFeature check) {
        checkOpening(checkup, check, out);
      }
    }
    if (checkup.isWhole()) {
      last.values().forEach(measured -> checkAccuracy(checkup, measured, out));
    }
  }

  /** What is checked across holes, slots and outlines; a gauge that only goes in says go or no. */
  private void checkOpening(Checkup checkup, Inspection.OfFeature check, Consumer<Finding> out) {
    Instrument instrument = check.instrument();
    Part part = checkup.plan().part();
    if (part == null || !instrument.instrumentKind().measuresSizes()) {
      return;
    }
    Optional<Across> narrowest =
        across(checkup, part, check.name())
            .min(Comparator.comparing(size -> size.limits().width()));
    narrowest.ifPresent(size -> checkOpening(check, size, out));
  }

  private void checkOpening(Inspection.OfFeature check, Across size, Consumer<Finding> out) {
    Instrument instrument = check.instrument();
    Length accuracy = instrument.accuracy();
    Length width = size.limits().width();
    Related drawn = new Related(size.origin(), "it is drawn here");
    Related described =
        new Related(instrument.origin(), "`" + instrument.name() + "` is described here");
    if (instrument.range() != null && !instrument.range().overlaps(size.limits())) {
      out.accept(
          finding(
              check.origin(),
              "`"
                  + instrument.name()
                  + "` measures "
                  + instrument.range()
                  + "; the "
                  + size.words()
                  + " is "
                  + size.limits(),
              drawn,
              described));
    } else if (accuracy.isPositive() && !MeasuringCapability.of(width, accuracy).isAcceptable()) {
      out.accept(
          finding(
              check.origin(),
              "`"
                  + instrument.name()
                  + "` is good to "
                  + accuracy
                  + "; the tolerance of the "
                  + size.words()
                  + " is "
                  + width
                  + " in all, and a quarter of it, "
                  + width.times(FINER)
                  + ", is wanted",
              drawn,
              described));
    }
  }

  /** A size of a hole, slot or outline with a tolerance of its own. */
  private record Across(String words, LengthRange limits, Origin origin) {}

  private static Stream<Across> across(Checkup checkup, Part part, String name) {
    Stream<Across> holes =
        part.holes().stream()
            .filter(hole -> isNamed(part, hole, name))
            .flatMap(
                hole ->
                    DrawnLimits.of(hole, part, checkup.limits(), checkup.tables())
                        .filter(found -> OWN.contains(found.source()))
                        .stream()
                        .map(
                            found ->
                                new Across(
                                    "diameter of `" + hole.name() + "`",
                                    found.limits(),
                                    hole.origin())));
    Stream<Across> features =
        part.features().stream()
            .filter(spec -> spec.name().equalsIgnoreCase(name))
            .flatMap(
                spec ->
                    FeatureSizes.written(spec).stream()
                        .map(
                            size ->
                                new Across(
                                    size.word() + " of `" + spec.name() + "`",
                                    size.limits().limits(),
                                    spec.origin())));
    return Stream.concat(holes, features);
  }

  private static boolean isNamed(Part part, HoleSpec hole, String name) {
    return hole.name().equalsIgnoreCase(name)
        || part.patterns().stream()
            .anyMatch(
                pattern ->
                    pattern.name().equalsIgnoreCase(name)
                        && pattern.hole().equalsIgnoreCase(hole.name()));
  }

  private static Measured measured(StepRun step, Step.Measure measure) {
    SizeState size = step.before().size(measure.dimension());
    LengthRange range = size == null ? null : size.range();
    return step.reading() == null
        ? new Measured(measure.dimension(), measure.instrument(), measure.origin(), range)
        : new Measured(
            measure.dimension(), step.reading().instrument(), step.reading().origin(), range);
  }

  private static boolean isFit(Measured measured) {
    return measured.instrument().instrumentKind().measuresSizes() && !isOutOfRange(measured);
  }

  private void reportUnfit(Measured measured, Consumer<Finding> out) {
    if (measured.instrument().instrumentKind().measuresSizes()) {
      reportRange(measured, out);
    } else {
      out.accept(
          finding(
              measured.origin(),
              "`" + measured.instrument().name() + "` does not measure sizes",
              measured.described()));
    }
  }

  private static boolean isOutOfRange(Measured measured) {
    return measured.instrument().range() != null
        && measured.size() != null
        && !measured.instrument().range().overlaps(measured.size());
  }

  private void reportRange(Measured measured, Consumer<Finding> out) {
    out.accept(
        finding(
            measured.origin(),
            "`"
                + measured.instrument().name()
                + "` measures "
                + measured.instrument().range()
                + "; the "
                + measured.dimension().word()
                + " is "
                + measured.size()
                + " here",
            measured.described()));
  }

  private void checkAccuracy(Checkup checkup, Measured measured, Consumer<Finding> out) {
    Demand demand = checkup.demand(measured.dimension());
    if (demand == null) {
      return;
    }
    Length width = demand.limits().width();
    Length wanted = width.times(FINER);
    Length accuracy = measured.instrument().accuracy();
    if (accuracy.isPositive() && !MeasuringCapability.of(width, accuracy).isAcceptable()) {
      out.accept(
          finding(
              measured.origin(),
              "`"
                  + measured.instrument().name()
                  + "` is good to "
                  + measured.instrument().accuracy()
                  + "; the tolerance is "
                  + width
                  + " in all, and a quarter of it, "
                  + wanted
                  + ", is wanted",
              new Related(
                  demand.origin(), "the " + measured.dimension().word() + " on the drawing"),
              measured.described()));
    }
  }
}
