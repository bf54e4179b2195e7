package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.DimensionLineContext;
import org.handwheel.grammar.HandwheelParser.PairToleranceContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Places where a lexer or a parser easily reads something other than what was meant. */
class TrapTests {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "25.4 mm | DEC MM",
        "1/8 in | FRACTION IN",
        "1-3/8 in | MIXED IN",
        "1 - 3/8 | INT MINUS FRACTION",
        "1 3/8 | INT FRACTION",
        "6/2.5 | TIGHT_DIV",
        "6.5/2 | TIGHT_DIV",
        "6.5/2.5 | TIGHT_DIV",
        "6 / 2 | INT SLASH INT",
        "b/6/2 | ID SLASH FRACTION",
        "42-6 | INT MINUS INT",
        "42-6/2 | MIXED",
        "length-6 | ID",
        "length - 6 | LENGTH MINUS INT",
        "a-b-2 | ID",
        "a- 2 | ID MINUS INT",
        "45x28x18 mm | INT X INT X INT MM",
        "45 × 28 | INT X INT",
        "x2 | X INT",
        "xa2 | ID",
        "x_2 | ID",
        "3x | INT X",
        "M6 | THREAD_M",
        "m8x1 | THREAD_M",
        "M5x0.8 | THREAD_M",
        "M6a | ID",
        "UNC 1/4-20 | THREAD_NAMED",
        "UNC no 10-24 | THREAD_NAMED",
        "unf 1-1/2-12 | THREAD_NAMED",
        "UNC 1-8 | THREAD_NAMED",
        "BA 2 | THREAD_NAMED",
        "BSW 1/4 | THREAD_NAMED",
        "ba | ID",
        "no 7 | NUMBER_DRILL",
        "no | ID",
        "no7 | ID",
        "letter F | LETTER_DRILL",
        "letter Foo | LETTER_DRILL ID",
        "#7 | HASH_SIZE",
        "#10-32 | HASH_SIZE MINUS INT",
        "+-0.05 | PM DEC",
        "+/-0.05 | PM DEC",
        "±0.05 | PM DEC",
        "+0/-0.05 | PLUS INT SLASH MINUS DEC",
        "+0/0.05 | PLUS TIGHT_DIV",
        "−3 | MINUS INT",
        "⌀ 5 | DIA INT",
        "5 µm | INT UM",
        "5 μm | INT UM",
        "5 µin | INT UIN",
        "45° | INT DEG",
        "90 m/min | INT RATE_UNIT",
        "0.1 mm/tooth | DEC RATE_UNIT",
        "6 mm/minwidth | INT RATE_UNIT WIDTH",
        "H7 | ID",
        "h7 | ID",
        "3 IN 3 Inch | INT IN INT IN",
        "Center centre | CENTRE CENTRE",
        "angle-plate | ANGLE_PLATE",
        "angle - plate | ID MINUS ID",
        "operator-left | OPERATOR_LEFT",
        "mid-grips | ID",
        "größe | ID",
        "GRÖSSE | ID",
        "Ærø-Ÿß | ID",
        "6÷2 | INT ERROR INT",
        "Ā | ERROR",
        ".5 | DEC",
        "5. | DEC",
        "1.2.3 | DEC DEC",
        "1e5 | INT ID"
      })
  void tokens(String text, String expected) {
    assertThat(tokenNames(text)).isEqualTo(expected);
  }

  private static String tokenNames(String text) {
    return SyntaxTree.parse("x.plan", text).sections().get(0).tokens().stream()
        .filter(t -> t.getChannel() == Token.DEFAULT_CHANNEL && t.getType() != Token.EOF)
        .map(t -> HandwheelLexer.VOCABULARY.getSymbolicName(t.getType()))
        .collect(Collectors.joining(" "));
  }

  @Test
  void blanksOfAllSortsAreBlank() {
    assertThat(tokenNames("\ufeff3\u00a0mm\u2007+\u202f2\t")).isEqualTo("INT MM PLUS INT");
  }

  /** A tolerance is never taken for a sum. */
  @Test
  void aPairOfDeviationsIsATolerance() {
    for (String size : List.of("16 +0/-0.03", "16 mm +0/-0.03", "base +0/-0.03", "(a + 2) +0/-3")) {
      DimensionLineContext line = (DimensionLineContext) statement("height " + size);
      assertThat(line.sizeTolerance()).as(size).isInstanceOf(PairToleranceContext.class);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "let a = b/6 | 1",
        "let a = b / 6 / 2 | 1",
        "let a = b/(6/2) | 1",
        "let a = 3/8 + 1-1/4 | 1",
        "let a = -b + 2 | 1",
        "let a = 3*(-2) | 1",
        "let a = 42-6 | 1",
        "hole bore in top, dia 5 | 1",
        "hole slot in top, dia 5 | 1",
        "hole a in top, dia (width/2) | 1",
        "check bore, slot, edge with mic | 1",
        "let a = 3 mm/min | 1",
        "pattern to of a, row | 0",
        "hole plan in top | 0",
        "let b = x + 2 | 0",
        "let b = length*2 | 1",
        "rough top to height + 0.2, leaving 0.1 | 1",
        "drill a, no 7 then letter F then 6 | 1",
        "size 45x28x18 mm | 1",
        "tolerance ISO 2768 m | 1",
        "in a: read height 19.2 19.1 mm with mic | 1"
      })
  void lines(String line, int parses) {
    boolean clean = MessageTests.problems(SyntaxTree.parse("x.plan", line)).isEmpty();
    assertThat(clean).isEqualTo(parses == 1);
  }

  @Test
  void aCommentBeginsWithAnyOtherMark() {
    for (String line : List.of("length 5 # 7", "length 5 #", "length 5 #a7", "#", "# plan")) {
      assertThat(MessageTests.problems(SyntaxTree.parse("x.plan", line))).as(line).isEmpty();
    }
    assertThat(SyntaxTree.parse("x.plan", "# plan\n#plan").sections()).hasSize(1);
  }

  @Test
  void aBackslashJoinsAndACommentMayFollowIt() {
    Section section =
        SyntaxTree.parse("x.plan", "length \\ # size\r\n 5 \\\n mm\nwidth 6").sections().get(0);
    assertThat(section.problems()).isEmpty();
    assertThat(section.lines()).hasSize(2);
  }

  @Test
  void aBackslashJoinsNoHeaderAndNotTheEnd() {
    SyntaxTree tree = SyntaxTree.parse("x.plan", "part\nlength 5 \\\nstock\nkerf 1 \\\n  # end\n");
    assertThat(tree.sections())
        .extracting(Section::kind)
        .containsExactly(SectionKind.PREAMBLE, SectionKind.PART, SectionKind.STOCK);
    assertThat(MessageTests.problems(tree)).hasSize(1);
    Finding problem = MessageTests.problems(tree).get(0);
    assertThat(tree.line(problem.origin())).isEqualTo(1);
    assertThat(tree.source().columnAt(tree.start(problem.origin()))).isEqualTo(9);
    String mended = MessageTests.apply(tree, problem.fixes().get(0));
    assertThat(MessageTests.problems(SyntaxTree.parse("x.plan", mended))).isEmpty();
    SyntaxTree end = SyntaxTree.parse("x.plan", "part\nlength 5 \\\n");
    assertThat(MessageTests.problems(end)).hasSize(1);
  }

  @Test
  void aProblemBehindAJoinIsAboutTheWholeLine() {
    Section section =
        SyntaxTree.parse("x.plan", "length 5 \\\n mm foo\nwidth 6\n").sections().get(0);
    assertThat(section.problems()).hasSize(1);
    assertThat(section.isBroken(section.lines().get(0))).isTrue();
    assertThat(section.isBroken(section.lines().get(1))).isFalse();
  }

  /** The lexer counts lines by LF alone; places must come out right all the same. */
  @Test
  void aLoneCarriageReturnEndsALine() {
    SyntaxTree tree =
        SyntaxTree.parse(
            "x.plan", "part\rlength 5\rwidht 6\rheight 7 # ignore a: b\r# ignore c: d\r");
    assertThat(tree.sections()).hasSize(2);
    Section part = tree.sections().get(1);
    assertThat(part.problems()).hasSize(1);
    assertThat(tree.line(part.problems().get(0).origin())).isEqualTo(2);
    assertThat(part.lines().stream().filter(part::isBroken)).hasSize(1);
    assertThat(part.ignores()).extracting(Ignore::line).containsExactly(3, 5);
  }

  @Test
  void charactersOutsideTheBasicPlaneCountAsTwoUnits() {
    SyntaxTree tree = SyntaxTree.parse("x.plan", "note \"\ud83d\udd27\" foo");
    Finding problem = MessageTests.problems(tree).get(0);
    assertThat(problem.origin().text()).isEqualTo("foo");
    assertThat(tree.start(problem.origin())).isEqualTo(10);
  }

  @Test
  void anIgnoreIsAboutItsLineOrTheNext() {
    Section section =
        SyntaxTree.parse(
                "x.plan",
                "width 5 # ignore overcut: seen\n  # ignore a-b :  two words \n"
                    + "length 5\n# ignore bare\n# ignored by all\nheight 2")
            .sections()
            .get(0);
    assertThat(section.ignores())
        .extracting(Ignore::rule)
        .containsExactly("overcut", "a-b", "bare");
    assertThat(section.ignores())
        .extracting(Ignore::reason)
        .containsExactly("seen", "two words", "");
    assertThat(section.ignores()).extracting(Ignore::line).containsExactly(0, 2, 4);
  }

  @Test
  void anIgnoreIsAboutAllOfAJoinedLine() {
    Section section =
        SyntaxTree.parse(
                "x.plan", "width 1\n# ignore a: b\nlength \\\n 5 \\\n mm # ignore c: d\nheight 2")
            .sections()
            .get(0);
    for (Ignore ignore : section.ignores()) {
      for (int line = 0; line < 3; line++) {
        assertThat(ignore.isAbout(section.origin(section.lines().get(line)))).isEqualTo(line == 1);
      }
      assertThat(ignore.isAbout(section.origin(section.lines().get(1).getStop()))).isTrue();
    }
    assertThat(section.ignores()).hasSize(2);
  }

  private static ParseTree statement(String line) {
    Section section = SyntaxTree.parse("x.plan", line).sections().get(0);
    assertThat(section.problems()).isEmpty();
    HandwheelParser.ContentContext content = section.lines().get(0);
    return content.statement();
  }
}
