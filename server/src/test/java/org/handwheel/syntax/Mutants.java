package org.handwheel.syntax;

import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;

/** Random damage to texts, the same for the same seed. */
public final class Mutants {
  private static final List<String> PIECES =
      List.of(
          " ",
          "\t",
          ",",
          ":",
          "(",
          ")",
          "\"",
          "#",
          "# ",
          "\\",
          "/",
          "-",
          "+",
          "+-",
          "*",
          "=",
          "x",
          "3",
          "0.5",
          "1/8",
          "1-3/8",
          "6/2.5",
          "#7",
          "M6",
          "no 7",
          "letter F",
          "BA 2",
          "H7",
          "mm",
          "in",
          "at",
          "to",
          "most",
          "plan",
          "part",
          "setup",
          "own",
          "log",
          "hold",
          "name",
          "a-b",
          "\u00a0",
          "\u00b1",
          "\u2212",
          "\u00d7",
          "\u2300",
          "\u00b5m",
          "\u00e9",
          "\u00c9",
          "\u201c",
          "\ufeff",
          "\u0000",
          "\u2028",
          "\u0085",
          "\u212a",
          "\ud83d\udd27",
          "\ud83d",
          "\udd27");
  private static final List<String> LINE_ENDS = List.of("\n", "\r", "\r\n", "\\\n", "\\ # c\r\n");

  private final Random random;

  public Mutants(long seed) {
    random = new Random(seed);
  }

  public int below(int bound) {
    return random.nextInt(bound);
  }

  /** A text with one to four changes anywhere, line ends and the text's end included. */
  public String anywhere(String text) {
    String mutant = text;
    int changes = 1 + below(4);
    for (int i = 0; i < changes; i++) {
      mutant = change(mutant, below(10));
    }
    return mutant;
  }

  /** A change inside a line: it brings in no line end, though it may take one of a join away. */
  String inLine(String line) {
    return below(30) == 0 ? line + " \\" : change(line, below(6));
  }

  private String change(String text, int kind) {
    int at = below(text.length() + 1);
    return switch (kind) {
      case 0 -> text.substring(0, at) + text.substring(Math.min(text.length(), at + 1));
      case 1 -> text.substring(0, at) + PIECES.get(below(PIECES.size())) + text.substring(at);
      case 2 -> text.substring(0, at) + (char) (1 + (at * 31) % 8 + ' ') + text.substring(at);
      case 3 -> onWord(text, at, word -> "");
      case 4 -> onWord(text, at, word -> word + " " + word);
      case 5 -> swapped(text, at);
      case 6 -> text.substring(0, at);
      case 7 -> text.substring(0, at) + LINE_ENDS.get(below(LINE_ENDS.size())) + text.substring(at);
      case 8 -> text.replace("\n", LINE_ENDS.get(below(3)));
      default -> withoutLineEnd(text, at);
    };
  }

  private static String onWord(String text, int at, UnaryOperator<String> change) {
    int from = at;
    while (from > 0 && isWordPart(text.charAt(from - 1))) {
      from--;
    }
    int to = at;
    while (to < text.length() && isWordPart(text.charAt(to))) {
      to++;
    }
    return text.substring(0, from) + change.apply(text.substring(from, to)) + text.substring(to);
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '.' || c == '/';
  }

  /** Two neighbouring words change places, if a single blank is between them. */
  private static String swapped(String text, int at) {
    int blank = text.indexOf(' ', at);
    int next = blank < 0 ? -1 : text.indexOf(' ', blank + 1);
    if (next < 0 || text.substring(at, next).matches("(?s).*[\r\n].*")) {
      return text;
    }
    String first = text.substring(at, blank);
    return text.substring(0, at)
        + text.substring(blank + 1, next)
        + " "
        + first
        + text.substring(next);
  }

  private static String withoutLineEnd(String text, int at) {
    int end = text.indexOf('\n', at);
    return end < 0 ? text : text.substring(0, end) + " " + text.substring(end + 1);
  }
}
