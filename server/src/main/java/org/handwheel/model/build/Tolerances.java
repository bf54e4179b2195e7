package org.handwheel.model.build;

import org.antlr.v4.runtime.tree.ParseTree;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.LimitToleranceContext;
import org.handwheel.grammar.HandwheelParser.NominalContext;
import org.handwheel.grammar.HandwheelParser.PairToleranceContext;
import org.handwheel.grammar.HandwheelParser.PlusMinusContext;
import org.handwheel.grammar.HandwheelParser.SignedContext;
import org.handwheel.grammar.HandwheelParser.SizeToleranceContext;
import org.handwheel.grammar.HandwheelParser.SymmetricToleranceContext;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.handwheel.units.LengthOverflowException;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Tolerances to limits. A bare tolerance takes the unit its size is written in; in {@code +a/-b} a
 * unit on the last member holds for both.
 */
final class Tolerances {
  private Tolerances() {}

  /** The limits of a toleranced size; what does not fit in a length is reported. */
  static @Nullable LengthRange read(
      FileBuilder file,
      Section section,
      ParseTree nominalNode,
      Length nominal,
      SizeToleranceContext tolerance) {
    if (tolerance instanceof LimitToleranceContext limit
        && isQuotient(file, section, nominalNode, limit)) {
      return null;
    }
    try {
      return limits(file.values(), section, nominalNode, nominal, tolerance);
    } catch (LengthOverflowException e) {
      file.problems().error("overflow", section.origin(tolerance), Values.TOO_LONG);
      return null;
    }
  }

  /**
   * Whether what looks like limits ({@code 18.97 / 19.00}) must be meant as a quotient ({@code
   * width/2}): limits are two numbers, and not far apart.
   */
  private static boolean isQuotient(
      FileBuilder file, Section section, ParseTree nominalNode, LimitToleranceContext limit) {
    boolean number = nominalNode instanceof NominalContext nominal && nominal.quantity() != null;
    Quantity first = file.values().expression(section, nominalNode);
    Quantity second = file.values().expression(section, limit.quantity());
    if (first == null || second == null) {
      return true;
    }
    boolean near =
        first.dimension() != second.dimension()
            || (isNear(first.value(), second.value()) && isNear(second.value(), first.value()));
    if (number && near) {
      return false;
    }
    file.problems()
        .error(
            "bad-value",
            section.origin(nominalNode).to(section.origin(limit)),
            "limits are two numbers that lie close: 18.97 / 19.00; to divide write parentheses:"
                + " (width/2)");
    return true;
  }

  /** Whether {@code a} is at least three quarters of {@code b}. */
  private static boolean isNear(BigFraction a, BigFraction b) {
    return a.multiply(4).compareTo(b.multiply(3)) >= 0;
  }

  private static @Nullable LengthRange limits(
      Values values,
      Section section,
      ParseTree nominalNode,
      Length nominal,
      SizeToleranceContext tolerance) {
    LengthUnit unit = values.writtenUnit(nominalNode);
    if (tolerance instanceof SymmetricToleranceContext symmetric) {
      Length spread = plusMinus(values, section, symmetric.plusMinus(), unit);
      return spread == null ? null : LengthRange.around(nominal, spread);
    }
    if (tolerance instanceof LimitToleranceContext limit) {
      LengthUnit other = values.writtenUnit(limit.quantity());
      Length first = unit == null ? values.length(section, nominalNode, other) : nominal;
      Length second = values.length(section, limit.quantity(), unit);
      if (first == null || second == null) {
        return null;
      }
      return new LengthRange(Length.min(first, second), Length.max(first, second));
    }
    PairToleranceContext pair = (PairToleranceContext) tolerance;
    LengthUnit last = values.writtenUnit(pair.signed(1).quantity());
    LengthUnit bare = last == null ? unit : last;
    Length one = signed(values, section, pair.signed(0), bare);
    Length two = signed(values, section, pair.signed(1), bare);
    if (one == null || two == null) {
      return null;
    }
    return new LengthRange(nominal.plus(Length.min(one, two)), nominal.plus(Length.max(one, two)));
  }

  static @Nullable Length plusMinus(
      Values values, Section section, PlusMinusContext context, @Nullable LengthUnit unit) {
    return values.length(section, context.quantity(), unit);
  }

  private static @Nullable Length signed(
      Values values, Section section, SignedContext context, @Nullable LengthUnit unit) {
    Length length = values.length(section, context.quantity(), unit);
    if (length == null) {
      return null;
    }
    return context.getStart().getType() == HandwheelParser.MINUS ? length.negated() : length;
  }
}
