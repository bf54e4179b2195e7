package org.handwheel.shop.outline;

/**
 * A slot-shaped outline: two half circles joined by straight sides.
 *
 * @param length over all in millimetres, not below {@code width}
 * @param width in millimetres, over zero
 */
public record Obround(double length, double width) {
  public Obround {
    if (!(width > 0 && length >= width && Double.isFinite(length))) {
      throw new IllegalArgumentException("an obround is at least as long as it is wide");
    }
  }

  /** 2(L - W) + pi W. */
  public double perimeter() {
    return 2 * (length - width) + Math.PI * width;
  }

  /** (L - W) W + pi W^2/4. */
  public double area() {
    return (length - width) * width + Math.PI * width * width / 4;
  }
}
