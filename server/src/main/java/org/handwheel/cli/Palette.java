package org.handwheel.cli;

import java.util.Locale;
import org.handwheel.cli.Surroundings.Screen;
import org.handwheel.syntax.Severity;
import picocli.CommandLine.Help.Ansi.IStyle;
import picocli.CommandLine.Help.Ansi.Style;

/** Colour, or none. */
enum Palette {
  PLAIN,
  COLOUR;

  /** What the user asked for. */
  enum Choice {
    AUTO,
    ALWAYS,
    NEVER
  }

  /** The palette for an option's value. */
  static Palette of(Choice choice, Surroundings surroundings) {
    return switch (choice) {
      case AUTO -> automatic(surroundings);
      case ALWAYS -> COLOUR;
      case NEVER -> PLAIN;
    };
  }

  /** Colour on a terminal that can show it, unless {@code NO_COLOR} is set to anything. */
  static Palette automatic(Surroundings surroundings) {
    boolean able =
        surroundings.screen() == Screen.TERMINAL
            && !surroundings.isSet("NO_COLOR")
            && !surroundings.environment().getOrDefault("TERM", "").equals("dumb")
            && (!isWindows(surroundings) || understandsCodes(surroundings));
    return able ? COLOUR : PLAIN;
  }

  private static boolean isWindows(Surroundings surroundings) {
    return surroundings
        .environment()
        .getOrDefault("OS", "")
        .toLowerCase(Locale.ROOT)
        .startsWith("windows");
  }

  /** The old Windows console prints colour codes as they are; newer ones announce themselves. */
  private static boolean understandsCodes(Surroundings surroundings) {
    return surroundings.isSet("WT_SESSION")
        || surroundings.isSet("TERM")
        || surroundings.isSet("ANSICON")
        || surroundings.environment().getOrDefault("ConEmuANSI", "").equals("ON");
  }

  String strong(String text) {
    return paint(text, Style.bold);
  }

  String weak(String text) {
    return paint(text, Style.faint);
  }

  String severity(String text, Severity severity) {
    return switch (severity) {
      case ERROR -> paint(text, Style.bold, Style.fg_red);
      case WARNING -> paint(text, Style.bold, Style.fg_yellow);
      case INFO, OFF -> paint(text, Style.bold, Style.fg_cyan);
    };
  }

  private String paint(String text, IStyle... styles) {
    return this == PLAIN || text.isEmpty() ? text : Style.on(styles) + text + Style.reset.on();
  }
}
