package org.handwheel.syntax;

import java.math.BigInteger;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.LanguageLineContext;

/** The level of the language a file is written in: its {@code language} line. */
public final class LanguageLevel {
  /** The newest level this version knows. */
  public static final int KNOWN = 1;

  private LanguageLevel() {}

  /**
   * Whether a file says that it is of a newer level. What its lines mean is then not certain, so
   * nothing may be changed in it or worked out from it.
   */
  public static boolean isTooNew(SyntaxTree tree) {
    for (Section section : tree.sections()) {
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof LanguageLineContext language && isTooNew(language)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean isTooNew(LanguageLineContext line) {
    // Where the number is missing, the parser makes up a token that stands nowhere.
    return line.wholeNumber() != null
        && line.wholeNumber().INT() != null
        && line.wholeNumber().INT().getSymbol().getTokenIndex() >= 0
        && new BigInteger(line.wholeNumber().INT().getText()).compareTo(BigInteger.valueOf(KNOWN))
            > 0;
  }
}
