package org.handwheel.cli;

/**
 * Text in Markdown that means nothing but itself, in CommonMark and in the dialects of code hosts:
 * no markup, no HTML, no link, and nobody is called by name.
 */
final class MarkdownEscape {
  private static final String MARKUP = "\\`*_{}[]<>()#+-!|~&:^$=\"'";
  private static final char WORD_JOINER = '\u2060';

  private MarkdownEscape() {}

  /** Prose. */
  static String text(String text) {
    StringBuilder escaped = new StringBuilder();
    String line = oneLine(text);
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (needsEscape(line, i)) {
        escaped.append('\\');
      }
      escaped.append(c);
      // A host turns these into links after the Markdown is read, where no backslash helps.
      if (c == '@' || c == '#' || (c == ':' && line.startsWith("//", i + 1)) || isWww(line, i)) {
        escaped.append(WORD_JOINER);
      }
    }
    return escaped.toString();
  }

  private static boolean needsEscape(String line, int i) {
    char c = line.charAt(i);
    if (c == '-' || c == '+' || c == '(' || c == ')' || c == ':' || c == '=' || c == '\'') {
      // Only at the start of a line, or as part of a link, do these mean anything.
      return i == 0 || (c == '(' && line.charAt(i - 1) == ']');
    }
    if (c == '.') {
      return i > 0
          && (i + 1 == line.length() || line.charAt(i + 1) == ' ')
          && line.substring(0, i).chars().allMatch(Character::isDigit);
    }
    return MARKUP.indexOf(c) >= 0 && c != '"';
  }

  private static boolean isWww(String line, int i) {
    return line.regionMatches(true, i, "w.", 0, 2) && line.regionMatches(true, i - 2, "www.", 0, 4);
  }

  /** A statement as code. */
  static String code(String text) {
    String line = oneLine(text).strip();
    if (line.isEmpty()) {
      return "";
    }
    int longest = 0;
    int run = 0;
    for (int i = 0; i < line.length(); i++) {
      run = line.charAt(i) == '`' ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    String fence = "`".repeat(longest + 1);
    String pad = longest > 0 ? " " : "";
    return fence + pad + line + pad + fence;
  }

  private static String oneLine(String text) {
    StringBuilder line = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              boolean steers =
                  Character.getType(c) == Character.CONTROL
                      || Character.getType(c) == Character.FORMAT
                      || Character.getType(c) == Character.SURROGATE
                      || c == 0x2028
                      || c == 0x2029;
              line.append(
                  c == '\n' || c == '\r' || c == '\t'
                      ? " "
                      : steers ? "\ufffd" : Character.toString(c));
            });
    return line.toString();
  }
}
