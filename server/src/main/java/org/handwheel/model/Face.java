package org.handwheel.model;

import java.util.List;
import java.util.Locale;

/** A face of the part, by the part's own directions: it keeps its name however the part is held. */
public enum Face {
  LEFT(PartDimension.LENGTH, -1),
  RIGHT(PartDimension.LENGTH, 1),
  FRONT(PartDimension.WIDTH, -1),
  BACK(PartDimension.WIDTH, 1),
  BOTTOM(PartDimension.HEIGHT, -1),
  TOP(PartDimension.HEIGHT, 1);

  private final PartDimension dimension;
  private final int sign;

  Face(PartDimension dimension, int sign) {
    this.dimension = dimension;
    this.sign = sign;
  }

  /** The size that lies between this face and its opposite. */
  public PartDimension dimension() {
    return dimension;
  }

  /** +1 if the outward normal points along the dimension (right, back, top), else -1. */
  public int sign() {
    return sign;
  }

  public Face opposite() {
    return of(dimension, -sign);
  }

  /** Whether the two faces meet at an edge, at a right angle. */
  public boolean adjoins(Face other) {
    return dimension != other.dimension;
  }

  public static Face of(PartDimension dimension, int sign) {
    return switch (dimension) {
      case LENGTH -> sign < 0 ? LEFT : RIGHT;
      case WIDTH -> sign < 0 ? FRONT : BACK;
      case HEIGHT -> sign < 0 ? BOTTOM : TOP;
    };
  }

  /**
   * The face whose outward normal is the vector product of this one's and {@code other}'s.
   *
   * @throws IllegalArgumentException if the two are the same or opposite
   */
  public Face cross(Face other) {
    if (!adjoins(other)) {
      throw new IllegalArgumentException(this + " and " + other + " are parallel");
    }
    int a = dimension.index();
    int b = other.dimension.index();
    PartDimension third = PartDimension.at(3 - a - b);
    int turn = (a + 1) % 3 == b ? 1 : -1;
    return of(third, turn * sign * other.sign);
  }

  public static List<Face> all() {
    return List.of(values());
  }

  /** The word of the language. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
