package org.handwheel.work;

import java.util.Optional;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Part;
import org.handwheel.model.Part.DimensionSpec;
import org.handwheel.model.Part.GeneralTolerance;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.Notation;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.jspecify.annotations.Nullable;

/**
 * What a size of the drawing may be, and which of its words say so.
 *
 * @param limits the least and the most
 */
public record DrawnLimits(LengthRange limits, Source source) {
  /** What sets the limits of a size. */
  public enum Source {
    /** A tolerance beside the size. */
    OWN("as written"),
    /** A class of ISO 286 beside the size. */
    FIT("ISO 286"),
    /** ISO 2768-1. */
    STANDARD("general tolerance"),
    /** The title block, by the places the size is written with. */
    PLACES("general tolerance by the places written"),
    /** The drawing says nothing. */
    SHOP("no tolerance given: the shop's limit for such sizes");

    private final String words;

    Source(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** The limits of a size of the part. */
  static DrawnLimits of(DimensionSpec spec, Part part, Limits shop, StandardTables tables) {
    return spec.limits() != null
        ? new DrawnLimits(spec.limits(), Source.OWN)
        : general(spec.nominal(), spec.notation(), part, shop, tables);
  }

  /** The limits of a bore; nothing for a thread, or a fit the tables do not have. */
  public static Optional<DrawnLimits> of(
      HoleSpec spec, Part part, Limits shop, StandardTables tables) {
    Length dia = spec.dia();
    if (dia == null || spec.thread() != null) {
      return Optional.empty();
    }
    if (spec.limits() != null) {
      return Optional.of(new DrawnLimits(spec.limits(), Source.OWN));
    }
    return spec.fit() != null
        ? tables.fits().limits(dia, spec.fit()).map(limits -> new DrawnLimits(limits, Source.FIT))
        : Optional.of(general(dia, spec.notation(), part, shop, tables));
  }

  /** The limits of a size without a tolerance of its own. */
  public static DrawnLimits general(
      Length nominal, @Nullable Notation notation, Part part, Limits shop, StandardTables tables) {
    GeneralTolerance general = part.general();
    if (general instanceof GeneralTolerance.Standard standard && standard.grade().length() == 1) {
      Optional<Length> spread =
          tables.generalTolerances().linear(nominal, standard.grade().charAt(0));
      if (spread.isPresent()) {
        return around(nominal, spread.get(), Source.STANDARD);
      }
    }
    if (general instanceof GeneralTolerance.ByPlaces block && notation != null) {
      Length spread = block.deviations().get(notation);
      if (spread != null) {
        return around(nominal, spread, Source.PLACES);
      }
    }
    return around(nominal, shop.length(Limit.UNTOLERANCED), Source.SHOP);
  }

  private static DrawnLimits around(Length nominal, Length spread, Source source) {
    return new DrawnLimits(LengthRange.around(nominal, spread), source);
  }
}
