package org.handwheel.work;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Mode;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/** Works out one cut: what comes off, what the cutter sweeps, how the teeth meet the work. */
final class CutCalculator {
  /** How far the cutter's axis runs past the work's ends beyond its radius, in millimetres. */
  static final double RUN_OUT = 2;

  private static final Length TOUCHING = Length.ofMillimetres(0.001);

  private final Drawing drawing;
  private final Limits limits;
  private final Owned.@Nullable Machine machine;
  private final double specificForce;

  /**
   * @param specificForce cutting force per area of chip, N/mm2
   */
  CutCalculator(
      Drawing drawing, Limits limits, Owned.@Nullable Machine machine, double specificForce) {
    this.drawing = drawing;
    this.limits = limits;
    this.machine = machine;
    this.specificForce = specificForce;
  }

  /** Everything about the holding a cut needs. */
  record Place(Hold hold, Orientation orientation, @Nullable Grip grip) {}

  /** The cut in numbers, or nothing if sizes or the cutter are not known, or the face is hidden. */
  @Nullable CutRun run(Step.Cut cut, Place place, Workpiece work, Bench bench) {
    Face face = cut.face();
    SizeState before = work.size(face.dimension());
    if (before == null || bench.cutter() == null) {
      return null;
    }
    Direction normal = place.orientation().directionOf(face);
    if (normal == Direction.DOWN) {
      return null;
    }
    boolean clean = cut.purpose() instanceof Purpose.Clean;
    if (!clean && (goal(cut) == null || drawing.isSuspect(face.dimension()))) {
      return null;
    }
    Mode mode = mode(normal);
    Owned.Cutter cutter = bench.cutter().cutter();
    Owned.Screw screw = machine == null ? null : machine.screw(normal.axis());
    Length goal = goal(cut);
    SizeState after = after(cut, goal, before, bench, screw);
    LengthRange removal = removal(cut, goal, before);
    Length passDepth = passDepth(cut, removal);
    long passes = passes(cut, removal, passDepth);
    Direction travel = travel(cut, mode, normal, place, work, cutter);
    Length axial = axialDepth(mode, passDepth, place, work, bench);
    Sweep sweep = sweep(cut, mode, travel, place, work, bench, cutter, removal);
    Engagement engagement =
        mode == Mode.END
            ? endEngagement(cut, travel, place, work, cutter)
            : Engagement.ofSide(
                Math.min(2, passDepth.millimetres() / cutter.radius().millimetres()),
                Engagement.alongWall(normal, travel, cutter.hand()));
    return new CutRun(
        cut,
        mode,
        cutter,
        normal,
        travel,
        before,
        goal,
        removal,
        after,
        passes,
        passDepth,
        axial,
        engagement,
        force(cut, bench, cutter, axial, engagement),
        sweep.uncovered(),
        sweep.hits(),
        screw);
  }

  static Mode mode(Direction normal) {
    return switch (normal.axis()) {
      case Z -> Mode.END;
      case X -> Mode.SIDE;
      case Y -> Mode.WALL;
    };
  }

  // ---- Sizes
  // ---------------------------------------------------------------------------------------------

  /** The size the cut goes to, what it leaves included; nothing for a skim. */
  @Nullable Length goal(Step.Cut cut) {
    if (cut.purpose() instanceof Purpose.Rough rough) {
      Length aim = aim(rough.target());
      Length leaving = rough.leaving() == null ? Length.ZERO : rough.leaving().value();
      return aim == null ? null : aim.plus(leaving);
    }
    if (cut.purpose() instanceof Purpose.Finish finish) {
      return aim(finish.target());
    }
    return null;
  }

  private @Nullable Length aim(Step.Target target) {
    if (target.size() != null) {
      return target.size();
    }
    Drawing.Demand demand = target.dimension() == null ? null : drawing.demand(target.dimension());
    return demand == null ? null : demand.aim();
  }

  private static LengthRange removal(Step.Cut cut, @Nullable Length goal, SizeState before) {
    if (cut.purpose() instanceof Purpose.Clean clean) {
      return new LengthRange(clean.at().value(), clean.atMost().value());
    }
    Length size = goal == null ? before.range().low() : goal;
    return before.range().plus(size.negated());
  }

  private SizeState after(
      Step.Cut cut,
      @Nullable Length goal,
      SizeState before,
      Bench bench,
      Owned.@Nullable Screw screw) {
    if (cut.purpose() instanceof Purpose.Clean clean) {
      LengthRange skimmed =
          before.range().minus(new LengthRange(clean.at().value(), clean.atMost().value()));
      return new SizeState(skimmed, null, null, cut.origin());
    }
    Length size = goal == null ? before.range().middle() : goal;
    Length touch =
        bench.calibrated().contains(cut.face().dimension())
            ? Length.ZERO
            : limits.length(Limit.TOUCH);
    Length dial = screw == null ? Length.ZERO : Dial.worstRounding(screw);
    Length spread = before.uncertainty().plus(touch).plus(dial);
    LengthRange reached = LengthRange.around(size, spread);
    // Where the work is smaller already the cutter meets nothing, and the size stays.
    boolean reachesIt = !before.range().high().isLessThan(reached.low());
    return new SizeState(reachesIt ? reached : before.range(), null, null, cut.origin());
  }

  private static @Nullable Passes passesOf(Step.Cut cut) {
    if (cut.purpose() instanceof Purpose.Rough rough) {
      return rough.passes();
    }
    return cut.purpose() instanceof Purpose.Finish finish ? finish.passes() : null;
  }

  private static Length passDepth(Step.Cut cut, LengthRange removal) {
    if (cut.purpose() instanceof Purpose.Clean clean) {
      return clean.at().value();
    }
    Passes passes = passesOf(cut);
    if (passes instanceof Passes.EachAtMost each) {
      return Length.min(each.depth(), Length.max(removal.high(), Length.ZERO));
    }
    // In one pass the operator winds down what comes off by the numbers, from the face touched.
    return passes instanceof Passes.Counted counted
        ? counted.depth()
        : Length.max(removal.middle(), Length.ZERO);
  }

  private static long passes(Step.Cut cut, LengthRange removal, Length passDepth) {
    if (passesOf(cut) instanceof Passes.Counted counted) {
      return counted.count();
    }
    if (!passDepth.isPositive()) {
      return 0;
    }
    return passesOf(cut) instanceof Passes.EachAtMost || cut.purpose() instanceof Purpose.Clean
        ? Math.max(1, removal.high().stepsOf(passDepth))
        : 1;
  }

  // ---- Travel and engagement
  // -------------------------------------------------------------------------------

  private Direction travel(
      Step.Cut cut, Mode mode, Direction normal, Place place, Workpiece work, Owned.Cutter cutter) {
    Direction stated =
        cut.travel() == null ? null : place.orientation().resolve(cut.travel().value().to());
    if (mode == Mode.END) {
      return stated != null && stated.axis() != Axis.Z ? stated : longWay(place, work);
    }
    if (stated != null && stated.axis() != normal.axis() && stated.axis() != Axis.Z) {
      return stated;
    }
    CutDirection direction =
        cut.direction() == null ? CutDirection.CONVENTIONAL : cut.direction().value();
    return Engagement.travelFor(normal, direction, cutter.hand());
  }

  /** Facing goes along the longer side of the face unless the plan says otherwise. */
  private static Direction longWay(Place place, Workpiece work) {
    Length x = extent(place, work, Axis.X);
    Length y = extent(place, work, Axis.Y);
    return y.isMoreThan(x) ? Direction.OPERATOR_BACK : Direction.OPERATOR_RIGHT;
  }

  private static Length extent(Place place, Workpiece work, Axis axis) {
    SizeState size = work.size(place.orientation().along(axis));
    return size == null ? Length.ZERO : size.range().high();
  }

  /** The offset of the cutter's axis from the middle, positive along the machine axis. */
  private static double offset(Step.Cut cut, Place place, Axis across) {
    if (cut.offset() == null) {
      return 0;
    }
    Direction toward = place.orientation().resolve(cut.offset().value().toward());
    return toward.axis() == across
        ? toward.sign() * cut.offset().value().distance().millimetres()
        : 0;
  }

  private static Axis across(Direction travel) {
    return travel.axis() == Axis.X ? Axis.Y : Axis.X;
  }

  private Engagement endEngagement(
      Step.Cut cut, Direction travel, Place place, Workpiece work, Owned.Cutter cutter) {
    Axis across = across(travel);
    double half = extent(place, work, across).half().millimetres();
    double radius = cutter.radius().millimetres();
    double offset = offset(cut, place, across);
    // Left of +X is +Y; left of +Y is -X.
    double left = travel.axis() == Axis.X ? travel.sign() : -travel.sign();
    double middle = -offset * left;
    if (cut.stepOver() != null) {
      // After the first lane each has its work on one side; without a word it is cut
      // conventionally.
      double lane = Math.min(cut.stepOver().value().millimetres(), 2 * radius);
      CutDirection direction =
          cut.direction() == null ? CutDirection.CONVENTIONAL : cut.direction().value();
      return Engagement.ofSide(lane / radius, direction);
    }
    return Engagement.of((middle - half) / radius, (middle + half) / radius, cutter.hand());
  }

  private double force(
      Step.Cut cut, Bench bench, Owned.Cutter cutter, Length axial, Engagement engagement) {
    Length feed = limits.length(Limit.FEED_PER_TOOTH);
    if (bench.cutter() != null && bench.cutter().feedPerTooth() != null) {
      feed = bench.cutter().feedPerTooth();
    }
    if (cut.feedPerTooth() != null) {
      feed = cut.feedPerTooth().value();
    }
    // Mean over a turn with at least one tooth in the cut now and then: Kt fz ap z / (2 pi) K.
    return specificForce
        * feed.millimetres()
        * axial.millimetres()
        * cutter.teeth()
        / (2 * Math.PI)
        * engagement.netForce();
  }

  // ---- Depth and sweep
  // -------------------------------------------------------------------------------------

  private Length axialDepth(Mode mode, Length passDepth, Place place, Workpiece work, Bench bench) {
    if (mode == Mode.END) {
      return passDepth;
    }
    Length height = extent(place, work, Axis.Z);
    Length set = depthBelowTop(place, bench);
    return set == null ? height : Length.min(set, height);
  }

  /** How far below the work's top the cutter's end was set, if the plan sets it. */
  static @Nullable Length depthBelowTop(Place place, Bench bench) {
    return bench.depthSet() != null && bench.depthSet().face() == place.orientation().up()
        ? bench.depthSet().depth()
        : null;
  }

  private record Sweep(Length uncovered, List<Hit> hits) {}

  private Sweep sweep(
      Step.Cut cut,
      Mode mode,
      Direction travel,
      Place place,
      Workpiece work,
      Bench bench,
      Owned.Cutter cutter,
      LengthRange removal) {
    Scene scene = scene(place, work);
    Length seat = place.grip() == null ? Length.ZERO : place.grip().seat();
    SizeState upward = work.size(place.orientation().along(Axis.Z));
    if (upward == null) {
      return new Sweep(Length.ZERO, List.of());
    }
    double radius = cutter.radius().millimetres();
    if (mode == Mode.END) {
      Length lowest = seat.plus(upward.range().low()).minus(removal.high());
      if (cut.purpose() instanceof Purpose.Rough || cut.purpose() instanceof Purpose.Finish) {
        Length goal = goal(cut);
        lowest = goal == null ? lowest : seat.plus(goal);
      }
      double offset = offset(cut, place, across(travel));
      double step = cut.stepOver() == null ? 0 : cut.stepOver().value().millimetres();
      double flat = Math.max(0, radius - cutter.corner().millimetres());
      Scene.Lanes lanes = scene.lanes(travel.axis(), flat, offset, step);
      Geometry covered = scene.faceSweep(lanes, flat, radius + RUN_OUT);
      Geometry swept = scene.faceSweep(lanes, radius, 2 * radius + RUN_OUT);
      Length strip = Length.ofMillimetres(scene.uncoveredStrip(covered, travel.axis()));
      return new Sweep(
          strip.isMoreThan(TOUCHING) ? strip : Length.ZERO, hits(scene, swept, lowest));
    }
    Length height = upward.range().high();
    Length set = depthBelowTop(place, bench);
    Length bottom = seat.plus(height).minus(set == null ? height : set);
    Geometry swept = sideSweep(scene, mode, place, cut.face(), radius, removal);
    // Below the cutter's end the face stays as it was.
    Length rest = set == null ? Length.ZERO : upward.range().low().minus(set);
    return new Sweep(Length.max(rest, Length.ZERO), hits(scene, swept, bottom));
  }

  private static Scene scene(Place place, Workpiece work) {
    if (place.grip() != null) {
      return Scene.of(place.grip());
    }
    Length height = extent(place, work, Axis.Z);
    return Scene.onPlate(
        place.hold(), extent(place, work, Axis.X), extent(place, work, Axis.Y), height);
  }

  /** The band beside the wall that the cutter's side passes through at its deepest. */
  private static Geometry sideSweep(
      Scene scene, Mode mode, Place place, Face face, double radius, LengthRange removal) {
    var envelope = scene.work().getEnvelopeInternal();
    int sign = place.orientation().directionOf(face).sign();
    double off = Math.max(0, removal.high().millimetres());
    double run = radius + RUN_OUT;
    if (mode == Mode.SIDE) {
      double wall = sign > 0 ? envelope.getMaxX() - off : envelope.getMinX() + off;
      return Scene.box(
          wall, envelope.getMinY() - run, wall + sign * 2 * radius, envelope.getMaxY() + run);
    }
    double wall = sign > 0 ? envelope.getMaxY() - off : envelope.getMinY() + off;
    return Scene.box(
        envelope.getMinX() - run, wall, envelope.getMaxX() + run, wall + sign * 2 * radius);
  }

  private static List<Hit> hits(Scene scene, Geometry swept, Length bottom) {
    List<Hit> hits = new ArrayList<>();
    for (Scene.Body body : scene.bodies()) {
      boolean over = Scene.passesOver(swept, body.outline());
      if (over) {
        hits.add(new Hit(body.thing(), body.name(), bottom.minus(body.top())));
      }
    }
    // The floor is far below most cuts; it is something to tell of only where it is met.
    scene
        .floor()
        .filter(floor -> bottom.isLessThan(floor.top()))
        .filter(floor -> Scene.passesOver(swept, floor.outline()))
        .ifPresent(
            floor -> hits.add(new Hit(floor.thing(), floor.name(), bottom.minus(floor.top()))));
    return hits;
  }
}
