package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Times of a setup, added up by hand: the way of the cutter over its feed, and for all else the
 * minutes of the shop's custom (common practice, no source).
 */
class SetupTimeTests {
  private static final String HOLD = "hold in V80, up top, fixed back, on pair P6x10\n";

  private static SetupTime time(Worked plan) {
    PlanRun run = plan.run();
    return SetupTime.of(run, run.setups().get(run.setups().size() - 1));
  }

  private static SetupTime time(String lines) {
    return time(Worked.block().setup("one", HOLD + lines));
  }

  /** Holding takes five minutes; each line adds its own. */
  @ParameterizedTest
  @CsvSource({
    "note \"nothing\", 0",
    "lock y z, 0",
    "seat tapped, 1",
    "'true V80 with dti, 0.01 over 80', 10",
    "tram head 0.02 over 150, 15",
    "cutter EM16, 3",
    "touch top with paper 0.05, 2",
    "'find left from operator-left with finder F5, zero x at edge', 3",
    "set z 3 below top, 0.5",
    "move head up 40, 5",
    "deburr all edges, 2",
    "wipe jaws, 0.5",
    "measure height with mic, 2",
  })
  void eachLineTakesItsMinutes(String line, double minutes) {
    SetupTime time = time(line);
    assertThat(time.handling()).isCloseTo(5 + minutes, within(1e-9));
    assertThat(time.cutting()).isZero();
    assertThat(time.untimed()).isZero();
    assertThat(time.minutes()).isEqualTo(time.handling());
  }

  @Test
  void aCutterThatIsInTheSpindleIsNotChanged() {
    assertThat(time("cutter EM16\ncutter EM16").handling()).isCloseTo(5 + 3, within(1e-9));
    assertThat(time("cutter EM16\ncutter FC40\ncutter EM16").handling())
        .isCloseTo(5 + 3 * 3, within(1e-9));
    Worked second =
        Worked.block().setup("one", HOLD + "cutter EM16").setup("two", HOLD + "cutter EM16");
    assertThat(time(second).handling()).isCloseTo(5, within(1e-9));
  }

  /**
   * A cutter of 40 goes over the work, as long as it may be, and 2 x (20 + 2) mm more in each of
   * three skims of 0.4, at 4 x 0.05 x 500 = 100 mm/min. Each skim takes half a minute of winding
   * back.
   */
  @Test
  void aFaceTakesItsLengthForEachPass() {
    Worked plan = Worked.block().setup("one", HOLD + face(", speed 500 rpm, feed 0.05 mm/tooth"));
    double length = highLength(plan);
    SetupTime time = time(plan);
    assertThat(time.cutting()).isCloseTo(3 * (length + 44) / 100, within(1e-9));
    assertThat(time.handling()).isCloseTo(5 + 3 + 2 + 3 * 0.5, within(1e-9));
    assertThat(time.minutes()).isCloseTo(time.cutting() + time.handling(), within(1e-9));
    // Once more without a new depth is a fourth pass.
    SetupTime spring =
        time(
            Worked.block()
                .setup("one", HOLD + face(", speed 500 rpm, feed 0.05 mm/tooth, repeat")));
    assertThat(spring.cutting()).isCloseTo(4 * (length + 44) / 100, within(1e-9));
    assertThat(spring.handling()).isCloseTo(5 + 3 + 2 + 4 * 0.5, within(1e-9));
  }

  private static double highLength(Worked plan) {
    return plan.run()
        .setups()
        .get(0)
        .steps()
        .get(0)
        .before()
        .size(org.handwheel.model.PartDimension.LENGTH)
        .range()
        .high()
        .millimetres();
  }

  private static String face(String more) {
    return "cutter FC40\ntouch top with paper 0.05, zero z\nclean top at 0.4, at most 1.2" + more;
  }

  /** A turn of 2.54 mm in 0.7 s is 217.7 mm/min: no hand winds the 400 that are asked for. */
  @Test
  void noFasterThanAHandWinds() {
    Worked plan = Worked.block().setup("one", HOLD + face(", speed 2000 rpm, feed 0.05 mm/tooth"));
    assertThat(time(plan).cutting())
        .isCloseTo(3 * (highLength(plan) + 44) / (60 * 2.54 / 0.7), within(1e-9));
    // A machine whose dials are not known winds as fast as asked.
    Worked unknown = plan.on("own machine mill\n  power: 1 kW\n");
    assertThat(time(unknown).cutting()).isCloseTo(3 * (highLength(plan) + 44) / 400, within(1e-9));
  }

  /**
   * A mill of 16 leaves a flat 16 wide; rows 10 apart over 33.5 and what raw stock may be more:
   * (33.5 - 16) / 10 = 1.75, so two more rows than one.
   */
  @Test
  void rowsSideBySideTakeTheirTime() {
    Worked plan =
        Worked.block()
            .setup(
                "one",
                HOLD
                    + "cutter EM16\ntouch top with paper 0.05, zero z\n"
                    + "clean top at 0.4, step over 10, speed 500 rpm, feed 0.05 mm/tooth");
    assertThat(time(plan).cutting()).isCloseTo(3 * (highLength(plan) + 20) / 100, within(1e-9));
    assertThat(time(plan).handling()).isCloseTo(5 + 3 + 2 + 0.5, within(1e-9));
  }

  @Test
  void aCutWhoseFeedIsNotKnownIsCountedOnly() {
    Worked plan =
        Worked.block().toward("length 56\nwidth 30\nheight 21").setup("one", HOLD + face(""));
    SetupTime time = time(plan);
    assertThat(time.untimed()).isEqualTo(1);
    assertThat(time.cutting()).isZero();
    assertThat(time.handling()).isCloseTo(5 + 3 + 2 + 3 * 0.5, within(1e-9));
  }

  // ---- Holes and features

  private static Worked drawn(String feature, String... lines) {
    return Worked.block()
        .on(
            Worked.INCH_MILL
                + "own cutter CM\n  kind: chamfer-mill\n  dia: 12\n  teeth: 4\n  flute: 6\n")
        .toward("material gunmetal-LG2\nlength 60\nwidth 33\nheight 24\n" + feature)
        .setup("one", HOLD + String.join("\n", lines));
  }

  /** 12 mm of a pitch of 1 are 12 turns by hand; a minute for the tap and one for the hole. */
  @Test
  void tappingByHandTakesItsTurns() {
    SetupTime time =
        time(drawn("hole a in top, M6, thread 12, drill 18, at (20, 15)", "tap a by hand"));
    assertThat(time.cutting()).isCloseTo(12 * 0.07, within(1e-9));
    assertThat(time.handling()).isCloseTo(5 + 1 + 1, within(1e-9));
    assertThat(time.untimed()).isZero();
  }

  /** 18 mm and a point of 2.5 / tan 59 at 50 mm/min; in sixes it comes out twice on the way. */
  @Test
  void drillingTakesItsDepthAndItsPecks() {
    String two =
        "hole a in top, dia 5, depth 18, at (20, 15)\nhole b in top, dia 5, depth 18, at (40, 15)";
    String how = " 5, speed 500 rpm, feed 0.1 mm/rev, peck 6";
    double each = (18 + 2.5 / Math.tan(Math.toRadians(59))) / 50;
    SetupTime one = time(drawn(two, "drill a" + how));
    assertThat(one.cutting()).isCloseTo(each, within(1e-6));
    assertThat(one.handling()).isCloseTo(5 + 1 + 1 + 2 * 0.05, within(1e-9));
    SetupTime both = time(drawn(two, "drill a, b" + how));
    assertThat(both.cutting()).isCloseTo(2 * each, within(1e-6));
    assertThat(both.handling()).isCloseTo(5 + 1 + 2 + 4 * 0.05, within(1e-9));
  }

  /** Each line whose feed is not known is one, however many drills it names. */
  @Test
  void linesOnHolesWhoseFeedIsNotKnown() {
    Worked plan =
        Worked.block()
            .toward("length 60\nwidth 33\nheight 24\nhole a in top, dia 6, depth 9, at (20, 15)")
            .setup("one", HOLD + "drill a, 4 then 5\ndrill a, 6");
    assertThat(time(plan).untimed()).isEqualTo(2);
    assertThat(time(plan).handling()).isCloseTo(5 + 3 * (1 + 1), within(1e-9));
  }

  /** Two levels round an oval: the way twice, a stop of 0.05 min at each station of both. */
  @Test
  void anOutlineTakesItsWayAndItsStops() {
    String oval = "outline o in top, ellipse 40 x 20, depth 3";
    String cutter = "cutter EM16, speed 500 rpm, feed 0.05 mm/tooth";
    Worked plan = drawn(oval, cutter, "outline o with EM16, cusp 0.1, pass 1.5");
    var feature =
        plan.run().steps().filter(step -> step.feature() != null).findFirst().orElseThrow();
    var table =
        ((org.handwheel.work.feature.FeatureRun.Result.Steps) feature.feature().result()).table();
    assertThat(table.steps()).isGreaterThan(8);
    SetupTime time = time(plan);
    assertThat(time.cutting()).isCloseTo(2 * table.path().getLength() / 100, within(1e-9));
    assertThat(time.handling()).isCloseTo(5 + 3 + 2 * 0.5 + 2 * table.steps() * 0.05, within(1e-9));
    // Another cutter than the one in the spindle has to be put in.
    assertThat(time(drawn(oval, "outline o with EM16, cusp 0.1, pass 1.5")).handling())
        .isCloseTo(time.handling(), within(1e-9));
    assertThat(
            time(drawn(oval, "cutter FC40", "outline o with EM16, cusp 0.1, pass 1.5")).handling())
        .isCloseTo(time.handling() + 3, within(1e-9));
  }

  /** Round a top of 60 x 33 are 186 mm. */
  @Test
  void aChamferGoesRoundTheFace() {
    SetupTime time =
        time(
            drawn(
                "chamfer lip in top, width 1",
                "cutter CM, speed 500 rpm, feed 0.05 mm/tooth",
                "chamfer lip with CM"));
    assertThat(time.cutting()).isCloseTo(186 / 100.0, within(1e-9));
    assertThat(time.handling()).isCloseTo(5 + 3 + 0.5, within(1e-9));
  }
}
