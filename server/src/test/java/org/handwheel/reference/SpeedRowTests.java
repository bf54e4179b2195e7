package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.drill.Drilling;
import org.handwheel.shop.drill.Reaming;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.shop.material.FeedPerTooth;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.MaterialClass;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Engagement;

/** Speeds and feeds against the rows of section S. */
class SpeedRowTests implements RowChecks {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private static final Length HALF_INCH = Length.inches("0.5");
  private static final CutterMaterial HSS = CutterMaterial.HIGH_SPEED_STEEL;
  private static final CutterMaterial CARBIDE = CutterMaterial.CARBIDE;

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new Builder()
        .row("S01", row -> row.isNear(SpindleSpeed.turnsPerMinuteFromFeet(100, HALF_INCH), 0))
        .row("S02", SpeedRowTests::approximationIsHigh)
        .row(
            "S03", row -> row.isNear(SpindleSpeed.turnsPerMinuteFromFeet(1, Length.inches("1")), 0))
        .row("S04", row -> row.isNear(SpindleSpeed.feetPerMinute(1, Length.inches("1")), 0))
        .row("S05", row -> row.isNear(SpindleSpeed.turnsPerMinute(28, Length.mm("10")), 0))
        .row("S07", row -> row.isNear(SpindleSpeed.feetPerMinute(60, Length.inches("2.5")), 0))
        .row("S08", row -> row.isNear(SpindleSpeed.feetPerMinute(400, HALF_INCH), 0))
        .row(
            "S09",
            row -> row.isNear(SpindleSpeed.feetPerMinute(240 / 1.5, Length.inches("1.5")), 0))
        .row("S10", row -> printedSpeedIsInRange(row, "steel-alloy"))
        .row("S11", row -> printedSpeedIsInRange(row, "iron-grey"))
        .row("S12", row -> printedSpeedIsInRange(row, "steel-mild"))
        .row("S14", row -> printedSpeedIsInRange(row, "brass-naval"))
        .row("S15", row -> printedSpeedIsInRange(row, "copper"))
        .row("S16", row -> printedSpeedIsInRange(row, "aluminium-6082"))
        .row("S17", SpeedRowTests::carbideSpeeds)
        .row("S18", row -> row.isNear(Feed.table(Length.mm("0.05"), 2, 891.27), 0))
        .row("S19", row -> row.isNear(Feed.table(Length.inches("0.004"), 32, 88) / 25.4, 0))
        .row("S21", SpeedRowTests::handoutRangesOverlap)
        .row("S22", SpeedRowTests::carbideIsTwice)
        .row("S23", SpeedRowTests::smallMachineCutsLighter)
        .row("S24", SpeedRowTests::faceMillFeeds)
        .row("S25", SpeedRowTests::endMillFeeds)
        .row("S26", SpeedRowTests::roughingSpeedsAreInRange)
        .row("S28", SpeedRowTests::freeMachiningStainless)
        .row("S29", SpeedRowTests::drillingSpeeds)
        .row("S30", SpeedRowTests::drillFeeds)
        .row("S31", SpeedRowTests::deepHoles)
        .row("S32", row -> row.isNear(Reaming.speedFactor(), 0, 1e-9))
        .row("S33", SpeedRowTests::basisIsFullSlot)
        .row("S35", SpeedRowTests::carbideConsensus)
        .row("S36", SpeedRowTests::nextLowerStep)
        .row("S37", SpeedRowTests::leastFeed)
        .build();
  }

  private static Material material(String name) {
    return TABLES.materials().find(name).orElseThrow();
  }

  private static void approximationIsHigh(CheckRow row) {
    double exact = SpindleSpeed.turnsPerMinuteFromFeet(100, HALF_INCH);
    assertThat(4 * 100 / 0.5).isEqualTo(row.number(0));
    assertThat((4 * 100 / 0.5 / exact - 1) * 100).isCloseTo(row.number(1), within(0.005));
  }

  /** A printed single value must lie in our range: ours is a range for small machines. */
  private static void printedSpeedIsInRange(CheckRow row, String material) {
    assertContains(row, material, HSS, row.number(0));
    assertThat(row.number(0) / SpindleSpeed.METRES_PER_FOOT)
        .as("both units as printed")
        .isCloseTo(row.number(1), within(0.5));
  }

  private static void assertContains(
      CheckRow row, String material, CutterMaterial cutter, double metresPerMinute) {
    assertThat(material(material).speeds().with(cutter).contains(metresPerMinute))
        .as("%s: %s m/min in %s", row, metresPerMinute, material(material).speeds())
        .isTrue();
  }

  private static void carbideSpeeds(CheckRow row) {
    assertContains(row, "steel-mild", CARBIDE, after(row, "mild steel"));
    assertContains(row, "steel-medium-carbon", CARBIDE, after(row, "C steel"));
    assertContains(row, "stainless-304", CARBIDE, after(row, "stainless"));
    assertContains(row, "iron-grey", CARBIDE, after(row, "grey iron"));
    assertContains(row, "aluminium-6082", CARBIDE, after(row, "aluminium alloy"));
  }

  private static double after(CheckRow row, String words) {
    return row.numbersAfter(words).get(0).doubleValue();
  }

  private static void assertOverlap(
      CheckRow row, String words, String material, CutterMaterial cutter) {
    List<BigDecimal> printed = row.numbersAfter(words);
    double low = printed.get(0).doubleValue() * 0.3048;
    double high = printed.get(1).doubleValue() * 0.3048;
    SpeedRange ours = material(material).speeds().with(cutter);
    assertThat(ours.low() <= high && low <= ours.high())
        .as("%s: %s..%s m/min and %s %s", row, low, high, material, ours)
        .isTrue();
  }

  private static void handoutRangesOverlap(CheckRow row) {
    assertOverlap(row, "aluminium", "aluminium-6082", HSS);
    assertOverlap(row, "brass/bronze", "brass-free-cutting", HSS);
    assertOverlap(row, "brass/bronze", "gunmetal-LG2", HSS);
    assertOverlap(row, "copper", "copper", HSS);
    assertOverlap(row, "soft cast iron", "iron-grey", HSS);
    assertOverlap(row, "mild steel", "steel-mild", HSS);
    assertOverlap(row, "alloy", "steel-alloy", HSS);
    assertOverlap(row, "tool steel", "steel-tool-annealed", HSS);
    assertOverlap(row, "stainless", "stainless-304", HSS);
    assertOverlap(row, "titanium", "titanium-6al4v", HSS);
  }

  private static void carbideIsTwice(CheckRow row) {
    for (Material material : TABLES.materials().all()) {
      double times =
          material.speeds().carbide().middle() / material.speeds().highSpeedSteel().middle();
      assertThat(times).as("%s: %s", row, material.name()).isGreaterThanOrEqualTo(row.number(0));
    }
  }

  private static void smallMachineCutsLighter(CheckRow row) {
    assertLighter(row, "aluminium", MaterialClass.ALUMINIUM);
    assertLighter(row, "plain steel", MaterialClass.STEEL);
    assertLighter(row, "stainless", MaterialClass.STAINLESS);
    assertLighter(row, "brass", MaterialClass.COPPER_ALLOY);
  }

  private static void assertLighter(CheckRow row, String words, MaterialClass kind) {
    Length printed = Length.inches(row.numbersAfter(words).get(0).toPlainString());
    assertThat(TABLES.passes().of(kind).rough().high())
        .as("%s: %s", row, kind)
        .isLessThanOrEqualTo(printed);
  }

  private static void faceMillFeeds(CheckRow row) {
    assertFaceFeed(row, "aluminium", "aluminium-6082");
    assertFaceFeed(row, "brass and bronze", "brass-free-cutting");
    assertFaceFeed(row, "brass and bronze", "gunmetal-LG2");
    assertFaceFeed(row, "soft iron", "iron-grey");
  }

  private static void assertFaceFeed(CheckRow row, String words, String material) {
    List<BigDecimal> printed = row.numbersAfter(words);
    LengthRange range = inches(printed.get(0), printed.get(1));
    assertThat(range.contains(material(material).feed().faceMill()))
        .as("%s: %s in %s", row, material(material).feed().faceMill(), range)
        .isTrue();
  }

  private static LengthRange inches(BigDecimal low, BigDecimal high) {
    return new LengthRange(Length.inches(low.toPlainString()), Length.inches(high.toPlainString()));
  }

  private static void endMillFeeds(CheckRow row) {
    assertEndMillFeed(row, "aluminium", "aluminium-6082");
    assertEndMillFeed(row, "soft cast iron", "iron-grey");
    assertEndMillFeed(row, "low-carbon steel", "steel-mild");
    assertEndMillFeed(row, "stainless", "stainless-304");
  }

  /** The row asks for 50 per cent: its columns were aligned by inference. */
  private static void assertEndMillFeed(CheckRow row, String words, String material) {
    int skip = words.equals("stainless") ? 1 : 0; // the 304 of its name
    List<BigDecimal> printed = row.numbersAfter(words);
    FeedPerTooth feed = material(material).feed();
    assertWithinHalf(row, feed.endMill(Length.inches("0.25")), printed.get(skip));
    assertWithinHalf(row, feed.endMill(Length.inches("1")), printed.get(skip + 1));
  }

  private static void assertWithinHalf(CheckRow row, Length feed, BigDecimal inches) {
    double printed = inches.doubleValue() * 25.4;
    assertThat(feed.millimetres()).as(row.toString()).isCloseTo(printed, within(printed * 0.5));
  }

  private static void roughingSpeedsAreInRange(CheckRow row) {
    assertContains(row, "steel-mild", HSS, after(row, "low-carbon steel") * 0.3048);
    assertContains(row, "iron-grey", HSS, after(row, "soft cast iron") * 0.3048);
    assertContains(
        row, "stainless-304", HSS, row.numbersAfter("304").get(0).doubleValue() * 0.3048);
  }

  private static void freeMachiningStainless(CheckRow row) {
    assertOverlap(row, "rough", "stainless-303", HSS);
    assertOverlap(row, "finish", "stainless-303", HSS);
    assertOverlap(row, "carbide", "stainless-303", CARBIDE);
    for (CutterMaterial cutter : CutterMaterial.values()) {
      SpeedRange free = material("stainless-303").speeds().with(cutter);
      SpeedRange plain = material("stainless-304").speeds().with(cutter);
      assertThat(free.low()).isGreaterThanOrEqualTo(plain.low());
      assertThat(free.high()).isGreaterThanOrEqualTo(plain.high());
    }
  }

  /** Drilling speeds are near milling speeds; the tables keep one range. */
  /** Ours, rounded to whole metres a minute, lie in the printed ranges. */
  private static void drillingSpeeds(CheckRow row) {
    assertDrilled(row, "aluminium", "aluminium-6082");
    assertDrilled(row, "brass and bronze", "brass-free-cutting");
    assertDrilled(row, "high-tensile bronze", "bronze-phosphor");
    assertDrilled(row, "medium iron", "iron-grey");
    assertDrilled(row, "mild steel", "steel-mild");
    assertDrilled(row, "C", "steel-medium-carbon");
    assertDrilled(row, "tool steel", "steel-tool-annealed");
    assertDrilled(row, "stainless", "stainless-304");
  }

  private static void assertDrilled(CheckRow row, String words, String material) {
    List<BigDecimal> printed = row.numbersAfter(words);
    SpeedRange ours = material(material).drilling().speeds();
    double least = printed.get(0).abs().doubleValue() * SpindleSpeed.METRES_PER_FOOT;
    double most = printed.get(1).abs().doubleValue() * SpindleSpeed.METRES_PER_FOOT;
    assertThat(ours.low()).as("%s: %s", row, material).isGreaterThan(least - 1.5);
    assertThat(ours.high()).as("%s: %s", row, material).isLessThan(most + 1.5);
  }

  private static void drillFeeds(CheckRow row) {
    assertDrillFeed(row, "<1/8:", BigFraction.of(1, 10));
    assertDrillFeed(row, "1/8-1/4:", BigFraction.of(1, 4));
    assertDrillFeed(row, "1/4-1/2:", BigFraction.of(3, 8));
    assertDrillFeed(row, "1/2-5/8:", BigFraction.of(5, 8));
  }

  private static void assertDrillFeed(CheckRow row, String words, BigFraction diameter) {
    List<BigDecimal> printed = row.numbersAfter(words);
    Length drill = Length.of(diameter, LengthUnit.IN);
    assertThat(TABLES.drilling().feedPerTurn(drill).orElseThrow().perTurn())
        .as(row.toString())
        .isEqualTo(inches(printed.get(0), printed.get(1)));
  }

  private static void deepHoles(CheckRow row) {
    Length drill = Length.mm("6");
    List<BigDecimal> speed = row.numbersAfter("speed");
    List<BigDecimal> feed = row.numbersAfter("feed");
    double[] speedLess = {
      speed.get(0).doubleValue(),
      speed.get(1).doubleValue(),
      speed.get(2).doubleValue(),
      // the row gives 35 to 40 here: the cautious end
      -speed.get(4).doubleValue()
    };
    for (int i = 0; i < 4; i++) {
      Length depth = drill.times(i + 3);
      assertThat((Drilling.deepHoleSpeedFactor(depth, drill) - 1) * 100)
          .as(row + " at " + (i + 3))
          .isCloseTo(speedLess[i], within(1e-9));
      assertThat((Drilling.deepHoleFeedFactor(depth, drill) - 1) * 100)
          .isCloseTo(feed.get(i).doubleValue(), within(1e-9));
    }
    assertThat(Drilling.deepHoleSpeedFactor(drill.times(2), drill)).isEqualTo(1);
  }

  /** The basis of printed tables, a full slot, is where no chip thinning is allowed for. */
  private static void basisIsFullSlot(CheckRow row) {
    Length diameter = Length.inches(row.numbersAfter("helix,").get(0).toPlainString());
    Length width = Length.inches(row.numbersAfter("axial,").get(0).toPlainString());
    assertThat(Math.toDegrees(side(width, diameter).angle())).isCloseTo(180, within(1e-9));
    assertThat(side(width, diameter).greatestChip()).isEqualTo(1);
  }

  private static void carbideConsensus(CheckRow row) {
    assertOverlap(row, "low carbon", "steel-mild", CARBIDE);
    assertOverlap(row, "304", "stainless-304", CARBIDE);
    assertOverlap(row, "grey iron", "iron-grey", CARBIDE);
    assertOverlap(row, "aluminium", "aluminium-6082", CARBIDE);
    assertOverlap(row, "titanium", "titanium-6al4v", CARBIDE);
  }

  private static void nextLowerStep(CheckRow row) {
    List<Double> steps = List.of(100.0, 250.0, 500.0, 1000.0, 2000.0);
    assertThat(SpindleSpeed.choose(steps, 1528).turnsPerMinute()).isEqualTo(row.number(0));
    assertThat(SpindleSpeed.choose(steps, 9000).turnsPerMinute()).isEqualTo(2000);
    assertThat(SpindleSpeed.choose(steps, 40).isTooFast()).isTrue();
  }

  private static void leastFeed(CheckRow row) {
    assertThat(row.formula()).contains("0.0005 in");
    assertThat(FeedPerTooth.LEAST).isEqualTo(Length.inches("0.0005"));
    for (Material material : TABLES.materials().all()) {
      assertThat(material.feed().endMill(Length.mm("1")))
          .as(material.name())
          .isGreaterThanOrEqualTo(FeedPerTooth.LEAST);
    }
  }

  /** The side of a cutter in a wall. */
  private static Engagement side(Length width, Length diameter) {
    return Engagement.ofSide(
        2 * width.millimetres() / diameter.millimetres(), CutDirection.CONVENTIONAL);
  }
}
