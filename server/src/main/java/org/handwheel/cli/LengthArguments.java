package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.handwheel.model.build.LengthParser;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Lengths as arguments; a unit may be an argument of its own, as in {@code dial 10 thou}. */
final class LengthArguments {
  private static final Set<String> UNITS =
      Set.of("mm", "in", "inch", "thou", "tenth", "tenths", "um", "\u00b5m", "uin", "\u00b5in");

  private LengthArguments() {}

  /** A length and how it was written. */
  record Given(String text, Length length) {}

  /**
   * Reads lengths.
   *
   * @param bare the unit of bare numbers
   * @throws UserException if one is none, or has no unit
   */
  static List<Given> read(List<String> arguments, @Nullable LengthUnit bare) {
    List<String> texts = new ArrayList<>();
    for (String argument : arguments) {
      boolean unit = UNITS.contains(argument.toLowerCase(Locale.ROOT));
      if (unit && !texts.isEmpty()) {
        texts.set(texts.size() - 1, texts.get(texts.size() - 1) + " " + argument);
      } else {
        texts.add(argument);
      }
    }
    return texts.stream().map(text -> new Given(text, read(text, bare))).toList();
  }

  /** Reads the length of an option, which must have its unit. */
  static Length ofOption(String option, String text) {
    LengthParser.Result result = LengthParser.parse(text, null);
    if (result instanceof LengthParser.Refused refused) {
      throw new UserException(
          option
              + ": "
              + (refused.rule().equals("no-units")
                  ? "in which unit? write `" + text + " mm` or `" + text + " in`"
                  : text + ": " + refused.problem()));
    }
    return ((LengthParser.Parsed) result).length();
  }

  /** Reads one length. */
  static Length read(String text, @Nullable LengthUnit bare) {
    LengthParser.Result result = LengthParser.parse(text, bare);
    if (result instanceof LengthParser.Refused refused) {
      throw new UserException(
          refused.rule().equals("no-units")
              ? text + ": in which unit? write `" + text + " mm` or `" + text + " in`, or --units"
              : text + ": " + refused.problem());
    }
    return ((LengthParser.Parsed) result).length();
  }
}
