package org.handwheel.work.feature;

import java.util.Optional;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.LengthText;
import org.handwheel.work.feature.FeatureRun.Entry;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.outline.StepTable;

/** What is said of a way round an outline or a window, wherever it is shown. */
public final class FeatureWords {
  private FeatureWords() {}

  /** The sense of a way, with a right-hand cutter. */
  public static String around(StepTable table) {
    boolean isClimb = table.direction() == CutDirection.CLIMB;
    boolean isInside = table.side() == StepTable.Side.INSIDE;
    return (isClimb ? "climb: " : "conventional: ")
        + (isClimb == isInside ? "counter-clockwise" : "clockwise")
        + (isInside ? " along the wall seen from above" : " round the work seen from above");
  }

  /** How the cutter comes into a window; nothing for an outline, or if there is no way. */
  public static Optional<String> wayIn(FeatureRun run) {
    Entry entry = run.result() instanceof Result.Steps steps ? steps.entry() : null;
    if (entry instanceof Entry.Hole hole) {
      return Optional.of(
          "down in "
              + hole.name()
              + " at X "
              + LengthText.both(hole.x())
              + ", Y "
              + LengthText.both(hole.y())
              + ", then to the first station");
    }
    return entry instanceof Entry.Plunge
        ? Optional.of("straight down at the first station: the cutter cuts at its middle")
        : Optional.empty();
  }

  /** A caution about the piece that a window's cutter frees. */
  public static Optional<String> slug(FeatureRun run) {
    return run.slug()
        .map(
            slug ->
                "The piece inside comes loose when the last level goes through: hold it, or cut"
                    + " through last of all, stand clear of it and stop the spindle before it is"
                    + " taken out.");
  }
}
