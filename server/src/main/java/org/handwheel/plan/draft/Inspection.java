package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Drawing;

/**
 * How the finished part is checked: whatever has a tolerance, with an instrument four times finer
 * (common practice, no source).
 *
 * @param text the section, empty if there is nothing to check
 * @param leftOut what has a tolerance and no instrument for it
 */
record Inspection(String text, List<String> leftOut) {
  Inspection {
    leftOut = List.copyOf(leftOut);
  }

  static Inspection of(Task task) {
    List<String> lines = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    for (PartDimension dimension : PartDimension.values()) {
      Drawing.Demand demand = task.demand(dimension);
      if (demand != null) {
        task.instrument(demand, Length.ZERO)
            .ifPresent(one -> lines.add("check " + dimension.word() + " with " + one.name()));
      }
    }
    Optional<Owned.Instrument> square = task.instrument(Owned.InstrumentKind.SQUARE);
    Optional<Owned.Instrument> indicator = task.instrument(Owned.InstrumentKind.INDICATOR);
    for (Callout callout : task.part().callouts()) {
      if (callout instanceof Callout.Square relation) {
        square.ifPresent(
            one ->
                lines.add(
                    "check square "
                        + relation.face().word()
                        + " to "
                        + relation.reference().word()
                        + " with "
                        + one.name()));
      } else if (callout instanceof Callout.Parallel relation) {
        indicator.ifPresent(
            one ->
                lines.add(
                    "check parallel "
                        + relation.face().word()
                        + " to "
                        + relation.reference().word()
                        + " with "
                        + one.name()));
      } else if (callout instanceof Callout.Flat flat) {
        indicator.ifPresent(
            one -> lines.add("check flat " + flat.face().word() + " with " + one.name()));
      }
    }
    holes(task, lines, leftOut);
    outlines(task, lines, leftOut);
    return new Inspection(
        lines.isEmpty() ? "" : "\ninspect\n  " + String.join("\n  ", lines) + "\n", leftOut);
  }

  /** Holes to a fit want a gauge that goes in on one side only. */
  private static void holes(Task task, List<String> lines, List<String> leftOut) {
    for (HoleSpec hole : task.part().holes()) {
      Length dia = hole.dia();
      if (dia == null || hole.fit() == null) {
        continue;
      }
      Optional<Owned.Instrument> gauge =
          task.shop().all(Owned.Instrument.class).stream()
              .filter(one -> one.instrumentKind() == Owned.InstrumentKind.PLUG_GAUGE)
              .filter(one -> one.range() != null && one.range().contains(dia))
              .findFirst();
      gauge.ifPresent(one -> lines.add("check " + hole.name() + " with " + one.name()));
      if (gauge.isEmpty()) {
        leftOut.add(
            "the hole "
                + hole.name()
                + " is not inspected: no plug gauge of the shop has a `range` with "
                + dia);
      }
    }
  }

  private static void outlines(Task task, List<String> lines, List<String> leftOut) {
    for (FeatureSpec outline : task.part().features()) {
      Length tolerance = outline.tolerance();
      if (outline.featureKind() != FeatureKind.OUTLINE || tolerance == null) {
        continue;
      }
      Length largest = Length.max(Outlines.first(outline), Outlines.second(outline));
      LengthRange limits = LengthRange.around(largest, tolerance);
      Optional<Owned.Instrument> instrument =
          task.measuring(limits)
              .filter(one -> !one.accuracy().times(2).isMoreThan(tolerance))
              .max(Comparator.comparing(Owned.Instrument::accuracy));
      instrument.ifPresent(one -> lines.add("check " + outline.name() + " with " + one.name()));
      if (instrument.isEmpty()) {
        leftOut.add(
            "the outline "
                + outline.name()
                + " is not inspected: no instrument reaches "
                + largest
                + " and is good to "
                + tolerance.half());
      }
    }
  }
}
