package org.handwheel.work.hole;

import java.util.List;
import java.util.stream.Stream;
import org.handwheel.model.Step.HoleCut;
import org.handwheel.model.Step.HoleSize;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * A line that cuts holes, worked through.
 *
 * @param drawn all holes of the drawing
 * @param holes the holes it names that have a place, each once, in the line's order
 * @param passes one for each tool that goes into the holes, in order
 */
public record HoleRun(HoleCut cut, DrawnHoles drawn, List<DrawnHole> holes, List<Pass> passes) {
  public HoleRun {
    holes = List.copyOf(holes);
    passes = List.copyOf(passes);
  }

  /**
   * One tool into each of the holes.
   *
   * @param size the size as the line gives it, if it does
   */
  public record Pass(@Nullable HoleSize size, List<Result> results) {
    public Pass {
      results = List.copyOf(results);
    }
  }

  /**
   * What a tool did to one hole.
   *
   * @param bit the tool
   * @param depth how deep it goes at full diameter, below the face that looks up; nothing if
   *     neither the line nor the drawing says
   * @param tip how deep its end goes: with its point, and out below a through hole
   * @param through whether it comes out below
   * @param side whether it goes in at the hole's own face
   */
  public record Result(
      DrawnHole hole,
      Bit bit,
      HoleState before,
      HoleState after,
      @Nullable Length depth,
      @Nullable Length tip,
      boolean through,
      Side side) {}

  /** Where a tool goes in. */
  public enum Side {
    /** At the face the hole is drawn on. */
    OWN,
    /** At the opposite face. */
    OPPOSITE,
    /** Nowhere: neither of the two looks up. */
    NONE
  }

  /** All that was done, tool by tool. */
  public Stream<Result> results() {
    return passes.stream().flatMap(pass -> pass.results().stream());
  }
}
