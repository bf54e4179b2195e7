package org.handwheel.units;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * An exact length: a whole number of picometres, positive or negative.
 *
 * <p>Arithmetic never rounds and never wraps: what does not fit in 64 bits throws {@link
 * LengthOverflowException}. Sizes are compared as lengths, never as floating-point numbers.
 *
 * @param picometres the length in picometres (1 mm = 1 000 000 000, 1 in = 25 400 000 000)
 */
public record Length(long picometres) implements Comparable<Length> {
  public static final Length ZERO = new Length(0);

  private static final BigInteger MAX = BigInteger.valueOf(Long.MAX_VALUE);
  private static final BigInteger MIN = BigInteger.valueOf(Long.MIN_VALUE);

  /** {@code value} units, rounded once, half to even, to a whole picometre. */
  public static Length of(BigFraction value, LengthUnit unit) {
    return ofPicometres(value.multiply(unit.factor()));
  }

  /** {@code value} units, for example {@code Length.of("0.05", MM)}; exact decimals only. */
  public static Length of(String value, LengthUnit unit) {
    BigDecimal exact = new BigDecimal(value).multiply(BigDecimal.valueOf(unit.picometres()));
    return ofPicometres(exact.setScale(0, RoundingMode.HALF_EVEN).toBigIntegerExact());
  }

  /** A length in millimetres, written as a decimal: {@code Length.mm("0.25")}. */
  public static Length mm(String value) {
    return of(value, LengthUnit.MM);
  }

  /** A length in inches, written as a decimal: {@code Length.inches("0.010")}. */
  public static Length inches(String value) {
    return of(value, LengthUnit.IN);
  }

  /** A rational count of picometres, rounded half to even to a whole one. */
  public static Length ofPicometres(BigFraction picometres) {
    if (picometres.getDenominator().equals(BigInteger.ONE)) {
      return ofPicometres(picometres.getNumerator());
    }
    BigDecimal quotient =
        new BigDecimal(picometres.getNumerator())
            .divide(new BigDecimal(picometres.getDenominator()), 0, RoundingMode.HALF_EVEN);
    return ofPicometres(quotient.toBigInteger());
  }

  private static Length ofPicometres(BigInteger picometres) {
    if (picometres.compareTo(MAX) > 0 || picometres.compareTo(MIN) < 0) {
      throw new LengthOverflowException();
    }
    return new Length(picometres.longValue());
  }

  /**
   * A computed length (geometry, trigonometry) rounded to the nearest picometre.
   *
   * @param millimetres a finite number of millimetres
   */
  public static Length ofMillimetres(double millimetres) {
    if (!Double.isFinite(millimetres) || Math.abs(millimetres) > 9.0e9) {
      throw new LengthOverflowException();
    }
    return new Length(Math.round(millimetres * 1e9));
  }

  public Length plus(Length other) {
    try {
      return new Length(Math.addExact(picometres, other.picometres));
    } catch (ArithmeticException e) {
      throw new LengthOverflowException();
    }
  }

  public Length minus(Length other) {
    try {
      return new Length(Math.subtractExact(picometres, other.picometres));
    } catch (ArithmeticException e) {
      throw new LengthOverflowException();
    }
  }

  public Length negated() {
    return ZERO.minus(this);
  }

  public Length abs() {
    return isNegative() ? negated() : this;
  }

  public Length times(long factor) {
    try {
      return new Length(Math.multiplyExact(picometres, factor));
    } catch (ArithmeticException e) {
      throw new LengthOverflowException();
    }
  }

  /** This length times an exact fraction, rounded half to even to a picometre. */
  public Length times(BigFraction factor) {
    return ofPicometres(factor.multiply(BigFraction.of(picometres)));
  }

  /** Half of this length, rounded half to even to a picometre. */
  public Length half() {
    long down = Math.floorDiv(picometres, 2);
    boolean even = Math.floorMod(picometres, 2) == 0;
    return new Length(even || Math.floorMod(down, 2) == 0 ? down : down + 1);
  }

  /** How many times {@code other}, which must not be zero, goes into this length, exactly. */
  public BigFraction over(Length other) {
    return BigFraction.of(picometres).divide(BigFraction.of(other.picometres));
  }

  /**
   * How many steps of at most {@code step} this length needs: its ceiling; zero if not positive.
   *
   * @throws IllegalArgumentException if {@code step} is not positive
   */
  public long stepsOf(Length step) {
    if (!step.isPositive()) {
      throw new IllegalArgumentException("a step has a positive length");
    }
    if (!isPositive()) {
      return 0;
    }
    return Math.floorDiv(picometres - 1, step.picometres) + 1;
  }

  public boolean isPositive() {
    return picometres > 0;
  }

  public boolean isNegative() {
    return picometres < 0;
  }

  public boolean isZero() {
    return picometres == 0;
  }

  public boolean isMoreThan(Length other) {
    return picometres > other.picometres;
  }

  public boolean isLessThan(Length other) {
    return picometres < other.picometres;
  }

  public static Length max(Length a, Length b) {
    return a.isLessThan(b) ? b : a;
  }

  public static Length min(Length a, Length b) {
    return a.isLessThan(b) ? a : b;
  }

  /** The length in millimetres as a floating-point number, for geometry and for display only. */
  public double millimetres() {
    return picometres / 1e9;
  }

  @Override
  public int compareTo(Length other) {
    return Long.compare(picometres, other.picometres);
  }

  @Override
  public String toString() {
    return LengthText.both(this);
  }
}
