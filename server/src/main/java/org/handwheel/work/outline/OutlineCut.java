package org.handwheel.work.outline;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Axis;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Part;
import org.handwheel.model.Part.DimensionSpec;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.model.Step.FeatureCut;
import org.handwheel.units.Length;
import org.handwheel.work.Bench;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/**
 * A cut along an outline of the part.
 *
 * @param cutter what cuts it, if that is known
 * @param levels how many depths it takes, 1 if no pass is stated or the depth is not known
 * @param result the steps, or why there are none
 */
public record OutlineCut(
    SetupRun setup,
    FeatureCut cut,
    FeatureSpec outline,
    Owned.@Nullable Cutter cutter,
    long levels,
    Result result) {
  /** The ridge aimed at where nothing says more; common practice, no source. */
  private static final Length USUAL_RIDGE = Length.mm("0.05");

  /** What came of it. */
  public sealed interface Result {
    /** A table. */
    record Steps(StepTable table) implements Result {}

    /** No table, and why; a sentence without its full stop. */
    record None(String reason) implements Result {}
  }

  /** The cuts along outlines in the setups that could be read, in order. */
  public static List<OutlineCut> all(PlanRun run) {
    Part part = run.plan().part();
    return part == null
        ? List.of()
        : run.knownSetups()
            .flatMap(setup -> setup.steps().stream().flatMap(step -> of(run, setup, step, part)))
            .toList();
  }

  private static Stream<OutlineCut> of(PlanRun run, SetupRun setup, StepRun step, Part part) {
    if (!(step.step() instanceof FeatureCut cut)) {
      return Stream.empty();
    }
    return part.features().stream()
        .filter(spec -> spec.featureKind() == FeatureKind.OUTLINE)
        .filter(spec -> spec.name().equalsIgnoreCase(cut.feature().value()))
        .limit(1)
        .map(spec -> of(run.plan(), setup, step.benchBefore(), part, cut, spec));
  }

  private static OutlineCut of(
      Plan plan, SetupRun setup, Bench bench, Part part, FeatureCut cut, FeatureSpec spec) {
    Bench.Tool tool = bench.cutter();
    Owned.Cutter cutter = cut.way().cutter();
    if (cutter == null && tool != null) {
      cutter = tool.cutter();
    }
    return new OutlineCut(
        setup,
        cut,
        spec,
        cutter,
        levels(part, cut, spec),
        result(plan, setup.orientation(), cut, spec, cutter));
  }

  private static long levels(Part part, FeatureCut cut, FeatureSpec spec) {
    Located<Length> pass = cut.way().pass();
    DimensionSpec depth = spec.face() == null ? null : part.dimension(spec.face().dimension());
    return pass == null || depth == null ? 1 : depth.nominal().stepsOf(pass.value());
  }

  private static Result result(
      Plan plan,
      @Nullable Orientation orientation,
      FeatureCut cut,
      FeatureSpec spec,
      Owned.@Nullable Cutter cutter) {
    Optional<RoundOutline> outline = RoundOutline.of(spec);
    if (outline.isEmpty() || spec.face() == null) {
      return new Result.None(
          "the drawing does not say its form, sizes and the face it is seen from");
    }
    if (cutter == null) {
      return new Result.None("no cutter is in the spindle");
    }
    if (cutter.cutterKind() != Owned.CutterKind.END_MILL
        && cutter.cutterKind() != Owned.CutterKind.SLOT_DRILL) {
      return new Result.None(cutter.name() + " does not cut with a side as deep as the part");
    }
    if (orientation == null) {
      return new Result.None("how the work lies is not known");
    }
    if (orientation.up().adjoins(spec.face())) {
      return new Result.None("the face it is seen from looks neither up nor down here");
    }
    Screw x = plan.machine() == null ? null : plan.machine().screw(Axis.X);
    Screw y = plan.machine() == null ? null : plan.machine().screw(Axis.Y);
    if (x == null || y == null) {
      return new Result.None("the shop does not describe the machine's X and Y dials");
    }
    // The first coordinate of a face runs along the earlier of its two dimensions.
    boolean alongX = orientation.along(Axis.X) == firstAlong(spec.face().dimension());
    RoundOutline lying = alongX ? outline.get() : outline.get().turned();
    Length left = cut.way().leaving() == null ? Length.ZERO : cut.way().leaving().value();
    CutDirection direction =
        cut.way().direction() == null ? CutDirection.CONVENTIONAL : cut.way().direction().value();
    return StepTables.of(lying, cutter.radius(), left, ridge(cut, spec, left), direction, x, y)
        .<Result>map(Result.Steps::new)
        .orElseGet(
            () ->
                new Result.None(
                    "ridges that low take more than "
                        + StepTables.MOST_PER_QUARTER
                        + " steps a quarter, or finer dials"));
  }

  private static PartDimension firstAlong(PartDimension across) {
    return across == PartDimension.LENGTH ? PartDimension.WIDTH : PartDimension.LENGTH;
  }

  /** The ridge stated; else half of what is left, a quarter of the tolerance, or a usual one. */
  private static Length ridge(FeatureCut cut, FeatureSpec spec, Length left) {
    if (cut.way().cusp() != null) {
      return cut.way().cusp().value();
    }
    if (left.isPositive()) {
      return left.half();
    }
    return spec.tolerance() != null && spec.tolerance().isPositive()
        ? spec.tolerance().half().half()
        : USUAL_RIDGE;
  }
}
