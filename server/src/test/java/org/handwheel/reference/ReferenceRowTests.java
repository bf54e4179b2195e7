package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.CuttingPower;
import org.handwheel.shop.cutting.Deflection;
import org.handwheel.shop.cutting.DrillingPower;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.drill.HoleRates;
import org.handwheel.shop.fit.MeasuringCapability;
import org.handwheel.shop.fit.StackUp;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.shop.stock.StockMass;
import org.handwheel.shop.thread.ScrewHoles.Clearance;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Engagement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every row of {@code reference.csv} against the program. */
class ReferenceRowTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  static List<ReferenceRow> rows() {
    return ReferenceRow.load();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rows")
  void agrees(ReferenceRow row) {
    switch (row.kind()) {
      case "deviations" -> deviations(row);
      case "instrument" ->
          assertThat(MeasuringCapability.of(length(row, 0), length(row, 1)).name())
              .as(row.toString())
              .isEqualTo(row.expected().get(0));
      case "speed share" -> speedShare(row);
      case "tap drill" ->
          assertThat(thread(row).tapDrill().words())
              .as(row.toString())
              .isEqualTo(row.expected().get(0));
      default -> {
        assertThat(row.expected()).hasSize(1);
        assertThat(value(row))
            .as(row.toString())
            .isCloseTo(Double.parseDouble(row.expected().get(0)), within(row.tolerance() + 1e-12));
      }
    }
  }

  private static double value(ReferenceRow row) {
    return switch (row.kind()) {
      case "length" -> inUnit(length(row, 0), row.input(1));
      case "rpm" ->
          row.input(0).endsWith("ft/min")
              ? SpindleSpeed.turnsPerMinuteFromFeet(row.number(0), length(row, 1))
              : SpindleSpeed.turnsPerMinute(row.number(0), length(row, 1));
      case "edge speed" -> SpindleSpeed.metresPerMinute(row.number(0), length(row, 1));
      case "table feed" -> Feed.table(length(row, 0), (int) row.number(1), row.number(2));
      case "seconds per turn" -> byHand(row).secondsPerTurn();
      case "divisions per second" -> byHand(row).divisionsPerSecond();
      case "chip factor" -> side(length(row, 0), length(row, 1)).greatestChip();
      case "engagement" -> Math.toDegrees(side(length(row, 0), length(row, 1)).angle());
      case "removal" -> CuttingPower.removalRate(length(row, 0), length(row, 1), row.number(2));
      case "cutter power" -> CuttingPower.atCutter(row.number(0), row.number(1));
      case "torque" -> CuttingPower.torque(row.number(0), row.number(1));
      case "torque inch" -> CuttingPower.torquePoundInches(row.number(0), row.number(1));
      case "force" -> CuttingPower.tangentialForce(row.number(0), row.number(1));
      case "specific force" -> new SpecificForce(row.number(0), row.number(1)).at(row.number(2));
      case "deflection" ->
          Deflection.endMill(
                  row.number(0),
                  length(row, 1),
                  length(row, 2),
                  CutterMaterial.valueOf(row.input(3)))
              .millimetres();
      case "drilling torque" ->
          DrillingPower.torque(
              new SpecificForce(row.number(0), row.number(1)),
              length(row, 2),
              length(row, 3),
              length(row, 4),
              new DrillPoint(row.number(5)));
      case "tip depth" ->
          new DrillPoint(row.number(0)).tipDepth(length(row, 1), length(row, 2)).millimetres();
      case "countersink depth" ->
          new DrillPoint(row.number(0))
              .countersinkDepth(length(row, 1), length(row, 2))
              .millimetres();
      case "title block" ->
          TitleBlocks.spread((int) row.number(0)).over(Length.inches("1")).doubleValue();
      case "worst case" -> StackUp.worstCase(lengths(row)).millimetres();
      case "root sum square" -> StackUp.rootSumSquare(lengths(row)).millimetres();
      case "mass" -> StockMass.block(length(row, 0), length(row, 1), length(row, 2), row.number(3));
      case "round mass" -> StockMass.round(length(row, 0), length(row, 1), row.number(2));
      case "pounds" -> StockMass.pounds(row.number(0));
      default -> tabled(row);
    };
  }

  private static double tabled(ReferenceRow row) {
    return switch (row.kind()) {
      case "point" -> new DrillPoint(row.number(0)).length(length(row, 1)).millimetres();
      case "drill" -> TABLES.drills().find(row.input(0)).orElseThrow().diameter().millimetres();
      case "pitch" -> thread(row).pitch().millimetres();
      case "threads per inch" -> thread(row).threadsPerInch().doubleValue();
      case "major" -> thread(row).major().millimetres();
      case "minor" -> thread(row).minorDiameter().millimetres();
      case "tap drill size" -> thread(row).tapDrill().diameter().millimetres();
      case "thread percent" -> thread(row).percentOfThread(length(row, 1));
      case "hole for percent" -> thread(row).holeFor(row.number(1)).millimetres();
      case "clearance hole" ->
          TABLES
              .screwHoles()
              .clearance(thread(row), Clearance.valueOf(row.input(1)))
              .orElseThrow()
              .diameter()
              .millimetres();
      case "counterbore" ->
          TABLES.screwHoles().counterbore(thread(row)).orElseThrow().diameter().millimetres();
      case "countersink angle" ->
          TABLES.screwHoles().countersink(thread(row)).orElseThrow().includedDegrees();
      case "standard tolerance" ->
          1000
              * TABLES
                  .fits()
                  .tolerances()
                  .tolerance((int) row.number(1), length(row, 0))
                  .orElseThrow()
                  .millimetres();
      case "general tolerance" ->
          TABLES
              .generalTolerances()
              .linear(length(row, 0), row.input(1).charAt(0))
              .orElseThrow()
              .millimetres();
      default -> throw new IllegalArgumentException("no check for " + row);
    };
  }

  /**
   * The shares of the drilling speed that we give and those that are printed have a part in common.
   */
  private static void speedShare(ReferenceRow row) {
    HoleRates.Share ours = TABLES.holeRates().share(HoleRates.Operation.valueOf(row.input(0)));
    double least = Double.parseDouble(row.expected().get(0));
    double most = Double.parseDouble(row.expected().get(row.expected().size() - 1));
    assertThat(ours.speedLeast()).as(row.toString()).isLessThanOrEqualTo(most);
    assertThat(ours.speedMost()).as(row.toString()).isGreaterThanOrEqualTo(least);
  }

  private static void deviations(ReferenceRow row) {
    assertThat(TABLES.fits().deviations(length(row, 0), row.input(1)))
        .as(row.toString())
        .contains(
            new LengthRange(
                Length.of(row.expected().get(0), LengthUnit.UM),
                Length.of(row.expected().get(1), LengthUnit.UM)));
  }

  private static HandFeed byHand(ReferenceRow row) {
    return Feed.byHand(row.number(0), length(row, 1), BigFraction.of((int) row.number(2)));
  }

  private static ScrewThread thread(ReferenceRow row) {
    return TABLES.threads().find(threadName(row.input(0))).orElseThrow();
  }

  /** The handbook's 6-32 is the table's no 6-32. */
  private static String threadName(String name) {
    return name.replaceFirst("^(UNC|UNF) (\\d+-)", "$1 no $2");
  }

  private static List<Length> lengths(ReferenceRow row) {
    return row.inputs().stream().map(ReferenceRowTests::length).toList();
  }

  private static Length length(ReferenceRow row, int index) {
    return length(row.input(index));
  }

  private static Length length(String text) {
    String[] words = text.split(" ", 2);
    LengthUnit unit = LengthUnit.valueOf(unitName(words[1]));
    String[] fraction = words[0].split("/", 2);
    return fraction.length == 2
        ? Length.of(
            BigFraction.of(Integer.parseInt(fraction[0]), Integer.parseInt(fraction[1])), unit)
        : Length.of(words[0], unit);
  }

  private static double inUnit(Length length, String unit) {
    return length.over(Length.of("1", LengthUnit.valueOf(unitName(unit)))).doubleValue();
  }

  private static String unitName(String unit) {
    return unit.equals("tenths") ? "TENTH" : unit.toUpperCase(Locale.ROOT);
  }

  /** The side of a cutter in a wall. */
  private static Engagement side(Length width, Length diameter) {
    return Engagement.ofSide(
        2 * width.millimetres() / diameter.millimetres(), CutDirection.CONVENTIONAL);
  }
}
