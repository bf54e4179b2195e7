package org.handwheel.shop.thread;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.Drills;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * The screw threads of the tables: ISO metric coarse and fine (ISO 261, ISO 262), UNC and UNF from
 * no 0 to 1 in (ASME B1.1), BSW and BSF (BS 84), BA (BS 93), ME and BSP parallel (ISO 228-1).
 */
public final class Threads {
  private static final Pattern METRIC =
      Pattern.compile("M ?(\\d{1,3}(?:\\.\\d{1,3})?)(?: ?[X\u00D7] ?(\\d(?:\\.\\d{1,3})?))?");
  private static final Pattern SERIES_FIRST =
      Pattern.compile("(UNC|UNF|BSW|BSF|BA|ME|BSP|G) ?(\\S.*)");
  private static final Pattern SERIES_LAST =
      Pattern.compile("(\\S.*?) ?(UNC|UNF|BSW|BSF|BA|ME|BSP)");
  private static final Pattern NUMBERED = Pattern.compile("(?:NO\\.?|#) ?(\\d.*)");

  private final List<ScrewThread> all;
  private final Map<String, ScrewThread> byName;

  private Threads(List<ScrewThread> threads) {
    this.all = List.copyOf(threads);
    this.byName = Map.copyOf(names(threads));
  }

  /** Reads the table kept beside this class. */
  public static Threads load(Drills drills) {
    return new Threads(Table.read(Threads.class, "threads.csv").map(row -> read(row, drills)));
  }

  private static ScrewThread read(Row row, Drills drills) {
    ThreadSeries series = row.parse("series", ThreadSeries::ofTable);
    Drill drill = row.parse("drill", text -> drill(drills, text));
    BigFraction pitch = row.exact("pitch");
    return new ScrewThread(
        row.text("designation"),
        series,
        row.length("major", series.majorUnit()),
        series.countsPerInch()
            ? LengthUnit.IN.factor().divide(pitch)
            : LengthUnit.MM.factor().multiply(pitch),
        drill,
        minor(row, series.majorUnit()),
        row.provenance());
  }

  static Drill drill(Drills drills, String designation) {
    return drills
        .find(designation)
        .orElseThrow(() -> new IllegalArgumentException("no drill " + designation));
  }

  private static @Nullable LengthRange minor(Row row, LengthUnit unit) {
    return row.optional("minor low").isEmpty()
        ? null
        : new LengthRange(row.length("minor low", unit), row.length("minor high", unit));
  }

  /** Every designation, and the size alone where its series has only one thread of that size. */
  private static Map<String, ScrewThread> names(List<ScrewThread> threads) {
    Map<String, ScrewThread> names = new HashMap<>();
    Map<String, Integer> sizes = new HashMap<>();
    for (ScrewThread thread : threads) {
      if (names.put(thread.designation(), thread) != null) {
        throw new IllegalStateException("two threads " + thread.designation());
      }
      sizes.merge(sizeAlone(thread), 1, Integer::sum);
    }
    for (ScrewThread thread : threads) {
      if (thread.series().countsPerInch()) {
        names.putIfAbsent(sizeWithCount(thread), thread);
      }
      String size = sizeAlone(thread);
      if (thread.series() != ThreadSeries.ISO_FINE && sizes.getOrDefault(size, 0) == 1) {
        names.putIfAbsent(size, thread);
      }
      if (thread.series() == ThreadSeries.ISO_COARSE) {
        names.putIfAbsent(
            thread.designation() + "x" + plain(thread.exactPitch().divide(LengthUnit.MM.factor())),
            thread);
      }
    }
    return names;
  }

  private static String sizeAlone(ScrewThread thread) {
    return thread.designation().replaceFirst("(?<=[\\d])-\\d+$", "");
  }

  private static String sizeWithCount(ScrewThread thread) {
    return sizeAlone(thread) + "-" + thread.threadsPerInch().intValue();
  }

  private static String plain(BigFraction value) {
    return plain(value.bigDecimalValue().toPlainString());
  }

  private static String plain(String decimal) {
    BigDecimal stripped = new BigDecimal(decimal).stripTrailingZeros();
    return stripped.toPlainString();
  }

  /**
   * The thread a designation names: {@code M6}, {@code M8x1}, {@code UNC 1/4-20}, {@code UNC no
   * 10-24}, {@code BSW 1/4}, {@code BSF 1/4}, {@code BA 2}, {@code ME 1/4-32}, {@code BSP 1/8}.
   *
   * <p>Upper and lower case are one; {@code M6x1} is {@code M6}; the series may also follow ({@code
   * 1/4-20 UNC}, {@code 2 BA}); the count of threads may be left out where the series has but one,
   * and must be right where it is given.
   */
  public Optional<ScrewThread> find(String designation) {
    String text = designation.strip().toUpperCase(Locale.ROOT).replaceAll("\\s+", " ");
    Matcher metric = METRIC.matcher(text);
    if (metric.matches()) {
      String name = "M" + plain(metric.group(1));
      return named(metric.group(2) == null ? name : name + "x" + plain(metric.group(2)));
    }
    Matcher first = SERIES_FIRST.matcher(text);
    if (first.matches()) {
      return named(series(first.group(1)) + " " + size(first.group(2)));
    }
    Matcher last = SERIES_LAST.matcher(text);
    return last.matches() ? named(last.group(2) + " " + size(last.group(1))) : Optional.empty();
  }

  private Optional<ScrewThread> named(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  private static String series(String text) {
    return text.equals("G") ? "BSP" : text;
  }

  private static String size(String text) {
    Matcher numbered = NUMBERED.matcher(text);
    String size = numbered.matches() ? "no " + numbered.group(1) : text;
    return size.replaceAll(" ?- ?", "-");
  }

  /** Every thread, by series and size. */
  public List<ScrewThread> all() {
    return all;
  }

  /** The threads of one series, smallest first. */
  public List<ScrewThread> of(ThreadSeries series) {
    return all.stream().filter(thread -> thread.series() == series).toList();
  }
}
