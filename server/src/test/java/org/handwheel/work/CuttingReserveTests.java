package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.handwheel.model.Axis;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.Shop;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.CuttingConditions.Asked;
import org.handwheel.work.CuttingConditions.Bite;
import org.handwheel.work.CuttingConditions.SpeedFrom;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.Tool;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How near a cut comes to what machine and cutter bear. Source: geometry of a cutter with a helix
 * of 30 degrees (common practice, no source), worked out by hand beside each value.
 */
class CuttingReserveTests {
  private static final Length TEN = Length.mm("10");

  private static final Shop SHOP =
      ShopFiles.build(
              SyntaxTree.parse(
                  "s.shop",
                  """
                  language 1
                  shop "Reserves"
                    units mm
                  own machine weak
                    speeds: 100, 250, 500, 1000, 2000 rpm
                    power: 0.5 kW
                  own machine capped
                    speeds: 100, 250, 500, 1000, 2000 rpm
                    top-speed: 1000 rpm
                  own machine odd
                    speeds: 800, 1200 rpm
                    top-speed: 500 rpm
                  """))
          .shop();

  private static Owned.Machine machine(String name) {
    return SHOP.find(Owned.Machine.class, name).orElseThrow();
  }

  private static CuttingConditions work(
      Owned.@Nullable Machine machine, CutterKind kind, int teeth, @Nullable Bite bite) {
    Tool tool = new Tool(kind, TEN, teeth, ToolMaterial.HSS, null);
    KnownMaterial steel =
        KnownMaterial.find("steel-mild", SHOP, StandardTables.builtIn()).orElseThrow();
    return new CuttingCalculator(Limits.DEFAULTS)
        .work(new Asked(steel, machine, tool, bite, Axis.X, 900d, Length.mm("0.05")));
  }

  @ParameterizedTest(name = "{0}, {1} rpm wanted")
  @CsvSource({
    "capped, 5000, 1000, STEP",
    "capped, 1000, 1000, STEP",
    "capped, 999, 500, STEP",
    "weak, 5000, 2000, STEP",
    // A top speed below every step is taken for a slip: the steps are what can be set.
    "odd, 5000, 1200, STEP",
    "odd, 600, 800, SLOWEST_STEP",
  })
  void stepsUpToTheTopSpeed(String name, double wanted, double turns, SpeedFrom from) {
    Spindle spindle = CuttingCalculator.fitting(machine(name), wanted, TEN);
    assertThat(spindle.turnsPerMinute()).isEqualTo(turns);
    assertThat(spindle.from()).isEqualTo(from);
  }

  /**
   * Of 10 mm, 1 mm of the side: a tooth cuts for acos(0.8) = 0.6435; 2 mm deep its helix lags by 2
   * x 2 x tan 30 / 10 = 0.2309. Two teeth: 2 x 0.8744 / 2 pi = 0.2783 of a tooth on the average. A
   * cutter that is not slim has its teeth straight: 0.2048.
   */
  @ParameterizedTest(name = "{0}, {1} teeth, {2} wide, {3} deep")
  @CsvSource({
    "END_MILL, 2, 1, 2, 0.2783",
    "SLOT_DRILL, 2, 1, 2, 0.2783",
    "END_MILL, 2, 1, 4, 0.3518",
    "END_MILL, 3, 1, 2, 0.4175",
    "END_MILL, 2, 5, 2, 0.5735",
    "FACE_MILL, 2, 1, 2, 0.2048",
    // More than one tooth on the average: the force is then shared, not less.
    "END_MILL, 4, 5, 8, 1",
  })
  void aToothCutsPartOfTheTime(
      CutterKind kind, int teeth, String width, String depth, double share) {
    Bite bite = Bite.ofSide(Length.mm(depth), Length.mm(width), TEN);
    CuttingConditions.Load load = work(null, kind, teeth, bite).load();
    assertThat(load.tangentialForce() / load.cuttingForce()).isCloseTo(share, within(1e-4));
  }

  @Test
  void powerInHandIsTheMotorsOverTheCuts() {
    Bite bite = Bite.ofSide(Length.mm("8"), Length.mm("4"), TEN);
    CuttingConditions cut = work(machine("weak"), CutterKind.END_MILL, 4, bite);
    assertThat(cut.load().motorKilowatts()).isPositive();
    assertThat(cut.powerInHand() * cut.load().motorKilowatts()).isCloseTo(0.5, within(1e-9));
  }

  @Test
  void powerInHandIsNotGuessed() {
    Bite bite = Bite.ofSide(Length.mm("8"), Length.mm("4"), TEN);
    assertThat(work(null, CutterKind.END_MILL, 4, bite).powerInHand()).isNull();
    assertThat(work(machine("capped"), CutterKind.END_MILL, 4, bite).powerInHand()).isNull();
    assertThat(work(machine("weak"), CutterKind.END_MILL, 4, null).powerInHand()).isNull();
  }

  /** The chip is the feed times the cosine of the angle from the travel; sqrt(1 - 0.8 x 0.8). */
  @ParameterizedTest(name = "{0} to {1}")
  @CsvSource({
    "0.8, 1, 0.6",
    "-1, -0.8, 0.6",
    "-1, 1, 1",
    "-0.5, 0.2, 1",
    "0, 1, 1",
    "0.6, 0.8, 0.8",
  })
  void theThickestChip(double right, double left, double share) {
    assertThat(Engagement.of(right, left, Owned.Hand.RIGHT).greatestChip())
        .isCloseTo(share, within(1e-9));
  }
}
