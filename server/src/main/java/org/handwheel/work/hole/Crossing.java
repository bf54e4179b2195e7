package org.handwheel.work.hole;

import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.work.PartBox;
import org.handwheel.work.hole.HoleRun.Result;

/** Whether two holes of different faces meet inside the part. */
public final class Crossing {
  private Crossing() {}

  /**
   * Whether a tool for one hole breaks into another.
   *
   * @param made what the tool did
   * @param other a hole that is there
   * @param bore its diameter
   */
  public static boolean meets(Result made, DrawnHole other, Length bore) {
    DrawnHole hole = made.hole();
    Length dia = made.bit().dia();
    Length depth = made.tip();
    Length otherDepth = other.depth();
    PartDimension along = hole.spec().face().dimension();
    PartDimension otherAlong = other.spec().face().dimension();
    if (dia == null || depth == null || otherDepth == null || along == otherAlong) {
      return false;
    }
    PartBox.Point a = hole.point();
    PartBox.Point b = other.point();
    PartDimension across = hole.spec().face().cross(other.spec().face()).dimension();
    Length radius = dia.half();
    Length otherRadius = bore.half();
    Length apart = a.along(across).minus(b.along(across)).abs();
    if (!apart.isLessThan(radius.plus(otherRadius))) {
      return false;
    }
    // How deep below this hole's face the other's wall begins, and the other way round.
    Length toOther = hole.frame().depth(b).minus(otherRadius);
    Length toThis = other.frame().depth(a).minus(radius);
    return toOther.isLessThan(depth) && toThis.isLessThan(otherDepth);
  }
}
