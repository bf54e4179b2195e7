package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.BaseErrorListener;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNConfigSet;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.NotSetTransition;
import org.antlr.v4.runtime.atn.PredictionMode;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.dfa.DFA;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.junit.jupiter.api.Test;

/** The rules the grammar keeps, read from its state machine. */
class GrammarTests {
  private static final long SEED = Long.getLong("handwheel.seed", 20_261_125L);
  private static final int MUTANTS = 20_000;
  private static final ATN ATN_ = HandwheelParser._ATN;
  private static final Set<Integer> HEADER_WORDS =
      Set.of(
          HandwheelLexer.PLAN,
          HandwheelLexer.SHOP,
          HandwheelLexer.PART,
          HandwheelLexer.STOCK,
          HandwheelLexer.SETUP,
          HandwheelLexer.OWN,
          HandwheelLexer.LOG,
          HandwheelLexer.INSPECT);

  // ---- Decisions
  // ---------------------------------------------------------------------------------

  /** Notes each decision that more than one reading survived, or that needed the whole stack. */
  private static final class Doubts extends BaseErrorListener {
    private final List<String> found = new ArrayList<>();

    @Override
    public void reportAmbiguity(
        Parser parser, DFA dfa, int start, int stop, boolean exact, BitSet alts, ATNConfigSet c) {
      note("ambiguous", parser, dfa, start, stop);
    }

    @Override
    public void reportAttemptingFullContext(
        Parser parser, DFA dfa, int start, int stop, BitSet alts, ATNConfigSet configs) {
      note("full context", parser, dfa, start, stop);
    }

    private void note(String what, Parser parser, DFA dfa, int start, int stop) {
      String rule = parser.getRuleNames()[dfa.atnStartState.ruleIndex];
      String text =
          parser
              .getTokenStream()
              .getText(parser.getTokenStream().get(start), parser.getTokenStream().get(stop));
      found.add(what + " in " + rule + ": " + text);
    }
  }

  private static List<String> doubts(String text) {
    Doubts doubts = new Doubts();
    for (Section section : SyntaxTree.parse("x.plan", text).sections()) {
      HandwheelParser parser = SectionParser.parserOf(section.text(), doubts);
      parser.getInterpreter().setPredictionMode(PredictionMode.LL_EXACT_AMBIG_DETECTION);
      parser.file();
    }
    return doubts.found;
  }

  @Test
  void everyExampleIsDecidedWithoutDoubt() {
    Examples.files().forEach((name, text) -> assertThat(doubts(text)).as(name).isEmpty());
  }

  @Test
  void everyMutantIsDecidedWithoutDoubt() {
    Mutants mutants = new Mutants(SEED + 2);
    List<String> texts = List.copyOf(Examples.files().values());
    Set<String> doubts = new TreeSet<>();
    for (int i = 0; i < MUTANTS; i++) {
      doubts.addAll(doubts(mutants.anywhere(texts.get(mutants.below(texts.size())))));
    }
    System.out.println("seed " + (SEED + 2) + ": " + MUTANTS + " mutants decided");
    assertThat(doubts).isEmpty();
  }

  // ---- Words
  // -------------------------------------------------------------------------------------

  @Test
  void everyWordIsOfOneSort() {
    Set<Integer> start = firstOf(HandwheelParser.RULE_startWord);
    Set<Integer> clause = firstOf(HandwheelParser.RULE_clauseWord);
    Set<Integer> reserved = reserved();
    for (int type : words()) {
      int sorts =
          (start.contains(type) ? 1 : 0)
              + (clause.contains(type) ? 1 : 0)
              + (reserved.contains(type) ? 1 : 0);
      assertThat(sorts).as(name(type)).isEqualTo(1);
    }
    assertThat(words()).containsAll(start).containsAll(clause).hasSizeGreaterThan(150);
  }

  /** As section 13 of the reference lists them. */
  private static Set<Integer> reserved() {
    Set<Integer> reserved = new HashSet<>(HEADER_WORDS);
    reserved.addAll(firstOf(HandwheelParser.RULE_face));
    reserved.addAll(firstOf(HandwheelParser.RULE_operatorPlace));
    reserved.addAll(firstOf(HandwheelParser.RULE_axis));
    reserved.addAll(firstOf(HandwheelParser.RULE_unit));
    reserved.addAll(
        Set.of(
            HandwheelLexer.LANGUAGE,
            HandwheelLexer.AT,
            HandwheelLexer.BY,
            HandwheelLexer.TO,
            HandwheelLexer.WITH,
            HandwheelLexer.MOST));
    return reserved;
  }

  /** Token kinds that are words: those whose text, written out, has letters only and a dash. */
  private static Set<Integer> words() {
    Set<Integer> designations =
        Set.of(
            HandwheelLexer.NUMBER_DRILL,
            HandwheelLexer.LETTER_DRILL,
            HandwheelLexer.THREAD_M,
            HandwheelLexer.THREAD_NAMED,
            HandwheelLexer.MIXED,
            HandwheelLexer.FRACTION,
            HandwheelLexer.TIGHT_DIV,
            HandwheelLexer.HASH_SIZE,
            HandwheelLexer.DEC,
            HandwheelLexer.INT,
            HandwheelLexer.STRING,
            HandwheelLexer.OPEN_STRING,
            HandwheelLexer.ID,
            HandwheelLexer.JOIN,
            HandwheelLexer.NL,
            HandwheelLexer.WS,
            HandwheelLexer.COMMENT,
            HandwheelLexer.ERROR);
    Set<Integer> marks =
        Set.of(
            HandwheelLexer.PM,
            HandwheelLexer.PLUS,
            HandwheelLexer.MINUS,
            HandwheelLexer.STAR,
            HandwheelLexer.SLASH,
            HandwheelLexer.EQ,
            HandwheelLexer.COMMA,
            HandwheelLexer.COLON,
            HandwheelLexer.LP,
            HandwheelLexer.RP);
    Set<Integer> words = new TreeSet<>();
    for (int type = 1; type <= HandwheelLexer.VOCABULARY.getMaxTokenType(); type++) {
      if (!designations.contains(type) && !marks.contains(type)) {
        words.add(type);
      }
    }
    return words;
  }

  @Test
  void noStatementBeginsLikeAHeader() {
    Set<Integer> statements = firstOf(HandwheelParser.RULE_statement);
    assertThat(firstOf(HandwheelParser.RULE_header)).isEqualTo(HEADER_WORDS);
    assertThat(statements).doesNotContainAnyElementsOf(HEADER_WORDS);
    assertThat(firstOf(HandwheelParser.RULE_unknownLine)).doesNotContainAnyElementsOf(HEADER_WORDS);
    assertThat(
            HEADER_WORDS.stream()
                .map(type -> SectionKind.startedBy(name(type)))
                .collect(Collectors.toSet()))
        .hasSize(HEADER_WORDS.size())
        .doesNotContain(SectionKind.PREAMBLE);
  }

  /**
   * What an unknown line may not begin with is what a header, a statement or a name begins with.
   */
  @Test
  void anUnknownLineTakesWhatNothingElseTakes() {
    List<IntervalSet> excluded = new ArrayList<>();
    for (ATNState state : ATN_.states) {
      if (state != null && state.ruleIndex == HandwheelParser.RULE_unknownLine) {
        for (Transition transition : state.getTransitions()) {
          if (transition instanceof NotSetTransition) {
            excluded.add(transition.label());
          }
        }
      }
    }
    IntervalSet widest =
        excluded.stream().max((a, b) -> Integer.compare(a.size(), b.size())).orElseThrow();
    Set<Integer> expected = new HashSet<>(HEADER_WORDS);
    expected.addAll(firstOf(HandwheelParser.RULE_startWord));
    expected.addAll(firstOf(HandwheelParser.RULE_clauseWord));
    expected.addAll(
        Set.of(
            HandwheelLexer.NL,
            HandwheelLexer.COLON,
            HandwheelLexer.ID,
            HandwheelLexer.LANGUAGE,
            HandwheelLexer.IN));
    assertThat(new HashSet<>(widest.toList())).isEqualTo(expected);
    // Every statement begins with one of them, too: with a start word, a name, `language` or `in`.
    assertThat(expected).containsAll(firstOf(HandwheelParser.RULE_statement));
  }

  @Test
  void everyTokenBeginsExactlyOneKindOfLine() {
    Set<Integer> lines = firstOf(HandwheelParser.RULE_content);
    for (int type = 1; type <= HandwheelLexer.VOCABULARY.getMaxTokenType(); type++) {
      assertThat(lines.contains(type)).as(name(type)).isEqualTo(type != HandwheelLexer.NL);
    }
  }

  private static Set<Integer> firstOf(int rule) {
    IntervalSet first = ATN_.nextTokens(ATN_.ruleToStartState[rule]);
    return first.toList().stream()
        .filter(type -> type != Token.EPSILON)
        .collect(Collectors.toSet());
  }

  private static String name(int type) {
    return HandwheelLexer.VOCABULARY.getSymbolicName(type).toLowerCase(Locale.ROOT);
  }

  // ---- First words of lines
  // ------------------------------------------------------------------------

  /** Sections are cut before they are lexed: both must agree on what a header's word is. */
  @Test
  void sectionsAndLexerAgreeOnHeadersForEveryCharacterBehindTheWord() {
    for (String word : List.of("part", "PLAN", "Own")) {
      for (int c = 1; c <= 0xffff; c++) {
        if (c == '\n' || c == '\r') {
          continue;
        }
        for (String text : List.of(word + (char) c, word + (char) c + "a", (char) c + word)) {
          SyntaxTree tree = SyntaxTree.parse("x.plan", text);
          boolean cut = tree.sections().size() > 1;
          Section last = tree.sections().get(tree.sections().size() - 1);
          Token first =
              last.tokens().stream()
                  .filter(t -> t.getChannel() == Token.DEFAULT_CHANNEL)
                  .findFirst()
                  .orElseThrow();
          assertThat(cut).as("%x", c).isEqualTo(HEADER_WORDS.contains(first.getType()));
        }
        if (c > 0x250 && c % 16 != 0) {
          c += 14;
        }
      }
    }
  }
}
