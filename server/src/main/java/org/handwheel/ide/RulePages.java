package org.handwheel.ide;

import java.util.Optional;

/** The pages that explain rules, in Markdown; reading them is left to the edges. */
public interface RulePages {
  /** No pages at all. */
  RulePages NONE = rule -> Optional.empty();

  /** The page of a rule by its id. */
  Optional<String> page(String rule);

  /** The first paragraph of a page after its heading, on one line; empty if there is none. */
  static String firstParagraph(String page) {
    StringBuilder paragraph = new StringBuilder();
    for (String line : page.lines().toList()) {
      String text = line.strip();
      if (text.startsWith("#") || (text.isEmpty() && paragraph.isEmpty())) {
        continue;
      }
      if (text.isEmpty()) {
        break;
      }
      paragraph.append(paragraph.isEmpty() ? "" : " ").append(text);
    }
    return paragraph.toString();
  }
}
