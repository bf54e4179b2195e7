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
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How the teeth meet the work.
 *
 * <p>Source of the forces: statics, worked out here tooth by tooth and independently of the formula
 * under test. Source of the directions: geometry, and the common practice (no source) that on the
 * right-hand side, with a right-hand cutter, front to back is conventional.
 */
class EngagementTests {
  private static final double RADIAL = 0.3;

  /**
   * The feed force on the work against the table by summing over small steps of the turn: the tooth
   * at R (cos a, sin a) moves along (sin a, -cos a) in a cutter that turns clockwise seen from
   * above, cuts a chip as thick as its feed into its own direction, and presses on the work along
   * its motion and, with {@link #RADIAL} of that, outward. The cutter travels along +x.
   */
  private static double summed(double from, double to) {
    int steps = 2_000_000;
    double step = Math.PI / steps;
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      double angle = -Math.PI / 2 + (i + 0.5) * step;
      double across = Math.sin(angle);
      if (across < from || across > to) {
        continue;
      }
      double chip = Math.cos(angle);
      double alongMotion = Math.sin(angle);
      double outward = Math.cos(angle);
      sum += chip * (alongMotion + RADIAL * outward) * step;
    }
    return sum;
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "a 34.5 mm face under the middle of a 40 mm cutter, 40, -17.25, 17.25, 0.44",
    "a slot as wide as the cutter, 16, -8, 8, 0.47",
    "the side of a 16 mm cutter 1.6 mm deep conventional, 16, 6.4, 8, 0.20",
    "the side of a 16 mm cutter 1.6 mm deep climb, 16, -8, -6.4, -0.16",
    "the side of a 16 mm cutter 12 mm deep climb, 16, -8, 4, 0.00",
    "a 10 mm face wholly to the right of a 40 mm cutter's axis, 40, -19, -9, -0.25",
  })
  void theNetForceIsTheSumOverTheTeeth(
      String what, double dia, double right, double left, double expected) {
    double radius = dia / 2;
    double force = Engagement.of(right / radius, left / radius, Hand.RIGHT).netForce();
    assertThat(force).as(what).isCloseTo(summed(right / radius, left / radius), within(1e-5));
    assertThat(force).as(what).isCloseTo(expected, within(0.011));
  }

  @Test
  void theSideOfTheCutterIsTheSameFromBothSides() {
    assertThat(Engagement.ofSide(0.2, CutDirection.CONVENTIONAL))
        .isEqualTo(Engagement.of(0.8, 1, Hand.RIGHT));
    assertThat(Engagement.ofSide(0.2, CutDirection.CLIMB))
        .isEqualTo(Engagement.of(-1, -0.8, Hand.RIGHT));
  }

  @Test
  void aLeftHandCutterIsTheMirrorImage() {
    Engagement left = Engagement.of(-0.9, -0.2, Hand.LEFT);
    assertThat(left).isEqualTo(Engagement.of(0.2, 0.9, Hand.RIGHT));
    assertThat(left.words()).isEqualTo("conventional");
  }

  @ParameterizedTest
  @CsvSource({
    "OPERATOR_RIGHT, OPERATOR_BACK",
    "OPERATOR_BACK, OPERATOR_LEFT",
    "OPERATOR_LEFT, OPERATOR_FRONT",
    "OPERATOR_FRONT, OPERATOR_RIGHT",
  })
  void conventionalGoesCounterClockwiseRoundTheWork(Direction wall, Direction travel) {
    assertThat(Engagement.alongWall(wall, travel, Hand.RIGHT)).isEqualTo(CutDirection.CONVENTIONAL);
    assertThat(Engagement.alongWall(wall, travel.opposite(), Hand.RIGHT))
        .isEqualTo(CutDirection.CLIMB);
    assertThat(Engagement.alongWall(wall, travel, Hand.LEFT)).isEqualTo(CutDirection.CLIMB);
    assertThat(Engagement.travelFor(wall, CutDirection.CONVENTIONAL, Hand.RIGHT)).isEqualTo(travel);
    assertThat(Engagement.travelFor(wall, CutDirection.CLIMB, Hand.LEFT)).isEqualTo(travel);
  }

  @Test
  void workUnderTheMiddleIsMixed() {
    assertThat(Engagement.of(-0.8, 0.8, Hand.RIGHT).words())
        .isEqualTo("mixed, mostly conventional");
    assertThat(Engagement.of(-1, 0.1, Hand.RIGHT).words()).isEqualTo("mixed, mostly climb");
    assertThat(Engagement.of(0, 0.5, Hand.RIGHT).words()).isEqualTo("conventional");
    assertThat(Engagement.of(-0.5, 0, Hand.RIGHT).words()).isEqualTo("climb");
  }

  @Property
  void chipsAreNeverThickerThanTheFeed(@ForAll @DoubleRange(min = 0.01, max = 2) double depth) {
    Engagement side = Engagement.ofSide(depth, CutDirection.CLIMB);
    assertThat(side.greatestChip()).isBetween(0.0, 1.0);
    assertThat(side.meanChip()).isPositive().isLessThan(side.greatestChip());
    assertThat(side.feedFor(Length.mm("0.05"))).isGreaterThanOrEqualTo(Length.mm("0.05"));
  }

  @Test
  void noChipHasNoFeed() {
    Engagement none = Engagement.of(1, 1, Hand.RIGHT);
    assertThatThrownBy(() -> none.feedFor(Length.mm("0.05")))
        .isInstanceOf(ArithmeticException.class);
  }
}
