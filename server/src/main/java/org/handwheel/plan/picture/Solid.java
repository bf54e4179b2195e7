package org.handwheel.plan.picture;

import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Style;
import org.handwheel.syntax.Origin;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** A block in the machine's axes, in millimetres: X right, Y away from the operator, Z up. */
record Solid(Style style, String part, @Nullable Origin origin, Span x, Span y, Span z) {
  static final GeometryFactory FACTORY = new GeometryFactory();

  /** From a place to a place not before it. */
  record Span(double from, double to) {
    static Span of(double a, double b) {
      return new Span(Math.min(a, b), Math.max(a, b));
    }

    double middle() {
      return (from + to) / 2;
    }

    double size() {
      return to - from;
    }
  }

  Span along(Axis axis) {
    return switch (axis) {
      case X -> x;
      case Y -> y;
      case Z -> z;
    };
  }

  Solid with(Axis axis, Span span) {
    return new Solid(
        style,
        part,
        origin,
        axis == Axis.X ? span : x,
        axis == Axis.Y ? span : y,
        axis == Axis.Z ? span : z);
  }

  Solid as(Style otherStyle, String otherPart, @Nullable Origin otherOrigin) {
    return new Solid(otherStyle, otherPart, otherOrigin, x, y, z);
  }

  /** Where the side that looks in a direction is. */
  double side(Direction direction) {
    Span span = along(direction.axis());
    return direction.sign() > 0 ? span.to() : span.from();
  }

  /** How near to the eye it is. */
  double nearness(Look look) {
    return switch (look) {
      case FROM_ABOVE -> z.to();
      case FROM_FRONT -> -y.from();
      case FROM_LEFT -> -x.from();
      case FROM_RIGHT -> x.to();
    };
  }

  Polygon outline(Look look) {
    Coordinate a = seen(look, x.from(), y.from(), z.from());
    Coordinate b = seen(look, x.to(), y.to(), z.to());
    return (Polygon) FACTORY.toGeometry(new Envelope(a, b));
  }

  /** A point as one sees it. */
  static Coordinate seen(Look look, double x, double y, double z) {
    return switch (look) {
      case FROM_ABOVE -> new Coordinate(x, y);
      case FROM_FRONT -> new Coordinate(x, z);
      case FROM_LEFT -> new Coordinate(-y, z);
      case FROM_RIGHT -> new Coordinate(y, z);
    };
  }
}
