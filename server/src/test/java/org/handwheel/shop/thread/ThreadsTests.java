package org.handwheel.shop.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.handwheel.shop.drill.Drills;
import org.handwheel.shop.thread.ScrewHoles.Clearance;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThreadsTests {
  private static final Drills DRILLS = Drills.load();
  private static final Threads THREADS = Threads.load(DRILLS);
  private static final ScrewHoles HOLES = ScrewHoles.load(DRILLS);

  private static ScrewThread thread(String designation) {
    return THREADS.find(designation).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "M6, M6",
    "m6, M6",
    "M 6, M6",
    "M6x1, M6",
    "M6x1.0, M6",
    "M6 X 1, M6",
    "M6\u00D71, M6",
    "M8x1, M8x1",
    "M8x1.25, M8",
    "M10x1.250, M10x1.25",
    "M2.5, M2.5",
    "UNC 1/4-20, UNC 1/4-20",
    "unc 1/4-20, UNC 1/4-20",
    "UNC 1/4 - 20, UNC 1/4-20",
    "UNC 1/4, UNC 1/4-20",
    "1/4-20 UNC, UNC 1/4-20",
    "UNC no 10-24, UNC no 10-24",
    "UNC No. 10-24, UNC no 10-24",
    "UNC #10-24, UNC no 10-24",
    "UNF no 10, UNF no 10-32",
    "UNC 1-8, UNC 1-8",
    "UNF 1-12, UNF 1-12",
    "BSW 1/4, BSW 1/4",
    "BSW 1/4-20, BSW 1/4",
    "BSF 1/4, BSF 1/4",
    "BA 2, BA 2",
    "2 BA, BA 2",
    "2BA, BA 2",
    "BA 0, BA 0",
    "ME 1/4-32, ME 1/4-32",
    "ME 1/4-40, ME 1/4-40",
    "BSP 1/8, BSP 1/8",
    "G 1/8, BSP 1/8",
    "G1/8, BSP 1/8",
  })
  void findsAThreadAsAPlanWritesIt(String text, String designation) {
    assertThat(THREADS.find(text)).map(ScrewThread::designation).contains(designation);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "M",
        "M0",
        "M6x0.8",
        "M6x",
        "M5.5",
        "M999",
        "6",
        "UNC",
        "UNC 1/4-28",
        "UNC no 7-32",
        "UNC 10-24",
        "ME 1/4",
        "BSW 1/4-26",
        "BA 2-20",
        "BA 99",
        "BA",
        "M6x1x1",
        "UNC -20",
        "NPT 1/8"
      })
  void findsNothingForWhatIsNoThreadOfTheTables(String text) {
    assertThat(THREADS.find(text)).isEmpty();
  }

  @Test
  void everyThreadIsFoundByItsOwnDesignation() {
    assertThat(THREADS.all())
        .allSatisfy(thread -> assertThat(THREADS.find(thread.designation())).containsSame(thread));
    assertThat(THREADS.all()).hasSizeGreaterThan(140);
  }

  @Test
  void everyTapDrillLeavesAUsualShareOfThread() {
    for (ScrewThread thread : THREADS.all()) {
      Length drill = thread.tapDrill().diameter();
      assertThat(drill)
          .as(thread.designation())
          .isLessThan(thread.major())
          .isGreaterThanOrEqualTo(thread.minorDiameter());
      assertThat(thread.percentOfThread(drill)).as(thread.designation()).isBetween(60.0, 95.0);
    }
  }

  /**
   * The usual drills of two fine Unified threads are a shade over the printed limit: 33/64 for
   * 9/16-18 and 37/64 for 5/8-18. Source of the limits: ASME B1.1 2B, ISO 965-1 6H, from memory.
   */
  @Test
  void tapDrillsLieWithinThePrintedLimitsOfTheMinorDiameter() {
    Map<String, Length> over =
        Map.of("UNF 9/16-18", Length.inches("0.0007"), "UNF 5/8-18", Length.inches("0.0002"));
    for (ScrewThread thread : THREADS.all()) {
      if (thread.minorLimits().isPresent()) {
        LengthRange limits = thread.minorLimits().get();
        Length drill = thread.tapDrill().diameter();
        assertThat(drill).as(thread.designation()).isGreaterThanOrEqualTo(limits.low());
        assertThat(drill)
            .as(thread.designation())
            .isLessThanOrEqualTo(
                limits.high().plus(over.getOrDefault(thread.designation(), Length.ZERO)));
      }
    }
  }

  /** The printed lower limit is the basic minor diameter; inch tables round it to a few figures. */
  @Test
  void printedLimitsBeginAtTheBasicMinorDiameter() {
    for (ScrewThread thread : THREADS.all()) {
      thread
          .minorLimits()
          .ifPresent(
              limits ->
                  assertThat(limits.low().millimetres())
                      .as(thread.designation())
                      .isCloseTo(thread.minorDiameter().millimetres(), within(0.03)));
    }
  }

  /** BS 93, from memory: the pitch of number n is 0.9^n mm and D = 6 p^1.2, both to two figures. */
  @Test
  void britishAssociationFollowsItsLaw() {
    List<ScrewThread> ba = THREADS.of(ThreadSeries.BA);
    assertThat(ba).hasSize(17);
    for (int n = 0; n < ba.size(); n++) {
      double pitch = Math.pow(0.9, n);
      assertThat(ba.get(n).designation()).isEqualTo("BA " + n);
      assertThat(ba.get(n).pitch().millimetres()).as("BA %s", n).isCloseTo(pitch, within(0.0051));
      double diameter = 6 * Math.pow(pitch, 1.2);
      assertThat(ba.get(n).major().millimetres())
          .as("BA %s", n)
          .isCloseTo(diameter, within(diameter < 0.95 ? 0.0051 : 0.051));
    }
  }

  @Test
  void sizesRiseWithinASeries() {
    for (ThreadSeries series : ThreadSeries.values()) {
      List<ScrewThread> threads = THREADS.of(series);
      assertThat(threads).as(series.words()).isNotEmpty();
      for (int i = 1; i < threads.size(); i++) {
        int order = threads.get(i).major().compareTo(threads.get(i - 1).major());
        if (series == ThreadSeries.BA) {
          assertThat(order).isNegative();
        } else if (series != ThreadSeries.ME) {
          assertThat(order).as(threads.get(i).designation()).isNotNegative();
        }
      }
    }
  }

  @Test
  void fineThreadsAreFinerThanCoarseOnes() {
    for (ScrewThread fine : THREADS.of(ThreadSeries.ISO_FINE)) {
      ScrewThread coarse = thread(fine.designation().substring(0, fine.designation().indexOf('x')));
      assertThat(fine.pitch()).as(fine.designation()).isLessThan(coarse.pitch());
    }
  }

  @Provide
  Arbitrary<ScrewThread> anyThread() {
    return Arbitraries.of(THREADS.all());
  }

  @Property
  void percentAndHoleAreInverse(
      @ForAll("anyThread") ScrewThread thread, @ForAll @IntRange(min = 1, max = 100) int percent) {
    assertThat(thread.percentOfThread(thread.holeFor(percent))).isCloseTo(percent, within(1e-5));
    assertThat(thread.holeFor(percent))
        .isLessThan(thread.major())
        .isGreaterThanOrEqualTo(thread.fullThreadDiameter());
  }

  @Property
  void anyTextIsAnsweredQuietly(@ForAll String text) {
    assertThat(THREADS.find(text)).isNotNull();
    assertThat(DRILLS.find(text)).isNotNull();
  }

  @Test
  void refusesImpossiblePercents() {
    assertThatThrownBy(() -> thread("M6").holeFor(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> thread("M6").holeFor(101))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> thread("M6").holeFor(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void clearanceHolesClearAndFreerOnesAreLarger() {
    for (ScrewThread thread : THREADS.all()) {
      Length before = thread.major();
      for (Clearance clearance : Clearance.values()) {
        var hole = HOLES.clearance(thread, clearance);
        if (hole.isPresent()) {
          assertThat(hole.get().diameter())
              .as("%s %s", thread.designation(), clearance)
              .isGreaterThan(before);
          before = hole.get().diameter();
        }
      }
    }
  }

  @Test
  void everyCommonScrewHasAClearanceHole() {
    assertThat(THREADS.all())
        .filteredOn(thread -> thread.series() != ThreadSeries.BSP)
        .filteredOn(thread -> !List.of("M1.8", "M2.2").contains(thread.designation()))
        .allSatisfy(
            thread ->
                assertThat(HOLES.clearance(thread, Clearance.NORMAL))
                    .as(thread.designation())
                    .isPresent());
    assertThat(HOLES.clearance(thread("BSP 1/8"), Clearance.NORMAL)).isEmpty();
    assertThat(HOLES.clearance(thread("UNC 1/4-20"), Clearance.FREE)).isEmpty();
  }

  @Test
  void counterboresTakeTheHeadAndHideIt() {
    for (ScrewThread thread : THREADS.all()) {
      HOLES
          .counterbore(thread)
          .ifPresent(
              bore -> {
                assertThat(bore.head()).as(thread.designation()).isGreaterThan(thread.major());
                assertThat(bore.diameter()).isGreaterThan(bore.head());
                assertThat(bore.depth()).isGreaterThan(bore.headHeight());
              });
    }
    assertThat(HOLES.counterbore(thread("BA 2"))).isEmpty();
  }

  @Test
  void aLongerLeadNeedsADeeperHole() {
    ScrewThread m6 = thread("M6");
    Length depth = Length.mm("7");
    assertThat(Tapping.fullDepth(m6, depth, Tapping.Lead.BOTTOMING))
        .isEqualTo(Length.mm("10"))
        .isLessThan(Tapping.fullDepth(m6, depth, Tapping.Lead.SECOND));
    assertThat(Tapping.fullDepth(m6, depth, Tapping.Lead.SECOND))
        .isLessThan(Tapping.fullDepth(m6, depth, Tapping.Lead.TAPER));
    assertThat(Tapping.greatestThread(m6, Length.mm("2"))).isEqualTo(Length.ZERO);
  }
}
