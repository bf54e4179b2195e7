package org.handwheel.work;

import java.util.Map;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;

/**
 * That two faces are square or parallel to each other within a bound, and why.
 *
 * @param slopes the bound of the error along each direction of the part it can show in
 * @param reason in words, without a full stop
 * @param origin the line that made it so
 */
public record Relation(Map<PartDimension, Slope> slopes, String reason, Origin origin) {
  public Relation {
    slopes = Map.copyOf(slopes);
  }

  /** A relation whose error is the same whichever way it is looked at. */
  static Relation square(Face face, Face other, Slope slope, String reason, Origin origin) {
    return new Relation(Map.of(face.dimension(), slope, other.dimension(), slope), reason, origin);
  }

  public Slope along(PartDimension dimension) {
    return slopes.getOrDefault(dimension, Slope.NONE);
  }

  /**
   * The width of the zone that holds {@code face}, in the sense of ISO 1101, when {@code reference}
   * is the datum.
   *
   * @param sizes the block's sizes
   */
  public Length zone(Face face, Face reference, Map<PartDimension, SizeState> sizes) {
    Length zone = Length.ZERO;
    for (PartDimension dimension : PartDimension.values()) {
      boolean counts =
          face.adjoins(reference)
              ? dimension == reference.dimension()
              : dimension != face.dimension();
      SizeState size = sizes.get(dimension);
      if (counts && size != null) {
        zone = zone.plus(along(dimension).over(size.range().high()));
      }
    }
    return zone;
  }
}
