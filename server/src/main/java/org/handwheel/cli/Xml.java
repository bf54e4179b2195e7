package org.handwheel.cli;

import java.util.Locale;

/** Text in XML 1.0, in plain ASCII. */
final class Xml {
  static final String HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>";

  private Xml() {}

  /** An attribute with a blank before it. */
  static String attribute(String name, String value) {
    return " " + name + "=\"" + text(value) + "\"";
  }

  static String attribute(String name, long value) {
    return attribute(name, Long.toString(value));
  }

  /** Text in which nothing is markup; what XML cannot hold at all becomes a replacement mark. */
  static String text(String text) {
    StringBuilder escaped = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                default -> {
                  if (c >= ' ' && c < 0x7F) {
                    escaped.append((char) c);
                  } else {
                    escaped
                        .append("&#x")
                        .append(
                            Integer.toHexString(isAllowed(c) ? c : 0xFFFD).toLowerCase(Locale.ROOT))
                        .append(';');
                  }
                }
              }
            });
    return escaped.toString();
  }

  private static boolean isAllowed(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || (c >= 0x20 && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || c >= 0x10000;
  }
}
