package org.handwheel.fuzz;

import java.util.Locale;
import org.handwheel.plan.format.Formatter;
import org.handwheel.syntax.SyntaxTree;

/**
 * A target for a fuzzer that is led by coverage: formatting a text twice is formatting it once, and
 * only blanks, line ends, commas and capitals of the language's own words are touched. The first
 * byte says whether it is a plan or a shop.
 */
public final class FormatTarget {
  private FormatTarget() {}

  /** One input of the fuzzer; throws if something is wrong. */
  public static void fuzzerTestOneInput(byte[] data) {
    if (data.length == 0) {
      return;
    }
    String path = (data[0] & 1) == 0 ? "a.plan" : "a.shop";
    String text = FuzzTexts.text(data, 1, data.length);
    String once = Formatter.format(SyntaxTree.parse(path, text));
    String twice = Formatter.format(SyntaxTree.parse(path, once));
    if (!once.equals(twice)) {
      throw new AssertionError("once: " + once + "\ntwice: " + twice);
    }
    if (!inked(once).equals(inked(text))) {
      throw new AssertionError("before: " + text + "\nafter: " + once);
    }
  }

  private static String inked(String text) {
    return text.replaceAll("[ \\t\\r\\n,]+", "").toLowerCase(Locale.ROOT);
  }
}
