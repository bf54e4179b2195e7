package org.handwheel.work.outline;

import java.util.Optional;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.OutlineForm;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * A convex outline, alike left and right and alike front and back, about its middle. All lengths in
 * millimetres.
 *
 * <p>It is described by the direction of its outward normal, the angle {@code phi} from the first
 * axis, in the first quarter: 0 to pi/2. With the support function h(phi), the greatest reach in
 * that direction, the parallel curve at the distance d is that of h + d: a true offset, exact for
 * every d of zero or more (convex geometry; for the ellipse see also {@code shop.outline.Ellipse}).
 */
public sealed interface RoundOutline extends Outline
    permits RoundOutline.Oval, RoundOutline.Rounded {
  /** Half the size over all along the first axis. */
  double halfFirst();

  /** Half the size over all along the second axis. */
  double halfSecond();

  /** The same outline with its axes exchanged. */
  RoundOutline turned();

  /** The point of the outline with this normal; the middle of a straight side is not told apart. */
  Coordinate at(double phi);

  /** The radius of curvature there. */
  double radius(double phi);

  /** How far the outline reaches in the direction {@code phi}. */
  double support(double phi);

  /** The point of the parallel curve {@code d >= 0} outside. */
  default Coordinate offset(double phi, double d) {
    Coordinate on = at(phi);
    return new Coordinate(on.x + d * Math.cos(phi), on.y + d * Math.sin(phi));
  }

  /**
   * How far a point outside lies from the outline; negative or zero inside. The distance from a
   * convex body is the greatest amount by which the point lies beyond a tangent.
   */
  @Override
  default double distance(double x, double y) {
    double px = Math.abs(x);
    double py = Math.abs(y);
    double low = 0;
    double high = Math.PI / 2;
    for (int i = 0; i < 100; i++) {
      double a = low + (high - low) / 3;
      double b = high - (high - low) / 3;
      if (beyond(px, py, a) < beyond(px, py, b)) {
        low = a;
      } else {
        high = b;
      }
    }
    return beyond(px, py, (low + high) / 2);
  }

  private double beyond(double x, double y, double phi) {
    return x * Math.cos(phi) + y * Math.sin(phi) - support(phi);
  }

  /** The outline as a polygon of its tangents: never inside the curve. */
  @Override
  default Polygon polygon(int tangentsPerQuarter) {
    int n = 4 * tangentsPerQuarter;
    Coordinate[] corners = new Coordinate[n + 1];
    double step = Math.PI / 2 / tangentsPerQuarter;
    for (int i = 0; i < n; i++) {
      // Two neighbouring tangents meet where both supports are reached.
      double a = i * step;
      double b = (i + 1) * step;
      double ha = support(folded(a));
      double hb = support(folded(b));
      double sine = Math.sin(step);
      corners[i] =
          new Coordinate(
              (ha * Math.sin(b) - hb * Math.sin(a)) / sine,
              (hb * Math.cos(a) - ha * Math.cos(b)) / sine);
    }
    corners[n] = corners[0].copy();
    return new GeometryFactory().createPolygon(corners);
  }

  private static double folded(double angle) {
    return Math.atan2(Math.abs(Math.sin(angle)), Math.abs(Math.cos(angle)));
  }

  /** An ellipse by its half axes. */
  record Oval(double halfFirst, double halfSecond) implements RoundOutline {
    public Oval {
      requireSizes(halfFirst, halfSecond);
    }

    @Override
    public RoundOutline turned() {
      return new Oval(/* halfFirst= */ halfSecond, /* halfSecond= */ halfFirst);
    }

    @Override
    public double support(double phi) {
      return Math.hypot(halfFirst * Math.cos(phi), halfSecond * Math.sin(phi));
    }

    @Override
    public Coordinate at(double phi) {
      double h = support(phi);
      return new Coordinate(
          halfFirst * halfFirst * Math.cos(phi) / h, halfSecond * halfSecond * Math.sin(phi) / h);
    }

    @Override
    public double radius(double phi) {
      double h = support(phi);
      double product = halfFirst * halfSecond;
      return product * product / (h * h * h);
    }
  }

  /**
   * A rectangle with round corners; with the greatest radius an obround, with equal sides and the
   * greatest radius a circle.
   *
   * @param corner the radius of its corners, over zero and at most the smaller half size
   */
  record Rounded(double halfFirst, double halfSecond, double corner) implements RoundOutline {
    public Rounded {
      requireSizes(halfFirst, halfSecond);
      if (!(corner > 0 && corner <= Math.min(halfFirst, halfSecond))) {
        throw new IllegalArgumentException("a corner is rounded by at most the smaller half size");
      }
    }

    @Override
    public RoundOutline turned() {
      return new Rounded(/* halfFirst= */ halfSecond, /* halfSecond= */ halfFirst, corner);
    }

    @Override
    public double support(double phi) {
      return (halfFirst - corner) * Math.cos(phi) + (halfSecond - corner) * Math.sin(phi) + corner;
    }

    @Override
    public Coordinate at(double phi) {
      return new Coordinate(
          halfFirst - corner + corner * Math.cos(phi),
          halfSecond - corner + corner * Math.sin(phi));
    }

    @Override
    public double radius(double phi) {
      return corner;
    }
  }

  private static void requireSizes(double first, double second) {
    if (!(first > 0 && second > 0 && Double.isFinite(first) && Double.isFinite(second))) {
      throw new IllegalArgumentException("an outline has sizes over zero");
    }
  }

  /** The outline of a drawing, if its form and sizes are known. */
  static Optional<RoundOutline> of(FeatureSpec spec) {
    OutlineForm form = spec.form();
    if (form == null || spec.formFirst() == null || spec.formSecond() == null) {
      return Optional.empty();
    }
    if (form == OutlineForm.CIRCLE && spec.diaLimits() != null) {
      // Both errors are equally far away in the middle of the limits.
      double radius = spec.diaLimits().middle().millimetres() / 2;
      return Optional.of(new Rounded(radius, radius, radius));
    }
    double first = spec.formFirst().millimetres() / 2;
    double second = spec.formSecond().millimetres() / 2;
    return Optional.of(
        form == OutlineForm.ELLIPSE
            ? new Oval(first, second)
            : new Rounded(first, second, Math.min(first, second)));
  }
}
