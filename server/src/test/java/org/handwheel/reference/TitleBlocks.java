package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.model.PartDimension;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;

/** A title block written into a plan, and what it leaves a size of so many places. */
final class TitleBlocks {
  /**
   * Inches: one place 0.03, two 0.01, three 0.005. Source of the two and three places: NAVEDTRA
   * 14161, errata to page 2-2; of the one: common practice, no source.
   */
  private static final String BLOCK = "tolerance 0.0 +-0.03, 0.00 +-0.01, 0.000 +-0.005";

  private TitleBlocks() {}

  /** How far a size written with so many places may be off, either way. */
  static Length spread(int places) {
    String text =
        "language 1\nplan \"Bracket\"\n  units in\npart\n  "
            + BLOCK
            + "\n  length 2."
            + "0".repeat(places)
            + "\n";
    Checked checked =
        new Checker(StandardTables.builtIn())
            .check(Workspace.of(SyntaxTree.parse("t.plan", text)), "t.plan");
    assertThat(checked.run()).isNotNull();
    var demand = checked.run().drawing().demand(PartDimension.LENGTH);
    assertThat(demand).isNotNull();
    return demand.limits().spread();
  }
}
