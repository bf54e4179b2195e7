package org.handwheel.work.outline;

import org.locationtech.jts.geom.Polygon;

/** A closed form on a face, about a place of its own. All lengths in millimetres. */
public sealed interface Outline permits RoundOutline, Contour {
  /** How far a point lies from the form; negative or zero within it. */
  double distance(double x, double y);

  /** The form as a polygon with so many sides to a quarter of a turn. */
  Polygon polygon(int sidesPerQuarter);
}
