package org.handwheel.work;

import java.util.List;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.jspecify.annotations.Nullable;

/**
 * One cut in numbers.
 *
 * @param mode which part of the cutter works
 * @param normal the direction the face looks in
 * @param travel the way the cutter travels along the face
 * @param before the size before
 * @param goal the size wanted, or nothing for a skim
 * @param removal what comes off
 * @param after the size after
 * @param passes how many passes
 * @param passDepth the deepest of them
 * @param axialDepth how much of the cutter's length is in the work at once
 * @param engagement how the teeth meet the work
 * @param meanForce mean force on the table against the travel, in newtons; negative if the cutter
 *     pulls the table along
 * @param uncovered width of the strip that the cutter does not reach; zero if it covers the face
 * @param hits what the cutter meets or comes too near
 * @param screw the screw that sets the depth, if the machine is known
 */
public record CutRun(
    Step.Cut cut,
    Mode mode,
    Owned.Cutter cutter,
    Direction normal,
    Direction travel,
    SizeState before,
    @Nullable Length goal,
    LengthRange removal,
    SizeState after,
    long passes,
    Length passDepth,
    Length axialDepth,
    Engagement engagement,
    double meanForce,
    Length uncovered,
    List<Hit> hits,
    Owned.@Nullable Screw screw) {
  public CutRun {
    hits = List.copyOf(hits);
  }

  /** Which part of the cutter works. */
  public enum Mode {
    /** The flat end, on the face that is up. */
    END,
    /** The side, on an end of the work. */
    SIDE,
    /** The side, on a wall along the jaws. */
    WALL
  }

  public Face face() {
    return cut.face();
  }

  /** The same cut from another size. */
  CutRun from(SizeState size) {
    return new CutRun(
        cut,
        mode,
        cutter,
        normal,
        travel,
        size,
        goal,
        removal,
        after,
        passes,
        passDepth,
        axialDepth,
        engagement,
        meanForce,
        uncovered,
        hits,
        screw);
  }

  /** The axis that sets the depth. */
  public Axis depthAxis() {
    return normal.axis();
  }

  /** The axes that should be locked while it cuts: all but the one that travels. */
  public Set<Axis> locks() {
    return switch (travel.axis()) {
      case X -> Set.of(Axis.Y, Axis.Z);
      case Y -> Set.of(Axis.X, Axis.Z);
      case Z -> Set.of(Axis.X, Axis.Y);
    };
  }

  /** The depth of a pass as the plan writes it, even if less comes off; else the pass's own. */
  public Length writtenPass() {
    if (cut.purpose() instanceof Step.Purpose.Rough rough
        && rough.passes() instanceof Step.Passes.EachAtMost each) {
      return each.depth();
    }
    return cut.purpose() instanceof Step.Purpose.Finish finish
            && finish.passes() instanceof Step.Passes.EachAtMost each
        ? each.depth()
        : passDepth;
  }

  /** The number of passes and their depth, where the plan states both. */
  public Step.Passes.@Nullable Counted countedPasses() {
    Step.Passes passes =
        cut.purpose() instanceof Step.Purpose.Rough rough
            ? rough.passes()
            : cut.purpose() instanceof Step.Purpose.Finish finish ? finish.passes() : null;
    return passes instanceof Step.Passes.Counted counted ? counted : null;
  }

  /** The stated direction, or what the engagement is where a wall is cut. */
  public CutDirection direction() {
    return engagement.isClimb() ? CutDirection.CLIMB : CutDirection.CONVENTIONAL;
  }

  /**
   * Something the cutter meets.
   *
   * @param clearance how far it stays clear of it; zero or negative if it cuts into it
   */
  public record Hit(Thing thing, String name, Length clearance) {}

  /** What a cutter can run into. */
  public enum Thing {
    JAW,
    PARALLEL,
    CLAMP,
    STOP,
    BED,
    TABLE
  }
}
