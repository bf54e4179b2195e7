package org.handwheel.plan.format;

import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SourceText;

/**
 * Decides where comments on lines of their own belong: with the statements of their section, or at
 * the margin with the header that follows.
 */
final class CommentBlocks {
  private final SourceText source;
  private final FileLine[] lines;

  CommentBlocks(SourceText source, FileLine[] lines) {
    this.source = source;
    this.lines = lines;
  }

  void place() {
    int line = 0;
    while (line < lines.length) {
      if (lines[line].kind() != FileLine.Kind.COMMENT) {
        if (lines[line].role() == FileLine.Role.HEADER) {
          placeHeader(line);
        }
        line++;
        continue;
      }
      int end = line;
      while (end < lines.length && lines[end].kind() == FileLine.Kind.COMMENT) {
        end++;
      }
      placeBlock(line, end);
      line = end;
      if (end < lines.length && lines[end].role() == FileLine.Role.HEADER) {
        line = end + 1;
      }
    }
  }

  /** Places a block of comments; if a header follows at once, places that too. */
  private void placeBlock(int start, int end) {
    boolean header = end < lines.length && lines[end].role() == FileLine.Role.HEADER;
    boolean atMargin = isMarginal(start, end, header);
    boolean words = true;
    for (int i = start; i < end; i++) {
      String text = lines[i].pieces().get(0).text();
      words &= text.length() == 1 || Character.isLetter(text.charAt(1));
    }
    for (int i = start; i < end; i++) {
      Piece piece = lines[i].pieces().get(0);
      String text = words ? Spelling.comment(piece.text()) : piece.text();
      lines[i] = lines[i].withComment(atMargin ? "" : piece.gap(), text);
    }
    if (header) {
      placeHeader(atMargin ? start : end);
    }
  }

  /** Whether a block stands at the margin: it does not belong to the statements before it. */
  private boolean isMarginal(int start, int end, boolean header) {
    Section section = lines[start].section();
    if (section == null || section.kind() == SectionKind.PREAMBLE) {
      return true;
    }
    if (!header && hasStatementAfter(end, section)) {
      return false;
    }
    boolean apart = start == 0 || lines[start - 1].kind() == FileLine.Kind.BLANK;
    boolean isAtMargin = source.text().charAt(source.lineStart(start)) == '#';
    return (apart && (isAtMargin || header)) || (isAtMargin && header);
  }

  private boolean hasStatementAfter(int line, Section section) {
    for (int i = line; i < lines.length; i++) {
      FileLine.Kind kind = lines[i].kind();
      if (kind == FileLine.Kind.CODE || kind == FileLine.Kind.KEPT) {
        return lines[i].section() == section;
      }
    }
    return false;
  }

  /** Marks the line a section opens with, unless only the preamble comes before. */
  private void placeHeader(int opening) {
    for (int i = opening - 1; i >= 0; i--) {
      Section section = lines[i].section();
      if (section != null) {
        if (section.kind() != SectionKind.PREAMBLE) {
          lines[opening] = lines[opening].opening();
        }
        return;
      }
    }
  }
}
