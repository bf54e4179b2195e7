package org.handwheel.plan.draft;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;

/** What a draft finds, and what it says where it finds nothing. */
class DrafterTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  /** No part, however awkward, keeps anyone waiting longer. */
  private static final long LONGEST_MS = 5_000;

  /** Processor time: other work on the machine does not count. */
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

  private static final String SHOP =
      """
      language 1
      shop "Boat shed"
        units mm

      own machine mill
        lead-x: 2
        divisions-x: 100
        backlash-x: 0.1
        lead-y: 2
        divisions-y: 100
        backlash-y: 0.1
        lead-z: 2
        divisions-z: 100
        backlash-z: 0.1
        speeds: 95, 180, 270, 500, 930, 1420, 2100 rpm
        power: 0.75 kW

      own vise V80
        jaw-width: 80
        jaw-depth: 25
        opening: 70

      own parallels P6x10
        thickness: 6
        height: 10
        length: 70

      own parallels P6x22
        thickness: 6
        height: 22
        length: 70

      own parallels P4x10
        thickness: 4
        height: 10
        length: 70
        count: 1

      own packing shim
        thickness: 0.5

      own bar B8
        dia: 8

      own cutter FC40
        kind: face-mill
        dia: 40
        teeth: 4
        flute: 8
        made-of: carbide

      own cutter EM16
        kind: end-mill
        dia: 16
        teeth: 4
        flute: 32

      own drills metric
        dia: 13

      own instrument caliper
        kind: caliper
        range: 0, 150 mm
        accuracy: 0.02

      own instrument mic25
        kind: micrometer
        range: 0, 25 mm
        resolution: 0.01
        accuracy: 0.004

      own instrument square75
        kind: square
        accuracy: 0.01

      own instrument dti
        kind: indicator
        accuracy: 0.01

      own finder F10
        dia: 10
      """;

  /** The same with what most boat sheds have besides. */
  private static final String FULL_SHOP =
      SHOP
          + """

          own parallels P6x16
            thickness: 6
            height: 16
            length: 70

          own parallels P3x10
            thickness: 3
            height: 10
            length: 70

          own parallels P3x20
            thickness: 3
            height: 20
            length: 70

          own cutter EM20
            kind: end-mill
            dia: 20
            teeth: 4
            flute: 45
          """;

  private static String plan(String part, String stock) {
    return """
    language 1
    plan "Fairlead chock"
      units mm
      use "shed.shop"

    part
      material brass-free-cutting
    %s
    stock
    %s"""
        .formatted(part.indent(2), stock.indent(2));
  }

  private static final String BLOCK =
      """
      length 48 +-0.1
      width 32 +-0.1
      height 19 +-0.1
      """;

  private static final String BLOCK_STOCK =
      """
      size 51.5 x 35.5 x 22.5
      sawn left right front back top bottom
      """;

  private static Workspace workspace(String plan, String shop) {
    return Workspace.of(SyntaxTree.parse("chock.plan", plan), SyntaxTree.parse("shed.shop", shop));
  }

  private static Drafted draft(String plan, String shop) {
    return new Drafter(TABLES).draft(workspace(plan, shop), "chock.plan", 1, DraftProgress.NONE);
  }

  private static String text(Drafted drafted) {
    assertThat(drafted).as(drafted.toString()).isInstanceOf(Drafted.Plans.class);
    return ((Drafted.Plans) drafted).drafts().get(0).text();
  }

  private static String missing(Drafted drafted) {
    assertThat(drafted).as(drafted.toString()).isInstanceOf(Drafted.Missing.class);
    return String.join("\n", ((Drafted.Missing) drafted).missing());
  }

  private static void assertClean(String text, String shop) {
    Checked checked = new Checker(TABLES).check(workspace(text, shop), "chock.plan");
    assertThat(checked.findings())
        .noneMatch(one -> one.severity() == Severity.ERROR || one.severity() == Severity.WARNING);
    assertThat(Formatter.edits(SyntaxTree.parse("chock.plan", text))).isEmpty();
  }

  /**
   * A plate narrower than the jaws are deep stands on edge on a single parallel as thick as itself;
   * that would take the clamping force, so a second one stands beside it (common practice, no
   * source).
   */
  @Test
  void thinFlatStockFindsTheSecondParallel() {
    String plate =
        plan(
            """
            length 60 +-0.2
            width 18 +-0.1
            height 4 +-0.1
            square back to top 0.1
            """,
            """
            size 63 x 20 x 5
            drawn front back top bottom
            sawn left right
            """);
    String text = text(draft(plate, SHOP));
    assertThat(text).contains("up back, fixed top, on one P4x10, beside P6x22");
    assertThat(text).contains("second piece");
    assertClean(text, SHOP);
  }

  @Test
  void aViseThatDoesNotOpenWideEnoughIsNamedWithItsFigures() {
    String wide =
        plan(
            "length 120 +-0.2\nwidth 90 +-0.2\nheight 80 +-0.2\n",
            "size 124 x 94 x 84\nsawn left right front back top bottom\n");
    assertThat(missing(draft(wide, SHOP)))
        .contains("vise `V80` is too small: it opens 70.00 mm (2.7559 in)")
        .contains("94.30 mm");
  }

  @Test
  void stockWithoutAllowanceIsTooSmall() {
    String tight = plan(BLOCK, "size 48.5 x 35.5 x 22.5\nsawn left right front back top bottom\n");
    // Saw marks may be 1/32 in deep on each face (the shop's usual limit): 1.59 mm in all.
    assertThat(missing(draft(tight, SHOP))).contains("length").contains("1.588 mm");
    String small = plan(BLOCK, "size 47 x 35.5 x 22.5\nsawn left right front back top bottom\n");
    assertThat(missing(draft(small, SHOP))).contains("47.00 mm").contains("below the part's");
  }

  @Test
  void anInstrumentFineEnoughIsAskedForByItsAccuracy() {
    String fine = plan("length 48 +-0.1\nwidth 32 +-0.02\nheight 19 +-0.1\n", BLOCK_STOCK);
    // A quarter of 0.04 mm (common practice, no source).
    assertThat(missing(draft(fine, SHOP)))
        .contains("no instrument is fine enough for the width of 32.00 mm (1.2598 in)")
        .contains("good to 0.01 mm (0.4 thou)");
  }

  @Test
  void aShopWithoutBarOrFinderOrTapSaysSo() {
    // Too long to be gripped lengthways, and not so much wider than it is gripped that it would
    // follow its seat: only the fixed jaw can rule it.
    String squared =
        plan(
            "length 90 +-0.1\nwidth 22 +-0.1\nheight 19 +-0.1\nsquare back to top 0.05\n",
            "size 93.5 x 25.5 x 22.5\nsawn left right front back top bottom\n");
    assertThat(missing(draft(squared, SHOP.replace("own bar B8\n  dia: 8\n", ""))))
        .contains("no round bar");
    String hole = BLOCK + "hole a in top, dia 5.5, at (24, 16) from left front, through\n";
    assertThat(
            missing(
                draft(plan(hole, BLOCK_STOCK), SHOP.replace("own finder F10\n  dia: 10\n", ""))))
        .contains("no edge finder");
    String tapped = BLOCK + "hole a in top, M6, at (24, 16) from left front, through\n";
    assertThat(missing(draft(plan(tapped, BLOCK_STOCK), SHOP)))
        .contains("no tap M6 for the hole a: 6.00 mm (0.2362 in) with a pitch of 1.00 mm");
    String large = BLOCK + "hole a in top, dia 16, at (24, 16) from left front, through\n";
    assertThat(missing(draft(plan(large, BLOCK_STOCK), SHOP)))
        .contains("no drill for the hole a of 16.00 mm")
        .contains("the largest is 13.00 mm");
  }

  /** Cutters that come beside the work stay above the jaws. */
  @Test
  void stepsAndChamfersAreCutAboveTheJaws() {
    String part =
        BLOCK
            + "step ledge in top, at (44, 16), size 8 x 32, depth 4\nchamfer lip in bottom, width 1";
    assertThat(missing(draft(plan(part, BLOCK_STOCK), FULL_SHOP)))
        .isEqualTo("no chamfering cutter with flutes of 1.00 mm (39.4 thou) for the chamfer lip");
    String shop =
        FULL_SHOP
            + """

            own cutter CM12
              kind: chamfer-mill
              dia: 12
              teeth: 4
              flute: 6
            """;
    String text = text(draft(plan(part, BLOCK_STOCK), shop));
    assertThat(text).contains("  step ledge with EM", "  chamfer lip with CM12\n");
    assertClean(text, shop);
    // 19 high with 5 mm and a little above jaws 25 deep: the step's seat is 12 or higher.
    int step = text.indexOf("  step ledge with");
    String hold = text.substring(text.lastIndexOf("  hold in ", step), step);
    assertThat(hold).containsPattern("on pair P[36]x(16|20|22)");
  }

  @Test
  void aCutterTooShortForAnEndIsNamed() {
    String shop = SHOP.replace("flute: 32", "flute: 14");
    // 60 long: too tall to stand up in jaws 25 deep, so an end takes the side of the cutter.
    String tall =
        plan(
            "length 110 +-0.1\nwidth 32 +-0.1\nheight 19 +-0.1\nsquare all 0.2\n",
            "size 113.5 x 35.5 x 22.5\nsawn left right front back top bottom\n");
    assertThat(missing(draft(tall, shop)))
        .contains("no cutter is long enough")
        .contains("`EM16`, has flutes of 14.00 mm (0.5512 in)");
  }

  @Test
  void aPlanWithSetupsIsLeftAlone() {
    String planned = plan(BLOCK, BLOCK_STOCK) + "\nsetup one\n  deburr all edges\n";
    assertThat(missing(draft(planned, SHOP))).contains("setups");
  }

  @Provide
  Arbitrary<String> skins() {
    return Arbitraries.of("sawn", "cast", "rolled", "drawn", "milled");
  }

  /** Random blocks in and about the size of the vise: a clean draft, or what is missing. */
  @Property(tries = 150, seed = "20261127")
  void randomBlocksAreDraftedCleanOrSayWhatIsMissing(
      @ForAll @IntRange(min = 10, max = 120) int length,
      @ForAll @IntRange(min = 3, max = 75) int width,
      @ForAll @IntRange(min = 2, max = 60) int height,
      @ForAll @IntRange(min = 0, max = 50) int allowance,
      @ForAll @IntRange(min = 3, max = 40) int tolerance,
      @ForAll @IntRange(min = 0, max = 4) int callouts,
      @ForAll("skins") String skin,
      @ForAll("skins") String ends) {
    StringBuilder part = new StringBuilder();
    String within = " +-0." + (tolerance < 10 ? "0" : "") + tolerance + "\n";
    part.append("length ").append(length).append(within);
    part.append("width ").append(width).append(within);
    part.append("height ").append(height).append(within);
    List.of(
            "square back to top 0.1",
            "parallel bottom to top 0.1",
            "square left to top 0.1",
            "hole a in top, dia 3, at (5, " + width / 2.0 + ") from left front, through")
        .subList(0, callouts)
        .forEach(line -> part.append(line).append('\n'));
    double more = allowance / 10.0;
    String stock =
        "size %s x %s x %s\n%s front back top bottom\n%s left right\n"
            .formatted(length + more, width + more, height + more, skin, ends);
    String plan = plan(part.toString(), stock);
    long start = CLOCK.getCurrentThreadCpuTime();
    Drafted drafted = draft(plan, FULL_SHOP);
    long millis = (CLOCK.getCurrentThreadCpuTime() - start) / 1_000_000;
    assertThat(millis).as(plan).isLessThan(LONGEST_MS);
    // A quarter of the blocks must be ones the shop can make, else this shows little.
    Statistics.collect(drafted instanceof Drafted.Plans ? "drafted" : "missing");
    Statistics.coverage(coverage -> coverage.check("drafted").percentage(percent -> percent > 25));
    if (drafted instanceof Drafted.Missing none) {
      assertThat(none.missing()).as(plan).isNotEmpty().noneMatch(String::isBlank);
    } else {
      assertClean(text(drafted), FULL_SHOP);
    }
  }
}
