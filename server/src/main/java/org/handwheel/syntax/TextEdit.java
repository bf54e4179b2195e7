package org.handwheel.syntax;

import java.util.Comparator;
import java.util.List;

/**
 * Replaces a stretch of a file's text.
 *
 * @param start first UTF-16 unit of the file to replace
 * @param end one past the last; equal to {@code start} where text is only inserted
 * @param text what stands there then
 */
public record TextEdit(int start, int end, String text) {
  public TextEdit {
    if (start < 0 || end < start) {
      throw new IllegalArgumentException("from " + start + " to " + end);
    }
  }

  /**
   * The text with edits made, all of which speak of the text as it was. Edits at the same place are
   * made in the order of the list.
   *
   * @throws IllegalArgumentException if two edits overlap or one lies outside the text
   */
  public static String apply(String text, List<TextEdit> edits) {
    List<TextEdit> ordered =
        edits.stream()
            .sorted(Comparator.comparingInt(TextEdit::start).thenComparingInt(TextEdit::end))
            .toList();
    StringBuilder out = new StringBuilder(text.length() + 64);
    int done = 0;
    for (TextEdit edit : ordered) {
      if (edit.start() < done || edit.end() > text.length()) {
        throw new IllegalArgumentException("edits overlap or lie outside the text: " + edit);
      }
      out.append(text, done, edit.start()).append(edit.text());
      done = edit.end();
    }
    return out.append(text, done, text.length()).toString();
  }
}
