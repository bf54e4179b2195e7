package org.handwheel.plan.log;

import java.util.List;
import org.handwheel.model.LogSection;
import org.handwheel.model.Plan;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/**
 * A reading to put into a plan's log, as its line says it; all else of the text stays as it is.
 *
 * @param piece the title of the log, or nothing for the last one
 * @param setup the setup's name
 * @param dimension {@code length}, {@code width} or {@code height}
 * @param values the sizes read, as the language writes lengths
 * @param instrument the instrument's name
 */
public record LogLine(
    @Nullable String piece,
    String setup,
    String dimension,
    List<String> values,
    String instrument) {
  /** The title of a log that has to be begun and was given none. */
  public static final String USUAL_PIECE = "the first one";

  public LogLine {
    values = List.copyOf(values);
  }

  /** The line, without indent and line end. */
  public String line() {
    return "in "
        + setup
        + ": read "
        + dimension
        + " "
        + String.join(" ", values)
        + " with "
        + instrument;
  }

  /**
   * A text with the line in it.
   *
   * @param offset where the line was put in: the first UTF-16 unit that is new
   */
  public record Written(String text, int offset) {}

  /** Puts the line behind the last one of its log, or begins a log before the inspection. */
  public Written in(SyntaxTree tree, Plan plan) {
    String text = tree.source().text();
    String end = text.contains("\r\n") ? "\r\n" : "\n";
    LogSection log = log(plan);
    if (log != null) {
      Section section = log.header().section();
      int at = tree.base(section) + endOfContent(section.text());
      return new Written(text.substring(0, at) + end + "  " + line() + text.substring(at), at);
    }
    String title = piece == null ? USUAL_PIECE : piece;
    String begun = "log \"" + title + "\"";
    for (Section section : tree.sections()) {
      if (section.kind() == SectionKind.INSPECT) {
        int at = tree.base(section);
        String more = begun + end + "  " + line() + end + end;
        return new Written(text.substring(0, at) + more + text.substring(at), at);
      }
    }
    String gap = text.isEmpty() || text.endsWith("\n") ? end : end + end;
    return new Written(text + gap + begun + end + "  " + line() + end, text.length());
  }

  private @Nullable LogSection log(Plan plan) {
    LogSection found = null;
    for (LogSection log : plan.logs()) {
      if (piece == null || log.title().equals(piece)) {
        found = log;
      }
    }
    return found;
  }

  /** Behind the last line that is neither blank nor a comment, before its line end. */
  private static int endOfContent(String text) {
    int at = text.length();
    while (at > 0) {
      int start = Math.max(text.lastIndexOf('\n', at - 1), text.lastIndexOf('\r', at - 1)) + 1;
      String line = text.substring(start, at).strip();
      if (!line.isEmpty() && !line.startsWith("#")) {
        return start + text.substring(start, at).stripTrailing().length();
      }
      at = start - 1;
    }
    return 0;
  }
}
