package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.SyntaxTree;

/** What can be folded away: sections, and comments of several lines. */
public final class Folds {
  private Folds() {}

  /** What a fold holds. */
  public enum Kind {
    SECTION,
    COMMENT
  }

  /**
   * A range of whole lines, counted from 0; the first stays to be seen.
   *
   * @param last the last line folded away, above {@code first}
   */
  public record Fold(int first, int last, Kind kind) {
    /** What stands in place of the lines folded away. */
    public String collapsed() {
      int lines = last - first;
      return lines == 1 ? "... 1 line" : "... " + lines + " lines";
    }
  }

  /** All folds of a file, by their first lines. */
  public static List<Fold> of(SyntaxTree tree) {
    SourceText source = tree.source();
    List<Fold> folds = new ArrayList<>();
    for (Section section : tree.sections()) {
      if (section.kind() == SectionKind.PREAMBLE || section.text().isEmpty()) {
        continue;
      }
      int first = source.lineAt(tree.base(section));
      int last = lastLine(source, first, tree.base(section) + section.text().length());
      if (last > first) {
        folds.add(new Fold(first, last, Kind.SECTION));
      }
    }
    comments(source, folds);
    folds.sort((a, b) -> Integer.compare(a.first(), b.first()));
    return folds;
  }

  /** The last line of a section with something on it; comments above the next header are its. */
  private static int lastLine(SourceText source, int first, int end) {
    int last = source.lineAt(end);
    if (source.lineStart(last) == end && last > first) {
      last--;
    }
    while (last > first && isBlankOrOuterComment(source.line(last))) {
      last--;
    }
    return last;
  }

  private static boolean isBlankOrOuterComment(String line) {
    return line.isBlank() || line.startsWith("#");
  }

  private static void comments(SourceText source, List<Fold> folds) {
    int start = -1;
    for (int line = 0; line <= source.lineCount(); line++) {
      boolean comment = line < source.lineCount() && isComment(source.line(line));
      if (comment && start < 0) {
        start = line;
      }
      if (!comment && start >= 0) {
        if (line - 1 > start) {
          folds.add(new Fold(start, line - 1, Kind.COMMENT));
        }
        start = -1;
      }
    }
  }

  /** A line with nothing but a comment that silences no rule. */
  private static boolean isComment(String line) {
    String text = line.strip();
    return text.startsWith("#") && !text.startsWith("# ignore ");
  }
}
