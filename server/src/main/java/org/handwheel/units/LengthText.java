package org.handwheel.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Lengths as people read them: always both units, millimetres first, and no more figures than a
 * dial, a caliper or a micrometer can show.
 *
 * <p>Millimetres are rounded to a micrometre and inches to a tenth of a thou; trailing zeros go
 * down to two and three places. Lengths under a tenth of an inch are given in thou, as the trade
 * speaks of them: {@code 0.25 mm (9.8 thou)}. What rounds to nothing and is something is said to be
 * small: {@code 0.001 mm (under 0.1 thou)}. Rounding is half to even (US Army MM4409 p. 147).
 */
public final class LengthText {
  private static final Length THOU_BELOW = Length.inches("0.1");
  private static final Length LEAST_MM = Length.mm("0.001");
  private static final Length LEAST_THOU = Length.inches("0.0001");

  private LengthText() {}

  /** For example {@code 19.05 mm (0.750 in)} or {@code 0.254 mm (10 thou)}. */
  public static String both(Length length) {
    return mm(length) + " (" + inch(length) + ")";
  }

  /** The two ends of an interval in both units: {@code 19.22..19.24 mm (0.7567..0.7575 in)}. */
  public static String range(LengthRange range) {
    if (range.width().isZero()) {
      return both(range.low());
    }
    String mm = number(range.low(), LengthUnit.MM, 3, 2) + ".." + mm(range.high());
    LengthUnit unit = small(range.low()) && small(range.high()) ? LengthUnit.THOU : LengthUnit.IN;
    int most = unit == LengthUnit.THOU ? 1 : 4;
    int least = unit == LengthUnit.THOU ? 0 : 3;
    return mm
        + " ("
        + number(range.low(), unit, most, least)
        + ".."
        + number(range.high(), unit, most, least)
        + " "
        + unit.symbol()
        + ")";
  }

  /** Millimetres alone, with the unit. */
  public static String mm(Length length) {
    return (isLost(length, LEAST_MM) ? "under 0.001" : number(length, LengthUnit.MM, 3, 2)) + " mm";
  }

  /** Thou below a tenth of an inch, else inches, with the unit. */
  public static String inch(Length length) {
    if (!small(length)) {
      return number(length, LengthUnit.IN, 4, 3) + " in";
    }
    return (isLost(length, LEAST_THOU) ? "under 0.1" : number(length, LengthUnit.THOU, 1, 0))
        + " thou";
  }

  /** Whether something would be shown as nothing: at most half of the least figure. */
  private static boolean isLost(Length length, Length least) {
    return length.isPositive() && !length.times(2).isMoreThan(least);
  }

  private static boolean small(Length length) {
    return length.abs().isLessThan(THOU_BELOW);
  }

  /**
   * The bare number in a unit, rounded half to even.
   *
   * @param most how many decimal places at most
   * @param least how many to keep although they are zeros
   */
  public static String number(Length length, LengthUnit unit, int most, int least) {
    BigDecimal value =
        BigDecimal.valueOf(length.picometres())
            .divide(BigDecimal.valueOf(unit.picometres()), most, RoundingMode.HALF_EVEN);
    BigDecimal trimmed = value.stripTrailingZeros();
    if (trimmed.scale() < least) {
      trimmed = trimmed.setScale(least, RoundingMode.UNNECESSARY);
    }
    return trimmed.signum() == 0
        ? BigDecimal.ZERO.setScale(least).toPlainString()
        : trimmed.toPlainString();
  }
}
