package org.handwheel.fuzz;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A plan written key by key from nothing, with slips that are noticed at once or some keys later,
 * lines that were forgotten, and second thoughts: {@code writing.keys}. A character is typed where
 * the cursor is; {@code ⏎} is a new line (line ends of the file itself mean nothing), {@code ⌫}
 * takes back, {@code ⟨line:column⟩} sets the cursor, from 1.
 */
final class Writing {
  private Writing() {}

  /**
   * One key: the characters of the text so far from {@code start} to {@code end} become {@code
   * piece}.
   */
  record Key(int start, int end, String piece) {}

  /** The keys in their order. */
  static List<Key> keys() {
    String recorded = recorded();
    List<Key> keys = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    int cursor = 0;
    for (int at = 0; at < recorded.length(); at++) {
      char c = recorded.charAt(at);
      if (c == '\u27e8') {
        int end = recorded.indexOf('\u27e9', at);
        String[] place = recorded.substring(at + 1, end).split(":", -1);
        cursor = offset(text, Integer.parseInt(place[0]), Integer.parseInt(place[1]));
        at = end;
      } else if (c == '\u232b') {
        keys.add(new Key(cursor - 1, cursor, ""));
        text.deleteCharAt(--cursor);
      } else if (c != '\n') {
        String piece = c == '\u23ce' ? "\n" : String.valueOf(c);
        keys.add(new Key(cursor, cursor, piece));
        text.insert(cursor++, piece);
      }
    }
    return keys;
  }

  private static int offset(StringBuilder text, int line, int column) {
    int start = 0;
    for (int i = 1; i < line; i++) {
      start = text.indexOf("\n", start) + 1;
    }
    return start + column - 1;
  }

  private static String recorded() {
    try (InputStream in = Writing.class.getResourceAsStream("writing.keys")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
