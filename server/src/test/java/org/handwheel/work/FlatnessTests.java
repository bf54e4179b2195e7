package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How flat a face comes from a leaning head, against the surface worked out point by point from the
 * circle the cutter's edge goes round (geometry).
 */
class FlatnessTests {
  /** What machine and work add by the usual limits. */
  private static final double WAYS = 0.005;

  @ParameterizedTest
  @CsvSource({
    // face's width, offset toward the front, tilt over 100 mm
    "30, 0, 0.1",
    "30, 4, 0.1",
    "38, 0, 0.1",
    "12, 0, 0.3",
    "10, 12, 0.3"
  })
  void aHollowAsDeepAsTheCircleIsHigh(double width, double offset, double tilt) {
    Workpiece end = cut(width, "offset " + offset + " toward front", tilt);
    // The stock may be as wide as this.
    double widest = end.size(PartDimension.WIDTH).range().high().millimetres();
    assertThat(flatness(end))
        .isCloseTo(WAYS + hollow(20, widest, offset) * tilt / 100, within(2e-6));
  }

  @ParameterizedTest
  @CsvSource({"60, 25, 0.1", "55, 30, 0.05"})
  void lanesSideBySideStayWithinTheBound(double width, double stepOver, double tilt) {
    double bound = flatness(cut(width, "step over " + stepOver, tilt));
    // Leaning across the travel: the rise over a lane's step, W tan e.
    assertThat(bound).isGreaterThanOrEqualTo(WAYS + stepOver * tilt / 100 - 1e-9);
    // Leaning along it: the outermost lane at most to the edge of its circle.
    assertThat(bound).isGreaterThanOrEqualTo(WAYS + 20 * tilt / 100 - 1e-9);
  }

  @Test
  void aTrueHeadLeavesWhatTheMachineLeaves() {
    assertThat(flatness(cut(30, "offset 0 toward front", 0))).isCloseTo(WAYS, within(1e-9));
  }

  /** Greatest minus least height of the leading edge's circle over the face, by sampling. */
  private static double hollow(double radius, double width, double offset) {
    double least = Double.MAX_VALUE;
    double greatest = -Double.MAX_VALUE;
    for (int i = 0; i <= 100_000; i++) {
      double y = offset - width / 2 + width * i / 100_000;
      if (Math.abs(y) <= radius) {
        double height = Math.sqrt(radius * radius - y * y);
        least = Math.min(least, height);
        greatest = Math.max(greatest, height);
      }
    }
    return greatest - least;
  }

  private static Workpiece cut(double width, String how, double tilt) {
    return Worked.block()
        .toward("width %s\nheight 18".formatted(width))
        .from("size 50 x %s x 20\nmilled all".formatted(width))
        .setup(
            "a",
            """
                tram head %s over 100
                hold in V80, up top, fixed back, on pair P6x10
                cutter FC40
                touch top with paper 0.05, zero z
                rough top to height, pass 0.5, travel left to right, %s
                """
                .formatted(tilt, how))
        .end();
  }

  private static double flatness(Workpiece end) {
    Length flatness = end.face(Face.TOP).flatness();
    assertThat(flatness).isNotNull();
    return flatness.millimetres();
  }
}
