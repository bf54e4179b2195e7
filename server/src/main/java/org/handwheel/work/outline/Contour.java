package org.handwheel.work.outline;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/**
 * A closed outline of lines and arcs, or an ellipse, walked counter-clockwise. Nothing is said here
 * of which side is metal.
 */
public final class Contour implements Outline {
  /** Chords of a quarter of a circle: at a radius of 50 mm they lie within a quarter micrometre. */
  static final int FINE = 250;

  private final List<Piece> pieces;
  private final IndexedPointInAreaLocator within;

  public Contour(List<Piece> pieces) {
    this.pieces = List.copyOf(pieces);
    this.within = new IndexedPointInAreaLocator(polygon(FINE));
  }

  /** A round form as a contour. */
  public static Contour of(RoundOutline round) {
    if (round instanceof RoundOutline.Oval oval) {
      return new Contour(List.of(new Piece.Round(oval.halfFirst(), oval.halfSecond())));
    }
    RoundOutline.Rounded box = (RoundOutline.Rounded) round;
    double x = box.halfFirst() - box.corner();
    double y = box.halfSecond() - box.corner();
    List<Piece> pieces = new ArrayList<>();
    double[][] corners = {{x, -y}, {x, y}, {-x, y}, {-x, -y}};
    for (int i = 0; i < 4; i++) {
      double start = (i - 1) * Math.PI / 2;
      Piece arc =
          new Piece.Arc(
              new Coordinate(corners[i][0], corners[i][1]), box.corner(), start, Math.PI / 2);
      if (!pieces.isEmpty()) {
        join(pieces, arc);
      }
      pieces.add(arc);
    }
    join(pieces, pieces.get(0));
    return new Contour(pieces);
  }

  private static void join(List<Piece> pieces, Piece next) {
    Coordinate from = pieces.get(pieces.size() - 1).end();
    if (from.distance(next.start()) > 1e-9) {
      pieces.add(new Piece.Line(from, next.start()));
    }
  }

  public List<Piece> pieces() {
    return pieces;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Contour contour && pieces.equals(contour.pieces);
  }

  @Override
  public int hashCode() {
    return pieces.hashCode();
  }

  @Override
  public double distance(double x, double y) {
    double least = Double.POSITIVE_INFINITY;
    for (Piece piece : pieces) {
      least = Math.min(least, piece.distance(x, y));
    }
    return within.locate(new Coordinate(x, y)) == Location.INTERIOR ? -least : least;
  }

  @Override
  public Polygon polygon(int sidesPerQuarter) {
    List<Coordinate> ring = new ArrayList<>();
    for (Piece piece : pieces) {
      int sides =
          Math.max(1, (int) Math.ceil(Math.abs(piece.turn()) / (Math.PI / 2) * sidesPerQuarter));
      for (int i = 0; i < sides; i++) {
        ring.add(piece.at((double) i / sides));
      }
    }
    ring.add(ring.get(0).copy());
    return new GeometryFactory().createPolygon(ring.toArray(Coordinate[]::new));
  }

  /**
   * The same form in other axes: first the two are exchanged if asked for, then each may count the
   * other way.
   *
   * @param alongX whether the first axis becomes x
   * @param firstSign -1 if the first axis counts the other way
   * @param secondSign -1 if the second axis counts the other way
   */
  public Contour placed(boolean alongX, int firstSign, int secondSign) {
    List<Piece> placed = new ArrayList<>();
    boolean isMirrored = (firstSign * secondSign < 0) == alongX;
    for (Piece piece : pieces) {
      placed.add(placed(piece, alongX, firstSign, secondSign, isMirrored));
    }
    if (isMirrored) {
      Collections.reverse(placed);
    }
    return new Contour(placed);
  }

  private static Piece placed(
      Piece piece, boolean alongX, int firstSign, int secondSign, boolean isMirrored) {
    if (piece instanceof Piece.Round round) {
      return alongX ? round : new Piece.Round(round.halfY(), round.halfX());
    }
    Coordinate from = placed(piece.start(), alongX, firstSign, secondSign);
    Coordinate to = placed(piece.end(), alongX, firstSign, secondSign);
    Coordinate start = isMirrored ? to : from;
    if (piece instanceof Piece.Line) {
      return new Piece.Line(start, isMirrored ? from : to);
    }
    Piece.Arc arc = (Piece.Arc) piece;
    Coordinate middle = placed(arc.middle(), alongX, firstSign, secondSign);
    // Mirrored it turns the other way, walked from its other end it turns as before.
    return new Piece.Arc(
        middle, arc.radius(), Math.atan2(start.y - middle.y, start.x - middle.x), arc.turn());
  }

  private static Coordinate placed(
      Coordinate point, boolean alongX, int firstSign, int secondSign) {
    double first = firstSign * point.x;
    double second = secondSign * point.y;
    return alongX ? new Coordinate(first, second) : new Coordinate(second, first);
  }
}
