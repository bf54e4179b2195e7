package org.handwheel.model;

import java.util.Locale;

/** The kinds of things a shop owns; each kind has names of its own. */
public enum OwnKind {
  MACHINE,
  VISE,
  PARALLELS,
  CUTTER,
  DRILL,
  DRILLS,
  TAP,
  REAMER,
  INSTRUMENT,
  MATERIAL,
  PACKING,
  SPACER,
  CLAMP,
  BAR,
  FINDER,
  ANGLE_PLATE,
  V_BLOCK,
  SUBPLATE,
  LIMITS,
  SEVERITIES;

  /** The word of the language: {@code angle-plate}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** With its article, for a message. */
  public String words() {
    return switch (this) {
      case INSTRUMENT -> "an instrument";
      case PARALLELS -> "a set of parallels";
      case DRILLS -> "a set of drills";
      case PACKING -> "a packing piece";
      case ANGLE_PLATE -> "an angle plate";
      case V_BLOCK -> "a V-block";
      case LIMITS -> "a set of limits";
      case SEVERITIES -> "a set of severities";
      default -> "a " + word();
    };
  }
}
