package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned.Hand;
import org.handwheel.model.Step.CutDirection;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class EngagementTests {
  /**
   * Common practice, no source: on the right-hand side with a right-hand cutter, front to back is
   * conventional. The other walls and the left-hand cutter follow by geometry (check row B38).
   */
  @ParameterizedTest
  @CsvSource({
    "OPERATOR_RIGHT, OPERATOR_BACK",
    "OPERATOR_BACK, OPERATOR_LEFT",
    "OPERATOR_LEFT, OPERATOR_FRONT",
    "OPERATOR_FRONT, OPERATOR_RIGHT"
  })
  void conventionalGoesCounterClockwiseRoundTheWork(Direction wall, Direction travel) {
    assertThat(Engagement.alongWall(wall, travel, Hand.RIGHT)).isEqualTo(CutDirection.CONVENTIONAL);
    assertThat(Engagement.alongWall(wall, travel.opposite(), Hand.RIGHT))
        .isEqualTo(CutDirection.CLIMB);
    assertThat(Engagement.alongWall(wall, travel, Hand.LEFT)).isEqualTo(CutDirection.CLIMB);
    assertThat(Engagement.travelFor(wall, CutDirection.CONVENTIONAL, Hand.RIGHT)).isEqualTo(travel);
    assertThat(Engagement.travelFor(wall, CutDirection.CLIMB, Hand.RIGHT))
        .isEqualTo(travel.opposite());
    assertThat(Engagement.travelFor(wall, CutDirection.CONVENTIONAL, Hand.LEFT))
        .isEqualTo(travel.opposite());
  }

  @ParameterizedTest
  @EnumSource(Direction.class)
  void aTravelIntoTheWallIsNone(Direction wall) {
    assertThatThrownBy(() -> Engagement.alongWall(wall, wall, Hand.RIGHT))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Engagement.alongWall(wall, Direction.UP, Hand.RIGHT))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** The mean over the arc, summed here tooth by tooth; the formula of the code is its integral. */
  private static double summed(double right, double left) {
    double from = Math.asin(right);
    double to = Math.asin(left);
    int steps = 2_000;
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      double angle = from + (to - from) * (i + 0.5) / steps;
      // Chip thickness goes with the cosine of the angle from the travel, the tangential force has
      // the part sin along the travel, the radial one cos.
      sum += Math.cos(angle) * (Math.sin(angle) + 0.3 * Math.cos(angle));
    }
    return sum * (to - from) / steps;
  }

  @Property(tries = 200)
  void theNetForceIsTheMeanOverTheArc(
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = -1, max = 1) double b) {
    double right = Math.min(a, b);
    double left = Math.max(a, b);

    assertThat(Engagement.of(right, left, Hand.RIGHT).netForce())
        .isCloseTo(summed(right, left), within(1e-5));
  }

  /**
   * Worked figures for a ratio of radial to tangential force of 0.3; common practice, no source.
   */
  @ParameterizedTest
  @CsvSource({
    // right, left, net force: 34.5 under a 40 cutter; a slot
    "-0.8625, 0.8625, 0.44",
    "-1, 1, 0.47"
  })
  void facingCuts(double right, double left, double force) {
    assertThat(Engagement.of(right, left, Hand.RIGHT).netForce()).isCloseTo(force, within(0.01));
    assertThat(Engagement.of(-left, -right, Hand.LEFT).netForce()).isCloseTo(force, within(0.01));
  }

  @ParameterizedTest
  @CsvSource({
    // depth over radius of a 16 mm cutter: 1.6 mm and 12 mm
    "0.2, CONVENTIONAL, 0.20",
    "0.2, CLIMB, -0.16",
    "1.5, CLIMB, 0.00"
  })
  void sideCuts(double depth, CutDirection direction, double force) {
    Engagement engagement = Engagement.ofSide(depth, direction);

    assertThat(engagement.netForce()).isCloseTo(force, within(0.011));
  }

  @Test
  void wordsSayWhatTheTeethDo() {
    assertThat(Engagement.ofSide(0.2, CutDirection.CONVENTIONAL).words()).isEqualTo("conventional");
    assertThat(Engagement.ofSide(0.2, CutDirection.CLIMB).words()).isEqualTo("climb");
    assertThat(Engagement.of(-0.5, 0.8, Hand.RIGHT).words())
        .isEqualTo("mixed, mostly conventional");
    assertThat(Engagement.of(-0.9, 0.1, Hand.RIGHT).words()).isEqualTo("mixed, mostly climb");
    assertThat(Engagement.of(0, 1, Hand.RIGHT).isConventional()).isTrue();
    assertThat(Engagement.of(-1, 0, Hand.RIGHT).isClimb()).isTrue();
    assertThat(Engagement.of(-3, 3, Hand.RIGHT)).isEqualTo(Engagement.of(-1, 1, Hand.RIGHT));
  }

  // ---- In a plan

  private static CutRun face(String clauses) {
    return Worked.block()
        .setup(
            "a",
            "hold in V80, up top, fixed back, on pair P6x10\ncutter FC40\n"
                + "touch top with paper 0.05, zero z\nclean top at 0.4, at most 1.2"
                + clauses)
        .lastCut();
  }

  @Test
  void anOffsetToTheLeftOfTheTravelPutsMoreWorkOnTheRight() {
    // The face is 33.8 wide at most, so it reaches 16.9 to either side of the middle.
    CutRun toward = face(", travel left to right, offset 2 toward front");
    CutRun away = face(", travel left to right, offset 2 toward back");
    CutRun back = face(", travel right to left, offset 2 toward back");
    CutRun lengthwise = face(", travel front to back, offset 2 toward right");

    assertThat(toward.travel()).isEqualTo(Direction.OPERATOR_RIGHT);
    assertThat(toward.engagement().left()).isCloseTo(18.9 / 20, within(1e-9));
    assertThat(toward.engagement().right()).isCloseTo(-14.9 / 20, within(1e-9));
    assertThat(away.engagement().left()).isCloseTo(14.9 / 20, within(1e-9));
    assertThat(back.engagement()).isEqualTo(toward.engagement());
    assertThat(lengthwise.engagement().left()).isEqualTo(1);
    // An offset that is not across the travel changes nothing.
    assertThat(face(", travel left to right, offset 2 toward right").engagement())
        .isEqualTo(face(", travel left to right").engagement());
  }

  @Test
  void facingGoesTheLongWayUnlessThePlanSaysOtherwise() {
    assertThat(face("").travel()).isEqualTo(Direction.OPERATOR_RIGHT);
    assertThat(face(", travel back to front").travel()).isEqualTo(Direction.OPERATOR_FRONT);
  }

  @Test
  void lanesHaveTheirWorkOnTheLeft() {
    Engagement engagement = face(", step over 15").engagement();

    assertThat(engagement.left()).isEqualTo(1);
    assertThat(engagement.right()).isCloseTo(0.25, within(1e-9));
    assertThat(engagement.isConventional()).isTrue();
  }

  private static CutRun side(String clauses) {
    return Worked.block()
        .setup(
            "a",
            "hold in V80, up top, fixed back, on pair P6x10, overhang right 9\ncutter EM16\n"
                + "touch right with paper 0.05, zero x\nset z 20 below top\n"
                + "clean right at 0.5, at most 1.5"
                + clauses)
        .lastCut();
  }

  @Test
  void theSideOfTheCutterGoesAsThePlanSays() {
    assertThat(side("").travel()).isEqualTo(Direction.OPERATOR_BACK);
    assertThat(side(", climb").travel()).isEqualTo(Direction.OPERATOR_FRONT);
    assertThat(side(", climb").direction()).isEqualTo(CutDirection.CLIMB);
    assertThat(side(", conventional").direction()).isEqualTo(CutDirection.CONVENTIONAL);
    assertThat(side(", travel back to front").direction()).isEqualTo(CutDirection.CLIMB);
    assertThat(side("").mode()).isEqualTo(CutRun.Mode.SIDE);
    assertThat(side("").axialDepth().millimetres()).isEqualTo(20);
    assertThat(side("").passDepth().millimetres()).isEqualTo(0.5);
    assertThat(side("").passes()).isEqualTo(3);
  }

  /** Mean force: Kt fz ap z / (2 pi) K; common practice, no source. */
  @Test
  void theMeanForceIsInNewtons() {
    CutRun cut = side(", climb, feed 0.02 mm/tooth");
    double perToothForceOverK = 0.02 * 20 * 4 / (2 * Math.PI);
    double specific = cut.meanForce() / (perToothForceOverK * cut.engagement().netForce());

    assertThat(cut.meanForce()).isNegative();
    // Gunmetal lies between 500 and 1500 N/mm2 of chip.
    assertThat(specific).isBetween(400.0, 1600.0);
    assertThat(side(", climb, feed 0.04 mm/tooth").meanForce())
        .isCloseTo(2 * cut.meanForce(), within(1e-6));
  }
}
