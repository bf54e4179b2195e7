package org.handwheel.ide.complete;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Written forms with places to fill in, {@code at {depth}, at most {most}}, as snippets of the
 * language server protocol and as plain text.
 */
final class Snippets {
  private static final Pattern PLACE = Pattern.compile("\\{([^}]*)}");

  private Snippets() {}

  /** The form as a snippet, each place with its usual filling. */
  static String snippet(String form, Map<String, String> fillings) {
    StringBuilder out = new StringBuilder();
    Matcher place = PLACE.matcher(form);
    int done = 0;
    int count = 0;
    while (place.find()) {
      out.append(escape(form.substring(done, place.start())));
      String filling = fillings.getOrDefault(place.group(1), place.group(1));
      out.append("${").append(++count).append(':').append(escape(filling)).append('}');
      done = place.end();
    }
    return out.append(escape(form.substring(done))).toString();
  }

  /** The form up to its first place to fill in, and to the quotes around it. */
  static String plain(String form) {
    int place = form.indexOf('{');
    String plain = place < 0 ? form : form.substring(0, place);
    return (plain.endsWith("\"") ? plain.substring(0, plain.length() - 1) : plain).stripTrailing();
  }

  /** Text that a snippet takes as it is. */
  static String escape(String text) {
    return text.replace("\\", "\\\\").replace("$", "\\$").replace("}", "\\}");
  }
}
