package org.handwheel.work.hole;

import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * A tool that goes into a hole.
 *
 * @param name what to take out of the drawer
 * @param dia its diameter; nothing for one whose size is not known, such as a spotting drill
 * @param point the cone at its end; nothing for a flat or open end
 * @param length over all, if known
 * @param known whether the shop owns it or the tables have it; false for a size that is not sold
 */
public record Bit(
    String name,
    @Nullable Length dia,
    @Nullable DrillPoint point,
    @Nullable Length length,
    boolean known) {
  /** How long the cone at its end is. */
  public Length pointLength() {
    return point == null || dia == null ? Length.ZERO : point.length(dia);
  }
}
