package org.handwheel.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.Support;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Thing;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * The holding seen from above, as polygons with heights, in millimetres.
 *
 * <p>X is zero in the middle of the jaws, Y is zero at the fixed jaw's face and negative toward the
 * moving jaw (turned round if the fixed jaw is in front), heights count from the vise's bed.
 */
public final class Scene {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** How far back a jaw is drawn and counts as being in the way. */
  private static final double JAW_THICKNESS = 15;

  /** How wide a work stop is and how far it stands out; common practice, no source. */
  private static final double STOP_WIDTH = 12;

  private static final double STOP_LENGTH = 15;

  /** How far round the work the table counts, in millimetres. */
  private static final double TABLE_REACH = 1000;

  private final Polygon work;
  private final List<Body> bodies;
  private final @Nullable Body floor;

  /** Something solid: its outline from above and how high it reaches. */
  public record Body(Thing thing, String name, Polygon outline, Length top) {}

  private Scene(Polygon work, List<Body> bodies, @Nullable Body floor) {
    this.work = work;
    this.bodies = List.copyOf(bodies);
    this.floor = floor;
  }

  /** The work's outline. */
  public Polygon work() {
    return work;
  }

  /** Jaws, parallels, clamps and the stop. */
  public List<Body> bodies() {
    return bodies;
  }

  /**
   * What lies under the work that no cutter may touch: the bed of a vise, or the table. A subplate
   * is there to be cut into.
   */
  public Optional<Body> floor() {
    return Optional.ofNullable(floor);
  }

  /** The scene of work in a vise. */
  public static Scene of(Grip grip) {
    double toward = grip.vise().fixedJaw() == Direction.OPERATOR_FRONT ? 1 : -1;
    double width = grip.gripped().middle().millimetres();
    double left = grip.workLeft().millimetres();
    double right = grip.workRight().millimetres();
    double halfJaw = grip.vise().jawWidth().half().millimetres();
    double between = Grip.between(grip.hold()).millimetres();
    List<Body> bodies = new ArrayList<>();
    Length jawTop = grip.vise().jawDepth();
    bodies.add(
        new Body(
            Thing.JAW,
            "the fixed jaw",
            box(-halfJaw, 0, halfJaw, -toward * JAW_THICKNESS),
            jawTop));
    double moving = toward * (width + between);
    bodies.add(
        new Body(
            Thing.JAW,
            "the moving jaw",
            box(-halfJaw, moving, halfJaw, moving + toward * JAW_THICKNESS),
            jawTop));
    addParallels(grip, toward, width, bodies);
    Polygon work = box(left, 0, right, toward * width);
    addStop(grip.hold(), work, grip.seat(), grip.height().middle(), bodies);
    Body bed =
        new Body(
            Thing.BED,
            "the bed of the vise " + grip.vise().name(),
            box(-halfJaw, 0, halfJaw, moving),
            Length.ZERO);
    return new Scene(work, bodies, bed);
  }

  /**
   * A work stop: at the middle of an end, up to half the work's height. The plan says only at which
   * end it is; where it touches is common practice, no source.
   */
  private static void addStop(
      Hold hold, Polygon work, Length seat, Length height, List<Body> bodies) {
    if (hold.stop() == null) {
      return;
    }
    Envelope envelope = work.getEnvelopeInternal();
    boolean atLeft = hold.stop().value() == Direction.OPERATOR_LEFT;
    double end = atLeft ? envelope.getMinX() : envelope.getMaxX();
    double middle = envelope.centre().getY();
    bodies.add(
        new Body(
            Thing.STOP,
            "the work stop",
            box(
                end,
                middle - STOP_WIDTH / 2,
                end + (atLeft ? -STOP_LENGTH : STOP_LENGTH),
                middle + STOP_WIDTH / 2),
            seat.plus(height.half())));
  }

  private static void addParallels(Grip grip, double toward, double width, List<Body> bodies) {
    Optional<Owned.Parallels> parallels = grip.parallels();
    if (parallels.isEmpty() || grip.hold().support() == null) {
      return;
    }
    double thickness = parallels.get().thickness().millimetres();
    double half = parallels.get().length().half().millimetres();
    Length top = parallels.get().height();
    String name = "parallel " + parallels.get().name();
    bodies.add(new Body(Thing.PARALLEL, name, box(-half, 0, half, toward * thickness), top));
    if (grip.hold().support().value() instanceof Support.Pair) {
      double outer = toward * width;
      bodies.add(
          new Body(Thing.PARALLEL, name, box(-half, outer, half, outer - toward * thickness), top));
    }
  }

  /**
   * The scene of work clamped to a plate: its left front corner as it lies is the origin, and each
   * clamp covers a square of its width about its point. Heights count from the work's underside.
   */
  public static Scene onPlate(Hold hold, Length alongX, Length alongY, Length height) {
    List<Body> bodies = new ArrayList<>();
    for (Hold.Clamping clamping : hold.clamps()) {
      Length size = clamping.clamp().size("width");
      double half = size == null ? 0 : size.half().millimetres();
      Length rise = clamping.clamp().size("height");
      double x = clamping.x().millimetres();
      double y = clamping.y().millimetres();
      bodies.add(
          new Body(
              Thing.CLAMP,
              "clamp " + clamping.clamp().name(),
              box(x - half, y - half, x + half, y + half),
              height.plus(rise == null ? size == null ? Length.ZERO : size : rise)));
    }
    Polygon work = box(0, 0, alongX.millimetres(), alongY.millimetres());
    addStop(hold, work, Length.ZERO, height, bodies);
    boolean onTable =
        hold.rest() instanceof Hold.Rest.OnPlate plate && plate.plate() == Hold.PlateKind.TABLE;
    Body table =
        new Body(
            Thing.TABLE,
            "the table",
            box(
                -TABLE_REACH,
                -TABLE_REACH,
                alongX.millimetres() + TABLE_REACH,
                alongY.millimetres() + TABLE_REACH),
            Grip.seat(hold).negated());
    return new Scene(work, bodies, onTable ? table : null);
  }

  static Polygon box(double x1, double y1, double x2, double y2) {
    double left = Math.min(x1, x2);
    double right = Math.max(x1, x2);
    double low = Math.min(y1, y2);
    double high = Math.max(y1, y2);
    return FACTORY.createPolygon(
        new Coordinate[] {
          new Coordinate(left, low),
          new Coordinate(right, low),
          new Coordinate(right, high),
          new Coordinate(left, high),
          new Coordinate(left, low)
        });
  }

  /**
   * The lanes in which a cutter faces the work.
   *
   * @param travel the axis they run along
   * @param middle where the middle lane lies, in Y for travel along X
   * @param count how many
   * @param stepOver distance between neighbours
   */
  record Lanes(Axis travel, double middle, int count, double stepOver) {}

  /** Square millimetres below which two outlines only touch. */
  private static final double LEAST_OVERLAP = 1e-6;

  /** More lanes than any work needs: a step over of nearly nothing must not take forever. */
  private static final int MOST_LANES = 1000;

  /**
   * As many lanes as cover the work.
   *
   * @param radius the part of the cutter that leaves a flat, half its flat diameter
   * @param offset of the middle lane from the middle of the face
   * @param stepOver distance between lanes, or zero for a single one
   */
  Lanes lanes(Axis travel, double radius, double offset, double stepOver) {
    var envelope = work.getEnvelopeInternal();
    boolean alongX = travel == Axis.X;
    double across = alongX ? envelope.getHeight() : envelope.getWidth();
    double middle = (alongX ? envelope.centre().getY() : envelope.centre().getX()) + offset;
    return new Lanes(travel, middle, laneCount(across, radius, stepOver), stepOver);
  }

  /** How many lanes cover a face, as in {@link #lanes}. */
  static int laneCount(double across, double radius, double stepOver) {
    double count =
        stepOver <= 0 ? 1 : Math.ceil(Math.max(0, across - 2 * radius) / stepOver - 1e-9) + 1;
    return (int) Math.min(count, MOST_LANES);
  }

  /**
   * What the cutter sweeps when it faces the work.
   *
   * @param beyond how far it reaches past the ends
   */
  Geometry faceSweep(Lanes lanes, double radius, double beyond) {
    var envelope = work.getEnvelopeInternal();
    boolean alongX = lanes.travel() == Axis.X;
    Geometry swept = FACTORY.createPolygon();
    for (int lane = 0; lane < lanes.count(); lane++) {
      double at = lanes.middle() + (lane - (lanes.count() - 1) / 2.0) * lanes.stepOver();
      Polygon band =
          alongX
              ? box(
                  envelope.getMinX() - beyond,
                  at - radius,
                  envelope.getMaxX() + beyond,
                  at + radius)
              : box(
                  at - radius,
                  envelope.getMinY() - beyond,
                  at + radius,
                  envelope.getMaxY() + beyond);
      swept = lanes.count() == 1 ? band : swept.union(band);
    }
    return swept;
  }

  /** Whether a sweep passes over a body; boxes, the usual case, are told by their edges alone. */
  static boolean passesOver(Geometry sweep, Polygon body) {
    Envelope shared = sweep.getEnvelopeInternal().intersection(body.getEnvelopeInternal());
    if (shared.isNull() || shared.getArea() <= LEAST_OVERLAP) {
      return false;
    }
    return (sweep.isRectangle() && body.isRectangle())
        || sweep.intersection(body).getArea() > LEAST_OVERLAP;
  }

  /** The width of the widest strip of the work that a sweep leaves uncovered, in millimetres. */
  double uncoveredStrip(Geometry sweep, Axis travel) {
    if (sweep.isRectangle() && sweep.getEnvelopeInternal().contains(work.getEnvelopeInternal())) {
      return 0;
    }
    Geometry rest = work.difference(sweep);
    double widest = 0;
    for (int i = 0; i < rest.getNumGeometries(); i++) {
      var envelope = rest.getGeometryN(i).getEnvelopeInternal();
      if (!envelope.isNull()) {
        widest = Math.max(widest, travel == Axis.X ? envelope.getHeight() : envelope.getWidth());
      }
    }
    return widest;
  }
}
