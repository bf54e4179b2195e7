package org.handwheel.work.feature;

import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.units.Length;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun.SetupRun;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** What holds the metal that an outline leaves standing. */
public final class Standing {
  private Standing() {}

  /**
   * Whether a clamp's point lies within the outline. Clamps are placed from the work's corner at
   * the operator's left and front.
   */
  public static boolean isClamped(
      SetupRun setup, DrawnFeature drawn, DrawnFeature.Form.Round round, Hold hold) {
    return isClamped(setup, drawn, drawn.finished(round), hold);
  }

  /** Whether a clamp's point lies within a region of a feature's face. */
  public static boolean isClamped(
      SetupRun setup, DrawnFeature drawn, Geometry standing, Hold hold) {
    Orientation lies = setup.orientation();
    if (lies == null) {
      return true;
    }
    PartBox box = drawn.frame().box();
    for (Hold.Clamping clamping : hold.clamps()) {
      Length first = inPart(Axis.X, clamping.x(), lies, box);
      Length second = inPart(Axis.Y, clamping.y(), lies, box);
      boolean alongX = Lying.of(drawn.frame(), lies).alongX();
      Coordinate point =
          alongX
              ? new Coordinate(first.millimetres(), second.millimetres())
              : new Coordinate(second.millimetres(), first.millimetres());
      if (standing.contains(Plane.FACTORY.createPoint(point))) {
        return true;
      }
    }
    return false;
  }

  /** A distance from the work's low side at the machine, in the part's own coordinate. */
  private static Length inPart(Axis axis, Length fromLow, Orientation lies, PartBox box) {
    var low = lies.facing(Direction.of(axis, -1));
    return low.sign() < 0 ? fromLow : box.size(low.dimension()).minus(fromLow);
  }
}
