package org.handwheel.units;

import org.apache.commons.numbers.fraction.BigFraction;

/**
 * An exact value with its dimension, in the base unit of that dimension.
 *
 * <p>Base units: plain numbers as they are, picometres, degrees, metres per minute, millimetres per
 * minute, per tooth and per turn, turns per minute, watts.
 *
 * @param dimension what it measures
 * @param value the exact amount in the base unit
 */
public record Quantity(Dimension dimension, BigFraction value) {
  public static Quantity number(BigFraction value) {
    return new Quantity(Dimension.NUMBER, value);
  }

  public static Quantity length(BigFraction value, LengthUnit unit) {
    return new Quantity(Dimension.LENGTH, value.multiply(unit.factor()));
  }

  public static Quantity of(Length length) {
    return new Quantity(Dimension.LENGTH, BigFraction.of(length.picometres()));
  }

  public boolean is(Dimension wanted) {
    return dimension == wanted;
  }

  /** This value as a length, rounded once, half to even, to a picometre. */
  public Length toLength() {
    if (dimension != Dimension.LENGTH) {
      throw new IllegalStateException(dimension.words() + " is not a length");
    }
    return Length.ofPicometres(value);
  }
}
