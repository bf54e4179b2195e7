package org.handwheel.work.outline;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** How far the cutter's axis keeps off the metal that stays, in millimetres. */
final class Clearance {
  private static final GeometryFactory PLANE = new GeometryFactory();

  private final Contour contour;
  private final int sign;
  private final IndexedFacetDistance edge;

  /**
   * @param sign +1 if the metal that stays lies within the contour, -1 if it lies outside
   */
  Clearance(Contour contour, int sign) {
    this.contour = contour;
    this.sign = sign;
    this.edge = new IndexedFacetDistance(contour.polygon(Contour.FINE).getExteriorRing());
  }

  /** Of a point; negative within the metal. */
  double of(double x, double y) {
    return sign * contour.distance(x, y);
  }

  /** The least along straight lines; those that begin in the open and cross the edge give zero. */
  double along(List<Coordinate> points) {
    LineString line = PLANE.createLineString(points.toArray(Coordinate[]::new));
    return line.getLength() == 0 ? of(points.get(0).x, points.get(0).y) : edge.distance(line);
  }
}
