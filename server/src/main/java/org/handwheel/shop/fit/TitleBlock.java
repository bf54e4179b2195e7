package org.handwheel.shop.fit;

import java.util.Map;
import java.util.Optional;
import org.handwheel.units.Length;

/**
 * A title block that gives the tolerance by the count of decimal places written.
 *
 * @param byPlaces plus-or-minus deviation by the count of places
 * @param angleMinutes plus-or-minus deviation of an angle in minutes of arc
 */
public record TitleBlock(Map<Integer, Length> byPlaces, int angleMinutes) {
  /**
   * A usual inch title block: .X 0.03 in, .XX 0.01 in, .XXX 0.005 in, angles half a degree.
   *
   * <p>Common practice, no source, and not the same in every shop: the drawing's own block decides.
   */
  public static final TitleBlock USUAL_INCH =
      new TitleBlock(
          Map.of(1, Length.inches("0.03"), 2, Length.inches("0.01"), 3, Length.inches("0.005")),
          30);

  public TitleBlock {
    byPlaces = Map.copyOf(byPlaces);
  }

  /** The deviation for a size written with so many decimal places, where the block names it. */
  public Optional<Length> tolerance(int places) {
    return Optional.ofNullable(byPlaces.get(places));
  }
}
