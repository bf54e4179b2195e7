package org.handwheel.shop.fit;

import org.handwheel.units.LengthRange;

/**
 * A hole and a shaft of one nominal size put together.
 *
 * @param hole the limits of size of the hole
 * @param shaft the limits of size of the shaft
 */
public record Fit(LengthRange hole, LengthRange shaft) {

  /** The clearance, from the tightest to the loosest pair; interference is negative. */
  public LengthRange clearance() {
    return hole.minus(shaft);
  }

  public FitKind kind() {
    LengthRange clearance = clearance();
    if (!clearance.low().isNegative()) {
      return FitKind.CLEARANCE;
    }
    return clearance.high().isPositive() ? FitKind.TRANSITION : FitKind.INTERFERENCE;
  }
}
