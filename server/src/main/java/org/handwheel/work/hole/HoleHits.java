package org.handwheel.work.hole;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.PlateKind;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Scene;
import org.handwheel.work.SizeState;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleRun.Side;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;

/** What tools for holes run into: parallels, jaws and clamps, the vise's bed and the table. */
public final class HoleHits {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Millimetres below which two outlines only touch. */
  private static final double LEAST_OVERLAP = 1e-6;

  private final PlanRun run;
  private final SetupRun setup;
  private final StepRun step;
  private final Orientation lies;

  private HoleHits(PlanRun run, SetupRun setup, StepRun step, Orientation lies) {
    this.run = run;
    this.setup = setup;
    this.step = step;
    this.lies = lies;
  }

  /**
   * One thing that is hit.
   *
   * @param into how far: sideways into a parallel, a jaw or a clamp; down into the bed or table
   */
  public record Hit(What what, String name, Result result, Length into) {}

  /** What is hit. */
  public enum What {
    PARALLEL,
    JAW,
    CLAMP,
    BED,
    TABLE
  }

  /** Everything that a line on holes hits, tool by tool. */
  public static List<Hit> of(PlanRun run, SetupRun setup, StepRun step) {
    Orientation lies = setup.orientation();
    Hold hold = setup.setup().hold();
    if (step.holes() == null || lies == null || hold == null) {
      return List.of();
    }
    return new HoleHits(run, setup, step, lies).hits(step.holes(), hold);
  }

  private List<Hit> hits(HoleRun made, Hold hold) {
    List<Hit> hits = new ArrayList<>();
    Optional<Scene> scene = scene(hold);
    if (scene.isEmpty()) {
      return hits;
    }
    made.results()
        .filter(result -> result.side() != Side.NONE && result.bit().dia() != null)
        .forEach(
            result -> {
              bodies(result, scene.get(), hits);
              below(result, hold, hits);
            });
    return hits;
  }

  private Optional<Scene> scene(Hold hold) {
    Grip grip = setup.grip();
    if (grip != null) {
      return Optional.of(Scene.of(grip));
    }
    Length x = extent(Axis.X);
    Length y = extent(Axis.Y);
    Length z = extent(Axis.Z);
    return hold.rest() instanceof Hold.Rest.InVise || x == null || y == null || z == null
        ? Optional.empty()
        : Optional.of(Scene.onPlate(hold, x, y, z));
  }

  private @Nullable Length extent(Axis axis) {
    SizeState state = step.before().size(lies.along(axis));
    return state == null ? null : state.range().middle();
  }

  // ---- Beside the work and under it
  // ----------------------------------------------------------------------------------

  private void bodies(Result result, Scene scene, List<Hit> hits) {
    Length dia = result.bit().dia();
    Point middle = middle(result.hole());
    if (dia == null || middle == null || result.tip() == null) {
      return;
    }
    double radius = dia.half().millimetres();
    for (Scene.Body body : scene.bodies()) {
      double into = radius - body.outline().distance(middle);
      if (into > LEAST_OVERLAP && reaches(result, body)) {
        hits.add(new Hit(what(body.thing()), body.name(), result, Length.ofMillimetres(into)));
      }
    }
  }

  private boolean reaches(Result result, Scene.Body body) {
    return switch (body.thing()) {
      case PARALLEL -> result.through();
      case CLAMP -> true;
      case JAW -> {
        Grip grip = setup.grip();
        Length up = extent(Axis.Z);
        yield grip != null
            && up != null
            && result.tip() != null
            && grip.seat().plus(up).minus(result.tip()).isLessThan(body.top());
      }
    };
  }

  private static What what(Thing thing) {
    return switch (thing) {
      case PARALLEL -> What.PARALLEL;
      case JAW -> What.JAW;
      case CLAMP -> What.CLAMP;
    };
  }

  /** A hole's middle in the scene; where the work is larger than drawn, from the edge found. */
  private @Nullable Point middle(DrawnHole hole) {
    Length x = fromLow(Axis.X, hole);
    Length y = fromLow(Axis.Y, hole);
    if (x == null || y == null) {
      return null;
    }
    Grip grip = setup.grip();
    if (grip == null) {
      return FACTORY.createPoint(new Coordinate(x.millimetres(), y.millimetres()));
    }
    boolean jawInFront = grip.vise().fixedJaw() == Direction.OPERATOR_FRONT;
    double across = jawInFront ? y.millimetres() : y.minus(grip.gripped().middle()).millimetres();
    return FACTORY.createPoint(new Coordinate(grip.workLeft().plus(x).millimetres(), across));
  }

  /** How far a hole lies from the work's side at the operator's left or front. */
  private @Nullable Length fromLow(Axis axis, DrawnHole hole) {
    PartBox box = hole.frame().box();
    Face low = lies.facing(Direction.of(axis, -1));
    Length size = extent(axis);
    AxisZero zero = Coordinates.zero(run, setup, step, axis);
    boolean countsFromHigh = zero != null && zero.edge() == low.opposite();
    if (!countsFromHigh) {
      return box.from(low, hole.point());
    }
    return size == null ? null : size.minus(box.from(low.opposite(), hole.point()));
  }

  // ---- Below
  // ---------------------------------------------------------------------------------------------------------

  private void below(Result result, Hold hold, List<Hit> hits) {
    if (!result.through() || result.tip() == null || result.depth() == null) {
      return;
    }
    Length out = result.tip().minus(result.depth());
    Grip grip = setup.grip();
    if (grip != null) {
      if (grip.seat().isLessThan(out)) {
        hits.add(
            new Hit(
                What.BED,
                "the bed of the vise " + grip.vise().name(),
                result,
                out.minus(grip.seat())));
      }
    } else if (hold.rest() instanceof Hold.Rest.OnPlate plate
        && plate.plate() == PlateKind.TABLE
        && hold.support() == null) {
      hits.add(new Hit(What.TABLE, "the table", result, out));
    }
  }
}
