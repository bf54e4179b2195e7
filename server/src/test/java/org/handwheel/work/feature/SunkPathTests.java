package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.feature.CrankPath.Point;
import org.handwheel.work.feature.CrankPath.Purpose;
import org.handwheel.work.feature.FeatureRun.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * The way through slots and pockets, stop by stop, from the sizes alone: the cutter's axis stays
 * its radius off the walls, and rows lie no more than a radius apart.
 */
class SunkPathTests {
  private static FeatureRun run(FeatureTrial trial) {
    PlanRun run = trial.run();
    List<PlanRun.StepRun> features = FeatureTrial.features(run);
    return features.get(features.size() - 1).feature();
  }

  private static FeatureTrial pocket(String drawn, String cut) {
    return FeatureTrial.of("60 x 40 x 20", "pocket well in top, depth 4, " + drawn)
        .lines("pocket well with SD6" + cut);
  }

  private static CrankPath path(String drawn, String cut) {
    return ((Result.Lines) run(pocket(drawn, cut)).result()).path();
  }

  private static List<String> stops(CrankPath path) {
    return path.points().stream()
        .map(
            point ->
                point.x().millimetres()
                    + " "
                    + point.y().millimetres()
                    + (point.purpose() == Purpose.WALL ? " wall" : ""))
        .toList();
  }

  /**
   * 30 x 17 less a cutter of 6 leaves the axis 24 x 11. Four spaces of 2.75 are no wider than 3, so
   * three rows; then clockwise along the walls from the corner that is nearest.
   */
  @Test
  void rowsToAndFroThenAlongTheWalls() {
    CrankPath path = path("size 30 x 17, at (30, 20)", "");
    assertThat(stops(path))
        .containsExactly(
            "-12.0 -2.75",
            "12.0 -2.75",
            "12.0 0.0",
            "-12.0 0.0",
            "-12.0 2.75",
            "12.0 2.75",
            "12.0 5.5 wall",
            "12.0 -5.5 wall",
            "-12.0 -5.5 wall",
            "-12.0 5.5 wall",
            "12.0 5.5 wall");
    assertThat(path.moves()).isEqualTo(10);
    assertThat(path.isClosed()).isTrue();
    assertThat(path.ridge()).isEqualTo(Length.ZERO);
    assertThat(path.left()).isEqualTo(Length.ZERO);
    // Each way of a row is straight: 3 of 24, 2 of 2.75 between, 2.75 to the wall, and once round.
    assertThat(path.line().getLength()).isCloseTo(3 * 24 + 3 * 2.75 + 2 * (24 + 11), within(1e-9));
  }

  @Test
  void climbingTheWallsAreGoneRoundTheOtherWay() {
    assertThat(stops(path("size 30 x 17, at (30, 20)", ", climb")).subList(6, 11))
        .containsExactly(
            "12.0 5.5 wall",
            "-12.0 5.5 wall",
            "-12.0 -5.5 wall",
            "12.0 -5.5 wall",
            "12.0 5.5 wall");
  }

  /** Rows run along the longer side; where both are as long, along X. */
  @Test
  void rowsRunAlongTheLongerSide() {
    assertThat(stops(path("size 17 x 30, at (30, 20)", "")).subList(0, 3))
        .containsExactly("-2.75 -12.0", "-2.75 12.0", "0.0 12.0");
    assertThat(stops(path("size 17 x 17, at (30, 20)", "")).subList(0, 2))
        .containsExactly("-5.5 -2.75", "5.5 -2.75");
  }

  /** What is left on keeps the walls as much further off. */
  @Test
  void leavingMetalOnTheWalls() {
    CrankPath path = path("size 30 x 17, at (30, 20)", ", leaving 0.25");
    assertThat(stops(path)).contains("11.75 5.25 wall").doesNotContain("12.0 5.5 wall");
    assertThat(path.left()).isEqualTo(Length.mm("0.25"));
  }

  /** As wide as the cutter there is one line; a hair wider, one row and the walls. */
  @Test
  void aSlotOfTheCuttersWidth() {
    assertThat(stops(path("size 30 x 6, at (30, 20)", "")))
        .containsExactly("-12.0 0.0", "12.0 0.0");
    assertThat(stops(path("size 6 x 30, at (30, 20)", "")))
        .containsExactly("0.0 -12.0", "0.0 12.0");
    assertThat(stops(path("size 6 x 6, at (30, 20)", ""))).containsExactly("0.0 0.0");
    assertThat(stops(path("size 30 x 6.2, at (30, 20)", "")))
        .containsExactly(
            "-12.0 0.0",
            "12.0 0.0",
            "12.0 0.1 wall",
            "12.0 -0.1 wall",
            "-12.0 -0.1 wall",
            "-12.0 0.1 wall",
            "12.0 0.1 wall");
  }

  /** Out of an open side the axis goes the radius and 2 mm more. */
  @ParameterizedTest
  @CsvSource({
    "15, 20, -20, 12, -5.5, 5.5",
    "45, 20, -12, 20, -5.5, 5.5",
    "30, 8.5, -12, 12, -13.5, 5.5",
    "30, 31.5, -12, 12, -5.5, 13.5",
  })
  void outOfAnOpenSide(String x, String y, double left, double right, double front, double back) {
    CrankPath path = path("size 30 x 17, at (" + x + ", " + y + ")", "");
    Envelope all = path.line().getEnvelopeInternal();
    assertThat(all.getMinX()).isCloseTo(left, within(1e-9));
    assertThat(all.getMaxX()).isCloseTo(right, within(1e-9));
    assertThat(all.getMinY()).isCloseTo(front, within(1e-9));
    assertThat(all.getMaxY()).isCloseTo(back, within(1e-9));
    assertThat(path.isClosed()).isFalse();
  }

  /**
   * Corners of 10 and a cutter of radius 3: its axis goes round them on 7. The rows are 3 apart, so
   * 3 and 6 off the walls, where a row is 7 - sqrt(49 - 4 x 4) = 1.2554 and 7 - sqrt(49 - 1) =
   * 0.0718 shorter at either end; the next is as long as the room.
   */
  @Test
  void rowsEndAtTheRoundOfACorner() {
    CrankPath path = path("size 40 x 30, radius 10, at (30, 20)", ", cusp 0.08");
    List<Point> rows =
        path.points().stream().filter(point -> point.purpose() == Purpose.CLEAR).toList();
    assertThat(rows).hasSize(14);
    double[] ends = {17 - 1.25544, 17 - 0.07180, 17, 17, 17, 17 - 0.07180, 17 - 1.25544};
    for (int i = 0; i < 7; i++) {
      Point a = rows.get(2 * i);
      Point b = rows.get(2 * i + 1);
      assertThat(a.y().millimetres()).isCloseTo(-9 + 3 * i, within(1e-9));
      assertThat(Math.abs(a.x().millimetres())).isCloseTo(ends[i], within(1e-4));
      assertThat(b.x().millimetres()).isCloseTo(-a.x().millimetres(), within(1e-9));
      assertThat(b.y()).isEqualTo(a.y());
    }
    // Each stop round a corner lies on the circle of 7 about (10, 5) from the middle.
    List<Point> walls =
        path.points().stream().filter(point -> point.purpose() == Purpose.WALL).toList();
    for (Point wall : walls) {
      double x = Math.max(0, Math.abs(wall.x().millimetres()) - 10);
      double y = Math.max(0, Math.abs(wall.y().millimetres()) - 5);
      assertThat(Math.hypot(x, y)).isCloseTo(7, within(1e-6));
    }
    // As few steps as keep the ridge down. Two circles of 3 about points on one of 7, half a step
    // apart from where they meet: 10 - (7 cos a + sqrt(9 - 49 sin^2 a)).
    long steps = (walls.size() - 1) / 4 - 1;
    assertThat(ridge(steps)).isLessThanOrEqualTo(0.08);
    assertThat(ridge(steps - 1)).isGreaterThan(0.08);
    assertThat(path.ridge().millimetres()).isCloseTo(ridge(steps), within(1e-6));
  }

  private static double ridge(long steps) {
    double half = Math.PI / 4 / steps;
    double side = 7 * Math.sin(half);
    return 10 - (7 * Math.cos(half) + Math.sqrt(9 - side * side));
  }

  /** A corner at an open side is none: only those at the right are gone round. */
  @Test
  void noRoundAtAnOpenSide() {
    CrankPath path = path("size 40 x 30, radius 10, at (20, 20)", ", cusp 0.08");
    assertThat(stops(path)).contains("-25.0 12.0 wall", "-25.0 -12.0 wall");
    List<Point> rows =
        path.points().stream().filter(point -> point.purpose() == Purpose.CLEAR).toList();
    assertThat(rows.get(0).x()).isEqualTo(Length.mm("-25"));
    assertThat(rows.get(1).x().millimetres()).isCloseTo(17 - 1.25544, within(1e-4));
  }

  /** However the work lies, the slot comes out at its place in the face. */
  @ParameterizedTest
  @CsvSource({
    "top, back",
    "top, front",
    "top, left",
    "top, right",
    "bottom, back",
    "bottom, left",
  })
  void howeverTheWorkLies(String up, String fixed) {
    FeatureRun run =
        run(
            FeatureTrial.of("60 x 40 x 20", "slot s in top, size 24 x 8, through, at (18, 13)")
                .on("in V80, up " + up + ", fixed " + fixed + ", on pair P3x10")
                .lines("slot s with SD6"));
    Geometry sweep = run.sweep();
    assertThat(sweep).isNotNull();
    Envelope all = sweep.getEnvelopeInternal();
    assertThat(all.getMinX()).isCloseTo(6, within(1e-6));
    assertThat(all.getMaxX()).isCloseTo(30, within(1e-6));
    assertThat(all.getMinY()).isCloseTo(9, within(1e-6));
    assertThat(all.getMaxY()).isCloseTo(17, within(1e-6));
    assertThat(sweep.getArea()).isCloseTo(24 * 8 - 4 * 9 * (1 - Math.PI / 4), within(0.02));
  }
}
