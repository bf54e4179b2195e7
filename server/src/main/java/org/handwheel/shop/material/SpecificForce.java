package org.handwheel.shop.material;

/**
 * The specific cutting force by Kienzle's law kc = kc1.1 h^-mc (Kienzle 1952, from memory).
 *
 * @param kc11 newtons per square millimetre for a chip 1 mm thick and 1 mm wide, over zero
 * @param mc the exponent, from 0 to under 1
 */
public record SpecificForce(double kc11, double mc) {
  public SpecificForce {
    if (!(kc11 > 0 && mc >= 0 && mc < 1)) {
      throw new IllegalArgumentException("kc1.1 is over zero and mc from 0 to under 1");
    }
  }

  /**
   * The specific cutting force in newtons per square millimetre.
   *
   * @param chipMillimetres the mean thickness of the chip, over zero
   */
  public double at(double chipMillimetres) {
    if (!(chipMillimetres > 0)) {
      throw new IllegalArgumentException("a chip has a thickness");
    }
    return kc11 * Math.pow(chipMillimetres, -mc);
  }
}
