package org.handwheel.work.outline;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineSegment;

/**
 * A smooth stretch of a contour, walked with what is enclosed on the left. All lengths in
 * millimetres; the parameter runs from 0 to 1.
 */
public sealed interface Piece {
  Coordinate at(double part);

  /** The angle of the normal that points out of what is enclosed. */
  double normal(double part);

  /** One over the radius of curvature: positive where the contour stands out, negative hollow. */
  double curvature(double part);

  /** How far along the contour a step of the parameter goes. */
  double speed(double part);

  /** How far a point lies from the nearest point of this piece. */
  double distance(double x, double y);

  /** By how much the normal turns over the piece, positive where it stands out. */
  double turn();

  default Coordinate start() {
    return at(0);
  }

  default Coordinate end() {
    return at(1);
  }

  /** A straight side. */
  record Line(Coordinate from, Coordinate to) implements Piece {
    @Override
    public Coordinate at(double part) {
      return new Coordinate(from.x + part * (to.x - from.x), from.y + part * (to.y - from.y));
    }

    @Override
    public double normal(double part) {
      return Math.atan2(from.x - to.x, to.y - from.y);
    }

    @Override
    public double curvature(double part) {
      return 0;
    }

    @Override
    public double speed(double part) {
      return from.distance(to);
    }

    @Override
    public double distance(double x, double y) {
      return new LineSegment(from, to).distance(new Coordinate(x, y));
    }

    @Override
    public double turn() {
      return 0;
    }
  }

  /**
   * An arc of a circle.
   *
   * @param startAngle the angle of its first point about the middle
   * @param turn how far it goes round, counter-clockwise positive: then it stands out
   */
  record Arc(Coordinate middle, double radius, double startAngle, double turn) implements Piece {
    private double angle(double part) {
      return startAngle + part * turn;
    }

    @Override
    public Coordinate at(double part) {
      double angle = angle(part);
      return new Coordinate(
          middle.x + radius * Math.cos(angle), middle.y + radius * Math.sin(angle));
    }

    @Override
    public double normal(double part) {
      return turn >= 0 ? angle(part) : angle(part) + Math.PI;
    }

    @Override
    public double curvature(double part) {
      return Math.signum(turn) / radius;
    }

    @Override
    public double speed(double part) {
      return radius * Math.abs(turn);
    }

    @Override
    public double distance(double x, double y) {
      double angle = Math.atan2(y - middle.y, x - middle.x);
      double from = turn >= 0 ? startAngle : startAngle + turn;
      double along = wrapped(angle - from);
      if (along <= Math.abs(turn)) {
        return Math.abs(Math.hypot(x - middle.x, y - middle.y) - radius);
      }
      Coordinate point = new Coordinate(x, y);
      return Math.min(point.distance(start()), point.distance(end()));
    }
  }

  /** A whole ellipse about the origin, by its half axes along x and y and its normal's angle. */
  record Round(double halfX, double halfY) implements Piece {
    private RoundOutline.Oval oval() {
      return new RoundOutline.Oval(halfX, halfY);
    }

    @Override
    public Coordinate at(double part) {
      // Written for one quarter, the formulas hold all round.
      return oval().at(2 * Math.PI * part);
    }

    @Override
    public double normal(double part) {
      return 2 * Math.PI * part;
    }

    @Override
    public double curvature(double part) {
      return 1 / oval().radius(2 * Math.PI * part);
    }

    @Override
    public double speed(double part) {
      return 2 * Math.PI * oval().radius(2 * Math.PI * part);
    }

    @Override
    public double turn() {
      return 2 * Math.PI;
    }

    /**
     * The nearest point has the parameter t that solves (a x/(t + a^2))^2 + (b y/(t + b^2))^2 = 1,
     * found by halving (the usual method for the distance from an ellipse; from memory).
     */
    @Override
    public double distance(double x, double y) {
      boolean isWide = halfX >= halfY;
      double a = isWide ? halfX : halfY;
      double b = isWide ? halfY : halfX;
      double px = Math.abs(isWide ? x : y);
      double py = Math.abs(isWide ? y : x);
      if (py < 1e-12) {
        double reach = a - b * b / a;
        if (px >= reach || a - b < 1e-12) {
          return Math.abs(px - a);
        }
        // On the long axis between the centres of the end curves, the nearest points lie beside.
        double cosine = a * px / (a * a - b * b);
        return Math.hypot(a * cosine - px, b * Math.sqrt(1 - cosine * cosine));
      }
      double low = -b * b + b * py;
      double high = -b * b + Math.hypot(a * px, b * py);
      for (int i = 0; i < 120 && high - low > 1e-15 * a * a; i++) {
        double t = (low + high) / 2;
        double u = a * px / (t + a * a);
        double v = b * py / (t + b * b);
        if (u * u + v * v > 1) {
          low = t;
        } else {
          high = t;
        }
      }
      double t = (low + high) / 2;
      return Math.hypot(a * a * px / (t + a * a) - px, b * b * py / (t + b * b) - py);
    }
  }

  /** An angle brought between nothing and a whole turn. */
  static double wrapped(double angle) {
    double turn = 2 * Math.PI;
    double within = angle % turn;
    double up = within < 0 ? within + turn : within;
    // A hair below nothing is nothing, not a whole turn.
    return up > turn - 1e-12 ? 0 : up;
  }
}
