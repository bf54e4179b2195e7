package org.handwheel.work.outline;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/**
 * What stands above a finished contour after the cutter has stopped at every station of a ring.
 *
 * <p>The edge of all that it passes over is made of arcs of the cutter's circle at the stations,
 * which meet at the ridges between them, and of straight edges where one handle alone was turned.
 * What is left reaches highest on that edge, so it is measured along it.
 */
final class Leftover {
  /** Between samples of an arc, in radians: there a height is missed by less than its square. */
  private static final double FINEST = 0.05;

  private static final int SAMPLES = 24;

  private final Contour contour;
  private final int sign;
  private final double radius;

  Leftover(Contour contour, int sign, double radius) {
    this.contour = contour;
    this.sign = sign;
    this.radius = radius;
  }

  /**
   * The greatest height, in millimetres.
   *
   * @param ring the stations counter-clockwise, the first again at the end
   */
  double greatest(List<Coordinate> ring) {
    int count = ring.size() - 1;
    List<@Nullable Coordinate> tips = new ArrayList<>();
    double greatest = 0;
    for (int i = 0; i < count; i++) {
      Coordinate from = ring.get(i);
      Coordinate to = ring.get(i + 1);
      Coordinate tip = tip(from, to);
      boolean isStraight = from.x == to.x || from.y == to.y;
      if (isStraight) {
        greatest = Math.max(greatest, straight(from, to));
        tips.add(null);
      } else if (tip == null) {
        return Double.POSITIVE_INFINITY;
      } else {
        greatest = Math.max(greatest, height(tip.x, tip.y));
        tips.add(tip);
      }
    }
    for (int i = 0; i < count; i++) {
      int before = (i + count - 1) % count;
      Coordinate at = ring.get(i);
      double start = angle(at, tips.get(before), ring.get(before), at);
      double end = angle(at, tips.get(i), at, ring.get(i + 1));
      greatest = Math.max(greatest, arc(at, start, end));
    }
    return greatest;
  }

  private double height(double x, double y) {
    return sign * contour.distance(x, y);
  }

  /** Which way the metal lies from a move: to its left if it is within the contour. */
  private double normal(Coordinate from, Coordinate to) {
    double along = Math.atan2(to.y - from.y, to.x - from.x);
    return along + sign * Math.PI / 2;
  }

  /** The direction of a ridge from a station, or of the edge of a straight move. */
  private double angle(Coordinate at, @Nullable Coordinate tip, Coordinate from, Coordinate to) {
    return tip == null ? normal(from, to) : Math.atan2(tip.y - at.y, tip.x - at.x);
  }

  private double arc(Coordinate at, double start, double end) {
    double turn = Piece.wrapped(end - start);
    double span = turn > Math.PI ? turn - 2 * Math.PI : turn;
    // Turning away from the metal the arcs cross: nothing of this one is on the edge.
    if (sign * span >= 0) {
      return 0;
    }
    double greatest = 0;
    int samples = 1 + (int) (Math.abs(span) / FINEST);
    for (int i = 0; i <= samples; i++) {
      double angle = start + span * i / samples;
      greatest =
          Math.max(
              greatest, height(at.x + radius * Math.cos(angle), at.y + radius * Math.sin(angle)));
    }
    return greatest;
  }

  private double straight(Coordinate from, Coordinate to) {
    double normal = normal(from, to);
    double greatest = 0;
    int samples = from.distance(to) < radius / 4 ? 2 : SAMPLES;
    for (int i = 0; i <= samples; i++) {
      double x = from.x + (to.x - from.x) * i / samples + radius * Math.cos(normal);
      double y = from.y + (to.y - from.y) * i / samples + radius * Math.sin(normal);
      greatest = Math.max(greatest, height(x, y));
    }
    return greatest;
  }

  /** Where the circles about two stations meet on the metal's side. */
  private @Nullable Coordinate tip(Coordinate from, Coordinate to) {
    double half = from.distance(to) / 2;
    if (half >= radius) {
      return null;
    }
    double back = Math.sqrt(radius * radius - half * half);
    double normal = normal(from, to);
    return new Coordinate(
        (from.x + to.x) / 2 + back * Math.cos(normal),
        (from.y + to.y) / 2 + back * Math.sin(normal));
  }
}
