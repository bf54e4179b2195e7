package org.handwheel.shop.fit;

/** What a hole and a shaft together do. */
public enum FitKind {
  CLEARANCE("clearance"),
  TRANSITION("transition"),
  INTERFERENCE("interference");

  private final String words;

  FitKind(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
