package org.handwheel.cli;

import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;

/**
 * Writes text with the characters that its reader can show. A console with an old code page gets
 * {@code +-} for a plus-minus sign and {@code ?} for what has no plain spelling; characters that
 * steer a terminal are never passed on.
 */
final class Glyphs {
  private final CharsetEncoder encoder;

  Glyphs(Charset charset) {
    this.encoder = charset.newEncoder();
  }

  /** The text as it can be shown, line breaks and tabs as blanks. */
  String show(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    text.codePoints().forEach(codePoint -> shown.append(show(codePoint)));
    return shown.toString();
  }

  String show(int codePoint) {
    if (codePoint == '\n' || codePoint == '\r' || codePoint == '\t') {
      return " ";
    }
    if (steers(codePoint)) {
      return encoder.canEncode('\ufffd') ? "\ufffd" : "?";
    }
    String text = Character.toString(codePoint);
    if (codePoint < 0x7F || encoder.canEncode(text)) {
      return text;
    }
    return switch (codePoint) {
      case 0x2026 -> "...";
      case 0xB1 -> "+-";
      case 0xD7 -> "x";
      case 0xB5, 0x3BC -> "u";
      case 0xB0 -> "deg";
      case 0x2300, 0xD8 -> "dia";
      case 0x2192 -> "->";
      case 0x2212, 0x2010, 0x2011, 0x2013, 0x2014 -> "-";
      case 0x2018, 0x2019 -> "'";
      case 0x201C, 0x201D, 0x2033 -> "\"";
      case 0xA0, 0x2007, 0x202F -> " ";
      case 0xBC -> "1/4";
      case 0xBD -> "1/2";
      case 0xBE -> "3/4";
      default -> TextWidth.of(codePoint) == 0 ? "" : "?".repeat(TextWidth.of(codePoint));
    };
  }

  /** Escape codes, and marks that turn the order of the text round. */
  private static boolean steers(int codePoint) {
    return Character.getType(codePoint) == Character.CONTROL
        || Character.getType(codePoint) == Character.SURROGATE
        || (codePoint >= 0x202A && codePoint <= 0x202E)
        || (codePoint >= 0x2066 && codePoint <= 0x2069)
        || codePoint == 0x2028
        || codePoint == 0x2029;
  }
}
