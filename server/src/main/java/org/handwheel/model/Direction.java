package org.handwheel.model;

/** A direction at the machine as the operator sees it. */
public enum Direction {
  OPERATOR_LEFT(Axis.X, -1, "left"),
  OPERATOR_RIGHT(Axis.X, 1, "right"),
  OPERATOR_FRONT(Axis.Y, -1, "toward you"),
  OPERATOR_BACK(Axis.Y, 1, "away from you"),
  DOWN(Axis.Z, -1, "down"),
  UP(Axis.Z, 1, "up");

  private final Axis axis;
  private final int sign;
  private final String words;

  Direction(Axis axis, int sign, String words) {
    this.axis = axis;
    this.sign = sign;
    this.words = words;
  }

  public Axis axis() {
    return axis;
  }

  public int sign() {
    return sign;
  }

  /** How a person says it: "away from you". */
  public String words() {
    return words;
  }

  public Direction opposite() {
    return of(axis, -sign);
  }

  public static Direction of(Axis axis, int sign) {
    return switch (axis) {
      case X -> sign < 0 ? OPERATOR_LEFT : OPERATOR_RIGHT;
      case Y -> sign < 0 ? OPERATOR_FRONT : OPERATOR_BACK;
      case Z -> sign < 0 ? DOWN : UP;
    };
  }
}
