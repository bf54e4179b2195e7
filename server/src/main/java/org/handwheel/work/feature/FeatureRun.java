package org.handwheel.work.feature;

import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Step.FeatureCut;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.hole.DrawnHoles;
import org.handwheel.work.outline.StepTable;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * A line that cuts a slot, pocket, outline, corner or chamfer, worked through.
 *
 * @param spec the feature as drawn
 * @param drawn the same at its place, if the drawing gives all it needs
 * @param cutter what cuts it, if that is known
 * @param levels how many depths it takes, 1 if no pass is stated or the depth is not known
 * @param sweep what the cutter passes over, in the coordinates of the feature's face in
 *     millimetres; nothing if no way could be worked out
 * @param holes the drawing's holes, whose centres may be where the dials count from
 * @param bite how much the cutter takes at once, if its way could be worked out
 */
public record FeatureRun(
    FeatureCut cut,
    FeatureSpec spec,
    @Nullable DrawnFeature drawn,
    Owned.@Nullable Cutter cutter,
    long levels,
    Result result,
    @Nullable Geometry sweep,
    @Nullable DrawnHoles holes,
    Optional<FeatureBite> bite) {

  /** What came of it. */
  public sealed interface Result {
    /**
     * Stations round a curve.
     *
     * @param middle what the stations count from
     * @param entry how the cutter comes to the first station; from outside if nothing is said
     */
    record Steps(StepTable table, Place middle, @Nullable Entry entry) implements Result {}

    /** Straight lines. */
    record Lines(CrankPath path, Place middle) implements Result {}

    /** A cutter with the form of the edge runs along all edges; there is nothing to count. */
    record AlongEdges() implements Result {}

    /** Nothing, and why; a sentence without its full stop. */
    record None(Refusal refusal, String reason) implements Result {}
  }

  /** How the cutter gets into a window. */
  public sealed interface Entry {
    /** Down a hole that is there, at a place from the stations' zero. */
    record Hole(String name, Length x, Length y) implements Entry {}

    /** Straight down at the first station. */
    record Plunge() implements Entry {}
  }

  /** Why a cut cannot be worked out. */
  public enum Refusal {
    /** Something it needs is not known. */
    UNKNOWN,
    /** The cutter is not made for it. */
    WRONG_CUTTER,
    /** The face it is seen from does not look up or down. */
    HIDDEN,
    /** So fine that nobody winds it. */
    TOO_FINE,
    /** The corners of the drawing are tighter than the cutter. */
    CORNER_TOO_TIGHT,
    /** The cutter is wider than what it is to cut out. */
    CUTTER_TOO_WIDE
  }

  FeatureRun withBite(Optional<FeatureBite> other) {
    return new FeatureRun(cut, spec, drawn, cutter, levels, result, sweep, holes, other);
  }

  public Optional<Result.None> refusal() {
    return result instanceof Result.None none ? Optional.of(none) : Optional.empty();
  }

  /** The piece that a window's cutter frees; nothing if all is cut to chips. */
  public Optional<Polygon> slug() {
    if (drawn == null
        || !(drawn.form() instanceof DrawnFeature.Form.Window)
        || !(sweep instanceof Polygon ring)
        || ring.getNumInteriorRing() == 0) {
      return Optional.empty();
    }
    return Optional.of(Plane.FACTORY.createPolygon(ring.getInteriorRingN(0)));
  }

  /** What stays on for a later cut. */
  public Length left() {
    return cut.way().leaving() == null ? Length.ZERO : cut.way().leaving().value();
  }
}
