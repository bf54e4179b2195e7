package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/**
 * What stands at an offset of a file: the token and the tree above it.
 *
 * @param line the line of the tree it belongs to; nothing between lines and in comments
 * @param path the rules above the token, outermost first; empty in comments and broken lines
 */
record Spot(
    Section section, Token token, @Nullable ContentContext line, List<ParserRuleContext> path) {
  Spot {
    path = List.copyOf(path);
  }

  /** The token at an offset; at the end of a word that word, also if a mark follows. */
  static Optional<Spot> at(SyntaxTree tree, int offset) {
    for (Section section : tree.sections()) {
      int at = offset - tree.base(section);
      boolean last = section == tree.sections().get(tree.sections().size() - 1);
      if (at >= 0 && (at < section.text().length() || (last && at == section.text().length()))) {
        return in(section, at);
      }
    }
    return Optional.empty();
  }

  private static Optional<Spot> in(Section section, int at) {
    Token touching = null;
    for (Token token : section.tokens()) {
      if (token.getType() == Token.EOF) {
        continue;
      }
      Origin origin = section.origin(token);
      if (origin.start() > at) {
        break;
      }
      if (origin.end() < at) {
        continue;
      }
      if (touching == null || weight(token, at, section) > weight(touching, at, section)) {
        touching = token;
      }
    }
    return touching == null ? Optional.empty() : Optional.of(of(section, touching));
  }

  /** Words and numbers before marks, marks before blanks, what begins here before what ends. */
  private static int weight(Token token, int at, Section section) {
    Origin origin = section.origin(token);
    int kind =
        switch (token.getType()) {
          case HandwheelLexer.WS, HandwheelLexer.NL, HandwheelLexer.JOIN -> 0;
          case HandwheelLexer.COMMA, HandwheelLexer.LP, HandwheelLexer.RP, HandwheelLexer.COLON ->
              2;
          default -> 4;
        };
    return kind + (origin.end() > at ? 1 : 0);
  }

  private static Spot of(Section section, Token token) {
    if (token.getChannel() == Token.DEFAULT_CHANNEL) {
      for (ContentContext line : section.lines()) {
        if (holds(line, token)) {
          List<ParserRuleContext> path = new ArrayList<>();
          descend(line, token, path);
          return new Spot(section, token, line, path);
        }
      }
    }
    return new Spot(section, token, null, List.of());
  }

  private static boolean holds(ParserRuleContext context, Token token) {
    return context.getStart() != null
        && context.getStop() != null
        && context.getStart().getTokenIndex() <= token.getTokenIndex()
        && token.getTokenIndex() <= context.getStop().getTokenIndex();
  }

  private static boolean descend(
      ParserRuleContext context, Token token, List<ParserRuleContext> path) {
    path.add(context);
    for (int i = 0; i < context.getChildCount(); i++) {
      ParseTree child = context.getChild(i);
      if (child instanceof TerminalNode terminal && terminal.getSymbol() == token) {
        return true;
      }
      if (child instanceof ParserRuleContext rule
          && holds(rule, token)
          && descend(rule, token, path)) {
        return true;
      }
    }
    path.remove(path.size() - 1);
    return false;
  }

  Origin origin() {
    return section.origin(token);
  }

  /** The nearest rule of a kind above the token. */
  <T> Optional<T> nearest(Class<T> type) {
    for (int i = path.size() - 1; i >= 0; i--) {
      if (type.isInstance(path.get(i))) {
        return Optional.of(type.cast(path.get(i)));
      }
    }
    return Optional.empty();
  }

  /** The rule right above the token. */
  Optional<ParserRuleContext> parent() {
    return path.isEmpty() ? Optional.empty() : Optional.of(path.get(path.size() - 1));
  }

  /** Whether a place of the same section holds the token. */
  boolean isIn(Origin other) {
    Origin own = origin();
    return other.section() == section && other.start() <= own.start() && own.end() <= other.end();
  }

  /** Whether the grammar of the line is broken. */
  boolean isBroken() {
    return line != null && section.isBroken(line);
  }
}
