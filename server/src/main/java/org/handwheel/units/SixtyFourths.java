package org.handwheel.units;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * The nearest 64th of an inch to a length, as fractional drawings and rules have it.
 *
 * @param count how many 64ths
 * @param error how much more they are than the length; negative if less
 */
public record SixtyFourths(long count, Length error) {
  private static final BigInteger PER_INCH = BigInteger.valueOf(64);

  /** The 64th nearest to a length; of two as near the even one. */
  public static SixtyFourths nearest(Length length) {
    BigFraction exact =
        BigFraction.of(length.picometres())
            .multiply(64)
            .divide(BigInteger.valueOf(LengthUnit.IN.picometres()));
    BigInteger count =
        new BigDecimal(exact.getNumerator())
            .divide(new BigDecimal(exact.getDenominator()), 0, RoundingMode.HALF_EVEN)
            .toBigInteger();
    Length reached = Length.of(BigFraction.of(count, PER_INCH), LengthUnit.IN);
    return new SixtyFourths(count.longValueExact(), reached.minus(length));
  }

  /** In the language's spelling: {@code 1-3/8 in}. */
  public String text() {
    long whole = count / 64;
    long part = count % 64;
    if (part == 0) {
      return whole + " in";
    }
    long divisor = Math.min(64, Long.lowestOneBit(part));
    String fraction = part / divisor + "/" + 64 / divisor + " in";
    return whole == 0 ? fraction : whole + "-" + fraction;
  }
}
