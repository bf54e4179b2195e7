package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.handwheel.rules.Checked;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureHits.Hit;
import org.handwheel.work.feature.FeatureHits.ToolPart;
import org.handwheel.work.feature.FeatureRun.Result;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;

/**
 * What cutters meet on their way, against figures worked out by hand from the sizes in the shop and
 * against distances sampled along the way. Geometry needs no other source.
 */
class FeatureHitsTests {
  private static final String ACROSS =
      "slot across in top, length 10, width 30, depth %s, at (28, 15) from left front";

  /** Jaws 25 high; parallels 10; bought stock of 20 may measure 19.7. */
  @ParameterizedTest
  @CsvSource({"9, -4.3", "4.7, 0", "4, 0.7"})
  void aSlotAcrossTheWorkRunsOutOverBothJaws(String depth, String clearance) {
    List<Hit> hits =
        FeatureTrial.of("56 x 30 x 20", ACROSS.formatted(depth))
            .lines("cutter EM10", "touch top, zero z", "slot across with EM10, pass 1")
            .hits();
    List<Hit> jaws = hits.stream().filter(hit -> hit.thing() == Thing.JAW).toList();
    assertThat(jaws).extracting(Hit::name).containsExactly("the fixed jaw", "the moving jaw");
    assertThat(jaws).extracting(Hit::clearance).containsOnly(Length.mm(clearance));
  }

  @Test
  void aClosedSlotMeetsNothingButWhatIsBelowIt() {
    FeatureTrial slot =
        FeatureTrial.of(
                "56 x 30 x 20", "slot key in top, width 10, length 30, depth 9, at (28, 15)")
            .lines("cutter SD6", "touch top, zero z", "slot key with SD6, pass 1");
    assertThat(slot.hits()).extracting(Hit::thing).containsExactly(Thing.BED);
    assertThat(slot.check().findings()).noneMatch(finding -> finding.rule().startsWith("cutter"));
  }

  /** Cut through, 0.3 below the work, on parallels 22 high and 6 thick at either jaw. */
  @ParameterizedTest
  @CsvSource({"8, true", "15, false"})
  void aThroughSlotGoesIntoTheParallelUnderIt(String y, boolean meets) {
    List<Hit> hits =
        FeatureTrial.of(
                "56 x 30 x 8", "slot fork in top, width 10, length 14, through, at (51, " + y + ")")
            .on("in V80, up top, fixed back, on pair P6x22")
            .lines("cutter EM10", "touch top, zero z", "slot fork with EM10, pass 1")
            .hits();
    List<Hit> parallels = hits.stream().filter(hit -> hit.thing() == Thing.PARALLEL).toList();
    if (meets) {
      // Stock of 8 may measure 7.7, and the slot is drawn 8 deep.
      assertThat(parallels).extracting(Hit::clearance).containsExactly(Length.mm("-0.6"));
    } else {
      assertThat(parallels).isEmpty();
    }
  }

  private static FeatureTrial ledge(String clampAt, String cutter) {
    return FeatureTrial.of("56 x 30 x 8", "step ledge in top, size 12 x 30, depth 3, at (50, 15)")
        .on("on table, up top, fixed back, on pair P3x10, clamp C1 at (" + clampAt + ", 15)")
        .with(cutter)
        .lines("cutter TRIAL", "touch top, zero z", "step ledge with TRIAL, pass 1");
  }

  private static String cutter(String reach, String holder) {
    return "own cutter TRIAL\n  dia: 10\n  flute: 12\n  shank: 10\n  reach: "
        + reach
        + "\n  holder: "
        + holder
        + "\n";
  }

  /** The step's wall stands at 44, and the clamp covers 11 to either side of its point. */
  @ParameterizedTest
  @CsvSource({"32.9, false", "33.1, true"})
  void aStepComesAsNearToAClampAsItsWall(String clampAt, boolean meets) {
    List<Hit> hits = ledge(clampAt, cutter("40", "10")).hits();
    assertThat(hits.stream().anyMatch(hit -> hit.thing() == Thing.CLAMP)).isEqualTo(meets);
  }

  /**
   * The axis comes to 49, so a holder of 40 to 29. The cutter's end is at 7.7 - 3 = 4.7, the
   * clamp's top at 8 + 18 = 26.
   */
  @Test
  void theHolderReachesFurtherThanTheCutterButStandsHigher() {
    Hit low =
        ledge("25", cutter("15", "40")).hits().stream()
            .filter(hit -> hit.thing() == Thing.CLAMP)
            .findFirst()
            .orElseThrow();
    assertThat(low.part()).isEqualTo(ToolPart.HOLDER);
    assertThat(low.clearance()).isEqualTo(Length.mm("-6.3"));
    Hit high =
        ledge("25", cutter("30", "40")).hits().stream()
            .filter(hit -> hit.thing() == Thing.CLAMP)
            .findFirst()
            .orElseThrow();
    assertThat(high.clearance()).isEqualTo(Length.mm("8.7"));
    assertThat(ledge("17.9", cutter("15", "40")).hits())
        .noneMatch(hit -> hit.thing() == Thing.CLAMP);
  }

  /**
   * A shank of 16 on a cutter of 10 reaches 3 further, 12 above its end: at 49 from 41 on. So does
   * a holder, above the flutes and what the cutter stands out besides.
   */
  @Test
  void aShankThatIsThickerThanTheCutter() {
    String thick = "own cutter TRIAL\n  dia: 10\n  flute: 12\n  shank: 16\n";
    Hit shank = clampHit(ledge("31", thick)).orElseThrow();
    assertThat(shank.part()).isEqualTo(ToolPart.SHANK);
    // 4.7 and the flutes of 12, less the clamp's top at 26.
    assertThat(shank.clearance()).isEqualTo(Length.mm("-9.3"));
    assertThat(clampHit(ledge("29.9", thick))).isEmpty();
    assertThat(clampHit(ledge("31", thick.replace("shank: 16", "shank: 10")))).isEmpty();
    // Where the edges meet it, too, they are lower.
    assertThat(clampHit(ledge("34", thick)).orElseThrow().part()).isEqualTo(ToolPart.EDGES);
    assertThat(clampHit(ledge("34", thick)).orElseThrow().clearance())
        .isEqualTo(Length.mm("-21.3"));
    String holder = "own cutter TRIAL\n  dia: 10\n  flute: 12\n  holder: 40\n";
    PlanRun run = ledge("25", holder).run();
    Length out =
        Length.mm("12")
            .plus(run.plan().shop().limits().length(org.handwheel.model.Limit.STICK_OUT));
    assertThat(clampHit(ledge("25", holder)).orElseThrow().clearance())
        .isEqualTo(Length.mm("-21.3").plus(out));
    assertThat(clampHit(ledge("25", holder.replace("holder: 40", "holder: 10")))).isEmpty();
  }

  private static java.util.Optional<Hit> clampHit(FeatureTrial trial) {
    return trial.hits().stream().filter(hit -> hit.thing() == Thing.CLAMP).findFirst();
  }

  /** Stock of 8 may measure 7.7; cut through and 0.3 further the cutter ends 0.6 below it. */
  @Test
  void aWindowIsCutIntoTheTable() {
    String window = "window w in top, at (28, 15), ellipse 36 x 20";
    FeatureTrial trial =
        FeatureTrial.of("56 x 30 x 8", window)
            .lines("cutter SD6", "touch top, zero z", "window w with SD6, cusp 0.1");
    List<Hit> table = trial.on("on table, up top, fixed back, clamp C1 at (11, 15)").hits();
    assertThat(table)
        .filteredOn(hit -> hit.thing() == Thing.TABLE)
        .extracting(Hit::clearance)
        .containsExactly(Length.mm("-0.6"));
    // On parallels of 10 as much higher.
    List<Hit> raised =
        trial.on("on table, up top, fixed back, on pair P3x10, clamp C1 at (11, 15)").hits();
    assertThat(raised)
        .filteredOn(hit -> hit.thing() == Thing.TABLE)
        .extracting(Hit::clearance)
        .containsExactly(Length.mm("9.4"));
  }

  /** Over its starting hole, in the middle of the window, the cutter goes down and comes back. */
  @Test
  void onTheWayFromTheHoleToTheWall() {
    String window = "window w in top, at (50, 30), ellipse 80 x 50";
    FeatureTrial trial =
        FeatureTrial.of("100 x 60 x 8", window + "\nhole in-it in top, dia 8, through, at (50, 30)")
            .with("own clamp small\n  width: 4\n  height: 18\n")
            .on("on table, up top, fixed back, on pair P3x10, clamp small at (50, 30)")
            .lines("drill in-it", "cutter SD6", "touch top, zero z", "window w with SD6, cusp 0.1");
    assertThat(clampHit(trial)).isPresent();
    FeatureTrial without =
        FeatureTrial.of("100 x 60 x 8", window)
            .with("own clamp small\n  width: 4\n  height: 18\n")
            .on("on table, up top, fixed back, on pair P3x10, clamp small at (50, 30)")
            .lines("cutter SD6", "touch top, zero z", "window w with SD6, cusp 0.1");
    assertThat(clampHit(without)).isEmpty();
  }

  /** An outline cut free in a vise has a rule of its own. */
  @Test
  void anOutlineThatIsCutFreeInAVise() {
    FeatureTrial trial =
        FeatureTrial.of("56 x 30 x 8", "outline oval in top, ellipse 40 x 20")
            .lines("cutter EM10", "touch top, zero z", "outline oval with EM10, cusp 0.1");
    assertThat(trial.hits()).isEmpty();
    assertThat(trial.on("on table, up top, fixed back, clamp C1 at (28, 15)").hits()).isNotEmpty();
  }

  @Test
  void theMessageNamesTheHolder() {
    Checked checked = ledge("25", cutter("15", "40")).check();
    assertThat(checked.findings())
        .anySatisfy(
            finding -> {
              assertThat(finding.rule()).isEqualTo("cutter-meets-clamp");
              assertThat(finding.message())
                  .isEqualTo(
                      "on its way along `ledge` the holder of TRIAL goes 6.30 mm (0.248 in) into"
                          + " clamp C1");
              assertThat(finding.related().get(0).origin().text()).startsWith("clamp C1");
            });
  }

  @Test
  void aChamferKeepsOnlyAsFarAboveTheJawsAsItIsWide() {
    List<Hit> hits =
        FeatureTrial.of("56 x 30 x 20", "chamfer lip in top, width 1")
            .lines("cutter CM12", "touch top, zero z", "chamfer lip with CM12")
            .hits();
    // 10 + 19.7 - 25 stands above the jaws.
    assertThat(hits)
        .filteredOn(hit -> hit.thing() == Thing.JAW)
        .extracting(Hit::clearance)
        .containsOnly(Length.mm("3.7"));
  }

  /** Clamps at random places round an oval: struck where the way comes nearer than the radius. */
  @Tag("long")
  @Test
  void anOutlineStrikesJustTheClampsThatItsWayComesNear() {
    Random random = new Random(20261127);
    int struck = 0;
    for (int i = 0; i < 25; i++) {
      double x = Math.round(random.nextDouble() * 1400 - 200) / 10.0;
      double y = Math.round(random.nextDouble() * 1000 - 200) / 10.0;
      PlanRun run =
          FeatureTrial.of(
                  "100 x 60 x 8", "outline oval in top, at (50, 30), ellipse 68 x 30, depth 2")
              .on("on table, up top, fixed back, on pair P3x10, clamp C1 at (" + x + ", " + y + ")")
              .lines("cutter EM10", "touch top, zero z", "outline oval with EM10, pass 1")
              .run();
      StepRun step = FeatureTrial.features(run).get(0);
      double nearest = nearest(((Result.Steps) step.feature().result()), x, y);
      boolean meets =
          FeatureHits.of(run, FeatureTrial.setup(run), step).stream()
              .anyMatch(hit -> hit.thing() == Thing.CLAMP);
      // Beginning and end lie 2 mm further out, on the axis of the oval.
      if (Math.abs(nearest - 5) > 2.1) {
        assertThat(meets)
            .as("clamp at %s, %s: %s off the way", x, y, nearest)
            .isEqualTo(nearest < 5);
      }
      struck += meets ? 1 : 0;
    }
    assertThat(struck).as("struck of 25").isBetween(5, 23);
  }

  /** The least distance from the way to a square of 22 about a point. */
  private static double nearest(Result.Steps steps, double x, double y) {
    double nearest = Double.MAX_VALUE;
    Coordinate[] way = steps.table().path().getCoordinates();
    for (int i = 0; i + 1 < way.length; i++) {
      for (int k = 0; k <= 20; k++) {
        double atX = 50 + way[i].x + (way[i + 1].x - way[i].x) * k / 20;
        double atY = 30 + way[i].y + (way[i + 1].y - way[i].y) * k / 20;
        double offX = Math.max(0, Math.abs(atX - x) - 11);
        double offY = Math.max(0, Math.abs(atY - y) - 11);
        nearest = Math.min(nearest, Math.hypot(offX, offY));
      }
    }
    return nearest;
  }
}
