package org.handwheel.model;

import java.util.Locale;

/** The three sizes of a block: left to right, front to back, bottom to top. */
public enum PartDimension {
  LENGTH(0),
  WIDTH(1),
  HEIGHT(2);

  private final int index;

  PartDimension(int index) {
    this.index = index;
  }

  /** Its place in a right-handed frame: 0 along the length, 1 along the width, 2 upward. */
  int index() {
    return index;
  }

  static PartDimension at(int index) {
    return switch (index) {
      case 0 -> LENGTH;
      case 1 -> WIDTH;
      default -> HEIGHT;
    };
  }

  /** The word of the language. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
