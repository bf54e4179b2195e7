package org.handwheel.shop.material;

/** The classes of material the trade treats alike. */
public enum MaterialClass {
  ALUMINIUM("aluminium"),
  COPPER_ALLOY("copper alloy"),
  STEEL("steel"),
  STAINLESS("stainless steel"),
  IRON("cast iron"),
  TITANIUM("titanium"),
  PLASTIC("plastic");

  private final String words;

  MaterialClass(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /**
   * Whether it is soft enough for a light climb pass on a small machine.
   *
   * <p>Common practice, no source: a couple of thou for finishing in soft metal.
   */
  public boolean isSoft() {
    return this == ALUMINIUM || this == COPPER_ALLOY || this == PLASTIC;
  }
}
