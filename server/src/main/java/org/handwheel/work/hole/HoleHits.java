package org.handwheel.work.hole;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.PlateKind;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Scene;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleRun.Side;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** What tools for holes run into: parallels, jaws and clamps, the vise's bed and the table. */
public final class HoleHits {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Millimetres below which two outlines only touch. */
  private static final double LEAST_OVERLAP = 1e-6;

  private final PlanRun run;
  private final SetupRun setup;
  private final StepRun step;

  private HoleHits(PlanRun run, SetupRun setup, StepRun step) {
    this.run = run;
    this.setup = setup;
    this.step = step;
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
    Hold hold = setup.setup().hold();
    if (step.holes() == null || hold == null) {
      return List.of();
    }
    return new HoleHits(run, setup, step).hits(step.holes(), hold);
  }

  private List<Hit> hits(HoleRun made, Hold hold) {
    List<Hit> hits = new ArrayList<>();
    Optional<PlacedScene> scene = PlacedScene.of(run, setup, step);
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

  // ---- Beside the work and under it
  // ----------------------------------------------------------------------------------

  private void bodies(Result result, PlacedScene placed, List<Hit> hits) {
    Length dia = result.bit().dia();
    Coordinate middle = placed.at(result.hole().frame().box(), result.hole().point());
    if (dia == null || middle == null || result.tip() == null) {
      return;
    }
    double radius = dia.half().millimetres();
    for (Scene.Body body : placed.scene().bodies()) {
      double into = radius - body.outline().distance(FACTORY.createPoint(middle));
      if (into > LEAST_OVERLAP && reaches(result, body, placed)) {
        hits.add(new Hit(what(body.thing()), body.name(), result, Length.ofMillimetres(into)));
      }
    }
  }

  private boolean reaches(Result result, Scene.Body body, PlacedScene placed) {
    return switch (body.thing()) {
      case PARALLEL -> result.through();
      case CLAMP -> true;
      case STOP, BED, TABLE -> false;
      case JAW -> {
        Grip grip = setup.grip();
        Length up = placed.extent(Axis.Z);
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
      case CLAMP, STOP -> What.CLAMP;
      case BED -> What.BED;
      case TABLE -> What.TABLE;
    };
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
