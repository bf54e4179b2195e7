package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What rules are shown of a plan that is not whole, and going on from an earlier check. */
class CheckupTests {
  private static final String MILLED = "milled front back top bottom left right";
  private static final String HOLD = "hold in V80, up top, fixed back, on pair P6x10";
  private static final BenchPlan BLOCK = BenchPlan.of("60 x 30 x 22", MILLED);

  @ParameterizedTest
  @CsvSource({
    "a.shop, 'plan \"x\"', true",
    "A.SHOP, '', true",
    "a.plan, 'shop \"x\"', false",
    "a.txt, 'shop \"x\"', true",
    "a.txt, 'own vise V', true",
    "a.txt, 'language 1|shop \"x\"', true",
    "a.txt, 'language 1|plan \"x\"|own vise V', false",
    "a.txt, 'part|shop \"x\"', false",
    "a.txt, '', false",
  })
  void aShopIsKnownByItsNameOrItsFirstHeader(String path, String text, boolean shop) {
    SyntaxTree tree = SyntaxTree.parse(path, text.replace('|', '\n') + "\n");
    assertThat(Checker.isShop(tree)).isEqualTo(shop);
  }

  /**
   * What follows a line that could not be read starts from a state that nobody knows: only locks,
   * which begin anew, are looked at there.
   */
  @Test
  void afterASetupThatCouldNotBeRead() {
    BenchPlan later =
        BLOCK
            .setup(HOLD, "cutter FC40", "clean top at")
            .setup(HOLD, "lock x y z", "clean top at 0.2", "touch top with paper 0.05, zero z");
    assertThat(later.found())
        .contains("warning lock-conflict")
        .doesNotContain("error touch-missing");
    assertThat(BLOCK.setup(HOLD, "lock x y z", "clean top at 0.2").found())
        .contains("error touch-missing");
    // The setup itself is looked at as far as that makes sense.
    String hidden = "error face-hidden";
    assertThat(BLOCK.setup(HOLD, "clean bottom at 0.2", "clean top at").found()).contains(hidden);
    assertThat(BLOCK.setup(HOLD, "clean top at").setup(HOLD, "clean bottom at 0.2").found())
        .doesNotContain(hidden);
  }

  /** A cut that cannot be worked out may bring the height to size. */
  @Test
  void whatACutThatIsNotKnownMayDoDoesNotMiss() {
    BenchPlan plan = BLOCK.part("height 20 +-0.1");
    assertThat(plan.setup(HOLD).found()).contains("error short-of-size");
    assertThat(plan.setup(HOLD, "finish top to height").found())
        .doesNotContain("error short-of-size");
  }

  @Test
  void aBlankOrATabBeforeAnUnusedCommentGoesWithIt() {
    for (String before : List.of("\t", " \t ", "   ")) {
      assertThat(removed("let wall = 3" + before + "# ignore overcut: none\n"))
          .isEqualTo(before + "# ignore overcut: none");
    }
    assertThat(removed("# ignore overcut: none\nlet wall = 3\n"))
        .isEqualTo("# ignore overcut: none");
  }

  private static String removed(String text) {
    Checked checked =
        new Checker(StandardTables.builtIn())
            .check(Workspace.of(SyntaxTree.parse("a.plan", text)), "a.plan");
    return checked.findings().stream()
        .filter(finding -> finding.rule().equals("unused-ignore"))
        .map(finding -> finding.fixes().get(0).edits().get(0).origin().text())
        .findFirst()
        .orElseThrow();
  }

  // ---- Logs

  private static final String LOGGED =
      """
      language 1
      plan "Rudder stock keep"
        units mm
        use "shop/inch-mill.shop"
        let wall = 3

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
        finish top to height, by 1 passes of 0.2

      """;

  /** An editor keeps the sections that an edit does not touch. */
  private static Checked check(String text, @Nullable Checked earlier) {
    Map<String, SyntaxTree> files = RulePage.shops();
    files.put(
        "a.plan", earlier == null ? SyntaxTree.parse("a.plan", text) : earlier.tree().update(text));
    Checker checker = new Checker(StandardTables.builtIn());
    Workspace workspace = new Workspace(files, Map.of());
    return earlier == null
        ? checker.check(workspace, "a.plan")
        : checker.check(workspace, "a.plan", earlier);
  }

  private static List<String> rules(Checked checked) {
    return checked.findings().stream().map(Finding::rule).toList();
  }

  /** From 21.6 one pass of 0.2 does not come to 21.00. */
  @Test
  void aLogBringsOutOneThingMore() {
    String log =
        "log%s\n  in one: read height 22.48 with caliper\n  in one: read height 21.6 with mic25\n";
    assertThat(rules(check(LOGGED, null))).containsExactly("unused-name");
    Checked one = check(LOGGED + log.formatted(" \"first\""), null);
    assertThat(rules(one)).containsExactly("unused-name", "short-of-size");
    assertThat(one.findings().get(1).message()).endsWith(" (first)");
    assertThat(check(LOGGED + log.formatted(" \"\""), null).findings().get(1).message())
        .endsWith(" (with the readings of the log)");
    // Two logs that say the same are one finding.
    Checked two =
        check(LOGGED + log.formatted(" \"first\"") + "\n" + log.formatted(" \"2\""), null);
    assertThat(rules(two)).containsExactly("unused-name", "short-of-size");
  }

  // ---- Going on

  private static List<String> said(Checked checked) {
    return checked.findings().stream().map(finding -> Said.of(List.of(finding))).toList();
  }

  /** Whatever was checked before, the findings are those of a check from the beginning. */
  @Test
  void goingOnFindsWhatStartingAnewFinds() {
    String plan = LOGGED.replace(", by 1 passes of 0.2", "");
    String setup = "\nsetup two\n  hold in V80, up bottom, fixed back, on pair P6x10\n";
    List<String> texts =
        List.of(
            plan + setup + "  clean bottom at 0.2\n",
            plan + setup + "  clean bottom at\n",
            plan.replace("deburr edges of top\n", "") + setup + "  clean bottom at 0.2\n",
            plan.replace("  cutter FC40\n", "  cutter\n") + setup + "  clean bottom at 0.2\n",
            plan.replace("21.00 +0/-0.05", "21.00 +0/-0.005") + setup,
            plan.replace("finish top", "rough top") + setup,
            plan.replace("  rough top to", "  lock x\n  rough top to") + setup + "  lock z\n",
            plan.replace("size 60 x 34 x 22.5", "size 60 x 34 x 30") + setup);
    for (String before : texts) {
      Checked earlier = check(before, null);
      for (String after : texts) {
        Checked anew = check(after, null);
        Checked goingOn = check(after, earlier);
        assertThat(said(goingOn)).isEqualTo(said(anew));
        // And from there back again: what was kept of both is of use.
        assertThat(said(check(before, goingOn))).isEqualTo(said(earlier));
      }
    }
  }

  /** The same setup in the same state is not checked again: its findings are the same objects. */
  @Test
  void whatIsKnownOfASetupIsKept() {
    String plan =
        LOGGED.replace("pass 0.5", "pass 1.5")
            + "setup two\n  hold in V80, up top, fixed back, on pair P6x10\n";
    Checked earlier = check(plan, null);
    Checked later = check(plan + "  lock z\n", earlier);
    assertThat(rules(later)).contains("heavy-pass");
    Finding found = find(earlier, "heavy-pass");
    assertThat(find(later, "heavy-pass")).isSameAs(found);
    // A larger part is other ground, so all is looked at anew.
    Checked other = check(plan.replace("height 21.00", "height 21.50"), earlier);
    assertThat(find(other, "heavy-pass")).isNotSameAs(found);
  }

  private static Finding find(Checked checked, String rule) {
    return checked.findings().stream()
        .filter(finding -> finding.rule().equals(rule))
        .findFirst()
        .orElseThrow();
  }
}
