package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.feature.CrankPath.Point;
import org.handwheel.work.feature.CrankPath.Purpose;
import org.handwheel.work.feature.DrawnFeature.Form.Sunk;

/**
 * Works out the way through a slot, pocket or step: rows side by side, then once along the walls.
 *
 * <p>Everything is in the machine's axes about the feature's middle. Rows lie half the cutter's
 * diameter apart at most (common practice, no source), along the longer side.
 */
final class SunkPath {
  /** How far the cutter runs out of an open side; common practice, no source. */
  static final Length RUN_OUT = Length.mm("2");

  private final Length radius;
  private final Length lowX;
  private final Length highX;
  private final Length lowY;
  private final Length highY;

  /** The radius of the way round a corner, in millimetres; zero where it is a sharp turn. */
  private final Map<List<Integer>, Double> turns;

  private final double ridge;
  private final double roundTo;

  private SunkPath(
      Length radius,
      List<Length> limits,
      Map<List<Integer>, Double> turns,
      double ridge,
      double roundTo) {
    this.radius = radius;
    this.lowX = limits.get(0);
    this.highX = limits.get(1);
    this.lowY = limits.get(2);
    this.highY = limits.get(3);
    this.turns = turns;
    this.ridge = ridge;
    this.roundTo = roundTo;
  }

  /** Where the cutter's axis may go in the coordinates of the face. */
  record Room(Length lowFirst, Length highFirst, Length lowSecond, Length highSecond) {
    static Room of(Sunk sunk, Length radius, Length left) {
      Length wall = radius.plus(left);
      Length out = radius.plus(RUN_OUT);
      return new Room(
          sunk.low().first().plus(sunk.open().lowFirst() ? out.negated() : wall),
          sunk.high().first().plus(sunk.open().highFirst() ? out : wall.negated()),
          sunk.low().second().plus(sunk.open().lowSecond() ? out.negated() : wall),
          sunk.high().second().plus(sunk.open().highSecond() ? out : wall.negated()));
    }

    /** By how much the cutter is too wide; zero or less if it fits. */
    Length lacking() {
      return Length.max(lowFirst.minus(highFirst), lowSecond.minus(highSecond));
    }
  }

  /**
   * The way.
   *
   * @param cornerRadius of the corners as drawn, less what is left on; zero if the cutter makes
   *     them
   * @param ridge how high ridges round a corner may stand, in millimetres
   */
  static CrankPath of(
      Sunk sunk,
      Room room,
      Lying lying,
      Length radius,
      Length left,
      Length cornerRadius,
      double ridge,
      CutDirection direction) {
    Place middle = sunk.middle();
    Length first1 = room.lowFirst().minus(middle.first());
    Length first2 = room.highFirst().minus(middle.first());
    Length second1 = room.lowSecond().minus(middle.second());
    Length second2 = room.highSecond().minus(middle.second());
    Length xa = lying.x(first1, second1);
    Length xb = lying.x(first2, second2);
    Length ya = lying.y(first1, second1);
    Length yb = lying.y(first2, second2);
    double turn = Math.max(0, cornerRadius.minus(radius).millimetres());
    Map<List<Integer>, Double> turns = new java.util.HashMap<>();
    int[][] signs = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
    for (int i = 0; i < signs.length; i++) {
      Length first = Length.mm("1").times(signs[i][0]);
      Length second = Length.mm("1").times(signs[i][1]);
      List<Integer> corner =
          List.of(
              lying.x(first, second).isPositive() ? 1 : -1,
              lying.y(first, second).isPositive() ? 1 : -1);
      turns.put(corner, sunk.corners().get(i) ? turn : 0);
    }
    SunkPath path =
        new SunkPath(
            radius,
            List.of(Length.min(xa, xb), Length.max(xa, xb), Length.min(ya, yb), Length.max(ya, yb)),
            turns,
            ridge,
            cornerRadius.millimetres());
    List<Point> points = new ArrayList<>(path.rows());
    path.walls(points, direction);
    boolean isStepped = turns.values().stream().anyMatch(t -> t > 0);
    Length stands =
        isStepped ? Length.ofMillimetres(path.ridge(turn, path.steps(turn))).abs() : Length.ZERO;
    return new CrankPath(direction, points, left, stands, !sunk.open().any());
  }

  // ---- Rows

  private List<Point> rows() {
    boolean alongX = !highX.minus(lowX).isLessThan(highY.minus(lowY));
    Length low = alongX ? lowY : lowX;
    Length high = alongX ? highY : highX;
    Length across = high.minus(low);
    long count =
        Math.max(1, (across.isPositive() && radius.isPositive() ? across.stepsOf(radius) : 1) - 1);
    List<Point> points = new ArrayList<>();
    for (long i = 1; i <= count; i++) {
      Length at =
          low.plus(
              across.times(
                  org.apache.commons.numbers.fraction.BigFraction.of(i).divide(count + 1)));
      Length from = alongX ? lowX : lowY;
      Length to = alongX ? highX : highY;
      Point a = row(alongX, from.plus(inset(alongX, at, -1)), at);
      Point b = row(alongX, to.minus(inset(alongX, at, 1)), at);
      points.add(i % 2 == 1 ? a : b);
      if (!a.equals(b)) {
        points.add(i % 2 == 1 ? b : a);
      }
    }
    return points;
  }

  private static Point row(boolean alongX, Length along, Length at) {
    return alongX ? new Point(along, at, Purpose.CLEAR) : new Point(at, along, Purpose.CLEAR);
  }

  /** How much shorter a row is at one end, where it meets the round of a corner. */
  private Length inset(boolean alongX, Length at, int end) {
    Length middle = (alongX ? lowY.plus(highY) : lowX.plus(highX)).half();
    int side = at.isLessThan(middle) ? -1 : 1;
    double turn = turns.getOrDefault(alongX ? List.of(end, side) : List.of(side, end), 0.0);
    Length wall = alongX ? (side < 0 ? lowY : highY) : (side < 0 ? lowX : highX);
    double into = turn - at.minus(wall).abs().millimetres();
    return into <= 0
        ? Length.ZERO
        : Length.ofMillimetres(turn - Math.sqrt(Math.max(0, turn * turn - into * into)));
  }

  // ---- Walls

  /** Conventional along an inside wall is clockwise seen from above, right-hand cutter. */
  private void walls(List<Point> points, CutDirection direction) {
    boolean isLine = lowX.equals(highX) || lowY.equals(highY);
    if (isLine) {
      return;
    }
    List<Point> ring = new ArrayList<>();
    int[][] clockwise = {{1, 1}, {1, -1}, {-1, -1}, {-1, 1}};
    for (int[] corner : clockwise) {
      ring.addAll(corner(corner[0], corner[1]));
    }
    if (direction == CutDirection.CLIMB) {
      Collections.reverse(ring);
    }
    Point last = points.get(points.size() - 1);
    int start = 0;
    for (int i = 0; i < ring.size(); i++) {
      double best = ring.get(start).coordinate().distance(last.coordinate());
      if (ring.get(i).coordinate().distance(last.coordinate()) < best - 1e-9) {
        start = i;
      }
    }
    Collections.rotate(ring, -start);
    points.addAll(ring);
    points.add(ring.get(0));
  }

  /** The stops at one corner, clockwise. */
  private List<Point> corner(int toX, int toY) {
    Length x = toX > 0 ? highX : lowX;
    Length y = toY > 0 ? highY : lowY;
    double turn = turns.getOrDefault(List.of(toX, toY), 0.0);
    if (turn <= 0) {
      return List.of(new Point(x, y, Purpose.WALL));
    }
    int steps = steps(turn);
    double from = Math.atan2(toY, toX) + Math.PI / 4;
    List<Point> stops = new ArrayList<>();
    for (int i = 0; i <= steps; i++) {
      double angle = from - i * Math.PI / 2 / steps;
      Length inX = Length.ofMillimetres(turn * (toX - Math.cos(angle)));
      Length inY = Length.ofMillimetres(turn * (toY - Math.sin(angle)));
      stops.add(new Point(x.minus(inX), y.minus(inY), Purpose.WALL));
    }
    return stops;
  }

  private int steps(double turn) {
    int steps = 1;
    while (steps < 200 && ridge(turn, steps) > ridge) {
      steps++;
    }
    return steps;
  }

  /**
   * The ridge that a cutter of radius r leaves on an inside radius R between stations d apart on an
   * arc of R - r: R - ((R - r) cos(d/2) + sqrt(r^2 - (R - r)^2 sin^2(d/2))). Source: geometry, two
   * circles that meet.
   */
  private double ridge(double turn, int steps) {
    double half = Math.PI / 4 / steps;
    double r = radius.millimetres();
    double side = turn * Math.sin(half);
    return side >= r
        ? Double.POSITIVE_INFINITY
        : roundTo - (turn * Math.cos(half) + Math.sqrt(r * r - side * side));
  }
}
