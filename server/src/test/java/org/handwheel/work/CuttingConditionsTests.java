package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.handwheel.model.Axis;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.Shop;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.reference.CheckRow;
import org.handwheel.reference.CheckTable;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.CuttingConditions.Asked;
import org.handwheel.work.CuttingConditions.Bite;
import org.handwheel.work.CuttingConditions.FeedFrom;
import org.handwheel.work.CuttingConditions.Load;
import org.handwheel.work.CuttingConditions.SpeedFrom;
import org.handwheel.work.CuttingConditions.Tool;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Speed, feed and load of a cut against the rows of the check values that hold for a whole cut;
 * each row names its source and how it is known.
 */
class CuttingConditionsTests {
  private static final Map<String, CheckRow> ROWS = CheckTable.load();
  private static final CuttingCalculator CALCULATOR = new CuttingCalculator(Limits.DEFAULTS);
  private static final Length TEN = Length.mm("10");

  /** A shop whose material has just the values of the rows. */
  private static final Shop SHOP =
      ShopFiles.build(
              SyntaxTree.parse(
                  "s.shop",
                  """
                  language 1
                  shop "Rows"
                    units mm
                  own material row-s05
                    speed-hss: 28 m/min
                    feed-per-tooth: 0.05 mm/tooth
                  own material row-s01
                    speed-hss: 100 ft/min
                  own material row-m12
                    speed-hss: 100 ft/min
                    force: 2020
                    force-exponent: 0.000001
                  own material liner
                    like: gunmetal-LG2
                    speed-hss: 20, 30 m/min
                    force: 900
                  own machine steps
                    speeds: 100, 250, 500, 1000, 2000 rpm
                    power: 0.5 kW
                    lead-x: 2.5
                    divisions-x: 62.5
                  own machine stepless
                    top-speed: 1200 rpm
                  own machine coarse
                    speeds: 800, 1200 rpm
                  """))
          .shop();

  private static CheckRow row(String id) {
    CheckRow row = ROWS.get(id);
    assertThat(row).as("row %s", id).isNotNull();
    return row;
  }

  private static @Nullable KnownMaterial material(String name) {
    return KnownMaterial.find(name, SHOP, StandardTables.builtIn()).orElse(null);
  }

  private static Owned.Machine machine(String name) {
    return SHOP.find(Owned.Machine.class, name).orElseThrow();
  }

  private static Tool endMill(Length dia, int teeth, @Nullable Length stickOut) {
    return new Tool(CutterKind.END_MILL, dia, teeth, ToolMaterial.HSS, stickOut);
  }

  private static CuttingConditions work(
      String material, Owned.@Nullable Machine machine, Tool tool, @Nullable Bite bite) {
    return CALCULATOR.work(new Asked(material(material), machine, tool, bite, Axis.X, null, null));
  }

  @Test
  void spindleSpeedInBothUnits() {
    CuttingConditions inch = work("row-s01", null, endMill(Length.inches("0.5"), 4, null), null);
    row("S01").isNear(inch.spindle().turnsPerMinute(), 0);
    CuttingConditions metric = work("row-s05", null, endMill(TEN, 2, null), null);
    row("S05").isNear(metric.spindle().turnsPerMinute(), 0);
    assertThat(metric.spindle().from()).isEqualTo(SpeedFrom.WANTED);
    assertThat(metric.spindle().metresPerMinute()).isCloseTo(28, within(1e-9));
  }

  @Test
  void tableFeed() {
    CuttingConditions conditions = work("row-s05", null, endMill(TEN, 2, null), null);
    row("S18").isNear(conditions.table().millimetresPerMinute(), 0);
  }

  /** S36: the next lower step. 48 m/min over 10 mm is 1528 rpm. */
  @Test
  void machineHasSteps() {
    row("S36")
        .isNear(CuttingCalculator.fitting(machine("steps"), 1528, TEN).turnsPerMinute(), 0, 1e-9);
    assertThat(CuttingCalculator.fitting(machine("steps"), 60, TEN).from())
        .isEqualTo(SpeedFrom.SLOWEST_STEP);
    assertThat(CuttingCalculator.fitting(machine("stepless"), 1528, TEN))
        .satisfies(held -> assertThat(held.turnsPerMinute()).isEqualTo(1200))
        .satisfies(held -> assertThat(held.from()).isEqualTo(SpeedFrom.TOP_SPEED));
    assertThat(CuttingCalculator.fitting(null, 1528, TEN).turnsPerMinute()).isEqualTo(1528);
  }

  /** S37: about 0.013 mm a tooth is the floor. */
  @Test
  void proposedFeedKeepsTheChipFromRubbing() {
    Bite narrow = Bite.ofSide(Length.mm("10"), Length.mm("0.4"), Length.mm("16"));
    CuttingConditions conditions =
        work("titanium-6al4v", null, endMill(Length.mm("16"), 4, null), narrow);
    assertThat(conditions.feed().chip().greatest().millimetres())
        .isGreaterThanOrEqualTo(0.0127 - 1e-9);
    Bite small = Bite.ofSide(Length.mm("3"), Length.mm("0.1"), Length.mm("3"));
    CuttingConditions raised = work("steel-mild", null, endMill(Length.mm("3"), 2, null), small);
    assertThat(raised.feed().from()).isEqualTo(FeedFrom.RAISED);
    assertThat(row("S37").formula()).contains("(0.013 mm)");
    assertThat(raised.feed().chip().greatest().millimetres()).isCloseTo(0.013, within(0.0005));
  }

  /**
   * The chip of a cut with the side is that of the textbook's formula (rows M01 to M03,
   * Fundamentals of Machining Processes 6.3.1.4), checked on its own in the tests of the tables.
   */
  @ParameterizedTest
  @CsvSource({"M01, 0.10", "M02, 0.05", "M03, 0.25"})
  void chipOfASideCut(String id, double share) {
    Length width = Length.ofMillimetres(10 * share);
    Bite bite = Bite.ofSide(TEN, width, TEN);
    row(id).isNear(bite.engagement().greatestChip(), 0, 1e-6);
  }

  /** Geometry: a strip under the middle of the cutter meets teeth that cut their whole feed. */
  @Test
  void chipOfAFacingCut() {
    Bite bite = Bite.ofStrip(Length.mm("0.5"), Length.mm("20"), Length.mm("40"));
    assertThat(bite.engagement().greatestChip()).isEqualTo(1);
    // u from -1/2 to 1/2: the angle is 60 degrees, the mean of cos is 1/(pi/3).
    assertThat(bite.engagement().meanChip()).isCloseTo(3 / Math.PI, within(1e-12));
    assertThat(bite.width(Length.mm("40"))).isEqualTo(Length.mm("20"));
  }

  /**
   * M12: Kp 0.74 is 2020 N/mm2 (M11), 0.40 in3/min, efficiency 0.8: 0.37 hp at the motor. The bite
   * is 0.5 in by 0.1 in at 8 in/min (M05d).
   */
  @Test
  void powerAtTheMotor() {
    Length dia = Length.inches("0.5");
    Tool tool = endMill(dia, 4, null);
    Bite bite = Bite.ofSide(Length.inches("0.5"), Length.inches("0.1"), dia);
    double rpm = 500;
    Length feed = Length.ofMillimetres(8 * 25.4 / 4 / rpm);
    Shop shop =
        ShopFiles.build(
                SyntaxTree.parse(
                    "t.shop",
                    "language 1\nshop \"T\"\n  units mm\nown limits m\nefficiency: 0.8\n"))
            .shop();
    Load load =
        new CuttingCalculator(shop.limits())
            .work(new Asked(material("row-m12"), null, tool, bite, Axis.X, rpm, feed))
            .load();
    row("M05d").isNear(load.cubicCentimetresPerMinute() / 16.387064, 0, 1e-6);
    // 0.74 hp min/in3 is 2020.6 N/mm2; 2020 is what row M11 prints: 3 parts in 10 000 less.
    row("M12").isNear(load.motorKilowatts() / 0.7456998715822702, 0, 2e-4);
  }

  /** M19 and M20: 0.5 kW and 0.5 hp at 900 rpm. */
  @Test
  void torqueAndForceFollowFromThePower() {
    Load load = someLoad(Length.mm("30"), 900);
    double share = load.torque() / load.cutterKilowatts();
    row("M19").isNear(share * 0.5, 0);
    row("M20").isNear(share * 0.5 * 0.7456998715822702 / 0.1129848290276167, 0);
    // Force is power over the speed of the edge: 900 turns of 10 mm, elementary mathematics.
    double metresPerSecond = Math.PI * 0.010 * 900 / 60;
    assertThat(load.tangentialForce())
        .isCloseTo(load.cutterKilowatts() * 1000 / metresPerSecond, within(1e-9));
    assertThat(load.cuttingForce()).isGreaterThanOrEqualTo(load.tangentialForce());
    // The motor's 0.5 kW less a quarter.
    assertThat(load.greatestTorque()).isCloseTo(0.75 * 5.3052, within(1e-3));
  }

  private static Load someLoad(Length stickOut, double rpm) {
    Bite bite = Bite.ofSide(Length.mm("10"), Length.mm("1"), TEN);
    return CALCULATOR
        .work(
            new Asked(
                material("steel-mild"),
                machine("steps"),
                endMill(TEN, 4, stickOut),
                bite,
                Axis.X,
                rpm,
                Length.mm("0.05")))
        .load();
  }

  /** M22: 200 N bend 10 mm of high-speed steel 30 mm long by 0.042631 mm; M24: with the cube. */
  @Test
  void bending() {
    Load shorter = someLoad(Length.mm("30"), 900);
    double each = shorter.deflection().millimetres() / shorter.cuttingForce();
    row("M22").isNear(each * 200, 0, 1e-6);
    Load longer = someLoad(Length.mm("60"), 900);
    row("M24")
        .isNear(longer.deflection().millimetres() / shorter.deflection().millimetres(), 0, 1e-5);
  }

  /** M23 and M25 for the bending of another stuff and another diameter. */
  @Test
  void bendingOfCarbideAndOfThinnerCutters() {
    Load steel = someLoad(Length.mm("30"), 900);
    Bite bite = Bite.ofSide(Length.mm("10"), Length.mm("1"), TEN);
    Tool carbide = new Tool(CutterKind.END_MILL, TEN, 4, ToolMaterial.CARBIDE, Length.mm("30"));
    Load hard =
        CALCULATOR
            .work(
                new Asked(
                    material("steel-mild"), null, carbide, bite, Axis.X, 900d, Length.mm("0.05")))
            .load();
    assertThat(hard.cuttingForce()).isEqualTo(steel.cuttingForce());
    row("M23").isNear(hard.deflection().millimetres() / hard.cuttingForce() * 200, 0, 1e-6);
    Bite same = Bite.ofSide(Length.mm("10"), Length.mm("1"), Length.mm("8"));
    Load thin =
        CALCULATOR
            .work(
                new Asked(
                    material("steel-mild"),
                    null,
                    endMill(Length.mm("8"), 4, Length.mm("30")),
                    same,
                    Axis.X,
                    900d,
                    Length.mm("0.05")))
            .load();
    double ratio =
        thin.deflection().millimetres()
            / thin.cuttingForce()
            / (steel.deflection().millimetres() / steel.cuttingForce());
    row("M25").isNear(ratio, 0, 1e-4);
  }

  /**
   * By independent arithmetic: 0.05 mm, 2 teeth, 500 rpm are 50 mm a minute; with 2.5 mm a turn
   * that is 20 turns a minute, 3 s each, and 62.5 divisions in 3 s are 20.83 a second.
   */
  @Test
  void handFeed() {
    CuttingConditions conditions =
        CALCULATOR.work(
            new Asked(
                material("row-s05"),
                machine("steps"),
                endMill(TEN, 2, null),
                null,
                Axis.X,
                500d,
                null));
    assertThat(conditions.table().millimetresPerMinute()).isCloseTo(50, within(1e-9));
    assertThat(conditions.table().hand().secondsPerTurn()).isCloseTo(3, within(1e-9));
    assertThat(conditions.table().hand().divisionsPerSecond()).isCloseTo(62.5 / 3, within(1e-9));
  }

  /**
   * A handle is wound at most once in 0.7 s (common practice, no source): with 2.5 mm a turn 214 mm
   * a minute, whatever is usual for a tooth.
   */
  @Test
  void noFasterThanAHandWinds() {
    Tool faceMill = new Tool(CutterKind.FACE_MILL, Length.mm("40"), 4, ToolMaterial.CARBIDE, null);
    CuttingConditions conditions = work("aluminium-6082", machine("steps"), faceMill, null);
    assertThat(conditions.feed().from()).isEqualTo(FeedFrom.BY_HAND);
    assertThat(conditions.table().millimetresPerMinute()).isCloseTo(60 * 2.5 / 0.7, within(0.01));
    assertThat(conditions.table().hand().isTooFastToCrank()).isFalse();
  }

  @Test
  void sayWhatCanBeSaid() {
    Bite bite = Bite.ofSide(TEN, Length.mm("1"), TEN);
    CuttingConditions nothing =
        CALCULATOR.work(
            new Asked(null, machine("steps"), endMill(TEN, 4, null), bite, Axis.X, null, null));
    assertThat(nothing.spindle()).isNull();
    assertThat(nothing.feed()).isNull();
    assertThat(nothing.load()).isNull();
    CuttingConditions stated =
        CALCULATOR.work(
            new Asked(
                null,
                machine("steps"),
                endMill(TEN, 4, null),
                bite,
                Axis.X,
                500d,
                Length.mm("0.05")));
    assertThat(stated.spindle().metresPerMinute()).isCloseTo(15.708, within(0.001));
    assertThat(stated.table().millimetresPerMinute()).isCloseTo(100, within(1e-9));
    assertThat(stated.load()).isNull();
    CuttingConditions noMachine = work("steel-mild", null, endMill(TEN, 4, null), bite);
    assertThat(noMachine.table().hand()).isNull();
    assertThat(noMachine.load().greatestTorque()).isNull();
    assertThat(noMachine.powerInHand()).isNull();
    CuttingConditions noForce = work("row-s05", null, endMill(TEN, 4, null), bite);
    assertThat(noForce.feed().chip()).isNotNull();
    assertThat(noForce.load()).isNull();
  }

  @Test
  void theShopsOwnMaterialComesFirst() {
    KnownMaterial liner = material("Liner");
    KnownMaterial gunmetal = material("gunmetal-LG2");
    assertThat(liner.speeds(ToolMaterial.HSS).orElseThrow().middle()).isEqualTo(25);
    assertThat(liner.speeds(ToolMaterial.CARBIDE)).isEqualTo(gunmetal.speeds(ToolMaterial.CARBIDE));
    assertThat(liner.force().orElseThrow().kc11()).isEqualTo(900);
    assertThat(liner.force().orElseThrow().mc()).isEqualTo(gunmetal.force().orElseThrow().mc());
    assertThat(liner.density()).isEqualTo(gunmetal.density());
    assertThat(liner.speedSource(ToolMaterial.HSS)).isEqualTo("the shop file");
    assertThat(liner.speedSource(ToolMaterial.CARBIDE)).contains("common practice");
    // 100 ft/min is 30.48 m/min exactly (NIST SP 811).
    assertThat(material("row-s01").speeds(ToolMaterial.HSS).orElseThrow().low())
        .isCloseTo(30.48, within(1e-12));
    assertThat(material("cheese")).isNull();
  }

  @Test
  void aPlansCutsHaveTheirConditions() {
    PlanRun run =
        Worked.block()
            .setup(
                "one",
                """
                hold in V80, up top, fixed back, on pair P6x10
                cutter EM16, speed 500 rpm, feed 0.05 mm/tooth
                rough right to 58.5, one pass
                rough right to 57.5, one pass, speed 400 rpm, feed 0.1 mm/tooth
                """)
            .run();
    List<CuttingConditions> found =
        run.knownSteps().flatMap(step -> CuttingCalculator.of(run, step).stream()).toList();
    assertThat(found).hasSize(2);
    assertThat(found.get(0).spindle().turnsPerMinute()).isEqualTo(500);
    assertThat(found.get(0).feed().perTooth()).isEqualTo(Length.mm("0.05"));
    assertThat(found.get(1).spindle().turnsPerMinute()).isEqualTo(400);
    assertThat(found.get(1).feed().perTooth()).isEqualTo(Length.mm("0.1"));
    // The flutes are 32 mm long and the shop says no reach: 5 mm more.
    assertThat(found.get(0).asked().tool().stickOut()).isEqualTo(Length.mm("37"));
    assertThat(found.get(1).load().deflection()).isNotNull();
    // The cutter goes along the wall, so the y handle is the one that is wound.
    assertThat(found.get(1).asked().travel()).isEqualTo(Axis.Y);
    assertThat(found.get(1).table().hand().divisionsPerSecond())
        .isCloseTo(160 / 60.0 / 2.54 * 100, within(1e-6));
  }
}
