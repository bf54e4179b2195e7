package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What becomes of the findings of the rules: their weight, comments that silence, logs, order. */
class CheckerTests {
  private static final String UNUSED =
      """
      language 1
      plan "Gland nut"
        units mm
        %s
        %s
      part
        width 20
        height 12
      """;

  /** Ends 0.05 mm below the limit; every setup before the last line is sound. */
  private static final String OVERCUT =
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
        rough top to height leaving 0.25, pass 0.5
        deburr edges of top
        measure height with mic25
        finish top to 20.90
      """;

  private static Checked check(String text, Map<String, String> more) {
    TreeMap<String, SyntaxTree> files = new TreeMap<>(RulePage.shops());
    more.forEach((path, content) -> files.put(path, SyntaxTree.parse(path, content)));
    files.put("example.plan", SyntaxTree.parse("example.plan", text));
    return new Checker(StandardTables.builtIn())
        .check(new Workspace(files, Map.of()), "example.plan");
  }

  private static Checked check(String text) {
    return check(text, Map.of());
  }

  private static List<String> rules(Checked checked) {
    return checked.findings().stream().map(Finding::rule).toList();
  }

  private static Checked overcut(String severities, String comment) {
    String shop =
        """
        language 1
        shop "Shed"
          use "shop/inch-mill.shop"

        """
            + severities;
    return check(
        OVERCUT.replace("finish top to 20.90", "finish top to 20.90   " + comment),
        Map.of("shed.shop", shop));
  }

  @Test
  void aRuleWeighsWhatTheShopSays() {
    assertThat(overcut("", "").findings().get(0).severity()).isEqualTo(Severity.ERROR);
    Checked checked = overcut("own severities mine\n  overcut: info\n", "");
    assertThat(rules(checked)).containsExactly("overcut");
    assertThat(checked.findings().get(0).severity()).isEqualTo(Severity.INFO);
  }

  @Test
  void aRuleThatIsOffSaysNothing() {
    Checked checked = overcut("own severities mine\n  overcut: off\n", "");
    assertThat(checked.findings()).isEmpty();
  }

  @Test
  void aCommentOnARuleThatIsOffIsNotUnused() {
    Checked checked = overcut("own severities mine\n  overcut: off\n", "# ignore overcut: packed");
    assertThat(checked.findings()).isEmpty();
  }

  @Test
  void theWeightOfCommentsCanBeSetToo() {
    Checked checked = overcut("own severities mine\n  ignore-reason: off\n", "# ignore overcut");
    assertThat(checked.findings()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"syntax", "language-level", "overflow"})
  void whatCannotBeReadIsAlwaysAnError(String rule) {
    String shop = "language 1\nshop \"S\"\n\nown severities mine\n  " + rule + ": off\n";
    SyntaxTree tree = SyntaxTree.parse("s.shop", shop);
    Checked checked = new Checker(StandardTables.builtIn()).check(Workspace.of(tree), "s.shop");
    assertThat(rules(checked)).containsExactly("bad-value");
    Checked plan =
        check(
            """
            language 9
            plan "Gland nut"
              units mm
              use "s.shop"

            part
              widht 20
              height 12000000000000
            """,
            Map.of("s.shop", shop));
    assertThat(rules(plan)).containsExactly("language-level", "syntax", "overflow");
  }

  @Test
  void aSeverityOfAnUnknownRuleIsReported() {
    String shop = "language 1\nshop \"S\"\n\nown severities mine\n  overcutt: off\n";
    Checked checked =
        new Checker(StandardTables.builtIn())
            .check(Workspace.of(SyntaxTree.parse("s.shop", shop)), "s.shop");
    assertThat(rules(checked)).containsExactly("unknown-property");
    assertThat(checked.findings().get(0).message()).contains("did you mean `overcut`?");
  }

  static Stream<String> silenced() {
    return Stream.of(
        UNUSED.formatted("let wall = 3   # ignore unused-name: for the lid", ""),
        UNUSED.formatted("# ignore unused-name: for the lid", "let wall = 3"),
        UNUSED.formatted("LET wall = 3   #ignore  unused-name :for the lid", ""),
        UNUSED.formatted("# ignore unused-name: for the lid", "let wall = \\\n 3"));
  }

  @ParameterizedTest
  @MethodSource("silenced")
  void aCommentSilencesItsOwnLineOrTheNext(String text) {
    assertThat(check(text).findings()).isEmpty();
  }

  @Test
  void aCommentReachesNoFurtherThanOneLine() {
    Checked checked =
        check(UNUSED.formatted("# ignore unused-name: for the lid", "\n  let wall = 3"));
    assertThat(rules(checked)).containsExactly("unused-ignore", "unused-name");
  }

  @Test
  void aCommentSilencesOneRuleOnly() {
    Checked checked = check(UNUSED.formatted("let wall = 3   # ignore overcut: no reason", ""));
    assertThat(rules(checked)).containsExactly("unused-name", "unused-ignore");
  }

  @ParameterizedTest
  @ValueSource(strings = {"# ignore unused-name", "# ignore unused-name:"})
  void aCommentWithoutAReasonIsReported(String comment) {
    Checked checked = check(UNUSED.formatted("let wall = 3   " + comment, ""));
    assertThat(rules(checked)).containsExactly("ignore-reason");
  }

  @Test
  void anUnusedCommentIsReportedWithAFixThatRemovesIt() {
    Checked checked =
        check(UNUSED.formatted("", "# ignore overcut: none").replace("20\n", "20 \n"));
    Finding finding = checked.findings().get(0);
    assertThat(finding.rule()).isEqualTo("unused-ignore");
    assertThat(finding.fixes().get(0).edits().get(0).origin().text())
        .isEqualTo("  # ignore overcut: none");
  }

  @Test
  void aCommentThatNamesNoRuleIsReportedButARemarkIsNot() {
    assertThat(rules(check(UNUSED.formatted("# ignore overcutt", ""))))
        .containsExactly("unused-ignore");
    assertThat(rules(check(UNUSED.formatted("# ignore gibberish: for the lid", ""))))
        .containsExactly("unused-ignore");
    assertThat(check(UNUSED.formatted("# ignore this", "")).findings()).isEmpty();
    assertThat(check(UNUSED.formatted("# ignore the next hole", "")).findings()).isEmpty();
  }

  @Test
  void aCommentCannotSilenceALineThatCannotBeRead() {
    Checked checked = check(UNUSED.formatted("lte wall = 3   # ignore syntax: later", ""));
    assertThat(rules(checked)).containsExactly("syntax", "unused-ignore");
    assertThat(checked.findings().get(1).message()).isEqualTo("`syntax` cannot be ignored");
  }

  @Test
  void aCommentIsNotCalledUnusedWhileALineCannotBeRead() {
    Checked checked =
        check(UNUSED.formatted("lte wall = 3", "let floor = 4  # ignore unused-name: x"));
    assertThat(rules(checked)).containsExactly("syntax");
  }

  @Test
  void aFileOfANewerLevelIsDoubtful() {
    Checked checked =
        check(
            """
            language 2
            plan "Gland nut"
              units mm

            part
              widht 20    # ignore overcut: not here
              height 0
            """);
    assertThat(rules(checked)).containsExactly("language-level", "syntax", "bad-value");
    assertThat(checked.findings().get(0).severity()).isEqualTo(Severity.ERROR);
    assertThat(checked.findings().subList(1, 3))
        .allMatch(finding -> finding.severity() == Severity.WARNING);
    assertThat(checked.findings()).allMatch(finding -> finding.fixes().isEmpty());
  }

  @Test
  void whatThePlanShowsAlreadyIsNotRepeatedForALog() {
    String logs = "\nlog \"one\"\n  in one: read height 22.4 with caliper\n\nlog \"two\"\n";
    Checked checked =
        check(OVERCUT + logs, Map.of("shed.shop", "language 1\nuse \"shop/inch-mill.shop\"\n"));
    assertThat(rules(checked)).containsExactly("overcut");
  }

  @Test
  void whatALogBringsOutSaysWhose() {
    String plan = OVERCUT.replace("to 20.90", "to height, by 1 passes of 0.2");
    String log =
        "\nlog \"the first one\"\n"
            + "  in one: read height 22.48 with caliper\n"
            + "  in one: read height 21.6 with mic25\n";
    Map<String, String> shop = Map.of("shed.shop", "language 1\nuse \"shop/inch-mill.shop\"\n");
    assertThat(rules(check(plan, shop))).isEmpty();
    Checked checked = check(plan + log, shop);
    assertThat(rules(checked)).containsExactly("short-of-size");
    Finding finding = checked.findings().get(0);
    assertThat(finding.message()).endsWith("(the first one)");
    assertThat(finding.related())
        .anyMatch(related -> related.message().equals("with the readings of this log"));
  }

  @Test
  void aReadingBelowSizeIsReportedAtTheReadingEvenIfThePlanDoesNotAskForIt() {
    String log =
        "\nlog \"the first one\"\n"
            + "  in one: read height 22.4 with caliper\n"
            + "  in one: read height 21.24 with mic25\n"
            + "  in one: read height 20.91 20.97 with mic25\n";
    Checked checked =
        check(
            OVERCUT.replace("to 20.90", "to height") + log,
            Map.of("shed.shop", "language 1\nuse \"shop/inch-mill.shop\"\n"));
    assertThat(rules(checked)).containsExactly("overcut");
    assertThat(checked.findings().get(0).message())
        .isEqualTo(
            "the height was read as 20.91 mm (0.8232 in), 0.04 mm (1.6 thou) below the least the"
                + " drawing allows");
  }

  @Test
  void aReadingAboveSizeAfterTheLastCutIsReportedAtTheReading() {
    String plan =
        OVERCUT.replace("to 20.90", "to height\n  deburr top\n  measure height with mic25");
    String log =
        "\nlog \"the first one\"\n"
            + "  in one: read height 22.4 with caliper\n"
            + "  in one: read height 21.24 with mic25\n"
            + "  in one: read height 20.98 %s with mic25\n";
    Map<String, String> shop = Map.of("shed.shop", "language 1\nuse \"shop/inch-mill.shop\"\n");
    assertThat(rules(check(plan + log.formatted("21.00"), shop))).isEmpty();
    Checked checked = check(plan + log.formatted("21.03"), shop);
    assertThat(rules(checked)).containsExactly("short-of-size");
    assertThat(checked.findings().get(0).origin().text()).startsWith("in one: read height 20.98");
  }

  @Test
  void sizesTooLargeToWorkWithAreOneFinding() {
    Checked checked =
        check(
            OVERCUT.replace("60 x 34 x 22.5", "9223372036.8 x 34 x 22.5"),
            Map.of("shed.shop", "language 1\nuse \"shop/inch-mill.shop\"\n"));
    assertThat(rules(checked)).containsExactly("overflow");
    assertThat(checked.findings().get(0).origin().text()).isEqualTo("9223372036.8");
  }

  @Test
  void findingsComeInTheOrderOfTheText() {
    Checked checked = check(UNUSED.formatted("let b = 3", "let a = 3"));
    assertThat(checked.findings().stream().map(finding -> finding.origin().text()))
        .containsExactly("b", "a");
  }

  @Test
  void aShopFileIsCheckedWithTheFilesItUses() {
    SyntaxTree tree = SyntaxTree.parse("s.shop", "language 1\nshop \"S\"\n  use \"none.shop\"\n");
    Checked checked = new Checker(StandardTables.builtIn()).check(Workspace.of(tree), "s.shop");
    assertThat(rules(checked)).containsExactly("use-path");
    assertThat(checked.usedFiles()).containsExactly("none.shop");
  }

  @Test
  void aMaterialOfTheShopIsLikeOneOfTheTables() {
    String shop = "language 1\nshop \"S\"\n\nown material soft\n  like: %s\n";
    SyntaxTree wrong = SyntaxTree.parse("s.shop", shop.formatted("steel-mildd"));
    Checked checked = new Checker(StandardTables.builtIn()).check(Workspace.of(wrong), "s.shop");
    assertThat(Said.of(checked.findings()))
        .isEqualTo(
            """
            warning material-unknown at `steel-mildd`: no material `steel-mildd` is known; did you mean\
             `steel-mild`?
              change: Write `steel-mild`: `steel-mild` for `steel-mildd`
            """);
    SyntaxTree far = SyntaxTree.parse("s.shop", shop.formatted("whalebone"));
    assertThat(
            Said.of(
                new Checker(StandardTables.builtIn())
                    .check(Workspace.of(far), "s.shop")
                    .findings()))
        .isEqualTo(
            """
            warning material-unknown at `whalebone`: no material `whalebone` is known; `like` names a\
             material of the tables
            """);
    SyntaxTree right = SyntaxTree.parse("s.shop", shop.formatted("steel-mild"));
    assertThat(
            new Checker(StandardTables.builtIn()).check(Workspace.of(right), "s.shop").findings())
        .isEmpty();
  }
}
