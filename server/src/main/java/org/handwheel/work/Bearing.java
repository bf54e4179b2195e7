package org.handwheel.work;

import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.Support;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.model.Stock.Skin;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/**
 * What rules each of the three rotations of the held work.
 *
 * <p>The fixed jaw rules how the work leans front to back, if a good face lies on it; the seat
 * rules it, and how it leans left to right, if a good face is tapped down on tight parallels; the
 * fixed jaw never rules the lean left to right. How it is turned in plan is ruled by the fixed jaw
 * of a vise that was set true. Source: common practice; Modern Metalworking p. 460-469 for seating
 * and for the bar at the moving jaw.
 *
 * @param lean what rules the lean front to back
 * @param tilt what rules the lean left to right
 * @param turn what rules the turn in plan
 * @param jaw why the fixed jaw does not rule the lean, or nothing if it does
 * @param seat why the seat does not rule, or nothing if it does
 * @param plan why the turn in plan is not ruled, or nothing if it is
 * @param upright the face a square was held to, if it rules the tilt
 */
public record Bearing(
    Ruler lean,
    Ruler tilt,
    Ruler turn,
    @Nullable Obstacle jaw,
    @Nullable Obstacle seat,
    @Nullable Obstacle plan,
    Step.@Nullable Upright upright) {

  /** What rules a rotation. */
  public enum Ruler {
    NONE,
    JAW,
    SEAT,
    BOTH,
    SQUARE
  }

  static Bearing of(Grip grip, Workpiece work, Bench bench, Limits limits) {
    Obstacle jaw = jawObstacle(grip, work, limits);
    Obstacle seat = seatObstacle(grip, work, bench);
    boolean squareKnown = work.relation(grip.fixedFace(), grip.underFace()) != null;
    Ruler lean = lean(grip, jaw, seat, squareKnown);
    Ruler tilt = Ruler.NONE;
    Step.Upright upright = upright(grip, work, bench);
    if (seat == null && !grip.supportSpan().times(2).isLessThan(grip.length().high())) {
      tilt = Ruler.SEAT;
    } else if (upright != null) {
      tilt = Ruler.SQUARE;
    }
    Obstacle plan = planObstacle(grip, work, bench);
    return new Bearing(lean, tilt, plan == null ? Ruler.JAW : Ruler.NONE, jaw, seat, plan, upright);
  }

  /**
   * Work held by clamps: on a plate or on the table it lies on the face underneath; against an
   * angle plate it leans as the plate does, and only tapping it down proves that it sits on
   * anything; what a V-block does to a block nobody can say.
   */
  static Bearing onPlate(Hold hold, Workpiece work, Bench bench) {
    Face under = hold.up() == null ? Face.BOTTOM : hold.up().value().opposite();
    Origin origin = hold.origin();
    Hold.PlateKind plate =
        hold.rest() instanceof Hold.Rest.OnPlate onPlate ? onPlate.plate() : Hold.PlateKind.TABLE;
    Obstacle clamped =
        new Obstacle(Obstacle.Kind.OTHER, "no fixed jaw rules work that is clamped", origin);
    if (plate == Hold.PlateKind.V_BLOCK) {
      Obstacle block =
          new Obstacle(Obstacle.Kind.OTHER, "a V-block does not rule flat faces", origin);
      return new Bearing(Ruler.NONE, Ruler.NONE, Ruler.NONE, block, block, block, null);
    }
    FaceState state = work.face(under);
    Obstacle seat =
        state.isGood() ? null : notGood(under, state, Obstacle.Kind.RAW_UNDER, "under the work");
    if (plate != Hold.PlateKind.ANGLE_PLATE) {
      Ruler ruler = seat == null ? Ruler.SEAT : Ruler.NONE;
      return new Bearing(ruler, ruler, Ruler.NONE, clamped, seat, clamped, null);
    }
    if (seat == null && (bench.seat() == null || !bench.seat().tapped())) {
      seat = new Obstacle(Obstacle.Kind.OTHER, "it was not proved that the work sits", origin);
    }
    Ruler tilt = seat == null ? Ruler.SEAT : Ruler.NONE;
    if (hold.fixed() == null) {
      return new Bearing(Ruler.NONE, tilt, Ruler.NONE, clamped, seat, clamped, null);
    }
    Face against = hold.fixed().value();
    FaceState face = work.face(against);
    Obstacle jaw =
        face.isGood()
            ? null
            : notGood(against, face, Obstacle.Kind.OTHER, "against the angle plate");
    Ruler lean = jaw == null ? Ruler.JAW : Ruler.NONE;
    return new Bearing(lean, tilt, Ruler.NONE, jaw, seat, clamped, null);
  }

  private static Obstacle loose(Origin origin) {
    return new Obstacle(Obstacle.Kind.LOOSE, "the jaws close on the parallels", origin);
  }

  /**
   * Whether the faces at the two jaws are known to be parallel as well as the moving jaw can follow
   * without harm.
   */
  private static boolean isParallelAtJaws(Grip grip, Workpiece work) {
    Relation relation = work.relation(grip.fixedFace(), grip.movingFace());
    Slope slack = grip.vise().slack();
    return relation != null
        && !relation.along(grip.orientation().along(Axis.X)).isMoreThan(slack)
        && !relation.along(grip.orientation().along(Axis.Z)).isMoreThan(slack);
  }

  private static Ruler lean(
      Grip grip, @Nullable Obstacle jaw, @Nullable Obstacle seat, boolean squareKnown) {
    if (grip.hold().support() != null && grip.hold().support().value() instanceof Support.One) {
      // Work on a single parallel can lean over it front to back.
      return jaw == null ? Ruler.JAW : Ruler.NONE;
    }
    if (jaw == null && seat == null) {
      if (squareKnown) {
        return Ruler.BOTH;
      }
      // The jaw wins and a parallel goes loose; only a bar makes sure of it.
      return grip.hold().bar() != null ? Ruler.JAW : Ruler.NONE;
    }
    if (jaw == null) {
      return Ruler.JAW;
    }
    if (seat != null) {
      return Ruler.NONE;
    }
    return squareKnown || Holding.baseRules(grip) ? Ruler.SEAT : Ruler.NONE;
  }

  private static @Nullable Obstacle jawObstacle(Grip grip, Workpiece work, Limits limits) {
    Hold hold = grip.hold();
    Origin origin = hold.origin();
    if (Holding.isLoose(grip)) {
      return loose(origin);
    }
    if (Holding.holdsNothing(grip)) {
      return new Obstacle(Obstacle.Kind.LOOSE, "the jaws close on the spacer", origin);
    }
    Face fixed = grip.fixedFace();
    FaceState state = work.face(fixed);
    if (!state.isGood()) {
      return notGood(fixed, state, Obstacle.Kind.RAW_FIXED, "on the fixed jaw");
    }
    Length ruling =
        Length.min(
            grip.height().high().times(BigFraction.of(1, 3)), limits.length(Limit.RULING_GRIP));
    if (grip.depth().low().isLessThan(ruling)) {
      return new Obstacle(
          Obstacle.Kind.LOW_GRIP,
          "a grip of " + grip.depth().low() + " is too low for the fixed jaw to rule",
          origin);
    }
    if (Holding.isCocked(grip)) {
      return new Obstacle(Obstacle.Kind.COCKED, "the moving jaw stands askew", origin);
    }
    if (hold.bar() == null && !isParallelAtJaws(grip, work)) {
      FaceState moving = work.face(grip.movingFace());
      Obstacle noBar =
          new Obstacle(
              Obstacle.Kind.NO_BAR,
              "the "
                  + grip.movingFace().word()
                  + " at the moving jaw is "
                  + (moving.isMachined() ? "not parallel to the fixed one" : moving.words())
                  + " and no bar is used",
              origin);
      // A raw face is cause enough; of a machined one it may be said elsewhere why it is not
      // parallel.
      return moving.isMachined() ? work.rootOr(fixed, grip.movingFace(), noBar) : noBar;
    }
    if (hold.bar() != null && !Holding.isBarInMiddleThird(grip)) {
      return new Obstacle(
          Obstacle.Kind.NO_BAR, "the bar is not in the middle third of the grip", origin);
    }
    return null;
  }

  private static @Nullable Obstacle seatObstacle(Grip grip, Workpiece work, Bench bench) {
    Hold hold = grip.hold();
    Origin origin = hold.origin();
    if (Holding.isLoose(grip)) {
      return loose(origin);
    }
    if (Holding.holdsNothing(grip)) {
      return new Obstacle(Obstacle.Kind.LOOSE, "the jaws close on the spacer", origin);
    }
    Face under = grip.underFace();
    FaceState state = work.face(under);
    if (!state.isGood()) {
      return notGood(under, state, Obstacle.Kind.RAW_UNDER, "under the work");
    }
    if (hold.support() != null && hold.support().value() instanceof Support.SoftStrip) {
      return new Obstacle(Obstacle.Kind.OTHER, "a soft strip does not rule the work", origin);
    }
    if (hold.bar() != null && isParallelAtJaws(grip, work)) {
      return new Obstacle(
          Obstacle.Kind.BAR_NOT_NEEDED, "the bar keeps the work from seating", origin);
    }
    boolean pair = hold.support() != null && hold.support().value() instanceof Support.Pair;
    Step.Seat seat = bench.seat();
    if (seat == null || !seat.tapped() || (pair && !seat.bothTight())) {
      return new Obstacle(
          Obstacle.Kind.SEAT_NOT_PROVED, "it was not proved that the work sits", origin);
    }
    return null;
  }

  private static @Nullable Obstacle planObstacle(Grip grip, Workpiece work, Bench bench) {
    if (Holding.isLoose(grip)) {
      return loose(grip.hold().origin());
    }
    Face fixed = grip.fixedFace();
    FaceState state = work.face(fixed);
    if (!state.isGood()) {
      return notGood(fixed, state, Obstacle.Kind.RAW_FIXED, "on the fixed jaw");
    }
    if (grip.gripLength().times(2).isLessThan(grip.length().high())) {
      return new Obstacle(
          Obstacle.Kind.OTHER, "less than half its length is gripped", grip.hold().origin());
    }
    if (Holding.isCocked(grip)) {
      return new Obstacle(
          Obstacle.Kind.COCKED, "the moving jaw stands askew", grip.hold().origin());
    }
    if (viseError(grip.vise(), bench) == null) {
      return new Obstacle(
          Obstacle.Kind.NOT_TRUED, "the vise was not set true to the table", grip.hold().origin());
    }
    if (!isParallelAtJaws(grip, work) && mayTaper(work.face(grip.movingFace()))) {
      // A bar cures a lean of the face at the moving jaw, not a taper seen from above.
      return work.rootOr(
          fixed,
          grip.movingFace(),
          new Obstacle(
              Obstacle.Kind.JAWS_NOT_PARALLEL,
              "the "
                  + grip.movingFace().word()
                  + " at the moving jaw is not known to be parallel to the fixed one",
              grip.hold().origin()));
    }
    return null;
  }

  /** Drawn and rolled bar has the same size from end to end; a saw or a mould promises nothing. */
  private static boolean mayTaper(FaceState state) {
    return state.isMachined() || state.skin() == Skin.SAWN || state.skin() == Skin.CAST;
  }

  /** How true the vise stands: set in the plan, or known for good by the shop. */
  static @Nullable Slope viseError(Owned.Vise vise, Bench bench) {
    Bench.Trued trued = bench.trued();
    return trued != null && trued.vise().equalsIgnoreCase(vise.name())
        ? trued.error()
        : vise.trued();
  }

  private static Step.@Nullable Upright upright(Grip grip, Workpiece work, Bench bench) {
    Step.Seat seat = bench.seat();
    if (seat == null || seat.upright() == null) {
      return null;
    }
    Face face = seat.upright().face();
    boolean rules = grip.orientation().axisOf(face) == Axis.X && work.face(face).isGood();
    return rules ? seat.upright() : null;
  }

  private static Obstacle notGood(Face face, FaceState state, Obstacle.Kind raw, String where) {
    if (!state.isMachined()) {
      return new Obstacle(
          raw, "the " + face.word() + " " + where + " is " + state.words(), state.since());
    }
    Origin burr = Optional.ofNullable(state.burr()).orElse(state.since());
    return new Obstacle(
        Obstacle.Kind.BURR, "the " + face.word() + " " + where + " has burrs", burr);
  }
}
