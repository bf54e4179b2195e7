package org.handwheel.shop.cutting;

import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.units.Length;

/**
 * How far an end mill bends at its tip.
 *
 * <p>Formula: a cantilever, F L^3/(3 E I) with I = pi d^4/64. The flutes leave a core reckoned as
 * 0.8 of the diameter (rule of thumb, from memory): a round guess, and the holder and spindle give
 * besides.
 */
public final class Deflection {
  /** The core over the diameter of an end mill. */
  public static final double CORE_FACTOR = 0.8;

  /** No cutter bends so far: where the formula gives more, it has broken long before. */
  private static final double MOST_MILLIMETRES = 1000;

  private Deflection() {}

  /**
   * The deflection at the tip.
   *
   * @param newtons side force, acting at the tip
   * @param stickOut length out of the holder
   * @param diameter of the cutter, over zero
   */
  public static Length endMill(
      double newtons, Length stickOut, Length diameter, CutterMaterial material) {
    if (!diameter.isPositive() || stickOut.isNegative() || !(newtons >= 0)) {
      throw new IllegalArgumentException("a cutter has a diameter, a stick-out and a force");
    }
    double core = CORE_FACTOR * diameter.millimetres();
    double secondMoment = Math.PI * Math.pow(core, 4) / 64;
    double length = stickOut.millimetres();
    double bent = newtons * Math.pow(length, 3) / (3 * material.youngsModulus() * secondMoment);
    return Length.ofMillimetres(Math.min(bent, MOST_MILLIMETRES));
  }

  /** What the trade says of how far a cutter sticks out. Common practice, no source. */
  public enum StickOut {
    /** Up to three diameters. */
    SHORT,
    /** Up to five. */
    LONG,
    /** Beyond. */
    TOO_LONG;

    public static StickOut of(Length stickOut, Length diameter) {
      if (!stickOut.isMoreThan(diameter.times(3))) {
        return SHORT;
      }
      return stickOut.isMoreThan(diameter.times(5)) ? TOO_LONG : LONG;
    }
  }
}
