package org.handwheel.work.feature;

import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.Orientation;
import org.handwheel.work.outline.Contour;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * How the coordinates of a face that looks up or down lie along the machine's X and Y.
 *
 * @param alongX whether the first coordinate runs along X
 * @param firstSign +1 if the first coordinate grows as its axis does, else -1
 * @param secondSign the same for the second
 */
record Lying(boolean alongX, int firstSign, int secondSign) {
  static Lying of(FaceFrame frame, Orientation lies) {
    boolean alongX = lies.along(Axis.X) == frame.firstAlong();
    Axis first = alongX ? Axis.X : Axis.Y;
    Axis second = alongX ? Axis.Y : Axis.X;
    return new Lying(
        alongX, sign(first, frame.firstAlong(), lies), sign(second, frame.secondAlong(), lies));
  }

  private static int sign(Axis axis, PartDimension dimension, Orientation lies) {
    var face = lies.facing(Direction.of(axis, 1));
    if (face.dimension() != dimension) {
      throw new IllegalArgumentException("the face looks neither up nor down");
    }
    return face.sign();
  }

  /** The machine's X of a step along the face. */
  Length x(Length first, Length second) {
    Length along = alongX ? first : second;
    return (alongX ? firstSign : secondSign) > 0 ? along : along.negated();
  }

  /** The machine's Y of a step along the face. */
  Length y(Length first, Length second) {
    Length along = alongX ? second : first;
    return (alongX ? secondSign : firstSign) > 0 ? along : along.negated();
  }

  /** A contour of the face, in the machine's axes. */
  Contour place(Contour contour) {
    return contour.placed(alongX, firstSign, secondSign);
  }

  /** From the machine's axes about a place, in millimetres, to the coordinates of the face. */
  AffineTransformation toFace(Place about) {
    double first = about.first().millimetres();
    double second = about.second().millimetres();
    return alongX
        ? new AffineTransformation(firstSign, 0, first, 0, secondSign, second)
        : new AffineTransformation(0, firstSign, first, secondSign, 0, second);
  }
}
