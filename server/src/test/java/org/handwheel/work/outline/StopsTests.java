package org.handwheel.work.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.outline.RoundOutline.Oval;
import org.handwheel.work.outline.RoundOutline.Rounded;
import org.handwheel.work.outline.StepTable.Side;
import org.handwheel.work.outline.StepTable.Station;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;

/** Stops round outlines and along walls, against the distances they must keep. */
class StopsTests {
  private static final Screw FINE = screw(Axis.X, "2");

  private static Screw screw(Axis axis, String lead) {
    return new Screw(
        axis, Length.mm(lead), BigFraction.of(100), Length.ZERO, null, null, null, BigFraction.ONE);
  }

  private static Optional<StepTable> round(String left, String cusp, CutDirection direction) {
    return StepTables.of(
        new Rounded(14, 14, 14),
        Length.mm("5"),
        Length.mm(left),
        Length.mm(cusp),
        direction,
        FINE,
        screw(Axis.Y, "2"));
  }

  /** Round a disc of 14 with a cutter of 5 and 0.25 left on the axis keeps 19.25 off its middle. */
  @Test
  void stopsRoundADisc() {
    StepTable table = round("0.25", "0.1", CutDirection.CONVENTIONAL).orElseThrow();
    assertThat(table.ridge()).isEqualTo(table.bound().minus(Length.mm("0.25")));
    assertThat(table.ridge()).isLessThanOrEqualTo(Length.mm("0.1"));
    for (Station station : table.stations()) {
      double far = Math.hypot(station.x().millimetres(), station.y().millimetres());
      assertThat(far).isGreaterThan(19.25 - 1e-6);
      assertThat(station.tightness().millimetres()).isCloseTo(far - 19.25, within(1e-6));
      // A division is 0.02: no stop lies further out than the corner of one.
      assertThat(far).isLessThan(19.25 + 0.02 * Math.sqrt(2));
      assertThat(station.dialX().divisions())
          .isEqualTo(Math.round(station.x().millimetres() / 0.02));
      assertThat(station.dialY().divisions())
          .isEqualTo(Math.round(station.y().millimetres() / 0.02));
      assertThat(station.dialX().error()).isEqualTo(Length.ZERO);
    }
    // Counter-clockwise seen from above is conventional outside (common practice, no source).
    assertThat(Area.ofRingSigned(table.path().getCoordinates())).isNegative();
    StepTable climb = round("0.25", "0.1", CutDirection.CLIMB).orElseThrow();
    assertThat(Area.ofRingSigned(climb.path().getCoordinates())).isPositive();
    assertThat(climb.steps()).isEqualTo(table.steps());
  }

  /** Between two stops the handle that leads outward goes first, so no corner cuts inside. */
  @Test
  void theWayKeepsOutside() {
    for (CutDirection direction : CutDirection.values()) {
      for (Coordinate corner : round("0", "0.1", direction).orElseThrow().path().getCoordinates()) {
        assertThat(Math.hypot(corner.x, corner.y)).isGreaterThan(19 - 1e-6);
      }
    }
  }

  @Test
  void aQuarterOfTheRound() {
    StepTable whole = round("0", "0.1", CutDirection.CONVENTIONAL).orElseThrow();
    for (int toX : new int[] {1, -1}) {
      for (int toY : new int[] {1, -1}) {
        StepTable quarter = whole.quarter(toX, toY);
        List<Station> stations = quarter.stations();
        assertThat(stations)
            .allMatch(one -> one.x().millimetres() * toX >= 0 && one.y().millimetres() * toY >= 0)
            .allMatch(one -> one.turnsRound().isEmpty());
        // It begins and ends on an axis, each once, and has a quarter of the moves.
        assertThat(stations.stream().filter(one -> one.x().isZero() || one.y().isZero()))
            .hasSize(2);
        assertThat(stations.get(0).x().isZero() || stations.get(0).y().isZero()).isTrue();
        assertThat(quarter.steps()).isEqualTo(whole.steps() / 4);
        assertThat(quarter.bound()).isEqualTo(whole.bound());
      }
    }
  }

  @Test
  void whatIsNoCut() {
    assertThatThrownBy(() -> round("-0.1", "0.1", CutDirection.CLIMB))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> round("0", "0", CutDirection.CLIMB))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                ContourSteps.of(
                    FreeOutlineTests.box(30, 20),
                    Side.OUTSIDE,
                    Length.ZERO,
                    Length.ZERO,
                    Length.mm("0.1"),
                    CutDirection.CLIMB,
                    FINE,
                    FINE,
                    null))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static ContourSteps.Result inside(Contour contour, double radius, Coordinate entry) {
    return ContourSteps.of(
        contour,
        Side.INSIDE,
        Length.ofMillimetres(radius),
        Length.ZERO,
        Length.mm("0.1"),
        CutDirection.CONVENTIONAL,
        FINE,
        screw(Axis.Y, "2"),
        entry);
  }

  /** From a starting hole the way begins at the stop next to it, and ends there. */
  @ParameterizedTest
  @CsvSource({"9, 0", "-9, 0", "3, 6", "-3, -6"})
  void theWayBeginsNextToTheHole(double x, double y) {
    Contour oval = Contour.of(new Oval(20, 12));
    StepTable table = ((ContourSteps.Result.Found) inside(oval, 4, new Coordinate(x, y))).table();
    Station first = table.stations().get(0);
    double nearest = Double.POSITIVE_INFINITY;
    for (Station station : table.stations()) {
      nearest =
          Math.min(
              nearest, Math.hypot(station.x().millimetres() - x, station.y().millimetres() - y));
    }
    assertThat(Math.hypot(first.x().millimetres() - x, first.y().millimetres() - y))
        .isCloseTo(nearest, within(1e-6));
    Station last = table.stations().get(table.steps());
    assertThat(last.x()).isEqualTo(first.x());
    assertThat(last.y()).isEqualTo(first.y());
    for (Station station : table.stations()) {
      double off = -oval.distance(station.x().millimetres(), station.y().millimetres()) - 4;
      assertThat(off).isGreaterThan(-1e-6);
      assertThat(station.tightness().millimetres()).isCloseTo(Math.max(0, off), within(1e-6));
    }
  }

  /** A waist of 6 lets no cutter of 8 through, though no hollow is tighter than it. */
  @Test
  void aWaistThatIsTooNarrow() {
    Contour waist =
        FreeOutlineTests.contour(
            "blend 0 0 6",
            "corner 30 13",
            "blend 60 0 6",
            "blend 60 32 6",
            "corner 30 19",
            "blend 0 32 6");
    assertThat(inside(waist, 4, null)).isInstanceOf(ContourSteps.Result.Narrow.class);
    assertThat(inside(waist, 2, null)).isInstanceOf(ContourSteps.Result.Found.class);
  }
}
