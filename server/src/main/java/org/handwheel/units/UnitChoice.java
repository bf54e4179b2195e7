package org.handwheel.units;

import java.util.regex.Pattern;

/** Which units lengths are shown in. */
public enum UnitChoice {
  BOTH(""),
  MM("$1 $2"),
  INCH("$3");

  /** A length, an interval, sizes or a feed as {@link LengthText} and its users write them. */
  private static final Pattern TWICE =
      Pattern.compile(
          "((?:under )?-?[0-9][0-9.]*(?:(?:\\.\\.| x )-?[0-9][0-9.]*)*) (mm(?:/min)?)"
              + " \\(((?:under )?-?[0-9][0-9. x-]* (?:in|thou)(?:/min)?)\\)");

  private final String replacement;

  UnitChoice(String replacement) {
    this.replacement = replacement;
  }

  /** A text in which lengths stand in both units, with the chosen ones only. */
  public String of(String text) {
    return this == BOTH ? text : TWICE.matcher(text).replaceAll(replacement);
  }
}
