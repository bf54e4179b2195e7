package org.handwheel.plan.picture;

import java.util.Locale;

/** Writes the elements of an SVG picture. */
final class SvgWriter {
  private final StringBuilder out = new StringBuilder();

  /** Text that cannot be taken for markup; what XML does not allow is left out. */
  public static String escape(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .filter(c -> c >= 0x20 && c != 0xFFFE && c != 0xFFFF && !(c >= 0xD800 && c <= 0xDFFF))
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(c);
              }
            });
    return safe.toString();
  }

  /** A number with at most one decimal, the same on every machine. */
  static String n(double value) {
    String text = String.format(Locale.ROOT, "%.1f", value + 0.0);
    String trimmed = text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    return trimmed.equals("-0") ? "0" : trimmed;
  }

  SvgWriter append(String text) {
    out.append(text);
    return this;
  }

  SvgWriter append(char text) {
    out.append(text);
    return this;
  }

  SvgWriter append(int number) {
    out.append(number);
    return this;
  }

  @Override
  public String toString() {
    return out.toString();
  }

  void hatch(String id, double apart, int angle) {
    out.append("<pattern id=\"")
        .append(id)
        .append("\" width=\"")
        .append(n(apart))
        .append("\" height=\"")
        .append(n(apart))
        .append("\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(")
        .append(angle)
        .append(")\"><rect width=\"")
        .append(n(apart))
        .append("\" height=\"")
        .append(n(apart))
        .append("\" fill=\"#fff\"/><path d=\"M0 0V")
        .append(n(apart))
        .append("\" stroke=\"#000\" stroke-width=\"1\"/></pattern>\n");
  }
}
