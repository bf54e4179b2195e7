package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.handwheel.model.Axis;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Thing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;

/** Source: geometry; each sweep is compared with arithmetic or with points tried one by one. */
class SceneTests {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static Scene scene() {
    return Scene.of(
        Worked.block().setup("a", "hold in V80, up top, fixed back, on pair P6x10").grip());
  }

  private static Envelope box(Scene scene, String name, int which) {
    List<Scene.Body> bodies =
        scene.bodies().stream().filter(body -> body.name().equals(name)).toList();
    return bodies.get(which).outline().getEnvelopeInternal();
  }

  @Test
  void jawsAndParallelsStandRoundTheWork() {
    Scene scene = scene();

    assertThat(scene.work().getEnvelopeInternal()).isEqualTo(new Envelope(-30, 30, -33.5, 0));
    assertThat(box(scene, "the fixed jaw", 0)).isEqualTo(new Envelope(-40, 40, 0, 15));
    assertThat(box(scene, "the moving jaw", 0)).isEqualTo(new Envelope(-40, 40, -48.5, -33.5));
    assertThat(box(scene, "parallel P6x10", 0)).isEqualTo(new Envelope(-35, 35, -6, 0));
    assertThat(box(scene, "parallel P6x10", 1)).isEqualTo(new Envelope(-35, 35, -33.5, -27.5));
    assertThat(scene.bodies().stream().map(Scene.Body::top))
        .containsExactly(Length.mm("25"), Length.mm("25"), Length.mm("10"), Length.mm("10"));
  }

  @Test
  void aBarPushesTheMovingJawBackAndASingleParallelLiesAtTheFixedOne() {
    Scene scene =
        Scene.of(
            Worked.block()
                .setup("a", "hold in V80, up top, fixed back, on one P6x10, bar 8 at mid-grip")
                .grip());

    assertThat(box(scene, "the moving jaw", 0)).isEqualTo(new Envelope(-40, 40, -56.5, -41.5));
    assertThat(scene.bodies()).hasSize(3);
  }

  @Test
  void aFixedJawInFrontTurnsEverythingRound() {
    Scene scene =
        Scene.of(
            Worked.block().setup("a", "hold in F80, up top, fixed back, on pair P6x10").grip());

    assertThat(scene.work().getEnvelopeInternal()).isEqualTo(new Envelope(-30, 30, 0, 33.5));
    assertThat(box(scene, "the fixed jaw", 0)).isEqualTo(new Envelope(-40, 40, -15, 0));
    assertThat(box(scene, "the moving jaw", 0)).isEqualTo(new Envelope(-40, 40, 33.5, 48.5));
    assertThat(box(scene, "parallel P6x10", 1)).isEqualTo(new Envelope(-35, 35, 27.5, 33.5));
  }

  /** One pass leaves a strip of w/2 + offset - R uncovered, if that is positive. */
  @Property(tries = 300)
  void theStripLeftIsTheArithmeticOne(
      @ForAll @DoubleRange(min = 2, max = 60) double radius,
      @ForAll @DoubleRange(min = -25, max = 25) double offset) {
    Scene scene = scene();
    Geometry alongX = sweep(scene, Axis.X, radius, radius + 2, offset, 0);
    Geometry alongY = sweep(scene, Axis.Y, radius, radius + 2, offset, 0);

    assertThat(scene.uncoveredStrip(alongX, Axis.X))
        .isCloseTo(strip(33.5, radius, offset), within(1e-9));
    assertThat(scene.uncoveredStrip(alongY, Axis.Y))
        .isCloseTo(strip(60, radius, offset), within(1e-9));
  }

  private static Geometry sweep(
      Scene scene, Axis travel, double radius, double beyond, double offset, double stepOver) {
    return scene.faceSweep(scene.lanes(travel, radius, offset, stepOver), radius, beyond);
  }

  /** A cutter wholly beside the work leaves all of it. */
  private static double strip(double width, double radius, double offset) {
    return Math.max(0, Math.min(width, width / 2 + Math.abs(offset) - radius));
  }

  /** The swept bands against a point of the work tried by its distance from each lane. */
  @Property(tries = 300)
  void aPointIsCoveredIfSomeLanePassesOverIt(
      @ForAll @DoubleRange(min = 2, max = 12) double radius,
      @ForAll @DoubleRange(min = 0.3, max = 1.9) double part,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double across) {
    Scene scene = scene();
    double stepOver = radius * part;
    Geometry swept = sweep(scene, Axis.X, radius, radius + 2, 0, stepOver);
    double y = -33.5 * across;

    // Lanes lie evenly about the middle; enough of them that the outer ones reach the edges.
    int lanes = 1;
    while (radius * 2 + (lanes - 1) * stepOver < 33.5 - 1e-9) {
      lanes++;
    }
    boolean covered = false;
    for (int i = 0; i < lanes; i++) {
      double lane = -16.75 + (i - (lanes - 1) / 2.0) * stepOver;
      covered |= Math.abs(y - lane) <= radius;
    }
    Point point = FACTORY.createPoint(new Coordinate(0, y));
    assertThat(swept.buffer(1e-9).contains(point)).isEqualTo(covered);
    // Steps of less than the diameter leave nothing between the lanes.
    assertThat(scene.uncoveredStrip(swept, Axis.X)).isCloseTo(0, within(1e-9));
  }

  @Test
  void lanesFurtherApartThanTheCutterLeaveStripsBetween() {
    Scene scene = scene();
    Geometry swept = sweep(scene, Axis.X, 5, 7, 0, 12);

    assertThat(scene.uncoveredStrip(swept, Axis.X)).isCloseTo(2, within(1e-9));
  }

  // ---- What a cut meets

  private static Map<Thing, List<Length>> hits(Worked plan) {
    return plan.lastCut().hits().stream()
        .collect(
            Collectors.groupingBy(
                Hit::thing, Collectors.mapping(Hit::clearance, Collectors.toList())));
  }

  @Test
  void aFacingCutPassesAboveTheJawsByWhatStandsProudAfterIt() {
    Worked plan =
        Worked.block()
            .setup(
                "a",
                "hold in V80, up top, fixed back, on pair P6x10\ncutter FC40\n"
                    + "touch top with paper 0.05, zero z\nrough top to 21, pass 0.5");

    // 10 + 21 - 25 above the jaws, 21 above the parallels.
    assertThat(hits(plan).get(Thing.JAW)).containsOnly(Length.mm("6"));
    assertThat(hits(plan).get(Thing.PARALLEL)).containsOnly(Length.mm("21"));
    assertThat(plan.lastCut().uncovered()).isEqualTo(Length.ZERO);
  }

  @Test
  void aSkimIsReckonedAtItsDeepest() {
    Worked plan =
        Worked.block()
            .setup(
                "a",
                "hold in V80, up top, fixed back, on pair P6x10\ncutter FC40\n"
                    + "touch top with paper 0.05, zero z\nclean top at 0.4, at most 1.2");

    // 10 + 24.2 - 1.2 - 25.
    assertThat(hits(plan).get(Thing.JAW)).containsOnly(Length.mm("8"));
  }

  @Test
  void aSideCutMeetsWhatStandsInItsBand() {
    String start =
        "hold in V80, up top, fixed back, on pair P6x10, overhang right 4, spacer 33.2 at"
            + " operator-left\ncutter EM16\ntouch right with paper 0.05, zero x\n";
    String cut = "clean right at 0.5, at most 1.5";
    Map<Thing, List<Length>> whole = hits(Worked.block().setup("a", start + cut));
    Map<Thing, List<Length>> set =
        hits(Worked.block().setup("a", start + "set z 12 below top\n" + cut));
    Worked wide =
        Worked.block()
            .setup("a", start.replace("right 4", "right 40") + "set z 12 below top\n" + cut);

    // The end goes from 44 to 42.5: clear of the jaws at 40 and of the parallels at 35.
    assertThat(whole).isEmpty();
    assertThat(set).isEmpty();
    assertThat(hits(wide)).isEmpty();
    Worked inside =
        Worked.block()
            .setup(
                "a",
                "hold in V80, up top, fixed back, on pair P6x10\ncutter EM16\n"
                    + "touch right with paper 0.05, zero x\nset z 12 below top\n"
                    + cut);
    // 10 + 24.8 - 12 is below the jaw's top and above the parallels.
    assertThat(hits(inside).get(Thing.JAW)).containsOnly(Length.mm("-2.2"));
    assertThat(hits(inside).get(Thing.PARALLEL)).containsOnly(Length.mm("12.8"));
  }

  @Test
  void aWallAlongTheJawsMeetsTheJawBesideIt() {
    Worked plan =
        Worked.block()
            .setup(
                "a",
                "hold in V80, up top, fixed back, on pair P6x10\ncutter EM16\n"
                    + "touch front with paper 0.05, zero y\nset z 5 below top\n"
                    + "clean front at 0.1, at most 0.2");

    assertThat(plan.lastCut().mode()).isEqualTo(CutRun.Mode.WALL);
    // 10 + 24.8 - 5 - 25.
    assertThat(plan.lastCut().hits())
        .contains(new Hit(Thing.JAW, "the moving jaw", Length.mm("4.8")));
    assertThat(plan.lastCut().hits().stream().map(Hit::name)).doesNotContain("the fixed jaw");
  }

  @Test
  void clampsStandAboveWorkOnThePlate() {
    String start = "hold on table, up top, clamp strap at (5, 15)\n";
    Worked facing =
        Worked.block()
            .setup(
                "a",
                start
                    + "cutter FC40\ntouch top with paper 0.05, zero z\n"
                    + "rough top to 23, pass 0.5");

    // The work is at most 24.8 high, the clamp 12 above it; the cutter goes down to 23.
    assertThat(hits(facing)).isEqualTo(Map.of(Thing.CLAMP, List.of(Length.mm("-13.8"))));
    Worked beside =
        Worked.block()
            .setup(
                "a",
                start
                    + "cutter EM16\ntouch right with paper 0.05, zero x\n"
                    + "clean right at 0.5, at most 1.5");
    assertThat(hits(beside)).isEmpty();
  }

  @Test
  void sharpCornersCoverMoreThanChamferedOnes() {
    String setup =
        "hold in V80, up top, fixed back, on pair P6x10\ncutter FC40\n"
            + "touch top with paper 0.05, zero z\n"
            + "clean top at 0.4, at most 1.2, travel right to left, offset 3 toward back";
    Length left = Worked.block().setup("a", setup).lastCut().uncovered();

    // Half of 33.5 and 3, less the flat radius of 20 - 0.4.
    assertThat(left).isEqualTo(Length.mm("0.15"));
  }

  /** A clamp 20 wide beside the band of a 16 mm cutter, on work of at most 60.3 x 33.8. */
  @ParameterizedTest
  @CsvSource({
    // The right wall at 60.3 - 1.5, the left at 1.5, the back at 33.8 - 1.2, the front at 1.2.
    "right, x, 48.7, 15, false",
    "right, x, 48.9, 15, true",
    "right, x, 84.7, 15, true",
    "right, x, 84.9, 15, false",
    "left, x, 11.6, 15, false",
    "left, x, 11.4, 15, true",
    "back, y, 30, 22.5, false",
    "back, y, 30, 22.7, true",
    "back, y, 30, 58.5, true",
    "back, y, 30, 58.7, false",
    "front, y, 30, 11.3, false",
    "front, y, 30, 11.1, true",
    // The axis runs 2 mm past the ends beyond the radius.
    "right, x, 65, 53.7, true",
    "right, x, 65, 53.9, false",
    "back, y, 80.2, 40, true",
    "back, y, 80.4, 40, false"
  })
  void aSideCutMeetsAClampInItsBandAlone(
      String face, String axis, String x, String y, boolean met) {
    String most = axis.equals("x") ? "1.5" : "1.2";
    Worked plan =
        Worked.block()
            .setup(
                "a",
                ("hold on table, up top, clamp strap at (" + x + ", " + y + ")\ncutter EM16\n")
                    + ("touch " + face + " with paper 0.05, zero " + axis + "\n")
                    + ("set z 12 below top\nclean " + face + " at 0.5, at most " + most));

    assertThat(hits(plan).containsKey(Thing.CLAMP)).isEqualTo(met);
  }
}
