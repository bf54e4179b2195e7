package org.handwheel.plan.format;

import java.util.HashSet;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.CutClauseContext;
import org.handwheel.grammar.HandwheelParser.CutterLineContext;
import org.handwheel.grammar.HandwheelParser.DatumFaceContext;
import org.handwheel.grammar.HandwheelParser.ErrorOverContext;
import org.handwheel.grammar.HandwheelParser.FeatureClauseContext;
import org.handwheel.grammar.HandwheelParser.HoldClauseContext;
import org.handwheel.grammar.HandwheelParser.HoleClauseContext;
import org.handwheel.grammar.HandwheelParser.HoleCutClauseContext;
import org.handwheel.grammar.HandwheelParser.PatternClauseContext;
import org.handwheel.grammar.HandwheelParser.SeatClauseContext;
import org.handwheel.grammar.HandwheelParser.ToolClauseContext;
import org.handwheel.grammar.HandwheelParser.TrueLineContext;
import org.handwheel.grammar.HandwheelParser.ZeroClauseContext;
import org.handwheel.grammar.HandwheelParser.ZeroLineContext;

/**
 * Where a statement wants a comma: between its clauses. Before the first clause it wants one only
 * where the words before are complete without it ({@code hold in V80, up top}); where the clause
 * goes on with the sentence ({@code clean top at 0.4}) it is left as it is.
 */
final class Commas {
  private Commas() {}

  /** The indices of the tokens that a comma is to stand before. */
  static Set<Integer> wantedBefore(ParserRuleContext statement) {
    Set<Integer> wanted = new HashSet<>();
    boolean later = false;
    for (int i = 0; i < statement.getChildCount(); i++) {
      ParseTree child = statement.getChild(i);
      if (!isClause(statement, child)) {
        continue;
      }
      if (later || separatesFirst(statement, child)) {
        wanted.add(((ParserRuleContext) child).getStart().getTokenIndex());
      }
      later = true;
    }
    return wanted;
  }

  private static boolean isClause(ParserRuleContext statement, ParseTree child) {
    return child instanceof HoldClauseContext
        || child instanceof HoleClauseContext
        || child instanceof PatternClauseContext
        || child instanceof SeatClauseContext
        || child instanceof ToolClauseContext
        || child instanceof CutClauseContext
        || child instanceof FeatureClauseContext
        || child instanceof HoleCutClauseContext
        || child instanceof DatumFaceContext
        || (child instanceof ZeroClauseContext && !(statement instanceof ZeroLineContext))
        || (child instanceof ErrorOverContext && statement instanceof TrueLineContext);
  }

  private static boolean separatesFirst(ParserRuleContext statement, ParseTree clause) {
    return clause instanceof HoldClauseContext
        || clause instanceof HoleClauseContext
        || clause instanceof PatternClauseContext
        || clause instanceof ZeroClauseContext
        || clause instanceof ErrorOverContext
        || statement instanceof CutterLineContext;
  }
}
