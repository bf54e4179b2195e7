package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ErrorNode;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.antlr.v4.runtime.tree.Trees;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The tree holds all of any text, and a broken line stays alone with its problem. */
class SyntaxTreeTests {
  private static final long SEED = Long.getLong("handwheel.seed", 20_261_125L);
  private static final List<String> RULE_NAMES = List.of(HandwheelParser.ruleNames);
  private static final int MUTANTS = 20_000;
  private static final List<String> TEXTS = List.copyOf(Examples.files().values());

  @Test
  void examplesAreWholeAndWithoutProblems() {
    for (String text : TEXTS) {
      SyntaxTree tree = SyntaxTree.parse("x.plan", text);
      assertWhole(text, tree);
      assertThat(tree.sections()).allSatisfy(s -> assertThat(s.problems()).isEmpty());
    }
    assertThat(TEXTS).hasSizeGreaterThan(30);
  }

  @Test
  void mutantsAreWhole() {
    Mutants mutants = new Mutants(SEED);
    int broken = 0;
    long nanos = 0;
    for (int i = 0; i < MUTANTS; i++) {
      String text = mutants.anywhere(TEXTS.get(mutants.below(TEXTS.size())));
      long start = System.nanoTime();
      SyntaxTree tree = SyntaxTree.parse("x.plan", text);
      nanos += System.nanoTime() - start;
      assertWhole(text, tree);
      broken += tree.sections().stream().anyMatch(s -> !s.problems().isEmpty()) ? 1 : 0;
    }
    System.out.println(
        "seed "
            + SEED
            + ": "
            + MUTANTS
            + " mutants, "
            + broken
            + " with problems, parsed in "
            + nanos / 1_000_000
            + " ms");
    // Far fewer would mean that the mutants test nothing.
    assertThat(broken).isGreaterThan(MUTANTS / 2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n",
        "\r",
        "\r\n\r\n",
        "\\",
        "\\\n",
        "x",
        "plan",
        "plan\\\n",
        "\ufeffplan \"x\"",
        "\u0000",
        "\ud83d",
        "\udd27 \ud83d",
        "part\rlength 5\rwidth 6\r",
        "#",
        "#7",
        "\"",
        ":",
        "setup\n\\\nsetup\n",
        " \t\u00a0",
        "note \"\ud83d\udd27\" foo",
        "own-part 3",
        "part\u00c9 3",
        "part-\n",
        "part\u017f",
        "\u212aerf 3",
        "part.",
        "part\"x\"",
        "PART\nLENGTH 5 MM"
      })
  void oddTextsAreWhole(String text) {
    assertWhole(text, SyntaxTree.parse("x.plan", text));
  }

  /** All text is in sections, all tokens in trees, lines hold no line end and one finding each. */
  private static void assertWhole(String text, SyntaxTree tree) {
    StringBuilder joined = new StringBuilder();
    for (Section section : tree.sections()) {
      joined.append(section.text());
      assertTokens(section);
      for (ContentContext line : section.lines()) {
        List<Token> ofLine = new ArrayList<>();
        collect(line, ofLine);
        check(ofLine.stream().noneMatch(t -> t.getType() == HandwheelLexer.NL), text);
        check(line.header() == null || line == section.lines().get(0), text);
      }
      assertProblems(section);
    }
    check(joined.toString().equals(text), text);
  }

  private static void check(boolean holds, String text) {
    if (!holds) {
      fail(text.replace("\r", "<CR>"));
    }
  }

  private static void assertTokens(Section section) {
    List<Token> inTree = new ArrayList<>();
    collect(section.tree(), inTree);
    int next = 0;
    int at = 0;
    for (Token token : section.tokens()) {
      check(token.getStartIndex() == at || token.getType() == Token.EOF, section.text());
      at = token.getStopIndex() + 1;
      if (token.getChannel() == Token.DEFAULT_CHANNEL) {
        check(next < inTree.size() && inTree.get(next++) == token, section.text());
      }
    }
    check(next == inTree.size(), section.text());
    check(inTree.get(next - 1).getType() == Token.EOF, section.text());
    int codePoints = section.text().codePointCount(0, section.text().length());
    check(inTree.get(next - 1).getStartIndex() == codePoints, section.text());
  }

  private static void assertProblems(Section section) {
    Set<Integer> lines = new HashSet<>();
    for (Finding problem : section.problems()) {
      Origin origin = problem.origin();
      check(lines.add(section.lineOf(origin.start())), section.text());
      check(0 <= origin.start() && origin.start() <= origin.end(), section.text());
      check(origin.end() <= section.text().length(), section.text());
      MessageTests.assertPlain(problem.message());
    }
    // Conversely, what the parser could not place is reported.
    List<Token> errors = new ArrayList<>();
    collectErrors(section.tree(), errors);
    for (Token error : errors) {
      check(lines.contains(section.lineOf(section.origin(error).start())), section.text());
    }
  }

  private static void collect(ParseTree node, List<Token> tokens) {
    if (node instanceof TerminalNode terminal) {
      // A token that recovery made up has no index and no text of the file.
      if (terminal.getSymbol().getTokenIndex() >= 0) {
        tokens.add(terminal.getSymbol());
      }
    }
    for (int i = 0; i < node.getChildCount(); i++) {
      collect(node.getChild(i), tokens);
    }
  }

  private static void collectErrors(ParseTree node, List<Token> tokens) {
    if (node instanceof ErrorNode error && error.getSymbol().getTokenIndex() >= 0) {
      tokens.add(error.getSymbol());
    }
    for (int i = 0; i < node.getChildCount(); i++) {
      collectErrors(node.getChild(i), tokens);
    }
  }

  // ---- A line changed, the others not
  // ------------------------------------------------------------

  /**
   * What a line is taken for.
   *
   * @param header whether the first word begins a section
   * @param tree its part of the tree
   * @param problems what is wrong with it and where in the line
   */
  private record Line(String text, boolean header, SectionKind kind, String tree, String problems) {
    /** Apart from the kind of section, which its header decides. */
    boolean isSameTree(Line other) {
      return tree.equals(other.tree) && text.equals(other.text);
    }
  }

  /**
   * Damage inside one line changes nothing about the others. Two changes reach a neighbour, and
   * then only that: a `\` made or unmade at the line's end joins or parts two lines, as does a
   * header's word at the start of a line joined to the one before. And a header made or unmade
   * gives the lines up to the next header another kind of section: their trees stay, the words of
   * their problems may change.
   */
  @Test
  void aBrokenLineLeavesItsNeighboursAlone() {
    Mutants mutants = new Mutants(SEED + 1);
    List<List<Line>> examples = TEXTS.stream().map(SyntaxTreeTests::lines).toList();
    int same = 0;
    int joined = 0;
    int headers = 0;
    for (int i = 0; i < MUTANTS; i++) {
      List<Line> before = examples.get(mutants.below(examples.size()));
      int k = mutants.below(before.size());
      String changed = mutants.inLine(before.get(k).text());
      List<String> texts = new ArrayList<>(before.stream().map(Line::text).toList());
      texts.set(k, changed);
      String mutant = String.join("\n", texts);
      List<Line> after = lines(mutant);
      int first = after.size() == before.size() ? k : Math.max(0, k - 1);
      int last =
          before.size() - (after.size() == before.size() ? k + 1 : Math.min(before.size(), k + 2));
      for (int b = 0; b < first; b++) {
        assertThat(after.get(b)).as(mutant).isEqualTo(before.get(b));
      }
      boolean kinds = false;
      for (int e = 1; e <= last; e++) {
        Line was = before.get(before.size() - e);
        Line is = after.get(after.size() - e);
        assertThat(is.isSameTree(was)).as("%s\n%s\n%s", mutant, was, is).isTrue();
        if (was.kind() == is.kind()) {
          assertThat(is).as(mutant).isEqualTo(was);
        } else {
          kinds = true;
          assertThat(is.problems().isEmpty()).isEqualTo(was.problems().isEmpty());
        }
      }
      if (after.size() != before.size()) {
        joined++;
      } else if (kinds) {
        headers++;
      } else {
        same++;
      }
    }
    System.out.println(
        "seed "
            + (SEED + 1)
            + ": "
            + same
            + " lines changed alone, "
            + joined
            + " joined or parted, "
            + headers
            + " changed a section");
    assertThat(same).isGreaterThan(MUTANTS * 9 / 10);
    assertThat(joined).isPositive();
    assertThat(headers).isPositive();
  }

  /** The lines of a text whose lines end in LF, joined ones as one. */
  private static List<Line> lines(String text) {
    List<Line> lines = new ArrayList<>();
    SyntaxTree tree = SyntaxTree.parse("x.plan", text);
    for (Section section : tree.sections()) {
      int start = 0;
      StringBuilder trees = new StringBuilder();
      List<ParseTree> children = new ArrayList<>();
      for (int i = 0; i < section.tree().getChildCount(); i++) {
        children.add(section.tree().getChild(i));
      }
      for (ParseTree child : children) {
        boolean ends =
            child instanceof TerminalNode node
                && (node.getSymbol().getType() == HandwheelLexer.NL
                    || node.getSymbol().getType() == Token.EOF);
        if (!ends) {
          trees.append(Trees.toStringTree(child, RULE_NAMES)).append(' ');
          continue;
        }
        int end = section.origin(((TerminalNode) child).getSymbol()).start();
        boolean rest = ((TerminalNode) child).getSymbol().getType() == Token.EOF;
        if (!rest || end > start || section == tree.sections().get(tree.sections().size() - 1)) {
          lines.add(line(section, start, rest ? section.text().length() : end, trees.toString()));
        }
        start = end + 1;
        trees.setLength(0);
      }
    }
    return lines;
  }

  private static Line line(Section section, int start, int end, String trees) {
    String problems =
        section.problems().stream()
            .filter(p -> p.origin().start() >= start && p.origin().start() <= end)
            .map(p -> (p.origin().start() - start) + " " + p.message())
            .collect(Collectors.joining("; "));
    String text = section.text().substring(start, Math.max(start, end));
    boolean header = start == 0 && section.kind() != SectionKind.PREAMBLE;
    return new Line(text, header, section.kind(), trees, problems);
  }
}
