package org.handwheel.units;

/** What a value measures. A plain number takes the dimension of the place it stands in. */
public enum Dimension {
  NUMBER("a plain number"),
  LENGTH("a length"),
  ANGLE("an angle"),
  SURFACE_SPEED("a cutting speed"),
  FEED_RATE("a table feed"),
  FEED_PER_TOOTH("a feed per tooth"),
  FEED_PER_REV("a feed per turn"),
  SPINDLE_SPEED("a spindle speed"),
  POWER("a power");

  private final String words;

  Dimension(String words) {
    this.words = words;
  }

  /** How a message names it: "a length". */
  public String words() {
    return words;
  }
}
