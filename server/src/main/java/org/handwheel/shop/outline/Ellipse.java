package org.handwheel.shop.outline;

import org.handwheel.units.Length;

/**
 * An ellipse about the origin, its long half axis along x.
 *
 * <p>Points are at (a cos t, b sin t). Its offset is the parallel curve x = (a + b d/s) cos t, y =
 * (b + a d/s) sin t with s = sqrt(a^2 sin^2 t + b^2 cos^2 t) (MathWorld and the CRC encyclopedia,
 * read), which is no ellipse. Lengths in millimetres as floating-point numbers: geometry, not
 * sizes.
 *
 * @param a the long half axis in millimetres
 * @param b the short half axis in millimetres, over zero and at most {@code a}
 */
public record Ellipse(double a, double b) {
  public Ellipse {
    if (!(b > 0 && a >= b && Double.isFinite(a))) {
      throw new IllegalArgumentException("an ellipse has half axes a >= b > 0");
    }
  }

  /** An ellipse by its exact half axes. */
  public static Ellipse of(Length a, Length b) {
    return new Ellipse(a.millimetres(), b.millimetres());
  }

  /** A point in millimetres. */
  public record Point(double x, double y) {}

  /** The point of the outline at the parameter t in radians. */
  public Point at(double t) {
    return offset(t, 0);
  }

  /** The point of the parallel curve, {@code d} millimetres outward (inward if negative). */
  public Point offset(double t, double d) {
    double s = Math.hypot(a * Math.sin(t), b * Math.cos(t));
    return new Point((a + b * d / s) * Math.cos(t), (b + a * d / s) * Math.sin(t));
  }

  /** The radius of curvature at the ends of the long axis: b^2/a, the smallest there is. */
  public double endRadius() {
    return b * b / a;
  }

  /** The radius of curvature at the ends of the short axis: a^2/b, the greatest. */
  public double sideRadius() {
    return a * a / b;
  }

  /**
   * The perimeter 4 a E(m), m = 1 - b^2/a^2, by the arithmetic-geometric mean (Legendre's complete
   * elliptic integral of the second kind; Gauss), to the last figures of a double.
   */
  public double perimeter() {
    double x = a;
    double y = b;
    double sum = (a * a - b * b) / 2;
    double weight = 1;
    while (Math.abs(x - y) > 1e-15 * x) {
      double half = (x - y) / 2;
      double mean = (x + y) / 2;
      y = Math.sqrt(x * y);
      x = mean;
      sum += weight * half * half;
      weight *= 2;
      if (weight > 1 << 20) {
        break;
      }
    }
    return 2 * Math.PI * (a * a - sum) / x;
  }

  public double area() {
    return Math.PI * a * b;
  }

  /** The perimeter of the parallel curve: L + 2 pi d (Steiner); inward while |d| is under b^2/a. */
  public double offsetPerimeter(double d) {
    return perimeter() + 2 * Math.PI * checked(d);
  }

  /** The area within the parallel curve: A + L d + pi d^2 (Steiner). */
  public double offsetArea(double d) {
    return area() + perimeter() * checked(d) + Math.PI * d * d;
  }

  private double checked(double d) {
    if (d <= -endRadius()) {
      throw new IllegalArgumentException("an inward offset stays under the least radius");
    }
    return d;
  }

  /** The greatest distance between the outline and {@code n} chords at equal steps of t. */
  public double greatestSag(int n) {
    double step = 2 * Math.PI / n;
    double greatest = 0;
    for (int i = 0; i < n; i++) {
      Point from = at(i * step);
      Point to = at((i + 1) * step);
      Point middle = at((i + 0.5) * step);
      double chordX = to.x - from.x;
      double chordY = to.y - from.y;
      double cross = chordX * (middle.y - from.y) - chordY * (middle.x - from.x);
      greatest = Math.max(greatest, Math.abs(cross) / Math.hypot(chordX, chordY));
    }
    return greatest;
  }
}
