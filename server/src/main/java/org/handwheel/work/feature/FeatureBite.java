package org.handwheel.work.feature;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.Engagement;
import org.handwheel.work.Orientation;
import org.handwheel.work.Removed;
import org.handwheel.work.Workpiece;
import org.handwheel.work.feature.CrankPath.Point;
import org.handwheel.work.feature.CrankPath.Purpose;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.FeatureRun.Result;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * How much a cutter takes at once on its way along a feature, where it takes the most.
 *
 * <p>Geometry: a slot as wide as the cutter engages half its turn; so does the first row of a
 * pocket. What an earlier line left on is a wall, taken by the side, and in the corners by a
 * quarter of a turn more. Round an outline the metal that stands outside counts, up to the cutter's
 * diameter.
 *
 * @param where it takes the most
 * @param depth along the cutter, of one level
 * @param width across its travel, as the metal lies: at most the cutter's diameter
 */
public record FeatureBite(
    Where where, Length depth, Length width, Engagement engagement, Axis travel) {
  /** How exactly the thickness of what is left is measured, in millimetres. */
  private static final double GRAIN = 0.05;

  /** Square millimetres that come of polygons for circles. */
  private static final double FACETS = 0.05;

  /** Up to this part of the cutter's diameter a strip is thin. */
  private static final double THIN = 0.15;

  /** Where a cutter takes the most. */
  public enum Where {
    /** Its whole diameter in the metal. */
    FULL_WIDTH,
    /** A row beside one that is open already. */
    ROW,
    /** Along a wall. */
    WALL,
    /** Along a wall, coming into a corner. */
    CORNER,
    /** Round an outline. */
    OUTSIDE,
    /** On the slope of an edge. */
    SLOPE
  }

  /** In words: {@code at most the whole width of the cutter, 1.00 mm (39.4 thou) deep}. */
  public String words() {
    String most =
        switch (where) {
          case FULL_WIDTH -> "at most the whole width of the cutter, ";
          case ROW -> "at most rows " + width + " wide, ";
          case WALL -> "at most " + width + " off the wall, ";
          case CORNER -> "at most " + width + " off the wall, coming into a corner, ";
          case OUTSIDE -> "at most " + width + " wide, ";
          case SLOPE -> "the slope, ";
        };
    return most + depth + " deep";
  }

  /** The bite of a line on a feature; nothing if its way cannot be worked out. */
  static Optional<FeatureBite> of(FeatureRun run, Workpiece before, @Nullable Orientation lies) {
    if (lies == null
        || run.drawn() == null
        || run.cutter() == null
        || !run.cutter().dia().isPositive()
        || run.refusal().isPresent()) {
      return Optional.empty();
    }
    return of(run, run.drawn(), run.cutter(), before, lies);
  }

  private static Optional<FeatureBite> of(
      FeatureRun run, DrawnFeature drawn, Owned.Cutter cutter, Workpiece before, Orientation lies) {
    Length depth = depth(run, drawn);
    double radius = cutter.radius().millimetres();
    CutDirection direction = direction(run);
    if (drawn.form() instanceof Form.Edges edges) {
      // The slope is a triangle as wide as it is deep; half its width all the way down is as much.
      Length half = edges.width().half();
      Engagement engagement = Engagement.ofSide(ratio(half, radius), direction);
      return Optional.of(new FeatureBite(Where.SLOPE, edges.width(), half, engagement, Axis.X));
    }
    Geometry sweep = run.sweep();
    if (sweep == null || !depth.isPositive()) {
      return Optional.empty();
    }
    Geometry fresh = Plane.areas(sweep.intersection(drawn.faceRegion()));
    Geometry taken = Plane.areas(fresh.difference(open(before, drawn)));
    if (taken.getArea() < FACETS) {
      return Optional.empty();
    }
    boolean isFresh = fresh.getArea() - taken.getArea() < FACETS;
    if (drawn.form() instanceof Form.Sunk sunk && run.result() instanceof Result.Lines lines) {
      Row row =
          isFresh
              ? Row.most(lines.path(), sunk, drawn, Lying.of(drawn.frame(), lies), radius)
              : null;
      if (row != null) {
        return Optional.of(
            new FeatureBite(
                row.width() > 2 * radius - GRAIN ? Where.FULL_WIDTH : Where.ROW,
                depth,
                Length.ofMillimetres(row.width()),
                Engagement.of(row.from() / radius, row.to() / radius, cutter.hand()),
                row.axis()));
      }
      Length width = Length.min(thickness(taken, cutter), cutter.dia());
      Axis axis = Row.axis(lines.path());
      if (width.millimetres() > 2 * radius - GRAIN) {
        Engagement whole = Engagement.of(-1, 1, cutter.hand());
        return Optional.of(new FeatureBite(Where.FULL_WIDTH, depth, width, whole, axis));
      }
      return Optional.of(wall(sunk, cutter, depth, width, direction, axis));
    }
    Length outside = isFresh ? outside(drawn, sweep) : null;
    Length width = Length.min(outside == null ? thickness(taken, cutter) : outside, cutter.dia());
    boolean isWhole = width.millimetres() > 2 * radius - GRAIN;
    return Optional.of(
        new FeatureBite(
            isWhole ? Where.FULL_WIDTH : Where.OUTSIDE,
            depth,
            width,
            isWhole
                ? Engagement.of(-1, 1, cutter.hand())
                : Engagement.ofSide(ratio(width, radius), direction),
            Axis.X));
  }

  /**
   * How thick what comes off is. A strip that is thin against the cutter is as thick as twice its
   * area over the length of its edge, on the average; to find its thickest place takes much longer.
   */
  private static Length thickness(Geometry taken, Owned.Cutter cutter) {
    double thickest = 0;
    for (int i = 0; i < taken.getNumGeometries(); i++) {
      Geometry piece = taken.getGeometryN(i);
      if (piece.getArea() > FACETS) {
        thickest = Math.max(thickest, 2 * piece.getArea() / piece.getLength());
      }
    }
    return thickest < THIN * cutter.dia().millimetres()
        ? Length.ofMillimetres(thickest)
        : Plane.thickness(taken, GRAIN);
  }

  /** How far the corners of the face stand out beyond what a way all round leaves standing. */
  private static @Nullable Length outside(DrawnFeature drawn, Geometry sweep) {
    if (!(sweep instanceof Polygon ring) || ring.getNumInteriorRing() == 0) {
      return null;
    }
    Geometry standing = Plane.FACTORY.createPolygon(ring.getInteriorRingN(0));
    double most = 0;
    for (Coordinate corner : drawn.faceRegion().getCoordinates()) {
      most = Math.max(most, standing.distance(Plane.FACTORY.createPoint(corner)));
    }
    return Length.ofMillimetres(most);
  }

  private static FeatureBite wall(
      Form.Sunk sunk,
      Owned.Cutter cutter,
      Length depth,
      Length width,
      CutDirection direction,
      Axis axis) {
    double radius = cutter.radius().millimetres();
    if (!sunk.corners().contains(true)) {
      Engagement side = Engagement.ofSide(ratio(width, radius), direction);
      return new FeatureBite(Where.WALL, depth, width, side, axis);
    }
    double corner = sunk.radius() == null ? radius : sunk.radius().millimetres();
    double turn = corner - radius;
    double ratio = ratio(width, radius);
    Engagement engagement =
        turn <= GRAIN
            ? Engagement.ofCorner(ratio, direction)
            : Engagement.ofSide(insideRound(corner, radius, width.millimetres()), direction);
    return new FeatureBite(Where.CORNER, depth, width, engagement, axis);
  }

  /**
   * How far across its radius a cutter of radius r reaches into what is left on inside a round of
   * radius R, over r: 1 - cos a with (R - e)^2 = (R - r)^2 + r^2 + 2 (R - r) r cos a. Source:
   * geometry, the law of cosines.
   */
  private static double insideRound(double corner, double radius, double left) {
    double turn = corner - radius;
    double before = Math.max(0, corner - left);
    double cos = (before * before - turn * turn - radius * radius) / (2 * turn * radius);
    return 1 - Math.max(-1, Math.min(1, cos));
  }

  private static double ratio(Length width, double radius) {
    return Math.min(2, width.millimetres() / radius);
  }

  private static CutDirection direction(FeatureRun run) {
    return run.cut().way().direction() == null
        ? CutDirection.CONVENTIONAL
        : run.cut().way().direction().value();
  }

  /** How deep one level is at most. */
  private static Length depth(FeatureRun run, DrawnFeature drawn) {
    return run.cut().way().pass() == null
        ? drawn.depth()
        : Length.min(run.cut().way().pass().value(), drawn.depth());
  }

  /** What earlier lines have opened as deep as this feature. */
  private static Geometry open(Workpiece before, DrawnFeature drawn) {
    Geometry open = Plane.nothing();
    for (Removed removed : before.removed()) {
      boolean isSameWay =
          removed.from() == drawn.frame().face()
              || (removed.through() && removed.from() == drawn.frame().face().opposite());
      if (isSameWay && !removed.depth().high().isLessThan(drawn.depth())) {
        open = Plane.areas(open.union(Plane.areas(removed.region())));
      }
    }
    return open;
  }

  /**
   * A row of the way, and from where to where across it the metal lies, counted from its middle in
   * millimetres.
   */
  private record Row(Axis axis, double from, double to) {
    double width() {
      return to - from;
    }

    static Axis axis(CrankPath path) {
      List<Point> points = path.points();
      return points.size() > 1 && points.get(0).x().equals(points.get(1).x()) ? Axis.Y : Axis.X;
    }

    private static @Nullable Row larger(@Nullable Row one, Row other) {
      boolean isLarger = other.width() > 0 && (one == null || other.width() > one.width());
      return isLarger ? other : one;
    }

    /** The row that takes the most, or the wall beside the rows, if nothing is open yet. */
    static @Nullable Row most(
        CrankPath path, Form.Sunk sunk, DrawnFeature drawn, Lying lying, double radius) {
      Axis axis = axis(path);
      Length low1 = sunk.middle().first().negated();
      Length low2 = sunk.middle().second().negated();
      Length high1 = low1.plus(drawn.frame().firstSize());
      Length high2 = low2.plus(drawn.frame().secondSize());
      double a = (axis == Axis.X ? lying.y(low1, low2) : lying.x(low1, low2)).millimetres();
      double b = (axis == Axis.X ? lying.y(high1, high2) : lying.x(high1, high2)).millimetres();
      double low = Math.min(a, b);
      double high = Math.max(a, b);
      double from = low;
      double opened = high;
      Row most = null;
      for (Point point : path.points()) {
        double at = (axis == Axis.X ? point.y() : point.x()).millimetres();
        if (point.purpose() == Purpose.CLEAR) {
          Row row =
              new Row(axis, Math.max(from, at - radius) - at, Math.min(high, at + radius) - at);
          most = larger(most, row);
          opened = Math.min(opened, at - radius);
          from = Math.max(from, at + radius);
        } else if (point.purpose() == Purpose.WALL) {
          // Beside a narrow feature that is open there the way along the wall takes more than a
          // row.
          most = larger(most, new Row(axis, Math.max(low, at - radius) - at, opened - at));
          most = larger(most, new Row(axis, from - at, Math.min(high, at + radius) - at));
        }
      }
      return most;
    }
  }
}
