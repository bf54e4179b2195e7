package org.handwheel.syntax;

import java.util.Arrays;

/**
 * A text with the starts of its lines; the one place that turns offsets into lines and columns.
 *
 * <p>Offsets and columns count UTF-16 units from 0, lines count from 0. A line ends at {@code \n},
 * {@code \r\n} or a lone {@code \r}.
 */
public final class SourceText {
  private final String text;
  private final int[] lineStarts;

  public SourceText(String text) {
    this.text = text;
    this.lineStarts = findLineStarts(text);
  }

  private static int[] findLineStarts(String text) {
    int[] starts = new int[16];
    int count = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean ends =
          c == '\n' || (c == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n'));
      if (ends) {
        if (count == starts.length) {
          starts = Arrays.copyOf(starts, count * 2);
        }
        starts[count++] = i + 1;
      }
    }
    return Arrays.copyOf(starts, count);
  }

  public String text() {
    return text;
  }

  public int length() {
    return text.length();
  }

  public int lineCount() {
    return lineStarts.length;
  }

  /** The line an offset stands on; an offset past the end counts as the last line. */
  public int lineAt(int offset) {
    int found = Arrays.binarySearch(lineStarts, offset);
    return found >= 0 ? found : -found - 2;
  }

  public int lineStart(int line) {
    return lineStarts[line];
  }

  /** The offset just before the line's end mark. */
  public int lineEnd(int line) {
    int end = line + 1 < lineStarts.length ? lineStarts[line + 1] : text.length();
    while (end > lineStarts[line] && isEndMark(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }

  public int columnAt(int offset) {
    return offset - lineStarts[lineAt(offset)];
  }

  /** The line without its end mark. */
  public String line(int line) {
    return text.substring(lineStarts[line], lineEnd(line));
  }

  private static boolean isEndMark(char c) {
    return c == '\n' || c == '\r';
  }
}
