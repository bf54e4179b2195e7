package org.handwheel.shop.material;

/**
 * What a cutter is made of.
 *
 * <p>Young's modulus from memory: high-speed steel 210 GPa, cemented carbide 600 GPa.
 */
public enum CutterMaterial {
  HIGH_SPEED_STEEL("high-speed steel", 210_000),
  CARBIDE("carbide", 600_000);

  private final String words;
  private final double youngsModulus;

  CutterMaterial(String words, double youngsModulus) {
    this.words = words;
    this.youngsModulus = youngsModulus;
  }

  public String words() {
    return words;
  }

  /** Young's modulus in newtons per square millimetre (MPa). */
  public double youngsModulus() {
    return youngsModulus;
  }
}
