package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.WayDown.Kind;
import org.junit.jupiter.api.Test;

/** How a cutter gets down into a pocket or a window; which holes will do, from their sizes. */
class WayDownTests {
  private static FeatureRun run(FeatureTrial trial) {
    PlanRun run = trial.run();
    List<PlanRun.StepRun> features = FeatureTrial.features(run);
    return features.get(features.size() - 1).feature();
  }

  private static FeatureTrial pocket(String drawn, String cut) {
    return FeatureTrial.of("60 x 40 x 20", "pocket well in top, depth 4, " + drawn)
        .lines("pocket well with SD6" + cut);
  }

  private static WayDown down(FeatureTrial trial) {
    PlanRun run = trial.run();
    List<FeatureTable> tables = FeatureTable.all(run);
    return tables.get(tables.size() - 1).down().orElseThrow();
  }

  private static WayDown into(String hole, String drill) {
    return down(
        FeatureTrial.of(
                "60 x 40 x 20",
                "pocket well in top, size 30 x 18, depth 4, at (30, 20)\n"
                    + "hole in-it in top, dia 10, "
                    + hole)
            .lines(drill, "pocket well with EM10"));
  }

  /** Eight tenths of the diameter wide (common practice, no source): 8 for a cutter of 10. */
  @Test
  void downIntoAHoleThatIsWideAndDeepEnough() {
    assertThat(into("depth 4, at (30, 20)", "drill in-it 8").kind()).isEqualTo(Kind.INTO_OPENING);
    assertThat(into("depth 4, at (30, 20)", "drill in-it 7.8").kind()).isEqualTo(Kind.NONE);
    // Half a millimetre may be missing below.
    assertThat(into("depth 3.5, at (30, 20)", "drill in-it 9").kind()).isEqualTo(Kind.INTO_OPENING);
    assertThat(into("depth 3.4, at (30, 20)", "drill in-it 9").kind()).isEqualTo(Kind.NONE);
    // Where the axis cannot go there is no way down: it stays 5 off the wall at 15.
    assertThat(into("depth 4, at (9, 20)", "drill in-it 10").kind()).isEqualTo(Kind.NONE);
    WayDown found = into("depth 4, at (30, 20)", "drill in-it 10");
    assertThat(found.words()).isEqualTo("into in-it");
    assertThat(found.wanted()).isEqualTo(Length.mm("8"));
    assertThat(into("depth 3, at (30, 20)", "drill in-it 9").words())
        .isEqualTo("none: take a slot drill, or first drill a hole of " + Length.mm("8"));
    // A through hole drilled in the bottom is open at the top.
    assertThat(into("through, at (30, 20)", "drill in-it 10").kind()).isEqualTo(Kind.INTO_OPENING);
  }

  @Test
  void downWithoutAHole() {
    WayDown plunge = down(pocket("size 30 x 17, at (30, 20)", ""));
    assertThat(plunge.kind()).isEqualTo(Kind.PLUNGE);
    assertThat(plunge.words())
        .isEqualTo("straight into the metal, for the cutter cuts at its middle");
    WayDown outside = down(pocket("size 30 x 17, at (15, 20)", ""));
    assertThat(outside.kind()).isEqualTo(Kind.FROM_OUTSIDE);
    assertThat(outside.words()).isEqualTo("from outside");
    FeatureTrial chamfer =
        FeatureTrial.of("60 x 40 x 20", "chamfer lip in top, width 1")
            .lines("chamfer lip with CM12");
    assertThat(down(chamfer).kind()).isEqualTo(Kind.FROM_OUTSIDE);
    // What cannot be cut has no way down.
    FeatureTable none =
        FeatureTable.all(
                FeatureTrial.of("60 x 40 x 20", "slot s in top, size 30 x 5, depth 3, at (30, 20)")
                    .lines("slot s with SD6")
                    .run())
            .get(0);
    assertThat(none.down()).isEmpty();
  }

  @Test
  void downIntoAWindow() {
    String window = "window w in top, at (30, 20), ellipse 36 x 24";
    FeatureTrial bare = FeatureTrial.of("60 x 40 x 20", window);
    assertThat(down(bare.lines("window w with SD6, cusp 0.1")).kind()).isEqualTo(Kind.PLUNGE);
    assertThat(down(bare.lines("window w with EM10, cusp 0.1")).kind()).isEqualTo(Kind.NONE);
    // Of two holes wide enough the wider is taken; one too near the wall, or blind, is not.
    FeatureTrial holes =
        FeatureTrial.of(
                "60 x 40 x 20",
                window
                    + "\nhole small in top, dia 10.5, through, at (28, 20)"
                    + "\nhole large in top, dia 12, through, at (32, 20)"
                    + "\nhole wide in top, dia 13, depth 9, at (30, 25)"
                    + "\nhole near in top, dia 12.5, through, at (45, 20)")
            .lines("drill small, large, wide, near", "window w with EM10, cusp 0.1");
    WayDown way = down(holes);
    assertThat(way.kind()).isEqualTo(Kind.INTO_OPENING);
    assertThat(way.words()).isEqualTo("into large");
    FeatureRun.Entry.Hole entry =
        (FeatureRun.Entry.Hole) ((Result.Steps) run(holes).result()).entry();
    assertThat(entry.name()).isEqualTo("large");
    assertThat(entry.x().millimetres()).isCloseTo(2, within(1e-6));
    assertThat(entry.y().millimetres()).isCloseTo(0, within(1e-6));
    assertThat(FeatureWords.wayIn(run(holes)).orElseThrow())
        .startsWith("down in large at X 2.00 mm")
        .endsWith("then to the first station");
    assertThat(FeatureWords.wayIn(run(bare.lines("window w with SD6, cusp 0.1"))))
        .contains("straight down at the first station: the cutter cuts at its middle");
    assertThat(FeatureWords.wayIn(run(bare.lines("window w with EM10, cusp 0.1")))).isEmpty();
    // What the way goes round comes loose.
    assertThat(run(holes).slug()).isPresent();
    assertThat(FeatureWords.slug(run(holes)).orElseThrow()).contains("comes loose");
    assertThat(FeatureWords.slug(run(pocket("size 30 x 17, at (30, 20)", "")))).isEmpty();
  }
}
