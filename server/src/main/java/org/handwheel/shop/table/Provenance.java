package org.handwheel.shop.table;

/**
 * Where a value comes from and how it is known.
 *
 * @param source the standard, book or custom, in words
 * @param note how it is known; opens with one of the words of {@link HowKnown}
 */
public record Provenance(String source, String note) {
  public Provenance {
    HowKnown.of(note);
  }

  public HowKnown how() {
    return HowKnown.of(note);
  }

  /** For example {@code ISO 261, ISO 262 (from memory)}. */
  @Override
  public String toString() {
    return source + " (" + note + ")";
  }
}
