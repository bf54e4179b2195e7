package org.handwheel.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.syntax.Finding.Fix;

/** Words for a line the grammar cannot read: one finding a line, at the token that does not fit. */
final class LineProblem {
  static final String RULE = "syntax";
  private static final int MOST_PHRASES = 6;
  private static final Set<String> FIRST_WORDS = firstWords();

  private LineProblem() {}

  /** What is wrong with a broken line; {@code line} ends in its newline or the end of input. */
  static Finding explain(Section section, List<Token> line) {
    Optional<Finding> known = knownSlip(section, line);
    if (known.isPresent()) {
      return known.get();
    }
    List<Token> words = line.subList(0, line.size() - 1);
    Expectations expectations = Expectations.after(words);
    if (expectations.position() == 0 && !words.isEmpty()) {
      return unknown(section, words.get(0));
    }
    return unexpected(section, words, expectations);
  }

  static Finding unknown(Section section, ContentContext line) {
    return unknown(section, line.getStart());
  }

  private static Finding unknown(Section section, Token first) {
    Optional<Finding> slip = knownSlip(section, List.of(first));
    if (slip.isPresent()) {
      return slip.get();
    }
    Origin origin = section.origin(first);
    String message = "no statement starts with `" + shown(origin.text()) + "`";
    Optional<String> near = Nearest.to(origin.text(), FIRST_WORDS);
    if (near.isEmpty()) {
      return finding(origin, message);
    }
    return finding(origin, message + "; did you mean `" + near.get() + "`?")
        .withFix(Fix.replace("Write `" + near.get() + "`", origin, near.get()));
  }

  private static Finding unexpected(Section section, List<Token> words, Expectations expectations) {
    int position = expectations.position();
    boolean atEnd = position >= words.size();
    Origin origin =
        atEnd
            ? after(section, words)
            : section.origin(words.get(Math.min(position, words.size() - 1)));
    List<String> phrases = Vocabulary.phrases(expectations);
    StringBuilder message = new StringBuilder();
    message.append(phrases.isEmpty() ? "this does not fit here" : "expected " + list(phrases));
    if (position > 0) {
      message.append(" after `").append(shown(words.get(position - 1).getText())).append('`');
    }
    if (atEnd) {
      return finding(origin, message + ", but the line ends");
    }
    message.append(", found `").append(shown(origin.text())).append('`');
    Set<String> keywords = new TreeSet<>();
    expectations.expected().forEach(e -> keywords.add(Vocabulary.keyword(e.tokenType())));
    Optional<String> near =
        words.get(position).getType() == HandwheelLexer.ID
            ? Nearest.to(origin.text(), keywords)
            : Optional.empty();
    if (near.isEmpty()) {
      return finding(origin, message.toString());
    }
    return finding(origin, message + "; did you mean `" + near.get() + "`?")
        .withFix(Fix.replace("Write `" + near.get() + "`", origin, near.get()));
  }

  /** Slips with a cause of their own, for which the list of what was expected would not help. */
  private static Optional<Finding> knownSlip(Section section, List<Token> line) {
    for (int i = 0; i < line.size(); i++) {
      Token token = line.get(i);
      Origin origin = section.origin(token);
      String text = origin.text();
      switch (token.getType()) {
        case HandwheelLexer.OPEN_STRING -> {
          return Optional.of(
              i > 0 && touches(line.get(i - 1), token) && isNumber(line.get(i - 1))
                  ? finding(origin, "`\"` starts a text; for inches write `in` behind the number")
                  : finding(origin, "the text has no closing quote")
                      .withFix(Fix.replace("Close the text", origin, text.stripTrailing() + '"')));
        }
        case HandwheelLexer.STRING -> {
          if (i > 0 && touches(line.get(i - 1), token) && isNumber(line.get(i - 1))) {
            return Optional.of(
                finding(origin, "`\"` starts a text; for inches write `in` behind the number"));
          }
        }
        case HandwheelLexer.TIGHT_DIV -> {
          return Optional.of(
              finding(origin, "write blanks around `/` here; without blanks it is a fraction")
                  .withFix(Fix.replace("Put blanks around `/`", origin, text.replace("/", " / "))));
        }
        case HandwheelLexer.HASH_SIZE -> {
          return Optional.of(
              finding(
                  origin,
                  "`"
                      + text
                      + "` is neither a comment nor a size: put a blank after `#` for a"
                      + " comment, or write `no "
                      + text.substring(1)
                      + "` for a drill"));
        }
        case HandwheelLexer.ERROR -> {
          return Optional.of(strayCharacter(origin));
        }
        case HandwheelLexer.COMMA -> {
          if (isDecimalComma(line, i)) {
            Origin number = section.origin(line.get(i - 1)).to(section.origin(line.get(i + 1)));
            String mended = number.text().replace(',', '.');
            return Optional.of(
                finding(number, "write a decimal point, not a comma: " + mended)
                    .withFix(Fix.replace("Write " + mended, number, mended)));
          }
        }
        case HandwheelLexer.FRACTION -> {
          if (i > 0 && line.get(i - 1).getType() == HandwheelLexer.INT) {
            Origin number = section.origin(line.get(i - 1)).to(origin);
            String mended = line.get(i - 1).getText() + "-" + text;
            return Optional.of(
                finding(number, "write a mixed number without blanks: " + mended)
                    .withFix(Fix.replace("Write " + mended, number, mended)));
          }
        }
        default -> {}
      }
    }
    return Optional.empty();
  }

  private static Finding strayCharacter(Origin origin) {
    String text = origin.text();
    return switch (text) {
      case "\u201c", "\u201d", "\u201e", "\u2033" ->
          finding(origin, "write the plain quote \" instead of `" + text + "`")
              .withFix(Fix.replace("Write \"", origin, "\""));
      case "\\" ->
          finding(origin, "`\\` joins a line to the next and must be the last on its line");
      default -> finding(origin, "`" + shown(text) + "` means nothing here");
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
        && touches(before, line.get(comma))
        && touches(line.get(comma), after);
  }

  private static boolean isNumber(Token token) {
    return switch (token.getType()) {
      case HandwheelLexer.INT, HandwheelLexer.DEC, HandwheelLexer.FRACTION, HandwheelLexer.MIXED ->
          true;
      default -> false;
    };
  }

  private static boolean touches(Token left, Token right) {
    return left.getStopIndex() + 1 == right.getStartIndex();
  }

  private static Origin after(Section section, List<Token> words) {
    Origin last = section.origin(words.get(words.size() - 1));
    return new Origin(section, last.end(), last.end());
  }

  private static String list(List<String> phrases) {
    List<String> shown =
        phrases.size() > MOST_PHRASES ? new ArrayList<>(phrases.subList(0, MOST_PHRASES)) : phrases;
    if (phrases.size() > MOST_PHRASES) {
      return String.join(", ", shown) + ", ...";
    }
    if (shown.size() == 1) {
      return shown.get(0);
    }
    return String.join(", ", shown.subList(0, shown.size() - 1))
        + " or "
        + shown.get(shown.size() - 1);
  }

  /** A word short enough for a message. */
  private static String shown(String word) {
    String clean = word.strip().replace("\n", " ").replace("\r", " ");
    return clean.length() > 24 ? clean.substring(0, 21) + "..." : clean;
  }

  private static Finding finding(Origin origin, String message) {
    return new Finding(RULE, Severity.ERROR, origin, message);
  }

  private static Set<String> firstWords() {
    Set<String> words = new TreeSet<>();
    for (Expectations.Expected expected : Expectations.after(List.of()).expected()) {
      if (!expected.rules().contains(HandwheelParser.RULE_property)) {
        String keyword = Vocabulary.keyword(expected.tokenType());
        if (!keyword.isEmpty()) {
          words.add(keyword.toLowerCase(Locale.ROOT));
        }
      }
    }
    return Set.copyOf(words);
  }
}
