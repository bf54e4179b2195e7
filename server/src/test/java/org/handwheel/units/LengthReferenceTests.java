package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.numbers.fraction.BigFraction;
import systems.uom.common.USCustomary;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/**
 * Every unit of length against a reference library: Indriya, the reference implementation of the
 * Units of Measurement API (JSR 385), with the United States units of Systems Common.
 */
final class LengthReferenceTests {
  private static final Unit<javax.measure.quantity.Length> PICOMETRE =
      MetricPrefix.PICO(Units.METRE);

  @Property(tries = 500)
  void agreesOnEveryUnit(
      @ForAll LengthUnit unit,
      @ForAll @IntRange(min = -100_000, max = 100_000) int numerator,
      @ForAll @IntRange(min = 1, max = 10_000) int denominator) {
    BigFraction expected = reference(numerator, denominator, unit);
    BigFraction value = BigFraction.of(numerator, denominator);

    assertThat(Quantity.length(value, unit).value()).isEqualTo(expected);
    assertThat(Length.of(value, unit)).isEqualTo(Length.ofPicometres(expected));
    assertThat(BigFraction.of(Length.of(value, unit).picometres()).subtract(expected).abs())
        .isLessThanOrEqualTo(BigFraction.of(1, 2));
  }

  @Property(tries = 500)
  void agreesOnDecimals(
      @ForAll LengthUnit unit, @ForAll @IntRange(min = -9_999_999, max = 9_999_999) int tenThou) {
    BigFraction expected = reference(tenThou, 10_000, unit);
    String decimal = BigDecimal.valueOf(tenThou, 4).toPlainString();
    assertThat(Length.of(decimal, unit)).isEqualTo(Length.ofPicometres(expected));
  }

  private static BigFraction reference(int numerator, int denominator, LengthUnit unit) {
    Number picometres =
        Quantities.getQuantity(
                RationalNumber.of(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator)),
                unitOf(unit))
            .to(PICOMETRE)
            .getValue();
    return exact(picometres);
  }

  private static Unit<javax.measure.quantity.Length> unitOf(LengthUnit unit) {
    return switch (unit) {
      case MM -> MetricPrefix.MILLI(Units.METRE);
      case UM -> MetricPrefix.MICRO(Units.METRE);
      case IN -> USCustomary.INCH;
      case THOU -> USCustomary.INCH.divide(1_000);
      case TENTH -> USCustomary.INCH.divide(10_000);
      case UIN -> USCustomary.INCH.divide(1_000_000);
    };
  }

  private static BigFraction exact(Number number) {
    if (number instanceof RationalNumber rational) {
      return BigFraction.of(rational.getDividend(), rational.getDivisor());
    }
    if (number instanceof Double || number instanceof Float) {
      throw new AssertionError("the reference library rounded: " + number);
    }
    BigDecimal decimal = new BigDecimal(number.toString());
    return BigFraction.of(decimal.unscaledValue())
        .divide(BigFraction.of(BigInteger.TEN.pow(Math.max(decimal.scale(), 0))))
        .multiply(BigFraction.of(BigInteger.TEN.pow(Math.max(-decimal.scale(), 0))));
  }
}
