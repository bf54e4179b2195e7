package org.handwheel.shop.drill;

/** The series a drill is sold in. */
public enum DrillSeries {
  /** 64ths of an inch. */
  FRACTIONAL("fractional"),
  /** Number 80, the smallest, to number 1. */
  NUMBER("number"),
  /** Letter A to letter Z, following number 1. */
  LETTER("letter"),
  METRIC("metric");

  private final String words;

  DrillSeries(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
