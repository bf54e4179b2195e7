package org.handwheel.shop.material;

/**
 * A range of cutting speeds in metres per minute.
 *
 * @param low the cautious end, over zero
 * @param high the brisk end, not below {@code low}
 */
public record SpeedRange(double low, double high) {
  public SpeedRange {
    if (!(low > 0 && high >= low)) {
      throw new IllegalArgumentException("a range of speeds runs from low to high above zero");
    }
  }

  /** The middle: where to start on a machine in good order. */
  public double middle() {
    return (low + high) / 2;
  }

  public boolean contains(double metresPerMinute) {
    return low <= metresPerMinute && metresPerMinute <= high;
  }
}
