package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Breaks text into lines of at most so many columns, between words where it can. */
final class Wrapping {
  /** A number and its unit stay together. */
  private static final Pattern UNIT =
      Pattern.compile(
          "(?:mm|in|thou|um|tenths?|deg|rpm|k?W|hp|lbf|m/min|ft/min|mm/min|in/min|kg/m3|s|turns?|divisions?|N|kg|g|%)[).,;:]*");

  private Wrapping() {}

  /**
   * Wraps a text of single blanks.
   *
   * @param first what the first line starts with; never broken
   * @param next what the others start with
   */
  static List<String> wrap(String first, String next, String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    int room = width - TextWidth.of(first);
    boolean fresh = first.isBlank();
    boolean start = true;
    for (String word : words(text)) {
      String rest = word;
      int need = TextWidth.of(rest) + (start ? 0 : 1);
      if (need > room && !(start && fresh)) {
        lines.add(line.toString().stripTrailing());
        line = new StringBuilder(next);
        room = width - TextWidth.of(next);
        start = true;
        fresh = true;
      }
      while (TextWidth.of(rest) + (start ? 0 : 1) > room) {
        int cut = cut(rest, room);
        lines.add(line + rest.substring(0, cut));
        rest = rest.substring(cut);
        line = new StringBuilder(next);
        room = width - TextWidth.of(next);
      }
      line.append(start ? "" : " ").append(rest);
      room -= TextWidth.of(rest) + (start ? 0 : 1);
      start = false;
    }
    lines.add(line.toString().stripTrailing());
    return lines;
  }

  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String word : text.strip().split("\\s+", -1)) {
      int last = words.size() - 1;
      boolean measure =
          last >= 0
              && UNIT.matcher(word).matches()
              && Character.isDigit(words.get(last).charAt(words.get(last).length() - 1));
      if (measure) {
        words.set(last, words.get(last) + " " + word);
      } else if (!word.isEmpty()) {
        words.add(word);
      }
    }
    return words;
  }

  /** How many UTF-16 units of a text fit in so many columns; at least one character. */
  private static int cut(String text, int columns) {
    int at = 0;
    int used = 0;
    while (at < text.length()) {
      int codePoint = text.codePointAt(at);
      used += TextWidth.of(codePoint);
      if (used > columns && at > 0) {
        return at;
      }
      at += Character.charCount(codePoint);
    }
    return at;
  }
}
