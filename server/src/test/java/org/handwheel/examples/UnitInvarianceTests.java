package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.handwheel.examples.GeneratedPlan.Spelling;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** A plan means the same in millimetres and in inches: to the picometre, and to the letter. */
class UnitInvarianceTests {
  /** All that is said of a plan. */
  private static List<String> findings(Checked checked) {
    List<String> findings = new ArrayList<>();
    for (Finding finding : checked.findings()) {
      StringBuilder words =
          new StringBuilder()
              .append(checked.tree().line(finding.origin()) + 1)
              .append(' ')
              .append(finding.severity())
              .append(' ')
              .append(finding.rule())
              .append(": ")
              .append(finding.message());
      finding.related().stream()
          .filter(related -> checked.tree().contains(related.origin()))
          .forEach(
              related ->
                  words
                      .append(" / ")
                      .append(checked.tree().line(related.origin()) + 1)
                      .append(' ')
                      .append(related.message()));
      findings.add(words.toString());
    }
    return findings;
  }

  /** Every size that every cut starts from, goes to, takes off and leaves, in picometres. */
  private static List<List<Long>> sizes(Checked checked) {
    return checked
        .run()
        .cuts()
        .map(
            cut -> {
              Length goal = cut.goal() == null ? Length.ZERO : cut.goal();
              return Stream.concat(
                      Stream.of(goal, cut.passDepth(), cut.axialDepth(), cut.uncovered()),
                      Stream.of(cut.before().range(), cut.removal(), cut.after().range())
                          .flatMap(UnitInvarianceTests::ends))
                  .map(Length::picometres)
                  .toList();
            })
        .toList();
  }

  private static Stream<Length> ends(LengthRange range) {
    return Stream.of(range.low(), range.high());
  }

  private static void assertSame(String path, String text, String other) {
    Checked first = ExampleFiles.check(path, text);
    Checked second = ExampleFiles.check(path, other);
    assertThat(findings(second)).as(other).isEqualTo(findings(first));
    assertThat(sizes(second)).as(other).isEqualTo(sizes(first));
  }

  @Property(tries = 150)
  void aPlanOfWholeThouIsTheSameInEveryUnit(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 14) int setups) {
    String mm = GeneratedPlan.text(Spelling.MM, seed, setups);
    assertSame("made.plan", mm, GeneratedPlan.text(Spelling.IN, seed, setups));
    assertSame("made.plan", mm, GeneratedPlan.text(Spelling.THOU, seed, setups));
    assertSame("made.plan", mm, OtherUnit.rewrite(mm));
  }

  /** The law above would say little if the plans of chance made few kinds of mistake. */
  @Test
  void thePlansOfChanceMakeManyMistakesAndManyCuts() {
    Set<String> rules = new TreeSet<>();
    Set<List<Long>> cuts = new HashSet<>();
    for (long seed = 0; seed < 60; seed++) {
      Checked checked = ExampleFiles.check("made.plan", GeneratedPlan.text(Spelling.MM, seed, 12));
      checked.findings().forEach(finding -> rules.add(finding.rule()));
      cuts.addAll(sizes(checked));
    }
    assertThat(rules).doesNotContain("syntax", "bad-value").hasSizeGreaterThan(25);
    assertThat(cuts).hasSizeGreaterThan(300);
  }

  @TestFactory
  Stream<DynamicTest> everyExampleIsTheSameInTheOtherUnit() {
    return ExampleFiles.texts().keySet().stream()
        .filter(path -> path.endsWith(".plan") && !path.endsWith("syntax.plan"))
        .sorted()
        .map(
            path ->
                DynamicTest.dynamicTest(
                    path,
                    () -> {
                      String text = ExampleFiles.text(path);
                      String other = OtherUnit.rewrite(text);
                      assertThat(other).isNotEqualTo(text);
                      assertSame(path, text, other);
                    }));
  }
}
