package org.handwheel.plan.log;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.LogSection;
import org.handwheel.model.Plan;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.jspecify.annotations.Nullable;

/**
 * A line for the log of a piece, put where it belongs.
 *
 * @param line the line without blanks before it and without its end
 * @param piece the title of the piece's log; nothing for the last log there is
 */
public record LogLine(String line, @Nullable String piece) {
  /** The title of a plan's first log where the piece has no name. */
  static final String FIRST_PIECE = "piece 1";

  private static final String INDENT = "  ";

  /**
   * The line as the last of its piece's log, or in a new log at the end of the plan: one insertion,
   * with the line ends the text has.
   *
   * @param plan the plan as it was read from the tree
   */
  public TextEdit in(SyntaxTree tree, Plan plan) {
    return section(plan).map(section -> asLast(tree, section)).orElseGet(() -> inNewLog(tree));
  }

  /** The log of the piece: the last one with its title, as pieces of that name may come again. */
  private Optional<Section> section(Plan plan) {
    List<LogSection> logs = plan.logs();
    for (int i = logs.size() - 1; i >= 0; i--) {
      if (piece == null || logs.get(i).title().equals(piece)) {
        return Optional.of(logs.get(i).header().section());
      }
    }
    return Optional.empty();
  }

  private TextEdit asLast(SyntaxTree tree, Section section) {
    String text = section.text();
    int end = 0;
    String indent = INDENT;
    int start = 0;
    boolean isHeader = true;
    boolean goesOn = false;
    while (start < text.length()) {
      int next = nextLine(text, start);
      String content = text.substring(start, next).strip();
      // Blank lines and remarks after the last line may belong to the next section.
      if (goesOn || (!content.isEmpty() && !content.startsWith("#"))) {
        end = next;
        if (!isHeader && !goesOn) {
          indent = blanks(text, start);
        }
        isHeader = false;
        goesOn = content.endsWith("\\");
      }
      start = next;
    }
    int at = tree.base(section) + end;
    boolean isOpen = end > 0 && text.charAt(end - 1) != '\n' && text.charAt(end - 1) != '\r';
    String lineEnd = lineEnd(tree.source().text());
    // A last line that goes on would take the new one in: an empty line ends it.
    String added = (goesOn ? lineEnd : "") + indent + line;
    return new TextEdit(at, at, isOpen ? lineEnd + added : added + lineEnd);
  }

  private TextEdit inNewLog(SyntaxTree tree) {
    String text = tree.source().text();
    String lineEnd = lineEnd(text);
    boolean isOpen = !text.isEmpty() && !text.endsWith("\n") && !text.endsWith("\r");
    String title = piece == null ? FIRST_PIECE : piece;
    String added =
        (isOpen ? lineEnd : "")
            + lineEnd
            + "log \""
            + title
            + "\""
            + lineEnd
            + INDENT
            + line
            + lineEnd;
    return new TextEdit(text.length(), text.length(), added);
  }

  private static int nextLine(String text, int start) {
    for (int i = start; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n') {
        return i + 1;
      }
      if (c == '\r') {
        return i + 1 < text.length() && text.charAt(i + 1) == '\n' ? i + 2 : i + 1;
      }
    }
    return text.length();
  }

  private static String blanks(String text, int start) {
    int end = start;
    while (end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '\t')) {
      end++;
    }
    return text.substring(start, end);
  }

  /** The first line end of a text; a line feed where it has none. */
  private static String lineEnd(String text) {
    int end = nextLine(text, 0);
    if (end >= 2 && text.charAt(end - 1) == '\n' && text.charAt(end - 2) == '\r') {
      return "\r\n";
    }
    return end > 0 && text.charAt(end - 1) == '\r' ? "\r" : "\n";
  }
}
