package org.handwheel.cli;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.handwheel.cli.Report.Found;
import org.handwheel.syntax.Severity;

/**
 * Findings for programs. The form is versioned: within a version keys are only added.
 *
 * <p>Paths are relative to the current folder, with forward slashes. Lines and columns count from 1
 * and offsets from 0; columns and offsets count UTF-16 units, and a byte order mark is not counted.
 * The end of a place is the column just behind it.
 */
final class JsonReport implements ReportFormat {
  private static final int VERSION = 1;

  private final Output output;
  private final PathNames names;

  JsonReport(Output output, PathNames names) {
    this.output = output;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    output.line(text(report));
  }

  private String text(Report report) {
    return Json.of(
        new Root(
            VERSION,
            "utf-16",
            report.files().stream()
                .map(
                    file ->
                        new CheckedFile(
                            name(file.file()),
                            file.kind().name().toLowerCase(Locale.ROOT),
                            file.uses().stream().map(this::name).toList()))
                .toList(),
            report.unreadable().entrySet().stream()
                .map(entry -> new Unreadable(name(entry.getKey()), entry.getValue()))
                .sorted(Comparator.comparing(Unreadable::path))
                .toList(),
            report.findings().stream().map(this::finding).toList(),
            new Counts(
                report.count(Severity.ERROR),
                report.count(Severity.WARNING),
                report.count(Severity.INFO),
                report.known())));
  }

  private Finding finding(Found found) {
    return new Finding(
        found.rule(),
        found.fingerprint(),
        TextReport.word(found.severity()),
        name(found.file()),
        range(found.place()),
        found.message(),
        found.related().stream()
            .map(
                related ->
                    new Related(name(related.file()), range(related.place()), related.message()))
            .toList(),
        found.fixes().stream()
            .map(
                fix ->
                    new Fix(
                        fix.title(),
                        fix.edits().stream()
                            .map(
                                edit ->
                                    new Edit(name(edit.file()), range(edit.place()), edit.text()))
                            .toList()))
            .toList());
  }

  private String name(Path file) {
    return names.slashed(file);
  }

  private static Range range(Place place) {
    return new Range(
        new Position(place.line(), place.column(), place.start()),
        new Position(place.endLine(), place.endColumn(), place.end()));
  }

  private record Root(
      int version,
      String columns,
      List<CheckedFile> files,
      List<Unreadable> unreadable,
      List<Finding> findings,
      Counts counts) {}

  private record CheckedFile(String path, String kind, List<String> uses) {}

  private record Unreadable(String path, String reason) {}

  private record Finding(
      String rule,
      String fingerprint,
      String severity,
      String path,
      Range range,
      String message,
      List<Related> related,
      List<Fix> fixes) {}

  private record Related(String path, Range range, String message) {}

  private record Fix(String title, List<Edit> edits) {}

  private record Edit(String path, Range range, String text) {}

  private record Range(Position start, Position end) {}

  private record Position(int line, int column, int offset) {}

  private record Counts(long errors, long warnings, long notes, long known) {}
}
