package org.handwheel.plan.diff;

import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.syntax.Origin;

/** Text of a plan without what means nothing: comments, blanks, breaks within a statement. */
final class PlanText {
  private PlanText() {}

  /** A statement on one line, its words as they are written. */
  static String line(Origin origin) {
    StringBuilder line = new StringBuilder();
    int end = -1;
    for (Token token : origin.section().tokens()) {
      if (token.getType() == Token.EOF
          || token.getType() == HandwheelLexer.NL
          || token.getChannel() != Token.DEFAULT_CHANNEL) {
        continue;
      }
      Origin place = origin.section().origin(token);
      if (place.start() < origin.start() || place.end() > origin.end()) {
        continue;
      }
      if (end >= 0 && place.start() > end) {
        line.append(' ');
      }
      line.append(place.text());
      end = place.end();
    }
    return line.toString();
  }

  /** The whole line on which a place starts. */
  static String lineAround(Origin origin) {
    int line = origin.section().source().lineAt(origin.start());
    return line(
        new Origin(
            origin.section(),
            origin.section().source().lineStart(line),
            origin.section().source().lineEnd(line)));
  }
}
