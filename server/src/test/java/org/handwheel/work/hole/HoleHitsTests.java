package org.handwheel.work.hole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.hole.HoleHits.Hit;
import org.handwheel.work.hole.HoleHits.What;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What drills run into, worked out by hand: jaws 25 high, 80 long and 40 apart, a block of 60 x 40
 * x 20 in their middle on parallels 3 thick and 10 high. Its top is at 30, so a tip more than 5
 * deep is below the jaws' top.
 */
class HoleHitsTests {
  /** How much below a through hole a drill's tip comes out: its point of 118 degrees and 1 mm. */
  private static double out(double dia) {
    return dia / 2 / Math.tan(Math.toRadians(59)) + 1;
  }

  private static Hit only(List<Hit> hits, What what) {
    List<Hit> found = hits.stream().filter(hit -> hit.what() == what).toList();
    assertThat(found).as(hits.toString()).hasSize(1);
    return found.get(0);
  }

  @Test
  void howFarADrillGoesIntoAParallel() {
    // 4.5 from the front the circle of 6 reaches to 1.5; the parallel to 3.
    Hit hit =
        only(
            HoleTrial.of("hole a in top, dia 6, through, at (24, 4.5)").lines("drill a").hits(),
            What.PARALLEL);
    assertThat(hit.into()).isEqualTo(Length.mm("1.5"));
    assertThat(hit.name()).isEqualTo("parallel P");
    assertThat(hit.result().hole().name()).isEqualTo("a");
    // A blind one stays above it.
    assertThat(HoleTrial.of("hole a in top, dia 6, depth 15, at (24, 4.5)").lines("drill a").hits())
        .isEmpty();
  }

  /** The hole leaves the part at the back by 1 and so goes into the jaw, if it is deep enough. */
  @ParameterizedTest
  @CsvSource({"3, 0", "3.1, 0", "5, 1"})
  void aHoleOverTheEdgeGoesIntoTheJawOnlyBelowItsTop(String depth, int jaws) {
    // The point of a drill of 6 is 1.8026 long: 3.1 and the point end 4.9 deep, above the jaw.
    List<Hit> hits =
        HoleTrial.of("hole a in top, dia 6, depth " + depth + ", at (24, 38)")
            .lines("drill a")
            .hits();
    assertThat(hits.stream().filter(hit -> hit.what() == What.JAW).count()).isEqualTo(jaws);
    if (jaws > 0) {
      assertThat(only(hits, What.JAW).into()).isEqualTo(Length.mm("1"));
      assertThat(only(hits, What.JAW).name()).isEqualTo("the fixed jaw");
    }
  }

  @Test
  void atTheFrontItIsTheMovingJaw() {
    Hit hit =
        only(
            HoleTrial.of("hole a in top, dia 6, depth 9, at (24, 2.5)").lines("drill a").hits(),
            What.JAW);
    assertThat(hit.name()).isEqualTo("the moving jaw");
    assertThat(hit.into()).isEqualTo(Length.mm("0.5"));
  }

  @Test
  void throughWorkOnTheBedTheDrillGoesIntoTheBed() {
    HoleTrial trial = HoleTrial.of("hole a in top, dia 8, through, at (30, 20)").lines("drill a");
    Hit hit = only(trial.on("in V, up top, fixed back, on bed").hits(), What.BED);
    assertThat(hit.into().millimetres()).isCloseTo(out(8), within(1e-6));
    assertThat(hit.name()).isEqualTo("the bed of the vise V");
    // On a strip 2 thick by so much less; 10 of parallels are more than it comes out.
    Hit strip = only(trial.on("in V, up top, fixed back, on soft-strip 2").hits(), What.BED);
    assertThat(strip.into().millimetres()).isCloseTo(out(8) - 2, within(1e-6));
    assertThat(trial.hits()).isEmpty();
  }

  @Test
  void throughWorkOnTheTableTheDrillGoesIntoTheTable() {
    HoleTrial trial = HoleTrial.of("hole a in top, dia 8, through, at (30, 20)").lines("drill a");
    Hit hit =
        only(trial.on("on table, up top, fixed back, clamp C at (10, 20)").hits(), What.TABLE);
    assertThat(hit.into().millimetres()).isCloseTo(out(8), within(1e-6));
    assertThat(hit.name()).isEqualTo("the table");
    // What stands on something keeps off it, as far as is known; a subplate is there to be cut.
    assertThat(trial.on("on table, up top, fixed back, on pair P, clamp C at (10, 20)").hits())
        .isEmpty();
    assertThat(
            trial
                .with("own subplate S\n  height: 12\n")
                .on("on subplate S, up top, fixed back, clamp C at (10, 20)")
                .hits())
        .isEmpty();
    HoleTrial blind = HoleTrial.of("hole a in top, dia 8, depth 18, at (30, 20)").lines("drill a");
    assertThat(blind.on("on table, up top, fixed back, clamp C at (10, 20)").hits()).isEmpty();
  }

  /** The strap covers 11 to either side of its point; a tool of 8 keeps off from 15 on. */
  @ParameterizedTest
  @CsvSource({"24.9, 0.1", "25, 0", "25.1, 0"})
  void clampsAreStruckFromAboveHoweverShallowTheHole(String x, String into) {
    List<Hit> hits =
        HoleTrial.of("hole a in top, dia 8, depth 1, at (" + x + ", 20)")
            .on("on table, up top, fixed back, clamp C at (10, 20)")
            .lines("drill a")
            .hits();
    if (into.equals("0")) {
      assertThat(hits).isEmpty();
    } else {
      Hit hit = only(hits, What.CLAMP);
      assertThat(hit.into()).isEqualTo(Length.mm(into));
      assertThat(hit.name()).isEqualTo("clamp C");
    }
  }

  @Test
  void aStopBesideTheWorkIsNotStruck() {
    assertThat(
            HoleTrial.of("hole a in top, dia 8, depth 15, at (1, 20)")
                .on("in V, up top, fixed back, on pair P, stop at operator-left")
                .lines("drill a")
                .hits())
        .isEmpty();
  }

  @Test
  void aHoleThatCannotBeMadeHereStrikesNothing() {
    assertThat(
            HoleTrial.of("hole a in left, dia 8, through, at (2, 5)")
                .on("in V, up top, fixed back, on bed")
                .lines("drill a")
                .hits())
        .isEmpty();
  }

  // ---- Where places lie

  /** Seen with the front on the fixed jaw the part is turned round: 24 from the left is 36. */
  @Test
  void turnedRoundThePlacesTurnRound() {
    HoleTrial trial =
        HoleTrial.of("hole a in top, dia 6, through, at (24, 4.5)")
            .on("in V, up top, fixed front, on pair P")
            .lines("drill a");
    // The front lies at the back, so the hole is over the parallel at the fixed jaw.
    assertThat(only(trial.hits(), What.PARALLEL).into()).isEqualTo(Length.mm("1.5"));
    // Over the edge at the part's front it is then the fixed jaw.
    HoleTrial edge =
        HoleTrial.of("hole a in top, dia 6, depth 9, at (24, 2)")
            .on("in V, up top, fixed front, on pair P")
            .lines("drill a");
    assertThat(only(edge.hits(), What.JAW).name()).isEqualTo("the fixed jaw");
  }

  @Test
  void aFixedJawInFrontIsWhereYBegins() {
    String vise =
        "own vise F\n  jaw-width: 80\n  jaw-depth: 25\n  opening: 70\n"
            + "  fixed-jaw: operator-front\n";
    HoleTrial trial =
        HoleTrial.of("hole a in top, dia 6, depth 9, at (24, 2)")
            .with(vise)
            .on("in F, up top, fixed front, on pair P")
            .lines("drill a");
    Hit hit = only(trial.hits(), What.JAW);
    assertThat(hit.name()).isEqualTo("the fixed jaw");
    assertThat(hit.into()).isEqualTo(Length.mm("1"));
  }

  /** 80 of jaws: shifted to their left end, the parallel of 70 begins 5 from the work's left. */
  @ParameterizedTest
  @CsvSource({"1.9, 0", "2.1, 1"})
  void atAnEndOfTheJawsThePlacesMoveWithTheWork(String x, int parallels) {
    List<Hit> hits =
        HoleTrial.of("hole a in top, dia 6, through, at (" + x + ", 3)")
            .on("in V, up top, fixed back, on pair P, at operator-left")
            .lines("drill a")
            .hits();
    // The jaws end at -40 and the parallel at -35: a circle of radius 3 reaches it from 2 on, and
    // the jaw not at all.
    assertThat(hits.stream().filter(hit -> hit.what() == What.PARALLEL).count())
        .isEqualTo(parallels);
  }

  // ---- Room under the spindle

  /**
   * 300 under the nose. Bed 45, parallels 10 and the block's 20 make 75; the chuck 70; of a drill
   * 125 long 25 are in the chuck, so 100 stand out; 2 to spare. 300 - 247 = 53.
   */
  @Test
  void howMuchRoomIsLeftUnderTheSpindle() {
    HoleTrial trial =
        HoleTrial.of("hole a in top, dia 8, depth 9, at (30, 20)")
            .with("own drill D8\n  dia: 8\n  length: 125\n")
            .lines("drill a");
    Daylight inVise = daylight(trial).orElseThrow();
    assertThat(inVise.top()).isEqualTo(Length.mm("75"));
    assertThat(inVise.stickOut()).isEqualTo(Length.mm("100"));
    assertThat(inVise.needed()).isEqualTo(Length.mm("247"));
    assertThat(inVise.left()).isEqualTo(Length.mm("53"));
    Daylight onTable =
        daylight(trial.on("on table, up top, fixed back, on pair P, clamp C at (10, 20)"))
            .orElseThrow();
    assertThat(onTable.top()).isEqualTo(Length.mm("30"));
    assertThat(daylight(trial.with("own subplate S\n  height: 12\n").on("on subplate S, up top")))
        .isEmpty();
    // A vise that does not say how high its bed is.
    String vise = "own vise N\n  jaw-width: 80\n  jaw-depth: 25\n  opening: 70\n";
    assertThat(daylight(trial.with(vise).on("in N, up top, fixed back, on pair P"))).isEmpty();
  }

  /** A drill shorter than its chuck grips does not stand out at all. */
  @Test
  void aVeryShortDrillDoesNotStandOut() {
    Daylight stub =
        daylight(
                HoleTrial.of("hole a in top, dia 8, depth 9, at (30, 20)")
                    .with("own drill D8\n  dia: 8\n  length: 20\n")
                    .lines("drill a"))
            .orElseThrow();
    assertThat(stub.stickOut()).isEqualTo(Length.ZERO);
  }

  private static Optional<Daylight> daylight(HoleTrial trial) {
    PlanRun run = trial.run();
    var step = HoleTrial.drilled(run).get(0);
    Bit bit = step.holes().results().findFirst().orElseThrow().bit();
    return Daylight.of(run, HoleTrial.setup(run), step, bit);
  }
}
