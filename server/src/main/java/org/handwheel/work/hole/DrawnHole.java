package org.handwheel.work.hole;

import java.util.Set;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.PartBox;
import org.jspecify.annotations.Nullable;

/**
 * One hole of the drawing at its place.
 *
 * @param pattern the pattern that places it, if one does
 * @param number its place in the pattern, from 1; 0 for a hole with a place of its own
 * @param frame the face it is drawn on
 * @param place where on the face
 * @param mirrored the dimensions in which it is the other side of what the pattern says
 * @param thread its thread, if it has one that the tables know
 */
public record DrawnHole(
    HoleSpec spec,
    @Nullable PatternSpec pattern,
    int number,
    FaceFrame frame,
    Place place,
    Set<PartDimension> mirrored,
    @Nullable ScrewThread thread) {
  public DrawnHole {
    mirrored = Set.copyOf(mirrored);
  }

  /** What to call it: {@code shaft}, or {@code studs 3} in a pattern. */
  public String name() {
    return pattern == null ? spec.name() : pattern.name() + " " + number;
  }

  /** The line that gives it its place. */
  public Origin origin() {
    return pattern == null ? spec.origin() : pattern.origin();
  }

  /** The diameter of the finished hole, over the thread if it has one; nothing if not known. */
  public @Nullable Length dia() {
    return thread != null ? thread.major() : spec.dia();
  }

  /** The largest diameter it has at its face, with its counterbore, countersink or spotface. */
  public Length widest() {
    Length widest = dia() == null ? Length.ZERO : dia();
    for (@Nullable Length more :
        new Length[] {spec.spotface(), spec.counterboreDia(), spec.countersink()}) {
      widest = more == null ? widest : Length.max(widest, more);
    }
    return widest;
  }

  /** The full-diameter depth of the bore below its face; nothing if the drawing does not say. */
  public @Nullable Length depth() {
    if (spec.through()) {
      return frame.thickness();
    }
    if (spec.drillDepth() != null) {
      return spec.drillDepth().value();
    }
    return spec.depth() != null ? spec.depth() : spec.threadDepth();
  }

  /**
   * How deep below its face the point of its own drill goes, or of the tapping drill; nothing for a
   * through hole, or if the drawing does not say.
   */
  public @Nullable Length tip() {
    Length drill = thread != null ? thread.tapDrill().diameter() : spec.dia();
    Length depth = depth();
    return spec.through() || drill == null || depth == null
        ? null
        : DrillPoint.GENERAL.tipDepth(drill, depth);
  }

  /** Its middle on the face, in the part's box. */
  public PartBox.Point point() {
    return frame.point(place, Length.ZERO);
  }
}
