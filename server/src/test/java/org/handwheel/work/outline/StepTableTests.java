package org.handwheel.work.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.shop.outline.Ellipse;
import org.handwheel.units.Length;
import org.handwheel.work.outline.RoundOutline.Oval;
import org.handwheel.work.outline.RoundOutline.Rounded;
import org.handwheel.work.outline.StepTable.Station;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Step tables against a simulation of the cutter with JTS, an independent geometry library. */
class StepTableTests {
  private static final GeometryFactory PLANE = new GeometryFactory();

  /** What the simulation's own polygons may be off, in millimetres. */
  private static final double FACETS = 0.0006;

  private static Screw screw(Axis axis, String lead, int divisions) {
    return new Screw(
        axis,
        Length.mm(lead),
        BigFraction.of(divisions),
        Length.mm("0.15"),
        null,
        null,
        null,
        BigFraction.ONE);
  }

  private static StepTable table(
      RoundOutline outline, String radius, String left, String cusp, CutDirection direction) {
    return StepTables.of(
            outline,
            Length.mm(radius),
            Length.mm(left),
            Length.mm(cusp),
            direction,
            screw(Axis.X, "2", 100),
            screw(Axis.Y, "2", 100))
        .orElseThrow();
  }

  /** Sweeps the cutter along the table's way and measures what it leaves. */
  private static void assertKeepsItsWord(StepTable table) {
    LineString path = table.path();
    double radius = table.cutterRadius().millimetres();
    Polygon finished = table.outline().polygon(1500);
    assertThat(path.distance(finished))
        .as("the cutter's axis keeps off the finished outline")
        .isGreaterThan(radius + table.left().millimetres() - 0.00005);
    BufferParameters exact = new BufferParameters(128);
    // Unless told so, a buffer first straightens its line by a hundredth of the radius.
    exact.setSimplifyFactor(0);
    Geometry swept = BufferOp.bufferOp(path, radius, exact);
    assertThat(swept.intersection(finished).getArea()).isLessThan(0.0005);
    Geometry left = PLANE.createPolygon(path.getCoordinates()).difference(swept);
    double highest = 0;
    // The distance from a convex outline is greatest at a corner of what is left.
    for (Coordinate corner : left.getCoordinates()) {
      Point point = PLANE.createPoint(corner);
      highest = Math.max(highest, finished.distance(point));
    }
    double bound = table.bound().millimetres();
    assertThat(highest).as("the bound holds").isLessThan(bound + FACETS);
    // Near the extremes the straight moves cut ridges lower than the two circles of the bound do.
    assertThat(highest).as("the bound is no idle one").isGreaterThan(bound / 2);
  }

  @Test
  void theDoorOfTheHandHole() {
    StepTable table = table(new Rounded(34, 15, 15), "6", "0", "0.05", CutDirection.CONVENTIONAL);
    assertKeepsItsWord(table);
    assertThat(table.bound()).isLessThanOrEqualTo(Length.mm("0.05"));
  }

  @Test
  void roughingLeavesWhatItIsToldTo() {
    StepTable table = table(new Oval(41, 16), "6", "0.25", "0.1", CutDirection.CLIMB);
    assertKeepsItsWord(table);
    assertThat(table.bound()).isBetween(Length.mm("0.25"), Length.mm("0.35"));
  }

  @org.junit.jupiter.api.Tag("long")
  @Test
  void uprightOvalsAndRoundedRectangles() {
    assertKeepsItsWord(table(new Oval(12, 30), "5", "0", "0.06", CutDirection.CONVENTIONAL));
    assertKeepsItsWord(table(new Rounded(15, 34, 15), "5", "0", "0.06", CutDirection.CLIMB));
    assertKeepsItsWord(table(new Rounded(20, 30, 4), "5", "0", "0.06", CutDirection.CLIMB));
    assertKeepsItsWord(table(new Rounded(25, 25, 25), "8", "0.2", "0.1", CutDirection.CLIMB));
  }

  @Tag("long")
  @Property(tries = 60)
  void everyTableKeepsItsWord(
      @ForAll @DoubleRange(min = 12, max = 70) double first,
      @ForAll @DoubleRange(min = 0.3, max = 1) double ratio,
      @ForAll @DoubleRange(min = 3, max = 12) double radius,
      @ForAll @IntRange(min = 40, max = 200) int cusp,
      @ForAll boolean oval,
      @ForAll boolean inches) {
    double second = first * ratio;
    RoundOutline outline =
        oval ? new Oval(first, second) : new Rounded(first, second, Math.min(first, second));
    String lead = inches ? "2.54" : "2.5";
    Optional<StepTable> table =
        StepTables.of(
            outline,
            Length.ofMillimetres(radius),
            Length.ZERO,
            Length.mm("0.001").times(cusp),
            CutDirection.CONVENTIONAL,
            screw(Axis.X, lead, 100),
            screw(Axis.Y, lead, 100));
    assertThat(table).isPresent();
    assertKeepsItsWord(table.orElseThrow());
  }

  /**
   * Source: geometry. Two circles of radius r about points on a circle of R + r, d theta apart,
   * meet at (R + r) cos(d theta / 2) - sqrt(r^2 - (R + r)^2 sin^2(d theta / 2)) from its middle:
   * with R = 14, r = 5 and 6 degrees 14.0738, so ridges of 0.074 take 15 steps a quarter, and 14
   * leave more.
   */
  @Test
  void ridgesOfARoundEnd() {
    Screw fine = screw(Axis.X, "1", 1_000_000);
    StepTable table =
        StepTables.of(
                new Rounded(14, 14, 14),
                Length.mm("5"),
                Length.ZERO,
                Length.mm("0.074"),
                CutDirection.CONVENTIONAL,
                fine,
                fine)
            .orElseThrow();
    assertThat(table.steps()).isEqualTo(4 * 15);
    assertThat(table.bound()).isEqualTo(Length.mm("0.074"));
    assertKeepsItsWord(table);
  }

  /** The parallel curve against JTS's buffer, which knows nothing of it; and it is no ellipse. */
  @Test
  void theOffsetIsTheParallelCurve() {
    RoundOutline oval = new Oval(50, 25);
    Geometry grown = oval.polygon(2000).buffer(6, 128).getBoundary();
    double fromEllipse = 0;
    for (int i = 0; i <= 90; i++) {
      Coordinate point = oval.offset(Math.toRadians(i), 6);
      assertThat(grown.distance(PLANE.createPoint(point))).isLessThan(0.0003);
      double level = Math.hypot(point.x / 56, point.y / 31);
      fromEllipse = Math.max(fromEllipse, Math.abs(level - 1));
    }
    assertThat(fromEllipse).isGreaterThan(0.005);
  }

  /** Both descriptions of the ellipse, by normal and by parameter, give the same points. */
  @Test
  void agreesWithTheParametricForm() {
    Ellipse ellipse = new Ellipse(50, 25);
    for (int i = 1; i < 90; i += 4) {
      double t = Math.toRadians(i);
      double phi = Math.atan2(50 * Math.sin(t), 25 * Math.cos(t));
      Ellipse.Point expected = ellipse.offset(t, 6);
      Coordinate point = new Oval(50, 25).offset(phi, 6);
      assertThat(point.x).isCloseTo(expected.x(), within(1e-9));
      assertThat(point.y).isCloseTo(expected.y(), within(1e-9));
    }
    assertThat(new Oval(50, 25).radius(0)).isCloseTo(ellipse.endRadius(), within(1e-9));
    assertThat(new Oval(50, 25).radius(Math.PI / 2)).isCloseTo(ellipse.sideRadius(), within(1e-9));
  }

  /** Backlash: each handle turns one way as long as it can, so only at the four extremes. */
  @Test
  void eachHandleTurnsRoundAtTheExtremesOnly() {
    StepTable table = table(new Oval(41, 16), "6", "0", "0.05", CutDirection.CONVENTIONAL);
    assertThat(table.stations().stream().mapToInt(s -> s.turnsRound().size()).sum()).isEqualTo(3);
    Station start = table.stations().get(0);
    assertThat(table.stations().get(table.steps()).x()).isEqualTo(start.x());
    assertThat(table.stations().get(table.steps()).y()).isEqualTo(start.y());
  }

  @Test
  void refusesWhatNobodyWinds() {
    Screw screw = screw(Axis.X, "2", 100);
    assertThat(
            StepTables.of(
                new Rounded(500, 500, 500),
                Length.mm("3"),
                Length.ZERO,
                Length.mm("0.0001"),
                CutDirection.CLIMB,
                screw,
                screw))
        .isEmpty();
  }
}
