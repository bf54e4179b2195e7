package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Fixes;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.TextEdit;
import org.junit.jupiter.api.Test;

/** The documented list of rules without a mending, against what is offered on the bad examples. */
final class RulesWithoutFixTests {
  private static final Pattern ROW = Pattern.compile("\\| `([a-z-]+)` \\| (.*?) \\|");

  /** What they offer rests on the shop: {@link #aWiderViseIsOffered}. */
  private static final Set<String> ELSEWHERE = Set.of("jaw-opening");

  private static Map<String, String> documented() throws IOException {
    Path fromTop = Path.of("server", "README.md");
    Path readme = Files.isRegularFile(fromTop) ? fromTop : Path.of("README.md");
    String text = Files.readString(readme);
    int start = text.indexOf("\n## Rules without a mending\n");
    assertThat(start).isPositive();
    int end = text.indexOf("\n## ", start + 4);
    Map<String, String> rows = new TreeMap<>();
    Matcher row = ROW.matcher(text.substring(start, end < 0 ? text.length() : end));
    while (row.find()) {
      assertThat(rows.put(row.group(1), row.group(2))).as(row.group(1)).isNull();
    }
    return rows;
  }

  @Test
  void theListIsThatOfTheRulesThatOfferNothing() throws IOException {
    Set<String> offering = new TreeSet<>();
    RuleFixTests.cases()
        .map(RuleFixTests.Case::view)
        .forEach(
            view -> {
              for (Finding finding : view.checked().findings()) {
                if (view.tree().contains(finding.origin()) && !offering.contains(finding.rule())) {
                  offers(view, finding, offering);
                }
              }
            });
    offering.addAll(ELSEWHERE);
    Set<String> without = new TreeSet<>(Rules.severities().keySet());
    without.removeAll(offering);
    assertThat(offering).hasSizeGreaterThan(30);
    assertThat(documented().keySet()).isEqualTo(without);
    assertThat(documented().values()).allSatisfy(reason -> assertThat(reason).contains(" "));
  }

  @Test
  void aWiderViseIsOffered() {
    String shop =
        """
        language 1
        shop "Two vises"
          units mm
        own vise V60
          jaw-width: 60
          jaw-depth: 20
          opening: 50
        own vise V125
          jaw-width: 125
          jaw-depth: 25
          opening: 110
        """;
    String plan =
        """
        language 1
        plan "Condenser flange blank"
          units mm
          use "two.shop"
        part
          length 60
        stock
          size 62 x 80 x 22
          milled front back top bottom
          sawn left right
        setup one
          hold in V60, up top, fixed back, on bed
        """;
    View view = Fixtures.view("a.plan", plan, Map.of("two.shop", shop));
    Finding finding =
        view.checked().findings().stream()
            .filter(one -> one.rule().equals("jaw-opening"))
            .findFirst()
            .orElseThrow();
    assertThat(Fixes.of(view, finding))
        .singleElement()
        .satisfies(
            action -> {
              assertThat(action.title()).isEqualTo("Hold it in V125");
              assertThat(TextEdit.apply(plan, action.edits())).contains("  hold in V125, up top");
            });
  }

  private static void offers(View view, Finding finding, Set<String> offering) {
    if (!Fixes.of(view, finding).isEmpty()) {
      offering.add(finding.rule());
    }
  }
}
