package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Scene;
import org.handwheel.work.SizeState;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.FeatureRun.Entry;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.hole.PlacedScene;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * What a cutter meets on its way round an outline, along a slot, or in and out of an open pocket:
 * the area that each part of it sweeps, from its lower end up, against jaws, parallels, clamps, the
 * stop, and the vise's bed or the table.
 */
public final class FeatureHits {
  /** How far below the work a cutter goes that cuts right through; common practice, no source. */
  public static final Length BREAK_THROUGH = Length.mm("0.3");

  /** Millimetres below which two outlines only touch. */
  private static final double LEAST_OVERLAP = 1e-6;

  /** How far out of the work a cutter begins and ends its way; common practice, no source. */
  private static final double RUN_IN = SunkPath.RUN_OUT.millimetres();

  private final FeatureRun feature;
  private final Owned.Cutter cutter;
  private final DrawnFeature drawn;
  private final PlacedScene placed;
  private final Limits limits;

  private FeatureHits(
      FeatureRun feature,
      Owned.Cutter cutter,
      DrawnFeature drawn,
      PlacedScene placed,
      Limits limits) {
    this.feature = feature;
    this.cutter = cutter;
    this.drawn = drawn;
    this.placed = placed;
    this.limits = limits;
  }

  /** What of the tool meets something. */
  public enum ToolPart {
    EDGES,
    SHANK,
    HOLDER
  }

  /**
   * Something that is met.
   *
   * @param clearance how far above it the tool passes; zero or negative if it runs into it
   */
  public record Hit(Thing thing, String name, Length clearance, ToolPart part) {}

  /** A part of the tool: how thick it is and how high above the cutter's end it begins. */
  private record Layer(ToolPart part, Length radius, Length from) {}

  /**
   * Everything that the tool of a line on a feature passes over, each thing once, with the least
   * clearance. Nothing where an outline is cut through in a vise: that the cutter must go down
   * between the jaws has a rule of its own.
   */
  public static List<Hit> of(PlanRun run, SetupRun setup, StepRun step) {
    FeatureRun feature = step.feature();
    Orientation lies = setup.orientation();
    if (feature == null
        || lies == null
        || feature.cutter() == null
        || feature.drawn() == null
        || feature.refusal().isPresent()) {
      return List.of();
    }
    boolean isFreed = feature.drawn().form() instanceof Form.Round && feature.drawn().isThrough();
    Optional<PlacedScene> placed = PlacedScene.of(run, setup, step);
    SizeState height = step.before().size(lies.along(Axis.Z));
    if (placed.isEmpty() || height == null || (setup.grip() != null && isFreed)) {
      return List.of();
    }
    Grip grip = setup.grip();
    Length top = height.range().low().plus(grip == null ? Length.ZERO : grip.seat());
    return new FeatureHits(
            feature, feature.cutter(), feature.drawn(), placed.get(), run.plan().shop().limits())
        .hits(top);
  }

  private List<Hit> hits(Length top) {
    Geometry way = way();
    if (way == null) {
      return List.of();
    }
    Length end = top.minus(depth());
    List<Hit> hits = new ArrayList<>();
    List<Scene.Body> bodies = new ArrayList<>(placed.scene().bodies());
    placed.scene().floor().ifPresent(bodies::add);
    List<Layer> layers = layers();
    for (Scene.Body body : bodies) {
      // What a round tool sweeps is all that lies within its radius of the way.
      double apart = way.distance(body.outline());
      Hit least = null;
      for (Layer layer : layers) {
        Length clearance = end.plus(layer.from()).minus(body.top());
        boolean isNearer = least == null || clearance.isLessThan(least.clearance());
        if (isNearer && apart < layer.radius().millimetres() - LEAST_OVERLAP) {
          least = new Hit(body.thing(), body.name(), clearance, layer.part());
        }
      }
      if (least != null) {
        hits.add(least);
      }
    }
    return hits;
  }

  /** How deep the cutter's end goes below the work's top. */
  private Length depth() {
    if (drawn.form() instanceof Form.Edges edges) {
      // With its tip at the foot of the slope: it can go no higher, and deeper only if there is
      // room.
      return edges.width();
    }
    return drawn.isThrough() ? drawn.depth().plus(BREAK_THROUGH) : drawn.depth();
  }

  /** The cutter's edges, then what is wider above them. */
  private List<Layer> layers() {
    List<Layer> layers = new ArrayList<>();
    layers.add(new Layer(ToolPart.EDGES, cutter.radius(), Length.ZERO));
    Length out =
        cutter.reach() != null
            ? cutter.reach()
            : cutter.flute().plus(limits.length(Limit.STICK_OUT));
    if (cutter.shank() != null && cutter.shank().isMoreThan(cutter.dia())) {
      layers.add(new Layer(ToolPart.SHANK, cutter.shank().half(), cutter.flute()));
    }
    if (cutter.holder() != null && cutter.holder().isMoreThan(cutter.dia())) {
      layers.add(new Layer(ToolPart.HOLDER, cutter.holder().half(), out));
    }
    return layers;
  }

  // ---- The way of the axis

  private @Nullable Geometry way() {
    if (feature.result() instanceof Result.AlongEdges) {
      return placed.scene().work().getExteriorRing();
    } else if (feature.result() instanceof Result.Lines lines) {
      return inScene(lines.path().line(), lines.middle());
    } else if (feature.result() instanceof Result.Steps steps) {
      LineString path = steps.table().path();
      return inScene(
          drawn.form() instanceof Form.Window ? fromEntry(path, steps.entry()) : withRunIn(path),
          steps.middle());
    }
    return null;
  }

  private @Nullable Geometry inScene(Geometry way, Place about) {
    Coordinate middle = placed.at(drawn.frame().box(), drawn.frame().point(about, Length.ZERO));
    return middle == null
        ? null
        : AffineTransformation.translationInstance(middle.x, middle.y).transform(way);
  }

  /** The cutter comes to a window's wall from the hole it went down in, and goes back there. */
  private static Geometry fromEntry(LineString path, @Nullable Entry entry) {
    if (!(entry instanceof Entry.Hole hole)) {
      return path;
    }
    Coordinate down = new Coordinate(hole.x().millimetres(), hole.y().millimetres());
    List<Coordinate> way = new ArrayList<>();
    way.add(down);
    way.addAll(List.of(path.getCoordinates()));
    way.add(down);
    return Plane.FACTORY.createLineString(way.toArray(Coordinate[]::new));
  }

  /** The cutter comes to an outline from outside and leaves it the same way. */
  private static Geometry withRunIn(LineString path) {
    Coordinate[] stops = path.getCoordinates();
    if (stops.length == 0) {
      return path;
    }
    List<Coordinate> way = new ArrayList<>();
    way.add(outside(stops[0]));
    way.addAll(List.of(stops));
    way.add(outside(stops[stops.length - 1]));
    return Plane.FACTORY.createLineString(way.toArray(Coordinate[]::new));
  }

  private static Coordinate outside(Coordinate stop) {
    double far = Math.hypot(stop.x, stop.y);
    double share = far == 0 ? 1 : (far + RUN_IN) / far;
    return new Coordinate(stop.x * share, stop.y * share);
  }
}
