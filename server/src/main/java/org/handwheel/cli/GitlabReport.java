package org.handwheel.cli;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.handwheel.cli.Report.Found;
import org.handwheel.syntax.Severity;

/** The Code Quality report of GitLab: a list of issues, each with a fingerprint of its own. */
final class GitlabReport implements ReportFormat {
  private final Output output;
  private final PathNames names;

  GitlabReport(Output output, PathNames names) {
    this.output = output;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    output.line(Json.of(report.findings().stream().map(this::issue).toList()));
  }

  private Issue issue(Found found) {
    String path = names.slashed(found.file());
    return new Issue(
        found.message(),
        found.rule(),
        unique(path, found.fingerprint()),
        severity(found.severity()),
        new Location(path, new Lines(found.place().line(), found.place().endLine())));
  }

  /** Two files may hold the same line, but no two issues the same fingerprint. */
  private static String unique(String path, String fingerprint) {
    return UUID.nameUUIDFromBytes((path + "\n" + fingerprint).getBytes(StandardCharsets.UTF_8))
        .toString()
        .replace("-", "");
  }

  private static String severity(Severity severity) {
    return switch (severity) {
      case ERROR -> "major";
      case WARNING -> "minor";
      case INFO, OFF -> "info";
    };
  }

  private record Issue(
      String description,
      @com.google.gson.annotations.SerializedName("check_name") String checkName,
      String fingerprint,
      String severity,
      Location location) {}

  private record Location(String path, Lines lines) {}

  private record Lines(int begin, int end) {}
}
