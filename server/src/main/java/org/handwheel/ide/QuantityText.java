package org.handwheel.ide;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;

/** Values of every dimension in words, in both systems of units where there are two. */
final class QuantityText {
  private static final double WATTS_PER_HORSEPOWER = 745.7;

  private QuantityText() {}

  static String of(Quantity quantity) {
    double value = quantity.value().doubleValue();
    return switch (quantity.dimension()) {
      case NUMBER -> number(value, 6);
      case LENGTH -> LengthText.both(quantity.toLength());
      case ANGLE -> number(value, 4) + " deg";
      case SURFACE_SPEED -> surfaceSpeed(value);
      case FEED_RATE -> perMinute(value);
      case FEED_PER_TOOTH -> small(value) + " a tooth";
      case FEED_PER_REV -> small(value) + " a turn of the spindle";
      case SPINDLE_SPEED -> number(value, 1) + " rpm";
      case POWER -> number(value, 0) + " W (" + number(value / WATTS_PER_HORSEPOWER, 2) + " hp)";
    };
  }

  /** A cutting speed in metres and feet a minute. */
  static String surfaceSpeed(double metresPerMinute) {
    return number(metresPerMinute, 1)
        + " m/min ("
        + number(metresPerMinute / SpindleSpeed.METRES_PER_FOOT, 0)
        + " ft/min)";
  }

  /** A table feed in millimetres and inches a minute. */
  static String perMinute(double millimetresPerMinute) {
    return number(millimetresPerMinute, 0)
        + " mm/min ("
        + number(millimetresPerMinute / 25.4, 1)
        + " in/min)";
  }

  private static String small(double millimetres) {
    return LengthText.both(Length.ofMillimetres(millimetres));
  }

  /** Every figure a length has, in both units; inches are cut off at six places. */
  static String exact(Length length) {
    BigDecimal mm =
        BigDecimal.valueOf(length.picometres())
            .divide(BigDecimal.valueOf(LengthUnit.MM.picometres()))
            .stripTrailingZeros();
    BigDecimal inches =
        BigDecimal.valueOf(length.picometres())
            .divide(BigDecimal.valueOf(LengthUnit.IN.picometres()), 6, RoundingMode.HALF_EVEN);
    boolean whole =
        inches
                .multiply(BigDecimal.valueOf(LengthUnit.IN.picometres()))
                .compareTo(BigDecimal.valueOf(length.picometres()))
            == 0;
    return mm.toPlainString()
        + " mm, "
        + (whole ? "" : "about ")
        + inches.stripTrailingZeros().toPlainString()
        + " in";
  }

  /** A number rounded to at most so many places, without zeros at its end. */
  static String number(double value, int places) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
    BigDecimal stripped = rounded.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }
}
