package org.handwheel.work.outline;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.Dial;
import org.handwheel.work.outline.StepTable.Side;
import org.handwheel.work.outline.StepTable.Station;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/**
 * Step tables for contours that have hollows or are cut from within.
 *
 * <p>The cutter's axis follows the true parallel curve at the cutter's radius and what is left on.
 * Between stops ds apart along a surface of curvature k as the cutter sees it (positive where it
 * bulges toward the cutter), a cutter of radius r leaves a ridge of about ds^2 (1/r + k)/8
 * (geometry, two circles that meet; for a round of radius R the usual (R + r) R dtheta^2/(8 r), for
 * a hollow one (R - r) R dtheta^2/(8 r)). Stops are spread by that; then each is set to the dials'
 * division beside it that keeps the cutter off the finished form by its true distance, and what the
 * settings leave is measured along the edge of all that the cutter passes over.
 */
public final class ContourSteps {
  /** More stops than this round one outline nobody winds; common practice, no source. */
  public static final int MOST = 1000;

  /** How far a polygon's chords may be off the curve, in millimetres. */
  private static final double CHORDS = 0.0003;

  private static final Length MICROMETRE = Length.mm("0.001");

  private final Contour contour;
  private final Clearance clearance;
  private final Side side;
  private final int sign;
  private final Length cutterRadius;
  private final double radius;
  private final Length left;
  private final double reach;
  private final Screw screwX;
  private final Screw screwY;

  private ContourSteps(
      Contour contour, Side side, Length cutterRadius, Length left, Screw screwX, Screw screwY) {
    this.contour = contour;
    this.side = side;
    this.sign = side == Side.OUTSIDE ? 1 : -1;
    this.cutterRadius = cutterRadius;
    this.radius = cutterRadius.millimetres();
    this.left = left;
    this.reach = radius + left.millimetres();
    this.screwX = screwX;
    this.screwY = screwY;
    this.clearance = new Clearance(contour, sign);
  }

  /** What came of it. */
  public sealed interface Result {
    record Found(StepTable table) implements Result {}

    /** A hollow of the outline is tighter than the cutter. */
    record Tight(Length radius) implements Result {}

    /** Two sides meet in a sharp inside corner. */
    record SharpInside() implements Result {}

    /** What is left on takes all the room of a hollow. */
    record LeavesTooMuch() implements Result {}

    /** The cutter does not get between two sides. */
    record Narrow() implements Result {}

    /** More stops than {@link #MOST}, or dials that are too coarse. */
    record TooFine() implements Result {}
  }

  /** A point that the dials can set, in divisions from the outline's zero. */
  private record Stop(long x, long y) {}

  /** A stop of the way and which handle goes first to it; nothing moves before the first. */
  private record Move(Stop to, Axis first) {}

  /**
   * The table, for an outline whose axes are the machine's.
   *
   * @param left what is to stay on, zero or more
   * @param cusp the greatest ridge wanted, over zero
   * @param entry where the cutter is to begin near; nothing if anywhere
   */
  public static Result of(
      Contour contour,
      Side side,
      Length cutterRadius,
      Length left,
      Length cusp,
      CutDirection direction,
      Screw screwX,
      Screw screwY,
      @Nullable Coordinate entry) {
    if (!cutterRadius.isPositive() || !cusp.isPositive() || left.isNegative()) {
      throw new IllegalArgumentException("a cutter, a ridge over zero and nothing less than left");
    }
    return new ContourSteps(contour, side, cutterRadius, left, screwX, screwY)
        .work(cusp, direction, entry);
  }

  private Result work(Length cusp, CutDirection direction, @Nullable Coordinate entry) {
    Result refusal = refusal();
    if (refusal != null) {
      return refusal;
    }
    double allowed = cusp.millimetres();
    List<Move> best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double tighter = 1; tighter < 2.2 && least > allowed; tighter *= 1.2) {
      List<Coordinate> exact = exact(allowed / (tighter * tighter));
      if (exact.size() > MOST) {
        break;
      }
      for (Coordinate point : exact) {
        if (clearance.of(point.x, point.y) < reach - 0.001) {
          return new Result.Narrow();
        }
      }
      List<Move> ring = ring(exact);
      if (ring != null) {
        double stands =
            new Leftover(contour, sign, radius).greatest(path(ring)) - left.millimetres();
        if (stands < least) {
          least = stands;
          best = ring;
        }
      }
    }
    if (best == null) {
      return new Result.TooFine();
    }
    Length bound = MICROMETRE.times((long) Math.ceil((left.millimetres() + least) * 1000 - 1e-6));
    return new Result.Found(
        new StepTable(
            contour,
            side,
            cutterRadius,
            direction,
            stations(entry == null ? best : from(best, entry), direction),
            cusp,
            left,
            Length.max(bound, left)));
  }

  // ---- Whether the cutter gets everywhere

  private @Nullable Result refusal() {
    double tightest = Double.POSITIVE_INFINITY;
    List<Piece> pieces = contour.pieces();
    for (int i = 0; i < pieces.size(); i++) {
      for (int k = 0; k <= 64; k++) {
        double hollow = -sign * pieces.get(i).curvature(k / 64.0);
        tightest = hollow > 1e-12 ? Math.min(tightest, 1 / hollow) : tightest;
      }
      double turn = sign * turn(pieces.get(i), pieces.get((i + 1) % pieces.size()));
      if (turn < -Math.toRadians(0.05)) {
        return new Result.SharpInside();
      }
    }
    if (tightest < radius - 1e-7) {
      return new Result.Tight(Length.ofMillimetres(tightest));
    }
    return tightest < reach - 1e-7 ? new Result.LeavesTooMuch() : null;
  }

  /** By how much the contour turns to the left between two pieces. */
  private static double turn(Piece before, Piece after) {
    double turn = Piece.wrapped(after.normal(0) - before.normal(1));
    return turn > Math.PI ? turn - 2 * Math.PI : turn;
  }

  // ---- Where to stop

  /** Stops on the parallel curve, all round. */
  private List<Coordinate> exact(double ridge) {
    List<Coordinate> stops = new ArrayList<>();
    List<Piece> pieces = contour.pieces();
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      along(piece, ridge, stops);
      Piece next = pieces.get((i + 1) % pieces.size());
      double turn = turn(piece, next);
      if (sign * turn > 1e-6) {
        // Round a corner that stands out nothing is left, wherever one stops.
        Coordinate corner = piece.end();
        double from = piece.normal(1);
        for (double angle : quarters(from, from + turn)) {
          stops.add(beside(corner, angle));
        }
      }
    }
    return stops;
  }

  private Coordinate beside(Coordinate on, double normal) {
    return new Coordinate(
        on.x + sign * reach * Math.cos(normal), on.y + sign * reach * Math.sin(normal));
  }

  /** The two ends and between them every direction along an axis. */
  private static List<Double> quarters(double from, double to) {
    List<Double> angles = new ArrayList<>();
    angles.add(from);
    double step = Math.PI / 2;
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    for (double k = Math.ceil(low / step + 1e-9); k * step < high - 1e-9; k++) {
      angles.add(k * step);
    }
    angles.add(to);
    if (from > to) {
      Collections.sort(angles, Collections.reverseOrder());
    }
    return angles;
  }

  /** Stops beside a piece, its ends and the directions along an axis among them. */
  private void along(Piece piece, double ridge, List<Coordinate> stops) {
    if (piece instanceof Piece.Line line) {
      stops.add(beside(line.from(), line.normal(0)));
      double dx = Math.abs(line.to().x - line.from().x);
      double dy = Math.abs(line.to().y - line.from().y);
      // A side along an axis is cut in one go.
      if (dx > 1e-6 && dy > 1e-6) {
        int steps = (int) Math.ceil(line.speed(0) * Math.sqrt(1 / (8 * radius * ridge)) - 1e-9);
        for (int i = 1; i < steps; i++) {
          stops.add(beside(line.at((double) i / steps), line.normal(0)));
        }
      }
      stops.add(beside(line.to(), line.normal(1)));
      return;
    }
    List<Double> ends = quarters(piece.normal(0), piece.normal(0) + piece.turn());
    for (int i = 1; i < ends.size(); i++) {
      double from = part(piece, ends.get(i - 1));
      double to = part(piece, ends.get(i));
      spread(piece, from, to, ridge, stops);
    }
  }

  private static double part(Piece piece, double normal) {
    return (normal - piece.normal(0)) / piece.turn();
  }

  private void spread(Piece piece, double from, double to, double ridge, List<Coordinate> stops) {
    int slices = 400;
    double[] sums = new double[slices + 1];
    for (int i = 0; i < slices; i++) {
      double part = from + (to - from) * (i + 0.5) / slices;
      double bulge = sign * piece.curvature(part);
      // The surface cut is that of the form with what is left on.
      double grown = 1 + bulge * left.millimetres();
      double weight = Math.sqrt(Math.max(0, (1 / radius + bulge / grown) / 8));
      sums[i + 1] = sums[i] + weight * piece.speed(part) * grown * (to - from) / slices;
    }
    int steps = Math.max(1, (int) Math.ceil(sums[slices] / Math.sqrt(ridge) - 1e-9));
    int at = 0;
    for (int i = 0; i <= steps; i++) {
      double wanted = sums[slices] * i / steps;
      while (at < slices - 1 && sums[at + 1] < wanted) {
        at++;
      }
      double slice = sums[at + 1] - sums[at];
      double within = slice <= 0 ? 0 : (wanted - sums[at]) / slice;
      double part = i == steps ? to : from + (to - from) * (at + within) / slices;
      stops.add(beside(piece.at(part), piece.normal(part)));
    }
  }

  // ---- On the dials

  private @Nullable List<Move> ring(List<Coordinate> exact) {
    List<Stop> stops = new ArrayList<>();
    for (Coordinate point : exact) {
      Stop stop = near(point);
      if (stop == null) {
        return null;
      }
      if (stops.isEmpty() || !stops.get(stops.size() - 1).equals(stop)) {
        stops.add(stop);
      }
    }
    while (stops.size() > 1 && stops.get(stops.size() - 1).equals(stops.get(0))) {
      stops.remove(stops.size() - 1);
    }
    List<Move> ring = new ArrayList<>();
    ring.add(new Move(stops.get(0), Axis.X));
    for (int i = 0; i < stops.size(); i++) {
      Stop from = stops.get(i);
      Stop to = stops.get((i + 1) % stops.size());
      Axis first = first(from, to);
      if (first == null) {
        return null;
      }
      ring.add(new Move(to, first));
    }
    return ring;
  }

  /** The division nearest to the parallel curve that the cutter keeps off the form at. */
  private @Nullable Stop near(Coordinate exact) {
    long x = (long) Math.floor(exact.x / divisionX() + 1e-9);
    long y = (long) Math.floor(exact.y / divisionY() + 1e-9);
    for (int around = 0; around <= 4; around += 2) {
      Stop best = null;
      double least = Double.POSITIVE_INFINITY;
      for (long i = x - around; i <= x + 1 + around; i++) {
        for (long j = y - around; j <= y + 1 + around; j++) {
          double off = clearance.of(i * divisionX(), j * divisionY()) - reach;
          if (off > -1e-9 && off < least - 1e-12) {
            least = off;
            best = new Stop(i, j);
          }
        }
      }
      if (best != null) {
        return best;
      }
    }
    return null;
  }

  /** The handle to turn first so that the cutter keeps off the form; nothing if neither does. */
  private @Nullable Axis first(Stop from, Stop to) {
    Coordinate a = coordinate(from);
    Coordinate b = coordinate(to);
    double viaX = clearance.along(List.of(a, new Coordinate(b.x, a.y), b));
    double viaY = clearance.along(List.of(a, new Coordinate(a.x, b.y), b));
    if (Math.max(viaX, viaY) < reach - CHORDS) {
      return null;
    }
    return viaX >= viaY ? Axis.X : Axis.Y;
  }

  private double divisionX() {
    return screwX.division().millimetres();
  }

  private double divisionY() {
    return screwY.division().millimetres();
  }

  private Coordinate coordinate(Stop stop) {
    return new Coordinate(stop.x() * divisionX(), stop.y() * divisionY());
  }

  private List<Coordinate> path(List<Move> ring) {
    return ring.stream().map(move -> coordinate(move.to())).toList();
  }

  // ---- All round

  /** Conventional with a right-hand cutter, seen from above: outside the metal to the left. */
  private List<Station> stations(List<Move> ring, CutDirection direction) {
    boolean isForward = (side == Side.OUTSIDE) == (direction == CutDirection.CONVENTIONAL);
    List<Move> moves = isForward ? ring : backwards(ring);
    List<Station> stations = new ArrayList<>();
    long wayX = 0;
    long wayY = 0;
    for (int i = 0; i < moves.size(); i++) {
      Stop here = moves.get(i).to();
      List<Axis> round = new ArrayList<>();
      if (i + 1 < moves.size()) {
        long nextX = Long.signum(moves.get(i + 1).to().x() - here.x());
        long nextY = Long.signum(moves.get(i + 1).to().y() - here.y());
        if (nextX * wayX < 0) {
          round.add(Axis.X);
        }
        if (nextY * wayY < 0) {
          round.add(Axis.Y);
        }
        wayX = nextX == 0 ? wayX : nextX;
        wayY = nextY == 0 ? wayY : nextY;
      }
      stations.add(station(moves.get(i), round));
    }
    return stations;
  }

  /** The same ring from the stop nearest to a place. */
  private List<Move> from(List<Move> ring, Coordinate entry) {
    List<Move> moves = new ArrayList<>(ring.subList(1, ring.size()));
    int nearest = 0;
    for (int i = 1; i < moves.size(); i++) {
      boolean isNearer =
          coordinate(moves.get(i).to()).distance(entry)
              < coordinate(moves.get(nearest).to()).distance(entry) - 1e-9;
      nearest = isNearer ? i : nearest;
    }
    Collections.rotate(moves, -nearest - 1);
    moves.add(0, new Move(moves.get(moves.size() - 1).to(), Axis.X));
    return moves;
  }

  /** The same way walked back: the handle that came last goes first. */
  private static List<Move> backwards(List<Move> ring) {
    List<Move> back = new ArrayList<>();
    back.add(new Move(ring.get(ring.size() - 1).to(), Axis.X));
    for (int i = ring.size() - 1; i > 0; i--) {
      Axis first = ring.get(i).first() == Axis.X ? Axis.Y : Axis.X;
      back.add(new Move(ring.get(i - 1).to(), first));
    }
    return back;
  }

  private Station station(Move move, List<Axis> round) {
    Length x = length(move.to().x(), screwX);
    Length y = length(move.to().y(), screwY);
    double beyond = clearance.of(x.millimetres(), y.millimetres()) - reach;
    return new Station(
        x,
        y,
        Dial.setting(x, screwX, Dial.Rounding.NEAREST),
        Dial.setting(y, screwY, Dial.Rounding.NEAREST),
        move.first(),
        Length.ofMillimetres(Math.max(0, beyond)),
        round);
  }

  private static Length length(long divisions, Screw screw) {
    return screw.lead().times(BigFraction.of(divisions).divide(screw.divisions()));
  }
}
