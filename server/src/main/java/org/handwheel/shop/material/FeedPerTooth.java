package org.handwheel.shop.material;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.shop.table.Provenance;
import org.handwheel.shop.table.Row;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;

/** The usual feed per tooth of a material by cutter: a starting point. */
public final class FeedPerTooth {
  /**
   * Below about half a thou per tooth a cutter rubs instead of cutting (common practice, no
   * source).
   */
  public static final Length LEAST = Length.inches("0.0005");

  private final String name;
  private final Length faceMill;
  private final NavigableMap<Length, Length> endMills;
  private final Provenance provenance;

  /**
   * A schedule of feeds.
   *
   * @param name what the schedule is called
   * @param faceMill feed per tooth of face mills and fly cutters
   * @param endMills feed per tooth of end mills by diameter, at least one
   * @param provenance where they come from
   */
  public FeedPerTooth(
      String name, Length faceMill, Map<Length, Length> endMills, Provenance provenance) {
    if (endMills.isEmpty()) {
      throw new IllegalArgumentException("a schedule of feeds names at least one diameter");
    }
    this.name = name;
    this.faceMill = faceMill;
    this.endMills = new TreeMap<>(endMills);
    this.provenance = provenance;
  }

  static FeedPerTooth read(Row row) {
    Map<Length, Length> endMills = new TreeMap<>();
    for (String diameter : row.columnsFrom("2")) {
      endMills.put(Length.mm(diameter), row.length(diameter, LengthUnit.MM));
    }
    return new FeedPerTooth(
        row.text("feed"), row.length("face mill", LengthUnit.MM), endMills, row.provenance());
  }

  public String name() {
    return name;
  }

  /** For face mills and fly cutters. */
  public Length faceMill() {
    return faceMill;
  }

  /**
   * For an end mill: on a straight line between the diameters of the table, and the end value
   * outside them.
   */
  public Length endMill(Length diameter) {
    var below = endMills.floorEntry(diameter);
    var above = endMills.ceilingEntry(diameter);
    if (below == null) {
      return endMills.firstEntry().getValue();
    }
    if (above == null) {
      return below.getValue();
    }
    Length span = above.getKey().minus(below.getKey());
    if (span.isZero()) {
      return below.getValue();
    }
    BigFraction share = diameter.minus(below.getKey()).over(span);
    return below.getValue().plus(above.getValue().minus(below.getValue()).times(share));
  }

  public Provenance provenance() {
    return provenance;
  }
}
