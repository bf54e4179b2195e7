package org.handwheel.plan.sheet;

/** Sizes of paper. */
public enum Paper {
  /** 210 mm by 297 mm. Source: ISO 216. */
  A4(210, 297),
  /** 8.5 in by 11 in. Source: ASME Y14.1, size A. */
  LETTER(215.9, 279.4);

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** In millimetres, upright. */
  public double width() {
    return width;
  }

  /** In millimetres, upright. */
  public double height() {
    return height;
  }
}
