package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.stock.BarCutting;
import org.handwheel.shop.stock.StockMass;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/** Density, mass and sawing against the rows of sections W and K. */
class StockRowTests implements RowChecks {
  private static final StandardTables TABLES = StandardTables.builtIn();

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new Builder()
        .row("W01", row -> row.isNear(density("steel-mild"), 0))
        .row("W03", StockRowTests::aluminium)
        .row("W04", row -> between(row, "brass-free-cutting", "brass-naval"))
        .row("W05", row -> between(row, "bronze-phosphor", "gunmetal-LG2", "gunmetal-LG4"))
        .row("W06", row -> between(row, "iron-grey"))
        .row("W07", row -> between(row, "copper"))
        .row("W08", row -> row.isNear(density("titanium-grade-2"), 0))
        .row("W10", StockRowTests::plastics)
        .row("W11", StockRowTests::freeCuttingBrass)
        .row(
            "W12",
            row ->
                row.isNear(
                    StockMass.block(
                        Length.mm("100"), Length.mm("50"), Length.mm("25"), density("steel-mild")),
                    0))
        .row(
            "W13",
            row ->
                row.isNear(
                    StockMass.pounds(
                        StockMass.block(
                            Length.inches("4"),
                            Length.inches("2"),
                            Length.inches("1"),
                            density("steel-mild"))),
                    0))
        .row("K01", row -> kerf(row, "band", 2))
        .row("K02", row -> kerf(row, "hand", 2))
        .row("K04", row -> kerf(row, "cold", 0))
        .row("K05", row -> kerf(row, "abrasive", 0))
        .row("K06", StockRowTests::pieces)
        .row(
            "K07",
            row ->
                assertThat(
                        BarCutting.pieces(
                            Length.inches("36"), Length.inches("2.0625"), Length.inches("0.045")))
                    .isEqualTo((long) row.number(0)))
        .build();
  }

  private static double density(String material) {
    return TABLES.materials().find(material).orElseThrow().density();
  }

  private static void aluminium(CheckRow row) {
    row.isNear(density("aluminium-2014"), 0);
    row.isNear(density("aluminium-7075"), 0);
  }

  private static void between(CheckRow row, String... materials) {
    for (String material : materials) {
      assertThat(density(material))
          .as("%s: %s", row, material)
          .isBetween(row.number(0), row.number(1));
    }
  }

  private static void plastics(CheckRow row) {
    row.isNear(density("acetal"), 0);
    row.isNear(density("nylon"), 1);
  }

  private static void freeCuttingBrass(CheckRow row) {
    row.isNear(density("brass-C360"), 0);
    row.isNear(StockMass.pounds(density("brass-C360") * Math.pow(0.0254, 3)), 2, 0.0005);
  }

  private static void kerf(CheckRow row, String saw, int first) {
    assertThat(TABLES.saws().find(saw).orElseThrow().kerf())
        .as(row.toString())
        .isEqualTo(
            new LengthRange(
                Length.mm(row.numbers().get(first).toPlainString()),
                Length.mm(row.numbers().get(first + 1).toPlainString())));
  }

  private static void pieces(CheckRow row) {
    Length bar = Length.mm("1000");
    Length piece = Length.mm("52");
    Length kerf = Length.mm("1.2");
    assertThat(BarCutting.pieces(bar, piece, kerf)).isEqualTo((long) row.number(0));
    assertThat(BarCutting.leftWithOneCutLess(bar, piece, kerf))
        .isEqualTo(Length.mm(row.numbers().get(1).toPlainString()));
    assertThat(BarCutting.leftWhenLastIsCut(bar, piece, kerf))
        .isEqualTo(Length.mm(row.numbers().get(3).toPlainString()));
  }
}
