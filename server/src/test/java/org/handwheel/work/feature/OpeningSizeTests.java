package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.PlanRun;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.OpeningSize.By;
import org.handwheel.work.outline.Outline;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Widths and lengths of slots against their tolerances, swept with the stops as dialled. */
class OpeningSizeTests {
  private static final GeometryFactory PLANE = new GeometryFactory();

  private static PlanRun run(String drawn, String line) {
    return FeatureTrial.of("60 x 40 x 20", drawn).lines("cutter SD6", line).run();
  }

  private static FeatureTable table(PlanRun run) {
    List<FeatureTable> tables = FeatureTable.all(run);
    return tables.get(tables.size() - 1);
  }

  private static List<OpeningSize> sizes(String drawn, String line) {
    PlanRun run = run(drawn, line);
    return OpeningSize.of(table(run), run.plan().shop().limits());
  }

  private static LengthRange range(String low, String high) {
    return new LengthRange(Length.mm(low), Length.mm(high));
  }

  @Test
  void oneLineIsAsWideAsTheCutterAndALittleMore() {
    List<OpeningSize> sizes =
        sizes("slot oil in top, width 6 +0.05/-0, length 30, depth 2, at (28, 15)", "slot oil");
    assertThat(sizes).hasSize(1);
    assertThat(sizes.get(0).by()).isEqualTo(By.CUTTER);
    assertThat(sizes.get(0).reached()).isEqualTo(range("6", "6.02"));
    assertThat(sizes.get(0).isWithin()).isTrue();
    assertThat(sizes.get(0).words())
        .isEqualTo(
            "6.00..6.02 mm (0.2362..0.237 in), as wide as the cutter cuts; the drawing allows"
                + " 6.00..6.05 mm (0.2362..0.2382 in)");
    assertThat(
            sizes("slot oil in top, width 6 +0/-0.03, length 30, depth 2, at (28, 15)", "slot oil")
                .get(0)
                .isWithin())
        .isFalse();
  }

  @Test
  void aCutterWithinTheLimitsNeedsNoSecondLine() {
    PlanRun run =
        run("slot oil in top, width 5.98 +0.04/-0.04, length 30, depth 2, at (28, 15)", "slot oil");
    assertThat(table(run).rows()).hasSize(2);
    assertThat(table(run).rows().get(0).y().asked()).isEqualTo(Length.mm("15"));
    // Without a tolerance beside it the same cutter is too wide.
    PlanRun bare = run("slot oil in top, width 5.98, length 30, depth 2, at (28, 15)", "slot oil");
    assertThat(table(bare).run().refusal()).isPresent();
  }

  /** A cutter at the upper limit is no gouge, though the middle is aimed at otherwise. */
  @Test
  void aCutterNearALimitTakesNothingTooMuch() {
    assertThat(
            FeatureTrial.of(
                    "60 x 40 x 20",
                    "slot oil in top, width 6 +0.03/-0.2, length 30, depth 2, at (28, 15)")
                .lines("cutter SD6", "touch top, zero z", "slot oil, pass 1")
                .check()
                .findings()
                .stream()
                .map(finding -> finding.rule())
                .filter(rule -> rule.startsWith("o")))
        .isEmpty();
  }

  @Test
  void anOpenEndHasNoLength() {
    List<OpeningSize> sizes =
        sizes(
            "slot fork in top, width 8 +-0.1, length 20 +-0.1, depth 2, at (50, 15)",
            "slot fork, pass 1");
    assertThat(sizes.stream().map(size -> size.size().word())).containsExactly("width");
  }

  @Test
  void aSlotAcrossIsCountedOnTheOtherDial() {
    List<OpeningSize> sizes =
        sizes(
            "slot oil in top, width 20 +-0.1, length 8 +0.1/-0, depth 2, at (28, 15)", "slot oil");
    assertThat(sizes.stream().map(size -> size.along() + " " + size.size().word()))
        .containsExactly("Y width", "X length");
    assertThat(sizes).allMatch(OpeningSize::isWithin);
  }

  /**
   * The opening as the dials are really set, by the simulation's own polygon: within limits wider
   * than two readable parts of a division (0.0127 mm each). Seeds are fixed.
   */
  @Test
  void openingsBetweenTwoWallsKeepTheirLimits() {
    Random random = new Random(18_980_611);
    for (int i = 0; i < 40; i++) {
      double width = 6.5 + random.nextDouble() * 8;
      double low = random.nextDouble() * 0.2 - 0.1;
      double high = low + 0.0255 + random.nextDouble() * 0.1;
      String drawn =
          String.format(
              Locale.ROOT,
              "slot oil in top, width %.3f %+.4f/%+.4f, length 30, depth 2, at (%.2f, 15.3)",
              width,
              high,
              low,
              28 + random.nextDouble());
      FeatureTable table = table(run(drawn, "slot oil, pass 1"));
      Geometry swept = swept(table);
      double reached = swept.getEnvelopeInternal().getHeight();
      // Formatting rounds a tolerance to a tenth of a micrometre.
      assertThat(reached).as(drawn).isBetween(width + low - 0.0006, width + high + 0.0006);
      OpeningSize size = OpeningSize.of(table, limits(table)).get(0);
      assertThat(size.by()).isEqualTo(By.DIALS);
      assertThat(size.reached().low().millimetres()).isEqualTo(reached, within(1e-6));
      assertThat(size.isWithin()).as(drawn).isTrue();
    }
  }

  private static org.handwheel.model.Limits limits(FeatureTable table) {
    return run("slot oil in top, width 8, length 30, depth 2, at (28, 15)", "slot oil")
        .plan()
        .shop()
        .limits();
  }

  private static Geometry swept(FeatureTable table) {
    Coordinate[] way =
        table.rows().stream()
            .map(
                row ->
                    new Coordinate(
                        row.x().reached().millimetres(), row.y().reached().millimetres()))
            .toArray(Coordinate[]::new);
    return PLANE.createLineString(way).buffer(3, 90);
  }

  @Test
  void aCircleWithATolerance() {
    PlanRun run =
        run(
            "outline boss in top, at (30, 20), circle dia 22 +0/-0.2, depth 2",
            "outline boss, pass 1");
    Outline outline = ((Result.Steps) table(run).run().result()).table().outline();
    // Aimed at the middle of its limits, 21.9; a quarter of 0.2 may stay on all round.
    assertThat(outline.polygon(180).getEnvelopeInternal().getWidth())
        .isEqualTo(21.9, within(0.001));
    assertThat(table(run).run().spec().formTolerance()).isEqualTo(Length.mm("0.05"));
    assertThat(FeatureSizes.narrowest(table(run).run().spec())).contains(Length.mm("0.1"));
    assertThat(FeatureSizes.written(table(run).run().spec()).get(0).limits().limits())
        .isEqualTo(range("21.8", "22"));
  }
}
