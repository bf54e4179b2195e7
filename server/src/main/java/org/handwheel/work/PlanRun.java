package org.handwheel.work;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.LogSection;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.hole.HoleRun;
import org.jspecify.annotations.Nullable;

/**
 * A plan worked through from the stock to the last line.
 *
 * @param log the readings it was worked through with, or nothing for the plan as planned
 * @param material what is known of the part's material, if it is known at all
 * @param start the stock
 * @param end the work after the last setup
 */
public record PlanRun(
    Plan plan,
    @Nullable LogSection log,
    Drawing drawing,
    @Nullable KnownMaterial material,
    Workpiece start,
    List<SetupRun> setups,
    Workpiece end) {
  public PlanRun {
    setups = List.copyOf(setups);
  }

  /**
   * One setup worked through.
   *
   * @param grip the work in the vise when it was gripped, if it is in one and its sizes are known
   * @param before the work when it was gripped
   * @param benchBefore machine and tooling at the start of the setup
   * @param after the work at the end of the setup
   */
  public record SetupRun(
      Setup setup,
      @Nullable Orientation orientation,
      @Nullable Grip grip,
      Workpiece before,
      Bench benchBefore,
      List<StepRun> steps,
      Workpiece after) {
    public SetupRun {
      steps = List.copyOf(steps);
    }

    public Optional<Grip> gripped() {
      return Optional.ofNullable(grip);
    }

    /** The work at the start of the setup, before its first line. */
    Workpiece start() {
      return steps.isEmpty() ? before : steps.get(0).before();
    }

    /** Machine and tooling after its last line. */
    Bench benchAfter() {
      return steps.isEmpty() ? benchBefore : steps.get(steps.size() - 1).benchAfter();
    }
  }

  /**
   * One step worked through.
   *
   * @param cut the cut in numbers, if it is one that could be worked out
   * @param bearing what ruled the work's rotations, for a cut
   * @param reading the reading that stood in for a measurement, if a log gives one
   * @param holes what was done to holes, if it is a line on holes that could be worked out
   * @param feature what was done to a slot, pocket or outline, if it is a line on one
   */
  public record StepRun(
      Step step,
      Workpiece before,
      Bench benchBefore,
      Workpiece after,
      Bench benchAfter,
      @Nullable CutRun cut,
      @Nullable Bearing bearing,
      LogSection.@Nullable Reading reading,
      @Nullable HoleRun holes,
      @Nullable FeatureRun feature) {
    StepRun withCut(CutRun other) {
      return new StepRun(
          step, before, benchBefore, after, benchAfter, other, bearing, reading, holes, feature);
    }
  }

  /** One of its setups, as if the plan had no other. */
  public PlanRun only(SetupRun setup) {
    return new PlanRun(plan, log, drawing, material, setup.start(), List.of(setup), setup.after());
  }

  /** All steps in order. */
  public Stream<StepRun> steps() {
    return setups.stream().flatMap(setup -> setup.steps().stream());
  }

  /**
   * The setups in order, up to the first with a line that could not be read: what that line does to
   * the work is not known, so the numbers of the cuts after it would mean nothing.
   */
  public Stream<SetupRun> knownSetups() {
    return setups.stream().takeWhile(setup -> setup.setup().damage() == Setup.Damage.NONE);
  }

  /** The cuts of these setups in order. */
  public Stream<CutRun> cuts() {
    return knownSteps().flatMap(step -> Optional.ofNullable(step.cut()).stream());
  }

  /** The steps of these setups in order. */
  public Stream<StepRun> knownSteps() {
    return knownSetups().flatMap(setup -> setup.steps().stream());
  }
}
