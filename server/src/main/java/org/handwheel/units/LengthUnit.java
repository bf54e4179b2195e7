package org.handwheel.units;

import org.apache.commons.numbers.fraction.BigFraction;

/**
 * The units of length a plan may use, each an exact number of picometres.
 *
 * <p>Source: 1 in = 25.4 mm exactly, NIST Special Publication 811 (1959 international yard and
 * pound agreement). A thou is a thousandth and a tenth a ten-thousandth of an inch (shop usage).
 */
public enum LengthUnit {
  MM("mm", 1_000_000_000L),
  IN("in", 25_400_000_000L),
  THOU("thou", 25_400_000L),
  TENTH("tenths", 2_540_000L),
  UM("um", 1_000_000L),
  UIN("uin", 25_400L);

  private final String symbol;
  private final long picometres;

  LengthUnit(String symbol, long picometres) {
    this.symbol = symbol;
    this.picometres = picometres;
  }

  /** The unit as the language writes it. */
  public String symbol() {
    return symbol;
  }

  /** How many picometres one unit is. */
  public long picometres() {
    return picometres;
  }

  /** The size of one unit in picometres, for exact arithmetic. */
  public BigFraction factor() {
    return BigFraction.of(picometres);
  }
}
