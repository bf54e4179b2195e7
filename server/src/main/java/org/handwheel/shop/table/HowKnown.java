package org.handwheel.shop.table;

import java.util.Locale;

/** How a value of a table is known, from the surest to the least sure. */
public enum HowKnown {
  /** Follows from a definition or a formula. */
  COMPUTED("computed"),
  /** Seen in the work named, or in a reproduction of it. */
  READ("read in"),
  /** Recalled, not seen: compare with the standard before relying on it. */
  FROM_MEMORY("from memory"),
  /** A custom of the trade without a source: a default the user may change. */
  COMMON_PRACTICE("common practice");

  private final String opening;

  HowKnown(String opening) {
    this.opening = opening;
  }

  /**
   * The kind a note opens with: {@code "from memory; M3 to M16 read in ..."} is from memory.
   *
   * @throws IllegalArgumentException if the note opens with none of them
   */
  public static HowKnown of(String note) {
    String lower = note.strip().toLowerCase(Locale.ROOT);
    for (HowKnown how : values()) {
      if (lower.startsWith(how.opening)) {
        return how;
      }
    }
    throw new IllegalArgumentException("not a way of knowing: " + note);
  }
}
