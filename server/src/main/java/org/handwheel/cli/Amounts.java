package org.handwheel.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.handwheel.shop.cutting.CuttingPower;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.shop.stock.StockMass;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Amounts of every kind in both systems of units, for people and for programs. */
final class Amounts {
  /** Millimetres in an inch. */
  private static final double MM_PER_IN = 25.4;

  private static final double NEWTONS_PER_POUND = 4.4482216152605;

  private Amounts() {}

  // ---- For people

  static String rpm(double turnsPerMinute) {
    return figures(turnsPerMinute) + " rpm";
  }

  static String surfaceSpeed(double metresPerMinute) {
    return figures(metresPerMinute)
        + " m/min ("
        + figures(metresPerMinute / SpindleSpeed.METRES_PER_FOOT)
        + " ft/min)";
  }

  static String surfaceSpeeds(SpeedRange range) {
    return range.low() == range.high()
        ? surfaceSpeed(range.low())
        : figures(range.low())
            + " to "
            + figures(range.high())
            + " m/min ("
            + figures(range.low() / SpindleSpeed.METRES_PER_FOOT)
            + " to "
            + figures(range.high() / SpindleSpeed.METRES_PER_FOOT)
            + " ft/min)";
  }

  static String tableFeed(double millimetresPerMinute) {
    return figures(millimetresPerMinute)
        + " mm/min ("
        + figures(millimetresPerMinute / MM_PER_IN)
        + " in/min)";
  }

  static String removal(double cubicCentimetresPerMinute) {
    return figures(cubicCentimetresPerMinute)
        + " cm3/min ("
        + figures(cubicCentimetresPerMinute / CuttingPower.CM3_PER_IN3)
        + " in3/min)";
  }

  static String power(double kilowatts) {
    return figures(kilowatts)
        + " kW ("
        + figures(kilowatts * 1000 / CuttingPower.WATTS_PER_HORSEPOWER)
        + " hp)";
  }

  static String torque(double newtonMetres) {
    return figures(newtonMetres)
        + " N m ("
        + figures(newtonMetres / NEWTONS_PER_POUND / MM_PER_IN * 1000)
        + " lbf in)";
  }

  static String force(double newtons) {
    return figures(newtons) + " N (" + figures(newtons / NEWTONS_PER_POUND) + " lbf)";
  }

  static String density(double kilogramsPerCubicMetre) {
    double poundsPerIn3 =
        kilogramsPerCubicMetre / StockMass.KILOGRAMS_PER_POUND / 1e6 * CuttingPower.CM3_PER_IN3;
    return figures(kilogramsPerCubicMetre, 4) + " kg/m3 (" + figures(poundsPerIn3) + " lb/in3)";
  }

  /** With three figures, or all before the point: few of these values are known better. */
  static String figures(double value) {
    return figures(value, 3);
  }

  static String figures(double value, int count) {
    if (!Double.isFinite(value)) {
      return "?";
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    int places = Math.max(0, Math.min(6, count - (exact.precision() - exact.scale())));
    return plain(exact.setScale(places, RoundingMode.HALF_EVEN)).toPlainString();
  }

  // ---- For programs

  /** A length in both units; millimetres to a picometre. */
  record Size(BigDecimal mm, BigDecimal in) {
    static Size of(Length length) {
      BigDecimal picometres = BigDecimal.valueOf(length.picometres());
      return new Size(
          plain(picometres.movePointLeft(9)),
          plain(
              picometres.divide(
                  BigDecimal.valueOf(LengthUnit.IN.picometres()), 8, RoundingMode.HALF_EVEN)));
    }

    static @Nullable Size ofNullable(@Nullable Length length) {
      return length == null ? null : of(length);
    }
  }

  /** The two ends of an interval. */
  record Range(Size low, Size high) {
    static Range of(LengthRange range) {
      return new Range(Size.of(range.low()), Size.of(range.high()));
    }
  }

  /** Cutting speeds. */
  record Speeds(BigDecimal lowMPerMin, BigDecimal highMPerMin) {
    static Speeds of(SpeedRange range) {
      return new Speeds(round(range.low()), round(range.high()));
    }
  }

  /** A number as programs want it: more figures than are sure, but not all of a double's. */
  static BigDecimal round(double value) {
    return plain(BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_EVEN));
  }

  static @Nullable BigDecimal roundNullable(@Nullable Double value) {
    return value == null ? null : round(value);
  }

  private static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }
}
