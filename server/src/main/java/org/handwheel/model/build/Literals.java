package org.handwheel.model.build;

import java.math.BigInteger;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.LengthUnitContext;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Dimension;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** Numbers and units as they are written, as exact values. */
final class Literals {
  /** No number of a plan needs more digits; without a limit one could take minutes. */
  private static final int MOST_DIGITS = 60;

  private final Problems problems;

  Literals(Problems problems) {
    this.problems = problems;
  }

  /** Units other than those of length. Sources: 1 ft = 0.3048 m (NIST SP 811); 1 hp = 745.7 W. */
  static Quantity withUnit(BigFraction number, String unit) {
    BigFraction foot = BigFraction.of(3048, 10000);
    BigFraction inch = BigFraction.of(254, 10);
    BigFraction thou = BigFraction.of(254, 10000);
    return switch (unit) {
      case "deg", "\u00b0" -> new Quantity(Dimension.ANGLE, number);
      case "%" -> Quantity.number(number.divide(100));
      case "m/min" -> new Quantity(Dimension.SURFACE_SPEED, number);
      case "ft/min" -> new Quantity(Dimension.SURFACE_SPEED, number.multiply(foot));
      case "mm/min" -> new Quantity(Dimension.FEED_RATE, number);
      case "in/min" -> new Quantity(Dimension.FEED_RATE, number.multiply(inch));
      case "mm/tooth" -> new Quantity(Dimension.FEED_PER_TOOTH, number);
      case "in/tooth" -> new Quantity(Dimension.FEED_PER_TOOTH, number.multiply(inch));
      case "thou/tooth" -> new Quantity(Dimension.FEED_PER_TOOTH, number.multiply(thou));
      case "mm/rev" -> new Quantity(Dimension.FEED_PER_REV, number);
      case "in/rev" -> new Quantity(Dimension.FEED_PER_REV, number.multiply(inch));
      case "kw" -> new Quantity(Dimension.POWER, number.multiply(1000));
      case "hp" -> new Quantity(Dimension.POWER, number.multiply(BigFraction.of(7457, 10)));
      default -> new Quantity(Dimension.SPINDLE_SPEED, number);
    };
  }

  @Nullable BigFraction number(Section section, ParseTree context, Token token) {
    String text = token.getText();
    if (isTooLong(section, context, text)) {
      return null;
    }
    switch (token.getType()) {
      case HandwheelParser.FRACTION -> {
        return fraction(section, context, text);
      }
      case HandwheelParser.MIXED -> {
        int dash = text.indexOf('-');
        BigFraction part = fraction(section, context, text.substring(dash + 1));
        if (part == null) {
          return null;
        }
        if (part.compareTo(BigFraction.ONE) >= 0 || part.signum() == 0) {
          String spaced = text.replace("-", " - ");
          problems.add(
              new Finding(
                      "bad-value",
                      Severity.ERROR,
                      section.origin(context),
                      "`" + text + "` is no mixed number; to subtract, write blanks around `-`")
                  .withFix(Fix.replace("Write `" + spaced + "`", section.origin(context), spaced)));
          return null;
        }
        return part.add(decimal(text.substring(0, dash)));
      }
      default -> {
        return decimal(text);
      }
    }
  }

  private @Nullable BigFraction fraction(Section section, ParseTree node, String text) {
    int slash = text.indexOf('/');
    BigInteger below = new BigInteger(text.substring(slash + 1));
    if (below.signum() == 0) {
      problems.error("bad-value", section.origin(node), "division by zero");
      return null;
    }
    return BigFraction.of(new BigInteger(text.substring(0, slash)), below);
  }

  private boolean isTooLong(Section section, ParseTree node, String digits) {
    if (digits.length() <= MOST_DIGITS) {
      return false;
    }
    problems.error(
        "overflow", section.origin(node), "a number has at most " + MOST_DIGITS + " digits");
    return true;
  }

  static BigFraction decimal(String text) {
    int point = text.indexOf('.');
    if (point < 0) {
      return BigFraction.of(new BigInteger(text));
    }
    String digits = text.substring(0, point) + text.substring(point + 1);
    return BigFraction.of(new BigInteger(digits), BigInteger.TEN.pow(text.length() - point - 1));
  }

  static LengthUnit lengthUnit(LengthUnitContext context) {
    return switch (context.getStart().getType()) {
      case HandwheelParser.IN -> LengthUnit.IN;
      case HandwheelParser.THOU -> LengthUnit.THOU;
      case HandwheelParser.TENTHS -> LengthUnit.TENTH;
      case HandwheelParser.UM -> LengthUnit.UM;
      case HandwheelParser.UIN -> LengthUnit.UIN;
      default -> LengthUnit.MM;
    };
  }
}
