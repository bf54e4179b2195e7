package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.handwheel.syntax.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules of speed, feed, power and bending. */
class CuttingLoadRulesTests {
  private static BenchPlan facing(String cutter, String cut) {
    return BenchPlan.of("60 x 30 x 22", "milled front back top bottom left right")
        .in("steel-mild")
        .setup(
            "hold in V80, up top, fixed back, on pair P6x10",
            "cutter " + cutter,
            "touch top with paper 0.05, zero z",
            "lock y z",
            cut);
  }

  private static List<Finding> of(BenchPlan plan, String rule) {
    return plan.check().findings().stream().filter(finding -> finding.rule().equals(rule)).toList();
  }

  /**
   * The mill's steps are 95, 180, 270, 500, 930, 1420 and 2100 rpm. Mild steel takes up to 34 m/min
   * with high-speed steel: 676 rpm over 16 mm, a tenth more 744.
   */
  @ParameterizedTest
  @CsvSource({
    "500 rpm, false, ''",
    "502 rpm, false, ''",
    "270 rpm, false, ''",
    "600 rpm, true, has no step of 600 rpm; it has 500 rpm and 930 rpm",
    "930 rpm, true, 930 rpm is 47 m/min (153 ft/min) at the edge of `EM16`",
    "2500 rpm, true, 'is above the top speed of `inch-mill`, 2100 rpm'"
  })
  void speeds(String speed, boolean found, String words) {
    List<Finding> findings =
        of(facing("EM16, speed " + speed, "clean top at 0.2"), "speed-out-of-range");
    assertThat(findings).hasSize(found ? 1 : 0);
    for (Finding finding : findings) {
      assertThat(finding.message()).contains(words);
      assertThat(finding.related()).hasSize(2);
      assertThat(finding.origin().text()).isEqualTo("speed " + speed);
      assertThat(finding.fixes().get(0).edits().get(0).text()).isEqualTo("speed 500 rpm");
    }
  }

  @Test
  void aSpeedOfACutCounts() {
    assertThat(of(facing("EM16", "clean top at 0.2, speed 1420 rpm"), "speed-out-of-range"))
        .singleElement()
        .satisfies(found -> assertThat(found.origin().text()).isEqualTo("speed 1420 rpm"));
  }

  private static List<Finding> inASlot(String line, String rule) {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 22", "milled front back top bottom left right")
            .in("steel-mild")
            .part("length 60")
            .part("width 30")
            .part("height 22")
            .part("slot oil in top, width 6, length 20, depth 2, at (30, 15)")
            .part("hole foot in top, dia 6, through, at (50, 15)")
            .setup(
                "hold in V80, up top, fixed back, on pair P3x10",
                "find left from operator-left with finder F5, zero x at edge",
                "find front from operator-front with finder F5, zero y at edge",
                "cutter SD6",
                "touch top with paper 0.05, zero z",
                line);
    return of(plan, rule);
  }

  /** 34 m/min over 6 mm are 1804 rpm; a tenth more 1984. */
  @ParameterizedTest
  @CsvSource({
    "1420 rpm, 0, ''",
    "2100 rpm, 1, 2100 rpm is 40 m/min",
    "1000 rpm, 1, 'has no step of 1000 rpm; it has 930 rpm and 1420 rpm'",
    "2500 rpm, 1, 'is above the top speed of `inch-mill`, 2100 rpm'"
  })
  void aSpeedOfALineOnAFeatureOrAHoleCounts(String speed, int found, String words) {
    for (String line : List.of("slot oil, pass 1", "slot oil with SD6, pass 1", "drill foot")) {
      List<Finding> findings = inASlot(line + ", speed " + speed, "speed-out-of-range");
      assertThat(findings).as(line).hasSize(found);
      for (Finding finding : findings) {
        assertThat(finding.message()).as(line).contains(words);
        assertThat(finding.origin().text()).contains(speed);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0.01 mm/tooth, 1", "0.03 mm/tooth, 0"})
  void aFeedOfALineOnAFeatureCounts(String feed, int found) {
    assertThat(inASlot("slot oil, pass 1, feed " + feed, "rubbing")).hasSize(found);
  }

  /** Twice the feed takes about twice the power: the line's own one counts. */
  @Test
  void powerGoesByTheFeedOfTheLine() {
    assertThat(inASlot("slot oil, pass 1, feed 0.03 mm/tooth", "power")).isEmpty();
    assertThat(inASlot("slot oil, feed 2 mm/tooth, speed 1420 rpm", "power")).hasSize(1);
  }

  @Test
  void aSlowMaterialOnAMachineThatTurnsFast() {
    BenchPlan plan =
        facing("big", "clean top at 0.2")
            .with(
                "own cutter big\n  kind: fly-cutter\n  dia: 160\n  teeth: 1\n  flute: 10\n"
                    + "own limits l\n  speed-margin: 1\n");
    assertThat(of(plan, "speed-out-of-range"))
        .singleElement()
        .satisfies(
            found ->
                assertThat(found.message())
                    .contains("the slowest speed of `inch-mill`, 95 rpm", "a smaller cutter"));
  }

  /** An unknown material has no usual speed, but the machine has its steps. */
  @Test
  void unknownMaterial() {
    BenchPlan plan = facing("EM16, speed 2100 rpm", "clean top at 0.2");
    assertThat(of(plan.in("whalebone"), "speed-out-of-range")).isEmpty();
    assertThat(
            of(
                facing("EM16, speed 600 rpm", "clean top at 0.2").in("whalebone"),
                "speed-out-of-range"))
        .singleElement()
        .satisfies(found -> assertThat(found.fixes()).isEmpty());
  }

  @Test
  void aShopsOwnMaterialHasItsOwnSpeeds() {
    BenchPlan plan =
        facing("EM16, speed 930 rpm", "clean top at 0.2")
            .in("soft")
            .with("own material soft\n  like: steel-mild\n  speed-hss: 40, 60 m/min\n");
    assertThat(of(plan, "speed-out-of-range")).isEmpty();
    assertThat(of(plan, "material-unknown")).isEmpty();
  }

  @Test
  void aMaterialWithAWrongPropertyIsKnownAllTheSame() {
    BenchPlan plan =
        facing("EM16, speed 930 rpm", "clean top at 0.2")
            .in("soft")
            .with("own material soft\n  like: steel-mild\n  force: 0\n");
    assertThat(of(plan, "material-unknown")).isEmpty();
    assertThat(of(plan, "speed-out-of-range")).hasSize(1);
  }

  /** Half a thou is the floor (common practice, no source). */
  @ParameterizedTest
  @CsvSource({"0.01 mm/tooth, 1", "0.4 thou/tooth, 1", "0.02 mm/tooth, 0", "2 thou/tooth, 0"})
  void rubbing(String feed, int found) {
    assertThat(of(facing("EM16, feed " + feed, "clean top at 0.2"), "rubbing")).hasSize(found);
    assertThat(of(facing("EM16", "clean top at 0.2, feed " + feed), "rubbing")).hasSize(found);
  }

  @Test
  void rubbingInANarrowCut() {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 22", "milled front back top bottom left right")
            .in("steel-mild")
            .setup(
                "hold in V80, up top, fixed back, on pair P6x10",
                "cutter EM16, feed 0.03 mm/tooth",
                "touch right with paper 0.05, zero x",
                "lock x z",
                "clean right at 0.1, conventional");
    // 2 sqrt(a(1 - a)) with a = 0.1/16 is 0.158: 0.0047 mm.
    assertThat(of(plan, "rubbing"))
        .singleElement()
        .satisfies(found -> assertThat(found.message()).contains("at most 0.005 mm (0.2 thou)"))
        .satisfies(found -> assertThat(found.related()).hasSize(1));
  }

  /** A motor of 30 W is less than any cut across 30 mm of steel asks. */
  @Test
  void powerOfASmallMotor() {
    BenchPlan plan = facing("FC40", "clean top at 0.4");
    assertThat(of(plan, "power")).isEmpty();
    assertThat(of(facing("FC40, speed 930 rpm, feed 0.2 mm/tooth", "clean top at 0.5"), "power"))
        .singleElement()
        .satisfies(found -> assertThat(found.message()).contains("which gives 0.45 kW (0.6 hp)"))
        .satisfies(found -> assertThat(found.related()).hasSize(2));
    assertThat(
            of(
                facing("FC40, speed 930 rpm, feed 0.2 mm/tooth", "clean top at 0.5")
                    .in("aluminium-6082"),
                "power"))
        .isEmpty();
  }

  @Test
  void aRepeatedPassMendsBending() {
    String page = RulePage.of("deflection").orElseThrow().text();
    assertThat(page).contains(", repeat");
    RulePage.of("deflection").orElseThrow().examples().stream()
        .filter(example -> example.shows() == RulePage.Shows.BAD)
        .flatMap(example -> example.check().findings().stream())
        .forEach(
            found -> assertThat(found.fixes().get(0).edits().get(0).text()).isEqualTo(", repeat"));
  }
}
