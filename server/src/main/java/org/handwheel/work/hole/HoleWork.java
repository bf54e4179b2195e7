package org.handwheel.work.hole;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Plan;
import org.handwheel.model.Step.HoleCut;
import org.handwheel.model.Step.HoleSize;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.shop.thread.Tapping;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Drawing;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.handwheel.work.Removed;
import org.handwheel.work.Workpiece;
import org.handwheel.work.hole.HoleRun.Pass;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleRun.Side;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Works a line that cuts holes through; a pure function. */
public final class HoleWork {
  /**
   * How far a tool comes out below a through hole, beyond its point; common practice, no source.
   */
  public static final Length BREAKTHROUGH = Length.mm("1");

  /** The included angle of a countersink whose tool does not say. */
  private static final DrillPoint COUNTERSINK = new DrillPoint(90);

  /** Sides of a quarter of a circle drawn as a polygon. */
  private static final int QUARTER_SIDES = 16;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final Plan plan;
  private final StandardTables tables;
  private final HoleCut cut;
  private final @Nullable Orientation lies;
  private final Map<String, HoleState> states;
  private final List<Removed> removed = new ArrayList<>();

  private HoleWork(
      Plan plan,
      StandardTables tables,
      HoleCut cut,
      @Nullable Orientation lies,
      Map<String, HoleState> states) {
    this.plan = plan;
    this.tables = tables;
    this.cut = cut;
    this.lies = lies;
    this.states = new HashMap<>(states);
  }

  /** A line worked through, and the work after it. */
  public record Outcome(HoleRun run, Workpiece work) {}

  /** The drawing's holes as they lie in the work at a point of the plan. */
  public static @Nullable DrawnHoles drawn(
      Plan plan, Drawing drawing, Workpiece work, StandardTables tables) {
    Part part = plan.part();
    return part == null
        ? null
        : PartBox.of(drawing, work).map(box -> DrawnHoles.of(part, box, tables)).orElse(null);
  }

  /** A line on the work as it lies; nothing if the part's sizes are not known. */
  public static @Nullable Outcome run(
      Plan plan,
      Drawing drawing,
      StandardTables tables,
      HoleCut cut,
      @Nullable Orientation lies,
      Workpiece work) {
    DrawnHoles drawn = drawn(plan, drawing, work, tables);
    if (drawn == null) {
      return null;
    }
    Map<String, DrawnHole> holes = new LinkedHashMap<>();
    for (Located<String> name : cut.holes()) {
      drawn.named(name.value()).forEach(hole -> holes.putIfAbsent(hole.name(), hole));
    }
    HoleWork done = new HoleWork(plan, tables, cut, lies, work.holes());
    List<DrawnHole> named = List.copyOf(holes.values());
    List<Pass> passes = done.passes(named);
    return new Outcome(
        new HoleRun(cut, drawn, named, passes), work.withHoles(done.states, done.removed));
  }

  private List<Pass> passes(List<DrawnHole> holes) {
    List<Pass> passes = new ArrayList<>();
    List<@Nullable HoleSize> sizes = new ArrayList<>(cut.sizes());
    if (sizes.isEmpty()) {
      sizes.add(null);
    }
    for (@Nullable HoleSize size : sizes) {
      List<Result> results = new ArrayList<>();
      for (DrawnHole hole : holes) {
        results.add(result(hole, size));
      }
      passes.add(new Pass(size, results));
    }
    return passes;
  }

  private Result result(DrawnHole hole, @Nullable HoleSize size) {
    Side side = side(hole);
    Bit bit = bit(hole, size);
    HoleState before = states.getOrDefault(hole.name(), HoleState.UNTOUCHED);
    Length thickness = hole.frame().thickness();
    Length asked = depth(hole, bit);
    boolean through =
        cut.verb() != HoleVerb.SPOT
            && cut.verb() != HoleVerb.COUNTERBORE
            && cut.verb() != HoleVerb.COUNTERSINK
            && asked != null
            && !asked.isLessThan(thickness);
    Length depth = through ? thickness : asked;
    Length tip =
        depth == null
            ? null
            : depth.plus(bit.pointLength()).plus(through ? BREAKTHROUGH : Length.ZERO);
    HoleState after = side == Side.NONE ? before : after(before, bit, size, depth, through);
    states.put(hole.name(), after);
    if (side != Side.NONE && depth != null && bit.dia() != null) {
      remove(hole, side, bit.dia(), depth, through);
    }
    return new Result(hole, bit, before, after, depth, tip, through, side);
  }

  private Side side(DrawnHole hole) {
    if (lies == null) {
      return Side.NONE;
    }
    Face own = hole.spec().face();
    return lies.up() == own ? Side.OWN : lies.up() == own.opposite() ? Side.OPPOSITE : Side.NONE;
  }

  private HoleState after(
      HoleState before, Bit bit, @Nullable HoleSize size, @Nullable Length depth, boolean through) {
    Length dia = bit.dia();
    return switch (cut.verb()) {
      case SPOT -> before.withSpot();
      case DRILL, REAM, BORE ->
          dia == null
              ? before
              : before.withBore(cut.verb(), dia, size, cut.origin(), depth, through);
      case TAP -> before.withThread(cut.origin(), depth);
      case COUNTERBORE -> dia == null ? before : before.withCounterbore(dia);
      case COUNTERSINK -> dia == null ? before : before.withCountersink(dia);
    };
  }

  // ---- How deep
  // ------------------------------------------------------------------------------------------------

  /** How deep a tool goes at full diameter, by the line or else by the drawing. */
  private @Nullable Length depth(DrawnHole hole, Bit bit) {
    if (cut.way().depth() != null) {
      return cut.way().depth().value();
    }
    HoleSpec spec = hole.spec();
    return switch (cut.verb()) {
      case SPOT -> Length.ZERO;
      case DRILL -> drillDepth(hole);
      case REAM, BORE -> hole.depth();
      case TAP -> spec.through() ? hole.frame().thickness() : spec.threadDepth();
      case COUNTERBORE -> spec.counterboreDepth() != null ? spec.counterboreDepth() : Length.ZERO;
      case COUNTERSINK -> sinkDepth(hole, bit);
    };
  }

  private static @Nullable Length drillDepth(DrawnHole hole) {
    HoleSpec spec = hole.spec();
    boolean isOpen = spec.through() || spec.drillDepth() != null || spec.depth() != null;
    ScrewThread thread = hole.thread();
    Length full = spec.threadDepth();
    return isOpen || thread == null || full == null
        ? hole.depth()
        : Tapping.leastFullDepth(thread, full);
  }

  private static @Nullable Length sinkDepth(DrawnHole hole, Bit bit) {
    Length bore = hole.dia();
    return bit.dia() == null || bore == null || bit.dia().isLessThan(bore)
        ? null
        : COUNTERSINK.countersinkDepth(bit.dia(), bore);
  }

  // ---- With what
  // ---------------------------------------------------------------------------------------------------

  private Bit bit(DrawnHole hole, @Nullable HoleSize size) {
    Owned tool = cut.way().tool() == null ? null : cut.way().tool().value();
    Length dia = size == null ? usualDia(hole, tool) : length(size);
    if (tool != null) {
      return ofTool(tool, dia);
    }
    if (cut.verb() == HoleVerb.SPOT) {
      return new Bit("spotting drill", null, DrillPoint.GENERAL, null, true);
    }
    if (cut.verb() != HoleVerb.DRILL) {
      return new Bit(noun(hole), dia, null, null, true);
    }
    return drill(dia, size);
  }

  private Bit ofTool(Owned tool, @Nullable Length dia) {
    Length length = tool instanceof Owned.Piece piece ? piece.size("length") : null;
    boolean pointed = cut.verb() == HoleVerb.DRILL || cut.verb() == HoleVerb.SPOT;
    boolean isMill = tool instanceof Owned.Cutter;
    DrillPoint point = pointed && !isMill ? point(tool) : null;
    return new Bit(tool.name(), dia, point, length, true);
  }

  private static DrillPoint point(@Nullable Owned tool) {
    Double degrees = tool instanceof Owned.Piece piece ? piece.pointDegrees() : null;
    return degrees == null ? DrillPoint.GENERAL : new DrillPoint(degrees);
  }

  /** The drill of a diameter: the shop's own, else the one of its set, else one that is sold. */
  private Bit drill(@Nullable Length dia, @Nullable HoleSize size) {
    if (dia == null) {
      return new Bit(size == null ? "drill" : size.text(), null, DrillPoint.GENERAL, null, false);
    }
    for (Owned.Piece piece : plan.shop().all(Owned.Piece.class)) {
      if (piece.isTwistDrill() && dia.equals(piece.size("dia"))) {
        return new Bit(piece.name(), dia, point(piece), piece.size("length"), true);
      }
    }
    DrillPoint point = point(set(dia));
    Drill sold =
        tables.drills().all().stream()
            .filter(drill -> drill.diameter().equals(dia))
            .findFirst()
            .orElse(null);
    String name = sold == null ? dia.toString() : sold.words();
    return new Bit(
        name, dia, point, tables.drilling().jobberLength(dia).orElse(null), sold != null);
  }

  private Owned.@Nullable Piece set(Length dia) {
    return plan.shop().all(Owned.Piece.class).stream()
        .filter(piece -> piece.kind() == OwnKind.DRILLS)
        .filter(piece -> piece.size("dia") == null || !dia.isMoreThan(piece.size("dia")))
        .findFirst()
        .orElse(null);
  }

  private @Nullable Length length(HoleSize size) {
    return size.length() != null
        ? size.length()
        : tables.drills().find(size.text()).map(Drill::diameter).orElse(null);
  }

  /** The diameter where the line gives none: the tool's, or what the drawing asks for. */
  private @Nullable Length usualDia(DrawnHole hole, @Nullable Owned tool) {
    HoleSpec spec = hole.spec();
    Length drawn =
        switch (cut.verb()) {
          case SPOT -> null;
          case DRILL -> hole.thread() != null ? hole.thread().tapDrill().diameter() : spec.dia();
          case REAM, BORE -> spec.dia();
          case TAP -> hole.dia();
          case COUNTERBORE ->
              spec.counterboreDia() != null ? spec.counterboreDia() : spec.spotface();
          case COUNTERSINK -> spec.countersink();
        };
    // A cone opens as wide as it is let in; every other tool makes its own size.
    return cut.verb() == HoleVerb.COUNTERSINK || own(tool) == null ? drawn : own(tool);
  }

  private static @Nullable Length own(@Nullable Owned tool) {
    if (tool instanceof Owned.Cutter cutter) {
      return cutter.dia();
    }
    return tool instanceof Owned.Piece piece ? piece.size("dia") : null;
  }

  private String noun(DrawnHole hole) {
    return switch (cut.verb()) {
      case REAM -> "reamer";
      case TAP -> hole.spec().thread() == null ? "tap" : "tap " + hole.spec().thread();
      case BORE -> "boring head";
      case COUNTERBORE -> "counterbore";
      case COUNTERSINK -> "countersink";
      case SPOT, DRILL -> "drill";
    };
  }

  // ---- What comes out
  // ----------------------------------------------------------------------------------------------

  private void remove(DrawnHole hole, Side side, Length dia, Length depth, boolean through) {
    Removed.Kind kind =
        switch (cut.verb()) {
          case SPOT -> Removed.Kind.SPOT;
          case COUNTERBORE -> Removed.Kind.COUNTERBORE;
          case COUNTERSINK -> Removed.Kind.COUNTERSINK;
          case DRILL, REAM, TAP, BORE -> Removed.Kind.HOLE;
        };
    if (kind == Removed.Kind.SPOT || depth.isNegative()) {
      return;
    }
    Face face = hole.spec().face();
    removed.add(
        new Removed(
            side == Side.OWN ? face : face.opposite(),
            circle(hole, dia),
            new LengthRange(Length.ZERO, depth),
            through,
            hole.name(),
            cut.origin(),
            kind));
  }

  /** A hole's circle on its face. */
  public static Geometry circle(DrawnHole hole, Length dia) {
    Coordinate middle =
        new Coordinate(hole.place().first().millimetres(), hole.place().second().millimetres());
    return FACTORY.createPoint(middle).buffer(dia.half().millimetres(), QUARTER_SIDES);
  }
}
