package org.handwheel.shop.material;

/** The groups of workpiece material of ISO 513 (letters and colours from memory). */
public enum IsoGroup {
  P("steel", "blue"),
  M("stainless steel", "yellow"),
  K("cast iron", "red"),
  N("non-ferrous metals and non-metals", "green"),
  S("heat-resisting alloys and titanium", "brown"),
  H("hardened materials", "grey");

  private final String words;
  private final String colour;

  IsoGroup(String words, String colour) {
    this.words = words;
    this.colour = colour;
  }

  public String words() {
    return words;
  }

  public String colour() {
    return colour;
  }
}
