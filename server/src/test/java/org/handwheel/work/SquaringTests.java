package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.junit.jupiter.api.Test;

/**
 * The order of faces: A top, B back, C front, D bottom, then the ends E right and F left.
 *
 * <p>Sources: the order and the bar at the moving jaw, Modern Metalworking p. 460-469; what each
 * cut proves, common practice, no source; the closures, geometry.
 */
class SquaringTests {
  private static final String CUT_TOP =
      """
      hold in V80, up top, fixed back, on pair P6x10
      cutter FC40
      touch top with paper 0.05, zero z
      clean top at 0.4, at most 1.2
      deburr all edges
      """;
  private static final String CUT_BACK =
      """
      hold in V80, up back, fixed top, on soft-strip 1.6, bar 8 at mid-grip
      touch back with paper 0.05, zero z
      clean back at 0.4, at most 1.1
      deburr all edges
      """;
  private static final String HOLD_FRONT =
      "hold in V80, up front, fixed top, on pair P6x10, bar 8 at mid-grip\n";
  private static final String SEAT = "seat tapped, both parallels tight\n";
  private static final String CUT_FRONT =
      """
      touch front with paper 0.05, zero z
      rough front to width leaving 0.25, pass 0.5
      deburr all edges
      measure width with mic
      finish front to width
      deburr all edges
      """;
  private static final String CUT_BOTTOM =
      """
      hold in V80, up bottom, fixed back, on pair P6x10
      seat tapped, both parallels tight
      touch bottom with paper 0.05, zero z
      rough bottom to height leaving 0, pass 0.5
      deburr all edges
      """;
  private static final String CUT_RIGHT_UPRIGHT =
      """
      hold in V80, up right, fixed top, on bed
      seat tapped, upright on back with square50
      touch right with paper 0.05, zero z
      clean right at 0.5, at most 1.5
      deburr all edges
      """;
  private static final String CUT_LEFT_ON_RIGHT =
      """
      hold in V80, up left, fixed top, on pair P6x10
      seat tapped, both parallels tight
      touch left with paper 0.05, zero z
      rough left to length leaving 0, pass 0.5
      deburr all edges
      """;

  private static final Map<String, String> AFTER_FOUR =
      Map.of(
          "back top", "cut with the top on the fixed jaw",
          "front top", "cut with the top on the fixed jaw",
          "front back", "cut seated on the back, tapped down",
          "bottom top", "cut seated on the top, tapped down",
          "back bottom", "cut with the back on the fixed jaw",
          "front bottom", "parallel to the back, which is square to the bottom");

  private static Worked four() {
    return Worked.block()
        .setup("one", CUT_TOP)
        .setup("two", CUT_BACK)
        .setup("three", HOLD_FRONT + SEAT + CUT_FRONT)
        .setup("four", CUT_BOTTOM);
  }

  private static String overhang(String up, String end, String cut) {
    return "true V80 with dti, 0.01 over 80\n"
        + ("hold in V80, up " + up + ", fixed back, on pair P6x10, overhang " + end + " 9,")
        + " spacer 29.9 at operator-left\n"
        + SEAT
        + "cutter EM16\n"
        + ("touch " + end + " with paper 0.05, zero x\n")
        + ("set z 23 below " + up + "\n" + cut + "\ndeburr all edges");
  }

  /** The relations that hold, as words. */
  private static Map<String, String> reasons(Worked plan) {
    Map<String, String> reasons = new TreeMap<>();
    plan.end()
        .relations()
        .forEach(
            (pair, relation) ->
                reasons.put(pair.first().word() + " " + pair.second().word(), relation.reason()));
    return reasons;
  }

  private static Obstacle obstacle(Worked plan, Face a, Face b) {
    return plan.end().obstacles().get(new FacePair(a, b));
  }

  @Test
  void theFirstFaceProvesNothing() {
    assertThat(reasons(Worked.block().setup("one", CUT_TOP))).isEmpty();
  }

  @Test
  void theSecondFaceIsSquareToTheFirstByTheFixedJaw() {
    Worked plan = Worked.block().setup("one", CUT_TOP).setup("two", CUT_BACK);

    assertThat(reasons(plan)).isEqualTo(Map.of("back top", "cut with the top on the fixed jaw"));
    // Jaw 0.02 over 100, flatness over the grip of 25 - 1.6, tram 0.02 over 150. The face is as
    // flat
    // as machine and head leave it: 0.005, and a little for the head's tram.
    Length flatness = Worked.block().setup("one", CUT_TOP).end().face(Face.TOP).flatness();
    assertThat(flatness).isBetween(Length.mm("0.005"), Length.mm("0.008"));
    Slope budget =
        Slope.of(Length.mm("0.02"), Length.mm("100"))
            .plus(Slope.of(flatness, Length.mm("23.4")))
            .plus(Slope.of(Length.mm("0.02"), Length.mm("150")));
    assertThat(plan.end().relation(Face.BACK, Face.TOP).along(PartDimension.WIDTH))
        .isEqualTo(budget);
  }

  @Test
  void theFourBroadFacesHoldTogetherByExactlyTheseReasons() {
    assertThat(reasons(four())).isEqualTo(AFTER_FOUR);
  }

  @Test
  void theEndsStandingUpright() {
    Map<String, String> wanted = new TreeMap<>(AFTER_FOUR);
    wanted.put("right top", "cut with the top on the fixed jaw");
    wanted.put("right back", "set upright by a square on the back");
    wanted.put("right front", "parallel to the back, which is square to the right");
    wanted.put("right bottom", "parallel to the top, which is square to the right");
    Worked five = four().setup("five", CUT_RIGHT_UPRIGHT);
    assertThat(reasons(five)).isEqualTo(wanted);

    wanted.put("left right", "cut seated on the right, tapped down");
    wanted.put("left top", "cut with the top on the fixed jaw");
    wanted.put("left back", "cut seated on the right, which is square to the back");
    wanted.put("left front", "cut seated on the right, which is square to the front");
    // Both closures hold; this one has the tighter bound.
    wanted.put("left bottom", "parallel to the right, which is square to the bottom");
    assertThat(reasons(five.setup("six", CUT_LEFT_ON_RIGHT))).isEqualTo(wanted).hasSize(15);
  }

  @Test
  void theEndsOverhangingBesideTheJaws() {
    Map<String, String> wanted = new TreeMap<>(AFTER_FOUR);
    wanted.put("right bottom", "cut seated on the bottom, tapped down");
    wanted.put("right back", "cut with the back on the fixed jaw of a true vise");
    wanted.put("right front", "parallel to the back, which is square to the right");
    wanted.put("right top", "parallel to the bottom, which is square to the right");
    Worked five = four().setup("five", overhang("top", "right", "clean right at 0.5, at most 1.5"));
    assertThat(reasons(five)).isEqualTo(wanted);

    wanted.put("left top", "cut seated on the top, tapped down");
    wanted.put("left back", "cut with the back on the fixed jaw of a true vise");
    wanted.put("left front", "parallel to the back, which is square to the left");
    wanted.put("left bottom", "parallel to the top, which is square to the left");
    wanted.put("left right", "both are square to the back and to the top");
    Worked six =
        five.setup("six", overhang("bottom", "left", "rough left to length leaving 0, pass 0.6"));
    assertThat(reasons(six)).isEqualTo(wanted).hasSize(15);

    // Errors add: each end is as true in plan as the vise.
    Slope trued = Slope.of(Length.mm("0.01"), Length.mm("80"));
    assertThat(six.end().relation(Face.LEFT, Face.RIGHT).along(PartDimension.WIDTH))
        .isEqualTo(trued.plus(trued));
  }

  /** Two faces square to a third may be twisted about its normal. */
  @Test
  void twoFacesSquareToAThirdAreNotThereforeParallel() {
    Worked unseated =
        Worked.block()
            .setup("one", CUT_TOP)
            .setup("two", CUT_BACK)
            .setup("three", HOLD_FRONT + CUT_FRONT);

    assertThat(reasons(unseated).keySet()).containsExactlyInAnyOrder("back top", "front top");
    assertThat(obstacle(unseated, Face.FRONT, Face.BACK).kind())
        .isEqualTo(Obstacle.Kind.SEAT_NOT_PROVED);
  }

  @Test
  void cuttingAFaceAgainForgetsItsPairsAndNoOthers() {
    Worked again =
        four()
            .setup("five", overhang("top", "right", "clean right at 0.5, at most 1.5"))
            .setup(
                "six",
                """
                hold in V80, up right, fixed front, on bed
                cutter FC40
                touch right with paper 0.05, zero z
                clean right at 0.1, at most 0.2
                """);

    // No square and a raw end below: only the jaw rules, for the front and what is parallel to it.
    Map<String, String> wanted = new TreeMap<>(AFTER_FOUR);
    wanted.put("right front", "cut with the front on the fixed jaw");
    wanted.put("right back", "parallel to the front, which is square to the right");
    assertThat(reasons(again)).isEqualTo(wanted);
  }

  @Test
  void untappedWorkWithoutABarIsDraggedUpByTheMovingJaw() {
    String hold = "hold in V80, up right, fixed front, on bed\n";
    String cut = "touch right with paper 0.05, zero z\nclean right at 0.5, at most 1.5";
    Slope untapped = squareError(four().setup("five", hold + cut));
    Slope tapped = squareError(four().setup("five", hold + "seat tapped\n" + cut));
    Length width = four().end().size(PartDimension.WIDTH).range().low();

    assertThat(untapped).isEqualTo(tapped.plus(Slope.of(Length.mm("0.03"), width)));
  }

  private static Slope squareError(Worked plan) {
    return plan.end().relation(Face.RIGHT, Face.FRONT).along(PartDimension.WIDTH);
  }

  @Test
  void whereJawAndSeatBothRuleTheWorseOfThemCounts() {
    Workpiece work = four().end();
    Slope tram = Slope.of(Length.mm("0.02"), Length.mm("150"));

    // The back is square to the top it was seated on only so far: the bottom inherits that.
    assertThat(work.relation(Face.BACK, Face.BOTTOM).along(PartDimension.HEIGHT))
        .isGreaterThan(work.relation(Face.BACK, Face.TOP).along(PartDimension.HEIGHT).plus(tram));
  }

  @Test
  void jawAndSeatThatFightProveOneOrNone() {
    String back =
        """
        hold in V80, up back, fixed top, on pair P6x10, bar 8 at mid-grip
        seat tapped, both parallels tight
        cutter FC40
        touch back with paper 0.05, zero z
        clean back at 0.4, at most 1.1
        """;
    Worked milled =
        Worked.block()
            .from("size 60 x 33.5 x 24.5\nmilled top front bottom\ncast back\nsawn left right");

    // Top and front are machined but not known to be square. With a bar the jaw wins.
    Worked barred = milled.setup("one", back);
    assertThat(reasons(barred)).isEqualTo(Map.of("back top", "cut with the top on the fixed jaw"));
    assertThat(obstacle(barred, Face.BACK, Face.FRONT).kind()).isEqualTo(Obstacle.Kind.CONFLICT);
    Worked without = milled.setup("one", back.replace(", bar 8 at mid-grip", ""));
    assertThat(reasons(without)).isEmpty();
  }

  @Test
  void workClampedToThePlateIsParallelToWhatItLiesOn() {
    Worked clamped =
        four()
            .setup(
                "five",
                """
                hold on table, up top, clamp strap at (5, 15)
                touch top with paper 0.05, zero z
                clean top at 0.05, at most 0.1
                """);

    Map<String, String> wanted = new TreeMap<>(AFTER_FOUR);
    wanted.put("bottom top", "cut seated on the bottom, tapped down");
    wanted.put("back top", "cut seated on the bottom, which is square to the back");
    wanted.put("front top", "cut seated on the bottom, which is square to the front");
    assertThat(reasons(clamped)).isEqualTo(wanted);
  }

  @Test
  void whatIsCutInOneGripIsAsTrueAsTheMachine() {
    Worked inOneGrip =
        Worked.block()
            .setup(
                "one",
                """
                hold on table, up top, clamp strap at (5, 15)
                cutter FC60
                touch top with paper 0.05, zero z
                clean top at 0.4, at most 1.2
                cutter EM16
                touch right with paper 0.05, zero x
                set z 10 below top
                clean right at 0.5, at most 1.5
                touch left with paper 0.05, zero x
                clean left at 0.5, at most 1.5
                touch back with paper 0.05, zero y
                clean back at 0.4, at most 1.2
                """);

    assertThat(reasons(inOneGrip))
        .isEqualTo(
            Map.of(
                "right top", "cut in one grip with the top",
                "left top", "cut in one grip with the top",
                "back top", "cut in one grip with the top",
                "left right", "both ends cut in one grip"));
    assertThat(inOneGrip.end().relation(Face.LEFT, Face.TOP).along(PartDimension.HEIGHT))
        .isEqualTo(Slope.of(Length.mm("0.02"), Length.mm("150")));
  }

  @Test
  void anEndCutBeforeTheFaceAboveIsSquareToItAllTheSame() {
    Worked endFirst =
        Worked.block()
            .setup(
                "one",
                """
                hold on table, up top, clamp strap at (5, 15)
                cutter EM16
                touch right with paper 0.05, zero x
                set z 10 below top
                clean right at 0.5, at most 1.5
                cutter FC60
                touch top with paper 0.05, zero z
                clean top at 0.4, at most 1.2
                """);

    assertThat(reasons(endFirst)).isEqualTo(Map.of("right top", "cut in one grip with the right"));
  }

  @Test
  void aWallTowardTheMovingJawIsParallelToTheFixedOne() {
    Worked wall =
        four()
            .setup(
                "five",
                """
                true V80 with dti, 0.01 over 80
                hold in V80, up top, fixed back, on pair P6x10
                seat tapped, both parallels tight
                cutter EM16
                touch front with paper 0.05, zero y
                set z 5 below top
                clean front at 0.1, at most 0.2
                """);

    Map<String, String> wanted = new TreeMap<>(AFTER_FOUR);
    wanted.put("front bottom", "cut seated on the bottom, tapped down");
    wanted.put("front back", "cut with the back on the fixed jaw of a true vise");
    wanted.put("front top", "parallel to the bottom, which is square to the front");
    assertThat(reasons(wall)).isEqualTo(wanted);
  }

  @Test
  void aZoneIsTheErrorOverTheSizesItRunsAlong() {
    Workpiece work = four().end();
    Relation square = work.relation(Face.BACK, Face.TOP);
    Relation parallel = work.relation(Face.BOTTOM, Face.TOP);
    Length length = work.size(PartDimension.LENGTH).range().high();
    Length width = work.size(PartDimension.WIDTH).range().high();
    Length height = work.size(PartDimension.HEIGHT).range().high();

    assertThat(square.zone(Face.BACK, Face.TOP, work.sizes()))
        .isEqualTo(square.along(PartDimension.HEIGHT).over(height));
    assertThat(parallel.zone(Face.BOTTOM, Face.TOP, work.sizes()))
        .isEqualTo(
            parallel
                .along(PartDimension.LENGTH)
                .over(length)
                .plus(parallel.along(PartDimension.WIDTH).over(width)));
  }

  /**
   * Check row B12, geometry: an error of 0.1 degrees is 0.08727 over 50 mm, 1' 0.02909 over 100.
   */
  @Test
  void aSlopeOverALengthIsTheErrorOfSquareness() {
    Slope tenthOfADegree = new Slope(Math.round(Math.tan(Math.toRadians(0.1)) * 1e9));
    Slope minute = new Slope(Math.round(Math.tan(Math.toRadians(1 / 60.0)) * 1e9));

    assertThat(tenthOfADegree.over(Length.mm("50")).millimetres()).isBetween(0.087265, 0.087275);
    assertThat(minute.over(Length.mm("100")).millimetres()).isBetween(0.029085, 0.029095);
  }

  private static final String ALL_MILLED =
      "size 60 x 33.5 x 24.5\nground top front back bottom left right";
  private static final String FACE_TOP =
      "cutter FC40\ntouch top with paper 0.05, zero z\nclean top at 0.1, at most 0.2";

  @Test
  void goodFacesThatAreNotKnownToBeSquareFightEachOther() {
    String hold = "hold in V80, up top, fixed back, on pair P6x10\n";
    Worked fight =
        Worked.block()
            .from(ALL_MILLED)
            .setup("one", hold + "measure width with mic")
            .setup("two", hold + SEAT + FACE_TOP)
            .log("in one: read width 33.50 33.51 with mic");

    // Front and back are read to be parallel; nothing says that they are square to the bottom.
    assertThat(reasons(fight).keySet()).containsExactly("front back");
    assertThat(obstacle(fight, Face.TOP, Face.BACK).kind()).isEqualTo(Obstacle.Kind.CONFLICT);
    assertThat(obstacle(fight, Face.TOP, Face.FRONT).kind()).isEqualTo(Obstacle.Kind.CONFLICT);
  }

  @Test
  void readingsCloseWhatFollowsFromThem() {
    Worked read =
        Worked.block()
            .from(ALL_MILLED)
            .setup(
                "one",
                "hold in V80, up top, fixed back, on soft-strip 1.6, bar 8 at mid-grip\n"
                    + FACE_TOP
                    + "\nmeasure height with mic")
            .log("in one: read height 24.30 24.31 with mic");

    assertThat(reasons(read))
        .containsOnlyKeys("back top", "bottom top", "back bottom")
        .containsEntry("back bottom", "parallel to the top, which is square to the back");
  }

  @Test
  void whereTheJawStandsAskewTheSeatMakesAFaceSquareToIt() {
    Worked cocked =
        four()
            .setup(
                "five",
                "hold in V80, up bottom, fixed back, on pair P6x10, overhang right 9\n"
                    + SEAT
                    + "cutter FC40\ntouch bottom with paper 0.05, zero z\n"
                    + "clean bottom at 0.1, at most 0.2");

    assertThat(reasons(cocked).get("back bottom"))
        .isEqualTo("cut seated on the top, which is square to the back");
    assertThat(cocked.end().relation(Face.BACK, Face.BOTTOM).along(PartDimension.WIDTH))
        .isGreaterThan(cocked.end().relation(Face.BACK, Face.TOP).along(PartDimension.HEIGHT));
  }

  @Test
  void anObstacleSaysWhyAPairIsMissing() {
    Worked first = Worked.block().setup("one", CUT_TOP);

    assertThat(obstacle(first, Face.TOP, Face.BACK).kind()).isEqualTo(Obstacle.Kind.RAW_FIXED);
    assertThat(obstacle(first, Face.TOP, Face.FRONT).kind()).isEqualTo(Obstacle.Kind.RAW_FIXED);
    assertThat(obstacle(first, Face.TOP, Face.BOTTOM).kind()).isEqualTo(Obstacle.Kind.RAW_UNDER);
    assertThat(obstacle(first, Face.TOP, Face.LEFT).why()).contains("nothing in this setup");
    assertThat(obstacle(first, Face.LEFT, Face.BACK)).isNull();
    // Cutting the other face takes the obstacle away and makes the pair square.
    assertThat(obstacle(four(), Face.TOP, Face.BACK)).isNull();
  }

  @Test
  void anEndCutInAViseThatWasNeverTruedIsSquareOnlyToTheSeat() {
    String hold = overhang("top", "right", "clean right at 0.5, at most 1.5");
    Worked untrue = four().setup("five", hold.substring(hold.indexOf('\n') + 1));

    assertThat(reasons(untrue)).containsKeys("right bottom", "right top");
    for (Face face : new Face[] {Face.BACK, Face.FRONT, Face.LEFT}) {
      assertThat(obstacle(untrue, Face.RIGHT, face).kind()).isEqualTo(Obstacle.Kind.NOT_TRUED);
    }
    Worked unseated = four().setup("five", hold.replace(SEAT, ""));
    assertThat(reasons(unseated)).containsKeys("right back", "right front");
    for (Face face : new Face[] {Face.BOTTOM, Face.TOP, Face.LEFT}) {
      assertThat(obstacle(unseated, Face.RIGHT, face).kind())
          .isEqualTo(Obstacle.Kind.SEAT_NOT_PROVED);
    }
  }

  @Test
  void aWallWithoutSeatOrTrueViseProvesNothing() {
    String wall =
        "hold in V80, up top, fixed back, on pair P6x10\ncutter EM16\n"
            + "touch front with paper 0.05, zero y\nset z 5 below top\n"
            + "clean front at 0.1, at most 0.2";
    Worked plain = four().setup("five", wall);
    Worked cocked =
        four()
            .setup(
                "five", "true V80 with dti\n" + wall.replace("x10\n", "x10, overhang right 9\n"));

    assertThat(reasons(plain).keySet()).noneMatch(pair -> pair.startsWith("front"));
    assertThat(obstacle(plain, Face.FRONT, Face.BOTTOM).kind())
        .isEqualTo(Obstacle.Kind.SEAT_NOT_PROVED);
    assertThat(obstacle(cocked, Face.FRONT, Face.BACK).kind()).isEqualTo(Obstacle.Kind.COCKED);
    assertThat(obstacle(plain, Face.FRONT, Face.LEFT).kind()).isEqualTo(Obstacle.Kind.OTHER);
  }
}
