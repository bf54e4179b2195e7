package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.rules.RulePage.Example;
import org.junit.jupiter.api.Test;

/**
 * The findings of all pages' examples in one test: mutation tests run each test by itself, and one
 * for each example as in {@link RulePageTests} would take them hours.
 */
class AllPagesTests {
  @Test
  void examplesGiveTheFindingsTheyMark() {
    List<String> wrong = new ArrayList<>();
    for (String id : Rules.severities().keySet()) {
      for (Example example : RulePage.of(id).orElseThrow().examples()) {
        Checked checked = example.check();
        List<String> found =
            checked.findings().stream()
                .map(finding -> RulePage.place(checked.tree(), finding))
                .sorted()
                .toList();
        if (!found.equals(example.expected())) {
          wrong.add(example + ": " + found);
        }
      }
    }
    assertThat(wrong).isEmpty();
  }
}
