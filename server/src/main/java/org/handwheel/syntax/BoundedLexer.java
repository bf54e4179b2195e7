package org.handwheel.syntax;

import org.antlr.v4.runtime.CharStream;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;

/**
 * The lexer with a bound on how deep brackets may be nested, for whoever walks the tree afterwards
 * does so by recursion: an opening bracket beyond the bound means nothing, and the line is broken
 * there like at any other sign that means nothing.
 */
final class BoundedLexer extends HandwheelLexer {
  /** Far more than a person can follow, far less than a thread's stack. */
  static final int MOST_NESTED = 64;

  private int open;

  BoundedLexer(CharStream text) {
    super(text);
  }

  @Override
  public Token nextToken() {
    Token token = super.nextToken();
    switch (token.getType()) {
      case NL -> open = 0;
      case LP -> {
        open++;
        if (open > MOST_NESTED) {
          ((CommonToken) token).setType(ERROR);
        }
      }
      case RP -> open = Math.max(0, open - 1);
      default -> {}
    }
    return token;
  }
}
