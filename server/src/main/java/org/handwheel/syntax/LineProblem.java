package org.handwheel.syntax;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.syntax.Expectations.Expected;
import org.handwheel.syntax.Finding.Edit;
import org.handwheel.syntax.Finding.Fix;

/** Words for a line the grammar cannot read: one finding a line, at the token that does not fit. */
final class LineProblem {
  static final String RULE = "syntax";
  private static final int MOST_PHRASES = 6;
  private static final int LONGEST_SHOWN = 24;
  private static final Set<String> INCH_MARKS = Set.of("\u201d", "\u2033", "''");
  private static final Set<String> CURLY_QUOTES = Set.of("\u201c", "\u201d", "\u201e");

  /** Units as people write them, and as the language does. */
  private static final Map<String, String> UNIT_WORDS =
      Map.ofEntries(
          Map.entry("inches", "in"),
          Map.entry("ins", "in"),
          Map.entry("millimetre", "mm"),
          Map.entry("millimetres", "mm"),
          Map.entry("millimeter", "mm"),
          Map.entry("millimeters", "mm"),
          Map.entry("mms", "mm"),
          Map.entry("thous", "thou"),
          Map.entry("mil", "thou"),
          Map.entry("mils", "thou"),
          Map.entry("micron", "um"),
          Map.entry("microns", "um"),
          Map.entry("degree", "deg"),
          Map.entry("degrees", "deg"));

  private static final Map<String, Integer> FIRST_WORDS = firstWords();

  private LineProblem() {}

  /** What is wrong with a broken line; {@code line} ends in its newline or the end of input. */
  static Finding explain(Section section, List<Token> line) {
    List<Token> words = line.subList(0, line.size() - 1);
    Expectations expectations = Expectations.after(words);
    Optional<Finding> known = knownSlip(section, words, expectations.position());
    if (known.isPresent()) {
      return known.get();
    }
    if (expectations.position() == 0) {
      return unknown(section, words);
    }
    return slipOfValues(section, words, expectations)
        .orElseGet(() -> unexpected(section, words, expectations));
  }

  /** A {@code \\} with no line behind it that it could join. */
  static Finding joinedToNothing(Section section, Token join) {
    int at = section.origin(join).start();
    Origin origin = new Origin(section, at, at + 1);
    return finding(origin, "`\\` joins this line to the next, but no further line of it comes")
        .withFix(Fix.replace("Take the `\\` away", origin, ""));
  }

  /** A line whose first word starts no statement. */
  static Finding unknown(Section section, List<Token> words) {
    Optional<Finding> slip = knownSlip(section, words, 0);
    if (slip.isPresent()) {
      return slip.get();
    }
    Token first = words.get(0);
    Origin origin = section.origin(first);
    if (first.getType() == HandwheelLexer.COLON) {
      return finding(origin, "the name of a property comes before `:`");
    }
    if (first.getType() == HandwheelLexer.READ) {
      return finding(origin, "a reading begins with its setup: `in SETUP: read ...`");
    }
    boolean property = section.kind() == SectionKind.OWN && words.size() > 1 && isWord(first);
    if (property && isNumber(words.get(1))) {
      String mended = origin.text() + ":";
      return finding(origin, "a property has a colon behind its name: `" + mended + "`")
          .withFix(Fix.replace("Write `" + mended + "`", origin, mended));
    }
    String message = "no statement starts with `" + shown(origin.text()) + "`";
    return withNearest(section, words, 0, FIRST_WORDS, message);
  }

  private static Finding unexpected(Section section, List<Token> words, Expectations expectations) {
    int position = expectations.position();
    boolean atEnd = position >= words.size();
    Origin origin = atEnd ? after(section, words) : section.origin(words.get(position));
    List<String> phrases = Vocabulary.phrases(expectations);
    StringBuilder message = new StringBuilder();
    message.append(phrases.isEmpty() ? "this does not fit here" : "expected " + list(phrases));
    message.append(" after `").append(shown(words.get(position - 1).getText())).append('`');
    if (atEnd) {
      return finding(origin, message + ", but the line ends");
    }
    message.append(", found `").append(shown(origin.text())).append('`');
    Map<String, Integer> keywords = new TreeMap<>();
    for (Expected expected : expectations.expected()) {
      String keyword = Vocabulary.keyword(expected.tokenType());
      if (!keyword.isEmpty()
          && !expected.rules().contains(HandwheelParser.RULE_clauseWord)
          && !expected.rules().contains(HandwheelParser.RULE_startWord)) {
        keywords.put(keyword, expected.tokenType());
      }
    }
    return withNearest(section, words, position, keywords, message.toString());
  }

  /**
   * Adds a suggestion for a misspelt word. A word with which the whole line can be read is
   * preferred, and only such a one becomes a fix.
   */
  private static Finding withNearest(
      Section section,
      List<Token> words,
      int position,
      Map<String, Integer> candidates,
      String message) {
    Token wrong = words.get(position);
    Origin origin = section.origin(wrong);
    if (!isWord(wrong)) {
      return finding(origin, message);
    }
    Map<String, Integer> mending = new TreeMap<>(candidates);
    mending
        .entrySet()
        .removeIf(
            candidate ->
                !Nearest.isNear(origin.text(), candidate.getKey())
                    || !reads(words, position, candidate.getValue()));
    Optional<String> near = Nearest.to(origin.text(), mending.keySet());
    if (near.isPresent()) {
      Finding finding = finding(origin, message + "; did you mean `" + near.get() + "`?");
      return finding.withFix(Fix.replace("Write `" + near.get() + "`", origin, near.get()));
    }
    return Optional.of(wrong)
        .filter(word -> word.getType() == HandwheelLexer.ID)
        .flatMap(word -> Nearest.to(origin.text(), candidates.keySet()))
        .map(word -> finding(origin, message + "; did you mean `" + word + "`?"))
        .orElseGet(() -> finding(origin, message));
  }

  /** Whether the line can be read with another kind of token in one place. */
  private static boolean reads(List<Token> words, int position, int type) {
    List<Token> mended = new ArrayList<>(words);
    mended.set(position, new CommonToken(type));
    Expectations expectations = Expectations.after(mended);
    return expectations.position() == words.size() && expectations.mayEnd();
  }

  /** Slips in numbers, sums and tolerances, told by what the grammar wanted instead. */
  private static Optional<Finding> slipOfValues(
      Section section, List<Token> words, Expectations expectations) {
    int position = expectations.position();
    boolean tolerance =
        expectations.expected().stream()
            .anyMatch(e -> e.rules().contains(HandwheelParser.RULE_sizeTolerance));
    if (position >= words.size()) {
      return tolerance ? openSum(section, words, position - 1) : Optional.empty();
    }
    Token wrong = words.get(position);
    Token before = words.get(position - 1);
    Origin origin = section.origin(wrong);
    if (tolerance && isOperator(wrong)) {
      return openSum(section, words, position);
    }
    if (tolerance && position >= 2 && isOperator(words.get(position - 2))) {
      return openSum(section, words, position - 2);
    }
    if (wrong.getType() == HandwheelLexer.MINUS && isOperator(before)) {
      return Optional.of(
          finding(origin, "put a negative number behind an operator in parentheses: (-3)"));
    }
    if (wrong.getType() == HandwheelLexer.SLASH && touches(before, wrong) && isWord(before)) {
      return Optional.of(finding(origin, "a name cannot contain `/`"));
    }
    boolean thread =
        expectations.expected().stream()
            .anyMatch(e -> e.begun().contains(HandwheelParser.RULE_thread));
    if (thread && isNumber(wrong)) {
      return Optional.of(
          finding(
              origin,
              "a size is written `dia 6`, a thread with its series: `M6`, `UNC 1/4-20`, `BA 2`"));
    }
    String unit = UNIT_WORDS.get(origin.text().toLowerCase(Locale.ROOT));
    boolean wantsUnit =
        expectations.expected().stream()
            .anyMatch(e -> e.begun().contains(HandwheelParser.RULE_lengthUnit));
    if (unit != null && (wantsUnit || isNumber(before))) {
      return Optional.of(
          finding(origin, "write the unit as `" + unit + "`")
              .withFix(Fix.replace("Write `" + unit + "`", origin, unit)));
    }
    if (wrong.getType() == HandwheelLexer.EQ && words.get(0).getType() != HandwheelLexer.LET) {
      Origin blank = new Origin(section, section.origin(before).end(), origin.end());
      return Optional.of(
          finding(origin, "a statement has no `=`; only `let` has one")
              .withFix(Fix.replace("Take the `=` away", blank, "")));
    }
    return Optional.empty();
  }

  /** A sum where a tolerance may follow; {@code operator} is where the sum's operator stands. */
  private static Optional<Finding> openSum(Section section, List<Token> words, int operator) {
    int at = operator;
    while (at > 0 && !isOperator(words.get(at))) {
      at--;
    }
    return at == 0
        ? Optional.empty()
        : Optional.of(
            finding(
                section.origin(words.get(at)),
                "write a tolerance as +-0.05 or +0.02/-0, and a sum before it in parentheses:"
                    + " (base + 2)"));
  }

  /**
   * Slips with a cause of their own, for which the list of what was expected would not help; looked
   * for up to the first token that does not fit.
   */
  private static Optional<Finding> knownSlip(Section section, List<Token> line, int last) {
    for (int i = 0; i <= Math.min(last, line.size() - 1); i++) {
      Token token = line.get(i);
      Origin origin = section.origin(token);
      String text = origin.text();
      switch (token.getType()) {
        case HandwheelLexer.OPEN_STRING -> {
          return Optional.of(
              i > 0 && touches(line.get(i - 1), token) && isNumber(line.get(i - 1))
                  ? inchMark(origin)
                  : finding(origin, "the text has no closing quote")
                      .withFix(Fix.replace("Close the text", origin, text.stripTrailing() + '"')));
        }
        case HandwheelLexer.STRING -> {
          if (i > 0 && touches(line.get(i - 1), token) && isNumber(line.get(i - 1))) {
            return Optional.of(inchMark(origin));
          }
        }
        case HandwheelLexer.TIGHT_DIV -> {
          if (i > 0 && line.get(i - 1).getType() == HandwheelLexer.PLUS) {
            String mended = text.replace("/", "/-");
            return Optional.of(
                finding(origin, "a tolerance has both its signs: +" + shown(mended))
                    .withFix(Fix.replace("Write +" + shown(mended), origin, mended)));
          }
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
          return Optional.of(strayCharacter(section, line, i));
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
          if (i > 0 && line.get(i - 1).getType() == HandwheelLexer.SLASH) {
            String mended = text.replace("/", " / ");
            return Optional.of(
                finding(origin, "`" + shown(text) + "` is a fraction; to divide twice write blanks")
                    .withFix(Fix.replace("Put blanks around `/`", origin, mended)));
          }
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

  private static Finding inchMark(Origin origin) {
    return finding(origin, "`\"` starts a text; for inches write `in` behind the number");
  }

  private static Finding strayCharacter(Section section, List<Token> line, int at) {
    Origin origin = section.origin(line.get(at));
    String text = origin.text();
    boolean behindNumber = at > 0 && touches(line.get(at - 1), line.get(at));
    behindNumber &= at > 0 && isNumber(line.get(at - 1));
    if (behindNumber && INCH_MARKS.contains(text)) {
      return finding(origin, "for inches write `in` behind the number")
          .withFix(Fix.replace("Write ` in`", origin, " in"));
    }
    if (CURLY_QUOTES.contains(text)) {
      List<Edit> edits =
          line.stream()
              .map(section::origin)
              .filter(other -> CURLY_QUOTES.contains(other.text()))
              .map(other -> new Edit(other, "\""))
              .toList();
      return finding(origin, "write the plain quote \" instead of `" + text + "`")
          .withFix(new Fix("Write plain quotes", edits));
    }
    return switch (text) {
      case "\\" ->
          finding(origin, "`\\` joins a line to the next and must be the last on its line");
      case "'", "\u2018", "\u2019" -> finding(origin, "a text stands in double quotes: \"...\"");
      case "{", "}" -> finding(origin, "there are no braces: a section ends where the next begins");
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

  private static boolean isOperator(Token token) {
    return switch (token.getType()) {
      case HandwheelLexer.PLUS, HandwheelLexer.MINUS, HandwheelLexer.STAR, HandwheelLexer.SLASH ->
          true;
      default -> false;
    };
  }

  /** A name or any word of the language. */
  private static boolean isWord(Token token) {
    return token.getType() == HandwheelLexer.ID || !Vocabulary.keyword(token.getType()).isEmpty();
  }

  private static boolean touches(Token left, Token right) {
    return left.getStopIndex() + 1 == right.getStartIndex();
  }

  private static Origin after(Section section, List<Token> words) {
    Origin last = section.origin(words.get(words.size() - 1));
    return new Origin(section, last.end(), last.end());
  }

  private static String list(List<String> phrases) {
    int last = phrases.size() - 1;
    if (phrases.size() > MOST_PHRASES) {
      return String.join(", ", phrases.subList(0, MOST_PHRASES)) + ", ...";
    }
    return last == 0
        ? phrases.get(0)
        : String.join(", ", phrases.subList(0, last)) + " or " + phrases.get(last);
  }

  /** A word short enough for a message, without characters that cannot be seen. */
  private static String shown(String word) {
    StringBuilder clean = new StringBuilder();
    for (int c : word.strip().codePoints().toArray()) {
      int type = Character.getType(c);
      boolean visible =
          type != Character.CONTROL
              && type != Character.FORMAT
              && type != Character.SURROGATE
              && type != Character.PRIVATE_USE
              && type != Character.UNASSIGNED
              && !Character.isWhitespace(c)
              && !Character.isSpaceChar(c);
      clean.append(visible || c == ' ' ? Character.toString(c) : String.format("U+%04X", c));
      if (clean.length() > LONGEST_SHOWN) {
        return clean.substring(0, clean.offsetByCodePoints(0, 18)) + "...";
      }
    }
    return clean.toString();
  }

  private static Finding finding(Origin origin, String message) {
    return new Finding(RULE, Severity.ERROR, origin, message);
  }

  private static Map<String, Integer> firstWords() {
    Map<String, Integer> words = new TreeMap<>();
    for (Expected expected : Expectations.after(List.of()).expected()) {
      String keyword = Vocabulary.keyword(expected.tokenType());
      if (!expected.rules().contains(HandwheelParser.RULE_property) && !keyword.isEmpty()) {
        words.put(keyword, expected.tokenType());
      }
    }
    return Collections.unmodifiableMap(words);
  }
}
