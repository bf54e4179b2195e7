package org.handwheel.work;

import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Side;

/**
 * How the part lies at the machine: which face looks which way.
 *
 * <p>With Y pointing away from the operator and Z up, X = Y x Z: the face to the operator's right
 * is the vector product of the face looking back and the face looking up.
 *
 * @param up the face looking up
 * @param back the face looking away from the operator
 */
public record Orientation(Face up, Face back) {
  /** With face {@code fixed} against a fixed jaw on the given side. */
  static Orientation of(Face up, Face fixed, Direction fixedJaw) {
    return new Orientation(up, fixedJaw == Direction.OPERATOR_FRONT ? fixed.opposite() : fixed);
  }

  /** The face looking in a direction. */
  public Face facing(Direction direction) {
    return switch (direction) {
      case UP -> up;
      case DOWN -> up.opposite();
      case OPERATOR_BACK -> back;
      case OPERATOR_FRONT -> back.opposite();
      case OPERATOR_RIGHT -> back.cross(up);
      case OPERATOR_LEFT -> back.cross(up).opposite();
    };
  }

  /** The direction a face looks in. */
  public Direction directionOf(Face face) {
    for (Direction direction : Direction.values()) {
      if (facing(direction) == face) {
        return direction;
      }
    }
    throw new IllegalStateException("no direction for " + face);
  }

  public Axis axisOf(Face face) {
    return directionOf(face).axis();
  }

  /** The part's size that lies along a machine axis. */
  public PartDimension along(Axis axis) {
    return facing(Direction.of(axis, 1)).dimension();
  }

  /** The direction meant by a face of the part or a place at the machine. */
  public Direction resolve(Side side) {
    if (side instanceof Side.OfPart part) {
      return directionOf(part.face());
    }
    return ((Side.AtMachine) side).direction();
  }
}
