package org.handwheel.work;

import java.util.HashMap;
import java.util.List;
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
 * cut proves itself only two closures hold, see {@link Closures}.
 */
final class Squaring {
  private static final Length TABLE_RUN = Length.mm("100");
  private static final Length SEAT_RUN_LEAST = Length.mm("1");
  private static final List<Direction> ENDS =
      List.of(Direction.OPERATOR_LEFT, Direction.OPERATOR_RIGHT);

  /** How square an angle plate is taken to be; the same as for a vise that says nothing. */
  private static final Slope PLATE_SQUARE = Slope.of(Length.mm("0.02"), TABLE_RUN);

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
        case SIDE -> squaring.sided(face);
        case WALL -> squaring.walled(face);
      }
      squaring.cutInOneGrip(face, mode, cutInThisSetup);
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
    Closures.close(squaring.relations);
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
    Face fixed = grip == null ? orientation.back() : grip.fixedFace();
    boolean plated = grip == null && bearing.lean() == Ruler.JAW;
    if (grip != null || plated) {
      squareToJaw(up, fixed, under);
      missing(up, fixed.opposite(), obstacles.get(new FacePair(up, fixed)));
      parallelToSeat(up, work.relation(fixed, under), fixed, under);
    } else {
      parallelToSeat(up, null, orientation.back(), under);
      squareToEdge(up, orientation.back(), under);
      squareToEdge(up, orientation.back().opposite(), under);
    }
    for (Direction end : ENDS) {
      squareToEnd(up, orientation.facing(end), under);
    }
  }

  /** On a plate the seat rules the lean too, so a face square to the seat is square to the cut. */
  private void squareToEdge(Face up, Face edge, Face under) {
    Relation known = work.relation(edge, under);
    if (bearing.lean() == Ruler.SEAT && known != null) {
      proved(
          up,
          edge,
          known.along(under.dimension()).plus(seatAcross()).plus(bench.tram()),
          "cut seated on the " + under.word() + ", which is square to the " + edge.word());
    } else {
      missing(up, edge, bearing.seat());
    }
  }

  private void squareToJaw(Face up, Face fixed, Face under) {
    Relation known = work.relation(fixed, under);
    if (bearing.lean() == Ruler.JAW || bearing.lean() == Ruler.BOTH) {
      Slope error = jawError(fixed);
      if (bearing.lean() == Ruler.BOTH && known != null) {
        // The lean lies between what the jaw and what the seat would give it.
        Slope seated = known.along(under.dimension()).plus(seatAcross());
        error = seated.isMoreThan(error) ? seated : error;
      }
      proved(
          up,
          fixed,
          error.plus(bench.tram()),
          "cut with the "
              + fixed.word()
              + (grip == null ? " against the angle plate" : " on the fixed jaw"));
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

  private void parallelToSeat(Face up, @Nullable Relation jawToSeat, Face fixed, Face under) {
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
    Slope across = seatAcross();
    if (!seated && bearing.lean() == Ruler.JAW && jawToSeat != null) {
      seated = true;
      across = jawError(fixed).plus(jawToSeat.along(under.dimension()));
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
      } else if (why == null && seated) {
        why =
            new Obstacle(
                Obstacle.Kind.OTHER, "less than half its length lies on the parallels", origin);
      } else if (why == null) {
        why = bearing.jaw();
      }
      missing(up, under, why);
      return;
    }
    Map<PartDimension, Slope> slopes = new HashMap<>();
    slopes.put(orientation.along(Axis.X), seatAlong().plus(bench.tram()));
    slopes.put(orientation.along(Axis.Y), across.plus(bench.tram()));
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

  private void sided(Face end) {
    Face up = orientation.up();
    Face under = up.opposite();
    Slope trued = grip == null ? null : Bearing.viseError(grip.vise(), bench);
    Face fixed = grip == null ? orientation.back() : grip.fixedFace();
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
    missing(end, up, bearing.seat());
    missing(end, end.opposite(), bearing.plan() != null ? bearing.plan() : bearing.seat());
  }

  // ---- The side of the cutter along the jaws
  // -----------------------------------------------------------

  private void walled(Face wall) {
    Face under = orientation.up().opposite();
    for (Face other : Face.all()) {
      if (other != wall) {
        missing(wall, other, null);
      }
    }
    if (bearing.lean() == Ruler.SEAT || bearing.lean() == Ruler.BOTH) {
      proved(
          wall,
          under,
          seatAcross().plus(bench.tram()),
          "cut seated on the " + under.word() + ", tapped down");
    } else {
      missing(wall, under, bearing.seat());
    }
    Slope trued = grip == null ? null : Bearing.viseError(grip.vise(), bench);
    if (grip == null || trued == null || wall != grip.movingFace()) {
      return;
    }
    Face fixed = grip.fixedFace();
    boolean leans = bearing.lean() == Ruler.JAW || bearing.lean() == Ruler.BOTH;
    if (leans && bearing.turn() == Ruler.JAW) {
      relations.put(
          new FacePair(wall, fixed),
          new Relation(
              Map.of(
                  orientation.along(Axis.X),
                  trued,
                  orientation.along(Axis.Z),
                  jawError(fixed).plus(bench.tram())),
              "cut with the " + fixed.word() + " on the fixed jaw of a true vise",
              origin));
    } else {
      missing(wall, fixed, leans ? bearing.plan() : bearing.jaw());
    }
  }

  // ---- Two faces cut in one grip
  // -----------------------------------------------------------------------

  /**
   * What is cut without letting go is as true as the machine: a wall to the face that is up by the
   * tram, two opposite walls by the table's straightness.
   */
  private void cutInOneGrip(Face face, CutRun.Mode mode, Set<Face> others) {
    for (Face other : others) {
      if (other == face) {
        continue;
      }
      boolean toUp = mode == CutRun.Mode.END || other == orientation.up();
      if (face.adjoins(other)) {
        if (toUp) {
          proved(face, other, bench.tram(), "cut in one grip with the " + other.word());
        }
      } else if (mode != CutRun.Mode.END && work.face(other).isMachined()) {
        Slope both = Slope.of(limits.length(Limit.FLATNESS).times(2), TABLE_RUN);
        Map<PartDimension, Slope> slopes = new HashMap<>();
        for (PartDimension dimension : PartDimension.values()) {
          slopes.put(dimension, both);
        }
        slopes.remove(face.dimension());
        String which = mode == CutRun.Mode.SIDE ? "both ends" : "both";
        relations.put(
            new FacePair(face, other), new Relation(slopes, which + " cut in one grip", origin));
      }
    }
  }

  // ---- Budgets
  // -------------------------------------------------------------------------------------------

  private Slope jawError(Face fixed) {
    Length flatness = work.face(fixed).flatness();
    if (flatness == null) {
      return Slope.NONE;
    }
    if (grip == null) {
      SizeState height = work.size(orientation.along(Axis.Z));
      Length contact = height == null ? TABLE_RUN : height.range().low();
      return PLATE_SQUARE.plus(Slope.of(flatness, Length.max(contact, SEAT_RUN_LEAST)));
    }
    if (!grip.depth().low().isPositive()) {
      return Slope.NONE;
    }
    Slope error = grip.vise().jawSquare().plus(Slope.of(flatness, grip.depth().low()));
    boolean tapped = bench.seat() != null && bench.seat().tapped();
    // A moving jaw drags up what was not tapped down; a bar rolls instead.
    return tapped || grip.hold().bar() != null
        ? error
        : error.plus(
            Slope.of(grip.vise().lift(), Length.max(grip.gripped().low(), SEAT_RUN_LEAST)));
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
}
