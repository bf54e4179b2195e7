package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;

/**
 * A line of a file with a place underlined, cut to a width around the place.
 *
 * <p>The line's own indentation is left out, tabs are set to every fourth column, and wide and
 * combining characters take the columns they take on a terminal.
 */
record Excerpt(String before, String marked, String after, String underline) {
  private static final int TAB = 4;

  /** How much of the line stays in front of a place that is itself too long. */
  private static final int CONTEXT = 12;

  /** A character or tab as shown; {@code offset} is where it stands in the line. */
  private record Cell(String shown, int width, int offset) {}

  /**
   * Lays out a line.
   *
   * @param from UTF-16 offset in the line at which the place starts
   * @param to one past its end, may be the same
   */
  static Excerpt of(String line, int from, int to, int width, Glyphs glyphs) {
    List<Cell> cells = cells(line, glyphs);
    int first = 0;
    while (first < cells.size() && cells.get(first).offset() < from) {
      first++;
    }
    int last = first;
    while (last < cells.size() && cells.get(last).offset() < to) {
      last++;
    }
    String gap = glyphs.show(0x2026);
    int start = 0;
    int end = cells.size();
    // One column more than the text: the caret may stand behind it.
    if (width(cells, 0, end) + (first == end ? 1 : 0) > width) {
      start = start(cells, first, last, width - 2 * gap.length());
      end = end(cells, start, width - 2 * gap.length());
    }
    int markFrom = Math.min(first, end);
    int markTo = Math.max(markFrom, Math.min(last, end));
    String before = (start > 0 ? gap : "") + text(cells, start, markFrom);
    String marked = text(cells, markFrom, markTo);
    String after = text(cells, markTo, end) + (end < cells.size() ? gap : "");
    String underline =
        " ".repeat(TextWidth.of(before)) + "^".repeat(Math.max(1, TextWidth.of(marked)));
    return new Excerpt(before, marked, after, underline);
  }

  private static List<Cell> cells(String line, Glyphs glyphs) {
    List<Cell> cells = new ArrayList<>();
    int at = line.length() - line.stripLeading().length();
    int column = 0;
    int end = line.stripTrailing().length();
    while (at < end) {
      int codePoint = line.codePointAt(at);
      String shown = codePoint == '\t' ? " ".repeat(TAB - column % TAB) : glyphs.show(codePoint);
      int width = TextWidth.of(shown);
      cells.add(new Cell(shown, width, at));
      column += width;
      at += Character.charCount(codePoint);
    }
    return cells;
  }

  /** The first cell to show: as much as possible before the place, and all of the place. */
  private static int start(List<Cell> cells, int first, int last, int room) {
    if (width(cells, 0, last) + 1 <= room) {
      return 0;
    }
    int marked = width(cells, first, last);
    int context = marked + CONTEXT > room ? CONTEXT : (room - marked) / 2;
    // Close to the end of the line there is no need for room behind the place.
    int behind = width(cells, last, cells.size()) + 1;
    if (marked + CONTEXT <= room && behind < context) {
      context = room - marked - behind;
    }
    int start = first;
    while (start > 0 && width(cells, start - 1, first) <= context) {
      start--;
    }
    return start;
  }

  private static int end(List<Cell> cells, int start, int room) {
    int end = start;
    int used = 0;
    while (end < cells.size() && used + cells.get(end).width() <= room) {
      used += cells.get(end).width();
      end++;
    }
    return end;
  }

  private static int width(List<Cell> cells, int from, int to) {
    return cells.subList(from, to).stream().mapToInt(Cell::width).sum();
  }

  private static String text(List<Cell> cells, int from, int to) {
    StringBuilder text = new StringBuilder();
    cells.subList(from, to).forEach(cell -> text.append(cell.shown()));
    return text.toString();
  }
}
