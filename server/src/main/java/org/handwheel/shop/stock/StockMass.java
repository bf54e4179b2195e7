package org.handwheel.shop.stock;

import org.handwheel.units.Length;

/** The mass of stock: volume times density. */
public final class StockMass {
  /** Kilograms in a pound, exactly. */
  public static final double KILOGRAMS_PER_POUND = 0.45359237;

  private StockMass() {}

  /**
   * The mass of a rectangular block in kilograms.
   *
   * @param density kilograms per cubic metre
   */
  public static double block(Length length, Length width, Length height, double density) {
    return length.millimetres() * width.millimetres() * height.millimetres() * 1e-9 * density;
  }

  /** The mass of a round bar in kilograms. */
  public static double round(Length diameter, Length length, double density) {
    double radius = diameter.millimetres() / 2;
    return Math.PI * radius * radius * length.millimetres() * 1e-9 * density;
  }

  /** Kilograms as pounds. */
  public static double pounds(double kilograms) {
    return kilograms / KILOGRAMS_PER_POUND;
  }
}
