package org.handwheel.ide;

import java.util.Objects;
import java.util.Optional;
import org.handwheel.grammar.HandwheelParser.CutOffsetContext;
import org.handwheel.grammar.HandwheelParser.CutStepOverContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.HoleCutLineContext;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.syntax.Section;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/** Where in the work of a plan a place of its text is. */
record Here(View view, Spot spot) {

  Optional<SetupRun> setup() {
    return setup(view.run(), spot.section());
  }

  static Optional<SetupRun> setup(@Nullable PlanRun run, Section section) {
    return run == null
        ? Optional.empty()
        : run.setups().stream()
            .filter(setup -> setup.setup().header().section() == section)
            .findFirst();
  }

  Optional<StepRun> step() {
    return setup()
        .flatMap(
            setup ->
                setup.steps().stream().filter(step -> spot.isIn(step.step().origin())).findFirst());
  }

  Optional<CutRun> cut() {
    return step().flatMap(step -> Optional.ofNullable(step.cut()));
  }

  /** The work before the line; between lines as it was gripped; outside setups when done. */
  Optional<Workpiece> work() {
    PlanRun run = view.run();
    if (run == null) {
      return Optional.empty();
    }
    Optional<Workpiece> before = step().map(StepRun::before);
    return before.or(() -> setup().map(SetupRun::before)).or(() -> Optional.of(run.end()));
  }

  Owned.@Nullable Machine machine() {
    return view.plan() == null ? null : view.plan().machine();
  }

  /** The way the cutter goes when a length of this line is wound in, if that can be told. */
  Optional<Direction> windsIn() {
    Step step = step().map(StepRun::step).orElse(null);
    CutRun cut = cut().orElse(null);
    if (spot.nearest(CutOffsetContext.class).isPresent() && cut != null) {
      Step.Offset offset = cut.cut().offset() == null ? null : cut.cut().offset().value();
      return setup()
          .flatMap(setup -> Optional.ofNullable(setup.orientation()))
          .filter(orientation -> offset != null)
          .map(orientation -> orientation.resolve(Objects.requireNonNull(offset).toward()));
    }
    if (spot.nearest(CutStepOverContext.class).isPresent() && cut != null) {
      Axis across = cut.travel().axis() == Axis.X ? Axis.Y : Axis.X;
      return Optional.of(Direction.of(across, 1));
    }
    if (cut != null) {
      return Optional.of(cut.normal().opposite());
    }
    if (step instanceof Step.Touch touch) {
      return setup()
          .flatMap(setup -> Optional.ofNullable(setup.orientation()))
          .map(orientation -> orientation.directionOf(touch.face()).opposite());
    }
    if (step instanceof Step.SetDepth set) {
      return Optional.of(Direction.of(set.axis(), -1));
    }
    if (step instanceof Step.MoveHead move) {
      return Optional.of(move.direction());
    }
    boolean downward =
        setup().isPresent()
            && (spot.nearest(HoleCutLineContext.class).isPresent()
                || spot.nearest(FeatureLineContext.class).isPresent());
    return downward ? Optional.of(Direction.DOWN) : Optional.empty();
  }
}
