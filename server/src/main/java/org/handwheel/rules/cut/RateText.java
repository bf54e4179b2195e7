package org.handwheel.rules.cut;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.handwheel.shop.cutting.CuttingPower;
import org.handwheel.shop.cutting.SpindleSpeed;

/** Speeds and powers as messages give them: in both systems of units, with few figures. */
final class RateText {
  private RateText() {}

  static String rpm(double turnsPerMinute) {
    return number(turnsPerMinute, turnsPerMinute < 10 ? 1 : 0) + " rpm";
  }

  static String surfaceSpeed(double metresPerMinute) {
    return number(metresPerMinute, metresPerMinute < 10 ? 1 : 0)
        + " m/min ("
        + number(metresPerMinute / SpindleSpeed.METRES_PER_FOOT, 0)
        + " ft/min)";
  }

  static String power(double kilowatts) {
    return number(kilowatts, 2)
        + " kW ("
        + number(kilowatts * 1000 / CuttingPower.WATTS_PER_HORSEPOWER, 2)
        + " hp)";
  }

  static String number(double value, int places) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
    BigDecimal stripped = rounded.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }
}
