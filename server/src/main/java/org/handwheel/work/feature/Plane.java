package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.units.Length;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/** Regions of a face, in millimetres. */
public final class Plane {
  static final GeometryFactory FACTORY = new GeometryFactory();

  /** Sides of a quarter of a circle; the chords of a 20 mm circle lie within a micrometre or so. */
  private static final int QUARTER_SIDES = 48;

  private Plane() {}

  /** A rectangle. */
  static Polygon box(double first1, double second1, double first2, double second2) {
    return (Polygon) FACTORY.toGeometry(new Envelope(first1, first2, second1, second2));
  }

  /** No region at all. */
  static Geometry nothing() {
    return FACTORY.createPolygon();
  }

  /**
   * A region grown all round; shrunk if the distance is negative. A buffer otherwise straightens
   * its line first, by a hundredth of the distance.
   */
  public static Geometry grown(Geometry region, double distance) {
    BufferParameters exact = new BufferParameters(QUARTER_SIDES);
    exact.setSimplifyFactor(0);
    return BufferOp.bufferOp(region, distance, exact);
  }

  /** The parts of a region that have an area; points and lines where regions touch are left out. */
  static Geometry areas(Geometry region) {
    if (region instanceof Polygon || region instanceof MultiPolygon) {
      return region;
    }
    List<Polygon> pieces = new ArrayList<>();
    for (int i = 0; i < region.getNumGeometries(); i++) {
      Geometry piece = region.getGeometryN(i);
      if (piece instanceof Polygon polygon) {
        pieces.add(polygon);
      }
    }
    return FACTORY.createMultiPolygon(pieces.toArray(Polygon[]::new));
  }

  /** How exactly the thickness of a region is measured, in millimetres. */
  private static final double GRAIN = 0.002;

  /**
   * How thick a region is where it is thickest: the diameter of the largest circle within it.
   *
   * @return zero for a region of no thickness
   */
  public static Length thickness(Geometry region) {
    return thickness(region, GRAIN);
  }

  /**
   * The same, measured less exactly and so faster.
   *
   * @param grain how exactly, in millimetres
   */
  static Length thickness(Geometry region, double grain) {
    double most = 0;
    for (int i = 0; i < region.getNumGeometries(); i++) {
      if (region.getGeometryN(i) instanceof Polygon piece && piece.getArea() > GRAIN * GRAIN) {
        most = Math.max(most, 2 * inscribed(piece, grain));
      }
    }
    return Length.ofMillimetres(Math.round(most * 1000) / 1000.0);
  }

  /** The largest circle's radius; the sides that stand for rounds are thinned out first. */
  private static double inscribed(Polygon piece, double grain) {
    Geometry fewer = TopologyPreservingSimplifier.simplify(piece, grain / 4);
    Geometry measured = fewer.isEmpty() ? piece : fewer;
    return MaximumInscribedCircle.getRadiusLine(measured, grain).getLength();
  }

  /** A disc as a polygon. */
  static Geometry disc(Coordinate middle, double radius) {
    return grown(FACTORY.createPoint(middle), radius);
  }

  /**
   * A rectangle with some of its corners round.
   *
   * @param round which corners: low first low second, high low, high high, low high
   */
  static Polygon rounded(Envelope box, double radius, List<Boolean> round) {
    double most = Math.min(box.getWidth(), box.getHeight()) / 2;
    double r = Math.min(radius, most);
    Coordinate[] corners = {
      new Coordinate(box.getMinX(), box.getMinY()),
      new Coordinate(box.getMaxX(), box.getMinY()),
      new Coordinate(box.getMaxX(), box.getMaxY()),
      new Coordinate(box.getMinX(), box.getMaxY())
    };
    List<Coordinate> ring = new ArrayList<>();
    for (int i = 0; i < corners.length; i++) {
      if (!round.get(i) || r <= 0) {
        ring.add(corners[i]);
        continue;
      }
      double toFirst = i == 0 || i == 3 ? 1 : -1;
      double toSecond = i < 2 ? 1 : -1;
      double middleX = corners[i].x + toFirst * r;
      double middleY = corners[i].y + toSecond * r;
      double start = Math.PI + i * Math.PI / 2;
      for (int k = 0; k <= QUARTER_SIDES; k++) {
        double angle = start + k * Math.PI / 2 / QUARTER_SIDES;
        ring.add(new Coordinate(middleX + r * Math.cos(angle), middleY + r * Math.sin(angle)));
      }
    }
    ring.add(ring.get(0).copy());
    return FACTORY.createPolygon(ring.toArray(Coordinate[]::new));
  }
}
