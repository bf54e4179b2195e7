package org.handwheel.work;

import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Located;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.handwheel.work.CutRun.Mode;

/**
 * How flat a face comes from a cut.
 *
 * <p>Geometry: the end of a cutter of radius R whose axis leans by the slope e along its travel
 * cuts with one edge of its circle only and leaves a hollow: at the distance y from the middle of
 * the lane it is e sqrt(R^2 - y^2) deep. Leaning across its travel it leaves a slanted plane, and
 * where lanes lie side by side at a step s, steps of e s. What the machine's ways and the work's
 * own give add is a limit of the shop.
 */
final class Flatness {
  private Flatness() {}

  /** A bound for what the head's tilt and the machine leave, in the sense of a zone's width. */
  static Length after(CutRun cut, Slope tram, Limits limits) {
    return limits.length(Limit.FLATNESS).plus(tram.over(leaningRun(cut)));
  }

  /** The length over which the tilt counts. */
  private static Length leaningRun(CutRun cut) {
    if (cut.mode() != Mode.END) {
      return Length.ZERO;
    }
    Length radius = cut.cutter().radius();
    Located<Length> stepOver = cut.cut().stepOver();
    if (stepOver != null) {
      // The outermost lanes may just reach the edge of the face, where their hollow ends.
      return radius.plus(stepOver.value());
    }
    Engagement engagement = cut.engagement();
    double left = chord(engagement.left());
    double right = chord(engagement.right());
    boolean overMiddle = engagement.left() >= 0 && engagement.right() <= 0;
    double deepest = overMiddle ? 1 : Math.max(left, right);
    return Length.ofMillimetres(radius.millimetres() * (deepest - Math.min(left, right)));
  }

  private static double chord(double lateral) {
    return Math.sqrt(Math.max(0, 1 - lateral * lateral));
  }
}
