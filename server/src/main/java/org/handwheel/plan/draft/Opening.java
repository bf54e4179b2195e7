package org.handwheel.plan.draft;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * A hole, a pattern of holes, or something cut into a face.
 *
 * @param half how far it reaches to each side of its middle, or of the middles of a pattern
 * @param beside how far down a cutter comes outside of the work, where the jaws may be; zero if it
 *     stays inside
 * @param below how far a tool comes out below the work; zero if it does not go through
 */
record Opening(
    String name,
    Extent extent,
    HoleTools.@Nullable Work work,
    @Nullable String cut,
    Owned.@Nullable Cutter cutter,
    Length half,
    Length below,
    Length beside,
    Length depth,
    boolean several) {

  /** How far down cutters come outside of the work, the furthest of several. */
  static Length beside(List<Opening> openings) {
    return openings.stream().map(Opening::beside).reduce(Length.ZERO, Length::max);
  }

  /** Whether it goes through and looks the same from both ends. */
  boolean isSameFromBelow() {
    return work != null
        && below.isPositive()
        && work.further().stream().allMatch(next -> next[0].equals("ream"));
  }

  /**
   * What is left beside it for a parallel at the fixed or the moving jaw, with a little to spare.
   */
  Optional<Length> room(Face fixed, Workpiece work, Numbers numbers) {
    return extent
        .beside(fixed.dimension(), half, work)
        .map(room -> room.minus(numbers.usual("0.3", "0.012")));
  }

  /** Whether parallels of this thickness stay clear of the tool that goes through, if one does. */
  boolean isClearOf(Length thickness, Face fixed, Workpiece work, Numbers numbers) {
    return !below.isPositive()
        || room(fixed, work, numbers).map(room -> !room.isLessThan(thickness)).orElse(false);
  }
}
