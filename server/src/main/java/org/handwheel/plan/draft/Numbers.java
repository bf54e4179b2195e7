package org.handwheel.plan.draft;

import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;

/**
 * Lengths as a person would write them in a plan of the given units: round numbers, in millimetres,
 * inches or thousandths.
 */
record Numbers(LengthUnit unit) {
  private static final Length TENTH_INCH = Length.inches("0.1");

  /** A usual figure: one for plans in millimetres, one for plans in inches. */
  Length usual(String millimetres, String inches) {
    return isMetric() ? Length.mm(millimetres) : Length.inches(inches);
  }

  boolean isMetric() {
    return unit != LengthUnit.IN && unit != LengthUnit.THOU;
  }

  /** The next multiple of a usual step that is not below the length. */
  Length up(Length length, String millimetres, String inches) {
    Length step = usual(millimetres, inches);
    return length.isPositive() ? step.times(length.stepsOf(step)) : Length.ZERO;
  }

  /** The next multiple of a usual step that is not above the length. */
  Length down(Length length, String millimetres, String inches) {
    Length step = usual(millimetres, inches);
    return step.times(Math.floorDiv(length.picometres(), step.picometres()));
  }

  /** The length in the file's own words: {@code 0.25}, {@code 10 thou}, {@code 1.375}. */
  String write(Length length) {
    if (!isMetric() && isWholeMetric(length)) {
      return LengthText.number(length, LengthUnit.MM, 2, 0) + " mm";
    }
    return switch (unit) {
      case IN ->
          length.abs().isLessThan(TENTH_INCH) && !length.isZero()
              ? LengthText.number(length, LengthUnit.THOU, 1, 0) + " thou"
              : LengthText.number(length, LengthUnit.IN, 4, 0);
      case THOU -> LengthText.number(length, LengthUnit.THOU, 1, 0);
      default -> LengthText.number(length, LengthUnit.MM, 3, 0);
    };
  }

  /** Whether it is a size that was bought in millimetres: 8 mm, not 0.315 in. */
  private static boolean isWholeMetric(Length length) {
    return length.picometres() % Length.inches("0.0001").picometres() != 0
        && length.picometres() % Length.mm("0.05").picometres() == 0;
  }

  /** Whether an instrument that shows such steps reads in the file's units. */
  boolean isOwnUnit(Length resolution) {
    Length step = isMetric() ? Length.mm("0.001") : Length.inches("0.0001");
    return resolution.picometres() % step.picometres() == 0;
  }

  /** The same for a comment: rounded to what can be seen, with its unit. */
  String inWords(Length length) {
    return isMetric()
        ? LengthText.number(length, LengthUnit.MM, 1, 0) + " mm"
        : LengthText.number(length, LengthUnit.IN, 3, 0) + " in";
  }
}
