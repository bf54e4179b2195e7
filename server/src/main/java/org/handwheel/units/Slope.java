package org.handwheel.units;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * A small error of angle as height gained per length: 0.02 over 100 is 200 000 billionths.
 *
 * <p>Whole billionths keep error budgets exact and ordered; a bound is always rounded up.
 *
 * @param billionths height per length, times 10^9; never negative
 */
public record Slope(long billionths) implements Comparable<Slope> {
  public static final Slope NONE = new Slope(0);

  public Slope {
    if (billionths < 0) {
      throw new IllegalArgumentException("a bound is not negative");
    }
  }

  /**
   * {@code rise} over {@code run}, rounded up to a billionth; {@code run} must be positive.
   *
   * @throws LengthOverflowException if the slope is too steep to count in billionths
   */
  public static Slope of(Length rise, Length run) {
    if (!run.isPositive()) {
      throw new IllegalArgumentException("a slope needs a length to rise over");
    }
    BigInteger scaled =
        BigInteger.valueOf(rise.abs().picometres()).multiply(BigInteger.valueOf(1_000_000_000L));
    return new Slope(
        whole(
            new BigDecimal(scaled)
                .divide(BigDecimal.valueOf(run.picometres()), 0, RoundingMode.CEILING)));
  }

  public Slope plus(Slope other) {
    return new Slope(
        whole(BigDecimal.valueOf(billionths).add(BigDecimal.valueOf(other.billionths))));
  }

  /** The error over a length, rounded up to a picometre. */
  public Length over(Length run) {
    BigDecimal rise =
        BigDecimal.valueOf(run.abs().picometres())
            .multiply(BigDecimal.valueOf(billionths))
            .divide(BigDecimal.valueOf(1_000_000_000L), 0, RoundingMode.CEILING);
    return new Length(whole(rise));
  }

  private static long whole(BigDecimal value) {
    try {
      return value.longValueExact();
    } catch (ArithmeticException e) {
      throw new LengthOverflowException();
    }
  }

  public boolean isMoreThan(Slope other) {
    return billionths > other.billionths;
  }

  /** Over 100 mm, the way the trade writes it: {@code 0.02 mm over 100 mm (0.2 thou per inch)}. */
  @Override
  public String toString() {
    Length per100 = over(Length.mm("100"));
    Length perInch = over(Length.inches("1"));
    return LengthText.mm(per100)
        + " over 100 mm ("
        + LengthText.number(perInch, LengthUnit.THOU, 2, 0)
        + " thou per inch)";
  }

  @Override
  public int compareTo(Slope other) {
    return Long.compare(billionths, other.billionths);
  }
}
