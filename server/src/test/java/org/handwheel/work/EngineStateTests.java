package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Slope;
import org.handwheel.work.Bench.Loss.Cause;
import org.handwheel.work.FaceState.Condition;
import org.handwheel.work.PlanRun.StepRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Faces, sizes, zeros and locks through a plan. */
class EngineStateTests {
  private static final String HOLD =
      "hold in V80, up top, fixed back, on pair P6x10\ncutter FC40\n";
  private static final String TOUCH = "touch top with paper 0.05, zero z\n";

  private static Length mm(String value) {
    return Length.mm(value);
  }

  private static LengthRange range(String low, String high) {
    return new LengthRange(mm(low), mm(high));
  }

  private static Worked top(String lines) {
    return Worked.block().setup("a", HOLD + TOUCH + lines);
  }

  private static SizeState height(Worked plan) {
    return plan.end().size(PartDimension.HEIGHT);
  }

  // ---- Faces

  @Test
  void stockIsAsItWasBought() {
    Workpiece start = Worked.block().run().start();

    assertThat(start.face(Face.TOP).condition()).isEqualTo(Condition.RAW);
    assertThat(start.face(Face.TOP).words()).isEqualTo("as cast");
    assertThat(start.face(Face.TOP).burr()).isNull();
    assertThat(start.face(Face.LEFT).words()).isEqualTo("as sawn");
    // A saw leaves burrs.
    assertThat(start.face(Face.LEFT).burr()).isNotNull();
    assertThat(start.size(PartDimension.HEIGHT).range()).isEqualTo(range("24.2", "24.8"));
    assertThat(start.relations()).isEmpty();
    assertThat(start.face(Face.TOP).isGood()).isFalse();
  }

  @Test
  void machinedStockServesAsAReferenceButProvesNoSquareness() {
    Workpiece start =
        Worked.block()
            .from("size 60 x 33.5 x 24.5\nground top bottom\nmilled front back\nsawn left right")
            .run()
            .start();

    assertThat(start.face(Face.TOP).isGood()).isTrue();
    assertThat(start.face(Face.TOP).flatness()).isEqualTo(mm("0.005"));
    assertThat(start.face(Face.TOP).words()).isEqualTo("ground before");
    assertThat(start.relations()).isEmpty();
  }

  /** The skin of a casting is taken to be 1 mm deep. */
  @ParameterizedTest
  @CsvSource({
    "'clean top at 0.4, at most 0.9', SKIMMED, 'skimmed, with marks left', 0.4",
    "'clean top at 0.4, at most 1', CLEAN, clean, 1",
    "'clean top at 1, at most 1.2', CLEAN, clean, 1",
    "'rough top to 23.3, pass 0.5', SKIMMED, 'skimmed, with marks left', 0.9",
    "'rough top to 23.2, pass 0.5', CLEAN, clean, 1",
    "'finish top to 23.2', FINISHED, finished, 1",
    "'finish top to 24', SKIMMED, 'skimmed, with marks left', 0.2"
  })
  void aFaceIsCleanOnceItsSkinIsCertainlyOff(
      String cut, Condition condition, String words, String removed) {
    FaceState face = top(cut).end().face(Face.TOP);

    assertThat(face.condition()).isEqualTo(condition);
    assertThat(face.words()).isEqualTo(words);
    assertThat(face.removed()).isEqualTo(mm(removed));
    assertThat(face.flatness() != null).isEqualTo(condition.isMachined());
    assertThat(face.burr()).isNotNull();
    assertThat(face.isGood()).isFalse();
  }

  @Test
  void twoSkimsTogetherTakeTheSkinOff() {
    assertThat(
            top("rough top to 23.7, pass 0.5\nrough top to 23.2, pass 0.5")
                .end()
                .face(Face.TOP)
                .condition())
        .isEqualTo(Condition.SKIMMED);
    // The first leaves 23.7 give or take what the stock, the touch and the dial leave open.
    assertThat(
            top("rough top to 23.7, pass 0.5\nrough top to 22.4, pass 0.5")
                .end()
                .face(Face.TOP)
                .condition())
        .isEqualTo(Condition.CLEAN);
  }

  @Test
  void deburringMakesAMachinedFaceGood() {
    FaceState face = top("clean top at 0.4, at most 1.2\ndeburr edges of top").end().face(Face.TOP);

    assertThat(face.isGood()).isTrue();
    assertThat(face.flatness()).isBetween(mm("0.005"), mm("0.007"));
  }

  @Test
  void aStripTheCutterDoesNotReachIsReportedOnceAndNotHeldAgainstTheFace() {
    Worked partly =
        top("clean top at 0.4, at most 1.2, travel left to right, offset 6 toward front");

    assertThat(partly.lastCut().uncovered()).isGreaterThan(Length.ZERO);
    assertThat(partly.end().face(Face.TOP).condition()).isEqualTo(Condition.CLEAN);
  }

  // ---- Sizes

  @Test
  void aSkimLeavesTheSizeBetweenItsLeastAndItsMost() {
    SizeState size = height(top("clean top at 0.4, at most 1.2"));

    assertThat(size.range()).isEqualTo(range("23", "24.4"));
    assertThat(size.known()).isNull();
    assertThat(size.uncertainty()).isEqualTo(mm("0.7"));
  }

  @Test
  void aCutToASizeIsAsSureAsSizeTouchAndDial() {
    // 0.3 of the stock, 0.01 of the touch, half a thou of the dial.
    assertThat(height(top("rough top to 23, pass 0.5")).range())
        .isEqualTo(LengthRange.around(mm("23"), mm("0.3227")));
  }

  @Test
  void aMeasurementBetweenCutsMakesTheNextIndependentOfStockAndTouch() {
    Worked plan = top("rough top to 23, pass 0.5\ndeburr all edges\nmeasure height with mic");

    assertThat(height(plan).range()).isEqualTo(LengthRange.around(mm("23"), mm("0.3227")));
    assertThat(height(plan).known()).isEqualTo(mm("0.004"));
    Worked finished =
        top(
            "rough top to 23, pass 0.5\ndeburr all edges\nmeasure height with mic\n"
                + "finish top to 22.8");
    // The micrometer's 0.004 and half a thou.
    assertThat(height(finished).range()).isEqualTo(LengthRange.around(mm("22.8"), mm("0.0167")));
    Worked touchedAgain =
        top(
            "rough top to 23, pass 0.5\ndeburr all edges\nmeasure height with mic\n"
                + TOUCH
                + "finish top to 22.8");
    assertThat(height(touchedAgain).range())
        .isEqualTo(LengthRange.around(mm("22.8"), mm("0.0267")));
  }

  @Test
  void aMeasurementBeforeAnyCutCalibratesNoDial() {
    Worked plan = top("measure height with mic\nrough top to 23, pass 0.5");

    assertThat(height(plan).range()).isEqualTo(LengthRange.around(mm("23"), mm("0.0267")));
  }

  // ---- Readings of a piece

  private static final String BOTH_FACES =
      """
      hold in V80, up top, fixed back, on pair P6x10
      cutter FC40
      touch top with paper 0.05, zero z
      clean top at 0.4, at most 1.2
      deburr all edges
      """;

  private static Worked bothFaces() {
    return Worked.block()
        .setup("one", BOTH_FACES)
        .setup("two", BOTH_FACES.replace("top", "bottom") + "measure height with mic");
  }

  @Test
  void aReadingTakesThePlaceOfTheInterval() {
    Worked plan = bothFaces().log("in two: read height 22.90 with mic");
    SizeState size = height(plan);

    assertThat(size.range()).isEqualTo(LengthRange.around(mm("22.9"), mm("0.004")));
    assertThat(size.known()).isEqualTo(mm("0.004"));
    assertThat(size.outOfParallel()).isNull();
    assertThat(plan.end().relation(Face.TOP, Face.BOTTOM)).isNull();
    assertThat(plan.run().steps().map(StepRun::reading).filter(r -> r != null)).hasSize(1);
  }

  @Test
  void severalReadingsGiveTheSizeAndHowFarTheFacesAreFromParallel() {
    Worked plan = bothFaces().log("in two: read height 22.90 22.94 22.92 with mic");
    SizeState size = height(plan);
    Relation relation = plan.end().relation(Face.TOP, Face.BOTTOM);

    assertThat(size.range()).isEqualTo(range("22.896", "22.944"));
    assertThat(size.outOfParallel()).isEqualTo(mm("0.04"));
    assertThat(relation.reason()).startsWith("read as 22.90..22.94 mm");
    assertThat(relation.origin().text()).contains("read height");
    // 0.04 and twice 0.004 over the length, at least 59.7.
    Slope slope = Slope.of(mm("0.048"), mm("59.7"));
    assertThat(relation.along(PartDimension.LENGTH)).isEqualTo(slope);
    assertThat(relation.along(PartDimension.WIDTH)).isEqualTo(slope);
    assertThat(relation.along(PartDimension.HEIGHT)).isEqualTo(Slope.NONE);
  }

  @Test
  void readingsOverARawFaceProveNothing() {
    Worked plan =
        Worked.block()
            .setup("one", BOTH_FACES + "measure height with mic")
            .log("in one: read height 23.90 23.94 with mic");

    assertThat(plan.end().relation(Face.TOP, Face.BOTTOM)).isNull();
    assertThat(height(plan).outOfParallel()).isEqualTo(mm("0.04"));
  }

  private static Worked seated() {
    return Worked.block()
        .from("size 60 x 33.5 x 24.5\nground bottom\ncast top front back\nsawn left right")
        .setup(
            "one",
            """
            hold in V80, up top, fixed back, on pair P6x10
            seat tapped, both parallels tight
            cutter FC40
            touch top with paper 0.05, zero z
            clean top at 0.4, at most 1.2
            deburr all edges
            measure height with mic
            """);
  }

  @Test
  void readingsTightenABoundOrRefuteItAndElseLeaveIt() {
    Relation planned = seated().end().relation(Face.TOP, Face.BOTTOM);
    Length bound = planned.zone(Face.TOP, Face.BOTTOM, seated().end().sizes());
    assertThat(bound).isBetween(mm("0.02"), mm("0.04"));

    Relation good = read("23.50 23.50");
    Relation alike = read("23.50 23.515");
    Relation bad = read("23.50 23.56");

    assertThat(good.reason()).startsWith("read as");
    assertThat(alike.reason()).isEqualTo(planned.reason());
    assertThat(bad.reason()).startsWith("read as");
    assertThat(bad.along(PartDimension.WIDTH)).isGreaterThan(planned.along(PartDimension.WIDTH));
  }

  private static Relation read(String values) {
    return seated()
        .log("in one: read height " + values + " with mic")
        .end()
        .relation(Face.TOP, Face.BOTTOM);
  }

  @Test
  void readingsServeInTheOrderOfTheMeasurements() {
    Worked plan =
        Worked.block()
            .setup(
                "one",
                HOLD
                    + TOUCH
                    + "rough top to 23, pass 0.5\nmeasure height with caliper\n"
                    + "finish top to 22.5\nmeasure height with mic")
            .log(
                "in one: read width 33.5 with caliper\nin one: read height 23.06 with caliper\n"
                    + "in one: read height 22.51 with mic\nin one: read height 1 with mic");

    CutRun finish = plan.lastCut();
    assertThat(finish.before().range()).isEqualTo(LengthRange.around(mm("23.06"), mm("0.03")));
    assertThat(finish.removal()).isEqualTo(LengthRange.around(mm("0.56"), mm("0.03")));
    assertThat(height(plan).range()).isEqualTo(LengthRange.around(mm("22.51"), mm("0.004")));
  }

  // ---- Zeros and locks

  private static Bench.Zero zero(Worked plan, Axis axis) {
    return lastStep(plan).benchAfter().zeros().get(axis);
  }

  private static StepRun lastStep(Worked plan) {
    return plan.run().steps().reduce((first, second) -> second).orElseThrow();
  }

  private static Worked zeroed(String machine, String then) {
    return Worked.block()
        .on(machine)
        .setup(
            "a",
            HOLD
                + "touch top with paper 0.05, zero z\n"
                + "find left from operator-left with finder F5, zero x at edge\n"
                + "touch front with paper 0.05, zero y\n"
                + then);
  }

  @Test
  void aZeroKnowsItsFaceAndTheWayToIt() {
    Worked plan = zeroed(Worked.INCH_MILL, "");

    assertThat(zero(plan, Axis.Z).face()).isEqualTo(Face.TOP);
    assertThat(zero(plan, Axis.Z).approach()).isEqualTo(Direction.DOWN);
    assertThat(zero(plan, Axis.X).approach()).isEqualTo(Direction.OPERATOR_RIGHT);
    assertThat(zero(plan, Axis.Y).approach()).isEqualTo(Direction.OPERATOR_BACK);
    assertThat(zero(plan, Axis.X).loss()).isNull();
  }

  @Test
  void anotherCutterLosesWhatACutterTouchedAndKeepsWhatTheSpindleFound() {
    Worked plan = zeroed(Worked.INCH_MILL, "cutter EM16");

    assertThat(zero(plan, Axis.Z).loss().cause()).isEqualTo(Cause.CUTTER_CHANGED);
    assertThat(zero(plan, Axis.Y).loss().cause()).isEqualTo(Cause.CUTTER_CHANGED);
    assertThat(zero(plan, Axis.Y).loss().origin().text()).contains("cutter EM16");
    assertThat(zero(plan, Axis.X).loss()).isNull();
  }

  @Test
  void aHeadOnARoundColumnLosesEveryZero() {
    Worked plan = zeroed(Worked.INCH_MILL, "move head up 40");

    for (Axis axis : Axis.values()) {
      assertThat(zero(plan, axis).loss().cause()).isEqualTo(Cause.HEAD_MOVED);
    }
  }

  @Test
  void aHeadOnADovetailLosesOnlyTheHeight() {
    Worked plan = zeroed(Worked.METRIC_MILL, "move head up 40\ncutter EM16");

    // What was lost first stays the cause.
    assertThat(zero(plan, Axis.Z).loss().cause()).isEqualTo(Cause.HEAD_MOVED);
    assertThat(zero(plan, Axis.X).loss()).isNull();
    assertThat(zero(plan, Axis.Y).loss().cause()).isEqualTo(Cause.CUTTER_CHANGED);
  }

  @Test
  void anotherCutterOrAMovedHeadUndoesADepthThatWasSet() {
    assertThat(lastStep(zeroed(Worked.INCH_MILL, "set z 5 below top")).benchAfter().depthSet())
        .isNotNull();
    assertThat(
            lastStep(zeroed(Worked.INCH_MILL, "set z 5 below top\ncutter EM16"))
                .benchAfter()
                .depthSet())
        .isNull();
    assertThat(
            lastStep(zeroed(Worked.METRIC_MILL, "set z 5 below top\nmove head up 40"))
                .benchAfter()
                .depthSet())
        .isNull();
  }

  @Test
  void aNewSetupHasNoZerosNoLocksAndNoSeatButTheCutterAndTheTrueVise() {
    Bench bench =
        zeroed(
                Worked.INCH_MILL,
                "true V80 with dti, 0.01 over 80\nseat tapped\nlock y z\nset z 5 below top")
            .setup("b", "hold in V80, up top, fixed back, on pair P6x10\nwipe jaws")
            .last()
            .steps()
            .get(0)
            .benchBefore();

    assertThat(bench.zeros()).isEmpty();
    assertThat(bench.locks()).isEmpty();
    assertThat(bench.seat()).isNull();
    assertThat(bench.depthSet()).isNull();
    assertThat(bench.calibrated()).isEmpty();
    assertThat(bench.cutter().cutter().name()).isEqualTo("FC40");
    assertThat(bench.trued().error()).isEqualTo(Slope.of(mm("0.01"), mm("80")));
    assertThat(bench.tram()).isEqualTo(Slope.of(mm("0.02"), mm("150")));
  }

  @Test
  void locksStayUntilTheyAreUndone() {
    Bench bench = lastStep(top("lock y z\nlock z x\nunlock y")).benchAfter();

    assertThat(bench.locks().keySet()).containsExactlyInAnyOrder(Axis.X, Axis.Z);
    assertThat(bench.locks().get(Axis.Z).text()).contains("lock y z");
    assertThat(bench.locks().get(Axis.X).text()).contains("lock z x");
  }

  @Test
  void allAxesButTheTravellingOneAreToBeLocked() {
    assertThat(top("clean top at 0.1, at most 0.2, travel left to right").lastCut().locks())
        .isEqualTo(Set.of(Axis.Y, Axis.Z));
    assertThat(top("clean top at 0.1, at most 0.2, travel front to back").lastCut().locks())
        .isEqualTo(Set.of(Axis.X, Axis.Z));
  }

  // ---- The run as a whole

  @Test
  void aPlanRunsTheSameEveryTimeAndItsDataDoNotChange() {
    Worked plan = bothFaces().log("in two: read height 22.90 22.94 with mic");
    Plan built = plan.plan();
    PlanRun run = Worked.run(built);

    assertThat(Worked.run(built).setups()).isEqualTo(run.setups());
    assertThat(Worked.run(built).end()).isEqualTo(run.end());
    assertThat(DialMoves.of(Worked.run(built))).isEqualTo(DialMoves.of(run));
    assertThatThrownBy(() -> run.setups().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> run.end().relations().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> run.end().faces().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> run.setups().get(0).steps().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> lastStep(plan).benchAfter().zeros().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }

  @Test
  void aFaceThatLooksDownAndACutWithoutACutterAreNoCuts() {
    assertThat(Worked.block().setup("a", HOLD + "clean bottom at 0.1, at most 0.2").run().cuts())
        .isEmpty();
    assertThat(
            Worked.block()
                .setup(
                    "a",
                    "hold in V80, up top, fixed back, on pair P6x10\n"
                        + "clean top at 0.1, at most 0.2")
                .run()
                .cuts())
        .isEmpty();
  }
}
