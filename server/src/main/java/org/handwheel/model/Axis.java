package org.handwheel.model;

import java.util.Locale;

/** An axis of the machine: X along the jaws, Y across the table, Z up. */
public enum Axis {
  X,
  Y,
  Z;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
