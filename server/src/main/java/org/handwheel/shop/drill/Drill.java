package org.handwheel.shop.drill;

import java.util.Comparator;
import org.handwheel.shop.table.Provenance;
import org.handwheel.units.Length;

/**
 * A twist drill as it is sold.
 *
 * @param designation as a plan writes it: {@code no 7}, {@code letter F}, {@code 5/16 in}, {@code
 *     6.8}
 * @param series the series it belongs to
 * @param diameter its nominal diameter, exactly
 * @param provenance where the diameter comes from
 */
public record Drill(
    String designation, DrillSeries series, Length diameter, Provenance provenance) {
  /** By diameter; equal ones in the order of their series. */
  static final Comparator<Drill> BY_SIZE =
      Comparator.comparing(Drill::diameter).thenComparing(Drill::series);

  /** The designation with the unit a bare metric size takes: {@code 6.8 mm}. */
  public String words() {
    return series == DrillSeries.METRIC ? designation + " mm" : designation;
  }
}
