package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.handwheel.model.Axis;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.Engagement;
import org.handwheel.work.PlanRun;
import org.handwheel.work.SetupTime;
import org.handwheel.work.feature.FeatureBite.Where;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * How much cutters take along slots, pockets and outlines, and the speeds, loads and times that
 * follow. Engagements are compared with the arc of the cutter that lies in the metal in a
 * simulation; power with Kienzle's law and P = kc Q as Carvill's and other handbooks have them
 * (forms from memory); the mean chip of a full slot, 2/pi of the feed, is geometry.
 */
class FeatureBiteTests {
  private static final GeometryFactory PLANE = new GeometryFactory();

  private static FeatureBite bite(String drawn, String... lines) {
    return FeatureTrial.of("56 x 30 x 20", drawn).lines(lines).bite();
  }

  @Test
  void aSlotAsWideAsItsCutterEngagesHalfATurn() {
    FeatureBite bite =
        bite(
            "slot key in top, width 6, length 30, depth 4, at (28, 15)",
            "cutter SD6",
            "slot key with SD6, pass 1");
    assertThat(bite.where()).isEqualTo(Where.FULL_WIDTH);
    assertThat(bite.width()).isEqualTo(Length.mm("6"));
    assertThat(bite.depth()).isEqualTo(Length.mm("1"));
    assertThat(bite.engagement().angle()).isCloseTo(Math.PI, within(1e-9));
    assertThat(bite.travel()).isEqualTo(Axis.X);
  }

  @Test
  void theFirstRowOfAPocketIsASlotToo() {
    FeatureBite bite =
        bite(
            "pocket well in top, size 20 x 26, depth 4, at (28, 15)",
            "cutter SD6",
            "pocket well with SD6, pass 1");
    assertThat(bite.where()).isEqualTo(Where.FULL_WIDTH);
    assertThat(bite.travel()).as("rows along the longer side").isEqualTo(Axis.Y);
  }

  /**
   * A step 3 wide at the right end and a cutter of 16: the axis may go from 61 (the wall at 53 and
   * the radius) to 66 (the end at 56, the radius, 2 of run out). The row between them at 63.5
   * reaches from 55.5, so it takes 0.5; the way along the wall takes the other 2.5.
   */
  @Test
  void besideANarrowStepTheWallTakesMoreThanTheRow() {
    FeatureBite bite =
        bite(
            "step ledge in top, size 3 x 30, depth 4, at (54.5, 15)",
            "cutter EM16",
            "step ledge with EM16, pass 4");
    assertThat(bite.width()).isEqualTo(Length.mm("2.5"));
    assertThat(bite.travel()).isEqualTo(Axis.Y);
    assertThat(bite.engagement().width()).isCloseTo(2.5 / 8, within(1e-9));
  }

  /**
   * A step 12 wide at the right end: the axis may go from 50 (the wall at 44 and the radius) to 64
   * (the end at 56, the radius, 2 of run out). Rows at most 6 apart: at 54.67 and 59.33 between
   * them. The first reaches from 48.67 to the end at 56: 7.33.
   */
  @Test
  void theRowsOfAStepTakeWhatTheyReachOfIt() {
    FeatureBite bite =
        FeatureTrial.of("56 x 30 x 20", "step ledge in top, size 12 x 30, depth 3, at (50, 15)")
            .with("own cutter EM12\n  dia: 12\n  flute: 20\n")
            .lines("cutter EM12", "step ledge with EM12, pass 1")
            .bite();
    assertThat(bite.where()).isEqualTo(Where.ROW);
    assertThat(bite.width().millimetres()).isCloseTo(56 - (50 + 14 / 3.0 - 6), within(1e-6));
    assertThat(bite.travel()).isEqualTo(Axis.Y);
  }

  @Test
  void whatWasLeftOnIsAWallAndMoreInTheCorners() {
    FeatureBite bite =
        bite(
            "pocket well in top, size 30 x 20, depth 4, at (28, 15)",
            "cutter SD6",
            "pocket well with SD6, leaving 0.3, pass 1",
            "pocket well with SD6");
    assertThat(bite.where()).isEqualTo(Where.CORNER);
    assertThat(bite.depth()).isEqualTo(Length.mm("4"));
    // On the average over walls and corners; both dials are set a little short.
    assertThat(bite.width().millimetres()).isBetween(0.29, 0.34);
  }

  /** The stock 72 x 34 round an obround 68 x 30 left 0.25 larger: its corners stand out most. */
  @Test
  void roundAnOutlineTheMetalOutsideCounts() {
    FeatureBite bite =
        FeatureTrial.of("72 x 34 x 8", "outline rim in top, at (36, 17), obround 68 x 30, depth 2")
            .on("on table, up top, fixed back, on pair P3x10, clamp C1 at (36, 17)")
            .lines("cutter EM16", "outline rim with EM16, leaving 0.25, pass 1")
            .bite();
    double corner = 17 * Math.sqrt(2) - 15.25;
    assertThat(bite.where()).isEqualTo(Where.OUTSIDE);
    assertThat(bite.width().millimetres()).isCloseTo(corner, within(0.05));
  }

  // ---- Corners, simulated

  /** The largest arc of the cutter in the metal as it runs into a corner as round as itself. */
  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.1, 0.3, 0.6})
  void inACornerTheCutterTakesAQuarterOfATurnMore(double left) {
    // The corner at the origin, walls along both axes, the cutter of radius 1 coming along X.
    Geometry rough = Plane.grown(box(-20, -20, -1 - left, -1 - left), 1);
    double most = 0;
    for (double x = -3; x <= -1; x += 0.002) {
      Geometry swept = Plane.grown(box(-20, -1, x - 5e-4, -1), 1);
      Geometry metal = box(-20, -20, 0, 0).difference(rough).difference(swept);
      most = Math.max(most, arc(x, -1, metal));
    }
    double expected = Engagement.ofCorner(left, CutDirection.CONVENTIONAL).angle();
    assertThat(expected).isCloseTo(Math.PI / 2 + Math.acos(1 - left), within(1e-9));
    assertThat(most).isCloseTo(expected, within(0.05));
    assertThat(Engagement.ofCorner(left, CutDirection.CLIMB).angle())
        .isCloseTo(expected, within(1e-9));
    assertThat(Engagement.ofCorner(left, CutDirection.CLIMB).isClimb()).isFalse();
  }

  /** In a round of 6 a cutter of 3 reaches further into the 0.5 left on than along a wall. */
  @Tag("long")
  @Test
  void insideARoundTheCutterReachesFurther() {
    FeatureBite bite =
        bite(
            "pocket well in top, size 40 x 24, radius 6, depth 4, at (28, 15)",
            "cutter SD6",
            "pocket well with SD6, leaving 0.5, pass 1, cusp 0.001",
            "pocket well with SD6, cusp 0.001");
    double left = bite.width().millimetres();
    Coordinate middle = new Coordinate(0, 0);
    Geometry rough = Plane.disc(middle, 6 - left);
    // The axis on its circle of 3; what lies behind it is cut.
    Geometry behind = PLANE.createPolygon();
    for (int i = 1; i < 200; i++) {
      double angle = -i * 0.01;
      behind =
          behind.union(Plane.disc(new Coordinate(3 * Math.cos(angle), 3 * Math.sin(angle)), 3));
    }
    Geometry metal = Plane.disc(middle, 6).difference(rough).difference(behind);
    double arc = arc(3, 0, metal, 3);
    assertThat(bite.engagement().angle()).isCloseTo(arc, within(0.05));
    assertThat(bite.engagement().angle()).isGreaterThan(Math.acos(1 - left / 3) * 1.2);
  }

  private static double arc(double x, double y, Geometry metal) {
    return arc(x, y, metal, 1);
  }

  /** The angle of the cutter's edge that lies in the metal. */
  private static double arc(double x, double y, Geometry metal, double radius) {
    Geometry edge = Plane.disc(new Coordinate(x, y), radius - 1e-5).getBoundary();
    return edge.intersection(metal).getLength() / radius;
  }

  private static Geometry box(double x1, double y1, double x2, double y2) {
    return PLANE.toGeometry(new Envelope(x1, x2, y1, y2));
  }

  // ---- Speeds, loads, times

  private static PlanRun slot() {
    return FeatureTrial.of(
            "56 x 30 x 20", "slot fork in top, width 10, length 30, depth 6, at (41, 15)")
        .lines("cutter EM10", "touch top, zero z", "slot fork with EM10, pass 2")
        .run();
  }

  @Test
  void aSlotsLoadIsThatOfItsFullWidth() {
    PlanRun run = slot();
    CuttingConditions conditions =
        CuttingCalculator.of(run, FeatureTrial.features(run).get(0)).orElseThrow();
    // 1000 x 28 / (pi x 10) = 891 rpm wanted; the step below is 500. 0.05 x 4 x 500 = 100 mm/min.
    assertThat(conditions.spindle().turnsPerMinute()).isEqualTo(500);
    assertThat(conditions.table().millimetresPerMinute()).isCloseTo(100, within(1e-9));
    double removal = 2 * 10 * 100 / 1000.0;
    double specific = 2000 * Math.pow(0.05 * 2 / Math.PI, -0.25);
    double kilowatts = specific * removal / 60000;
    assertThat(conditions.load().cubicCentimetresPerMinute()).isCloseTo(removal, within(1e-6));
    assertThat(conditions.load().specificForce()).isCloseTo(specific, within(1e-3));
    assertThat(conditions.load().cutterKilowatts()).isCloseTo(kilowatts, within(1e-6));
    assertThat(conditions.load().motorKilowatts()).isCloseTo(kilowatts / 0.75, within(1e-6));
  }

  @Test
  void aSlotTakesItsWayOnEachLevel() {
    PlanRun run = slot();
    SetupTime time = SetupTime.of(run, FeatureTrial.setup(run));
    // From 31 (the end at 26 and the radius) to 63 (the edge at 56, the radius and 2): 32 on each
    // of 3 levels at 100 mm/min.
    assertThat(time.cutting()).isCloseTo(3 * 32 / 100.0, within(1e-6));
    // Hold 5, two edges 3 each, cutter 3, touch 2; on each level half a minute and one move.
    assertThat(time.handling()).isCloseTo(5 + 6 + 3 + 2 + 3 * (0.5 + 0.05), within(1e-9));
    assertThat(time.untimed()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"'', 1", "'own limits ours\n  hole-handling: 2.5\n', 2.5"})
  void holesTakeTheirDrillingAndWhatTheShopSaysOfHandling(String limits, double each) {
    PlanRun run =
        FeatureTrial.of(
                "56 x 30 x 20",
                "hole a in top, dia 5, through\n"
                    + "  pattern both of a, row, count 2, at (10, 15), by (30, 0)")
            .with(limits)
            .lines("drill both, 3 then 5, speed 500 rpm, feed 0.1 mm/rev, peck 100")
            .run();
    SetupTime time = SetupTime.of(run, FeatureTrial.setup(run));
    // A point of 118 degrees is (d/2)/tan 59 long; 1 mm further out below; 50 mm/min.
    double three = 20 + 1.5 / Math.tan(Math.toRadians(59)) + 1;
    double five = 20 + 2.5 / Math.tan(Math.toRadians(59)) + 1;
    assertThat(time.cutting()).isCloseTo(2 * (three + five) / 50, within(0.002));
    // Hold 5, two edges 3 each; a minute for each drill put in.
    assertThat(time.handling()).isCloseTo(5 + 6 + 2 + 4 * each, within(1e-9));
  }
}
