package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.time.Duration;
import java.util.Map;
import org.handwheel.examples.GeneratedPlan.Spelling;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;

/** A plan far longer than any shop would write is checked in one go. */
class LargePlanTests {
  private static final int LINES = 5_000;

  /** Generous: the point is that nothing grows with the square of the plan. */
  private static final Duration BOUND = Duration.ofSeconds(60);

  @Test
  void aPlanOfFiveThousandLinesIsChecked() {
    String text = GeneratedPlan.text(Spelling.MM, 7, 640);
    assertThat(text.lines().count()).isBetween((long) LINES, LINES + 1500L);
    Map<String, String> texts = ExampleFiles.texts();
    SyntaxTree shop = SyntaxTree.parse("shop/inch-mill.shop", texts.get("shop/inch-mill.shop"));

    long start = System.nanoTime();
    Checked checked =
        ExampleFiles.CHECKER.check(
            Workspace.of(SyntaxTree.parse("large.plan", text), shop), "large.plan");
    Duration took = Duration.ofNanos(System.nanoTime() - start);

    System.out.printf(
        "%d lines, %d cuts, %d findings in %d ms%n",
        text.lines().count(),
        checked.run().cuts().count(),
        checked.findings().size(),
        took.toMillis());
    assertThat(checked.plan().setups()).hasSize(640);
    assertThat(checked.findings()).noneMatch(finding -> finding.rule().equals("syntax"));
    assertThat(took).isLessThan(BOUND);
    assertThatCode(() -> checked.findings().forEach(f -> checked.tree().line(f.origin())))
        .doesNotThrowAnyException();
  }
}
