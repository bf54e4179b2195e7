package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.model.Part;
import org.handwheel.model.Part.GeneralTolerance;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.Notation;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.units.Length;
import org.handwheel.work.Drawing;
import org.handwheel.work.DrawnLimits;
import org.handwheel.work.DrawnLimits.Source;

/** What the line of the general tolerance does to the sizes of the drawing. */
final class GeneralToleranceHover {
  private GeneralToleranceHover() {}

  static Optional<HoverText> text(View view) {
    Plan plan = view.plan();
    Part part = plan == null ? null : plan.part();
    GeneralTolerance general = part == null ? null : part.general();
    if (plan == null || part == null || general == null || view.run() == null) {
      return Optional.empty();
    }
    HoverText.Builder text = HoverText.titled("general tolerance");
    if (general instanceof GeneralTolerance.ByPlaces block) {
      block.deviations().entrySet().stream()
          .sorted((a, b) -> words(a.getKey()).compareTo(words(b.getKey())))
          .forEach(entry -> text.fact(words(entry.getKey()), "+-" + entry.getValue()));
    }
    int without = 0;
    for (PartDimension dimension : PartDimension.values()) {
      Drawing.Demand demand = view.run().drawing().demand(dimension);
      if (demand != null && demand.source() == Source.SHOP) {
        without++;
      } else if (demand != null && demand.source() != Source.OWN) {
        text.fact(dimension.word() + " " + demand.nominal(), demand.limits().toString());
      }
    }
    for (HoleSpec hole : part.holes()) {
      Optional<DrawnLimits> found = DrawnLimits.of(hole, part, plan.shop().limits(), view.tables());
      Length dia = hole.dia();
      if (found.isEmpty() || dia == null) {
        continue;
      }
      if (found.get().source() == Source.SHOP) {
        without++;
      } else if (found.get().source() == Source.STANDARD || found.get().source() == Source.PLACES) {
        text.fact("hole " + hole.name() + ", dia " + dia, found.get().limits().toString());
      }
    }
    if (without > 0) {
      text.note(
          (without == 1 ? "One size is" : without + " sizes are")
              + " not covered: the shop's limit for such sizes holds.");
    }
    text.formula(
        general instanceof GeneralTolerance.Standard
            ? "ISO 2768-1:1989, table 1: plus or minus by the size"
            : "plus or minus by the places the size is written with");
    return Optional.of(text.build());
  }

  private static String words(Notation notation) {
    return notation instanceof Notation.Decimal decimal
        ? switch (decimal.places()) {
          case 0 -> "whole numbers";
          case 1 -> "one place";
          default -> decimal.places() + " places";
        }
        : "fractions";
  }
}
