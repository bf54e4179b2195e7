package org.handwheel.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.cli.Report.Found;
import org.handwheel.syntax.Severity;

/**
 * The XML of JUnit: a suite for each file and a case for each finding; a file without one has a
 * case that passed, so that it shows as checked. Notes are cases that passed, with their words as
 * output.
 */
final class JunitReport implements ReportFormat {
  private final Output output;
  private final PathNames names;

  JunitReport(Output output, PathNames names) {
    this.output = output;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    List<FileFindings> files = FileFindings.of(report);
    Map<Path, String> unreadable = new TreeMap<>(report.unreadable());
    long cases =
        files.stream().mapToLong(file -> Math.max(1, file.findings().size())).sum()
            + unreadable.size();
    long failures = files.stream().mapToLong(JunitReport::failures).sum();
    output.line(Xml.HEAD);
    output.line(
        "<testsuites"
            + Xml.attribute("name", "handwheel")
            + counts(cases, failures, unreadable.size())
            + ">");
    files.forEach(this::print);
    unreadable.forEach(this::print);
    output.line("</testsuites>");
  }

  private static String counts(long tests, long failures, long errors) {
    return Xml.attribute("tests", tests)
        + Xml.attribute("failures", failures)
        + Xml.attribute("errors", errors);
  }

  private static long failures(FileFindings file) {
    return file.findings().stream().filter(found -> found.severity() != Severity.INFO).count();
  }

  private void print(FileFindings file) {
    String name = names.slashed(file.file());
    int tests = Math.max(1, file.findings().size());
    output.line(
        "  <testsuite" + Xml.attribute("name", name) + counts(tests, failures(file), 0) + ">");
    if (file.findings().isEmpty()) {
      output.line("    <testcase" + names(name, "nothing found") + "/>");
    }
    file.findings().forEach(found -> print(name, found));
    output.line("  </testsuite>");
  }

  private static String names(String file, String test) {
    return Xml.attribute("classname", file) + Xml.attribute("name", test);
  }

  private void print(String file, Found found) {
    Place place = found.place();
    output.line(
        "    <testcase"
            + names(file, found.rule() + " at " + place.line() + ":" + place.column())
            + ">");
    String where = file + ":" + place.line() + ":" + place.column() + ": ";
    if (found.severity() == Severity.INFO) {
      output.line("      <system-out>" + Xml.text(where + found.message()) + "</system-out>");
    } else {
      output.line(
          "      <failure"
              + Xml.attribute("type", TextReport.word(found.severity()))
              + Xml.attribute("message", found.message())
              + ">"
              + Xml.text(where + found.message())
              + "</failure>");
    }
    output.line("    </testcase>");
  }

  private void print(Path path, String reason) {
    String name = names.slashed(path);
    output.line("  <testsuite" + Xml.attribute("name", name) + counts(1, 0, 1) + ">");
    output.line("    <testcase" + names(name, "can be read") + ">");
    output.line(
        "      <error"
            + Xml.attribute("type", "unreadable")
            + Xml.attribute("message", reason)
            + "/>");
    output.line("    </testcase>");
    output.line("  </testsuite>");
  }
}
