package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Words of a file as they may be shown in an editor: whatever a file holds, they stay on their
 * line, in the order they are written, of a size one can read, and are no markup.
 */
public final class Shown {
  private static final int MOST_CHARACTERS = 2000;
  private static final int MOST_OF_A_NAME = 200;
  private static final int MOST_LINES = 60;
  private static final String MARKUP = "\\*_[]<>#`|~&!@";

  /** What some readers of Markdown make links of without being asked: addresses. */
  private static final Pattern ADDRESS = Pattern.compile("(?=://)|(?<=\\b[wW]{3})(?=\\.)");

  private Shown() {}

  /** A name or a title: a line that is not too long for one. */
  public static String name(String text) {
    return line(text, MOST_OF_A_NAME);
  }

  /** Text on one line: controls, and marks that turn the order of text round, are replaced. */
  public static String line(String text) {
    return line(text, MOST_CHARACTERS);
  }

  private static String line(String text, int most) {
    StringBuilder line = new StringBuilder();
    int count = 0;
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      if (++count > most) {
        return line.append('\u2026').toString();
      }
      int c = text.codePointAt(i);
      line.append(Character.isWhitespace(c) ? " " : steers(c) ? "\ufffd" : Character.toString(c));
    }
    return line.toString();
  }

  private static boolean steers(int c) {
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR;
  }

  /** The same where Markdown is read: nothing of it acts as markup. */
  public static String markdown(String text) {
    StringBuilder out = new StringBuilder();
    String line = line(text);
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (MARKUP.indexOf(c) >= 0) {
        out.append('\\');
      }
      out.append(c);
    }
    return ADDRESS.matcher(out).replaceAll("\\\\");
  }

  /** Words of the language as code in Markdown. */
  public static String code(String text) {
    String line = line(text).strip();
    int longest = 0;
    int run = 0;
    for (int i = 0; i < line.length(); i++) {
      run = line.charAt(i) == '`' ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    String fence = "`".repeat(longest + 1);
    String pad = longest > 0 ? " " : "";
    return line.isEmpty() ? "" : fence + pad + line + pad + fence;
  }

  /** Lines of a file, each as it may be shown; only the first of many. */
  public static List<String> lines(String text) {
    List<String> lines = new ArrayList<>();
    text.lines().limit(MOST_LINES).map(Shown::line).forEach(lines::add);
    if (text.lines().skip(MOST_LINES).findAny().isPresent()) {
      lines.add("\u2026");
    }
    return lines;
  }
}
