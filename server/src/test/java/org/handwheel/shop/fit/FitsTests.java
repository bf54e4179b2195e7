package org.handwheel.shop.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FitsTests {
  private static final Fits FITS = Fits.load();
  private static final GeneralTolerances GENERAL = GeneralTolerances.load();
  private static final List<String> SHAFTS =
      List.of("d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s");
  private static final List<String> HOLES =
      List.of("D", "E", "F", "G", "H", "JS", "K", "M", "N", "P");

  /**
   * Limit deviations as ISO 286-2 prints them, micrometres.
   *
   * <p>Source: ISO 286-2, from memory, recalled as whole limits and not by way of a fundamental
   * deviation and a grade.
   */
  @ParameterizedTest
  @CsvSource({
    "25, H7, 0, 21",
    "25, K7, -15, 6",
    "25, M7, -21, 0",
    "25, N7, -28, -7",
    "25, P7, -35, -14",
    "25, N9, -52, 0",
    "25, P9, -74, -22",
    "25, JS9, -26, 26",
    "25, D10, 65, 149",
    "25, E9, 40, 92",
    "25, F8, 20, 53",
    "25, G7, 7, 28",
    "25, K6, -11, 2",
    "25, d9, -117, -65",
    "25, e8, -73, -40",
    "25, f7, -41, -20",
    "25, g6, -20, -7",
    "25, h6, -13, 0",
    "25, js6, -6.5, 6.5",
    "25, k6, 2, 15",
    "25, m6, 8, 21",
    "25, n6, 15, 28",
    "25, p6, 22, 35",
    "25, r6, 28, 41",
    "25, s6, 35, 48",
    "10, H8, 0, 22",
    "10, f7, -28, -13",
    "10, k6, 1, 10",
    "10, p6, 15, 24",
    "60, K7, -21, 9",
    "60, r6, 41, 60",
    "70, r6, 43, 62",
    "60, s6, 53, 72",
    "70, s6, 59, 78",
    "100, r6, 51, 73",
    "110, r6, 54, 76",
    "3, g6, -8, -2",
    "3, K7, -10, 0",
    "3, N9, -29, -4",
    "120, f7, -71, -36",
    "280, M6, -41, -9",
  })
  void limitsAreThoseOfTheStandard(String size, String code, String low, String high) {
    assertThat(FITS.deviations(Length.mm(size), code))
        .contains(new LengthRange(Length.of(low, LengthUnit.UM), Length.of(high, LengthUnit.UM)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "H", "7", "H4", "H15", "Hh7", "Js7", "Z7", "x6", "H 7", "H7/g6", "H007"})
  void findsNothingForWhatTheTablesDoNotHold(String code) {
    assertThat(FITS.limits(Length.mm("25"), code)).isEmpty();
  }

  @Test
  void findsNothingOutsideTheSizes() {
    assertThat(FITS.limits(Length.ZERO, "H7")).isEmpty();
    assertThat(FITS.limits(Length.mm("-5"), "H7")).isEmpty();
    assertThat(FITS.limits(Length.mm("315.001"), "H7")).isEmpty();
    assertThat(FITS.limits(Length.mm("315"), "H7")).isPresent();
    assertThat(FITS.limits(Length.mm("20"), "K9")).as("not defined over 3 mm").isEmpty();
  }

  @Test
  void everyLetterAndUsualGradeHasLimitsTo120Millimetres() {
    for (String size :
        List.of("1", "3", "5", "10", "18", "30", "40", "50", "65", "80", "100", "120")) {
      for (int grade = 5; grade <= 11; grade++) {
        for (String letters : SHAFTS) {
          assertThat(FITS.limits(Length.mm(size), letters + grade)).isPresent();
        }
        for (String letters : HOLES) {
          if (!letters.equals("K") || grade <= 8) {
            assertThat(FITS.limits(Length.mm(size), letters + grade))
                .as("%s %s%s", size, letters, grade)
                .isPresent();
          }
        }
      }
    }
  }

  @Property
  void gradesRiseWithGradeAndSize(
      @ForAll @IntRange(min = 5, max = 13) int grade,
      @ForAll @LongRange(min = 1, max = 300_000_000_000L) long pm) {
    Length size = new Length(pm);
    Length tolerance = FITS.tolerances().tolerance(grade, size).orElseThrow();
    assertThat(FITS.tolerances().tolerance(grade + 1, size).orElseThrow()).isGreaterThan(tolerance);
    Length larger = size.plus(Length.mm("15"));
    assertThat(FITS.tolerances().tolerance(grade, larger).orElseThrow())
        .isGreaterThanOrEqualTo(tolerance);
  }

  @Property
  void zonesHaveTheWidthOfTheirGrade(
      @ForAll @IntRange(min = 0, max = 11) int letter,
      @ForAll @IntRange(min = 5, max = 11) int grade,
      @ForAll @LongRange(min = 1, max = 315_000_000_000L) long pm) {
    Length size = new Length(pm);
    LengthRange limits = FITS.limits(size, SHAFTS.get(letter) + grade).orElseThrow();
    assertThat(limits.width()).isEqualTo(FITS.tolerances().tolerance(grade, size).orElseThrow());
  }

  @Property
  void laterLettersMakeShaftsLargerAndHolesSmaller(
      @ForAll @IntRange(min = 5, max = 7) int grade,
      @ForAll @LongRange(min = 1, max = 315_000_000_000L) long pm) {
    Length size = new Length(pm);
    assertOrdered(size, SHAFTS, grade, 1);
    assertOrdered(size, HOLES, grade, -1);
  }

  private static void assertOrdered(Length size, List<String> letters, int grade, int sign) {
    for (int i = 1; i < letters.size(); i++) {
      LengthRange before = FITS.deviations(size, letters.get(i - 1) + grade).orElseThrow();
      LengthRange after = FITS.deviations(size, letters.get(i) + grade).orElseThrow();
      assertThat(after.middle().compareTo(before.middle()) * sign)
          .as("%s then %s grade %s at %s", letters.get(i - 1), letters.get(i), grade, size)
          .isGreaterThanOrEqualTo(0);
    }
  }

  /** A hole of D to H mirrors the shaft of the small letter: the standard's general rule. */
  @Property
  void holesMirrorShafts(
      @ForAll @IntRange(min = 0, max = 4) int letter,
      @ForAll @IntRange(min = 5, max = 11) int grade,
      @ForAll @LongRange(min = 1, max = 315_000_000_000L) long pm) {
    Length size = new Length(pm);
    LengthRange shaft = FITS.deviations(size, SHAFTS.get(letter) + grade).orElseThrow();
    LengthRange hole = FITS.deviations(size, HOLES.get(letter) + grade).orElseThrow();
    assertThat(hole).isEqualTo(new LengthRange(shaft.high().negated(), shaft.low().negated()));
  }

  /**
   * ISO 286-1's rule behind the corrections, from memory: in grades to 7 a P hole with the next
   * finer shaft p gives the same interference, so ES(P7) = -ei(p6) + IT7 - IT6.
   */
  @Property
  void holePMatchesTheNextFinerShaft(
      @ForAll @LongRange(min = 3_000_000_001L, max = 315_000_000_000L) long pm) {
    Length size = new Length(pm);
    Length step =
        FITS.tolerances()
            .tolerance(7, size)
            .orElseThrow()
            .minus(FITS.tolerances().tolerance(6, size).orElseThrow());
    Length shaft = FITS.deviations(size, "p6").orElseThrow().low();
    assertThat(FITS.deviations(size, "P7").orElseThrow().high()).isEqualTo(step.minus(shaft));
  }

  @Test
  void kindsOfFitAreTold() {
    Length size = Length.mm("25");
    assertThat(FITS.fit(size, "H7", "g6")).map(Fit::kind).contains(FitKind.CLEARANCE);
    assertThat(FITS.fit(size, "H7", "h6")).map(Fit::kind).contains(FitKind.CLEARANCE);
    assertThat(FITS.fit(size, "H7", "k6")).map(Fit::kind).contains(FitKind.TRANSITION);
    assertThat(FITS.fit(size, "H7", "p6")).map(Fit::kind).contains(FitKind.INTERFERENCE);
    assertThat(FITS.fit(size, "g6", "H7")).isEmpty();
    assertThat(FITS.fit(size, "H7", "g6").orElseThrow().clearance())
        .isEqualTo(new LengthRange(Length.of("7", LengthUnit.UM), Length.of("41", LengthUnit.UM)));
    assertThat(FITS.provenance("H7").orElseThrow().toString()).contains("ISO 286");
  }

  @Property
  void generalTolerancesRiseWithSizeAndClass(
      @ForAll @LongRange(min = 3_000_000_001L, max = 2_000_000_000_000L) long pm) {
    Length size = new Length(pm);
    Length before = Length.ZERO;
    for (char toleranceClass : "fmcv".toCharArray()) {
      Length linear = GENERAL.linear(size, toleranceClass).orElseThrow();
      assertThat(linear).isGreaterThanOrEqualTo(before);
      assertThat(GENERAL.linear(size.times(2), 'm').orElseThrow())
          .isGreaterThanOrEqualTo(GENERAL.linear(size, 'm').orElseThrow());
      assertThat(GENERAL.radius(size, toleranceClass)).isPresent();
      assertThat(GENERAL.angleMinutes(size, toleranceClass)).isPresent();
      before = linear;
    }
  }

  @Test
  void generalTolerancesKnowNoOtherClassOrSize() {
    assertThat(GENERAL.linear(Length.mm("10"), 'H')).isEmpty();
    assertThat(GENERAL.linear(Length.mm("4000.001"), 'm')).isEmpty();
    assertThat(GENERAL.linear(Length.mm("3000"), 'f')).isEmpty();
    assertThat(GENERAL.angleMinutes(Length.ZERO, 'm')).isEmpty();
  }

  @Property
  void theStatisticalSumIsBetweenTheLargestAndTheWorstCase(
      @ForAll @Size(min = 1, max = 8) List<@IntRange(min = -1000, max = 1000) Integer> microns) {
    List<Length> chain =
        microns.stream().map(um -> Length.of(um.toString(), LengthUnit.UM)).toList();
    Length largest = chain.stream().map(Length::abs).reduce(Length.ZERO, Length::max);
    assertThat(StackUp.rootSumSquare(chain))
        .isGreaterThanOrEqualTo(largest)
        .isLessThanOrEqualTo(StackUp.worstCase(chain));
  }

  /** Ten to one, four to one, at least two to one: common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "0.20, 0.02, GOOD",
    "0.199, 0.02, FAIR",
    "0.08, 0.02, FAIR",
    "0.079, 0.02, DOUBTFUL",
    "0.04, 0.02, DOUBTFUL",
    "0.039, 0.02, TOO_COARSE",
    "0, 0.02, TOO_COARSE",
  })
  void capabilityFollowsTheRatio(String zone, String step, MeasuringCapability expected) {
    assertThat(MeasuringCapability.of(Length.mm(zone), Length.mm(step))).isEqualTo(expected);
  }

  @Test
  void capabilityRefusesNonsense() {
    assertThatThrownBy(() -> MeasuringCapability.of(Length.mm("0.1"), Length.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aCaliperIsTooCoarseForAFitAndAMicrometerServesACloseSize() {
    Instruments instruments = Instruments.load();
    Instrument caliper = instruments.find("Caliper").orElseThrow();
    Instrument micrometer = instruments.find("micrometer").orElseThrow();
    assertThat(MeasuringCapability.of(Length.mm("0.018"), caliper))
        .isEqualTo(MeasuringCapability.TOO_COARSE);
    assertThat(MeasuringCapability.of(Length.mm("0.2"), caliper).isAcceptable()).isTrue();
    assertThat(MeasuringCapability.of(Length.mm("0.04"), micrometer).isAcceptable()).isTrue();
  }
}
