package org.handwheel.shop.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrillsTests {
  private static final Drills DRILLS = Drills.load();

  /** Source of the sizes: ASME B94.11M, BS 328, from memory; the spelling is the language's. */
  @ParameterizedTest
  @CsvSource({
    "no 7, no 7",
    "No 7, no 7",
    "no. 7, no 7",
    "no7, no 7",
    "#7, no 7",
    "letter F, letter F",
    "LETTER f, letter F",
    "5/16 in, 5/16 in",
    "5/16in, 5/16 in",
    "10/32 in, 5/16 in",
    "1 in, 1 in",
    "1-1/32 in, 1-1/32 in",
    "6.8, 6.8",
    "6.80 mm, 6.8",
    "' 6.8mm ', 6.8",
    "10, 10",
  })
  void findsADrillAsAPlanWritesIt(String text, String designation) {
    assertThat(DRILLS.find(text)).map(Drill::designation).contains(designation);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "no",
        "no 0",
        "no 81",
        "letter",
        "letter AA",
        "letter 7",
        "5/16",
        "5/0 in",
        "5/17 in",
        "2 in",
        "6.8 in",
        "6.85",
        "6.8001",
        "6.80001",
        "99999999999 in",
        "-6.8",
        "6,8",
        "\u00e4",
        "f"
      })
  void findsNothingForWhatIsNoDrill(String text) {
    assertThat(DRILLS.find(text)).isEmpty();
  }

  @Test
  void everyDrillIsFoundByItsOwnDesignation() {
    for (Drill drill : DRILLS.all()) {
      assertThat(DRILLS.find(drill.designation())).contains(drill);
      assertThat(DRILLS.find(drill.words())).contains(drill);
    }
  }

  @Test
  void areSortedAndEachSeriesHasEachSizeOnce() {
    assertThat(DRILLS.all()).isSortedAccordingTo(Drill.BY_SIZE);
    for (DrillSeries series : DrillSeries.values()) {
      List<Drill> drills = DRILLS.of(series);
      Set<Length> sizes = new HashSet<>();
      drills.forEach(drill -> sizes.add(drill.diameter()));
      assertThat(sizes).as(series.words()).hasSameSizeAs(drills);
    }
  }

  @Test
  void fractionsLieOn64ths() {
    assertThat(DRILLS.of(DrillSeries.FRACTIONAL))
        .hasSize(88)
        .allSatisfy(
            drill -> assertThat(drill.diameter().picometres() % (25_400_000_000L / 64)).isZero());
  }

  @Property
  void nearestIsNoFartherThanAnyOther(@ForAll @LongRange(min = 1, max = 45_000_000_000L) long pm) {
    Length wanted = new Length(pm);
    Length off = DRILLS.nearest(wanted).diameter().minus(wanted).abs();
    assertThat(DRILLS.all())
        .allSatisfy(
            drill -> assertThat(drill.diameter().minus(wanted).abs()).isGreaterThanOrEqualTo(off));
  }

  @Property
  void neighboursEncloseTheSize(
      @ForAll @LongRange(min = 400_000_000L, max = 38_000_000_000L) long pm) {
    Length wanted = new Length(pm);
    Drill below = DRILLS.largestNotAbove(wanted).orElseThrow();
    Drill above = DRILLS.smallestNotBelow(wanted).orElseThrow();
    assertThat(below.diameter()).isLessThanOrEqualTo(wanted);
    assertThat(above.diameter()).isGreaterThanOrEqualTo(wanted);
    assertThat(DRILLS.all())
        .noneMatch(
            drill ->
                drill.diameter().isMoreThan(below.diameter())
                    && drill.diameter().isLessThan(above.diameter())
                    && !drill.diameter().equals(wanted));
  }

  @Test
  void nearestCanBeLimitedToASeries() {
    assertThat(DRILLS.nearest(Length.inches("0.201"), d -> d.series() == DrillSeries.METRIC))
        .map(Drill::designation)
        .contains("5.1");
    assertThat(DRILLS.nearest(Length.inches("0.201")).designation()).isEqualTo("no 7");
    assertThat(DRILLS.nearest(Length.mm("5"), d -> false)).isEmpty();
  }

  @Property
  void aBlunterPointIsShorter(@ForAll @DoubleRange(min = 1, max = 178) double degrees) {
    Length diameter = Length.mm("10");
    assertThat(new DrillPoint(degrees + 1).length(diameter))
        .isLessThan(new DrillPoint(degrees).length(diameter));
  }

  @Test
  void refusesImpossiblePoints() {
    assertThatThrownBy(() -> new DrillPoint(180)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new DrillPoint(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> DrillPoint.GENERAL.countersinkDepth(Length.mm("5"), Length.mm("6")))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void feedsCoverEveryDrillAndNothingElse() {
    Drilling drilling = Drilling.load();
    assertThat(DRILLS.all().stream().filter(d -> !d.diameter().isMoreThan(Length.inches("1.5"))))
        .allSatisfy(drill -> assertThat(drilling.feedPerTurn(drill.diameter())).isPresent());
    assertThat(drilling.feedPerTurn(Length.ZERO)).isEmpty();
    assertThat(drilling.feedPerTurn(Length.inches("1.51"))).isEmpty();
  }

  @Property
  void deeperHolesAreNeverDrilledFaster(@ForAll @LongRange(min = 0, max = 100) long tenths) {
    Length drill = Length.mm("6");
    Length depth = Length.mm("0.6").times(tenths);
    Length deeper = depth.plus(Length.mm("0.6"));
    assertThat(Drilling.deepHoleSpeedFactor(deeper, drill))
        .isLessThanOrEqualTo(Drilling.deepHoleSpeedFactor(depth, drill))
        .isPositive();
    assertThat(Drilling.deepHoleFeedFactor(deeper, drill))
        .isLessThanOrEqualTo(Drilling.deepHoleFeedFactor(depth, drill));
    assertThat(Drilling.pecks(deeper, drill)).isGreaterThanOrEqualTo(Drilling.pecks(depth, drill));
  }

  /** The plan's own case, common practice: 11.8 then 12 is right, 11.95 and 11.0 are not. */
  @Test
  void reamingAllowanceJudgesTheUsualDrills() {
    var drilled = Reaming.drilledForMachine(Length.mm("12"));
    assertThat(drilled.contains(Length.mm("11.8"))).isTrue();
    assertThat(drilled.contains(Length.mm("11.95"))).isFalse();
    assertThat(drilled.contains(Length.mm("11"))).isFalse();
  }
}
