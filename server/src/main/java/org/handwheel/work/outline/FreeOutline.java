package org.handwheel.work.outline;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Part.Bow;
import org.handwheel.model.Part.Bulge;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.Turn;
import org.handwheel.model.Part.Vertex;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/**
 * Works a free outline out: where its sides run and where they touch its rounds.
 *
 * <p>A corner is taken for a circle of no radius. Going round counter-clockwise with all circles on
 * the left, a straight side is the common outer tangent of two circles; an arc of radius R that
 * stands out touches both from within, its middle R - r from theirs, a hollow one from outside, R +
 * r from theirs. A blend of radius R has its middle where the parallels of both sides, R inside the
 * turn, meet (elementary geometry).
 */
public final class FreeOutline {
  /** Sides that meet at a smaller angle than this are tangent: 0.05 degrees; common practice. */
  private static final double TANGENT = Math.toRadians(0.05);

  private static final double HAIR = 1e-9;

  private final List<Vertex> vertices;
  private final List<Problem> problems = new ArrayList<>();

  private FreeOutline(List<Vertex> vertices) {
    this.vertices = vertices;
  }

  /** What is wrong with an outline, at the clause that causes it. */
  public record Problem(Origin origin, String message) {}

  /**
   * An outline worked out.
   *
   * @param contour nothing if there are problems
   */
  public record Result(@Nullable Contour contour, List<Problem> problems) {
    public Result {
      problems = List.copyOf(problems);
    }
  }

  /** The contour of a free outline about its own zero. */
  public static Result of(FeatureSpec spec) {
    return of(spec.vertices(), spec.origin());
  }

  /** The same from what it goes round, in either sense. */
  static Result of(List<Vertex> vertices, Origin origin) {
    List<Vertex> forward = area(vertices) < -HAIR ? reversed(vertices) : vertices;
    Result first = new FreeOutline(forward).work(origin);
    if (first.contour() != null || first.problems().size() != 1) {
      return first;
    }
    // Where much of it is arcs, the places alone may tell the wrong sense.
    Result second = new FreeOutline(reversed(forward)).work(origin);
    return second.contour() != null ? second : first;
  }

  private static double area(List<Vertex> vertices) {
    double sum = 0;
    for (int i = 0; i < vertices.size(); i++) {
      Coordinate a = place(vertices.get(i));
      Coordinate b = place(vertices.get((i + 1) % vertices.size()));
      sum += a.x * b.y - b.x * a.y;
    }
    return sum / 2;
  }

  private static List<Vertex> reversed(List<Vertex> vertices) {
    List<Vertex> back = new ArrayList<>();
    for (int i = vertices.size() - 1; i >= 0; i--) {
      Vertex vertex = vertices.get(i);
      Bow before = vertices.get((i + vertices.size() - 1) % vertices.size()).next();
      back.add(new Vertex(vertex.first(), vertex.second(), vertex.turn(), before, vertex.origin()));
    }
    return back;
  }

  private static Coordinate place(Vertex vertex) {
    return new Coordinate(vertex.first().millimetres(), vertex.second().millimetres());
  }

  private static double radius(Vertex vertex) {
    return vertex.turn() instanceof Turn.Boss boss ? boss.radius().millimetres() : 0;
  }

  private Result work(Origin origin) {
    List<Piece> sides = new ArrayList<>();
    for (int i = 0; i < vertices.size(); i++) {
      Vertex from = vertices.get(i);
      Vertex to = vertices.get((i + 1) % vertices.size());
      Piece side = from.next() == null ? straight(from, to) : bow(from, to, from.next());
      if (side != null) {
        sides.add(side);
      }
    }
    if (!problems.isEmpty()) {
      return new Result(null, problems);
    }
    List<Piece> rounds = new ArrayList<>();
    for (int i = 0; i < vertices.size(); i++) {
      int before = (i + vertices.size() - 1) % vertices.size();
      rounds.add(turn(vertices.get(i), sides, before, i));
    }
    if (!problems.isEmpty()) {
      return new Result(null, problems);
    }
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < vertices.size(); i++) {
      Piece round = rounds.get(i);
      if (round instanceof Piece.Arc arc && Math.abs(arc.turn()) > HAIR) {
        pieces.add(round);
      }
      Piece side = sides.get(i);
      if (side.start().distance(side.end()) > HAIR) {
        pieces.add(side);
      }
    }
    return closed(pieces, origin);
  }

  private Result closed(List<Piece> pieces, Origin origin) {
    var polygon = pieces.size() < 2 ? null : new Contour(pieces).polygon(60);
    if (polygon == null || !polygon.isValid()) {
      return problem(origin, "the outline crosses or touches itself");
    }
    double area = org.locationtech.jts.algorithm.Area.ofRingSigned(polygon.getCoordinates());
    // A ring that runs counter-clockwise has a negative area in that library's sense.
    return area < 0
        ? new Result(new Contour(pieces), List.of())
        : problem(origin, "the outline goes round nothing: its rounds lie outside its sides");
  }

  private Result problem(Origin origin, String message) {
    problems.add(new Problem(origin, message));
    return new Result(null, problems);
  }

  private @Nullable Piece refuse(Origin origin, String message) {
    problems.add(new Problem(origin, message));
    return null;
  }

  // ---- Sides

  private @Nullable Piece straight(Vertex from, Vertex to) {
    Coordinate a = place(from);
    Coordinate b = place(to);
    double apart = a.distance(b);
    double along = (radius(from) - radius(to)) / Math.max(apart, HAIR);
    if (apart < HAIR || Math.abs(along) > 1) {
      return refuse(
          to.origin(),
          apart < HAIR
              ? "this is the same place as the one before it"
              : "no straight side can be tangent here: one round lies within the other");
    }
    double ux = (b.x - a.x) / apart;
    double uy = (b.y - a.y) / apart;
    double across = Math.sqrt(Math.max(0, 1 - along * along));
    double nx = ux * along + uy * across;
    double ny = uy * along - ux * across;
    return new Piece.Line(
        new Coordinate(a.x + radius(from) * nx, a.y + radius(from) * ny),
        new Coordinate(b.x + radius(to) * nx, b.y + radius(to) * ny));
  }

  private @Nullable Piece bow(Vertex from, Vertex to, Bow bow) {
    boolean isHollow = bow.bulge() == Bulge.HOLLOW;
    double size = bow.radius().millimetres();
    double toA = isHollow ? size + radius(from) : size - radius(from);
    double toB = isHollow ? size + radius(to) : size - radius(to);
    Coordinate a = place(from);
    Coordinate b = place(to);
    double apart = a.distance(b);
    if (apart < HAIR) {
      return refuse(to.origin(), "this is the same place as the one before it");
    }
    double along = (apart * apart + toA * toA - toB * toB) / (2 * apart);
    double square = toA * toA - along * along;
    if (toA <= 0 || toB <= 0 || square < -1e-7) {
      return refuse(
          bow.origin(),
          "an arc of radius "
              + bow.radius()
              + " does not reach between these places"
              + (isHollow || (toA > 0 && toB > 0)
                  ? ": " + needed(apart, from, to, isHollow)
                  : ": it is smaller than the round it is to touch"));
    }
    double across = Math.sqrt(Math.max(0, square));
    double side = isHollow ? -1 : 1;
    double ux = (b.x - a.x) / apart;
    double uy = (b.y - a.y) / apart;
    Coordinate middle =
        new Coordinate(
            a.x + along * ux - side * across * uy, a.y + along * uy + side * across * ux);
    double start = Math.atan2(a.y - middle.y, a.x - middle.x);
    double end = Math.atan2(b.y - middle.y, b.x - middle.x);
    double turn = isHollow ? -Piece.wrapped(start - end) : Piece.wrapped(end - start);
    return new Piece.Arc(middle, size, start, turn);
  }

  private static String needed(double apart, Vertex from, Vertex to, boolean isHollow) {
    double rounds = radius(from) + radius(to);
    double least = isHollow ? (apart - rounds) / 2 : (apart + rounds) / 2;
    return "it needs at least " + Length.ofMillimetres(Math.ceil(least * 1000) / 1000);
  }

  // ---- Places

  /** The round at a place; sides that it shortens are put in anew. */
  private @Nullable Piece turn(Vertex vertex, List<Piece> sides, int before, int after) {
    Piece in = sides.get(before);
    Piece out = sides.get(after);
    double angle = signed(out.normal(0) - in.normal(1));
    if (vertex.turn() instanceof Turn.Boss boss) {
      Coordinate middle = place(vertex);
      Coordinate start = in.end();
      return new Piece.Arc(
          middle,
          boss.radius().millimetres(),
          Math.atan2(start.y - middle.y, start.x - middle.x),
          Piece.wrapped(out.normal(0) - in.normal(1)));
    } else if (vertex.turn() instanceof Turn.Blend blend) {
      return blend(vertex, blend.radius(), sides, before, after, angle);
    } else if (vertex.turn() instanceof Turn.Tangent && Math.abs(angle) > TANGENT) {
      return refuse(
          vertex.origin(),
          "the sides are not tangent here: they meet at "
              + String.format(java.util.Locale.ROOT, "%.2f", Math.toDegrees(Math.abs(angle)))
              + " deg");
    }
    return null;
  }

  private static double signed(double angle) {
    double wrapped = Piece.wrapped(angle);
    return wrapped > Math.PI ? wrapped - 2 * Math.PI : wrapped;
  }

  private @Nullable Piece blend(
      Vertex vertex, Length radius, List<Piece> sides, int before, int after, double angle) {
    if (Math.abs(angle) <= TANGENT) {
      return refuse(vertex.origin(), "there is no corner to blend: the sides are tangent here");
    }
    double size = radius.millimetres();
    double inward = angle > 0 ? size : -size;
    Coordinate corner = place(vertex);
    Coordinate middle =
        crossing(parallel(sides.get(before), inward), parallel(sides.get(after), inward), corner);
    Piece in = middle == null ? null : cut(sides.get(before), middle, /* atEnd= */ true);
    Piece out = middle == null ? null : cut(sides.get(after), middle, /* atEnd= */ false);
    if (middle == null || in == null || out == null) {
      return refuse(
          vertex.origin(),
          "a blend of radius " + radius + " does not fit here: a side beside it is too short");
    }
    sides.set(before, in);
    sides.set(after, out);
    Coordinate start = in.end();
    Coordinate end = out.start();
    double from = Math.atan2(start.y - middle.y, start.x - middle.x);
    double to = Math.atan2(end.y - middle.y, end.x - middle.x);
    double turn = angle > 0 ? Piece.wrapped(to - from) : -Piece.wrapped(from - to);
    return new Piece.Arc(middle, size, from, turn);
  }

  /** A side moved to its left; nothing if an arc has no such parallel. */
  private static @Nullable Piece parallel(Piece side, double left) {
    if (side instanceof Piece.Line line) {
      double angle = line.normal(0);
      double x = -left * Math.cos(angle);
      double y = -left * Math.sin(angle);
      return new Piece.Line(
          new Coordinate(line.from().x + x, line.from().y + y),
          new Coordinate(line.to().x + x, line.to().y + y));
    }
    Piece.Arc arc = (Piece.Arc) side;
    double radius = arc.radius() - Math.signum(arc.turn()) * left;
    return radius <= HAIR
        ? null
        : new Piece.Arc(arc.middle(), radius, arc.startAngle(), arc.turn());
  }

  /** Where two lines or circles cross nearest to a place. */
  private static @Nullable Coordinate crossing(
      @Nullable Piece one, @Nullable Piece other, Coordinate near) {
    if (one == null || other == null) {
      return null;
    }
    List<Coordinate> found = new ArrayList<>();
    if (one instanceof Piece.Line a && other instanceof Piece.Line b) {
      Coordinate crossing =
          org.locationtech.jts.algorithm.Intersection.intersection(
              a.from(), a.to(), b.from(), b.to());
      if (crossing != null) {
        found.add(crossing);
      }
    } else if (one instanceof Piece.Line line && other instanceof Piece.Arc arc) {
      found.addAll(crossings(line, arc));
    } else if (one instanceof Piece.Arc arc && other instanceof Piece.Line line) {
      found.addAll(crossings(line, arc));
    } else if (one instanceof Piece.Arc a && other instanceof Piece.Arc b) {
      found.addAll(crossings(a, b));
    }
    return found.stream().min(java.util.Comparator.comparingDouble(near::distance)).orElse(null);
  }

  private static List<Coordinate> crossings(Piece.Line line, Piece.Arc arc) {
    double length = line.from().distance(line.to());
    double ux = (line.to().x - line.from().x) / length;
    double uy = (line.to().y - line.from().y) / length;
    double mx = arc.middle().x - line.from().x;
    double my = arc.middle().y - line.from().y;
    double along = mx * ux + my * uy;
    double square = arc.radius() * arc.radius() - (mx * mx + my * my - along * along);
    if (square < 0) {
      return List.of();
    }
    double half = Math.sqrt(square);
    return List.of(
        new Coordinate(line.from().x + (along - half) * ux, line.from().y + (along - half) * uy),
        new Coordinate(line.from().x + (along + half) * ux, line.from().y + (along + half) * uy));
  }

  private static List<Coordinate> crossings(Piece.Arc one, Piece.Arc other) {
    double apart = one.middle().distance(other.middle());
    if (apart < HAIR) {
      return List.of();
    }
    double along =
        (apart * apart + one.radius() * one.radius() - other.radius() * other.radius())
            / (2 * apart);
    double square = one.radius() * one.radius() - along * along;
    if (square < 0) {
      return List.of();
    }
    double across = Math.sqrt(square);
    double ux = (other.middle().x - one.middle().x) / apart;
    double uy = (other.middle().y - one.middle().y) / apart;
    double x = one.middle().x + along * ux;
    double y = one.middle().y + along * uy;
    return List.of(
        new Coordinate(x - across * uy, y + across * ux),
        new Coordinate(x + across * uy, y - across * ux));
  }

  /** A side that ends or begins where a blend touches it; nothing if that is off the side. */
  private static @Nullable Piece cut(Piece side, Coordinate middle, boolean atEnd) {
    if (side instanceof Piece.Line line) {
      double length = line.from().distance(line.to());
      double part =
          ((middle.x - line.from().x) * (line.to().x - line.from().x)
                  + (middle.y - line.from().y) * (line.to().y - line.from().y))
              / (length * length);
      if (part < -1e-7 || part > 1 + 1e-7) {
        return null;
      }
      Coordinate foot = line.at(Math.max(0, Math.min(1, part)));
      return atEnd ? new Piece.Line(line.from(), foot) : new Piece.Line(foot, line.to());
    }
    Piece.Arc arc = (Piece.Arc) side;
    // The point of touch lies on the line through both middles, on the side's own arc.
    double toward = Math.atan2(middle.y - arc.middle().y, middle.x - arc.middle().x);
    double sign = Math.signum(arc.turn());
    double turned =
        sign > 0
            ? Piece.wrapped(toward - arc.startAngle())
            : Piece.wrapped(arc.startAngle() - toward);
    if (turned > Math.abs(arc.turn()) + 1e-7) {
      return null;
    }
    return atEnd
        ? new Piece.Arc(arc.middle(), arc.radius(), arc.startAngle(), sign * turned)
        : new Piece.Arc(
            arc.middle(),
            arc.radius(),
            arc.startAngle() + sign * turned,
            arc.turn() - sign * turned);
  }
}
