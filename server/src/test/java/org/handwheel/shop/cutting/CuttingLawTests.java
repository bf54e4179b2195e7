package org.handwheel.shop.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.handwheel.shop.cutting.Deflection.StickOut;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;

/** Laws the cutting formulas keep for all inputs, and what they refuse. */
class CuttingLawTests {
  private static final Length TEN = Length.mm("10");

  @Property
  void speedAndTurnsAreInverse(
      @ForAll @DoubleRange(min = 1, max = 1000) double speed,
      @ForAll @LongRange(min = 100_000_000L, max = 200_000_000_000L) long pm) {
    Length diameter = new Length(pm);
    double turns = SpindleSpeed.turnsPerMinute(speed, diameter);
    assertThat(SpindleSpeed.metresPerMinute(turns, diameter)).isCloseTo(speed, within(1e-9));
    assertThat(SpindleSpeed.turnsPerMinuteFromFeet(speed / 0.3048, diameter))
        .isCloseTo(turns, within(turns * 1e-12));
  }

  @Property
  void theStepChosenIsNeverAboveUnlessItIsTheSlowest(
      @ForAll @DoubleRange(min = 1, max = 5000) double wanted) {
    List<Double> steps = List.of(1600.0, 80.0, 320.0, 160.0, 640.0);
    SpindleSpeed.Choice choice = SpindleSpeed.choose(steps, wanted);
    assertThat(steps).contains(choice.turnsPerMinute());
    if (choice.isTooFast()) {
      assertThat(choice.turnsPerMinute()).isEqualTo(80);
    } else {
      assertThat(steps).noneMatch(step -> step > choice.turnsPerMinute() && step <= wanted);
    }
    assertThat(SpindleSpeed.choose(80, 1600, wanted).turnsPerMinute()).isBetween(80.0, 1600.0);
  }

  @Property
  void feedPerToothAndTableFeedAreInverse(
      @ForAll @LongRange(min = 5_000_000L, max = 500_000_000L) long pm,
      @ForAll @IntRange(min = 1, max = 20) int teeth,
      @ForAll @DoubleRange(min = 50, max = 5000) double turns) {
    Length perTooth = new Length(pm);
    double feed = Feed.table(perTooth, teeth, turns);
    assertThat(Feed.perTooth(feed, teeth, turns).minus(perTooth).abs())
        .isLessThanOrEqualTo(new Length(1));
  }

  /** One turn of a 0.100 in screw with 100 marks at 25.4 mm/min takes 6 s: 100 marks in 6 s. */
  @Test
  void handFeedOfAnInchMachine() {
    Feed.HandFeed hand = Feed.byHand(25.4, Length.inches("0.1"), BigFraction.of(100));
    assertThat(hand.secondsPerTurn()).isCloseTo(6, within(1e-12));
    assertThat(hand.divisionsPerSecond()).isCloseTo(100.0 / 6, within(1e-9));
    assertThat(hand.isTooFastToCrank()).isFalse();
    assertThat(hand.isTooSlowToKeepSteady()).isFalse();
    assertThat(Feed.byHand(300, Length.inches("0.1"), BigFraction.of(100)).isTooFastToCrank())
        .isTrue();
    assertThat(Feed.byHand(8, Length.mm("2.5"), BigFraction.of(125, 2)).isTooSlowToKeepSteady())
        .isTrue();
  }

  @Property
  void powerTorqueAndForceAgree(
      @ForAll @DoubleRange(min = 0.01, max = 5) double kilowatts,
      @ForAll @DoubleRange(min = 50, max = 5000) double turns,
      @ForAll @DoubleRange(min = 1, max = 60) double millimetres) {
    Length diameter = Length.ofMillimetres(millimetres);
    double force =
        CuttingPower.tangentialForce(kilowatts, SpindleSpeed.metresPerMinute(turns, diameter));
    assertThat(force * diameter.millimetres() / 2000)
        .isCloseTo(CuttingPower.torque(kilowatts, turns), within(1e-6 * force));
    double rate = CuttingPower.greatestRemovalRate(kilowatts, 1600);
    assertThat(CuttingPower.atCutter(1600, rate)).isCloseTo(kilowatts, within(1e-9));
  }

  @Test
  void stickOutIsJudgedExactly() {
    assertThat(StickOut.of(Length.mm("30"), TEN)).isEqualTo(StickOut.SHORT);
    assertThat(StickOut.of(new Length(30_000_000_001L), TEN)).isEqualTo(StickOut.LONG);
    assertThat(StickOut.of(Length.mm("50"), TEN)).isEqualTo(StickOut.LONG);
    assertThat(StickOut.of(new Length(50_000_000_001L), TEN)).isEqualTo(StickOut.TOO_LONG);
  }

  @Test
  void refusesWhatCannotBe() {
    assertIllegal(() -> SpindleSpeed.turnsPerMinute(30, Length.ZERO));
    assertIllegal(() -> SpindleSpeed.choose(200, 100, 150));
    assertIllegal(() -> Feed.table(Length.mm("0.05"), 0, 500));
    assertIllegal(() -> Feed.byHand(0, Length.mm("2"), BigFraction.of(100)));
    assertIllegal(() -> CuttingPower.atMotor(1, 0));
    assertIllegal(() -> Deflection.endMill(-1, TEN, TEN, CutterMaterial.HIGH_SPEED_STEEL));
  }

  private static void assertIllegal(ThrowingCallable call) {
    assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class);
  }
}
