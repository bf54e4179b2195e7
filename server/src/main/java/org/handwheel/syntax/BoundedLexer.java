package org.handwheel.syntax;

import org.antlr.v4.runtime.CharStream;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;

/**
 * The lexer with bounds, for whoever works on the tree afterwards: an opening bracket nested too
 * deep and what stands too far out on a line mean nothing, and the line is broken there like at any
 * other sign that means nothing. A text that is too large is one such sign as a whole.
 */
final class BoundedLexer extends HandwheelLexer {
  /** Far more than a person can follow, far less than a thread's stack. */
  static final int MOST_NESTED = 64;

  /** The longest line in characters, lines joined by {@code \\} together. */
  static final int LONGEST_LINE = 2000;

  /** The largest text in characters: as many as the largest file has bytes. */
  static final int LARGEST_TEXT = 10 * 1024 * 1024;

  private final int size;
  private int open;
  private int lineStart;

  BoundedLexer(CharStream text) {
    super(text);
    this.size = text.size();
  }

  @Override
  public Token nextToken() {
    if (size > LARGEST_TEXT && _input.index() == 0) {
      return wholeText();
    }
    Token token = super.nextToken();
    switch (token.getType()) {
      case NL -> {
        open = 0;
        lineStart = token.getStopIndex() + 1;
      }
      case LP -> {
        open++;
        if (open > MOST_NESTED) {
          ((CommonToken) token).setType(ERROR);
        }
      }
      case RP -> open = Math.max(0, open - 1);
      default -> {}
    }
    if (token.getChannel() == Token.DEFAULT_CHANNEL
        && token.getType() != NL
        && token.getType() != Token.EOF
        && token.getStopIndex() - lineStart >= LONGEST_LINE) {
      ((CommonToken) token).setType(ERROR);
    }
    return token;
  }

  private Token wholeText() {
    Token all =
        _factory.create(
            _tokenFactorySourcePair, ERROR, null, DEFAULT_TOKEN_CHANNEL, 0, size - 1, 1, 0);
    _input.seek(size);
    return all;
  }
}
