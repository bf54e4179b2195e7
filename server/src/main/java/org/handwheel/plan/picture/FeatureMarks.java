package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.Picture.Style;
import org.handwheel.plan.picture.Solid.Span;
import org.handwheel.syntax.Origin;
import org.handwheel.units.LengthText;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Removed;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureRun.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Holes, slots, pockets and outlines of the work in a setup, and the ways that cut them. */
final class FeatureMarks {
  /** How far a centre line runs out beyond its hole, in millimetres; ISO 128-2 gives no figure. */
  private static final double RUN_OUT = 1.5;

  private final SetupRun setup;
  private final Orientation lies;
  private final Solid work;
  private final Set<Origin> here = new HashSet<>();

  /**
   * For a setup.
   *
   * @param work the work as it is drawn
   */
  FeatureMarks(SetupRun setup, Orientation lies, Solid work) {
    this.setup = setup;
    this.lies = lies;
    this.work = work;
    setup.steps().forEach(step -> here.add(step.step().origin()));
  }

  List<Mark> seen(Look look) {
    List<Mark> marks = new ArrayList<>();
    // What several lines cut at one place is drawn once, for the last of them.
    Map<String, Removed> last = new LinkedHashMap<>();
    setup
        .after()
        .removed()
        .forEach(removed -> last.put(removed.kind() + " " + removed.feature(), removed));
    for (Removed removed : last.values()) {
      Face up = lies.up();
      boolean upright = removed.from() == up || removed.from() == up.opposite();
      if (look == Look.FROM_ABOVE && upright) {
        above(removed, marks);
      } else if (look != Look.FROM_ABOVE && upright && !isRound(removed)) {
        beside(removed, look, marks);
      }
    }
    if (look == Look.FROM_ABOVE) {
      setup.steps().forEach(step -> way(step, marks));
    }
    return marks;
  }

  private static boolean isRound(Removed removed) {
    return switch (removed.kind()) {
      case OUTLINE, WINDOW, PROFILE, CORNER, CHAMFER -> true;
      case SPOT, HOLE, COUNTERBORE, COUNTERSINK, SLOT, POCKET, STEP -> false;
    };
  }

  // ---- From above

  private void above(Removed removed, List<Mark> marks) {
    Geometry region = toScene(removed.from()).transform(removed.region());
    boolean isHere = here.contains(removed.step());
    boolean isSeen = removed.from() == lies.up() || removed.through();
    String part = words(removed);
    if (isRound(removed)) {
      marks.add(new Mark(isHere ? Style.REMOVED : Style.FORMER, region, part, removed.step()));
      standing(region).forEach(ring -> marks.add(new Mark(Style.EDGE, ring, "", removed.step())));
      return;
    }
    Style style = !isSeen ? Style.HIDDEN : isHere ? Style.REMOVED : Style.OUTLINE;
    marks.add(new Mark(style, region, part, removed.step()));
    if (isHere) {
      marks.add(new Mark(Style.EDGE, region.getBoundary(), "", removed.step()));
    }
    if (removed.kind() == Removed.Kind.HOLE) {
      Envelope box = region.getEnvelopeInternal();
      Coordinate middle = box.centre();
      double reach = box.getWidth() / 2 + RUN_OUT;
      marks.add(centreLine(middle, reach, 0, removed));
      marks.add(centreLine(middle, 0, reach, removed));
    }
  }

  private static Mark centreLine(Coordinate at, double x, double y, Removed removed) {
    var line =
        Solid.FACTORY.createLineString(
            new Coordinate[] {
              new Coordinate(at.x - x, at.y - y), new Coordinate(at.x + x, at.y + y)
            });
    return new Mark(Style.CENTRE, line, "", removed.step());
  }

  /** The rings inside a region: what is left standing in it. */
  private static List<Geometry> standing(Geometry region) {
    List<Geometry> rings = new ArrayList<>();
    for (int i = 0; i < region.getNumGeometries(); i++) {
      if (region.getGeometryN(i) instanceof Polygon polygon) {
        for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
          rings.add(polygon.getInteriorRingN(k));
        }
        if (polygon.getNumInteriorRing() == 0) {
          rings.add(polygon.getExteriorRing());
        }
      }
    }
    return rings;
  }

  private void way(StepRun step, List<Mark> marks) {
    FeatureRun run = step.feature();
    if (run == null || run.drawn() == null) {
      return;
    }
    Geometry path = null;
    Place middle = null;
    if (run.result() instanceof Result.Steps steps) {
      path = steps.table().path();
      middle = steps.middle();
    } else if (run.result() instanceof Result.Lines lines) {
      path = lines.path().line();
      middle = lines.middle();
    }
    if (path == null || middle == null) {
      return;
    }
    Coordinate about =
        toScene(run.drawn().frame().face())
            .transform(
                new Coordinate(middle.first().millimetres(), middle.second().millimetres()),
                new Coordinate());
    Geometry moved = AffineTransformation.translationInstance(about.x, about.y).transform(path);
    marks.add(
        new Mark(
            Style.WAY,
            moved,
            "way of the cutter's axis: " + run.drawn().words(),
            step.step().origin()));
  }

  // ---- From beside

  private void beside(Removed removed, Look look, List<Mark> marks) {
    Envelope box = toScene(removed.from()).transform(removed.region()).getEnvelopeInternal();
    double deep = removed.depth().high().millimetres();
    Span z =
        removed.through()
            ? work.z()
            : removed.from() == lies.up()
                ? new Span(work.z().to() - deep, work.z().to())
                : new Span(work.z().from(), work.z().from() + deep);
    Solid hollow =
        new Solid(
            Style.HIDDEN,
            words(removed),
            removed.step(),
            new Span(box.getMinX(), box.getMaxX()),
            new Span(box.getMinY(), box.getMaxY()),
            z);
    marks.add(
        new Mark(
            Style.HIDDEN, hollow.outline(look).getExteriorRing(), hollow.part(), removed.step()));
  }

  // ---- Where it lies and what it is called

  /** From the coordinates of a face that looks up or down to the machine's X and Y. */
  private AffineTransformation toScene(Face face) {
    PartDimension first =
        face.dimension() == PartDimension.LENGTH ? PartDimension.WIDTH : PartDimension.LENGTH;
    boolean alongX = lies.along(Axis.X) == first;
    int signX = lies.facing(Direction.of(Axis.X, 1)).sign();
    int signY = lies.facing(Direction.of(Axis.Y, 1)).sign();
    double x = signX > 0 ? work.x().from() : work.x().to();
    double y = signY > 0 ? work.y().from() : work.y().to();
    return alongX
        ? new AffineTransformation(signX, 0, x, 0, signY, y)
        : new AffineTransformation(0, signX, x, signY, 0, y);
  }

  /** For example {@code hole spigot, through} or {@code slot oil, 1.50 mm deep}. */
  private static String words(Removed removed) {
    String kind = removed.kind().name().toLowerCase(Locale.ROOT);
    String name = removed.feature().replaceAll(" \\d+$", "");
    boolean isShallow = removed.depth().high().isZero();
    return kind
        + " "
        + name
        + (removed.through()
            ? ", through"
            : isShallow ? "" : ", " + LengthText.both(removed.depth().high()) + " deep");
  }
}
