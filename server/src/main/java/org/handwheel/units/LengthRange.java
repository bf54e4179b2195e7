package org.handwheel.units;

/**
 * A closed interval of lengths: what a size may be, given what is known of it.
 *
 * @param low the least it may be
 * @param high the most it may be, never below {@code low}
 */
public record LengthRange(Length low, Length high) {
  public LengthRange {
    if (high.isLessThan(low)) {
      throw new IllegalArgumentException("an interval runs from low to high");
    }
  }

  public static LengthRange exactly(Length value) {
    return new LengthRange(value, value);
  }

  /** {@code middle} give or take {@code spread} (its absolute value). */
  public static LengthRange around(Length middle, Length spread) {
    return new LengthRange(middle.minus(spread.abs()), middle.plus(spread.abs()));
  }

  public Length width() {
    return high.minus(low);
  }

  public Length middle() {
    return low.plus(width().half());
  }

  /** Half the width: the uncertainty when the middle is taken for the size. */
  public Length spread() {
    return width().half();
  }

  public boolean contains(Length value) {
    return !value.isLessThan(low) && !value.isMoreThan(high);
  }

  public boolean contains(LengthRange other) {
    return contains(other.low) && contains(other.high);
  }

  public boolean overlaps(LengthRange other) {
    return !other.high.isLessThan(low) && !other.low.isMoreThan(high);
  }

  /** The interval grown by {@code spread} at both ends. */
  public LengthRange widened(Length spread) {
    return new LengthRange(low.minus(spread.abs()), high.plus(spread.abs()));
  }

  public LengthRange plus(Length shift) {
    return new LengthRange(low.plus(shift), high.plus(shift));
  }

  public LengthRange minus(LengthRange other) {
    return new LengthRange(low.minus(other.high), high.minus(other.low));
  }

  @Override
  public String toString() {
    return LengthText.range(this);
  }
}
