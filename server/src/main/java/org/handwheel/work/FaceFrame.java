package org.handwheel.work;

import org.handwheel.model.Face;
import org.handwheel.model.Part.Position;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;

/**
 * The two coordinates of a face, exactly as a drawing writes them, and their way to the part's box.
 *
 * <p>The first coordinate runs along the earlier of the face's two dimensions (length, width,
 * height), the second along the later. In this frame both are counted from the low edges (left,
 * front, bottom); {@link #of(Position)} brings a position there from any corner or the centre. Seen
 * as one looks at the face, the second coordinate grows upward; the first grows to the right on
 * top, front and right, and to the left on bottom, back and left.
 *
 * @param face the face
 * @param box the part it is a face of
 */
public record FaceFrame(Face face, PartBox box) {
  /** A place on the face, counted from its low edges. */
  public record Place(Length first, Length second) {
    public Place plus(Length alongFirst, Length alongSecond) {
      return new Place(first.plus(alongFirst), second.plus(alongSecond));
    }
  }

  /** The dimension that the first coordinate runs along. */
  public PartDimension firstAlong() {
    return face.dimension() == PartDimension.LENGTH ? PartDimension.WIDTH : PartDimension.LENGTH;
  }

  /** The dimension that the second coordinate runs along. */
  public PartDimension secondAlong() {
    return face.dimension() == PartDimension.HEIGHT ? PartDimension.WIDTH : PartDimension.HEIGHT;
  }

  public Length firstSize() {
    return box.size(firstAlong());
  }

  public Length secondSize() {
    return box.size(secondAlong());
  }

  /** How thick the part is below the face. */
  public Length thickness() {
    return box.size(face.dimension());
  }

  /** +1 if the first coordinate grows to the right as one looks at the face, else -1. */
  public int firstToRight() {
    return switch (face) {
      case TOP, FRONT, RIGHT -> 1;
      case BOTTOM, BACK, LEFT -> -1;
    };
  }

  /** Where a written position lies. A centre between two picometres is rounded half to even. */
  public Place of(Position position) {
    return of(position, position.first(), position.second());
  }

  /** Where two coordinates lie that count from the same corner as a written position. */
  public Place of(Position reference, Length first, Length second) {
    if (reference.isFromCentre()) {
      return new Place(firstSize().half().plus(first), secondSize().half().plus(second));
    }
    return new Place(
        inward(reference.corner().get(0), first), inward(reference.corner().get(1), second));
  }

  private Length inward(Face edge, Length distance) {
    return edge.sign() < 0 ? distance : box.size(edge.dimension()).minus(distance);
  }

  /** The place below the face at a depth, in the part's box. */
  public PartBox.Point point(Place place, Length depth) {
    Length across = face.sign() < 0 ? depth : thickness().minus(depth);
    return switch (face.dimension()) {
      case LENGTH -> new PartBox.Point(across, place.first(), place.second());
      case WIDTH -> new PartBox.Point(place.first(), across, place.second());
      case HEIGHT -> new PartBox.Point(place.first(), place.second(), across);
    };
  }

  /** The place on the face above a point of the part. */
  public Place place(PartBox.Point point) {
    return new Place(point.along(firstAlong()), point.along(secondAlong()));
  }

  /** How deep a point of the part lies below the face. */
  public Length depth(PartBox.Point point) {
    return box.from(face, point);
  }
}
