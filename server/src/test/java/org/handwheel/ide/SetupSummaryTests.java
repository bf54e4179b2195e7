package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.work.SetupTime;
import org.junit.jupiter.api.Test;

/**
 * Times of setups, against hand calculation shown beside each. The allowances for handling are
 * common practice, no source.
 */
final class SetupSummaryTests {
  private static final String PART =
      """
      part
        material steel-mild
        length 56.00 +-0.10
        width 30.00 +0/-0.05
        height 21.00 +0/-0.05
      stock
        size 60 x 33.5 x 24.5
        rolled front back top bottom
        sawn left right
      """;

  private static Fixture plan(String setups) {
    return Fixture.plan(Fixture.HEAD + PART + setups);
  }

  private static SetupTime time(Fixture fixture, int setup) {
    return SetupTime.of(fixture.view().run(), fixture.view().run().setups().get(setup));
  }

  private static List<String> labels(Fixture fixture) {
    return SetupSummary.lenses(fixture.view()).stream()
        .map(
            lens -> {
              assertThat(fixture.text().substring(lens.start(), lens.end())).startsWith("setup ");
              return lens.label();
            })
        .toList();
  }

  private static final String TOP =
      """
      setup one "Top"
        hold in V80, up top, fixed back, on pair P6x10
        cutter FC40
        touch top with paper 0.05, zero z
        lock y z
        rough top to 23 leaving 0, pass 0.5, travel left to right
        deburr edges of top
        measure height with caliper
      """;

  @Test
  void aFacedSideTakesItsPassesOverTheWayAndTheFeed() {
    Fixture fixture =
        plan(TOP.replace("cutter FC40", "cutter FC40, speed 500 rpm, feed 0.1 mm/tooth"));
    SetupTime time = time(fixture, 0);
    // 24.5 +- 0.3 (what bought stock may differ) to 23: up to 1.8 off at 0.5 a pass is 4 passes.
    // Way: 60.3 (the longest the stock may be) + 40 + 2 x 2 = 104.3.
    // Feed: 0.1 x 4 teeth x 500 rpm = 200 mm/min. 4 x 104.3 / 200 = 2.086 min.
    assertThat(time.cutting()).isCloseTo(2.086, within(0.001));
    // Hold 5, cutter 3, touch 2, four passes at 0.5, deburr 2, measure 2.
    assertThat(time.handling()).isCloseTo(5 + 3 + 2 + 4 * 0.5 + 2 + 2, within(1e-9));
    assertThat(time.untimed()).isZero();
    assertThat(labels(fixture))
        .containsExactly("about 18 min, 2 min cutting: V80, P6x10, FC40, caliper");
  }

  @Test
  void aHandleIsTurnedNoFasterThanAHandCan() {
    Fixture fixture =
        plan(TOP.replace("cutter FC40", "cutter FC40, speed 2100 rpm, feed 0.5 mm/tooth"));
    // 0.5 x 4 x 2100 = 4200 mm/min would be asked for; a turn of 2.54 mm in 0.7 s is 217.71 mm/min.
    assertThat(time(fixture, 0).cutting()).isCloseTo(4 * 104.3 / (60 * 2.54 / 0.7), within(0.001));
  }

  @Test
  void speedAndFeedComeFromTheMaterialWhereThePlanHasNone() {
    // Carbide in mild steel 90 to 180 m/min, middle 135: 1000 x 135 / (pi x 40) = 1074 rpm, the
    // machine's step below is 930. Face mills 0.15 a tooth: 0.15 x 4 x 930 = 558 mm/min, more than
    // a hand winds (217.71).
    assertThat(time(plan(TOP), 0).cutting()).isCloseTo(4 * 104.3 / 217.714, within(0.001));
  }

  @Test
  void lanesSideBySideEachTakeTheWay() {
    String setup =
        TOP.replace("cutter FC40", "cutter EM16, speed 500 rpm, feed 0.1 mm/tooth")
            .replace("travel left to right", "step over 10, travel left to right");
    // Over 33.8: (33.8 - 16) / 10 rounded up is 2, and the first: 3 lanes. Way 60.3 + 16 + 4 =
    // 80.3.
    assertThat(time(plan(setup), 0).cutting()).isCloseTo(4 * 3 * 80.3 / 200, within(0.001));
  }

  @Test
  void aCutterThatStaysIsNotPutInAgainButIsListed() {
    Fixture fixture =
        plan(
            TOP
                + """
                setup two "Bottom"
                  hold in V80, up bottom, fixed back, on pair P6x10
                  seat tapped, both parallels tight
                  cutter FC40
                  touch bottom with paper 0.05, zero z
                setup three
                  hold in V80, up top, fixed back, on pair P6x10
                  touch top with paper 0.05, zero z
                  rough top to 21.5 leaving 0, pass 0.5
                """);
    // Hold 5, seat 1, touch 2.
    assertThat(time(fixture, 1).handling()).isCloseTo(8, within(1e-9));
    assertThat(labels(fixture).get(1)).isEqualTo("about 8 min: V80, P6x10, FC40");
    assertThat(labels(fixture).get(2)).endsWith(": V80, P6x10, FC40");
  }

  @Test
  void withoutAMaterialCutsAreNotCounted() {
    Fixture fixture =
        Fixture.plan(Fixture.HEAD + PART.replace("  material steel-mild\n", "") + TOP);
    assertThat(time(fixture, 0).untimed()).isEqualTo(1);
    assertThat(time(fixture, 0).cutting()).isZero();
    assertThat(labels(fixture).get(0)).contains(", and a cut not counted: V80");
  }

  @Test
  void aLineThatCannotBeReadLeavesNoTime() {
    Fixture fixture = plan(TOP + "  rubbish\nsetup two\n  hold in V80, up bottom, fixed back\n");
    assertThat(labels(fixture))
        .containsExactly("time not known: V80, P6x10, FC40, caliper", "time not known: V80");
  }

  @Test
  void theHeadersHoverTellsItToo() {
    Fixture fixture = plan(TOP.replace("setup one", "set$0up one"));
    String text =
        Hovers.at(fixture.view(), fixture.cursor(), RulePages.NONE).orElseThrow().text().plain();
    assertThat(text)
        .contains("\nLay out: V80, P6x10, FC40, caliper\n")
        .contains("\nTime: about 18 min, 2 min cutting\n");
  }
}
