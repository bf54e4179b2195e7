package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One check value from outside the project: what is expected, from where, and how that is known.
 *
 * <p>Expectations are read from the row's own text, so that none is retyped in a test.
 */
public record CheckRow(
    String id,
    String quantity,
    String formula,
    String inputs,
    String expected,
    String source,
    String how) {
  private static final Pattern NUMBER =
      Pattern.compile("(?:(?<![\\w.)])[-+])?(?<!\\d)(?<!\\d\\.)\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?");
  private static final Pattern TOLERANCE = Pattern.compile("tol (\\S+?)(%?)(?: |,|;|$)");

  /** The numbers of the expected text in order. */
  public List<BigDecimal> numbers() {
    return numbers(expected);
  }

  static List<BigDecimal> numbers(String text) {
    List<BigDecimal> numbers = new ArrayList<>();
    Matcher matcher = NUMBER.matcher(text);
    while (matcher.find()) {
      numbers.add(new BigDecimal(matcher.group()));
    }
    return numbers;
  }

  /** The numbers of the expected text after the first place {@code words} stand there. */
  public List<BigDecimal> numbersAfter(String words) {
    int at = expected.indexOf(words);
    assertThat(at).as("\"%s\" in row %s: %s", words, id, expected).isNotNegative();
    return numbers(expected.substring(at + words.length()));
  }

  /** The numbers of the inputs after the first colon, or all of them. */
  public List<BigDecimal> inputNumbers() {
    return numbers(inputs.substring(inputs.indexOf(':') + 1));
  }

  public double number(int index) {
    return numbers().get(index).doubleValue();
  }

  /** The row's own tolerance; half a unit in the last place of the number where it gives none. */
  public double tolerance(int index) {
    BigDecimal number = numbers().get(index);
    Matcher matcher = TOLERANCE.matcher(expected);
    if (matcher.find()) {
      double value = Double.parseDouble(matcher.group(1));
      return matcher.group(2).isEmpty() ? value : Math.abs(number.doubleValue()) * value / 100;
    }
    return 0.5 * Math.pow(10, -number.scale());
  }

  /** Compares with the row's number of this index, within the row's tolerance. */
  public void isNear(double actual, int index) {
    isNear(actual, index, tolerance(index));
  }

  /** Compares within another tolerance, for a row whose tolerance is of another number. */
  public void isNear(double actual, int index, double tolerance) {
    assertThat(actual).as(toString()).isCloseTo(number(index), within(tolerance));
  }

  /** What a failing test says: the row, where it comes from and how it is known. */
  @Override
  public String toString() {
    return id + " " + quantity + " [" + source + "; " + how + "]: " + expected;
  }
}
