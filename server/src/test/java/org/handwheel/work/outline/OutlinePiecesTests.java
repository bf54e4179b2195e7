package org.handwheel.work.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.work.outline.RoundOutline.Oval;
import org.handwheel.work.outline.RoundOutline.Rounded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;

/** Blends, arcs and ellipses of outlines, against elementary geometry. */
class OutlinePiecesTests {
  // ---- Blends

  /**
   * Smooth all round, an outline turns by 360 degrees over its arcs (the theorem of turning
   * tangents), and neighbours have the same normal where they meet.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        // two arcs, two arcs with hollow sides between lines, and both together
        "blend 0 0 2;arc 25;blend 40 0 2;arc 25",
        "blend 0 0 3;hollow 60;blend 40 0 3;blend 40 20 3;blend 0 20 3",
        "blend 0 0 3;arc 25;blend 40 0 3;blend 40 20 3;arc 40;blend 0 20 3",
        "blend 0 0 2;hollow 60;blend 40 0 2;arc 20;blend 40 20 2;hollow 60;blend 0 20 2;arc 20",
        // an inside corner between two lines, and one between two arcs
        "blend 0 0 3;blend 60 0 3;blend 60 20 3;blend 25 20 4;blend 25 50 3;blend 0 50 3",
        "blend 0 0 3;blend 60 0 3;blend 60 40 3;arc 30;blend 30 40 4;arc 30;blend 0 40 3",
        "boss 0 0 12;boss 50 0 9;boss 25 40 6",
      })
  void blendsAreSmooth(String words) {
    List<Piece> pieces = FreeOutlineTests.contour(words.split(";")).pieces();
    double turned = 0;
    for (int i = 0; i < pieces.size(); i++) {
      Piece next = pieces.get((i + 1) % pieces.size());
      assertThat(pieces.get(i).end().distance(next.start())).isLessThan(1e-7);
      assertThat(Math.cos(next.normal(0) - pieces.get(i).normal(1))).isCloseTo(1, within(1e-9));
      turned += pieces.get(i).turn();
    }
    assertThat(turned).isCloseTo(2 * Math.PI, within(1e-7));
  }

  /** Over a chord of 40 a segment of radius 25 has r^2 acos(d/r) - d sqrt(r^2 - d^2), d = 15. */
  @Test
  void twoArcsMakeALens() {
    double segment = 625 * Math.acos(0.6) - 15 * 20;
    assertThat(
            FreeOutlineTests.contour("corner 0 0", "arc 25", "corner 40 0", "arc 25")
                .polygon(800)
                .getArea())
        .isCloseTo(2 * segment, within(0.001));
    // A hollow takes as much away from the rectangle of 40 x 30 as an arc adds.
    assertThat(
            FreeOutlineTests.contour(
                    "corner 0 0", "hollow 25", "corner 40 0", "corner 40 30", "corner 0 30")
                .polygon(800)
                .getArea())
        .isCloseTo(1200 - segment, within(0.001));
    assertThat(
            FreeOutlineTests.contour(
                    "corner 0 30", "corner 40 30", "corner 40 0", "arc 25", "corner 0 0")
                .polygon(800)
                .getArea())
        .isCloseTo(1200 + segment, within(0.001));
  }

  /** A blend in the corner of two lines cuts off R^2 (1 - pi/4) of a square corner. */
  @Test
  void aBlendTakesTheCornerAndNoMore() {
    double lost = 25 * (1 - Math.PI / 4);
    assertThat(
            FreeOutlineTests.contour("blend 0 0 5", "corner 40 0", "corner 40 30", "corner 0 30")
                .polygon(800)
                .getArea())
        .isCloseTo(1200 - lost, within(0.001));
    // In an inside corner it adds as much: an L of 40 x 30 less 20 x 15.
    assertThat(
            FreeOutlineTests.contour(
                    "corner 0 0",
                    "corner 40 0",
                    "corner 40 15",
                    "blend 20 15 5",
                    "corner 20 30",
                    "corner 0 30")
                .polygon(800)
                .getArea())
        .isCloseTo(1200 - 300 + lost, within(0.001));
  }

  @Test
  void blendsThatDoNotFit() {
    // A side of 20 has room for two blends of 10 and not for more.
    assertThat(
            FreeOutlineTests.result("blend 0 0 10", "blend 20 0 10", "corner 20 40", "corner 0 40")
                .contour())
        .isNotNull();
    assertThat(
            FreeOutlineTests.result(
                    "blend 0 0 10.1", "blend 20 0 10.1", "corner 20 40", "corner 0 40")
                .problems())
        .isNotEmpty();
    assertThat(
            FreeOutlineTests.result(
                    "corner 0 0", "blend 20 0 3", "corner 40 0", "corner 40 30", "corner 0 30")
                .problems())
        .anyMatch(problem -> problem.message().contains("no corner to blend"));
    // A hollow between two rounds of 12 and 9, 50 apart: half of what lies between them is 14.5.
    assertThat(
            FreeOutlineTests.result("boss 0 0 12", "hollow 14", "boss 50 0 9", "hollow 40")
                .problems())
        .anyMatch(problem -> problem.message().contains("it needs at least 14.50 mm"));
    // An arc round both has to reach over them: half of 50 + 21.
    assertThat(FreeOutlineTests.result("boss 0 0 12", "arc 35", "boss 50 0 9").problems())
        .anyMatch(problem -> problem.message().contains("it needs at least 35.50 mm"));
  }

  // ---- Pieces

  /** Against the least of many points: on and off the axes, within and without. */
  @ParameterizedTest
  @CsvSource({
    "26, 10", "10, 26", "15, 15",
  })
  void distanceFromAnEllipse(double a, double b) {
    Piece.Round round = new Piece.Round(a, b);
    double[][] points = {
      {0, 0},
      {5, 0},
      {0, 5},
      {a - 1, 0},
      {a + 3, 0},
      {0, b - 1},
      {0, b + 3},
      {-5, 0},
      {22, 0},
      {0, -22},
      {3, 4},
      {-20, 12},
      {12, -20},
      {a, b}
    };
    for (double[] at : points) {
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < 40_000; i++) {
        double t = 2 * Math.PI * i / 40_000;
        least = Math.min(least, Math.hypot(a * Math.cos(t) - at[0], b * Math.sin(t) - at[1]));
      }
      assertThat(round.distance(at[0], at[1]))
          .as("%s, %s", at[0], at[1])
          .isCloseTo(least, within(1e-5));
    }
    // At the ends of the axes the radii are b^2/a and a^2/b.
    assertThat(1 / round.curvature(0)).isCloseTo(b * b / a, within(1e-9));
    assertThat(1 / round.curvature(0.25)).isCloseTo(a * a / b, within(1e-9));
    assertThat(round.at(0.25).y).isCloseTo(b, within(1e-9));
    assertThat(round.at(0.5).x).isCloseTo(-a, within(1e-9));
    assertThat(round.turn()).isCloseTo(2 * Math.PI, within(1e-12));
    assertThat(round.speed(0)).isCloseTo(2 * Math.PI * b * b / a, within(1e-9));
  }

  @Test
  void arcsAndLines() {
    // A quarter from the right to the top about (1, 2), and the same walked hollow.
    Piece.Arc out = new Piece.Arc(new Coordinate(1, 2), 10, 0, Math.PI / 2);
    assertThat(out.curvature(0.3)).isCloseTo(0.1, within(1e-12));
    assertThat(out.speed(0)).isCloseTo(5 * Math.PI, within(1e-12));
    assertThat(out.normal(1)).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(out.distance(1 + 13 * Math.cos(1), 2 + 13 * Math.sin(1))).isCloseTo(3, within(1e-9));
    assertThat(out.distance(1 + 6 * Math.cos(1), 2 + 6 * Math.sin(1))).isCloseTo(4, within(1e-9));
    // Below its first point, and beyond its last, that point is the nearest.
    assertThat(out.distance(11, -1)).isCloseTo(3, within(1e-9));
    assertThat(out.distance(-3, 12)).isCloseTo(4, within(1e-9));
    Piece.Arc hollow = new Piece.Arc(new Coordinate(1, 2), 10, Math.PI / 2, -Math.PI / 2);
    assertThat(hollow.curvature(0.3)).isCloseTo(-0.1, within(1e-12));
    assertThat(Math.cos(hollow.normal(0))).isCloseTo(0, within(1e-12));
    assertThat(Math.sin(hollow.normal(0))).isCloseTo(-1, within(1e-12));
    assertThat(hollow.distance(1 + 13 * Math.cos(1), 2 + 13 * Math.sin(1)))
        .isCloseTo(3, within(1e-9));
    assertThat(hollow.distance(11, -1)).isCloseTo(3, within(1e-9));
    // What is enclosed lies to the left: a side to the right has its normal down.
    Piece.Line line = new Piece.Line(new Coordinate(0, 0), new Coordinate(4, 0));
    assertThat(Math.sin(line.normal(0.5))).isCloseTo(-1, within(1e-12));
    assertThat(line.speed(0)).isCloseTo(4, within(1e-12));
    assertThat(line.distance(2, 3)).isCloseTo(3, within(1e-12));
    assertThat(line.distance(7, 4)).isCloseTo(5, within(1e-12));
    assertThat(Piece.wrapped(-0.5)).isCloseTo(2 * Math.PI - 0.5, within(1e-12));
    assertThat(Piece.wrapped(7)).isCloseTo(7 - 2 * Math.PI, within(1e-12));
    assertThat(Piece.wrapped(-1e-15)).isZero();
  }

  @Test
  void roundOutlinesHaveSizes() {
    assertThatThrownBy(() -> new Oval(0, 5)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Oval(5, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Oval(Double.POSITIVE_INFINITY, 5))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Rounded(10, 5, 5.1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Rounded(10, 5, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThat(new Oval(7, 3).turned()).isEqualTo(new Oval(3, 7));
    assertThat(new Rounded(7, 3, 2).turned()).isEqualTo(new Rounded(3, 7, 2));
    // 20 x 12 with corners of 4; a circle of 5 has nothing else.
    assertThat(new Rounded(10, 6, 4).polygon(400).getArea())
        .isCloseTo(240 - 64 * (1 - Math.PI / 4), within(0.001));
    assertThat(new Rounded(5, 5, 5).distance(3, 4)).isCloseTo(0, within(1e-9));
    assertThat(new Rounded(5, 5, 5).distance(6, 8)).isCloseTo(5, within(1e-9));
    assertThat(new Rounded(10, 6, 4).distance(0, 9)).isCloseTo(3, within(1e-9));
    assertThat(new Rounded(10, 6, 4).distance(12, 0)).isCloseTo(2, within(1e-9));
    assertThat(new Rounded(10, 6, 4).radius(1)).isEqualTo(4);
    Contour box = Contour.of(new Rounded(10, 6, 4));
    assertThat(box.pieces()).hasSize(8);
    assertThat(Contour.of(new Rounded(10, 6, 6)).pieces()).hasSize(6);
    assertThat(Contour.of(new Rounded(5, 5, 5)).pieces()).hasSize(4);
    assertThat(box).isEqualTo(Contour.of(new Rounded(10, 6, 4)));
    assertThat(box.hashCode()).isEqualTo(Contour.of(new Rounded(10, 6, 4)).hashCode());
    assertThat(box).isNotEqualTo(Contour.of(new Rounded(10, 6, 3)));
  }

  /** Turned over and rolled about, a point of the form is where its coordinates say. */
  @ParameterizedTest
  @CsvSource({
    "true, 1, 1", "true, -1, 1", "true, 1, -1", "true, -1, -1",
    "false, 1, 1", "false, -1, 1", "false, 1, -1", "false, -1, -1",
  })
  void placedInOtherAxes(boolean alongX, int first, int second) {
    for (Contour form : List.of(FreeOutlineTests.bracket(), Contour.of(new Oval(26, 10)))) {
      Contour placed = form.placed(alongX, first, second);
      assertThat(Area.ofRingSigned(placed.polygon(50).getCoordinates()))
          .as("still counter-clockwise, negative in that library's sense")
          .isNegative();
      for (double[] at : new double[][] {{3, 5}, {50, -4}, {25, 40}, {70, 10}, {10, 30}}) {
        double x = first * at[0];
        double y = second * at[1];
        assertThat(placed.distance(alongX ? x : y, alongX ? y : x))
            .isCloseTo(form.distance(at[0], at[1]), within(1e-9));
      }
    }
  }
}
