package org.handwheel.plan.format;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.ExprContext;
import org.handwheel.grammar.HandwheelParser.PairToleranceContext;
import org.handwheel.grammar.HandwheelParser.SignedContext;
import org.handwheel.grammar.HandwheelParser.TermContext;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.jspecify.annotations.Nullable;

/** Lays out one statement, which may be spread over several lines by joins. */
final class LineLayout {
  private static final String STATEMENT_INDENT = "  ";
  private static final String JOINED_INDENT = "    ";
  private static final String BEFORE_COMMENT = "  ";

  private final Section section;
  private final int base;
  private final Map<Integer, ParserRuleContext> parents = new HashMap<>();
  private final Set<Integer> commas;
  private final String indent;

  /**
   * @param base where the section starts in the file
   */
  LineLayout(Section section, int base, ContentContext line) {
    this.section = section;
    this.base = base;
    collectParents(line);
    this.commas = line.statement() == null ? Set.of() : Commas.wantedBefore(line.statement());
    this.indent = line.header() != null ? "" : indent(section);
  }

  /** How far statements and comments of a section stand in. */
  static String indent(Section section) {
    return switch (section.kind()) {
      case PREAMBLE -> "";
      default -> STATEMENT_INDENT;
    };
  }

  private void collectParents(ParseTree node) {
    for (int i = 0; i < node.getChildCount(); i++) {
      ParseTree child = node.getChild(i);
      if (child instanceof TerminalNode terminal) {
        parents.put(terminal.getSymbol().getTokenIndex(), (ParserRuleContext) node);
      } else {
        collectParents(child);
      }
    }
  }

  /** What is to stand on each of the statement's lines. */
  List<List<Piece>> lines(List<Token> tokens) {
    List<List<Piece>> lines = new ArrayList<>();
    List<Piece> line = new ArrayList<>();
    lines.add(line);
    Token before = null;
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      String first = lines.size() == 1 ? indent : JOINED_INDENT;
      Origin origin = section.origin(token);
      switch (token.getType()) {
        case HandwheelLexer.WS, HandwheelLexer.NL -> {}
        case HandwheelLexer.COMMENT ->
            line.add(
                piece(
                    origin.start(),
                    origin.end(),
                    line.isEmpty() ? first : BEFORE_COMMENT,
                    Spelling.comment(origin.text())));
        case HandwheelLexer.JOIN -> {
          line.add(piece(origin.start(), origin.start() + 1, line.isEmpty() ? first : " ", "\\"));
          int comment = origin.text().indexOf('#');
          if (comment >= 0) {
            String text = origin.text().substring(comment).replaceAll("[\r\n]+$", "");
            int start = origin.start() + comment;
            line.add(piece(start, start + text.length(), BEFORE_COMMENT, Spelling.comment(text)));
          }
          line = new ArrayList<>();
          lines.add(line);
        }
        default -> {
          String gap = line.isEmpty() || before == null ? first : gap(before, token, tokens);
          String text = Spelling.of(token, parent(token), origin.text());
          line.add(piece(origin.start(), origin.end(), gap, text + commaAfter(tokens, i)));
          before = token;
        }
      }
    }
    return lines;
  }

  private Piece piece(int start, int end, String gap, String text) {
    return new Piece(base + start, base + end, gap, text);
  }

  private ParserRuleContext parent(Token token) {
    return Objects.requireNonNull(parents.get(token.getTokenIndex()), "a token outside the tree");
  }

  private String commaAfter(List<Token> tokens, int at) {
    Token next = visible(tokens, at, 1);
    boolean missing =
        next != null
            && commas.contains(next.getTokenIndex())
            && tokens.get(at).getType() != HandwheelLexer.COMMA;
    return missing ? "," : "";
  }

  private static @Nullable Token visible(List<Token> tokens, int from, int step) {
    for (int i = from + step; i >= 0 && i < tokens.size(); i += step) {
      if (tokens.get(i).getChannel() == Token.DEFAULT_CHANNEL) {
        return tokens.get(i).getType() == HandwheelLexer.NL ? null : tokens.get(i);
      }
    }
    return null;
  }

  private String gap(Token before, Token token, List<Token> tokens) {
    int type = token.getType();
    if (type == HandwheelLexer.COMMA
        || type == HandwheelLexer.RP
        || type == HandwheelLexer.COLON
        || before.getType() == HandwheelLexer.LP
        || before.getType() == HandwheelLexer.PM
        || isSign(before)) {
      return "";
    }
    if (isTight(before, tokens) || isTight(token, tokens)) {
      return "";
    }
    return " ";
  }

  /** A plus or minus that belongs to the number behind it. */
  private boolean isSign(Token token) {
    ParserRuleContext parent = parent(token);
    return parent instanceof SignedContext
        ? parent.getStart() == token
        : parent instanceof ExprContext && parent.getStart() == token;
  }

  /**
   * The stroke of {@code +0/-0.05}; and a `*` or `/` of a sum, if it was written without blanks.
   */
  private boolean isTight(Token token, List<Token> tokens) {
    int type = token.getType();
    if (type != HandwheelLexer.SLASH && type != HandwheelLexer.STAR) {
      return false;
    }
    ParserRuleContext parent = parent(token);
    int at = tokens.indexOf(token);
    if (isBetweenNumbers(tokens, at)) {
      return false; // without blanks the two would be one number
    }
    if (parent instanceof PairToleranceContext) {
      return true;
    }
    return parent instanceof TermContext
        && at > 0
        && at + 1 < tokens.size()
        && tokens.get(at - 1).getChannel() == Token.DEFAULT_CHANNEL
        && tokens.get(at + 1).getChannel() == Token.DEFAULT_CHANNEL;
  }

  private static boolean isBetweenNumbers(List<Token> tokens, int at) {
    int before = at - 1;
    while (before >= 0 && tokens.get(before).getChannel() != Token.DEFAULT_CHANNEL) {
      before--;
    }
    int after = at + 1;
    while (after < tokens.size() && tokens.get(after).getChannel() != Token.DEFAULT_CHANNEL) {
      after++;
    }
    return before >= 0
        && after < tokens.size()
        && isNumber(tokens.get(before))
        && isNumber(tokens.get(after));
  }

  private static boolean isNumber(Token token) {
    return token.getType() == HandwheelLexer.INT || token.getType() == HandwheelLexer.DEC;
  }
}
