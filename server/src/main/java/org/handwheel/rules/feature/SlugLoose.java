package org.handwheel.rules.feature;

import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Removed;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.Standing;
import org.locationtech.jts.geom.Polygon;

/** The piece inside a window, cut free while nothing holds it and more is to be cut. */
public final class SlugLoose extends SimpleRule implements EachSetup {
  /** Less than this of it is a sliver that breaks off, in square millimetres. */
  private static final double SLIVER = 1;

  public SlugLoose() {
    super("slug-loose", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.wholeSetups()) {
      Hold hold = setup.setup().hold();
      if (hold == null) {
        continue;
      }
      List<StepRun> steps = setup.steps();
      for (int i = 0; i < steps.size(); i++) {
        FeatureRun run = steps.get(i).feature();
        Polygon slug = run == null ? null : run.slug().orElse(null);
        if (run == null || slug == null || slug.getArea() < SLIVER) {
          continue;
        }
        StepRun later = laterCut(steps.subList(i + 1, steps.size()));
        if (later != null
            && !isGone(steps.get(i), slug)
            && !isHeld(setup, steps.get(i), run, slug, hold)) {
          out.accept(
              finding(
                  steps.get(i).step().origin(),
                  "the piece inside `"
                      + run.spec().name()
                      + "` comes loose when this cut goes through, and more is cut after it: put a"
                      + " clamp on it, screw it down by a hole of its own, or cut this through last"
                      + " of all",
                  new Finding.Related(later.step().origin(), "the next cut"),
                  FeatureLines.drawing(run)));
        }
      }
    }
  }

  private static @org.jspecify.annotations.Nullable StepRun laterCut(List<StepRun> steps) {
    return steps.stream()
        .filter(
            step ->
                step.cut() != null
                    || step.feature() != null
                    || !step.after().removed().equals(step.before().removed()))
        .findFirst()
        .orElse(null);
  }

  private static boolean isGone(StepRun step, Polygon slug) {
    return step.before().removed().stream()
        .anyMatch(
            one ->
                one.kind() == Removed.Kind.WINDOW
                    && one.region().intersection(slug).getArea() > slug.getArea() / 2);
  }

  private static boolean isHeld(
      SetupRun setup, StepRun step, FeatureRun run, Polygon slug, Hold hold) {
    if (run.drawn() != null && Standing.isClamped(setup, run.drawn(), slug, hold)) {
      return true;
    }
    return hold.rest() instanceof Hold.Rest.OnPlate
        && step.before().removed().stream()
            .anyMatch(
                one ->
                    one.kind() == Removed.Kind.HOLE
                        && one.through()
                        && slug.contains(one.region()));
  }
}
