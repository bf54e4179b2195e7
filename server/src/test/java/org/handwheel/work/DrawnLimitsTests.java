package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.model.PartDimension;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.DrawnLimits.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What sizes without a tolerance may be, on the drawing of a valve chest. */
class DrawnLimitsTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  private static Checked check(String units, String part) {
    String text = "language 1\nplan \"Valve chest\"\n  units " + units + "\npart\n" + part;
    return new Checker(TABLES).check(Workspace.of(SyntaxTree.parse("t.plan", text)), "t.plan");
  }

  private static Drawing.Demand length(String units, String general, String size) {
    Checked checked = check(units, "  " + general + "\n  length " + size + "\n");
    assertThat(checked.run()).isNotNull();
    Drawing.Demand demand = checked.run().drawing().demand(PartDimension.LENGTH);
    assertThat(demand).isNotNull();
    return demand;
  }

  private static final String BLOCK = "tolerance 1/64 +-1/64, 0 +-0.06, 0.00 +-0.01, 0.000 +-0.005";

  @ParameterizedTest
  @CsvSource({
    "2, 0.06",
    "2.00, 0.01",
    "2.000, 0.005",
    "2.000 in, 0.005",
    "1-3/8, 0.015625",
    "5/8, 0.015625"
  })
  void aTitleBlockGoesByThePlacesWritten(String size, String spread) {
    Drawing.Demand demand = length("in", BLOCK, size);
    assertThat(demand.source()).isEqualTo(Source.PLACES);
    assertThat(demand.limits().spread()).isEqualTo(Length.inches(spread));
    assertThat(demand.aim()).isEqualTo(demand.nominal());
  }

  /** One place is not in the block; sums and another unit have no places of the drawing's. */
  @ParameterizedTest
  @CsvSource({"2.0", "(1.50 + 0.50)", "50.80 mm", "2000.00 thou"})
  void whatTheBlockDoesNotNameTakesTheShopsLimit(String size) {
    Drawing.Demand demand = length("in", BLOCK, size);
    assertThat(demand.source()).isEqualTo(Source.SHOP);
    assertThat(demand.limits().spread()).isEqualTo(Length.mm("0.1"));
  }

  @Test
  void aToleranceOfItsOwnGoesFirst() {
    Drawing.Demand demand = length("in", BLOCK, "2.00 +-0.002");
    assertThat(demand.source()).isEqualTo(Source.OWN);
    assertThat(demand.limits().spread()).isEqualTo(Length.inches("0.002"));
  }

  /** One unit on the last holds for all of the list. */
  @Test
  void aBlockMayNameItsUnit() {
    Drawing.Demand demand = length("mm", "tolerance 0.0 +-10, 0.00 +-4 thou", "48.0");
    assertThat(demand.limits().spread()).isEqualTo(Length.inches("0.010"));
  }

  /** ISO 2768-1 Table 1, over 30 to 120 mm. */
  @ParameterizedTest
  @CsvSource({"f, 0.15", "m, 0.3", "c, 0.8", "v, 1.5"})
  void theStandardGoesByTheSize(String grade, String spread) {
    Drawing.Demand demand = length("mm", "tolerance ISO 2768 " + grade, "48.00");
    assertThat(demand.source()).isEqualTo(Source.STANDARD);
    assertThat(demand.limits()).isEqualTo(LengthRange.around(Length.mm("48"), Length.mm(spread)));
  }

  @Test
  void aBoreTakesItToo() {
    Checked checked =
        check(
            "mm",
            """
              tolerance 0.0 +-0.2, 0.00 +-0.05
              length 60
              width 40
              height 20
              hole a in top, dia 8.0, at (10, 10), through
              hole b in top, dia 8.00, at (20, 10), through
              hole c in top, dia 8 H7, at (30, 10), through
              hole d in top, M8, at (40, 10), through
            """);
    assertThat(checked.run()).isNotNull();
    var plan = checked.run().plan();
    assertThat(plan.part()).isNotNull();
    assertThat(plan.part().holes())
        .extracting(
            hole ->
                DrawnLimits.of(hole, plan.part(), plan.shop().limits(), TABLES)
                    .map(found -> found.source() + " " + found.limits().high().millimetres())
                    .orElse("thread"))
        .containsExactly("PLACES 8.2", "PLACES 8.05", "FIT 8.015", "thread");
  }
}
