package org.handwheel.model.build;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.ExprContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.grammar.HandwheelParser.ValueContext;
import org.handwheel.model.Direction;
import org.handwheel.model.Located;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/**
 * The {@code property: value} lines of one section, read by name and type.
 *
 * <p>What is asked for but missing, and what is there but never asked for, is reported.
 */
final class Properties {
  private static final Pattern NAME = Pattern.compile("\\p{L}[\\p{L}\\d_-]*");

  private final Section section;
  private final Values values;
  private final Problems problems;
  private final String owner;
  private final Map<String, PropertyLineContext> lines = new LinkedHashMap<>();
  private final Set<String> asked = new HashSet<>();
  private final int problemsBefore;
  private boolean complete = true;

  Properties(Section section, Values values, Problems problems, String owner) {
    this.section = section;
    this.values = values;
    this.problems = problems;
    this.owner = owner;
    this.problemsBefore = problems.count();
    for (ContentContext line : section.lines()) {
      if (section.isBroken(line)) {
        complete = false;
      } else if (line.statement() instanceof PropertyLineContext property) {
        add(property);
      }
    }
  }

  private void add(PropertyLineContext property) {
    String name = property.property().getText().toLowerCase(Locale.ROOT);
    PropertyLineContext before = lines.putIfAbsent(name, property);
    if (before != null) {
      problems.repeated(
          "repeated-line",
          section.origin(property),
          "`" + name + "` is given twice",
          section.origin(before));
    }
  }

  /** Whether nothing was wrong with any property read so far. */
  boolean areSound() {
    return complete && problems.count() == problemsBefore;
  }

  boolean has(String name) {
    return lines.containsKey(name);
  }

  Set<String> names() {
    return lines.keySet();
  }

  /** Says that there may be such a property, without reading it. */
  void expect(String name) {
    asked.add(name);
  }

  /** The names of all properties that were asked for. */
  Set<String> asked() {
    return Set.copyOf(asked);
  }

  Origin origin(String name) {
    PropertyLineContext line = lines.get(name);
    return line == null ? section.header() : section.origin(line);
  }

  private List<ValueContext> take(String name) {
    asked.add(name);
    PropertyLineContext line = lines.get(name);
    return line == null ? List.of() : line.value();
  }

  /** Reports a property that must be there; nothing is said where lines could not be read. */
  private void missing(String name, String what) {
    if (complete) {
      problems.error(
          "missing-property",
          section.header(),
          owner + " needs its " + what + ": a line `" + name + ": ...`");
      complete = false;
    }
  }

  @Nullable Length length(String name) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return null;
    }
    return values.depth(section, number(single(name, list)));
  }

  Length length(String name, Length fallback) {
    Length length = length(name);
    return length == null ? fallback : length;
  }

  /** A length that must be given; {@link Length#ZERO} stands in after a report. */
  Length requiredLength(String name, String what) {
    if (!has(name)) {
      asked.add(name);
      missing(name, what);
      return Length.ZERO;
    }
    Length length = values.positiveLength(section, number(single(name, take(name))));
    return length == null ? Length.ZERO : length;
  }

  private ValueContext single(String name, List<ValueContext> list) {
    if (list.size() > 1) {
      problems.error(
          "bad-value", section.origin(list.get(1)), "`" + name + "` takes a single value");
    }
    return list.get(0);
  }

  /** The number of a value; a text, a face or `over` is reported. */
  private @Nullable ExprContext number(ValueContext value) {
    if (value.expr().isEmpty() || value.OVER() != null) {
      problems.error("bad-value", section.origin(value), "expected a number here");
      return null;
    }
    return value.expr(0);
  }

  /** A pair of lengths: a range. */
  @Nullable List<Length> pair(String name) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return null;
    }
    if (list.size() != 2) {
      problems.error("bad-value", origin(name), "`" + name + "` takes two values: from, to");
      return null;
    }
    List<Length> lengths = values.lengths(section, list);
    if (lengths != null && lengths.get(1).isLessThan(lengths.get(0))) {
      problems.error("bad-value", origin(name), "`" + name + "` runs from low to high");
      return null;
    }
    return lengths;
  }

  @Nullable BigFraction number(String name) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return null;
    }
    Quantity quantity = values.quantity(section, number(single(name, list)), Dimension.NUMBER);
    return quantity == null ? null : quantity.value();
  }

  /** Reports a number that must be given and is not, or is not above zero. */
  void requireNumber(String name, String what) {
    if (has(name)) {
      problems.error("bad-value", origin(name), "`" + name + "` must be more than zero");
    } else {
      missing(name, what);
    }
  }

  int count(String name, int fallback) {
    BigFraction number = number(name);
    if (number == null) {
      return fallback;
    }
    boolean whole = number.getDenominator().equals(BigInteger.ONE);
    if (!whole || number.signum() <= 0 || number.getNumerator().bitLength() > 30) {
      problems.error("bad-value", origin(name), "`" + name + "` must be a whole number above zero");
      return fallback;
    }
    return number.intValue();
  }

  @Nullable Quantity quantity(String name, Dimension dimension) {
    List<ValueContext> list = take(name);
    return list.isEmpty() ? null : values.quantity(section, number(single(name, list)), dimension);
  }

  /** A value above zero. */
  @Nullable Quantity positive(String name, Dimension dimension) {
    Quantity quantity = quantity(name, dimension);
    if (quantity != null && quantity.value().signum() <= 0) {
      refuse(name, "must be more than zero");
      return null;
    }
    return quantity;
  }

  /** Reports a value that was read but cannot be. */
  void refuse(String name, String why) {
    problems.error("bad-value", origin(name), "`" + name + "` " + why);
  }

  /**
   * The name of something that is described elsewhere, as it is written.
   *
   * @param what what it names, for a message
   */
  @Nullable Located<String> nameOf(String name, String what) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return null;
    }
    ValueContext value = single(name, list);
    String text = value.getText();
    if (value.OVER() != null || !NAME.matcher(text).matches()) {
      problems.error("bad-value", section.origin(value), "expected the name of " + what + " here");
      return null;
    }
    return new Located<>(text, section.origin(value));
  }

  /** A list of one dimension; a unit on the last value holds for all before it without one. */
  List<Quantity> quantities(String name, Dimension dimension) {
    List<ValueContext> list = take(name);
    List<Quantity> found = new ArrayList<>();
    BigFraction shared = list.isEmpty() ? BigFraction.ONE : Values.rate(list.get(list.size() - 1));
    for (int i = 0; i < list.size(); i++) {
      ValueContext value = list.get(i);
      Quantity quantity = values.expression(section, number(value));
      if (quantity == null) {
        return List.of();
      }
      boolean bare = quantity.is(Dimension.NUMBER) && i < list.size() - 1;
      if (!bare && !quantity.is(dimension)) {
        problems.error(
            "bad-value",
            section.origin(value),
            "expected " + dimension.words() + ", got " + quantity.dimension().words());
        return List.of();
      }
      found.add(
          new Quantity(dimension, bare ? quantity.value().multiply(shared) : quantity.value()));
    }
    return found;
  }

  /** {@code 0.02 over 100}. */
  @Nullable Slope slope(String name) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return null;
    }
    ValueContext value = single(name, list);
    if (value.OVER() == null) {
      problems.error(
          "bad-value", section.origin(value), "write how much over what length: 0.02 over 100");
      return null;
    }
    Length rise = values.depth(section, value.expr(0));
    Length run = values.positiveLength(section, value.expr(1));
    return rise == null || run == null ? null : Slope.of(rise, run);
  }

  /** One of the constants of an enum, written in lower case with dashes. */
  <E extends Enum<E>> E word(String name, E fallback) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return fallback;
    }
    ValueContext value = single(name, list);
    List<String> words = new ArrayList<>();
    for (E constant : fallback.getDeclaringClass().getEnumConstants()) {
      String word = constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
      if (word.equals(value.getText().toLowerCase(Locale.ROOT))) {
        return constant;
      }
      words.add(word);
    }
    Finding finding =
        new Finding(
            "bad-value",
            Severity.ERROR,
            section.origin(value),
            "`" + name + "` is one of " + String.join(", ", words));
    Optional<String> near = Nearest.to(value.getText(), words);
    problems.add(
        near.isEmpty()
            ? finding
            : finding.withFix(
                Fix.replace("Write `" + near.get() + "`", section.origin(value), near.get())));
    return fallback;
  }

  /** A place at the machine, {@code up} or {@code down}. */
  @Nullable Direction direction(String name) {
    List<ValueContext> list = take(name);
    if (list.isEmpty()) {
      return null;
    }
    ValueContext value = single(name, list);
    for (Direction direction : Direction.values()) {
      String word = direction.name().toLowerCase(Locale.ROOT).replace('_', '-');
      if (word.equals(value.getText().toLowerCase(Locale.ROOT))) {
        return direction;
      }
    }
    problems.error(
        "bad-value",
        section.origin(value),
        "`"
            + name
            + "` is one of operator-left, operator-right, operator-front, operator-back, up, down");
    return null;
  }

  /** Reports every property that was never asked for. */
  void finish() {
    for (Map.Entry<String, PropertyLineContext> line : lines.entrySet()) {
      if (asked.contains(line.getKey())) {
        continue;
      }
      Origin origin = section.origin(line.getValue().property());
      String message = owner + " has no property `" + line.getKey() + "`";
      Finding finding = new Finding("unknown-property", Severity.WARNING, origin, message);
      Optional<String> near = Nearest.to(line.getKey(), asked);
      problems.add(
          near.isEmpty()
              ? finding
              : new Finding(
                      "unknown-property",
                      Severity.WARNING,
                      origin,
                      message + "; did you mean `" + near.get() + "`?")
                  .withFix(Fix.replace("Write `" + near.get() + "`", origin, near.get())));
    }
  }
}
