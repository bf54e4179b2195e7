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
import org.handwheel.syntax.Finding.Fix;

/** Words for a line the grammar cannot read: one finding a line, at the token that does not fit. */
final class LineProblem {
  static final String RULE = "syntax";
  private static final int MOST_PHRASES = 6;
  private static final int LONGEST_SHOWN = 24;

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

  /** What the trade calls the cutting of a face, and the language does not. */
  private static final Set<String> CUTTING_WORDS = Set.of("face", "mill", "skim", "cut", "side");

  private static final Set<Integer> CLAUSE_WORDS =
      HandwheelParser._ATN
          .nextTokens(HandwheelParser._ATN.ruleToStartState[HandwheelParser.RULE_clauseWord])
          .toSet();
  private static final Map<String, Integer> FIRST_WORDS = firstWords();

  private LineProblem() {}

  /** What is wrong with a broken line; {@code line} ends in its newline or the end of input. */
  static Finding explain(Section section, List<Token> line) {
    List<Token> words = line.subList(0, line.size() - 1);
    Expectations expectations = Expectations.after(words);
    Optional<Finding> known = Slips.find(section, words, expectations.position());
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
    Optional<Finding> slip = Slips.find(section, words, 0);
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
    if (section.kind() == SectionKind.OWN && isWord(first) && words.size() > 1) {
      return withoutColon(section, words);
    }
    if (CUTTING_WORDS.contains(first.getText().toLowerCase(Locale.ROOT))) {
      return finding(
          origin,
          "no statement starts with `"
              + shown(origin.text())
              + "`; a face is cut by `clean`, `rough` or `finish`");
    }
    boolean clause = CLAUSE_WORDS.contains(first.getType());
    String word = "`" + shown(origin.text()) + "`";
    String message =
        clause ? word + " begins a clause, not a line" : "no statement starts with " + word;
    return withNearest(section, words, 0, FIRST_WORDS, message);
  }

  /** {@code hold in vise V80}: the word for the thing where its name alone is wanted. */
  private static boolean isKindBeforeName(List<Token> words) {
    return words.get(0).getType() == HandwheelLexer.HOLD
        && words.get(1).getType() == HandwheelLexer.IN
        && words.get(2).getType() == HandwheelLexer.VISE
        && words.get(3).getType() == HandwheelLexer.ID;
  }

  /** A property whose colon is missing or stands behind a second word. */
  private static Finding withoutColon(Section section, List<Token> words) {
    Origin name = section.origin(words.get(0));
    boolean twoWords =
        words.size() > 2 && isWord(words.get(1)) && words.get(2).getType() == HandwheelLexer.COLON;
    if (twoWords) {
      Origin both = name.to(section.origin(words.get(1)));
      String mended = name.text() + "-" + words.get(1).getText();
      return finding(both, "the name of a property is one word: `" + mended + "`")
          .withFix(Fix.replace("Write `" + mended + "`", both, mended));
    }
    String mended = name.text() + ":";
    Finding finding = finding(name, "a property has a colon behind its name: `" + mended + "`");
    return isNumber(words.get(1))
        ? finding.withFix(Fix.replace("Write `" + mended + "`", name, mended))
        : finding;
  }

  private static Finding unexpected(Section section, List<Token> words, Expectations expectations) {
    int position = expectations.position();
    boolean atEnd = position >= words.size();
    Origin origin = atEnd ? after(section, words) : section.origin(words.get(position));
    if (position == 3 && !atEnd && isKindBeforeName(words)) {
      String name = words.get(3).getText();
      Origin kind = section.origin(words.get(2)).to(origin);
      return finding(kind, "write the name of the vise alone: `hold in " + name + "`")
          .withFix(Fix.replace("Write `" + name + "`", kind, name));
    }
    List<String> phrases = Vocabulary.phrases(expectations);
    StringBuilder message = new StringBuilder();
    message.append(phrases.isEmpty() ? "this does not fit here" : "expected " + list(phrases));
    message.append(" after `").append(shown(words.get(position - 1).getText())).append('`');
    if (atEnd) {
      return finding(origin, message + ", but the line ends");
    }
    message.append(", found `").append(shown(origin.text())).append('`');
    if (words.get(position).getType() == HandwheelLexer.THREAD_M && phrases.contains("a name")) {
      return finding(origin, message + "; what looks like a thread is no name");
    }
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
    return Expectations.isWhole(mended);
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
    Optional<Finding> comma = withoutComma(section, words, expectations);
    if (comma.isPresent()) {
      return comma;
    }
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

  /** A comma left out where one is needed. */
  private static Optional<Finding> withoutComma(
      Section section, List<Token> words, Expectations expectations) {
    boolean wanted =
        expectations.expected().stream().anyMatch(e -> e.tokenType() == HandwheelLexer.COMMA);
    int position = expectations.position();
    if (!wanted) {
      return Optional.empty();
    }
    List<Token> mended = new ArrayList<>(words);
    mended.add(position, new CommonToken(HandwheelLexer.COMMA));
    if (Expectations.readable(mended) <= position + 1) {
      return Optional.empty();
    }
    Origin origin = section.origin(words.get(position));
    Finding finding = finding(origin, "put a comma before `" + shown(origin.text()) + "`");
    Origin gap = after(section, words.subList(0, position));
    return Optional.of(
        Expectations.isWhole(mended)
            ? finding.withFix(Fix.replace("Put a comma", gap, ","))
            : finding);
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

  static boolean isNumber(Token token) {
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

  static boolean touches(Token left, Token right) {
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
  static String shown(String word) {
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
      clean.append(visible || c == ' ' ? Character.toString(c) : codePoint(c));
      if (clean.length() > LONGEST_SHOWN) {
        return clean.substring(0, clean.offsetByCodePoints(0, 18)) + "...";
      }
    }
    return clean.toString();
  }

  private static String codePoint(int c) {
    String digits = Integer.toHexString(c).toUpperCase(Locale.ROOT);
    return "U+" + "0".repeat(Math.max(0, 4 - digits.length())) + digits;
  }

  static Finding finding(Origin origin, String message) {
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
