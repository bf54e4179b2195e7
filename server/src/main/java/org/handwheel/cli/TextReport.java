package org.handwheel.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.cli.Report.Found;
import org.handwheel.cli.Report.Kind;
import org.handwheel.cli.Report.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SourceText;

/**
 * Findings for people: where and what, the line with the place underlined, the lines that caused
 * it, and a count at the end.
 */
final class TextReport implements ReportFormat {
  private static final String INDENT = "    ";

  private final Output output;
  private final Palette palette;
  private final PathNames names;

  TextReport(Output output, Palette palette, PathNames names) {
    this.output = output;
    this.palette = palette;
    this.names = names;
  }

  @Override
  public void print(Report report) {
    for (Found found : report.findings()) {
      print(found);
      output.line("");
    }
    if (!report.files().isEmpty()) {
      output.lines(Wrapping.wrap("", "", summary(report), output.width()));
    }
  }

  private void print(Found found) {
    String where =
        shown(found.file()) + ":" + found.place().line() + ":" + found.place().column() + ":";
    String what = word(found.severity()) + "[" + found.rule() + "]";
    List<String> lines =
        new ArrayList<>(
            Wrapping.wrap(
                "", INDENT, where + " " + what + " " + glyphs().show(found.message()), width()));
    paintHead(lines, where, what, found.severity());
    output.lines(lines);
    excerpt(found);
    found.related().forEach(this::print);
    for (Report.Fix fix : found.fixes()) {
      output.lines(Wrapping.wrap("  fix: ", INDENT + INDENT, glyphs().show(fix.title()), width()));
    }
  }

  /** Paints after wrapping, so that colour codes take no columns. */
  private void paintHead(List<String> lines, String where, String what, Severity severity) {
    for (int i = 0; i < Math.min(2, lines.size()); i++) {
      String line = lines.get(i);
      if (i == 0 && line.startsWith(where)) {
        line = palette.strong(where) + line.substring(where.length());
      }
      int at = line.indexOf(what);
      if (at >= 0) {
        lines.set(
            i,
            line.substring(0, at)
                + palette.severity(what, severity)
                + line.substring(at + what.length()));
        return;
      }
      lines.set(i, line);
    }
  }

  private void excerpt(Found found) {
    Place place = found.place();
    SourceText source = place.source();
    int line = place.line() - 1;
    String text = source.line(line);
    if (text.isBlank()) {
      return;
    }
    int from = place.start() - source.lineStart(line);
    int to = Math.min(place.end(), source.lineEnd(line)) - source.lineStart(line);
    Excerpt excerpt = Excerpt.of(text, from, to, width() - INDENT.length(), glyphs());
    output.line(INDENT + excerpt.before() + excerpt.marked() + excerpt.after());
    String underline = excerpt.underline();
    int blanks = underline.indexOf('^');
    output.line(
        INDENT
            + underline.substring(0, blanks)
            + palette.severity(underline.substring(blanks), found.severity()));
  }

  private void print(Related related) {
    String where = "  related " + shown(related.file()) + ":" + related.place().line() + ": ";
    output.lines(Wrapping.wrap(where, INDENT + INDENT, glyphs().show(related.message()), width()));
  }

  static String summary(Report report) {
    long errors = report.count(Severity.ERROR);
    long warnings = report.count(Severity.WARNING);
    long infos = report.count(Severity.INFO);
    List<String> checked = new ArrayList<>();
    addCount(checked, report.count(Kind.PLAN), "plan", "plans");
    addCount(checked, report.count(Kind.SHOP), "shop file", "shop files");
    String files = String.join(" and ", checked);
    List<String> found = new ArrayList<>();
    addCount(found, errors, "error", "errors");
    addCount(found, warnings, "warning", "warnings");
    addCount(found, infos, "note", "notes");
    String fresh = report.known() == 0 ? "" : "new ";
    String known = report.known() == 0 ? "" : "; " + report.known() + " known";
    return found.isEmpty()
        ? files + ", nothing " + fresh + "found" + known
        : String.join(", ", found) + " in " + files + known;
  }

  private static void addCount(List<String> counts, long count, String one, String many) {
    if (count > 0) {
      counts.add(count + " " + (count == 1 ? one : many));
    }
  }

  /** The word for a severity: {@code error}, {@code warning} or {@code note}. */
  static String word(Severity severity) {
    return severity == Severity.INFO ? "note" : severity.name().toLowerCase(Locale.ROOT);
  }

  private String shown(Path file) {
    return glyphs().show(names.shown(file));
  }

  private Glyphs glyphs() {
    return output.glyphs();
  }

  private int width() {
    return output.width();
  }
}
