package org.handwheel.work;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.handwheel.work.Bearing.Ruler;
import org.jspecify.annotations.Nullable;

/**
 * What a cut proves: which faces the new face is square or parallel to, with bounds.
 *
 * <p>Errors are budgets: jaw, flatness of the reference over the grip, tram, seat. Beyond what a
 * cut proves itself only two closures hold. T1: F parallel F' and F square G give F' square G. T2:
 * F and F' both square to G and to H, with G and H adjoining, give F parallel F'. Two faces square
 * to one third face are not thereby parallel: they may be twisted about its normal.
 */
final class Squaring {
  private static final Length TABLE_RUN = Length.mm("100");
  private static final Length SEAT_RUN_LEAST = Length.mm("1");

  private final Workpiece work;
  private final Bearing bearing;
  private final Orientation orientation;
  private final Bench bench;
  private final Limits limits;
  private final @Nullable Grip grip;
  private final Origin origin;
  private final Map<FacePair, Relation> relations;
  private final Map<FacePair, Obstacle> obstacles;

  private Squaring(
      Workpiece work,
      Bearing bearing,
      Orientation orientation,
      Bench bench,
      Limits limits,
      @Nullable Grip grip,
      Origin origin) {
    this.work = work;
    this.bearing = bearing;
    this.orientation = orientation;
    this.bench = bench;
    this.limits = limits;
    this.grip = grip;
    this.origin = origin;
    this.relations = new HashMap<>(work.relations());
    this.obstacles = new HashMap<>(work.obstacles());
  }

  /**
   * The work with its relations after {@code face} was cut.
   *
   * @param cutInThisSetup faces already cut in the same grip
   */
  static Workpiece afterCut(
      Workpiece work,
      Face face,
      CutRun.Mode mode,
      Bearing bearing,
      Orientation orientation,
      Bench bench,
      Limits limits,
      @Nullable Grip grip,
      Set<Face> cutInThisSetup,
      Origin origin) {
    Squaring squaring = new Squaring(work, bearing, orientation, bench, limits, grip, origin);
    squaring.forget(face);
    if (work.face(face).isMachined()) {
      switch (mode) {
        case END -> squaring.faced(face);
        case SIDE -> squaring.sided(face, cutInThisSetup);
        case WALL -> squaring.walled(face);
      }
    } else {
      for (Face other : Face.all()) {
        if (other != face) {
          squaring.missing(
              face,
              other,
              new Obstacle(
                  Obstacle.Kind.MARKS_LEFT,
                  "the " + face.word() + " still has marks of the stock's skin",
                  origin));
        }
      }
    }
    squaring.close();
    return work.withRelations(squaring.relations, squaring.obstacles);
  }

  private void forget(Face face) {
    relations.keySet().removeIf(pair -> pair.has(face));
    obstacles.keySet().removeIf(pair -> pair.has(face));
  }

  private void proved(Face face, Face other, Slope slope, String reason) {
    if (work.face(other).isMachined()) {
      relations.put(new FacePair(face, other), Relation.square(face, other, slope, reason, origin));
    } else {
      missing(
          face,
          other,
          new Obstacle(
              Obstacle.Kind.OTHER,
              "the " + other.word() + " was not machined yet",
              work.face(other).since()));
    }
  }

  private void missing(Face face, Face other, @Nullable Obstacle obstacle) {
    obstacles.put(
        new FacePair(face, other),
        obstacle != null
            ? obstacle
            : new Obstacle(
                Obstacle.Kind.OTHER, "nothing in this setup rules how the two lie", origin));
  }

  // ---- The flat end of the cutter on the face that is up
  // --------------------------------------------

  private void faced(Face up) {
    Face under = up.opposite();
    Face fixed = grip == null ? under : grip.fixedFace();
    if (grip != null) {
      squareToJaw(up, fixed, under);
      Face moving = fixed.opposite();
      missing(up, moving, obstacles.get(new FacePair(up, fixed)));
    }
    parallelToSeat(up, fixed, under);
    for (Direction end : Set.of(Direction.OPERATOR_LEFT, Direction.OPERATOR_RIGHT)) {
      squareToEnd(up, orientation.facing(end), under);
    }
  }

  private void squareToJaw(Face up, Face fixed, Face under) {
    Relation known = work.relation(fixed, under);
    if (bearing.lean() == Ruler.JAW || bearing.lean() == Ruler.BOTH) {
      proved(
          up,
          fixed,
          jawError(fixed).plus(bench.tram()),
          "cut with the " + fixed.word() + " on the fixed jaw");
    } else if (bearing.lean() == Ruler.SEAT && known != null) {
      proved(
          up,
          fixed,
          known.along(under.dimension()).plus(seatAcross()).plus(bench.tram()),
          "cut seated on the " + under.word() + ", which is square to the " + fixed.word());
    } else if (bearing.jaw() == null && bearing.seat() == null) {
      missing(
          up,
          fixed,
          work.rootOr(
              fixed,
              under,
              new Obstacle(
                  Obstacle.Kind.CONFLICT,
                  "the fixed jaw and the seat both rule, though the "
                      + fixed.word()
                      + " is not square to the "
                      + under.word(),
                  origin)));
    } else {
      missing(up, fixed, bearing.jaw() != null ? bearing.jaw() : bearing.seat());
    }
  }

  private void parallelToSeat(Face up, Face fixed, Face under) {
    if (!work.face(under).isMachined()) {
      missing(
          up,
          under,
          bearing.seat() != null
              ? bearing.seat()
              : new Obstacle(
                  Obstacle.Kind.RAW_UNDER,
                  "the " + under.word() + " under the work is " + work.face(under).words(),
                  work.face(under).since()));
      return;
    }
    boolean seated = bearing.lean() == Ruler.SEAT || bearing.lean() == Ruler.BOTH;
    Relation jawToSeat = fixed == under ? null : work.relation(fixed, under);
    Slope extra = Slope.NONE;
    if (!seated && bearing.lean() == Ruler.JAW && jawToSeat != null) {
      seated = true;
      extra = jawToSeat.along(under.dimension());
    }
    if (!seated || bearing.tilt() != Ruler.SEAT) {
      Obstacle why = bearing.seat();
      if (why == null && bearing.lean() == Ruler.JAW) {
        why =
            work.rootOr(
                fixed,
                under,
                new Obstacle(
                    Obstacle.Kind.CONFLICT,
                    "the fixed jaw rules the lean, and the "
                        + fixed.word()
                        + " is not known to be square to the "
                        + under.word(),
                    origin));
      } else if (why == null && !seated) {
        why = bearing.jaw();
      }
      missing(up, under, why);
      return;
    }
    Map<PartDimension, Slope> slopes = new HashMap<>();
    slopes.put(orientation.along(Axis.X), seatAlong().plus(bench.tram()));
    slopes.put(orientation.along(Axis.Y), seatAcross().plus(extra).plus(bench.tram()));
    relations.put(
        new FacePair(up, under),
        new Relation(slopes, "cut seated on the " + under.word() + ", tapped down", origin));
  }

  private void squareToEnd(Face up, Face end, Face under) {
    Relation known = work.relation(end, under);
    if (bearing.tilt() == Ruler.SEAT && known != null) {
      proved(
          up,
          end,
          known.along(under.dimension()).plus(seatAlong()).plus(bench.tram()),
          "cut seated on the " + under.word() + ", which is square to the " + end.word());
    } else if (bearing.tilt() == Ruler.SQUARE
        && bearing.upright() != null
        && bearing.upright().face() == end) {
      Slope blade = Slope.of(bearing.upright().square().accuracy(), heightOfSquare());
      proved(up, end, blade.plus(bench.tram()), "set upright by a square on the " + end.word());
    } else {
      missing(up, end, null);
    }
  }

  private Length heightOfSquare() {
    return grip == null ? TABLE_RUN : Length.max(grip.height().low().half(), SEAT_RUN_LEAST);
  }

  // ---- The side of the cutter on an end
  // ---------------------------------------------------------------

  private void sided(Face end, Set<Face> cutInThisSetup) {
    Face up = orientation.up();
    Face under = up.opposite();
    Face back = orientation.back();
    Slope trued = grip == null ? bench.trued() : Bearing.viseError(grip.vise(), bench);
    Face fixed = grip == null ? back : grip.fixedFace();
    if (bearing.turn() == Ruler.JAW && trued != null) {
      proved(
          end, fixed, trued, "cut with the " + fixed.word() + " on the fixed jaw of a true vise");
    } else {
      missing(end, fixed, bearing.plan());
    }
    missing(end, fixed.opposite(), bearing.plan());
    if (bearing.tilt() == Ruler.SEAT) {
      proved(
          end,
          under,
          seatAlong().plus(bench.tram()),
          "cut seated on the " + under.word() + ", tapped down");
    } else {
      missing(end, under, bearing.seat());
    }
    if (cutInThisSetup.contains(up)) {
      proved(end, up, bench.tram(), "cut in one grip with the " + up.word());
    } else {
      missing(end, up, bearing.seat());
    }
    Face other = end.opposite();
    if (cutInThisSetup.contains(other)) {
      Slope both = Slope.of(limits.length(Limit.FLATNESS).times(2), TABLE_RUN);
      Map<PartDimension, Slope> slopes = new HashMap<>();
      for (PartDimension dimension : PartDimension.values()) {
        slopes.put(dimension, both);
      }
      slopes.remove(end.dimension());
      relations.put(
          new FacePair(end, other), new Relation(slopes, "both ends cut in one grip", origin));
    } else {
      missing(end, other, bearing.plan() != null ? bearing.plan() : bearing.seat());
    }
  }

  // ---- The side of the cutter along the jaws
  // -----------------------------------------------------------

  private void walled(Face wall) {
    Face under = orientation.up().opposite();
    if (bearing.lean() == Ruler.SEAT || bearing.lean() == Ruler.BOTH) {
      proved(
          wall,
          under,
          seatAcross().plus(bench.tram()),
          "cut seated on the " + under.word() + ", tapped down");
    } else {
      missing(wall, under, bearing.seat());
    }
    for (Face other : Face.all()) {
      if (other != wall && other != under) {
        missing(wall, other, null);
      }
    }
  }

  // ---- Budgets
  // -------------------------------------------------------------------------------------------

  private Slope jawError(Face fixed) {
    Length flatness = work.face(fixed).flatness();
    if (grip == null || flatness == null || !grip.depth().low().isPositive()) {
      return Slope.NONE;
    }
    return grip.vise().jawSquare().plus(Slope.of(flatness, grip.depth().low()));
  }

  private Slope seatAlong() {
    if (grip == null) {
      return Slope.of(limits.length(Limit.SEAT), TABLE_RUN);
    }
    return Slope.of(limits.length(Limit.SEAT), Length.max(grip.supportSpan(), SEAT_RUN_LEAST));
  }

  private Slope seatAcross() {
    if (grip == null) {
      return Slope.of(limits.length(Limit.SEAT), TABLE_RUN);
    }
    Length spacing = grip.gripped().low();
    Length mismatch = Length.ZERO;
    if (grip.parallels().isPresent()) {
      Owned.Parallels parallels = grip.parallels().get();
      spacing = spacing.minus(parallels.thickness());
      mismatch = parallels.mismatch();
    }
    Length error = limits.length(Limit.SEAT).plus(mismatch);
    return Slope.of(error, Length.max(spacing, SEAT_RUN_LEAST));
  }

  // ---- Closures
  // ------------------------------------------------------------------------------------------

  private void close() {
    boolean changed = true;
    while (changed) {
      changed = false;
      for (Face face : Face.all()) {
        for (Face other : Face.all()) {
          if (face != other && !relations.containsKey(new FacePair(face, other))) {
            changed |= face.adjoins(other) ? closeSquare(face, other) : closeParallel(face);
          }
        }
      }
    }
  }

  /** T1: the opposite of {@code face} is parallel to it and square to {@code other}. */
  private boolean closeSquare(Face face, Face other) {
    Relation parallel = relations.get(new FacePair(face, face.opposite()));
    Relation square = relations.get(new FacePair(face.opposite(), other));
    if (parallel == null || square == null) {
      return false;
    }
    PartDimension dimension = other.dimension();
    Slope slope = parallel.along(dimension).plus(square.along(dimension));
    relations.put(
        new FacePair(face, other),
        Relation.square(
            face,
            other,
            slope,
            "parallel to the "
                + face.opposite().word()
                + ", which is square to the "
                + other.word(),
            square.origin()));
    return true;
  }

  /** T2: both are square to two faces that adjoin. */
  private boolean closeParallel(Face face) {
    Face opposite = face.opposite();
    for (Face g : Face.all()) {
      for (Face h : Face.all()) {
        if (!g.adjoins(h) || !g.adjoins(face) || !h.adjoins(face)) {
          continue;
        }
        Relation fg = relations.get(new FacePair(face, g));
        Relation fh = relations.get(new FacePair(face, h));
        Relation og = relations.get(new FacePair(opposite, g));
        Relation oh = relations.get(new FacePair(opposite, h));
        if (fg == null || fh == null || og == null || oh == null) {
          continue;
        }
        Map<PartDimension, Slope> slopes = new HashMap<>();
        slopes.put(g.dimension(), fg.along(g.dimension()).plus(og.along(g.dimension())));
        slopes.put(h.dimension(), fh.along(h.dimension()).plus(oh.along(h.dimension())));
        relations.put(
            new FacePair(face, opposite),
            new Relation(
                slopes,
                "both are square to the " + g.word() + " and to the " + h.word(),
                og.origin()));
        return true;
      }
    }
    return false;
  }
}
