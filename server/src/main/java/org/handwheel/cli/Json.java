package org.handwheel.cli;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import java.util.Locale;

/** JSON in plain ASCII, which every console and pipe hands on unharmed. */
final class Json {
  private static final Gson GSON =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

  private Json() {}

  /** The JSON of a record, keys in the order of its components. */
  static String of(Object value) {
    StringBuilder ascii = new StringBuilder();
    String json = GSON.toJson(value);
    for (int i = 0; i < json.length(); i++) {
      char c = json.charAt(i);
      if (c < 0x7F) {
        ascii.append(c);
      } else {
        String digits = Integer.toHexString(c).toLowerCase(Locale.ROOT);
        ascii.append("\\u").append("0".repeat(4 - digits.length())).append(digits);
      }
    }
    return ascii.toString();
  }
}
