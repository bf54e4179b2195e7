package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lengths as people read them, in both units. */
final class LengthTextTests {
  @ParameterizedTest
  @CsvSource({
    // Common practice, no source: 1.8 mm is about 70 thou, 1.5 mm about 60 thou.
    "1.8, 0, 71",
    "1.5, 0, 59",
    // Common practice, no source: 10 thou is left for the finishing pass, 0.25 mm.
    "0.25, 0, 10",
    // By definition 1 mm is 1/0.0254 thou.
    "1, 6, 39.370079",
  })
  void givesMillimetresInThou(String millimetres, int places, String thou) {
    assertThat(LengthText.number(Length.mm(millimetres), LengthUnit.THOU, places, 0))
        .isEqualTo(thou);
  }

  @Test
  void factsOfPracticeHoldToTheirRounding() {
    // Common practice, no source: "about 70" and "about 60" are right to two thou.
    Length twoThou = Length.of("2", LengthUnit.THOU);
    assertThat(Length.mm("1.8").minus(Length.of("70", LengthUnit.THOU)).abs()).isLessThan(twoThou);
    assertThat(Length.mm("1.5").minus(Length.of("60", LengthUnit.THOU)).abs()).isLessThan(twoThou);
  }

  @ParameterizedTest
  @CsvSource({
    // By definition 1 um is 0.039 thou, 2 um 0.079 thou, 0.05 thou 1.27 um.
    "0.001, 0.001 mm (under 0.1 thou)",
    "0.002, 0.002 mm (0.1 thou)",
    "0.0005, under 0.001 mm (under 0.1 thou)",
    "0.00001, under 0.001 mm (under 0.1 thou)",
    "0.0006, 0.001 mm (under 0.1 thou)",
    "0, 0.00 mm (0 thou)",
  })
  void saysOfTheSmallestThatTheyAreSmall(String millimetres, String text) {
    assertThat(LengthText.both(Length.mm(millimetres))).isEqualTo(text);
  }

  @Test
  void givesMicrometresInMicroinches() {
    // By definition: 1 um is 39.3701 uin to four places.
    assertThat(LengthText.number(Length.of("1", LengthUnit.UM), LengthUnit.UIN, 4, 0))
        .isEqualTo("39.3701");
  }

  @ParameterizedTest
  @CsvSource({
    // The rule of US Army MM4409 p. 147: what is dropped is exactly 5, so the even digit stays.
    "2.5, 0, 2",
    "3.5, 0, 4",
    "0.125, 2, 0.12",
    "-0.125, 2, -0.12",
    // The worked example of US Army MM4409 p. 147: 60.25132 to three digits.
    "60.25132, 1, 60.3",
    // Its sum of unequal precision, 142.6 + 21.12 + 1.456 + 0.0357 + 0.00612, ends in 165.2.
    "165.21782, 1, 165.2",
  })
  void roundsHalfToEven(String millimetres, int places, String rounded) {
    assertThat(LengthText.number(Length.mm(millimetres), LengthUnit.MM, places, 0))
        .isEqualTo(rounded);
  }

  @ParameterizedTest
  @CsvSource({
    "19.05, 19.05 mm (0.750 in)",
    "0.254, 0.254 mm (10 thou)",
    "0.25, 0.25 mm (9.8 thou)",
    "1.8, 1.80 mm (70.9 thou)",
    "25.4, 25.40 mm (1.000 in)",
    "2.54, 2.54 mm (0.100 in)",
    "2.5399, 2.54 mm (100 thou)",
    "7.9375, 7.938 mm (0.3125 in)",
    "-6.35, -6.35 mm (-0.250 in)",
    "0, 0.00 mm (0 thou)",
    "-0.0000001, 0.00 mm (0 thou)",
    "1000, 1000.00 mm (39.3701 in)",
  })
  void givesBothUnits(String millimetres, String text) {
    assertThat(LengthText.both(Length.mm(millimetres))).isEqualTo(text);
    assertThat(Length.mm(millimetres)).hasToString(text);
  }

  @ParameterizedTest
  @CsvSource({
    "19.22, 19.24, 19.22..19.24 mm (0.7567..0.7575 in)",
    "0.05, 0.254, 0.05..0.254 mm (2..10 thou)",
    "0.254, 25.4, 0.254..25.40 mm (0.010..1.000 in)",
    "-25.4, 0.254, -25.40..0.254 mm (-1.000..0.010 in)",
    "19.05, 19.05, 19.05 mm (0.750 in)",
  })
  void givesIntervalsInBothUnits(String low, String high, String text) {
    LengthRange range = new LengthRange(Length.mm(low), Length.mm(high));
    assertThat(LengthText.range(range)).isEqualTo(text);
    assertThat(range).hasToString(text);
  }

  @Property
  void isNeverFurtherOffThanHalfItsLastPlace(
      @ForAll @LongRange(min = -10_000_000_000_000L, max = 10_000_000_000_000L) long picometres) {
    Length length = new Length(picometres);
    Length mm = Length.mm(LengthText.number(length, LengthUnit.MM, 3, 2));
    assertThat(mm.minus(length).abs()).isLessThanOrEqualTo(Length.of("0.5", LengthUnit.UM));
    Length inches = Length.inches(LengthText.number(length, LengthUnit.IN, 4, 3));
    assertThat(inches.minus(length).abs()).isLessThanOrEqualTo(Length.of("0.5", LengthUnit.TENTH));
  }

  @Property
  void keepsAtLeastAndAtMostThePlacesAskedFor(
      @ForAll @LongRange(min = -10_000_000_000_000L, max = 10_000_000_000_000L) long picometres) {
    String text = LengthText.number(new Length(picometres), LengthUnit.MM, 3, 2);
    assertThat(new BigDecimal(text).scale()).isBetween(2, 3);
    assertThat(text).matches("-?\\d+\\.\\d{2}[1-9]?").doesNotMatch("-0\\.0+");
  }
}
