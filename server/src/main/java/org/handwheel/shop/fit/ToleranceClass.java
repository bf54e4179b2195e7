package org.handwheel.shop.fit;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A tolerance class of ISO 286: the letter places the zone, the grade gives its width.
 *
 * @param letters capital for a hole, small for a shaft: {@code H}, {@code js}
 * @param grade the standard tolerance grade
 */
public record ToleranceClass(String letters, int grade) {
  private static final Pattern CODE = Pattern.compile("([A-Z]{1,2}|[a-z]{1,2})(\\d{1,2})");

  /** Reads {@code H7} or {@code g6}; nothing where the text has another form. */
  public static Optional<ToleranceClass> parse(String code) {
    Matcher matcher = CODE.matcher(code.strip());
    return matcher.matches()
        ? Optional.of(new ToleranceClass(matcher.group(1), Integer.parseInt(matcher.group(2))))
        : Optional.empty();
  }

  public boolean isHole() {
    return Character.isUpperCase(letters.charAt(0));
  }

  boolean isSymmetrical() {
    return letters.equals("JS") || letters.equals("js");
  }

  @Override
  public String toString() {
    return letters + grade;
  }
}
