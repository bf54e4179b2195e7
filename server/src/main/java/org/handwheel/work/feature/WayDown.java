package org.handwheel.work.feature;

import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Removed;
import org.handwheel.work.Workpiece;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.FeatureRun.Entry;
import org.handwheel.work.feature.FeatureRun.Result;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * How a cutter gets down into a slot, pocket or window that is closed on all sides: straight down
 * if it cuts at its middle, else into a hole that is there.
 *
 * @param kind how
 * @param by what has opened the place it goes down at
 * @param wanted how wide a starting hole must be
 */
public record WayDown(Kind kind, Optional<Removed> by, Length wanted) {
  /** How much of the depth a starting hole may leave; common practice, no source. */
  private static final Length SHORT = Length.mm("0.5");

  /** The ways there are. */
  public enum Kind {
    /** From an open side, or from beside the work. */
    FROM_OUTSIDE,
    /** Straight into the metal, with teeth at its middle. */
    PLUNGE,
    /** Into a hole or an opening cut before. */
    INTO_OPENING,
    /** There is none. */
    NONE
  }

  /** In words: {@code straight into the metal, for the cutter cuts at its middle}. */
  public String words() {
    return switch (kind) {
      case FROM_OUTSIDE -> "from outside";
      case PLUNGE -> "straight into the metal, for the cutter cuts at its middle";
      case INTO_OPENING -> "into " + by.map(Removed::feature).orElse("the opening");
      case NONE -> "none: take a slot drill, or first drill a hole of " + wanted;
    };
  }

  /** The way down of a line on a feature; nothing if it cannot be worked out. */
  public static Optional<WayDown> of(StepRun step, Limits limits) {
    FeatureRun run = step.feature();
    if (run == null || run.drawn() == null || run.cutter() == null || run.refusal().isPresent()) {
      return Optional.empty();
    }
    Owned.Cutter cutter = run.cutter();
    Length wanted =
        Length.ofMillimetres(cutter.dia().millimetres() * limits.number(Limit.START_HOLE));
    if (run.result() instanceof Result.Steps steps && run.drawn().form() instanceof Form.Window) {
      return Optional.of(intoWindow(steps.entry(), step.before(), wanted));
    }
    if (!(run.drawn().form() instanceof Form.Sunk sunk)
        || !(run.result() instanceof Result.Lines lines)
        || !lines.path().isClosed()) {
      return Optional.of(new WayDown(Kind.FROM_OUTSIDE, Optional.empty(), wanted));
    }
    Optional<Removed> opening = opening(step.before(), run, sunk, wanted);
    Kind kind =
        opening.isPresent()
            ? Kind.INTO_OPENING
            : cutter.cutsAtItsMiddle() ? Kind.PLUNGE : Kind.NONE;
    return Optional.of(new WayDown(kind, opening, wanted));
  }

  private static WayDown intoWindow(@Nullable Entry entry, Workpiece work, Length wanted) {
    if (entry instanceof Entry.Hole hole) {
      Optional<Removed> by =
          work.removed().stream()
              .filter(removed -> removed.feature().equals(hole.name()))
              .findFirst();
      return new WayDown(Kind.INTO_OPENING, by, wanted);
    }
    return new WayDown(entry == null ? Kind.NONE : Kind.PLUNGE, Optional.empty(), wanted);
  }

  /** What is open already, wide and deep enough, at a place where the cutter's axis may stand. */
  private static Optional<Removed> opening(
      Workpiece work, FeatureRun run, Form.Sunk sunk, Length wanted) {
    DrawnFeature drawn = run.drawn();
    if (drawn == null || run.cutter() == null) {
      return Optional.empty();
    }
    SunkPath.Room room = SunkPath.Room.of(sunk, run.cutter().radius(), run.left());
    Geometry axis =
        Plane.FACTORY.toGeometry(
            new Envelope(
                room.lowFirst().millimetres(),
                room.highFirst().millimetres(),
                room.lowSecond().millimetres(),
                room.highSecond().millimetres()));
    Geometry all = Plane.nothing();
    Length least = drawn.depth().minus(SHORT);
    for (Removed removed : work.removed()) {
      Geometry region = onFace(removed, drawn);
      if (region == null || removed.depth().high().isLessThan(least)) {
        continue;
      }
      all = Plane.areas(all.union(Plane.areas(region)));
      // A hair narrower: the holes are polygons within their circles.
      Geometry stands = Plane.grown(all, -wanted.half().millimetres() + 0.01);
      if (!stands.isEmpty() && stands.intersects(Plane.grown(axis, 0.01))) {
        return Optional.of(removed);
      }
    }
    return Optional.empty();
  }

  private static @Nullable Geometry onFace(Removed removed, DrawnFeature drawn) {
    Face face = drawn.frame().face();
    boolean isSame = removed.from() == face;
    boolean isThroughOpposite = removed.through() && removed.from() == face.opposite();
    // Opposite faces count both coordinates from the same low edges.
    return isSame || isThroughOpposite ? removed.region() : null;
  }
}
