package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.handwheel.model.Limit;
import org.handwheel.rules.RulePage.Example;
import org.handwheel.rules.RulePage.Shows;
import org.handwheel.syntax.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every rule has a page, and the page's examples give exactly what the page says. */
class RulePageTests {
  private static final List<String> SECTIONS =
      List.of("Why it matters", "How to put it right", "Settings", "Source");

  /** Findings that one line causes by itself, so that there is no other line to point to. */
  private static final Set<String> NO_OTHER_LINE =
      Set.of(
          "syntax",
          "bad-value",
          "overflow",
          "no-units",
          "language-level",
          "use-path",
          "use-cycle",
          "undefined-name",
          "misplaced-line",
          "repeated-clause",
          "missing-line",
          "missing-clause",
          "missing-property",
          "unknown-property",
          "ignore-reason",
          "unused-ignore",
          "material-unknown",
          "unused-name");

  private static final Pattern METRIC = Pattern.compile("\\d mm\\b(?! \\(|\\.\\.)");
  private static final Pattern BARE_INCH =
      Pattern.compile("(?<![(.\\d])[\\d.]+ (in|thou)\\b(?!\\))");
  private static final Pattern WORD = Pattern.compile("`([a-z]+(?:-[a-z]+)*)`");

  static Stream<String> ids() {
    return Rules.severities().keySet().stream();
  }

  private static RulePage page(String id) {
    return RulePage.of(id).orElseThrow(() -> new AssertionError("there is no page pages/" + id));
  }

  @ParameterizedTest
  @MethodSource("ids")
  void aRuleHasAWholePage(String id) {
    RulePage page = page(id);
    assertThat(page.text()).startsWith("# " + id + "\n\n").endsWith("\n");
    assertThat(page.lead()).endsWith(".").doesNotContain("```").doesNotStartWith("#");
    assertThat(page.lead().replace("\n", " ").split("\\. ", -1)).as("one sentence").hasSize(1);
    for (String section : SECTIONS) {
      assertThat(page.section(section)).as(section).isNotEmpty();
    }
    assertThat(page.examples().stream().map(Example::shows)).contains(Shows.BAD, Shows.GOOD);
  }

  @ParameterizedTest
  @MethodSource("ids")
  void aPageNamesTheUsualSeverityAndLimitsThatExist(String id) {
    String settings = page(id).section("Settings");
    assertThat(settings)
        .contains("Severity: " + Rules.severities().get(id).name().toLowerCase(Locale.ROOT));
    assertThat(WORD.matcher(settings).results().map(word -> word.group(1)))
        .as("limits")
        .allMatch(word -> word.equals(id) || Limit.named(word).isPresent());
  }

  @ParameterizedTest
  @MethodSource("ids")
  void aPagesExamplesGiveTheFindingsTheyMarkAndNoOthers(String id) {
    for (Example example : page(id).examples()) {
      Checked checked = example.check();
      List<String> found =
          checked.findings().stream()
              .map(finding -> RulePage.place(checked.tree(), finding))
              .sorted()
              .toList();
      if (!found.equals(example.expected())) {
        throw new AssertionError(difference(example, checked));
      }
      if (example.shows() == Shows.BAD) {
        assertThat(found).as("the page's own rule").anyMatch(place -> place.endsWith(" " + id));
      }
      checked.findings().forEach(RulePageTests::readsWell);
      checked.findings().forEach(RulePageTests::pointsToTheLineThatCausedIt);
    }
  }

  private static String difference(Example example, Checked checked) {
    StringBuilder words = new StringBuilder(example + "\nmarked:");
    example.expected().forEach(place -> words.append("\n  ").append(place));
    words.append("\nfound:");
    for (Finding finding : checked.findings()) {
      words
          .append("\n  ")
          .append(RulePage.place(checked.tree(), finding))
          .append("  ")
          .append(finding.message());
    }
    return words.toString();
  }

  static void readsWell(Finding finding) {
    // Text in backquotes is text of a plan, not of the message.
    String message = finding.message().replaceAll("`[^`]*`", "`...`");
    assertThat(message)
        .doesNotContain("null")
        .doesNotEndWith(".")
        .doesNotContain("  ")
        .doesNotContainPattern(METRIC)
        .doesNotContainPattern(BARE_INCH);
    finding
        .related()
        .forEach(
            related -> assertThat(related.message()).doesNotContain("null").doesNotEndWith("."));
  }

  static void pointsToTheLineThatCausedIt(Finding finding) {
    if (!NO_OTHER_LINE.contains(finding.rule())) {
      assertThat(finding.related()).as(finding.rule() + ": " + finding.message()).isNotEmpty();
    }
  }

  @Test
  void thereIsNoPageOfAnUnknownRule() throws IOException, URISyntaxException {
    Path pages = Path.of(Objects.requireNonNull(Rules.class.getResource("pages")).toURI());
    try (Stream<Path> files = Files.list(pages)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .allMatch(name -> name.endsWith(".md"))
          .map(name -> name.substring(0, name.length() - 3))
          .allMatch(id -> Rules.severities().containsKey(id));
    }
  }

  @Test
  void rulesAreNamedOnce() {
    List<String> ids = Rules.all().stream().map(Rule::id).toList();
    assertThat(ids).doesNotHaveDuplicates();
    assertThat(ids).doesNotContainAnyElementsOf(FindingRules.all().keySet());
    assertThat(Arrays.asList(ids.toArray()))
        .allMatch(id -> id.toString().matches("[a-z]+(-[a-z]+)*"));
  }
}
