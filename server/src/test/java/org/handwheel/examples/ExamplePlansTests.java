package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.handwheel.examples.ExampleFiles.Found;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Plan;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Rules;
import org.handwheel.units.Length;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every example checks clean, and every deliberate mistake is found where it is marked. */
class ExamplePlansTests {
  private static final Pattern MARKER = Pattern.compile("# expect: (.+)$");

  private static Stream<String> paths(Predicate<String> wanted) {
    return ExampleFiles.texts().keySet().stream().filter(wanted).sorted();
  }

  private static boolean isWrong(String path) {
    return path.startsWith("mistakes/");
  }

  private static boolean isPlan(String path) {
    return path.endsWith(".plan") && !isWrong(path);
  }

  @TestFactory
  Stream<DynamicTest> examplesCheckClean() {
    return paths(path -> !isWrong(path))
        .map(path -> DynamicTest.dynamicTest(path, () -> checksClean(path)));
  }

  private static void checksClean(String path) {
    Checked checked = ExampleFiles.check(path);
    assertThat(checked.findings()).as(ExampleFiles.words(checked)).isEmpty();
  }

  @TestFactory
  Stream<DynamicTest> mistakesAreFoundWhereTheyAreMarked() {
    return paths(ExamplePlansTests::isWrong)
        .map(path -> DynamicTest.dynamicTest(path, () -> matchesItsMarkers(path)));
  }

  private static void matchesItsMarkers(String path) {
    Checked checked = ExampleFiles.check(path);
    List<Found> marked = markers(ExampleFiles.text(path));
    assertThat(marked).isNotEmpty();
    assertThat(Rules.severities().keySet())
        .containsAll(marked.stream().map(Found::rule).collect(Collectors.toSet()));
    assertThat(ExampleFiles.found(checked))
        .as(ExampleFiles.words(checked))
        .containsExactlyInAnyOrderElementsOf(marked);
  }

  private static List<Found> markers(String text) {
    List<Found> marked = new ArrayList<>();
    List<String> lines = text.lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      Matcher matcher = MARKER.matcher(lines.get(i));
      if (matcher.find()) {
        for (String rule : matcher.group(1).split(",", -1)) {
          marked.add(new Found(i + 1, rule.strip()));
        }
      }
    }
    return marked;
  }

  @Test
  void thereIsAWrongPlanForEveryGroupOfRules() {
    assertThat(paths(ExamplePlansTests::isWrong))
        .contains(
            "mistakes/sizes.plan",
            "mistakes/holding.plan",
            "mistakes/cutting.plan",
            "mistakes/dials.plan",
            "mistakes/names-and-values.plan",
            "mistakes/syntax.plan");
  }

  @Test
  void thePlansShowWhatTheyAreFor() {
    Map<String, String> texts = ExampleFiles.texts();
    List<String> plans = paths(ExamplePlansTests::isPlan).toList();
    assertThat(plans).hasSizeGreaterThanOrEqualTo(8);
    List<Plan> built = plans.stream().map(path -> ExampleFiles.check(path).plan()).toList();

    assertThat(built).as("a log of readings").anyMatch(plan -> !plan.logs().isEmpty());
    assertThat(built)
        .as("thin stock on a parallel of its own thickness, with a second one beside it")
        .anyMatch(plan -> plan.setups().stream().anyMatch(s -> s.hold().beside() != null));
    assertThat(built)
        .as("saw-cut bar squared on all six sides")
        .anyMatch(
            plan ->
                plan.stock().skins().size() == 6
                    && plan.stock().skins().values().stream()
                        .allMatch(skin -> skin.value().words().equals("as sawn")));
    assertThat(plans)
        .as("a metric drawing on inch dials")
        .anyMatch(path -> texts.get(path).contains("units mm") && hasDials(path, "0.1"));
    assertThat(plans)
        .as("an inch drawing on metric dials")
        .anyMatch(path -> texts.get(path).contains("units in") && hasMetricDials(path));
    assertThat(plans)
        .as("a rule ignored for a reason")
        .anyMatch(path -> texts.get(path).contains("# ignore "));
    assertThat(ExampleFiles.check("bearing-block.plan").run().cuts())
        .as("an end cut with the side of the cutter")
        .anyMatch(cut -> cut.normal().axis() == Axis.X);
  }

  private static boolean hasDials(String path, String inches) {
    return lead(path).equals(Length.inches(inches));
  }

  private static boolean hasMetricDials(String path) {
    return lead(path).equals(Length.mm("2"));
  }

  private static Length lead(String path) {
    Owned.Machine machine = ExampleFiles.check(path).plan().machine();
    return machine.screw(Axis.X).lead();
  }
}
