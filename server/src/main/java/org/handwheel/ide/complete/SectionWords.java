package org.handwheel.ide.complete;

import static java.util.Map.entry;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.rules.Checker;
import org.handwheel.syntax.Expectations.Expected;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;

/** Which statements a section may have; the grammar takes every one everywhere. */
final class SectionWords {
  private static final Set<Integer> COMMON =
      Set.of(HandwheelLexer.UNITS, HandwheelLexer.USE, HandwheelLexer.LET, HandwheelLexer.NOTE);

  private static final Map<SectionKind, Set<Integer>> OWN =
      Map.ofEntries(
          entry(SectionKind.PREAMBLE, Set.of(HandwheelLexer.LANGUAGE, HandwheelLexer.MACHINE)),
          entry(SectionKind.PLAN, Set.of(HandwheelLexer.MACHINE)),
          entry(SectionKind.SHOP, Set.of()),
          entry(SectionKind.OWN, Set.of()),
          entry(
              SectionKind.PART,
              Set.of(
                  HandwheelLexer.MATERIAL,
                  HandwheelLexer.LENGTH,
                  HandwheelLexer.WIDTH,
                  HandwheelLexer.HEIGHT,
                  HandwheelLexer.DATUM,
                  HandwheelLexer.SQUARE,
                  HandwheelLexer.PARALLEL,
                  HandwheelLexer.FLAT,
                  HandwheelLexer.TOLERANCE,
                  HandwheelLexer.SURFACE,
                  HandwheelLexer.BREAK,
                  HandwheelLexer.HOLE,
                  HandwheelLexer.PATTERN,
                  HandwheelLexer.SLOT,
                  HandwheelLexer.POCKET,
                  HandwheelLexer.PROFILE,
                  HandwheelLexer.STEP,
                  HandwheelLexer.CHAMFER,
                  HandwheelLexer.OUTLINE,
                  HandwheelLexer.WINDOW,
                  HandwheelLexer.CORNER)),
          entry(
              SectionKind.STOCK,
              Set.of(
                  HandwheelLexer.MATERIAL,
                  HandwheelLexer.SIZE,
                  HandwheelLexer.SAWN,
                  HandwheelLexer.ROLLED,
                  HandwheelLexer.CAST,
                  HandwheelLexer.DRAWN,
                  HandwheelLexer.MILLED,
                  HandwheelLexer.GROUND,
                  HandwheelLexer.KERF,
                  HandwheelLexer.WANDER,
                  HandwheelLexer.MAKE)),
          entry(
              SectionKind.SETUP,
              Set.of(
                  HandwheelLexer.HOLD,
                  HandwheelLexer.SEAT,
                  HandwheelLexer.TRUE,
                  HandwheelLexer.TRAM,
                  HandwheelLexer.CUTTER,
                  HandwheelLexer.TOUCH,
                  HandwheelLexer.FIND,
                  HandwheelLexer.ZERO,
                  HandwheelLexer.SET,
                  HandwheelLexer.LOCK,
                  HandwheelLexer.UNLOCK,
                  HandwheelLexer.MOVE,
                  HandwheelLexer.CLEAN,
                  HandwheelLexer.ROUGH,
                  HandwheelLexer.FINISH,
                  HandwheelLexer.SPOT,
                  HandwheelLexer.DRILL,
                  HandwheelLexer.REAM,
                  HandwheelLexer.TAP,
                  HandwheelLexer.BORE,
                  HandwheelLexer.COUNTERBORE,
                  HandwheelLexer.COUNTERSINK,
                  HandwheelLexer.SLOT,
                  HandwheelLexer.POCKET,
                  HandwheelLexer.PROFILE,
                  HandwheelLexer.STEP,
                  HandwheelLexer.CHAMFER,
                  HandwheelLexer.OUTLINE,
                  HandwheelLexer.WINDOW,
                  HandwheelLexer.CORNER,
                  HandwheelLexer.DEBURR,
                  HandwheelLexer.WIPE,
                  HandwheelLexer.MEASURE)),
          entry(SectionKind.LOG, Set.of(HandwheelLexer.IN)),
          entry(SectionKind.INSPECT, Set.of(HandwheelLexer.CHECK)));

  private static final Set<Integer> CUTTING_FEATURES =
      Set.of(
          HandwheelLexer.WITH,
          HandwheelLexer.LEAVING,
          HandwheelLexer.PASS,
          HandwheelLexer.CUSP,
          HandwheelLexer.CONVENTIONAL,
          HandwheelLexer.CLIMB);

  private static final Set<Integer> PASSES =
      Set.of(HandwheelLexer.PASS, HandwheelLexer.BY, HandwheelLexer.ONE);

  private static final List<SectionKind> OF_PLANS =
      List.of(
          SectionKind.PLAN,
          SectionKind.PART,
          SectionKind.STOCK,
          SectionKind.SETUP,
          SectionKind.LOG,
          SectionKind.INSPECT);

  private SectionWords() {}

  /** The kinds of token that a statement of a section may start with. */
  static Set<Integer> of(SectionKind kind) {
    Set<Integer> words = new HashSet<>(OWN.getOrDefault(kind, Set.of()));
    words.addAll(COMMON);
    return Set.copyOf(words);
  }

  /**
   * Whether a clause belongs to its line: the grammar takes the clauses of all cuts on each of
   * them, and those of a feature's drawing and of its cutting in both sections.
   *
   * @param first the first word of the line, as a kind of token
   */
  static boolean fits(SectionKind kind, int first, Expected clause) {
    int word = clause.tokenType();
    if (clause.begun().contains(HandwheelParser.RULE_featureClause)) {
      return CUTTING_FEATURES.contains(word) == (kind == SectionKind.SETUP);
    }
    if (clause.begun().contains(HandwheelParser.RULE_cutClause)) {
      return switch (first) {
        case HandwheelLexer.CLEAN -> !PASSES.contains(word) && word != HandwheelLexer.LEAVING;
        case HandwheelLexer.ROUGH -> word != HandwheelLexer.AT;
        case HandwheelLexer.FINISH -> word != HandwheelLexer.AT && word != HandwheelLexer.LEAVING;
        default -> true;
      };
    }
    return true;
  }

  /** The headers a file may have. */
  static List<SectionKind> headers(SyntaxTree tree) {
    return Checker.isShop(tree) ? List.of(SectionKind.SHOP, SectionKind.OWN) : OF_PLANS;
  }
}
