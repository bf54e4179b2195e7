package org.handwheel.ide;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;

/**
 * The 64th of an inch a length is nearest to.
 *
 * @param count how many 64ths
 * @param error how much more they are than the length; negative if less
 */
record InchFraction(long count, Length error) {
  /** Nearer than this a fraction is worth naming: an eighth of the step between 64ths. */
  private static final Length NEAR = Length.inches("0.002");

  /** The fraction, if the length is near one. */
  static Optional<InchFraction> near(Length length) {
    BigFraction exact =
        BigFraction.of(length.picometres()).multiply(64).divide(LengthUnit.IN.picometres());
    BigInteger count =
        new BigDecimal(exact.getNumerator())
            .divide(new BigDecimal(exact.getDenominator()), 0, RoundingMode.HALF_EVEN)
            .toBigInteger();
    if (count.signum() <= 0 || count.bitLength() > 40) {
      return Optional.empty();
    }
    Length reached = Length.of(BigFraction.of(count, BigInteger.valueOf(64)), LengthUnit.IN);
    Length error = reached.minus(length);
    return error.abs().isMoreThan(NEAR)
        ? Optional.empty()
        : Optional.of(new InchFraction(count.longValueExact(), error));
  }

  /** In the language's spelling, with how far it is off: {@code 1-3/8 in}. */
  String words() {
    long whole = count / 64;
    long part = count % 64;
    long divisor = Math.max(1, Math.min(64, Long.lowestOneBit(part)));
    String fraction = part == 0 ? "" : part / divisor + "/" + 64 / divisor;
    String text = (whole == 0 ? fraction : part == 0 ? "" + whole : whole + "-" + fraction) + " in";
    if (error.isZero()) {
      return text + " exactly";
    }
    if (error.abs().isLessThan(Length.mm("0.0005"))) {
      return text + ", within " + Length.mm("0.0005").times(2);
    }
    return text + ", which is " + error.abs() + (error.isNegative() ? " less" : " more");
  }
}
