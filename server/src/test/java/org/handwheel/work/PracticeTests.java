package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Workspace;
import org.handwheel.reference.CheckRow;
import org.handwheel.reference.RowChecks;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;

/**
 * What the trade does passes without a word, and what it does not do is found: rows B39 to B42 of
 * the check values (common practice, no source, but for B42, whose page was read).
 */
class PracticeTests implements RowChecks {
  private static final String SHOP =
      """
      shop "Practice"
        units in
      own machine small-mill
        lead-x: 0.1
        divisions-x: 100
        backlash-x: 8 thou
        lead-y: 0.1
        divisions-y: 100
        backlash-y: 8 thou
        lead-z: 0.1
        divisions-z: 100
      own vise v
        jaw-width: 4
        jaw-depth: 1
        opening: 3
        trued: 0.0005 over 4
      own parallels p
        thickness: 1/4
        height: 3/8
        length: 3
      own cutter facing
        kind: face-mill
        dia: 1.5
        teeth: 4
        flute: 0.3
        made-of: carbide
      own cutter end
        dia: 5/8
        teeth: 4
        flute: 1.5
      own instrument mic
        kind: micrometer
        accuracy: 2 tenths
      """;

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new RowChecks.Builder()
        .row("B39", PracticeTests::finishAllowance)
        .row("B40", PracticeTests::climbFinish)
        .row("B41", PracticeTests::sawnAllowance)
        .row("B42", PracticeTests::stockVariation)
        .build();
  }

  private static Set<String> rules(String plan) {
    Workspace workspace =
        Workspace.of(SyntaxTree.parse("a.plan", plan), SyntaxTree.parse("a.shop", SHOP));
    return new Checker(StandardTables.load())
        .check(workspace, "a.plan").findings().stream()
            .map(Finding::rule)
            .collect(Collectors.toSet());
  }

  /** The whole plan but for the setup's cuts. */
  private static String plan(String material, String skin, String height, String cuts) {
    return """
        plan "Practice"
          units in
          use "a.shop"
        part
          material %s
          length 2
          width 1
          height 1.000 +-0.002
        stock
          size 2 x 1 x %s
          %s top
          milled left right front back bottom
        setup a
          deburr all edges
          hold in v, up top, fixed back, on pair p, bar 0.3 at mid-grip
          seat tapped, both parallels tight
          cutter facing
          touch top with paper 2 thou, zero z
          lock y z
        %s
        """
        .formatted(material, height, skin, cuts.indent(2));
  }

  private static Set<String> leaving(String thou) {
    return rules(
        plan(
            "aluminium-6082",
            "sawn",
            "1.100",
            """
            measure height with mic
            rough top to height leaving %s thou, pass 15 thou
            deburr edges of top
            measure height with mic
            finish top to height
            """
                .formatted(thou)));
  }

  private static void finishAllowance(CheckRow row) {
    assertThat(row.expected()).contains("0.010 in", "0.005-0.015 accepted");
    for (String usual : List.of("5", "10", "15")) {
      assertThat(leaving(usual)).doesNotContain("no-finish-allowance", "heavy-pass");
    }
    assertThat(leaving("2")).contains("no-finish-allowance");
    assertThat(leaving("0")).contains("no-finish-allowance");
  }

  private static Set<String> climbing(String thou) {
    String plan =
        """
        plan "Practice"
          units in
          use "a.shop"
        part
          material aluminium-6082
          length 4.000 +-0.005
          width 1
          height 0.75
        stock
          size 4.120 x 1 x 0.75
          milled left right front back top bottom
        setup a
          hold in v, up top, fixed back, on pair p, bar 0.3 at mid-grip
          seat tapped, both parallels tight
          cutter end
          touch right with paper 2 thou, zero x
          set z 0.8 below top
          lock x z
          rough right to (length + %s thou), conventional
          deburr edges of right
          measure length with mic
          finish right to length, climb
        """
            .formatted(thou);
    return rules(plan);
  }

  /** A climb pass of so many thou in soft metal; the row gives from and to in inches. */
  private static void climbFinish(CheckRow row) {
    for (int i = 0; i < 2; i++) {
      BigDecimal thou = row.numbers().get(i).abs().movePointRight(3);
      assertThat(climbing(thou.toPlainString())).as("%s thou", thou).doesNotContain("heavy-climb");
    }
    assertThat(climbing("100")).as("a heavy cut is found").contains("heavy-climb");
  }

  private static Set<String> cleaning(String height, String atMost) {
    return rules(
        plan(
            "steel-mild",
            "sawn",
            height,
            """
            clean top at 15 thou, at most %s
            deburr edges of top
            measure height with mic
            rough top to height leaving 10 thou, pass 15 thou
            deburr edges of top
            measure height with mic
            finish top to height
            """
                .formatted(atMost)));
  }

  /** A sixteenth on a sawn face cleans up, half of what a square saw leaves does not. */
  private static void sawnAllowance(CheckRow row) {
    assertThat(row.expected()).contains("1/16 in", "1/32 in if sawn square");
    assertThat(cleaning("1-1/16", "1/32")).doesNotContain("face-not-cleaned", "stock-too-small");
    assertThat(cleaning("1-1/64", "1/64")).contains("face-not-cleaned");
  }

  private static void stockVariation(CheckRow row) {
    List<BigDecimal> inches = row.numbers();
    Length variation = Limits.DEFAULTS.length(Limit.STOCK_VARIATION);
    assertThat(variation)
        .isBetween(
            Length.inches(inches.get(0).abs().toPlainString()),
            Length.inches(inches.get(1).abs().toPlainString()));
  }
}
