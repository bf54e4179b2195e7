package org.handwheel.shop.cutting;

import org.handwheel.units.Length;

/**
 * Metal removed, power, torque and force.
 *
 * <p>Formulas: Q = ap ae vf (definition); P = kc Q; at the motor P/efficiency (Machinery's Handbook
 * P = Kp Q C W/E with C = W = 1, formula from memory); T = P/omega = 9549.3 P/n; Ft = P/v. A unit
 * power of 1 kW s/cm3 is a specific force of 1000 N/mm2.
 */
public final class CuttingPower {
  /** Watts in a horsepower of 550 foot pounds-force per second. */
  public static final double WATTS_PER_HORSEPOWER = 745.6998715822702;

  /** Cubic centimetres in a cubic inch, exactly. */
  public static final double CM3_PER_IN3 = 16.387064;

  private static final double NEWTON_METRES_PER_POUND_INCH = 4.4482216152605 * 0.0254;

  private CuttingPower() {}

  /**
   * Metal removed, cubic centimetres per minute.
   *
   * @param depth of cut along the cutter's axis
   * @param width of cut across it
   * @param millimetresPerMinute table feed
   */
  public static double removalRate(Length depth, Length width, double millimetresPerMinute) {
    return depth.millimetres() * width.millimetres() * millimetresPerMinute / 1000;
  }

  /**
   * Power at the cutter in kilowatts.
   *
   * @param specificForce newtons per square millimetre
   * @param cm3PerMinute metal removed
   */
  public static double atCutter(double specificForce, double cm3PerMinute) {
    return specificForce * cm3PerMinute / 60_000;
  }

  /**
   * The power the motor gives for a power at the cutter, in the same unit.
   *
   * @param efficiency of the drive, over 0 to 1; about 0.7 to 0.8 for belts and gears
   */
  public static double atMotor(double power, double efficiency) {
    if (!(efficiency > 0 && efficiency <= 1)) {
      throw new IllegalArgumentException("an efficiency lies over 0 and at most 1");
    }
    return power / efficiency;
  }

  /** The metal a power in kilowatts at the cutter removes, cubic centimetres per minute. */
  public static double greatestRemovalRate(double kilowatts, double specificForce) {
    return kilowatts * 60_000 / specificForce;
  }

  /** Torque in newton metres. */
  public static double torque(double kilowatts, double turnsPerMinute) {
    return kilowatts * 60_000 / (2 * Math.PI * turnsPerMinute);
  }

  /** Torque in pound-force inches of a power in horsepower. */
  public static double torquePoundInches(double horsepower, double turnsPerMinute) {
    return torque(horsepower * WATTS_PER_HORSEPOWER / 1000, turnsPerMinute)
        / NEWTON_METRES_PER_POUND_INCH;
  }

  /** The mean tangential force at the cutter's edge in newtons. */
  public static double tangentialForce(double kilowatts, double metresPerMinute) {
    return kilowatts * 60_000 / metresPerMinute;
  }

  /**
   * A unit power in horsepower per cubic inch a minute as kilowatts per cubic centimetre a second.
   */
  public static double unitPower(double horsepowerMinutesPerIn3) {
    return horsepowerMinutesPerIn3 * WATTS_PER_HORSEPOWER / 1000 / (CM3_PER_IN3 / 60);
  }

  /** The specific cutting force in newtons per square millimetre of a unit power in kW s/cm3. */
  public static double specificForceOf(double kilowattSecondsPerCm3) {
    return kilowattSecondsPerCm3 * 1000;
  }
}
