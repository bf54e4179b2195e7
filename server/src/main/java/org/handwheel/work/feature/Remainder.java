package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun;
import org.handwheel.work.Removed;
import org.handwheel.work.Workpiece;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.DrawnHoles;
import org.handwheel.work.hole.HoleState;
import org.handwheel.work.hole.HoleWork;
import org.locationtech.jts.geom.Geometry;

/**
 * The work after its last setup against the drawing, layer by layer through the part in each of its
 * three directions: holes, slots, pockets, steps, corners, outlines and windows.
 *
 * <p>Sloped metal is not compared: countersinks, chamfers and the points of drills. Each direction
 * is looked at by itself, so a hole that a cut from another side has opened counts as not made.
 *
 * @param left what the drawing wants gone and no setup removed
 * @param over what setups removed and the drawing keeps
 */
public record Remainder(List<Layer> left, List<Layer> over) {
  /** What nobody calls metal left on: the usual general tolerance; common practice, no source. */
  private static final Length NO_MATTER = Length.mm("0.2");

  public Remainder {
    left = List.copyOf(left);
    over = List.copyOf(over);
  }

  /**
   * A region of a layer.
   *
   * @param face the face it is seen from: right, back or top
   * @param depth from where to where below that face
   * @param region where, in the coordinates of the face in millimetres
   */
  public record Layer(Face face, LengthRange depth, Geometry region) {
    /** In square millimetres. */
    public double area() {
      return region.getArea();
    }
  }

  /** A region of a face through some depths, in picometres below the high face. */
  private record Block(Geometry region, long from, long to) {
    boolean spans(long upper, long lower) {
      return from <= upper && to >= lower;
    }
  }

  public boolean isNothing() {
    return left.isEmpty() && over.isEmpty();
  }

  /** The same with the widest tolerance of any outline, or what is no matter in a shop. */
  public static Remainder of(PlanRun run, StandardTables tables) {
    Length allowed = NO_MATTER;
    if (run.plan().part() != null) {
      for (var spec : run.plan().part().features()) {
        allowed = Length.max(allowed, FeatureSizes.slack(spec));
      }
    }
    return of(run, tables, allowed);
  }

  /**
   * Compares the end of a plan with its drawing.
   *
   * @param allowed a region nowhere thicker than this is no matter, nor is such a layer
   */
  public static Remainder of(PlanRun run, StandardTables tables, Length allowed) {
    Workpiece end = run.end();
    PartBox box = PartBox.of(run.drawing(), end).orElse(null);
    if (run.plan().part() == null || box == null) {
      return new Remainder(List.of(), List.of());
    }
    List<DrawnFeature> features =
        run.plan().part().features().stream()
            .flatMap(spec -> DrawnFeature.of(spec, box).stream())
            .toList();
    DrawnHoles holes = DrawnHoles.of(run.plan().part(), box, tables);
    List<Layer> left = new ArrayList<>();
    List<Layer> over = new ArrayList<>();
    for (Face face : List.of(Face.RIGHT, Face.BACK, Face.TOP)) {
      List<Block> wanted = wanted(features, holes, run, box, face.dimension());
      List<Block> done = done(end, box, face.dimension());
      TreeSet<Long> levels = new TreeSet<>();
      for (Block block : concat(wanted, done)) {
        levels.add(block.from());
        levels.add(block.to());
      }
      Long upper = null;
      for (Long lower : levels) {
        if (upper != null && new Length(lower - upper).isMoreThan(allowed)) {
          LengthRange depth = new LengthRange(new Length(upper), new Length(lower));
          Geometry gone = union(done, upper, lower);
          Geometry asked = union(wanted, upper, lower);
          add(left, face, depth, asked.difference(gone), allowed);
          Geometry open = union(open(holes, box, face.dimension()), upper, lower);
          add(over, face, depth, gone.difference(asked).difference(open), allowed);
        }
        upper = lower;
      }
    }
    return new Remainder(left, over);
  }

  private static List<Block> concat(List<Block> some, List<Block> others) {
    List<Block> all = new ArrayList<>(some);
    all.addAll(others);
    return all;
  }

  private static void add(
      List<Layer> layers, Face face, LengthRange depth, Geometry region, Length allowed) {
    // What is thinner than the allowance vanishes when its edges are drawn in by half of that.
    if (!Plane.grown(region, -allowed.millimetres() / 2).isEmpty()) {
      layers.add(new Layer(face, depth, region));
    }
  }

  private static Geometry union(List<Block> blocks, long upper, long lower) {
    Geometry all = Plane.nothing();
    for (Block block : blocks) {
      all = block.spans(upper, lower) ? all.union(block.region()) : all;
    }
    return all;
  }

  // ---- What the drawing wants gone

  private static List<Block> wanted(
      List<DrawnFeature> features,
      DrawnHoles holes,
      PlanRun run,
      PartBox box,
      PartDimension across) {
    List<Block> blocks = new ArrayList<>();
    for (DrawnFeature drawn : features) {
      boolean isStraight = !(drawn.form() instanceof DrawnFeature.Form.Edges);
      if (isStraight && drawn.frame().face().dimension() == across) {
        blocks.add(block(drawn.frame().face(), box, drawn.gone(corner(run, drawn)), drawn.depth()));
      }
    }
    for (DrawnHole hole : holes.all()) {
      if (hole.spec().face().dimension() == across) {
        addHole(blocks, hole, run.end().holes(), box);
      }
    }
    return blocks;
  }

  /** What may be gone besides: the teeth of threads, and spotfaces, whose depth is not drawn. */
  private static List<Block> open(DrawnHoles holes, PartBox box, PartDimension across) {
    List<Block> blocks = new ArrayList<>();
    for (DrawnHole hole : holes.all()) {
      Face face = hole.spec().face();
      if (face.dimension() != across) {
        continue;
      }
      if (hole.thread() != null && hole.depth() != null) {
        blocks.add(block(face, box, HoleWork.circle(hole, hole.thread().major()), hole.depth()));
      }
      if (hole.spec().spotface() != null) {
        Length through = box.size(across);
        blocks.add(block(face, box, HoleWork.circle(hole, hole.spec().spotface()), through));
      }
    }
    return blocks;
  }

  /** Corners that the drawing leaves to the cutter are as round as that is. */
  private static double corner(PlanRun run, DrawnFeature drawn) {
    return run.knownSetups()
        .flatMap(setup -> setup.steps().stream())
        .map(step -> step.feature())
        .filter(one -> one != null && one.spec().equals(drawn.spec()) && one.cutter() != null)
        .mapToDouble(
            one -> one == null || one.cutter() == null ? 0 : one.cutter().radius().millimetres())
        .max()
        .orElse(0);
  }

  private static void addHole(
      List<Block> blocks, DrawnHole hole, Map<String, HoleState> states, PartBox box) {
    HoleState state = states.getOrDefault(hole.name(), HoleState.UNTOUCHED);
    // A thread is drilled to its core; how wide that is has rules of its own.
    Length dia = hole.thread() != null && state.bore() != null ? state.bore() : hole.dia();
    Length depth = hole.depth();
    Face face = hole.spec().face();
    if (dia != null && depth != null) {
      blocks.add(block(face, box, HoleWork.circle(hole, dia), depth));
    }
    if (hole.spec().counterboreDia() != null && hole.spec().counterboreDepth() != null) {
      blocks.add(
          block(
              face,
              box,
              HoleWork.circle(hole, hole.spec().counterboreDia()),
              hole.spec().counterboreDepth()));
    }
  }

  private static Block block(Face face, PartBox box, Geometry region, Length depth) {
    Length thickness = box.size(face.dimension());
    Length deep = Length.min(depth, thickness);
    return face.sign() > 0
        ? new Block(region, 0, deep.picometres())
        : new Block(region, thickness.minus(deep).picometres(), thickness.picometres());
  }

  // ---- What the plan took away

  private static List<Block> done(Workpiece end, PartBox box, PartDimension across) {
    List<Block> blocks = new ArrayList<>();
    for (Removed removed : end.removed()) {
      boolean isStraight =
          switch (removed.kind()) {
            case HOLE, COUNTERBORE, SLOT, POCKET, OUTLINE, WINDOW, CORNER, PROFILE, STEP -> true;
            case SPOT, COUNTERSINK, CHAMFER -> false;
          };
      if (isStraight && removed.from().dimension() == across) {
        FaceFrame frame = new FaceFrame(removed.from(), box);
        Length depth = removed.through() ? frame.thickness() : removed.depth().high();
        blocks.add(block(removed.from(), box, removed.region(), depth));
      }
    }
    return blocks;
  }
}
