package org.handwheel.rules;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.handwheel.syntax.Severity;

/**
 * The findings that are made while a file is read, before any rule runs: their ids, so that pages,
 * settings and comments know them too.
 */
final class FindingRules {
  private static final Map<String, Severity> READING =
      Map.ofEntries(
          Map.entry("syntax", Severity.ERROR),
          Map.entry("bad-value", Severity.ERROR),
          Map.entry("overflow", Severity.ERROR),
          Map.entry("no-units", Severity.ERROR),
          Map.entry("language-level", Severity.ERROR),
          Map.entry("use-path", Severity.ERROR),
          Map.entry("use-cycle", Severity.ERROR),
          Map.entry("undefined-name", Severity.ERROR),
          Map.entry("duplicate-name", Severity.ERROR),
          Map.entry("misplaced-line", Severity.ERROR),
          Map.entry("repeated-line", Severity.ERROR),
          Map.entry("repeated-clause", Severity.ERROR),
          Map.entry("missing-line", Severity.ERROR),
          Map.entry("missing-clause", Severity.ERROR),
          Map.entry("missing-property", Severity.ERROR),
          Map.entry("unknown-property", Severity.WARNING),
          Map.entry("ignore-reason", Severity.WARNING),
          Map.entry("unused-ignore", Severity.WARNING));

  /** Without these nothing of the file can be relied on, so they are never silenced or lowered. */
  private static final Set<String> FIXED = Set.of("syntax", "language-level", "overflow");

  private FindingRules() {}

  /** Whether the weight of these findings is not a matter of taste. */
  static boolean isFixed(String rule) {
    return FIXED.contains(rule);
  }

  /** Whether these findings mean that something of the file could not be read. */
  static boolean stopsReading(String rule) {
    return READING.get(rule) == Severity.ERROR;
  }

  static Map<String, Severity> all() {
    return new TreeMap<>(READING);
  }
}
