package org.handwheel.cli;

import java.util.Comparator;
import org.handwheel.cli.Report.Found;
import org.handwheel.syntax.Severity;

/**
 * Workflow commands that GitHub shows as annotations. It shows only so many, so errors come first;
 * it fails no step for them, the exit code does.
 */
final class GithubReport implements ReportFormat {
  private final Output output;
  private final PathNames names;

  GithubReport(Output output, PathNames names) {
    this.output = output;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    report.findings().stream().sorted(Comparator.comparing(Found::severity)).forEach(this::print);
  }

  private void print(Found found) {
    Place place = found.place();
    StringBuilder line = new StringBuilder("::").append(command(found.severity()));
    line.append(" file=").append(property(names.slashed(found.file())));
    line.append(",line=").append(place.line());
    line.append(",endLine=").append(place.endLine());
    // Columns mean something within one line only.
    if (place.line() == place.endLine()) {
      line.append(",col=").append(place.column());
      line.append(",endColumn=").append(place.endColumn());
    }
    line.append(",title=").append(property(found.rule()));
    line.append("::").append(data(output.glyphs().show(found.message())));
    found
        .related()
        .forEach(
            related ->
                line.append("%0A")
                    .append(
                        data(
                            output
                                .glyphs()
                                .show(
                                    names.slashed(related.file())
                                        + ":"
                                        + related.place().line()
                                        + ": "
                                        + related.message()))));
    output.line(line.toString());
  }

  private static String command(Severity severity) {
    return switch (severity) {
      case ERROR -> "error";
      case WARNING -> "warning";
      case INFO, OFF -> "notice";
    };
  }

  private static String data(String text) {
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A");
  }

  private static String property(String text) {
    return data(text).replace(":", "%3A").replace(",", "%2C");
  }
}
