package org.handwheel.model.build;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.DivisorContext;
import org.handwheel.grammar.HandwheelParser.ExprContext;
import org.handwheel.grammar.HandwheelParser.FactorContext;
import org.handwheel.grammar.HandwheelParser.NumberContext;
import org.handwheel.grammar.HandwheelParser.QuantityContext;
import org.handwheel.grammar.HandwheelParser.TermContext;
import org.handwheel.grammar.HandwheelParser.UnitContext;
import org.handwheel.grammar.HandwheelParser.WholeNumberContext;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Part;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthOverflowException;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Computes the values of one file: exact rationals, rounded once where a length is asked for.
 *
 * <p>A bare number takes the dimension of its place: beside {@code *} and {@code /} it is a plain
 * number, beside {@code +} and {@code -} it is what the other side is, and alone it is what the
 * place asks for, in the file's units. Whatever is wrong is reported once, and the value is then
 * missing ({@code null}).
 */
final class Values {
  /** Four of the longest numbers: beyond it a chain of products is stopped. */
  private static final int MOST_BITS = 4 * 200;

  /** The longest length of a file: what is worked out from many such still fits in a length. */
  static final Length LONGEST = Length.mm("10000000");

  /** The largest value of another dimension, in its base unit: no machine is near it. */
  private static final BigFraction LARGEST = BigFraction.of(1_000_000_000);

  static final String TOO_LONG = "this length is larger than 10 km";

  private final Problems problems;
  private final NameTable names;
  private final Literals literals;
  private final Map<String, Quantity> known = new HashMap<>();
  private @Nullable LengthUnit units;
  private boolean missingUnitsReported;

  Values(Problems problems, NameTable names) {
    this.problems = problems;
    this.names = names;
    this.literals = new Literals(problems);
  }

  void setUnits(LengthUnit fileUnits) {
    units = fileUnits;
  }

  /** The line that gives the units could not be read: that they are missing is not reported. */
  void doubtUnits() {
    missingUnitsReported = true;
  }

  @Nullable LengthUnit units() {
    return units;
  }

  /** Makes a value known by a name: a {@code let}, or a size of the part. */
  void define(String name, Quantity value) {
    known.put(name.toLowerCase(Locale.ROOT), value);
    names.valueKnown(name);
  }

  /** All values that names stand for. */
  Map<String, Quantity> known() {
    return Map.copyOf(known);
  }

  // ---- Typed places
  // ------------------------------------------------------------------------------

  @Nullable Length length(Section section, @Nullable ParseTree node) {
    return length(section, node, null);
  }

  /** A length, taking {@code bareUnit} for a bare number, or the file's units if that is null. */
  @Nullable Length length(
      Section section, @Nullable ParseTree node, @Nullable LengthUnit bareUnit) {
    Quantity quantity = expression(section, node);
    if (quantity == null || node == null) {
      return null;
    }
    return asLength(quantity, section.origin(node), bareUnit);
  }

  private @Nullable Length asLength(
      Quantity quantity, Origin origin, @Nullable LengthUnit bareUnit) {
    Quantity length = quantity;
    if (quantity.is(Dimension.NUMBER)) {
      LengthUnit unit = bareUnit == null ? fileUnits(origin) : bareUnit;
      if (unit == null) {
        return null;
      }
      length = Quantity.length(quantity.value(), unit);
    }
    if (!length.is(Dimension.LENGTH)) {
      problems.error("bad-value", origin, "expected a length, got " + quantity.dimension().words());
      return null;
    }
    try {
      Length exact = length.toLength();
      if (!exact.abs().isMoreThan(LONGEST)) {
        return exact;
      }
    } catch (LengthOverflowException e) {
      // Far too long, then.
    }
    problems.error("overflow", origin, TOO_LONG);
    return null;
  }

  /** A length that must be more than nothing. */
  @Nullable Length positiveLength(Section section, @Nullable ParseTree node) {
    Length length = length(section, node);
    if (length != null && node != null && !length.isPositive()) {
      problems.error("bad-value", section.origin(node), "this length must be more than zero");
      return null;
    }
    return length;
  }

  /** A length that must not be negative. */
  @Nullable Length depth(Section section, @Nullable ParseTree node) {
    Length length = length(section, node);
    if (length != null && node != null && length.isNegative()) {
      problems.error("bad-value", section.origin(node), "this length must not be negative");
      return null;
    }
    return length;
  }

  /**
   * Several lengths that belong together ({@code a x b x c}): a sole unit on the last applies to
   * all; units on some but not on others are reported.
   */
  @Nullable List<Length> lengths(Section section, List<? extends ParseTree> nodes) {
    LengthUnit shared = sharedUnit(section, nodes);
    List<Length> lengths = new ArrayList<>();
    for (ParseTree node : nodes) {
      Length length = length(section, node, shared);
      if (length == null) {
        return null;
      }
      lengths.add(length);
    }
    return lengths;
  }

  private @Nullable LengthUnit sharedUnit(Section section, List<? extends ParseTree> nodes) {
    List<@Nullable LengthUnit> written = new ArrayList<>();
    for (ParseTree node : nodes) {
      written.add(writtenUnit(node));
    }
    LengthUnit last = written.get(written.size() - 1);
    long withUnit = written.stream().filter(unit -> unit != null).count();
    if (last != null && withUnit == 1) {
      return last;
    }
    if (withUnit > 0) {
      for (int i = 0; i < nodes.size(); i++) {
        if (written.get(i) == null && isBareNumber(nodes.get(i))) {
          problems.error(
              "bad-value",
              section.origin(nodes.get(i)),
              "give every number of the list a unit, or only the last, which then holds for all");
          break;
        }
      }
    }
    return null;
  }

  /** The unit a single number is written with; nothing for bare numbers and for sums. */
  @Nullable LengthUnit writtenUnit(ParseTree node) {
    QuantityContext quantity = soleQuantity(node);
    if (quantity == null || quantity.unit() == null || quantity.unit().lengthUnit() == null) {
      return null;
    }
    return Literals.lengthUnit(quantity.unit().lengthUnit());
  }

  /**
   * How a single number is written; nothing for sums and names, and for a unit that is not the
   * file's: the places of a title block are those of the drawing's unit.
   */
  Part.@Nullable Notation notation(ParseTree node) {
    QuantityContext quantity = soleQuantity(node);
    LengthUnit unit = writtenUnit(node);
    boolean foreign = quantity != null && quantity.unit() != null && unit != units();
    return quantity == null || foreign ? null : notation(quantity.number());
  }

  /** How a number is written. */
  static Part.Notation notation(NumberContext number) {
    String text = number.getText();
    int point = text.indexOf('.');
    return text.indexOf('/') >= 0
        ? new Part.Notation.Fraction()
        : new Part.Notation.Decimal(point < 0 ? 0 : text.length() - point - 1);
  }

  /** What one of the unit of a single number is in the base unit; 1 for bare numbers and sums. */
  static BigFraction rate(ParseTree node) {
    QuantityContext quantity = soleQuantity(node);
    return quantity == null || quantity.unit() == null || quantity.unit().lengthUnit() != null
        ? BigFraction.ONE
        : Literals.withUnit(BigFraction.ONE, quantity.unit().getText().toLowerCase(Locale.ROOT))
            .value();
  }

  private static boolean isBareNumber(ParseTree node) {
    QuantityContext quantity = soleQuantity(node);
    return quantity != null && quantity.unit() == null;
  }

  private static @Nullable QuantityContext soleQuantity(ParseTree node) {
    ParseTree at = node;
    while (!(at instanceof QuantityContext)) {
      if (at.getChildCount() != 1) {
        return null;
      }
      at = at.getChild(0);
    }
    return (QuantityContext) at;
  }

  int wholeNumber(Section section, @Nullable WholeNumberContext node) {
    if (node == null || node.INT() == null) {
      return 0;
    }
    String digits = node.INT().getText();
    BigInteger value = new BigInteger(digits.length() > 12 ? "999999999999" : digits);
    if (value.bitLength() > 30) {
      problems.error("overflow", section.origin(node), "this count is too large");
      return 0;
    }
    return value.intValue();
  }

  /** A value of a dimension other than length that must be more than zero. */
  @Nullable Quantity positive(Section section, @Nullable ParseTree node, Dimension wanted) {
    Quantity quantity = quantity(section, node, wanted);
    if (quantity != null && node != null && quantity.value().signum() <= 0) {
      problems.error(
          "bad-value", section.origin(node), wanted.words() + " must be more than zero here");
      return null;
    }
    return quantity;
  }

  /** A value of a dimension other than length; a bare number is taken in its base unit. */
  @Nullable Quantity quantity(Section section, @Nullable ParseTree node, Dimension wanted) {
    Quantity quantity = expression(section, node);
    if (quantity == null || node == null) {
      return null;
    }
    if (quantity.is(wanted)) {
      return quantity;
    }
    if (quantity.is(Dimension.NUMBER) && wanted == Dimension.ANGLE) {
      return new Quantity(wanted, quantity.value());
    }
    String hint =
        wanted == Dimension.SPINDLE_SPEED && quantity.is(Dimension.NUMBER) ? "; write rpm" : "";
    problems.error(
        "bad-value",
        section.origin(node),
        "expected " + wanted.words() + ", got " + quantity.dimension().words() + hint);
    return null;
  }

  // ---- Expressions
  // -------------------------------------------------------------------------------

  /** The value of an expression, a quantity, a name or any wrapper of one. */
  @Nullable Quantity expression(Section section, @Nullable ParseTree node) {
    Quantity quantity = node == null ? null : compute(section, node);
    if (node == null || quantity == null || !isTooLarge(quantity)) {
      return quantity;
    }
    String message =
        quantity.is(Dimension.LENGTH)
            ? TOO_LONG
            : "this is larger than is worked with: 1 000 000 000 in its unit";
    problems.error("overflow", section.origin(node), message);
    return null;
  }

  private static boolean isTooLarge(Quantity quantity) {
    BigFraction most =
        quantity.is(Dimension.LENGTH) ? BigFraction.of(LONGEST.picometres()) : LARGEST;
    return !quantity.is(Dimension.NUMBER) && quantity.value().abs().compareTo(most) > 0;
  }

  private @Nullable Quantity compute(Section section, @Nullable ParseTree node) {
    if (node instanceof ExprContext expr) {
      return sum(section, expr);
    }
    if (node instanceof TermContext term) {
      return product(section, term);
    }
    if (node instanceof FactorContext factor && factor.expr() != null) {
      return compute(section, factor.expr());
    }
    if (node instanceof QuantityContext quantity) {
      return quantity(section, quantity);
    }
    if (node instanceof HandwheelParser.NameContext name) {
      return named(section, name);
    }
    if (node instanceof HandwheelParser.NominalContext nominal && nominal.expr() != null) {
      return compute(section, nominal.expr());
    }
    if (node instanceof HandwheelParser.BarHeightContext height && height.expr() != null) {
      return compute(section, height.expr());
    }
    if (node instanceof DivisorContext divisor) {
      return divisor(section, divisor);
    }
    if (node != null && node.getChildCount() > 0) {
      return compute(section, node.getChild(0));
    }
    return null;
  }

  private @Nullable Quantity sum(Section section, ExprContext expr) {
    Quantity total = null;
    int sign = 1;
    for (int i = 0; i < expr.getChildCount(); i++) {
      ParseTree child = expr.getChild(i);
      if (child instanceof TerminalNode operator) {
        sign = operator.getSymbol().getType() == HandwheelParser.MINUS ? -1 : 1;
        continue;
      }
      Quantity term = compute(section, child);
      if (term == null) {
        return null;
      }
      if (sign < 0) {
        term = new Quantity(term.dimension(), term.value().negate());
      }
      total = total == null ? term : bounded(section, expr, add(section, expr, total, term));
      if (total == null) {
        return null;
      }
      sign = 1;
    }
    return total;
  }

  /** The result of an operation, unless it has grown out of all bounds. */
  private @Nullable Quantity bounded(Section section, ParseTree node, @Nullable Quantity result) {
    if (result == null
        || (result.value().getNumerator().bitLength() <= MOST_BITS
            && result.value().getDenominator().bitLength() <= MOST_BITS)) {
      return result;
    }
    problems.error("overflow", section.origin(node), "this has grown too long to compute exactly");
    return null;
  }

  private @Nullable Quantity add(Section section, ParseTree node, Quantity a, Quantity b) {
    if (a.dimension() == b.dimension()) {
      return new Quantity(a.dimension(), a.value().add(b.value()));
    }
    // A bare number beside a length is a length in the file's units.
    if (a.is(Dimension.NUMBER) && b.is(Dimension.LENGTH)) {
      LengthUnit unit = fileUnits(section.origin(node));
      return unit == null ? null : add(section, node, Quantity.length(a.value(), unit), b);
    }
    if (b.is(Dimension.NUMBER) && a.is(Dimension.LENGTH)) {
      LengthUnit unit = fileUnits(section.origin(node));
      return unit == null ? null : add(section, node, a, Quantity.length(b.value(), unit));
    }
    if (a.is(Dimension.NUMBER) || b.is(Dimension.NUMBER)) {
      Dimension dimension = a.is(Dimension.NUMBER) ? b.dimension() : a.dimension();
      return new Quantity(dimension, a.value().add(b.value()));
    }
    problems.error(
        "bad-value",
        section.origin(node),
        a.dimension().words() + " and " + b.dimension().words() + " do not add up");
    return null;
  }

  private @Nullable Quantity product(Section section, TermContext term) {
    Quantity total = null;
    boolean divide = false;
    for (int i = 0; i < term.getChildCount(); i++) {
      ParseTree child = term.getChild(i);
      if (child instanceof TerminalNode operator) {
        divide = operator.getSymbol().getType() == HandwheelParser.SLASH;
        continue;
      }
      Quantity factor = compute(section, child);
      if (factor == null) {
        return null;
      }
      if (total == null) {
        total = factor;
      } else {
        Quantity result =
            divide ? divide(section, term, total, factor) : multiply(section, term, total, factor);
        total = bounded(section, term, result);
      }
      if (total == null) {
        return null;
      }
    }
    return total;
  }

  private @Nullable Quantity multiply(Section section, ParseTree node, Quantity a, Quantity b) {
    if (a.is(Dimension.LENGTH) && b.is(Dimension.LENGTH)) {
      problems.error(
          "bad-value",
          section.origin(node),
          "a length times a length is an area; the language has none");
      return null;
    }
    if (!a.is(Dimension.NUMBER) && !b.is(Dimension.NUMBER)) {
      problems.error(
          "bad-value",
          section.origin(node),
          a.dimension().words() + " and " + b.dimension().words() + " cannot be multiplied");
      return null;
    }
    Dimension dimension = a.is(Dimension.NUMBER) ? b.dimension() : a.dimension();
    return new Quantity(dimension, a.value().multiply(b.value()));
  }

  private @Nullable Quantity divide(Section section, ParseTree node, Quantity a, Quantity b) {
    if (b.value().signum() == 0) {
      problems.error("bad-value", section.origin(node), "division by zero");
      return null;
    }
    BigFraction value = a.value().divide(b.value());
    if (a.dimension() == b.dimension()) {
      return Quantity.number(value);
    }
    if (b.is(Dimension.NUMBER)) {
      return new Quantity(a.dimension(), value);
    }
    problems.error(
        "bad-value",
        section.origin(node),
        a.dimension().words() + " cannot be divided by " + b.dimension().words());
    return null;
  }

  private @Nullable Quantity divisor(Section section, DivisorContext divisor) {
    if (divisor.INT() != null || divisor.DEC() != null) {
      BigFraction number = literals.number(section, divisor, divisor.getStart());
      return number == null ? null : Quantity.number(number);
    }
    return compute(section, divisor.expr() != null ? divisor.expr() : divisor.name());
  }

  private @Nullable Quantity named(Section section, HandwheelParser.NameContext name) {
    String text = name.getText();
    Quantity value = known.get(text.toLowerCase(Locale.ROOT));
    if (value != null) {
      if (names.knows(Kind.VALUE, text)) {
        names.use(Kind.VALUE, "value", text, section.origin(name));
      }
      return value;
    }
    names.use(Kind.VALUE, "value", text, section.origin(name));
    return null;
  }

  private @Nullable Quantity quantity(Section section, QuantityContext context) {
    BigFraction number = literals.number(section, context, context.number().getStart());
    if (number == null) {
      return null;
    }
    UnitContext unit = context.unit();
    if (unit == null) {
      return Quantity.number(number);
    }
    if (unit.lengthUnit() != null) {
      return Quantity.length(number, Literals.lengthUnit(unit.lengthUnit()));
    }
    return Literals.withUnit(number, unit.getText().toLowerCase(Locale.ROOT));
  }

  private @Nullable LengthUnit fileUnits(Origin origin) {
    if (units == null && !missingUnitsReported) {
      missingUnitsReported = true;
      problems.error(
          "no-units", origin, "is this in mm or in inches? say `units mm` or `units in` before it");
    }
    return units;
  }
}
