package org.handwheel.plan.merge;

import java.util.ArrayList;
import java.util.List;

/**
 * A text in statements: lines with their ends, those that {@code \} joins in one.
 *
 * @param texts what is written, ends of lines included; put together they are the text
 * @param keys what is said: equal for two statements that are only laid out differently
 */
record Statements(List<String> texts, List<String> keys) {
  Statements {
    texts = List.copyOf(texts);
    keys = List.copyOf(keys);
  }

  static Statements of(String text) {
    List<String> texts = new ArrayList<>();
    StringBuilder statement = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      int end = lineEnd(text, at);
      String line = text.substring(at, end);
      statement.append(line);
      if (!line.stripTrailing().endsWith("\\")) {
        texts.add(statement.toString());
        statement.setLength(0);
      }
      at = end;
    }
    if (!statement.isEmpty()) {
      texts.add(statement.toString());
    }
    return new Statements(texts, texts.stream().map(Statements::key).toList());
  }

  /** One past the end of a line: behind a line feed, or a carriage return without one. */
  private static int lineEnd(String text, int from) {
    for (int i = from; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && !text.startsWith("\n", i + 1))) {
        return i + 1;
      }
    }
    return text.length();
  }

  /** A statement without its margins, and with one blank for several outside of titles. */
  private static String key(String statement) {
    StringBuilder key = new StringBuilder();
    boolean quoted = false;
    boolean blank = false;
    for (char c : statement.strip().toCharArray()) {
      boolean space = !quoted && (c == ' ' || c == '\t');
      if (!space || !blank) {
        key.append(space ? ' ' : c);
      }
      blank = space;
      quoted = c == '"' ? !quoted : quoted && c != '\n' && c != '\r';
    }
    return key.toString();
  }

  int size() {
    return texts.size();
  }
}
