package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Part;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Plan;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.model.Step.FeatureCut;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Bench;
import org.handwheel.work.Drawing;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.handwheel.work.Removed;
import org.handwheel.work.Workpiece;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.FeatureRun.Entry;
import org.handwheel.work.feature.FeatureRun.Refusal;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.hole.DrawnHoles;
import org.handwheel.work.hole.HoleWork;
import org.handwheel.work.outline.Contour;
import org.handwheel.work.outline.ContourSteps;
import org.handwheel.work.outline.RoundOutline;
import org.handwheel.work.outline.StepTable;
import org.handwheel.work.outline.StepTable.Side;
import org.handwheel.work.outline.StepTables;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Works a line that cuts a feature through; a pure function. */
public final class FeatureWork {
  /** The ridge aimed at where nothing says more; common practice, no source. */
  private static final Length USUAL_RIDGE = Length.mm("0.05");

  /** What the polygon of a round hole is too small, in millimetres. */
  private static final double ROUND_HOLE = 0.02;

  private final Plan plan;
  private final FeatureCut cut;
  private final FeatureSpec spec;
  private final @Nullable Orientation lies;
  private final Owned.@Nullable Cutter cutter;
  private final Workpiece before;
  private final Length left;
  private final CutDirection direction;

  private FeatureWork(
      Plan plan,
      FeatureCut cut,
      FeatureSpec spec,
      @Nullable Orientation lies,
      Owned.@Nullable Cutter cutter,
      Workpiece before) {
    this.before = before;
    this.plan = plan;
    this.cut = cut;
    this.spec = spec;
    this.lies = lies;
    this.cutter = cutter;
    this.left = cut.way().leaving() == null ? Length.ZERO : cut.way().leaving().value();
    this.direction =
        cut.way().direction() == null ? CutDirection.CONVENTIONAL : cut.way().direction().value();
  }

  /** A line worked through, and the work after it. */
  public record Outcome(FeatureRun run, Workpiece work) {}

  /** A line on the work as it lies; nothing if the part has no feature of its name. */
  public static @Nullable Outcome run(
      Plan plan,
      Drawing drawing,
      StandardTables tables,
      FeatureCut cut,
      @Nullable Orientation lies,
      Workpiece work,
      Bench bench) {
    Part part = plan.part();
    FeatureSpec spec =
        part == null ? null : DrawnFeature.named(part, cut.feature().value()).orElse(null);
    if (spec == null) {
      return null;
    }
    Owned.Cutter cutter = cut.way().cutter();
    if (cutter == null && bench.cutter() != null) {
      cutter = bench.cutter().cutter();
    }
    Length own = cutter == null || cut.way().leaving() != null ? Length.ZERO : cutter.dia();
    DrawnFeature drawn =
        PartBox.of(drawing, work)
            .flatMap(box -> DrawnFeature.of(spec, box))
            .map(feature -> feature.cutBy(own))
            .orElse(null);
    return new FeatureWork(plan, cut, spec, lies, cutter, work)
        .outcome(drawn, HoleWork.drawn(plan, drawing, work, tables), work);
  }

  private Outcome outcome(
      @Nullable DrawnFeature drawn, @Nullable DrawnHoles holes, Workpiece work) {
    Result result = result(drawn);
    Geometry sweep = drawn == null ? null : sweep(drawn, result);
    FeatureRun bare =
        new FeatureRun(
            cut, spec, drawn, cutter, levels(drawn), result, sweep, holes, Optional.empty());
    FeatureRun run = bare.withBite(FeatureBite.of(bare, work, lies));
    if (drawn == null || result instanceof Result.None) {
      return new Outcome(run, work);
    }
    Geometry region = removed(drawn, result, sweep);
    return region.isEmpty()
        ? new Outcome(run, work)
        : new Outcome(run, work.withRemoved(List.of(piece(drawn, region))));
  }

  private long levels(@Nullable DrawnFeature drawn) {
    Located<Length> pass = cut.way().pass();
    return pass == null || drawn == null || !pass.value().isPositive()
        ? 1
        : drawn.depth().stepsOf(pass.value());
  }

  // ---- Whether and how it can be cut

  private Result result(@Nullable DrawnFeature drawn) {
    if (drawn == null) {
      return none(Refusal.UNKNOWN, "the drawing does not say its form, sizes, depth and face");
    }
    if (cutter == null) {
      return none(Refusal.UNKNOWN, "no cutter is in the spindle");
    }
    if (!cutter.dia().isPositive()) {
      return none(Refusal.UNKNOWN, "the diameter of " + cutter.name() + " is not known");
    }
    if (!ridge().isPositive() || left.isNegative()) {
      return none(Refusal.UNKNOWN, "what may be left on is not known");
    }
    boolean isChamfer = drawn.form() instanceof Form.Edges;
    boolean cutsEdges = cutter.cutterKind() == CutterKind.CHAMFER_MILL;
    boolean cutsWalls = cutter.cutterKind() == CutterKind.END_MILL || cutter.cutsAtItsMiddle();
    if (isChamfer ? !cutsEdges : !cutsWalls) {
      return none(
          Refusal.WRONG_CUTTER,
          isChamfer
              ? cutter.name() + " has no slope to cut an edge with; a chamfer mill has"
              : cutter.name() + " does not cut with its end and its side; an end mill does");
    }
    if (lies == null) {
      return none(Refusal.UNKNOWN, "how the work lies is not known");
    }
    if (lies.up().adjoins(drawn.frame().face())) {
      return none(
          Refusal.HIDDEN,
          "the " + drawn.frame().face().word() + " looks neither up nor down in this setup");
    }
    if (lies.up() != drawn.frame().face() && !drawn.isThrough()) {
      return none(
          Refusal.HIDDEN, "the " + drawn.frame().face().word() + " looks down in this setup");
    }
    if (drawn.form() instanceof Form.Edges) {
      return new Result.AlongEdges();
    } else if (drawn.form() instanceof Form.Sunk sunk) {
      return lines(sunk, Lying.of(drawn.frame(), lies));
    }
    return steps(drawn, Lying.of(drawn.frame(), lies));
  }

  private static Result none(Refusal refusal, String reason) {
    return new Result.None(refusal, reason);
  }

  private Length radius() {
    return cutter == null ? Length.ZERO : cutter.radius();
  }

  // ---- Slots, pockets, steps

  private Result lines(Form.Sunk sunk, Lying lying) {
    SunkPath.Room room = SunkPath.Room.of(sunk, radius(), left);
    Length name = radius().plus(radius());
    if (room.lacking().isPositive()) {
      return SunkPath.Room.of(sunk, radius(), Length.ZERO).lacking().isPositive()
          ? none(
              Refusal.CUTTER_TOO_WIDE,
              name + " across, the cutter is " + room.lacking() + " wider than what it cuts out")
          : none(Refusal.UNKNOWN, "a cutter " + name + " across leaves less on than is asked for");
    }
    boolean hasCorners = sunk.corners().contains(true);
    if (sunk.radius() != null && hasCorners && radius().isMoreThan(sunk.radius())) {
      return none(
          Refusal.CORNER_TOO_TIGHT,
          "its corners have a radius of " + sunk.radius() + ", the cutter one of " + radius());
    }
    Length corner =
        sunk.radius() == null ? Length.ZERO : Length.max(Length.ZERO, sunk.radius().minus(left));
    CrankPath path =
        SunkPath.of(sunk, room, lying, radius(), left, corner, ridge().millimetres(), direction);
    return new Result.Lines(path, sunk.middle());
  }

  // ---- Outlines and corners

  private Result steps(DrawnFeature drawn, Lying lying) {
    Screw x = plan.machine() == null ? null : plan.machine().screw(Axis.X);
    Screw y = plan.machine() == null ? null : plan.machine().screw(Axis.Y);
    if (x == null || y == null) {
      return none(Refusal.UNKNOWN, "the shop does not describe the machine's X and Y dials");
    }
    if (drawn.form() instanceof Form.Window window) {
      return inside(window, lying, x, y);
    }
    RoundOutline outline;
    Place middle;
    if (drawn.form() instanceof Form.Round round) {
      middle = round.middle();
      if (round.outline() instanceof Contour contour) {
        return contour(lying.place(contour), Side.OUTSIDE, middle, null, x, y);
      }
      RoundOutline even = (RoundOutline) round.outline();
      outline = lying.alongX() ? even : even.turned();
    } else {
      Form.OneCorner corner = (Form.OneCorner) drawn.form();
      double radius = corner.radius().millimetres();
      outline = new RoundOutline.Rounded(radius, radius, radius);
      middle = corner.arc();
    }
    Optional<StepTable> table =
        StepTables.of(outline, radius(), left, ridge(), direction, x, y)
            .map(whole -> part(whole, drawn, lying));
    return table
        .<Result>map(found -> new Result.Steps(found, middle, null))
        .orElseGet(
            () ->
                none(
                    Refusal.TOO_FINE,
                    "ridges no higher than "
                        + ridge()
                        + " take more than "
                        + StepTables.MOST_PER_QUARTER
                        + " steps a quarter, or finer dials"));
  }

  /** Round a free outline, or along the walls of a window. */
  private Result contour(
      Contour contour, Side side, Place middle, @Nullable Entry entry, Screw x, Screw y) {
    Coordinate start =
        entry instanceof Entry.Hole hole
            ? new Coordinate(hole.x().millimetres(), hole.y().millimetres())
            : null;
    ContourSteps.Result found =
        ContourSteps.of(contour, side, radius(), left, ridge(), direction, x, y, start);
    if (found instanceof ContourSteps.Result.Found steps) {
      return new Result.Steps(steps.table(), middle, entry);
    } else if (found instanceof ContourSteps.Result.Tight tight) {
      return none(
          Refusal.CORNER_TOO_TIGHT,
          "it has a hollow of radius " + tight.radius() + ", the cutter has one of " + radius());
    } else if (found instanceof ContourSteps.Result.SharpInside) {
      return none(
          Refusal.CORNER_TOO_TIGHT,
          "it has a sharp inside corner, which a cutter leaves as round as it is: draw it with a"
              + " blend of at least "
              + radius());
    } else if (found instanceof ContourSteps.Result.LeavesTooMuch) {
      return none(
          Refusal.UNKNOWN,
          "a cutter "
              + radius().plus(radius())
              + " across leaves less on in its hollows than is asked for");
    } else if (found instanceof ContourSteps.Result.Narrow) {
      return none(
          Refusal.CORNER_TOO_TIGHT,
          radius().plus(radius()) + " across, the cutter does not get everywhere along it");
    }
    return none(
        Refusal.TOO_FINE,
        "ridges no higher than "
            + ridge()
            + " take more than "
            + ContourSteps.MOST
            + " steps, or finer dials");
  }

  private Result inside(Form.Window window, Lying lying, Screw x, Screw y) {
    Contour contour = lying.place(window.contour());
    Entry entry = hole(contour, window, lying);
    if (entry == null && cutter != null && cutter.cutsAtItsMiddle()) {
      entry = new Entry.Plunge();
    }
    return contour(contour, Side.INSIDE, window.middle(), entry, x, y);
  }

  /** A hole that is there already, in which the cutter goes down clear of the window's wall. */
  private @Nullable Entry hole(Contour contour, Form.Window window, Lying lying) {
    Length reach = radius().plus(left);
    Entry best = null;
    double widest = 0;
    for (Removed removed : before.removed()) {
      boolean isOpen = removed.kind() == Removed.Kind.HOLE || removed.kind() == Removed.Kind.WINDOW;
      if (!isOpen || !removed.through()) {
        continue;
      }
      var middle = removed.region().getCentroid().getCoordinate();
      double room = removed.region().getBoundary().distance(removed.region().getCentroid());
      Length first = Length.ofMillimetres(middle.x).minus(window.middle().first());
      Length second = Length.ofMillimetres(middle.y).minus(window.middle().second());
      Length alongX = lying.x(first, second);
      Length alongY = lying.y(first, second);
      double wall = -contour.distance(alongX.millimetres(), alongY.millimetres());
      boolean isRoomy =
          room > radius().millimetres() - ROUND_HOLE && wall > reach.millimetres() - 1e-6;
      if (isRoomy && room > widest) {
        widest = room;
        best = new Entry.Hole(removed.feature(), alongX, alongY);
      }
    }
    return best;
  }

  /** The whole round, or the quarter of it that lies at a corner. */
  private static StepTable part(StepTable whole, DrawnFeature drawn, Lying lying) {
    if (!(drawn.form() instanceof Form.OneCorner corner)) {
      return whole;
    }
    Length first = Length.mm("1").times(corner.towardFirst());
    Length second = Length.mm("1").times(corner.towardSecond());
    return whole.quarter(
        lying.x(first, second).isPositive() ? 1 : -1, lying.y(first, second).isPositive() ? 1 : -1);
  }

  /** The ridge stated; else half of what is left, a quarter of the tolerance, or a usual one. */
  private Length ridge() {
    if (cut.way().cusp() != null) {
      return cut.way().cusp().value();
    }
    if (left.isPositive()) {
      return left.half();
    }
    Length tolerance = spec.formTolerance();
    return tolerance != null && tolerance.isPositive() ? tolerance.half().half() : USUAL_RIDGE;
  }

  // ---- What comes out

  private @Nullable Geometry sweep(DrawnFeature drawn, Result result) {
    if (lies == null || cutter == null) {
      return null;
    }
    if (result instanceof Result.Steps steps) {
      return swept(drawn, way(steps), steps.middle());
    } else if (result instanceof Result.Lines lines) {
      return swept(drawn, lines.path().line(), lines.middle());
    } else if (result instanceof Result.None none
        && none.refusal() == Refusal.CUTTER_TOO_WIDE
        && drawn.form() instanceof Form.Sunk sunk) {
      return tooWide(sunk);
    }
    return null;
  }

  /** The way round, and before it from the hole that the cutter goes down in. */
  private static LineString way(Result.Steps steps) {
    LineString ring = steps.table().path();
    if (!(steps.entry() instanceof Entry.Hole hole)) {
      return ring;
    }
    List<Coordinate> points = new ArrayList<>();
    points.add(new Coordinate(hole.x().millimetres(), hole.y().millimetres()));
    points.addAll(List.of(ring.getCoordinates()));
    return Plane.FACTORY.createLineString(points.toArray(Coordinate[]::new));
  }

  private @Nullable Geometry swept(DrawnFeature drawn, LineString path, Place about) {
    return lies == null
        ? null
        : Plane.grown(
            Lying.of(drawn.frame(), lies).toFace(about).transform(path), radius().millimetres());
  }

  /** What a cutter that does not fit would sweep along the middle. */
  private Geometry tooWide(Form.Sunk sunk) {
    SunkPath.Room room = SunkPath.Room.of(sunk, radius(), Length.ZERO);
    Length first = room.lowFirst().plus(room.highFirst()).half();
    Length second = room.lowSecond().plus(room.highSecond()).half();
    Envelope axis = new Envelope();
    axis.expandToInclude(
        Length.min(room.lowFirst(), first).millimetres(),
        Length.min(room.lowSecond(), second).millimetres());
    axis.expandToInclude(
        Length.max(room.highFirst(), first).millimetres(),
        Length.max(room.highSecond(), second).millimetres());
    boolean narrowFirst = room.lowFirst().isMoreThan(room.highFirst());
    boolean narrowSecond = room.lowSecond().isMoreThan(room.highSecond());
    Envelope line =
        new Envelope(
            narrowFirst ? first.millimetres() : axis.getMinX(),
            narrowFirst ? first.millimetres() : axis.getMaxX(),
            narrowSecond ? second.millimetres() : axis.getMinY(),
            narrowSecond ? second.millimetres() : axis.getMaxY());
    return Plane.grown(Plane.FACTORY.toGeometry(line), radius().millimetres());
  }

  private Geometry removed(DrawnFeature drawn, Result result, @Nullable Geometry sweep) {
    if (result instanceof Result.AlongEdges) {
      return drawn.gone(0);
    }
    if (sweep == null) {
      return Plane.nothing();
    }
    if (drawn.form() instanceof Form.Round && drawn.isThrough()) {
      // What lies outside falls off with the cutter's way.
      return drawn.faceRegion().difference(inside(sweep));
    }
    if (drawn.form() instanceof Form.Window && sweep instanceof Polygon ring) {
      // What the cutter goes round falls out.
      return Plane.FACTORY.createPolygon(ring.getExteriorRing()).intersection(drawn.faceRegion());
    }
    if (drawn.form() instanceof Form.OneCorner && drawn.isThrough()) {
      return drawn
          .gone(0)
          .difference(
              Plane.grown(drawn.faceRegion().difference(drawn.gone(0)), left.millimetres()));
    }
    return sweep.intersection(drawn.faceRegion());
  }

  /** What a cutter that goes all the way round leaves standing. */
  private static Geometry inside(Geometry sweep) {
    return sweep instanceof Polygon ring && ring.getNumInteriorRing() > 0
        ? Plane.FACTORY.createPolygon(ring.getInteriorRingN(0))
        : Plane.nothing();
  }

  private Removed piece(DrawnFeature drawn, Geometry region) {
    Removed.Kind kind =
        switch (spec.featureKind()) {
          case SLOT -> Removed.Kind.SLOT;
          case POCKET -> Removed.Kind.POCKET;
          case OUTLINE -> Removed.Kind.OUTLINE;
          case WINDOW -> Removed.Kind.WINDOW;
          case CORNER -> Removed.Kind.CORNER;
          case CHAMFER -> Removed.Kind.CHAMFER;
          case PROFILE -> Removed.Kind.PROFILE;
          case STEP -> Removed.Kind.STEP;
        };
    return new Removed(
        drawn.frame().face(),
        region,
        new LengthRange(Length.ZERO, drawn.depth()),
        drawn.isThrough(),
        spec.name(),
        cut.origin(),
        kind);
  }
}
