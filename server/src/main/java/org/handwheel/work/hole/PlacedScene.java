package org.handwheel.work.hole;

import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Scene;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/** The holding at one line of a setup, and where the drawing's places lie in it. */
public final class PlacedScene {
  private final PlanRun run;
  private final SetupRun setup;
  private final StepRun step;
  private final Orientation lies;
  private final Scene scene;

  private PlacedScene(
      PlanRun run, SetupRun setup, StepRun step, Orientation lies, @Nullable Scene scene) {
    this.run = run;
    this.setup = setup;
    this.step = step;
    this.lies = lies;
    this.scene = scene == null ? onPlate(setup, step, lies) : scene;
  }

  /** The scene at a line; nothing if the holding or the sizes of the work are not known. */
  public static Optional<PlacedScene> of(PlanRun run, SetupRun setup, StepRun step) {
    Orientation lies = setup.orientation();
    Hold hold = setup.setup().hold();
    if (lies == null || hold == null) {
      return Optional.empty();
    }
    Grip grip = setup.grip();
    if (grip != null) {
      return Optional.of(new PlacedScene(run, setup, step, lies, Scene.of(grip)));
    }
    boolean isKnown =
        !(hold.rest() instanceof Hold.Rest.InVise)
            && extent(step, lies, Axis.X) != null
            && extent(step, lies, Axis.Y) != null
            && extent(step, lies, Axis.Z) != null;
    return isKnown ? Optional.of(new PlacedScene(run, setup, step, lies, null)) : Optional.empty();
  }

  private static Scene onPlate(SetupRun setup, StepRun step, Orientation lies) {
    Hold hold = setup.setup().hold();
    Length x = extent(step, lies, Axis.X);
    Length y = extent(step, lies, Axis.Y);
    Length z = extent(step, lies, Axis.Z);
    if (hold == null || x == null || y == null || z == null) {
      throw new IllegalStateException("the sizes were known");
    }
    return Scene.onPlate(hold, x, y, z);
  }

  public Scene scene() {
    return scene;
  }

  /** How far the work reaches along an axis, in the middle of what is known. */
  public @Nullable Length extent(Axis axis) {
    return extent(step, lies, axis);
  }

  private static @Nullable Length extent(StepRun step, Orientation lies, Axis axis) {
    SizeState state = step.before().size(lies.along(axis));
    return state == null ? null : state.range().middle();
  }

  /**
   * Where a point of the part lies in the scene, in millimetres; where the work is larger than
   * drawn, as it counts from the edge that was found.
   */
  public @Nullable Coordinate at(PartBox box, PartBox.Point point) {
    Length x = fromLow(Axis.X, box, point);
    Length y = fromLow(Axis.Y, box, point);
    if (x == null || y == null) {
      return null;
    }
    Grip grip = setup.grip();
    if (grip == null) {
      return new Coordinate(x.millimetres(), y.millimetres());
    }
    boolean jawInFront = grip.vise().fixedJaw() == Direction.OPERATOR_FRONT;
    double across = jawInFront ? y.millimetres() : y.minus(grip.gripped().middle()).millimetres();
    return new Coordinate(grip.workLeft().plus(x).millimetres(), across);
  }

  /** How far a point lies from the work's side at the operator's left or front. */
  private @Nullable Length fromLow(Axis axis, PartBox box, PartBox.Point point) {
    Face low = lies.facing(Direction.of(axis, -1));
    Length size = extent(axis);
    AxisZero zero = Coordinates.zero(run, setup, step, axis);
    boolean countsFromHigh = zero != null && zero.edge() == low.opposite();
    if (!countsFromHigh) {
      return box.from(low, point);
    }
    return size == null ? null : size.minus(box.from(low.opposite(), point));
  }
}
