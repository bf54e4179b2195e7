package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.feature.FeatureRun.Refusal;
import org.handwheel.work.feature.FeatureRun.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;

/** What a line on a feature is refused for, how many levels it takes, and what it aims at. */
class FeatureRefusalTests {
  private static FeatureRun run(FeatureTrial trial) {
    PlanRun run = trial.run();
    List<PlanRun.StepRun> features = FeatureTrial.features(run);
    return features.get(features.size() - 1).feature();
  }

  private static FeatureTrial pocket(String drawn, String cut) {
    return FeatureTrial.of("60 x 40 x 20", "pocket well in top, depth 4, " + drawn)
        .lines("pocket well with SD6" + cut);
  }

  private static CrankPath path(String drawn, String cut) {
    return ((Result.Lines) run(pocket(drawn, cut)).result()).path();
  }

  private static void refused(String drawn, String cut, Refusal refusal, String reason) {
    FeatureRun run = run(FeatureTrial.of("60 x 40 x 20", drawn).lines(cut));
    assertThat(run.refusal()).isPresent();
    assertThat(run.refusal().get().refusal()).as(run.refusal().get().reason()).isEqualTo(refusal);
    assertThat(run.refusal().get().reason()).contains(reason);
  }

  @Test
  void whyItIsRefused() {
    String slot = "slot s in top, size 30 x 8, depth 3, at (30, 20)";
    refused("chamfer c in top, width 1", "chamfer c with EM10", Refusal.WRONG_CUTTER, "no slope");
    refused(slot, "slot s with CM12", Refusal.WRONG_CUTTER, "does not cut with its end");
    refused(slot, "slot s with FC40", Refusal.WRONG_CUTTER, "does not cut with its end");
    refused(slot, "slot s", Refusal.UNKNOWN, "no cutter is in the spindle");
    refused(slot, "slot s with EM10", Refusal.CUTTER_TOO_WIDE, "is 2.00 mm");
    refused(slot, "slot s with SD6, leaving 1.1", Refusal.UNKNOWN, "leaves less on");
    refused("slot s in top, size 30 x 8, at (30, 20)", "slot s with SD6", Refusal.UNKNOWN, "depth");
    refused(
        "slot s in front, size 30 x 8, depth 3, at (30, 10)",
        "slot s with SD6",
        Refusal.HIDDEN,
        "the front looks neither up nor down");
    refused(
        "slot s in bottom, size 30 x 8, depth 3, at (30, 20)",
        "slot s with SD6",
        Refusal.HIDDEN,
        "the bottom looks down");
    refused(
        "pocket p in top, size 30 x 20, radius 2.9, depth 4, at (30, 20)",
        "pocket p with SD6",
        Refusal.CORNER_TOO_TIGHT,
        "its corners have a radius of");
    refused(
        "window w in top, at (30, 20), ellipse 36 x 8",
        "window w with EM10",
        Refusal.CORNER_TOO_TIGHT,
        "it has a hollow of radius");
    refused(
        "window w in top, at (30, 20), ellipse 36 x 24",
        "window w with SD6, cusp 0.00001",
        Refusal.TOO_FINE,
        "take more than");
    refused(
        "outline o in top, ellipse 50 x 30, depth 3",
        "outline o with SD6, cusp 0.00001",
        Refusal.TOO_FINE,
        "steps a quarter");
    // A cutter as wide as the slot, and a corner as round as the cutter, are right.
    assertThat(path("size 30 x 20, radius 3, at (30, 20)", "").ridge()).isEqualTo(Length.ZERO);
  }

  @Test
  void aCutterThatIsTooWideWouldSweepBothWalls() {
    FeatureRun run =
        run(
            FeatureTrial.of("60 x 40 x 20", "slot s in top, size 30 x 8, depth 3, at (30, 20)")
                .lines("slot s with EM10"));
    Envelope all = run.sweep().getEnvelopeInternal();
    assertThat(all.getMinX()).isCloseTo(15, within(1e-6));
    assertThat(all.getMaxX()).isCloseTo(45, within(1e-6));
    assertThat(all.getMinY()).isCloseTo(15, within(1e-6));
    assertThat(all.getMaxY()).isCloseTo(25, within(1e-6));
    FeatureRun upright =
        run(
            FeatureTrial.of("60 x 40 x 20", "slot s in top, size 8 x 30, depth 3, at (30, 20)")
                .lines("slot s with EM10"));
    assertThat(upright.sweep().getEnvelopeInternal().getWidth()).isCloseTo(10, within(1e-6));
    assertThat(upright.sweep().getEnvelopeInternal().getHeight()).isCloseTo(30, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"'', 1", "', pass 4', 1", "', pass 3.9', 2", "', pass 1', 4", "', pass 1.5', 3"})
  void levelsOfAPocket4Deep(String pass, long levels) {
    assertThat(run(pocket("size 30 x 17, at (30, 20)", pass)).levels()).isEqualTo(levels);
  }

  /**
   * What is aimed at: the cusp that is said; else half of what is left on; else a quarter of the
   * form's tolerance; else 0.05.
   */
  @Test
  void ridgesThatAreAimedAt() {
    assertThat(steps("", ", cusp 0.07")).isEqualTo(steps(", tolerance +-0.2", ", cusp 0.07"));
    assertThat(steps("", ", leaving 0.3")).isEqualTo(steps("", ", leaving 0.3, cusp 0.15"));
    assertThat(steps(", tolerance +-0.1", "")).isEqualTo(steps("", ", cusp 0.025"));
    assertThat(steps("", "")).isEqualTo(steps("", ", cusp 0.05"));
    assertThat(steps("", ", cusp 0.02")).isGreaterThan(steps("", ", cusp 0.05"));
    assertThat(steps("", ", cusp 0.05")).isGreaterThan(steps("", ", cusp 0.15"));
  }

  private static int steps(String drawn, String cut) {
    FeatureRun run =
        run(
            FeatureTrial.of("60 x 40 x 20", "outline o in top, ellipse 40 x 24, depth 3" + drawn)
                .lines("outline o with SD6" + cut));
    return ((Result.Steps) run.result()).table().steps();
  }
}
