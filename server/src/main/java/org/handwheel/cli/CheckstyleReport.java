package org.handwheel.cli;

import java.util.List;
import org.handwheel.cli.Report.Found;
import org.handwheel.syntax.Severity;

/** The XML of Checkstyle, which many build servers read; every checked file is in it. */
final class CheckstyleReport implements ReportFormat {
  private final Output output;
  private final PathNames names;

  CheckstyleReport(Output output, PathNames names) {
    this.output = output;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    output.line(Xml.HEAD);
    output.line("<checkstyle version=\"4.3\">");
    for (FileFindings file : FileFindings.of(report)) {
      String name = Xml.attribute("name", names.slashed(file.file()));
      List<Found> findings = file.findings();
      if (findings.isEmpty()) {
        output.line("  <file" + name + "/>");
        continue;
      }
      output.line("  <file" + name + ">");
      findings.forEach(this::print);
      output.line("  </file>");
    }
    output.line("</checkstyle>");
  }

  private void print(Found found) {
    output.line(
        "    <error"
            + Xml.attribute("line", found.place().line())
            + Xml.attribute("column", found.place().column())
            + Xml.attribute("severity", severity(found.severity()))
            + Xml.attribute("message", found.message())
            + Xml.attribute("source", "handwheel." + found.rule())
            + "/>");
  }

  private static String severity(Severity severity) {
    return switch (severity) {
      case ERROR -> "error";
      case WARNING -> "warning";
      case INFO, OFF -> "info";
    };
  }
}
