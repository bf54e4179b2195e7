package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Part.Position;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame.Place;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FaceFrameTests {
  private static final PartBox BOX = new PartBox(mm("48"), mm("32"), mm("19"));

  private static Length mm(String value) {
    return Length.mm(value);
  }

  private static Position at(String first, String second, Face... corner) {
    Origin nowhere = new Origin(SyntaxTree.parse("a.plan", "").sections().get(0), 0, 0);
    return new Position(mm(first), mm(second), List.of(corner), null, null, nowhere);
  }

  private static PartBox.Point point(String length, String width, String height) {
    return new PartBox.Point(mm(length), mm(width), mm(height));
  }

  @ParameterizedTest
  @CsvSource({
    "TOP, LEFT, FRONT, 7, 5, 7, 5, 19",
    "TOP, RIGHT, BACK, 7, 5, 41, 27, 19",
    "BOTTOM, RIGHT, BACK, 6, 6, 42, 26, 0",
    "FRONT, LEFT, BOTTOM, 24, 9.5, 24, 0, 9.5",
    "BACK, LEFT, TOP, 24, 9.5, 24, 32, 9.5",
    "RIGHT, FRONT, BOTTOM, 16, 6, 48, 16, 6",
    "LEFT, BACK, TOP, 16, 6, 0, 16, 13"
  })
  void aPositionFromACornerLiesAtItsPlaceInThePart(
      Face face,
      Face first,
      Face second,
      String a,
      String b,
      String length,
      String width,
      String height) {
    FaceFrame frame = new FaceFrame(face, BOX);
    PartBox.Point point = frame.point(frame.of(at(a, b, first, second)), Length.ZERO);
    assertThat(point).isEqualTo(point(length, width, height));
  }

  @Test
  void aPositionFromTheCentreGrowsWithTheDimensions() {
    FaceFrame front = new FaceFrame(Face.FRONT, BOX);
    assertThat(front.of(at("0", "2"))).isEqualTo(new Place(mm("24"), mm("11.5")));
  }

  @ParameterizedTest
  @EnumSource(Face.class)
  void aPointBelowAFaceComesBack(Face face) {
    FaceFrame frame = new FaceFrame(face, BOX);
    Place place = new Place(mm("3"), mm("5"));
    PartBox.Point point = frame.point(place, mm("2"));
    assertThat(frame.place(point)).isEqualTo(place);
    assertThat(frame.depth(point)).isEqualTo(mm("2"));
  }

  /** As one looks at the face, right is up x normal; here with the second coordinate up. */
  @ParameterizedTest
  @EnumSource(Face.class)
  void theFirstCoordinateGrowsToTheSideOneSees(Face face) {
    FaceFrame frame = new FaceFrame(face, BOX);
    Face right = Face.of(frame.secondAlong(), 1).cross(face);
    assertThat(right).isEqualTo(Face.of(frame.firstAlong(), frame.firstToRight()));
  }

  @Test
  void atTheMachineAPlaceCountsFromLeftFrontAndBelow() {
    // Turned end for end, the back staying at the jaw: the part's right lies at the left.
    Orientation turned = Orientation.of(Face.BOTTOM, Face.BACK, Direction.OPERATOR_BACK);
    PartBox.Point point = point("10", "5", "3");
    assertThat(BOX.at(Axis.X, turned, point)).isEqualTo(mm("38"));
    assertThat(BOX.at(Axis.Y, turned, point)).isEqualTo(mm("5"));
    assertThat(BOX.at(Axis.Z, turned, point)).isEqualTo(mm("16"));
  }
}
