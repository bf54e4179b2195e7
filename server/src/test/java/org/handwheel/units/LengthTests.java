package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exact lengths against definitions, worked examples and laws. */
final class LengthTests {
  private static final long HUNDRED_METRES = 100_000_000_000_000L;

  @Test
  void anInchIsTwentyFivePointFourMillimetres() {
    // NIST SP 811, appendix B; 1959 international yard and pound agreement: exact.
    assertThat(Length.inches("1")).isEqualTo(Length.mm("25.4"));
  }

  @ParameterizedTest
  @CsvSource({
    // Definitions by the inch; agree with GNU units 2.22 ("thou", "mil").
    "1, THOU, 0.0254",
    // Shop usage; agrees with GNU units 2.22 ("tenth").
    "1, TENTH, 0.00254",
    // By definition.
    "1, UM, 0.001",
    "1, UIN, 0.0000254",
    "0.015625, IN, 0.396875",
    // NIST SP 811 B.7.2: 36 ft is 10.9728 m before rounding (432 in).
    "432, IN, 10972.8",
    // NIST LC 1137: 40.1 in is 101.854 cm, 36 in is 91.44 cm, before rounding.
    "40.1, IN, 1018.54",
    "36, IN, 914.4",
    // By definition (agrees with GNU units 2.22): 100 ft/min is 30.48 m/min; here 1200 in.
    "1200, IN, 30480",
  })
  void convertsExactly(String value, LengthUnit unit, String millimetres) {
    assertThat(Length.of(value, unit)).isEqualTo(Length.mm(millimetres));
  }

  @ParameterizedTest
  @CsvSource({
    // n/d in is n/d x 127/5 mm, by definition; computed with Commons Numbers 1.2.
    "5, 16, 7.9375",
    "21, 64, 8.334375",
    "1, 64, 0.396875",
  })
  void keepsFractionsOfAnInchExact(int numerator, int denominator, String millimetres) {
    Length length = Length.of(BigFraction.of(numerator, denominator), LengthUnit.IN);
    assertThat(length).isEqualTo(Length.mm(millimetres));
  }

  @Test
  void addsTheReadingOfAMetricMicrometer() {
    // US Army TM 9-243 p. 7-6: 20 + 2 + 36/100 = 22.36 mm.
    Length thimble = Length.of(BigFraction.of(36, 100), LengthUnit.MM);
    assertThat(Length.mm("20").plus(Length.mm("2")).plus(thimble)).isEqualTo(Length.mm("22.36"));
  }

  @ParameterizedTest
  @CsvSource({"5, 2, 2", "7, 2, 4", "-5, 2, -2", "-7, 2, -4", "8, 3, 3", "-8, 3, -3", "5, -2, -2"})
  void roundsHalfToEven(int numerator, int denominator, long picometres) {
    // 2.5 -> 2 and 3.5 -> 4: the rule of US Army MM4409 p. 147; the others follow from it.
    assertThat(Length.ofPicometres(BigFraction.of(numerator, denominator)).picometres())
        .isEqualTo(picometres);
  }

  @Test
  void dividesIntoStepsOfAtMostTheGivenLength() {
    // Common practice, no source: 70 thou in passes of 20 thou takes four, of 10 thou takes seven.
    assertThat(Length.of("70", LengthUnit.THOU).stepsOf(Length.of("20", LengthUnit.THOU)))
        .isEqualTo(4);
    assertThat(Length.of("70", LengthUnit.THOU).stepsOf(Length.of("10", LengthUnit.THOU)))
        .isEqualTo(7);
    assertThat(Length.ZERO.stepsOf(Length.mm("1"))).isZero();
    assertThat(Length.mm("-1").stepsOf(Length.mm("1"))).isZero();
    assertThat(new Length(Long.MAX_VALUE).stepsOf(new Length(1))).isEqualTo(Long.MAX_VALUE);
  }

  @Test
  void refusesStepsWithoutLength() {
    for (Length step : new Length[] {Length.ZERO, Length.mm("-1")}) {
      assertThatThrownBy(() -> Length.mm("1").stepsOf(step))
          .isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> Length.ZERO.stepsOf(step))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Example
  void neverWraps() {
    Length most = new Length(Long.MAX_VALUE);
    Length least = new Length(Long.MIN_VALUE);
    Length one = new Length(1);
    assertOverflow(() -> most.plus(one));
    assertOverflow(() -> least.minus(one));
    assertOverflow(least::negated);
    assertOverflow(least::abs);
    assertOverflow(() -> most.times(2));
    assertOverflow(() -> most.times(BigFraction.of(3, 2)));
    assertOverflow(() -> Length.mm("9223372036.854775808"));
    assertOverflow(() -> Length.mm("-9223372036.854775809"));
    assertOverflow(() -> Length.ofMillimetres(9.1e9));
    assertOverflow(() -> Length.ofMillimetres(Double.NaN));
    assertOverflow(() -> Length.ofMillimetres(Double.NEGATIVE_INFINITY));
    assertThat(Length.mm("9223372036.854775807")).isEqualTo(most);
    assertThat(Length.mm("-9223372036.854775808")).isEqualTo(least);
  }

  @Test
  void takesComputedLengthsToTheNearestPicometre() {
    assertThat(Length.ofMillimetres(25.4)).isEqualTo(Length.inches("1"));
    assertThat(Length.ofMillimetres(-0.0000000014).picometres()).isEqualTo(-1);
    assertThat(Length.ofMillimetres(9.0e9).picometres()).isEqualTo(9_000_000_000_000_000_000L);
  }

  @Test
  void comparesBySize() {
    Length small = Length.mm("1.5");
    Length large = Length.mm("1.8");
    assertThat(small.isLessThan(large)).isTrue();
    assertThat(small.isMoreThan(large)).isFalse();
    assertThat(small.isLessThan(small)).isFalse();
    assertThat(small.isMoreThan(small)).isFalse();
    assertThat(large.isMoreThan(small)).isTrue();
    assertThat(small).isLessThan(large);
    assertThat(Length.max(small, large)).isEqualTo(large);
    assertThat(Length.max(large, small)).isEqualTo(large);
    assertThat(Length.min(small, large)).isEqualTo(small);
    assertThat(Length.min(large, small)).isEqualTo(small);
    assertThat(Length.ZERO.isZero()).isTrue();
    assertThat(small.isZero()).isFalse();
    assertThat(Length.ZERO.isPositive()).isFalse();
    assertThat(Length.ZERO.isNegative()).isFalse();
    assertThat(small.negated().isNegative()).isTrue();
    assertThat(small.half()).isEqualTo(Length.mm("0.75"));
    assertThat(small.negated().abs()).isEqualTo(small);
    assertThat(large.millimetres()).isEqualTo(1.8);
  }

  /** A half of a picometre goes to the even neighbour: 0.5 to 0, 1.5 to 2, 2.5 to 2. */
  @ParameterizedTest
  @CsvSource({
    "0, 0", "1, 0", "2, 1", "3, 2", "5, 2", "7, 4", "-1, 0", "-3, -2", "-5, -2", "-6, -3"
  })
  void halfOfAnOddNumberOfPicometres(long picometres, long half) {
    assertThat(new Length(picometres).half()).isEqualTo(new Length(half));
  }

  @Property
  void toInchesAndBackIsTheSameLength(
      @ForAll @LongRange(min = -HUNDRED_METRES, max = HUNDRED_METRES) long picometres) {
    Length length = new Length(picometres);
    BigFraction inches = length.over(Length.inches("1"));
    assertThat(Length.of(inches, LengthUnit.IN)).isEqualTo(length);
  }

  @Property
  void everySixtyFourthIsExactInMillimetres(@ForAll @IntRange(min = -6400, max = 6400) int count) {
    Length inches = Length.of(BigFraction.of(count, 64), LengthUnit.IN);
    BigFraction millimetres = BigFraction.of(count, 64).multiply(BigFraction.of(127, 5));
    assertThat(inches.over(Length.mm("1"))).isEqualTo(millimetres);
    assertThat(Length.of(millimetres, LengthUnit.MM)).isEqualTo(inches);
  }

  @Property
  void stepsCoverTheLengthAndOneFewerDoNot(
      @ForAll @LongRange(min = 1, max = HUNDRED_METRES) long length,
      @ForAll @LongRange(min = 1, max = HUNDRED_METRES) long step) {
    Length whole = new Length(length);
    Length each = new Length(step);
    long steps = whole.stepsOf(each);
    assertThat(each.times(steps)).isGreaterThanOrEqualTo(whole);
    assertThat(each.times(steps - 1)).isLessThan(whole);
  }

  @Property
  void addingAndTakingAwayCancel(
      @ForAll @LongRange(min = -HUNDRED_METRES, max = HUNDRED_METRES) long a,
      @ForAll @LongRange(min = -HUNDRED_METRES, max = HUNDRED_METRES) long b) {
    Length x = new Length(a);
    Length y = new Length(b);
    assertThat(x.plus(y).minus(y)).isEqualTo(x);
    assertThat(x.plus(y)).isEqualTo(y.plus(x));
    assertThat(x.minus(y)).isEqualTo(y.minus(x).negated());
    assertThat(x.half().plus(x.half()).minus(x).abs()).isLessThanOrEqualTo(new Length(1));
    assertThat(x.times(3)).isEqualTo(x.plus(x).plus(x));
    assertThat(x.compareTo(y)).isEqualTo(Long.compare(a, b));
  }

  private static void assertOverflow(Runnable computation) {
    assertThatThrownBy(computation::run)
        .isInstanceOf(LengthOverflowException.class)
        .hasMessageContaining("9 000 km");
  }
}
