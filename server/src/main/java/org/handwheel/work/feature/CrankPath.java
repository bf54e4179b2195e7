package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;

/**
 * The way of the cutter's axis through a slot, pocket or step: straight lines along one handle
 * each, but for the short moves round a corner, where one handle follows the other.
 *
 * @param direction how the teeth meet the walls
 * @param points in order, exact, in the machine's axes from the middle of the feature
 * @param left what stays on at the walls on purpose
 * @param ridge how high the ridges between the steps round a corner stand; zero without such steps
 * @param isClosed whether the cutter has to go down into the metal: no side is open
 */
public record CrankPath(
    CutDirection direction, List<Point> points, Length left, Length ridge, boolean isClosed) {
  public CrankPath {
    points = List.copyOf(points);
  }

  /** What a line of the way is for. */
  public enum Purpose {
    /** Taking out what lies between the walls. */
    CLEAR,
    /** Along the walls. */
    WALL
  }

  /**
   * A place to stop.
   *
   * @param purpose of the line that leads here
   */
  public record Point(Length x, Length y, Purpose purpose) {
    Coordinate coordinate() {
      return new Coordinate(x.millimetres(), y.millimetres());
    }
  }

  /** How many moves there are. */
  public int moves() {
    return points.size() - 1;
  }

  /** The handle that is turned first from one stop to another, where both are turned. */
  static @Nullable Axis first(Point from, Point to) {
    boolean both = !from.x().equals(to.x()) && !from.y().equals(to.y());
    return !both
        ? null
        : elbow(from.coordinate(), to.coordinate()).y == from.coordinate().y ? Axis.X : Axis.Y;
  }

  /** The way in millimetres; of a single point, a line of no length. */
  public LineString line() {
    List<Coordinate> way = new ArrayList<>();
    Coordinate before = null;
    for (Point point : points) {
      Coordinate here = point.coordinate();
      if (before != null && before.x != here.x && before.y != here.y) {
        way.add(elbow(before, here));
      }
      way.add(here);
      before = here;
    }
    if (way.size() == 1) {
      way.add(way.get(0).copy());
    }
    return Plane.FACTORY.createLineString(way.toArray(Coordinate[]::new));
  }

  /** Of the two ways to wind two handles one after the other, the one that keeps off the walls. */
  private static Coordinate elbow(Coordinate from, Coordinate to) {
    Coordinate a = new Coordinate(to.x, from.y);
    Coordinate b = new Coordinate(from.x, to.y);
    return a.x * a.x + a.y * a.y <= b.x * b.x + b.y * b.y ? a : b;
  }
}
