package org.handwheel.work;

import org.handwheel.model.Face;
import org.handwheel.syntax.Origin;
import org.handwheel.units.LengthRange;
import org.locationtech.jts.geom.Geometry;

/**
 * Metal that a step took out of the part: a region of a face and how deep it reaches.
 *
 * @param from the face it was cut from
 * @param region where, in the coordinates of {@link FaceFrame}, in millimetres
 * @param depth from where to where below the face; the low end is zero unless it begins inside
 * @param through whether it comes out on the other side
 * @param feature the name of the hole, slot or outline
 * @param step the line that cut it
 */
public record Removed(
    Face from,
    Geometry region,
    LengthRange depth,
    boolean through,
    String feature,
    Origin step,
    Kind kind) {
  /** What it is. */
  public enum Kind {
    SPOT,
    HOLE,
    COUNTERBORE,
    COUNTERSINK,
    SLOT,
    POCKET,
    OUTLINE,
    WINDOW,
    CORNER,
    CHAMFER,
    PROFILE,
    STEP
  }
}
