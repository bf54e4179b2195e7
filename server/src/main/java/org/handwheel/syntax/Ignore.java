package org.handwheel.syntax;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A comment {@code # ignore RULE: reason}. Behind a statement it silences the rule on that line; on
 * a line of its own, on the next.
 *
 * @param rule the id it names
 * @param reason why, empty if none was given
 * @param origin the comment
 * @param line the line it silences, counted from 0 in its section
 */
public record Ignore(String rule, String reason, Origin origin, int line) {
  private static final Pattern FORM =
      Pattern.compile("#\\s*ignore\\s+([a-z]+(?:-[a-z]+)*)\\s*(?::\\s*(.*?)\\s*)?");

  /** Whether it is about the line a place stands on; lines joined by {@code \\} are one line. */
  public boolean isAbout(Origin place) {
    Section section = origin.section();
    return place.section() == section
        && line < section.source().lineCount()
        && section.lineOf(place.start()) == section.lineOf(section.source().lineStart(line));
  }

  static Optional<Ignore> in(String comment, Origin origin, int line) {
    Matcher matcher = FORM.matcher(comment);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    String reason = matcher.group(2) == null ? "" : matcher.group(2);
    return Optional.of(new Ignore(matcher.group(1), reason, origin, line));
  }
}
