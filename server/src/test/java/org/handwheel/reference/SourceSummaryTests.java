package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * How many check rows come from each kind of source. The table is written to {@code
 * target/reference-summary.md} and must be the same as {@code checks/summary.md}.
 */
class SourceSummaryTests {
  private static final List<String> FILES = List.of("checks.csv", "reference.csv", "gauges.csv");

  /** The kinds of source; a row that rests on several counts as the least sure of them. */
  private enum Kind {
    STANDARD_READ("standard and table, read in a reproduction"),
    HANDBOOK_READ("handbook, manual or textbook, read"),
    LIBRARY("computed with a reference library or program"),
    MATHEMATICS("computed from the formula in the row"),
    STANDARD_RECALLED("standard and table, from memory"),
    RECALLED("handbook or other, from memory"),
    PRACTICE("common practice, no source");

    private static final Pattern STANDARD = Pattern.compile("\\b(ISO|ASME|BS|DIN|JIS|NIST)\\b");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    static Kind of(String source, String how) {
      boolean standard = STANDARD.matcher(source).find();
      if (how.startsWith("common practice")) {
        return PRACTICE;
      }
      if (how.contains("from memory")) {
        return standard ? STANDARD_RECALLED : RECALLED;
      }
      if (how.startsWith("read in")) {
        return standard ? STANDARD_READ : HANDBOOK_READ;
      }
      if (how.startsWith("computed here") || how.startsWith("computed with the test program")) {
        return MATHEMATICS;
      }
      if (how.startsWith("computed with") || how.startsWith("JTS gives")) {
        return LIBRARY;
      }
      throw new IllegalArgumentException("no kind of source: " + how);
    }
  }

  private record Counted(String id, String file, Kind kind) {}

  private static List<Counted> all() {
    List<Counted> rows = new ArrayList<>();
    Map<String, CheckRow> table = CheckTable.load();
    for (RowChecks checks : CheckRowsCoveredTests.CLASSES) {
      for (String id : checks.checks().keySet()) {
        CheckRow row = table.get(id);
        rows.add(new Counted(id, FILES.get(0), Kind.of(row.source(), row.how())));
      }
    }
    for (ReferenceRow row : ReferenceRow.load()) {
      rows.add(new Counted(row.id(), FILES.get(1), Kind.of(row.source(), row.how())));
    }
    for (String gauge : GaugeTests.compared()) {
      rows.add(new Counted(gauge, FILES.get(2), Kind.LIBRARY));
    }
    return rows;
  }

  private static Set<String> consistencyOnly() {
    return CheckTable.read("consistency.csv").stream()
        .map(fields -> fields.get(0))
        .collect(Collectors.toUnmodifiableSet());
  }

  @Test
  void noRowIsWithoutASourceAndNoIdIsGivenTwice() {
    assertThat(ReferenceRow.load())
        .allSatisfy(
            row -> {
              assertThat(row.source()).as(row.id()).isNotBlank();
              assertThat(row.how()).as(row.id()).isNotBlank();
            });
    assertThat(all().stream().map(Counted::id)).doesNotHaveDuplicates();
    assertThat(ReferenceRow.load().stream().map(row -> row.kind() + row.inputs()))
        .doesNotHaveDuplicates();
  }

  @Test
  void summaryIsWhatTheRowsSay() throws IOException {
    Set<String> excluded = consistencyOnly();
    List<Counted> rows = all();
    assertThat(rows.stream().map(Counted::id)).containsAll(excluded);
    List<Counted> checks = rows.stream().filter(row -> !excluded.contains(row.id())).toList();
    assertThat(checks).hasSizeGreaterThanOrEqualTo(250);
    String summary = summary(checks, excluded.size());
    Files.writeString(Path.of("target", "reference-summary.md"), summary);
    assertThat(summary)
        .as("target/reference-summary.md against src/test/resources/checks/summary.md")
        .isEqualTo(resource("/checks/summary.md"));
  }

  private static String summary(List<Counted> checks, int excluded) {
    StringBuilder text = new StringBuilder(400);
    text.append("| kind of source | ").append(String.join(" | ", FILES)).append(" | all |\n");
    text.append("|---|").append("---:|".repeat(FILES.size() + 1)).append('\n');
    for (Kind kind : Kind.values()) {
      line(text, kind.words, checks.stream().filter(row -> row.kind() == kind).toList());
    }
    line(text, "all", checks);
    text.append("\nNot counted, as the data was chosen with the row in view: ")
        .append(excluded)
        .append(" rows of consistency.csv.\n");
    return text.toString();
  }

  private static void line(StringBuilder text, String words, List<Counted> rows) {
    Map<String, Long> byFile = new LinkedHashMap<>();
    FILES.forEach(
        file -> byFile.put(file, rows.stream().filter(row -> row.file().equals(file)).count()));
    text.append("| ").append(words).append(" | ");
    byFile.values().forEach(count -> text.append(count).append(" | "));
    text.append(rows.size()).append(" |\n");
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = SourceSummaryTests.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
