package org.handwheel.cli;

import java.lang.Character.UnicodeScript;

/** How many columns of a terminal a text takes. */
final class TextWidth {
  private TextWidth() {}

  static int of(String text) {
    return text.codePoints().map(TextWidth::of).sum();
  }

  /** 0 for marks that sit on the character before, 2 for East Asian and pictorial characters. */
  static int of(int codePoint) {
    if (codePoint < 0x300) {
      return codePoint == 0xAD ? 0 : 1;
    }
    return switch (Character.getType(codePoint)) {
      case Character.NON_SPACING_MARK, Character.ENCLOSING_MARK, Character.FORMAT -> 0;
      default -> isWide(codePoint) ? 2 : 1;
    };
  }

  private static boolean isWide(int codePoint) {
    if (codePoint >= 0x1F300 && codePoint <= 0x1FAFF) {
      return true;
    }
    if ((codePoint >= 0xFF01 && codePoint <= 0xFF60)
        || (codePoint >= 0xFFE0 && codePoint <= 0xFFE6)
        || (codePoint >= 0x3000 && codePoint <= 0x303E)) {
      return true;
    }
    if (codePoint >= 0xFF61 && codePoint <= 0xFFDC) {
      return false;
    }
    return switch (UnicodeScript.of(codePoint)) {
      case HAN, HIRAGANA, KATAKANA, HANGUL, BOPOMOFO, YI -> true;
      default -> false;
    };
  }
}
