package org.handwheel.shop.drill;

import org.handwheel.units.Length;

/**
 * The cone at the end of a drill, or any cone cut by a countersink.
 *
 * <p>Geometry: a cone of diameter D and included angle a is D/(2 tan(a/2)) long; 0.3004 D at 118
 * degrees, 0.2071 D at 135.
 *
 * @param includedDegrees the included angle, over 0 and under 180
 */
public record DrillPoint(double includedDegrees) {
  /** The general-purpose point. */
  public static final DrillPoint GENERAL = new DrillPoint(118);

  /** The point for hard and tough materials, usually split. */
  public static final DrillPoint TOUGH = new DrillPoint(135);

  public DrillPoint {
    if (!(includedDegrees > 0 && includedDegrees < 180)) {
      throw new IllegalArgumentException("a point's included angle lies between 0 and 180 degrees");
    }
  }

  /** The length of the cone of a drill of this diameter. */
  public Length length(Length diameter) {
    return Length.ofMillimetres(diameter.millimetres() * lengthPerDiameter());
  }

  /** How deep the tip goes for a hole of full diameter to {@code fullDepth}. */
  public Length tipDepth(Length diameter, Length fullDepth) {
    return fullDepth.plus(length(diameter));
  }

  /**
   * How deep a countersink goes below the surface to open a hole to {@code outer}.
   *
   * @param outer the diameter wanted at the surface, not below {@code hole}
   * @param hole the diameter of the hole already there
   */
  public Length countersinkDepth(Length outer, Length hole) {
    if (outer.isLessThan(hole)) {
      throw new IllegalArgumentException("a countersink is not smaller than its hole");
    }
    return length(outer.minus(hole));
  }

  private double lengthPerDiameter() {
    return 1 / (2 * Math.tan(Math.toRadians(includedDegrees / 2)));
  }
}
