package org.handwheel.editors;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.syntax.Examples;
import org.junit.jupiter.api.Test;

/**
 * The colours that VS Code gives before the server is there come from the same words as the lexer's
 * tokens.
 */
class TextMateGrammarTests {
  private static final Path GRAMMAR =
      Path.of("../editor-client/vscode/syntaxes/handwheel.tmLanguage.json");
  private static final Path LEXER =
      Path.of("../grammar/src/main/antlr4/org/handwheel/grammar/Handwheel.g4");
  private static final Path EXAMPLES = Path.of("../examples");

  private static final int RANDOM_LINES = 20_000;

  /** What random lines are made of: words, beginnings of words, marks and near misses. */
  private static final List<String> PIECES =
      List.of(
          "plan",
          "Rough",
          "soft-strip",
          "soft",
          "x",
          "X",
          "y",
          "z",
          "x_",
          "operator-left",
          "in",
          "inch",
          "no",
          "no 7",
          "letter",
          "letter f",
          "m",
          "M6",
          "m6x1",
          "m6x",
          "M8x1.25",
          "m6.5",
          "unc",
          "unc no 8-32",
          "UNC 1/4-20",
          "unf 1-1/4",
          "bsw 1/4",
          "bsf 2",
          "ba 2",
          "me 1-1/2-9",
          "mm",
          "mm/min",
          "m/min",
          "thou/tooth",
          "rpm",
          "kW",
          "tenth",
          "tenths",
          "um",
          "uin",
          "\u00b5m",
          "\u03bcin",
          "\u00b5",
          "\u00b0",
          "deg",
          "%",
          "\u2300",
          "\u00d7",
          "\u00e9t\u00e9",
          "V80",
          "a_b",
          "_",
          "1",
          "25",
          "1.5",
          "1.",
          ".5",
          "1/8",
          "1-3/8",
          "6/2.5",
          "0.5/3",
          "2.5/3.",
          "#7",
          "# 7",
          "#",
          "#x",
          "\"",
          "\"a b\"",
          "+",
          "-",
          "\u2212",
          "*",
          "/",
          "=",
          "+-",
          "+/-",
          "\u00b1",
          ",",
          ":",
          "(",
          ")",
          ".",
          "\\",
          ";",
          "{",
          "\u00a0",
          "\u202f",
          "\t");

  @Test
  void everyWordOfTheLexerHasItsColour() throws IOException {
    List<String> lines = new ArrayList<>();
    String words = Files.readString(LEXER);
    int from = words.indexOf("// ---- Words");
    int to = words.indexOf("// Designations", from);
    Matcher literal = Pattern.compile("'([^'\\\\\n]+)'").matcher(words.substring(from, to));
    while (literal.find()) {
      String word = literal.group(1);
      lines.add(word);
      lines.add(word.toUpperCase(Locale.ROOT) + " " + word + "-" + word + " " + word + "9 " + word);
    }
    assertThat(lines).hasSizeGreaterThan(400);
    assertSame(lines);
  }

  @Test
  void examplesAndTheReferenceHaveTheColoursOfTheirTokens() throws IOException {
    List<String> lines = new ArrayList<>(Examples.reference().lines().toList());
    try (Stream<Path> files = Files.walk(EXAMPLES)) {
      for (Path file :
          files.filter(path -> path.toString().matches(".*\\.(plan|shop)")).sorted().toList()) {
        lines.addAll(Files.readAllLines(file));
      }
    }
    assertThat(lines).hasSizeGreaterThan(1000);
    assertSame(lines);
  }

  @Test
  void randomLinesHaveTheColoursOfTheirTokens() throws IOException {
    long seed = 20261127;
    Random random = new Random(seed);
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < RANDOM_LINES; i++) {
      StringBuilder line = new StringBuilder();
      for (int piece = random.nextInt(7) + 1; piece > 0; piece--) {
        line.append(PIECES.get(random.nextInt(PIECES.size())));
        line.append(random.nextInt(3) == 0 ? " " : "");
      }
      lines.add(line.toString());
    }
    try {
      assertSame(lines);
    } catch (AssertionError error) {
      throw new AssertionError("with the seed " + seed, error);
    }
  }

  @Test
  void everyKindOfTokenIsSeen() {
    Set<String> unknown = new TreeSet<>();
    for (int type = 1; type <= HandwheelLexer.VOCABULARY.getMaxTokenType(); type++) {
      if (type != HandwheelLexer.NL && type != HandwheelLexer.WS && scope(type).isEmpty()) {
        unknown.add(HandwheelLexer.VOCABULARY.getSymbolicName(type));
      }
    }
    assertThat(unknown).isEmpty();
  }

  private static void assertSame(List<String> lines) throws IOException {
    TextMateGrammar grammar = TextMateGrammar.read(GRAMMAR);
    List<String> wrong = new ArrayList<>();
    for (String line : lines) {
      TextMateGrammar.Scopes scopes = grammar.scopes(line);
      HandwheelLexer lexer = new HandwheelLexer(CharStreams.fromString(line + "\n"));
      lexer.removeErrorListeners();
      for (Token token : lexer.getAllTokens()) {
        check(line, token, scopes, wrong);
      }
    }
    assertThat(wrong).isEmpty();
  }

  /** A token has one scope, and is a word by itself. */
  private static void check(
      String line, Token token, TextMateGrammar.Scopes scopes, List<String> wrong) {
    int start = line.offsetByCodePoints(0, token.getStartIndex());
    if (start >= line.length()) {
      return;
    }
    int end = Math.min(start + token.getText().length(), line.length());
    if (token.getType() == HandwheelLexer.JOIN) {
      end = start + 1;
    }
    String expected = scope(token.getType());
    boolean blank = expected.isEmpty();
    boolean alone = blank || start == 0 || differs(scopes, start - 1, start);
    boolean whole = true;
    for (int at = start; at < end; at++) {
      whole &= scopes.names().get(at).equals(blank ? "" : expected + ".handwheel");
      whole &= blank || at == start || !differs(scopes, at - 1, at);
    }
    if (!alone || !whole) {
      wrong.add(
          "%s in '%s' is not one '%s': %s"
              .formatted(token.getText(), line, expected, scopes.names().subList(start, end)));
    }
  }

  private static boolean differs(TextMateGrammar.Scopes scopes, int one, int other) {
    return !scopes.words().get(one).equals(scopes.words().get(other));
  }

  /** The scope of a kind of token; empty for blanks. */
  private static String scope(int type) {
    if (type >= HandwheelLexer.LANGUAGE && type <= HandwheelLexer.INSPECT) {
      return "keyword.control.section";
    }
    if (type >= HandwheelLexer.UNITS && type <= HandwheelLexer.CHECK) {
      return "keyword.other.statement";
    }
    if (type >= HandwheelLexer.VISE && type <= HandwheelLexer.READ) {
      return "keyword.other.clause";
    }
    if (type >= HandwheelLexer.LEFT && type <= HandwheelLexer.Z) {
      return "constant.language";
    }
    if (type >= HandwheelLexer.AT && type <= HandwheelLexer.WITH) {
      return "keyword.other.preposition";
    }
    if (type >= HandwheelLexer.MM && type <= HandwheelLexer.POWER_UNIT) {
      return "keyword.other.unit";
    }
    return switch (type) {
      case HandwheelLexer.PM -> "keyword.operator.tolerance";
      case HandwheelLexer.PLUS,
          HandwheelLexer.MINUS,
          HandwheelLexer.STAR,
          HandwheelLexer.SLASH,
          HandwheelLexer.EQ ->
          "keyword.operator";
      case HandwheelLexer.COMMA, HandwheelLexer.COLON -> "punctuation.separator";
      case HandwheelLexer.LP, HandwheelLexer.RP -> "punctuation.section.parens";
      case HandwheelLexer.NUMBER_DRILL,
          HandwheelLexer.LETTER_DRILL,
          HandwheelLexer.THREAD_M,
          HandwheelLexer.THREAD_NAMED ->
          "constant.other.designation";
      case HandwheelLexer.MIXED, HandwheelLexer.FRACTION, HandwheelLexer.DEC, HandwheelLexer.INT ->
          "constant.numeric";
      case HandwheelLexer.TIGHT_DIV -> "invalid.illegal.number";
      case HandwheelLexer.HASH_SIZE -> "invalid.illegal.number-sign";
      case HandwheelLexer.STRING -> "string.quoted.double";
      case HandwheelLexer.OPEN_STRING -> "string.quoted.double.unclosed";
      case HandwheelLexer.ID -> "variable.other";
      case HandwheelLexer.JOIN -> "punctuation.separator.continuation";
      case HandwheelLexer.COMMENT -> "comment.line.number-sign";
      case HandwheelLexer.ERROR -> "invalid.illegal";
      default -> "";
    };
  }
}
