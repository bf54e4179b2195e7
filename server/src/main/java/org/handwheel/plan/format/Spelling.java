package org.handwheel.plan.format;

import java.util.Locale;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser.ClauseWordContext;
import org.handwheel.grammar.HandwheelParser.DimensionContext;
import org.handwheel.grammar.HandwheelParser.StartWordContext;
import org.handwheel.grammar.HandwheelParser.VerbWordContext;

/** The usual spelling of a token: keywords in lower case, signs in ASCII. */
final class Spelling {
  private Spelling() {}

  static String of(Token token, ParserRuleContext parent, String written) {
    if (isName(parent)) {
      return written;
    }
    return switch (token.getType()) {
      case HandwheelLexer.X -> "x";
      case HandwheelLexer.PM -> "+-";
      case HandwheelLexer.MINUS -> "-";
      case HandwheelLexer.DIA -> "dia";
      case HandwheelLexer.IN -> "in";
      case HandwheelLexer.DEG -> "deg";
      case HandwheelLexer.RA -> "Ra";
      case HandwheelLexer.DEC -> written.startsWith(".") ? "0" + written : written;
      case HandwheelLexer.CENTRE -> written.toLowerCase(Locale.ROOT);
      case HandwheelLexer.MM,
          HandwheelLexer.THOU,
          HandwheelLexer.TENTHS,
          HandwheelLexer.UM,
          HandwheelLexer.UIN ->
          written;
      default -> isWord(token.getType()) ? written.toLowerCase(Locale.ROOT) : written;
    };
  }

  /** Whether a keyword serves as a name. */
  private static boolean isName(ParserRuleContext parent) {
    return parent instanceof VerbWordContext
        || parent instanceof ClauseWordContext
        || (parent instanceof DimensionContext && parent.getParent() instanceof StartWordContext);
  }

  private static boolean isWord(int type) {
    String literal = HandwheelLexer.VOCABULARY.getLiteralName(type);
    return literal != null && Character.isLetter(literal.charAt(1));
  }

  /** A comment without blanks at its end, and with one after the `#` if a word follows at once. */
  static String comment(String written) {
    String text = written.stripTrailing();
    return text.length() > 1 && Character.isLetter(text.charAt(1))
        ? "# " + text.substring(1)
        : text;
  }
}
