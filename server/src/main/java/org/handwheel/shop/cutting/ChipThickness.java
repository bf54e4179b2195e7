package org.handwheel.shop.cutting;

import org.handwheel.units.Length;

/**
 * How thick the chip of a peripheral cut is, and the feed that restores it.
 *
 * <p>With a = ae/D, the width of cut over the cutter's diameter, from over 0 to 1: engagement
 * cos(phi) = 1 - 2a; greatest chip 2 fz sqrt(a(1 - a)) up to half the cutter, fz beyond
 * (Fundamentals of Machining Processes 6.3.1.4, form read); mean chip (fz/phi)(1 - cos phi), exact,
 * where makers' sheets print fz sqrt(a), 1.7 per cent high at a = 0.1.
 */
public final class ChipThickness {
  private ChipThickness() {}

  /** The angle the cutter is in the work, in degrees: 90 at half the cutter, 180 for a slot. */
  public static double engagementDegrees(Length widthOfCut, Length diameter) {
    return Math.toDegrees(engagement(share(widthOfCut, diameter)));
  }

  /** The greatest chip thickness over the feed per tooth: at most 1. */
  public static double greatestFactor(Length widthOfCut, Length diameter) {
    double a = share(widthOfCut, diameter);
    return a >= 0.5 ? 1 : 2 * Math.sqrt(a * (1 - a));
  }

  /** The mean chip thickness over the feed per tooth. */
  public static double meanFactor(Length widthOfCut, Length diameter) {
    double a = share(widthOfCut, diameter);
    return 2 * a / engagement(a);
  }

  /** The feed per tooth at which the greatest chip is as thick as {@code wanted}. */
  public static Length feedFor(Length wanted, Length widthOfCut, Length diameter) {
    return Length.ofMillimetres(wanted.millimetres() / greatestFactor(widthOfCut, diameter));
  }

  private static double engagement(double a) {
    return Math.acos(1 - 2 * a);
  }

  private static double share(Length widthOfCut, Length diameter) {
    if (!widthOfCut.isPositive() || widthOfCut.isMoreThan(diameter)) {
      throw new IllegalArgumentException("the width of cut is over zero and at most the cutter's");
    }
    return widthOfCut.millimetres() / diameter.millimetres();
  }
}
