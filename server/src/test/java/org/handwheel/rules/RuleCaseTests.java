package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;

/**
 * Cases of the rules of sizes and dials that their pages do not show, and which rule goes first.
 */
class RuleCaseTests {
  private static final String HEAD =
      """
      language 1
      plan "Rudder stock keep"
        units mm
        use "shed.shop"

      part
        height 21.00 +0/-0.05

      stock
        size 60 x 34 x 22.5
        milled front back bottom

      setup one
        hold in V80, up top, fixed back, on pair P6x10
        seat tapped, both parallels tight
        cutter FC40
        measure height with caliper
        touch top with paper 0.05, zero z
      """;

  private static final String FINISH =
      """
        rough top to height leaving 0.25, pass 0.5
        deburr edges of top
        measure height with mic25
        finish top to height
      """;

  private static List<String> check(String text) {
    return check(text, "");
  }

  private static List<String> check(String text, String limits) {
    return findings(text, limits).stream().map(Finding::rule).toList();
  }

  private static List<Finding> findings(String text, String limits) {
    String shop =
        "language 1\nshop \"Shed\"\n  units mm\n  use \"shop/inch-mill.shop\"\n"
            + (limits.isEmpty() ? "" : "\nown limits mine\n" + limits);
    Map<String, SyntaxTree> files = new TreeMap<>(RulePage.shops());
    files.put("shed.shop", SyntaxTree.parse("shed.shop", shop));
    files.put("example.plan", SyntaxTree.parse("example.plan", text));
    return new Checker(StandardTables.builtIn())
        .check(new Workspace(files, Map.of()), "example.plan")
        .findings();
  }

  @Test
  void theWholeCaseIsClean() {
    assertThat(check(HEAD + FINISH)).isEmpty();
  }

  @Test
  void limitsOfTheShopHold() {
    assertThat(check(HEAD + FINISH, "  finish-allowance: 0.3\n"))
        .containsExactly("no-finish-allowance");
    assertThat(check(HEAD + FINISH, "  heavy-pass: 10 thou\n")).contains("heavy-pass");
  }

  @Test
  void aCoarserInstrumentDoesNotMakeASizeLessKnown() {
    String twice = FINISH.replace("mic25", "mic25\n  measure height with caliper");
    assertThat(check(HEAD + twice)).isEmpty();
  }

  /** Told once, at the line that measures, and not again as if nothing had been measured. */
  @Test
  void anInstrumentThatDoesNotMeasureSizesLeavesThemUnknown() {
    assertThat(check(HEAD + FINISH.replace("mic25", "dti")))
        .containsExactly("tolerance-not-measurable");
    String again =
        FINISH.replace("mic25", "dti").replace("  finish", "  finish top to 21.1\n  finish");
    assertThat(check(HEAD + again)).contains("tolerance-not-measurable", "measure-before-finish");
  }

  @Test
  void aBurrIsReportedOnceForAllThatFollows() {
    String turned =
        """

        setup two
          hold in V80, up bottom, fixed back, on pair P6x10
          seat tapped, both parallels tight
          measure height with mic25

        setup three
          hold in V80, up back, fixed top, on pair P6x10
          seat tapped, both parallels tight
          measure height with mic25
        """;
    String burred = FINISH.replace("  deburr edges of top\n", "") + turned;
    assertThat(check(HEAD + burred).stream().filter(rule -> rule.contains("burr")))
        .containsExactlyInAnyOrder(
            "measure-before-deburr", // of the roughing cut
            "burr-under-work", // both of the finishing cut
            "measure-before-deburr");
    String clean = FINISH + "  deburr edges of top\n" + turned;
    assertThat(check(HEAD + clean)).noneMatch(rule -> rule.contains("burr"));
  }

  /** Figures that round to the same would say that all is well. */
  @Test
  void aBoundJustOverItsLimitDoesNotReadLikeTheLimit() {
    String flat = HEAD.replace("height 21.00 +0/-0.05", "height 21.00 +0/-0.05\n  flat top 0.0052");
    assertThat(findings(flat + FINISH, "").stream().map(Finding::message))
        .filteredOn(message -> message.contains("flat only within"))
        .singleElement()
        .asString()
        .doesNotContainPattern("within (\\S+ mm) .* asks for \\1 ");
  }

  @Test
  void theSameCutterNamedAgainKeepsTheZero() {
    String text = FINISH.replace("  finish", "  cutter FC40, speed 500 rpm\n  finish");
    assertThat(check(HEAD + text)).isEmpty();
  }

  @Test
  void aChangeOfCutterBeforeALaterCutLosesTheZero() {
    String text =
        FINISH
            .replace("  finish", "  cutter EM16\n  finish")
            .replace("to height\n", "to height, step over 12\n");
    assertThat(check(HEAD + text))
        .contains("touch-missing")
        .doesNotContain("measure-before-finish");
  }

  @Test
  void passesThatAreCountedMayGoBelowSizeToo() {
    String text = FINISH.replace("pass 0.5", "by 4 passes of 0.5");
    assertThat(check(HEAD + text)).containsExactly("overcut");
  }

  @Test
  void onlyOneOfTheRulesOfTheStockSpeaks() {
    String text = HEAD.replace("milled front back bottom", "milled front back bottom\n  cast top");
    assertThat(check(text.replace("x 22.5", "x 20") + FINISH))
        .containsOnlyOnce("stock-too-small")
        .doesNotContain("face-not-cleaned");
    assertThat(check(text.replace("x 22.5", "x 21.4") + FINISH))
        .contains("face-not-cleaned")
        .doesNotContain("stock-too-small");
  }

  @Test
  void aWrittenSizeIsWorkedOutThoughTheDrawingHasNone() {
    String text = (HEAD + "  finish top to 21\n").replace("  height 21.00 +0/-0.05", "  width 34");
    assertThat(check(text)).containsExactly("heavy-pass");
  }

  @Test
  void passesFarTooManyLookLikeASlip() {
    assertThat(check(HEAD + FINISH.replace("pass 0.5", "pass 0.5 thou")))
        .containsExactly("unit-suspect");
  }

  @Test
  void whatRoughingLeavesMayBeASlip() {
    assertThat(check(HEAD + FINISH.replace("leaving 0.25", "leaving 0.25 in")))
        .contains("unit-suspect");
  }

  @Test
  void aDeepCutWithoutAWrittenPassIsHeavyAndNotASlip() {
    String deep = HEAD.replace("x 22.5", "x 29") + FINISH.replace(", pass 0.5", "");
    assertThat(check(deep)).contains("heavy-pass").doesNotContain("unit-suspect");
  }

  /** The back is raw, but nothing better could lie on the jaw, so only the drawing can tell. */
  @Test
  void whatNoOtherRuleReportsIsReportedAtTheDrawing() {
    String text =
        (HEAD + FINISH)
            .replace("  milled front back bottom\n", "")
            .replace("-0.05\n", "-0.05\n  square top to back 0.05\n")
            .replace("  seat tapped, both parallels tight\n", "");
    assertThat(check(text)).containsExactly("face-never-squared");
  }

  @Test
  void squareAllIsOneFindingHoweverManyPairsItTakes() {
    String text =
        (HEAD + FINISH)
            .replace("milled front back bottom", "milled front back bottom left right top")
            .replace("-0.05\n", "-0.05\n  square all 0.05\n");
    List<Finding> findings = findings(text, "");
    assertThat(findings.stream().filter(f -> f.rule().equals("face-never-squared"))).hasSize(1);
    assertThat(findings.get(0).message()).contains("more pairs)");
  }

  @Test
  void aSquareFaceIsHeldToTheWidthOfItsZone() {
    String text =
        (HEAD + FINISH)
            .replace("on pair P6x10", "on pair P6x10, bar 8 at mid-grip")
            .replace("-0.05\n", "-0.05\n  square top to back %s\n");
    assertThat(check(text.formatted("0.05"))).isEmpty();
    List<Finding> findings = findings(text.formatted("0.005"), "");
    assertThat(findings).extracting(Finding::rule).containsExactly("face-never-squared");
    assertThat(findings.get(0).message()).contains("square only within");
  }

  @Test
  void theNumbersOfADamagedSetupAreNotReliedOn() {
    String broken = FINISH.replace("leaving 0.25, pass 0.5", "leaving");
    assertThat(check(HEAD + broken)).containsExactly("syntax");
  }

  @Test
  void aThingTheShopDescribesUnsoundlyBringsNoFindingsInThePlan() {
    String shop = "language 1\nunits mm\nuse \"shop/inch-mill.shop\"\n\nown cutter CB\n  dia: 40\n";
    Map<String, SyntaxTree> files = new TreeMap<>(RulePage.shops());
    files.put("shed.shop", SyntaxTree.parse("shed.shop", shop));
    String plan = (HEAD + FINISH).replace("FC40", "CB");
    files.put("example.plan", SyntaxTree.parse("example.plan", plan));
    Workspace workspace = new Workspace(files, Map.of());
    Checker checker = new Checker(StandardTables.builtIn());
    assertThat(checker.check(workspace, "example.plan").findings()).isEmpty();
    assertThat(checker.check(workspace, "shed.shop").findings())
        .extracting(Finding::rule)
        .containsExactly("missing-property");
  }

  /** A measured cut from the side in question takes the backlash into the reading. */
  @Test
  void onceMeasuredTheBacklashNoLongerCounts() {
    String plan =
        """
        language 1
        plan "Rudder stock keep"
          units mm
          use "shed.shop"

        part
          length 82.00 +-0.10

        stock
          size 84 x 34 x 21
          milled front back top bottom left right

        setup one
          true V80 with dti
          hold in V80, up top, fixed back, on pair P6x10, overhang right 8
          seat tapped, both parallels tight
          measure length with caliper
          find left from operator-left with finder F5, zero x
          cutter EM16
          set z 22 below top
          lock z
          rough right to length leaving 0.3, pass 0.6, conventional
          deburr edges of right
          measure length with caliper
          finish right to length, conventional
        """;
    assertThat(check(plan)).containsExactly("backlash-side");
  }

  @Test
  void aCutAboveTheWorkDoesNotMakeItGrow() {
    String text = FINISH.replace("  finish", "  rough top to 22 mm, pass 0.5\n  finish");
    assertThat(check(HEAD + text)).doesNotContain("heavy-pass", "short-of-size");
  }

  @Test
  void aSecondTouchWithALockedAxisIsAConflict() {
    String text = FINISH.replace("  finish", "  lock z\n  touch top with paper 0.05\n  finish");
    assertThat(check(HEAD + text)).contains("lock-conflict");
  }
}
