package org.handwheel.syntax;

import org.jspecify.annotations.Nullable;

/**
 * A place in a section: offsets from the section's own start, so that it stays right when text
 * before the section changes.
 *
 * @param section the section the place is in
 * @param start first UTF-16 unit
 * @param end one past the last; may equal {@code start} where something is missing
 */
public record Origin(Section section, int start, int end) {
  // Written out: what a record has of its own is made at run time, which takes its time at the
  // start.

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Origin origin
        && section.equals(origin.section)
        && start == origin.start
        && end == origin.end;
  }

  @Override
  public int hashCode() {
    return (section.hashCode() * 31 + start) * 31 + end;
  }

  /** The text that stands there. */
  public String text() {
    return section.text().substring(start, end);
  }

  /** From the start of this place to the end of {@code other}, both in one section. */
  public Origin to(Origin other) {
    return new Origin(section, start, Math.max(end, other.end));
  }
}
