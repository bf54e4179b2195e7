package org.handwheel.syntax;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.syntax.Finding.Edit;
import org.handwheel.syntax.Finding.Fix;

/** Slips that the tokens of a line show by themselves: quotes, commas, fractions, stray marks. */
final class Slips {
  private static final Set<String> INCH_MARKS = Set.of("\u201d", "\u2033", "''");
  private static final Set<String> CURLY_QUOTES = Set.of("\u201c", "\u201d", "\u201e");

  private Slips() {}

  /**
   * Slips with a cause of their own, for which the list of what was expected would not help; looked
   * for up to the first token that does not fit.
   */
  static Optional<Finding> find(Section section, List<Token> line, int last) {
    for (int i = 0; i <= Math.min(last, line.size() - 1); i++) {
      Token token = line.get(i);
      Origin origin = section.origin(token);
      String text = origin.text();
      switch (token.getType()) {
        case HandwheelLexer.OPEN_STRING -> {
          return Optional.of(
              i > 0
                      && LineProblem.touches(line.get(i - 1), token)
                      && LineProblem.isNumber(line.get(i - 1))
                  ? inchMark(origin)
                  : LineProblem.finding(origin, "the text has no closing quote")
                      .withFix(Fix.replace("Close the text", origin, text.stripTrailing() + '"')));
        }
        case HandwheelLexer.STRING -> {
          if (i > 0
              && LineProblem.touches(line.get(i - 1), token)
              && LineProblem.isNumber(line.get(i - 1))) {
            return Optional.of(inchMark(origin));
          }
        }
        case HandwheelLexer.TIGHT_DIV -> {
          if (i > 0 && line.get(i - 1).getType() == HandwheelLexer.PLUS) {
            String mended = text.replace("/", "/-");
            return Optional.of(
                LineProblem.finding(
                        origin, "a tolerance has both its signs: +" + LineProblem.shown(mended))
                    .withFix(Fix.replace("Write +" + LineProblem.shown(mended), origin, mended)));
          }
          return Optional.of(
              LineProblem.finding(
                      origin, "write blanks around `/` here; without blanks it is a fraction")
                  .withFix(Fix.replace("Put blanks around `/`", origin, text.replace("/", " / "))));
        }
        case HandwheelLexer.HASH_SIZE -> {
          return Optional.of(
              LineProblem.finding(
                  origin,
                  "`"
                      + text
                      + "` is neither a comment nor a size: put a blank after `#` for a"
                      + " comment, or write `no "
                      + text.substring(1)
                      + "` for a drill"));
        }
        case HandwheelLexer.ERROR -> {
          if (text.length() > BoundedLexer.LARGEST_TEXT) {
            return Optional.of(
                LineProblem.finding(
                    section.header(), "this text is larger than 10 MB, so nothing of it is read"));
          }
          if (origin.end() - section.lineStart(origin) > BoundedLexer.LONGEST_LINE) {
            return Optional.of(
                LineProblem.finding(
                    origin,
                    "a line has at most "
                        + BoundedLexer.LONGEST_LINE
                        + " characters; from here on it is not read"));
          }
          if (text.equals("(")) {
            return Optional.of(
                LineProblem.finding(
                    origin, "brackets are nested more than " + BoundedLexer.MOST_NESTED + " deep"));
          }
          return Optional.of(strayCharacter(section, line, i));
        }
        case HandwheelLexer.COMMA -> {
          if (isDecimalComma(line, i)) {
            Origin number = section.origin(line.get(i - 1)).to(section.origin(line.get(i + 1)));
            String mended = number.text().replace(',', '.');
            return Optional.of(
                LineProblem.finding(number, "write a decimal point, not a comma: " + mended)
                    .withFix(Fix.replace("Write " + mended, number, mended)));
          }
        }
        case HandwheelLexer.FRACTION -> {
          if (i > 0 && line.get(i - 1).getType() == HandwheelLexer.SLASH) {
            String mended = text.replace("/", " / ");
            return Optional.of(
                LineProblem.finding(
                        origin,
                        "`"
                            + LineProblem.shown(text)
                            + "` is a fraction; to divide twice write blanks")
                    .withFix(Fix.replace("Put blanks around `/`", origin, mended)));
          }
          if (i > 0 && line.get(i - 1).getType() == HandwheelLexer.INT) {
            Origin number = section.origin(line.get(i - 1)).to(origin);
            String mended = line.get(i - 1).getText() + "-" + text;
            return Optional.of(
                LineProblem.finding(number, "write a mixed number without blanks: " + mended)
                    .withFix(Fix.replace("Write " + mended, number, mended)));
          }
        }
        default -> {}
      }
    }
    return Optional.empty();
  }

  private static Finding inchMark(Origin origin) {
    return LineProblem.finding(
        origin, "`\"` starts a text; for inches write `in` behind the number");
  }

  private static Finding strayCharacter(Section section, List<Token> line, int at) {
    Origin origin = section.origin(line.get(at));
    String text = origin.text();
    boolean behindNumber = at > 0 && LineProblem.touches(line.get(at - 1), line.get(at));
    behindNumber &= at > 0 && LineProblem.isNumber(line.get(at - 1));
    if (behindNumber && INCH_MARKS.contains(text)) {
      return LineProblem.finding(origin, "for inches write `in` behind the number")
          .withFix(Fix.replace("Write ` in`", origin, " in"));
    }
    if (CURLY_QUOTES.contains(text)) {
      List<Edit> edits =
          line.stream()
              .map(section::origin)
              .filter(other -> CURLY_QUOTES.contains(other.text()))
              .map(other -> new Edit(other, "\""))
              .toList();
      Finding finding =
          LineProblem.finding(origin, "write the plain quote \" instead of `" + text + "`");
      return edits.size() == 2 ? finding.withFix(new Fix("Write plain quotes", edits)) : finding;
    }
    return switch (text) {
      case "\\" ->
          LineProblem.finding(
              origin, "`\\` joins a line to the next and must be the last on its line");
      case "'", "\u2018", "\u2019" ->
          LineProblem.finding(origin, "a text stands in double quotes: \"...\"");
      case "{", "}" ->
          LineProblem.finding(origin, "there are no braces: a section ends where the next begins");
      default ->
          LineProblem.finding(origin, "`" + LineProblem.shown(text) + "` means nothing here");
    };
  }

  /** Digits, comma, digits without a blank, outside parentheses: (6,13) is a position. */
  private static boolean isDecimalComma(List<Token> line, int comma) {
    if (comma == 0 || comma + 1 >= line.size()) {
      return false;
    }
    Token before = line.get(comma - 1);
    Token after = line.get(comma + 1);
    boolean inside =
        line.subList(0, comma).stream()
                .mapToInt(
                    t ->
                        t.getType() == HandwheelLexer.LP
                            ? 1
                            : t.getType() == HandwheelLexer.RP ? -1 : 0)
                .sum()
            > 0;
    return !inside
        && before.getType() == HandwheelLexer.INT
        && after.getType() == HandwheelLexer.INT
        && LineProblem.touches(before, line.get(comma))
        && LineProblem.touches(line.get(comma), after);
  }
}
