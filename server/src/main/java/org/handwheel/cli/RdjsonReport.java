package org.handwheel.cli;

import com.google.gson.annotations.SerializedName;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.handwheel.cli.Report.Found;
import org.handwheel.syntax.Severity;
import org.jspecify.annotations.Nullable;

/** The Reviewdog Diagnostic Format. Its columns count bytes of UTF-8 from 1. */
final class RdjsonReport implements ReportFormat {
  private final Output output;
  private final PathNames names;

  RdjsonReport(Output output, PathNames names) {
    this.output = output;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    output.line(
        Json.of(
            new Root(
                new Source("handwheel"),
                report.findings().stream().map(this::diagnostic).toList())));
  }

  private Diagnostic diagnostic(Found found) {
    List<Suggestion> suggestions =
        found.fixes().stream()
            // All suggestions are offered side by side, so only a fix in one piece is one.
            .filter(fix -> fix.edits().size() == 1)
            .map(fix -> fix.edits().get(0))
            .filter(edit -> edit.file().equals(found.file()))
            .map(edit -> new Suggestion(range(edit.place()), edit.text()))
            .toList();
    List<Related> related =
        found.related().stream()
            .map(each -> new Related(each.message(), location(each.file(), each.place())))
            .toList();
    return new Diagnostic(
        found.message(),
        location(found.file(), found.place()),
        severity(found.severity()),
        new Code(found.rule()),
        suggestions.isEmpty() ? null : suggestions,
        related.isEmpty() ? null : related);
  }

  private Location location(Path file, Place place) {
    return new Location(names.slashed(file), range(place));
  }

  private static Range range(Place place) {
    return new Range(
        position(place, place.line(), place.column()),
        position(place, place.endLine(), place.endColumn()));
  }

  private static Position position(Place place, int line, int column) {
    String text = place.source().line(line - 1);
    String before = text.substring(0, Math.min(text.length(), column - 1));
    return new Position(line, before.getBytes(StandardCharsets.UTF_8).length + 1);
  }

  private static String severity(Severity severity) {
    return severity == Severity.OFF ? "INFO" : severity.name();
  }

  private record Root(Source source, List<Diagnostic> diagnostics) {}

  private record Source(String name) {}

  private record Diagnostic(
      String message,
      Location location,
      String severity,
      Code code,
      @Nullable List<Suggestion> suggestions,
      @SerializedName("related_locations") @Nullable List<Related> relatedLocations) {}

  private record Code(String value) {}

  private record Suggestion(Range range, String text) {}

  private record Related(String message, Location location) {}

  private record Location(String path, Range range) {}

  private record Range(Position start, Position end) {}

  private record Position(int line, int column) {}
}
