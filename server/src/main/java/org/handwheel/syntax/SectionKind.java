package org.handwheel.syntax;

import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a section is, by the first word of its header; the lines before any header are PREAMBLE. */
public enum SectionKind {
  PREAMBLE(""),
  PLAN("plan"),
  SHOP("shop"),
  PART("part"),
  STOCK("stock"),
  SETUP("setup"),
  OWN("own"),
  LOG("log"),
  INSPECT("inspect");

  private static final Map<String, SectionKind> BY_WORD =
      Stream.of(values())
          .filter(kind -> kind != PREAMBLE)
          .collect(Collectors.toUnmodifiableMap(SectionKind::word, Function.identity()));

  private final String word;

  SectionKind(String word) {
    this.word = word;
  }

  /** The header's first word; empty for the preamble. */
  public String word() {
    return word;
  }

  /** The kind of section that a line with this first word starts, or PREAMBLE if it starts none. */
  static SectionKind startedBy(String firstWord) {
    return BY_WORD.getOrDefault(firstWord.toLowerCase(Locale.ROOT), PREAMBLE);
  }
}
