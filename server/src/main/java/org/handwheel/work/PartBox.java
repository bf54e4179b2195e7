package org.handwheel.work;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;

/**
 * The finished part as a box: the frame in which places of the drawing are compared, whatever face
 * they are drawn on and however the part lies. Zero is its left front bottom corner; length, width
 * and height grow to the right, back and top.
 */
public record PartBox(Length length, Length width, Length height) {
  /** A place in the box. */
  public record Point(Length length, Length width, Length height) {
    public Length along(PartDimension dimension) {
      return switch (dimension) {
        case LENGTH -> length;
        case WIDTH -> width;
        case HEIGHT -> height;
      };
    }
  }

  /**
   * The box of a part: the drawing's nominal sizes, and where the drawing gives none the middle of
   * what the work has.
   *
   * @return nothing if neither gives a size
   */
  public static Optional<PartBox> of(Drawing drawing, Workpiece work) {
    Map<PartDimension, Length> sizes = new EnumMap<>(PartDimension.class);
    for (PartDimension dimension : PartDimension.values()) {
      Drawing.Demand demand = drawing.demand(dimension);
      SizeState state = work.size(dimension);
      if (demand != null) {
        sizes.put(dimension, demand.nominal());
      } else if (state != null && !drawing.isSuspect(dimension)) {
        sizes.put(dimension, state.range().middle());
      } else {
        return Optional.empty();
      }
    }
    return Optional.of(of(sizes));
  }

  private static PartBox of(Map<PartDimension, Length> sizes) {
    return new PartBox(
        sizes.getOrDefault(PartDimension.LENGTH, Length.ZERO),
        sizes.getOrDefault(PartDimension.WIDTH, Length.ZERO),
        sizes.getOrDefault(PartDimension.HEIGHT, Length.ZERO));
  }

  public Length size(PartDimension dimension) {
    return switch (dimension) {
      case LENGTH -> length;
      case WIDTH -> width;
      case HEIGHT -> height;
    };
  }

  /** How far a place lies from a face, counted into the part; negative outside it. */
  public Length from(Face face, Point point) {
    Length along = point.along(face.dimension());
    return face.sign() < 0 ? along : size(face.dimension()).minus(along);
  }

  /**
   * Where a place lies on an axis of the machine, counted from the face that looks in the axis'
   * negative direction: the operator's left, the operator's front, or down.
   */
  public Length at(Axis axis, Orientation lies, Point point) {
    return from(lies.facing(Direction.of(axis, -1)), point);
  }
}
