package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.handwheel.rules.RulePage.Example;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each rule by itself over the examples of its own page. {@link RulePageTests} asks more, but with
 * all rules at once; mutation tests run this one, in which a change of a rule meets its own page
 * and no other.
 */
class OwnPageTests {
  static Stream<String> ids() {
    return Rules.all().stream().map(Rule::id);
  }

  @ParameterizedTest
  @MethodSource("ids")
  void aRuleFindsByItselfWhatItsPageMarks(String id) {
    Rule rule = Rules.all().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
    for (Example example : RulePage.of(id).orElseThrow().examples()) {
      Checked checked = example.check(rule);
      List<String> found =
          checked.findings().stream()
              .map(finding -> RulePage.place(checked.tree(), finding))
              .filter(place -> place.endsWith(" " + id))
              .sorted()
              .toList();
      assertThat(found)
          .as(example.toString())
          .isEqualTo(
              example.expected().stream().filter(place -> place.endsWith(" " + id)).toList());
      checked.findings().forEach(RulePageTests::readsWell);
      assertThat(checked.findings().stream().filter(finding -> finding.rule().equals(id)))
          .allSatisfy(RulePageTests::pointsToTheLineThatCausedIt);
    }
  }
}
