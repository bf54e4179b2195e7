package org.handwheel.ide.actions;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.TextEdit;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Rewritings that keep the meaning. */
final class RewritingTests {
  private static final String PLAN =
      """
      language 1
      plan "Test"
        units mm
        use "shop/inch-mill.shop"
        let edge = 8 mm

      part
        material gunmetal-LG2
        length 56 +-0.1
        width 30 +0/-0.05
        height 21 +0/-0.05
        hole foot in top, dia 5.5, at (edge, width/2) from left front, through

      stock
        size 60 x 33.5 x 24.5
        cast front back top bottom
        sawn left right

      setup one
        deburr all edges
        hold in V80, up top, fixed back, on pair P6x10
        cutter FC40
        touch top with paper 0.05, zero z
        clean top at 0.4, at most 1.2
        deburr edges of top

      setup two
        hold in V80, up bottom, fixed back, on pair P6x10
        seat tapped, both parallels tight
        touch bottom with paper 0.05, zero z
        rough bottom to height leaving 10 thou, pass 0.5
        deburr edges of bottom
        measure height with mic25
        finish bottom to height
      """;

  private static List<Action> at(String text, String place) {
    int offset = text.indexOf(place);
    return Rewritings.at(Fixtures.view("a.plan", text), offset, offset);
  }

  private static Optional<Action> find(List<Action> actions, String title) {
    return actions.stream().filter(action -> action.title().startsWith(title)).findFirst();
  }

  private static String apply(String text, String place, String title) {
    Action action = find(at(text, place), title).orElseThrow();
    assertThat(action.obstacle()).isEmpty();
    return TextEdit.apply(text, action.edits());
  }

  @Test
  void aValueGetsAName() {
    String after = apply(PLAN, "0.05, zero z\n  clean", "Give 0.05 a name");
    assertThat(after)
        .contains("  let edge = 8 mm\n  let value = 0.05\n")
        .contains("touch top with paper value, zero z");
    assertThat(apply(PLAN, "56 +-", "Give 56 a name")).contains("length value +-0.1");
  }

  @Test
  void aValueWithNamesIsDeclaredWhereTheyAreKnown() {
    int start = PLAN.indexOf("width/2");
    View view = Fixtures.view("a.plan", PLAN);
    Action action =
        find(Rewritings.at(view, start, start + "width/2".length()), "Give width/2").orElseThrow();
    assertThat(TextEdit.apply(PLAN, action.edits()))
        .contains("  let value = width/2\n  hole foot in top, dia 5.5, at (edge, value)");
  }

  @Test
  void aNamedValueIsWrittenWhereItIsUsed() {
    String after = apply(PLAN, "edge, width", "Write the value of edge");
    assertThat(after).doesNotContain("edge =").contains("at (8 mm, width/2)");
    String divided = PLAN.replace("edge, width/2", "width/edge * 2 mm, width/2");
    assertThat(apply(divided, "edge *", "Write the value of edge")).contains("width/(8 mm) * 2 mm");
  }

  @Test
  void passesAreCountedAndBack() {
    // After a first roughing cut it is known how much is left, whatever the stock was.
    String known =
        PLAN.replace(
            "  rough bottom",
            "  rough bottom to 22, pass 0.5\n  deburr edges of bottom\n  measure height with"
                + " mic25\n  rough bottom");
    String counted = apply(known, "rough bottom to height", "Count the passes");
    assertThat(counted).containsPattern("leaving 10 thou, by 2 passes of 0\\.\\d+\n");
    String back = apply(counted, "rough bottom to height", "Give only the depth");
    assertThat(back).containsPattern("leaving 10 thou, pass 0\\.\\d+\n");
    assertThat(rules(Fixtures.view("a.plan", counted).checked()))
        .isEqualTo(rules(Fixtures.view("a.plan", known).checked()))
        .isEqualTo(rules(Fixtures.view("a.plan", back).checked()));
    String exact = PLAN.replace("leaving 10 thou, pass 0.5", "pass 0.5");
    Action unknown = find(at(exact, "rough bottom"), "Count the passes").orElseThrow();
    assertThat(unknown.obstacle())
        .isEqualTo("how much comes off is not known well enough for a fixed number of passes");
  }

  @Test
  void lengthsAreWrittenInTheOtherUnitWhereThatIsExact() {
    assertThat(apply(PLAN, "rough bottom", "Write these lengths in millimetres"))
        .contains("leaving 0.254 mm, pass 0.5");
    Action inches = find(at(PLAN, "clean top"), "Write these lengths in inches").orElseThrow();
    assertThat(inches.edits()).isEmpty();
    assertThat(inches.obstacle()).isEqualTo("0.4 is no exact decimal number of inches");
    String inch = PLAN.replace("length 56 +-0.1", "length 2-1/8 in +-0.005");
    assertThat(apply(inch, "length 2", "Write these lengths in millimetres"))
        .contains("length 53.975 mm +-0.127 mm");
  }

  @Test
  void aPlanInInchesIsWrittenInMillimetres() {
    String inch =
        """
        language 1
        plan "Test"
          units in
          use "shop/inch-mill.shop"
        part
          length 2-1/4 +-0.004
          width 1.25 +0/-0.002
          height 3/4 +-0.002
          hole foot in top, dia 7/32, at (0.3, 0.6) from left front, through
        stock
          size 2.4 x 1.4 x 1
          rolled top bottom left right front back
        """;
    String after = apply(inch, "units in", "Write the whole plan in millimetres");
    assertThat(after)
        .contains("units mm", "length 57.15 +-0.1016", "width 31.75 +0/-0.0508")
        .contains("size 60.96 x 35.56 x 25.4", "dia 5.55625, at (7.62, 15.24)");
    Action refused = find(at(PLAN, "units mm"), "Write the whole plan in inches").orElseThrow();
    assertThat(refused.obstacle()).endsWith("is no exact decimal number of inches");
  }

  /** Over the examples: a rewriting that is offered changes no finding and no size. */
  @TestFactory
  Stream<DynamicTest> rewritingsKeepTheMeaning() {
    return Fixtures.examples().stream()
        .filter(
            file -> Fixtures.path(file).matches("(bearing-block|rudder-key|mistakes/sizes).plan"))
        .map(file -> DynamicTest.dynamicTest(Fixtures.path(file), () -> checkAll(file)));
  }

  private static void checkAll(Path file) {
    String text = Fixtures.read(file);
    View view = Fixtures.view(Fixtures.path(file), text);
    int offered = 0;
    for (Section section : view.tree().sections()) {
      for (var line : section.lines()) {
        int middle = view.tree().start(section.origin(line)) + line.getText().length() / 2;
        for (Action action : Rewritings.at(view, middle, middle)) {
          assertThat(action.edits().isEmpty()).isEqualTo(!action.obstacle().isEmpty());
          if (!action.edits().isEmpty()) {
            offered++;
            Checked after =
                Fixtures.view(Fixtures.path(file), TextEdit.apply(text, action.edits())).checked();
            assertThat(rules(after)).as(action.title()).isEqualTo(rules(view.checked()));
          }
        }
      }
    }
    assertThat(offered).isPositive();
  }

  private static List<String> rules(Checked checked) {
    return checked.findings().stream()
        .map(Finding::rule)
        .filter(rule -> !rule.equals("unused-name"))
        .sorted()
        .toList();
  }
}
