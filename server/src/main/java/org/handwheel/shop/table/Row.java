package org.handwheel.shop.table;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;

/** One row of a {@link Table}; a missing column or a malformed value is a fault of the program. */
public final class Row {
  private final String place;
  private final List<String> columns;
  private final List<String> fields;
  private final Provenance provenance;

  Row(String place, List<String> columns, List<String> fields, Provenance provenance) {
    this.place = place;
    this.columns = columns;
    this.fields = fields;
    this.provenance = provenance;
  }

  public Provenance provenance() {
    return provenance;
  }

  /** The names of the columns from {@code first} to the last. */
  public List<String> columnsFrom(String first) {
    return columns.subList(index(first), columns.size());
  }

  public String text(String column) {
    return fields.get(index(column));
  }

  /** The field, or nothing where it is empty. */
  public Optional<String> optional(String column) {
    return Optional.of(text(column)).filter(text -> !text.isEmpty());
  }

  /** The words of a field separated by semicolons. */
  public List<String> list(String column) {
    return optional(column).stream()
        .flatMap(text -> List.of(text.split(";")).stream())
        .map(String::strip)
        .filter(word -> !word.isEmpty())
        .toList();
  }

  public int whole(String column) {
    return parse(column, Integer::parseInt);
  }

  public double number(String column) {
    return parse(column, Double::parseDouble);
  }

  /** A decimal or a fraction, exactly: {@code 0.190}, {@code 5/16}, {@code 1-1/4}. */
  public BigFraction exact(String column) {
    return parse(column, Row::fraction);
  }

  public Length length(String column, LengthUnit unit) {
    return Length.of(exact(column), unit);
  }

  /**
   * Turns the field into a value of the caller's own kind.
   *
   * @throws IllegalStateException naming file, line and column, if {@code reader} refuses it
   */
  public <T> T parse(String column, Function<String, T> reader) {
    String text = text(column);
    try {
      return reader.apply(text);
    } catch (IllegalArgumentException e) {
      throw new IllegalStateException(place + ", " + column + ": cannot read \"" + text + "\"", e);
    }
  }

  private static BigFraction fraction(String text) {
    int slash = text.indexOf('/');
    if (slash < 0) {
      BigDecimal decimal = new BigDecimal(text);
      return decimal.scale() <= 0
          ? BigFraction.of(decimal.toBigIntegerExact())
          : BigFraction.of(
              decimal.unscaledValue(), BigDecimal.TEN.pow(decimal.scale()).toBigInteger());
    }
    int dash = text.indexOf('-');
    int whole = dash < 0 ? 0 : Integer.parseInt(text.substring(0, dash));
    int top = Integer.parseInt(text.substring(dash + 1, slash));
    int bottom = Integer.parseInt(text.substring(slash + 1));
    return BigFraction.of(whole).add(BigFraction.of(top, bottom));
  }

  private int index(String column) {
    int index = columns.indexOf(column);
    if (index < 0) {
      throw new IllegalStateException(place + ": no column " + column);
    }
    return index;
  }
}
