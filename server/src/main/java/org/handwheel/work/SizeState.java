package org.handwheel.work;

import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one of the block's sizes.
 *
 * @param range what it may be, over all pieces made to the plan
 * @param known how well the operator knows the size of this piece, by measuring it since the last
 *     cut; nothing if it was not measured
 * @param outOfParallel how far several readings differ, if there were several
 * @param since the line that made it so
 */
public record SizeState(
    LengthRange range, @Nullable Length known, @Nullable Length outOfParallel, Origin since) {
  /** How far off the size may be when a cut is set by it. */
  public Length uncertainty() {
    return known == null ? range.spread() : known;
  }
}
