package org.handwheel.shop.drill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;

/**
 * The twist drills of the four series: 64ths of an inch, numbers 80 to 1 and letters A to Z (ASME
 * B94.11M), and millimetres (BS 328).
 */
public final class Drills {
  private static final Pattern NUMBER = Pattern.compile("(?:no\\.?|number|#)\\s*(\\d{1,2})");
  private static final Pattern LETTER = Pattern.compile("letter\\s*([a-z])");
  private static final Pattern FRACTION =
      Pattern.compile("(?:(\\d{1,2})-)?(\\d{1,3})/(\\d{1,3})\\s*in");
  private static final Pattern WHOLE_INCHES = Pattern.compile("(\\d{1,2})\\s*in");
  private static final Pattern METRIC = Pattern.compile("(\\d{1,3}(?:\\.\\d{1,4})?)\\s*(?:mm)?");

  private final List<Drill> bySize;
  private final Map<String, Drill> byDesignation;

  private Drills(List<Drill> drills) {
    this.bySize = drills.stream().sorted(Drill.BY_SIZE).toList();
    Map<String, Drill> named = new HashMap<>();
    for (Drill drill : drills) {
      if (named.put(drill.designation(), drill) != null) {
        throw new IllegalStateException("two drills " + drill.designation());
      }
    }
    this.byDesignation = Map.copyOf(named);
  }

  /** Reads the tables kept beside this class. */
  public static Drills load() {
    List<Drill> drills =
        new ArrayList<>(Table.read(Drills.class, "number-letter-drills.csv").map(Drills::named));
    for (Row row : Table.read(Drills.class, "drill-ranges.csv").rows()) {
      drills.addAll(range(row));
    }
    return new Drills(drills);
  }

  private static Drill named(Row row) {
    String designation = row.text("designation");
    DrillSeries series = designation.startsWith("no ") ? DrillSeries.NUMBER : DrillSeries.LETTER;
    return new Drill(designation, series, row.length("inches", LengthUnit.IN), row.provenance());
  }

  private static List<Drill> range(Row row) {
    boolean metric = row.text("series").equals("metric");
    LengthUnit unit = metric ? LengthUnit.MM : LengthUnit.IN;
    BigFraction last = row.exact("to");
    BigFraction step = row.exact("step");
    List<Drill> drills = new ArrayList<>();
    for (BigFraction size = row.exact("from"); size.compareTo(last) <= 0; size = size.add(step)) {
      Length diameter = Length.of(size, unit);
      drills.add(
          metric
              ? new Drill(metric(diameter), DrillSeries.METRIC, diameter, row.provenance())
              : new Drill(inches(size), DrillSeries.FRACTIONAL, diameter, row.provenance()));
    }
    return drills;
  }

  private static String metric(Length diameter) {
    return LengthText.number(diameter, LengthUnit.MM, 2, 0);
  }

  private static String inches(BigFraction size) {
    int whole = size.intValue();
    BigFraction rest = size.subtract(whole);
    if (rest.equals(BigFraction.ZERO)) {
      return whole + " in";
    }
    String fraction = rest.getNumerator() + "/" + rest.getDenominator() + " in";
    return whole == 0 ? fraction : whole + "-" + fraction;
  }

  /**
   * The drill a designation names: {@code no 7}, {@code letter F}, {@code 5/16 in}, {@code 6.8} or
   * {@code 6.8 mm}. Upper and lower case are one, {@code 10/32 in} is {@code 5/16 in}.
   */
  public Optional<Drill> find(String designation) {
    String text = designation.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    return canonical(text).map(byDesignation::get);
  }

  private static Optional<String> canonical(String text) {
    Matcher number = NUMBER.matcher(text);
    if (number.matches()) {
      return Optional.of("no " + Integer.parseInt(number.group(1)));
    }
    Matcher letter = LETTER.matcher(text);
    if (letter.matches()) {
      return Optional.of("letter " + letter.group(1).toUpperCase(Locale.ROOT));
    }
    Matcher fraction = FRACTION.matcher(text);
    if (fraction.matches()) {
      int bottom = Integer.parseInt(fraction.group(3));
      if (bottom == 0) {
        return Optional.empty();
      }
      int whole = fraction.group(1) == null ? 0 : Integer.parseInt(fraction.group(1));
      BigFraction part = BigFraction.of(Integer.parseInt(fraction.group(2)), bottom);
      return Optional.of(inches(part.add(whole)));
    }
    Matcher wholeInches = WHOLE_INCHES.matcher(text);
    if (wholeInches.matches()) {
      return Optional.of(Integer.parseInt(wholeInches.group(1)) + " in");
    }
    Matcher metric = METRIC.matcher(text);
    return metric.matches() ? Optional.of(metricDesignation(metric.group(1))) : Optional.empty();
  }

  /** Written out in full where two places do not hold it, so that 6.805 is not taken for 6.8. */
  private static String metricDesignation(String text) {
    return LengthText.number(Length.mm(text), LengthUnit.MM, 4, 0);
  }

  /** Every drill, smallest first. */
  public List<Drill> all() {
    return bySize;
  }

  /** The drills of one series, smallest first. */
  public List<Drill> of(DrillSeries series) {
    return bySize.stream().filter(drill -> drill.series() == series).toList();
  }

  /** The drill nearest to a diameter; of two equally near the smaller. */
  public Drill nearest(Length diameter) {
    return nearest(diameter, drill -> true).orElseThrow();
  }

  /** The nearest drill among those wanted, for instance of one series or owned by the shop. */
  public Optional<Drill> nearest(Length diameter, Predicate<Drill> wanted) {
    return bySize.stream()
        .filter(wanted)
        .min(Comparator.comparing(drill -> drill.diameter().minus(diameter).abs()));
  }

  /** The largest drill that is not above a diameter. */
  public Optional<Drill> largestNotAbove(Length diameter) {
    return bySize.stream()
        .filter(drill -> !drill.diameter().isMoreThan(diameter))
        .reduce((smaller, larger) -> larger);
  }

  /** The smallest drill that is not below a diameter. */
  public Optional<Drill> smallestNotBelow(Length diameter) {
    return bySize.stream().filter(drill -> !drill.diameter().isLessThan(diameter)).findFirst();
  }
}
