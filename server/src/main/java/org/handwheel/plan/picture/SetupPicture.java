package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.plan.picture.Picture.Along;
import org.handwheel.plan.picture.Picture.Dimension;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.Picture.Style;
import org.handwheel.plan.picture.Picture.View;
import org.handwheel.plan.picture.Solid.Span;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.Bench;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/** Draws a setup: how the work lies, what holds it, what comes off and how the cutter goes. */
public final class SetupPicture {
  /** What comes off is drawn at least this thick, in millimetres, or it could not be seen. */
  private static final double LEAST_SHOWN = 2;

  /** How far before the work the cutter stands at the start, in millimetres. */
  private static final double RUN_UP = 2;

  private static final double MOST_FLUTE = 25;
  private static final int ARC_POINTS = 24;

  private final SyntaxTree tree;
  private final SetupRun setup;
  private final Projection projection;
  private final Surroundings around;
  private final Map<String, Face> datums;
  private final List<Solid> solids = new ArrayList<>();
  private final Map<Direction, Length> removed = new EnumMap<>(Direction.class);
  private final List<Way> ways = new ArrayList<>();
  private boolean isThickened;

  /** The way of one cutter. */
  private record Way(CutRun cut, Solid cutter, Coordinate from, Coordinate to) {}

  private SetupPicture(
      SyntaxTree tree,
      SetupRun setup,
      Projection projection,
      Surroundings around,
      Map<String, Face> datums) {
    this.tree = tree;
    this.setup = setup;
    this.projection = projection;
    this.around = around;
    this.datums = datums;
  }

  /**
   * The picture of a setup.
   *
   * @param tree the plan's text
   * @param part the drawing, whose datums are marked
   * @return nothing if the size of the work or how it lies is not known
   */
  public static Optional<Picture> of(
      SyntaxTree tree, @Nullable Part part, SetupRun setup, Projection projection) {
    Surroundings around = Surroundings.of(setup);
    return around == null
        ? Optional.empty()
        : Optional.of(
            new SetupPicture(
                    tree, setup, projection, around, part == null ? Map.of() : part.datums())
                .draw());
  }

  private Picture draw() {
    Solid left = around.work();
    for (CutRun cut : cuts()) {
      Length off = cut.before().range().middle().minus(cut.after().range().middle());
      if (off.isPositive()) {
        removed.merge(cut.normal(), off, Length::plus);
      }
    }
    for (Map.Entry<Direction, Length> off : removed.entrySet()) {
      left = without(left, off.getKey(), off.getValue().millimetres());
    }
    solids.addAll(around.solids());
    solids.add(left);
    for (Map.Entry<Direction, Length> off : removed.entrySet()) {
      solids.add(slab(left, off.getKey(), off.getValue()));
    }
    Set<String> drawn = new HashSet<>();
    for (CutRun cut : cuts()) {
      if (drawn.add(cut.face() + " " + cut.travel() + " " + cut.cutter().name())) {
        ways.add(way(cut, left));
      }
    }
    List<View> views = new ArrayList<>();
    views.add(view(Look.FROM_ABOVE, Direction.UP, left));
    views.add(view(Look.FROM_FRONT, Direction.OPERATOR_FRONT, left));
    views.add(
        projection == Projection.FIRST
            ? view(Look.FROM_LEFT, Direction.OPERATOR_LEFT, left)
            : view(Look.FROM_RIGHT, Direction.OPERATOR_RIGHT, left));
    return new Picture(tree.line(setup.setup().header()) + 1, title(), projection, views, notes());
  }

  private List<CutRun> cuts() {
    return setup.steps().stream()
        .flatMap(step -> Optional.ofNullable(step.cut()).stream())
        .toList();
  }

  private String title() {
    String title = setup.setup().title();
    String words = setup.setup().words();
    return "S"
        + words.substring(1)
        + (title.isEmpty() || words.contains(title) ? "" : ", " + title);
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (isThickened) {
      notes.add("What comes off is drawn thicker than it is; the figures count.");
    }
    notes.add("Jaws, bed and stop are drawn with usual sizes where the shop does not give them.");
    return notes;
  }

  // ---- What comes off

  private static Solid without(Solid work, Direction normal, double off) {
    Span span = work.along(normal.axis());
    Span rest =
        normal.sign() > 0
            ? new Span(span.from(), Math.max(span.from(), span.to() - off))
            : new Span(Math.min(span.to(), span.from() + off), span.to());
    return work.with(normal.axis(), rest);
  }

  private Solid slab(Solid left, Direction normal, Length off) {
    double thick = off.millimetres();
    if (thick < LEAST_SHOWN) {
      isThickened = true;
      thick = LEAST_SHOWN;
    }
    double side = left.side(normal);
    CutRun first = cuts().stream().filter(cut -> cut.normal() == normal).findFirst().orElseThrow();
    return left.with(normal.axis(), Span.of(side, side + normal.sign() * thick))
        .as(
            Style.REMOVED,
            "comes off " + first.face().word() + ": about " + LengthText.both(off),
            first.cut().origin());
  }

  // ---- How the cutter goes

  private Way way(CutRun cut, Solid left) {
    double radius = cut.cutter().dia().half().millimetres();
    Direction travel = cut.travel();
    double start = left.side(travel.opposite()) - travel.sign() * (radius + RUN_UP);
    double end = left.side(travel) + travel.sign() * (radius + RUN_UP);
    Axis across = travel.axis() == Axis.X ? Axis.Y : Axis.X;
    double beside = left.along(across).middle() + offset(cut);
    double bottom = left.z().to();
    if (cut.mode() != CutRun.Mode.END) {
      beside = left.side(cut.normal()) + cut.normal().sign() * radius;
      bottom = left.z().to() - cut.axialDepth().millimetres();
    }
    boolean alongX = travel.axis() == Axis.X;
    double x = alongX ? start : beside;
    double y = alongX ? beside : start;
    double flute = Math.min(MOST_FLUTE, cut.cutter().flute().millimetres());
    double length = Math.max(flute, left.z().to() - bottom + RUN_UP);
    String turns = cut.cutter().hand() == Owned.Hand.LEFT ? "counter-clockwise" : "clockwise";
    Solid cutter =
        new Solid(
            Style.OUTLINE,
            "cutter "
                + cut.cutter().name()
                + ", "
                + LengthText.both(cut.cutter().dia())
                + ", turns "
                + turns
                + " seen from above",
            cut.cut().origin(),
            new Span(x - radius, x + radius),
            new Span(y - radius, y + radius),
            new Span(bottom, bottom + length));
    return new Way(
        cut,
        cutter,
        new Coordinate(x, y, bottom),
        new Coordinate(alongX ? end : beside, alongX ? beside : end, bottom));
  }

  private double offset(CutRun cut) {
    if (cut.cut().offset() == null) {
      return 0;
    }
    Direction toward = around.orientation().resolve(cut.cut().offset().value().toward());
    return toward.axis() == cut.travel().axis()
        ? 0
        : toward.sign() * cut.cut().offset().value().distance().millimetres();
  }

  private List<Mark> way(Look look, Way way) {
    List<Mark> marks = new ArrayList<>();
    Solid cutter = way.cutter();
    boolean above = look == Look.FROM_ABOVE;
    double radius = cutter.x().size() / 2;
    Coordinate from = Solid.seen(look, way.from().getX(), way.from().getY(), way.from().getZ());
    Coordinate to = Solid.seen(look, way.to().getX(), way.to().getY(), way.to().getZ());
    var shape = above ? Solid.FACTORY.createPoint(from).buffer(radius, 16) : cutter.outline(look);
    marks.add(new Mark(Style.OUTLINE, shape, cutter.part(), cutter.origin()));
    if (from.distance(to) > 1) {
      var line = Solid.FACTORY.createLineString(new Coordinate[] {from, to});
      marks.add(new Mark(Style.WAY, line, above ? words(way.cut()) : "", cutter.origin()));
    }
    if (above) {
      boolean left = way.cut().cutter().hand() == Owned.Hand.LEFT;
      Coordinate[] arc = new Coordinate[ARC_POINTS + 1];
      for (int i = 0; i <= ARC_POINTS; i++) {
        double angle = Math.PI * (1.25 - 1.3 * i / ARC_POINTS);
        double x = Math.cos(angle) * radius * 0.6;
        arc[i] =
            new Coordinate(
                from.getX() + (left ? -x : x), from.getY() + Math.sin(angle) * radius * 0.6);
      }
      marks.add(new Mark(Style.WAY, Solid.FACTORY.createLineString(arc), "", cutter.origin()));
    }
    return marks;
  }

  private static String words(CutRun cut) {
    String from = side(cut.travel().opposite());
    String to = side(cut.travel());
    return "way of the cutter over the work: from "
        + from
        + " to "
        + to
        + ", "
        + cut.engagement().words();
  }

  private static String side(Direction direction) {
    return switch (direction) {
      case OPERATOR_LEFT -> "the left";
      case OPERATOR_RIGHT -> "the right";
      case OPERATOR_FRONT -> "your side";
      case OPERATOR_BACK -> "the far side";
      case UP -> "above";
      case DOWN -> "below";
    };
  }

  // ---- One view

  private View view(Look look, Direction seen, Solid left) {
    List<Solid> order = new ArrayList<>(solids);
    order.removeIf(solid -> solid.style() == Style.REMOVED && isSeenFlat(solid, seen));
    order.sort(Comparator.comparingDouble(solid -> solid.nearness(look)));
    List<Mark> marks = new ArrayList<>();
    List<Mark> features = new FeatureMarks(setup, around.orientation(), left).seen(look);
    for (Solid solid : order) {
      marks.add(new Mark(solid.style(), solid.outline(look), solid.part(), solid.origin()));
      if (look == Look.FROM_ABOVE && solid.equals(left)) {
        // What stands on the work lies over its holes and slots.
        marks.addAll(features);
      }
    }
    for (int i = 0; i < order.size(); i++) {
      Solid solid = order.get(i);
      boolean matters =
          solid.equals(left) || solid.style() == Style.LAID_IN || solid.style() == Style.REMOVED;
      if (matters && isCovered(order, i, look)) {
        var outline = solid.outline(look).getExteriorRing();
        marks.add(new Mark(Style.HIDDEN, outline, solid.part(), solid.origin()));
      }
    }
    if (look != Look.FROM_ABOVE) {
      marks.addAll(features);
    }
    for (Way way : ways) {
      marks.addAll(way(look, way));
    }
    zeros(look, left, marks);
    return new View(
        look,
        around.orientation().facing(seen).word(),
        marks,
        dimensions(look, left),
        new DatumMarks(datums, around.orientation(), left).seen(look));
  }

  private boolean isSeenFlat(Solid slab, Direction seen) {
    return removed.keySet().stream()
        .anyMatch(
            normal ->
                normal.axis() == seen.axis()
                    && slab.part()
                        .contains(" " + around.orientation().facing(normal).word() + ":"));
  }

  private static boolean isCovered(List<Solid> order, int index, Look look) {
    var outline = order.get(index).outline(look);
    return order.subList(index + 1, order.size()).stream()
        .anyMatch(near -> near.outline(look).intersection(outline).getArea() > 1e-6);
  }

  private void zeros(Look look, Solid left, List<Mark> marks) {
    List<StepRun> steps = setup.steps();
    if (steps.isEmpty()) {
      return;
    }
    Map<Axis, Bench.Zero> zeros = steps.get(steps.size() - 1).benchAfter().zeros();
    for (Axis axis : Axis.values()) {
      Bench.Zero zero = zeros.get(axis);
      if (zero == null || zero.face() == null) {
        continue;
      }
      Direction side = around.orientation().directionOf(zero.face());
      if (side.axis() != axis || !isSeen(look, axis)) {
        continue;
      }
      double x = axis == Axis.X ? left.side(side) : left.x().to();
      double y = axis == Axis.Y ? left.side(side) : left.y().from();
      double z = axis == Axis.Z ? left.side(side) : left.z().middle();
      marks.add(
          new Mark(
              Style.ZERO,
              Solid.FACTORY.createPoint(Solid.seen(look, x, y, z)),
              "dial " + axis.word() + " at zero, from " + zero.face().word(),
              zero.origin()));
    }
  }

  private static boolean isSeen(Look look, Axis axis) {
    return switch (axis) {
      case X -> look == Look.FROM_ABOVE;
      case Y -> look == Look.FROM_ABOVE;
      case Z -> look == Look.FROM_LEFT || look == Look.FROM_RIGHT;
    };
  }

  /** The sizes after the last cut. */
  private List<Dimension> dimensions(Look look, Solid left) {
    List<Dimension> dimensions = new ArrayList<>();
    if (look == Look.FROM_ABOVE) {
      add(dimensions, Axis.X, Along.ACROSS, left.x());
    } else if (look != Look.FROM_FRONT) {
      Span y = left.y();
      Span across = look == Look.FROM_LEFT ? new Span(-y.to(), -y.from()) : y;
      add(dimensions, Axis.Y, Along.ACROSS, across);
      add(dimensions, Axis.Z, Along.UP, left.z());
    }
    return dimensions;
  }

  private void add(List<Dimension> dimensions, Axis axis, Along along, Span span) {
    SizeState size = setup.after().size(around.orientation().along(axis));
    if (size != null) {
      dimensions.add(
          new Dimension(along, span.from(), span.to(), LengthText.both(size.range().middle())));
    }
  }
}
