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
    this(text, findLineStarts(text, 0, text.length()));
  }

  private SourceText(String text, int[] lineStarts) {
    this.text = text;
    this.lineStarts = lineStarts;
  }

  /** The starts of lines that begin behind {@code from} and not behind {@code to}; first is 0. */
  private static int[] findLineStarts(String text, int from, int to) {
    char[] chars = new char[Math.min(text.length(), to + 1) - from];
    text.getChars(from, from + chars.length, chars, 0);
    int[] starts = new int[Math.max(16, chars.length / 24)];
    int count = 1;
    for (int i = 0; i < to - from; i++) {
      char c = chars[i];
      boolean ends = c == '\n' || (c == '\r' && !(i + 1 < chars.length && chars[i + 1] == '\n'));
      if (ends) {
        if (count == starts.length) {
          starts = Arrays.copyOf(starts, count * 2);
        }
        starts[count++] = from + i + 1;
      }
    }
    return Arrays.copyOf(starts, count);
  }

  /**
   * A text that differs from this one between two places only; lines are looked for only there.
   *
   * @param same how many characters at the start are the same
   * @param sameEnd how many characters at the end are the same, without those at the start
   */
  public SourceText changed(String next, int same, int sameEnd) {
    int grown = next.length() - text.length();
    // A line ends with one character or two, so what stands beside a change may end or not end one.
    int from = lineStart(Math.max(0, lineAt(same) - 1));
    int tail = lineAt(text.length() - sameEnd) + 2;
    if (tail >= lineCount()) {
      tail = lineCount();
    }
    int to = tail == lineCount() ? next.length() : lineStart(tail) - 1 + grown;
    int head = lineAt(from) + 1;
    int[] middle = findLineStarts(next, from, to);
    int[] starts = new int[head + middle.length - 1 + lineCount() - tail];
    System.arraycopy(lineStarts, 0, starts, 0, head);
    System.arraycopy(middle, 1, starts, head, middle.length - 1);
    int at = head + middle.length - 1;
    for (int line = tail; line < lineCount(); line++) {
      starts[at++] = lineStart(line) + grown;
    }
    return new SourceText(next, starts);
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
