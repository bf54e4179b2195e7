package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Action;
import org.handwheel.ide.actions.Fixes;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Mendings over the bad examples of the rules' pages and the plans that are wrong on purpose. */
final class RuleFixTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  /** A file beside others. */
  record Case(String name, Workspace workspace, String path) {
    View view() {
      return new View(workspace, new Checker(TABLES).check(workspace, path), TABLES);
    }

    Case with(String text) {
      Map<String, SyntaxTree> files = new HashMap<>(workspace.files());
      files.put(path, SyntaxTree.parse(path, text));
      return new Case(name, new Workspace(files, workspace.unreadable()), path);
    }
  }

  private static Stream<Case> bad(String rule) {
    return RulePage.of(rule).stream()
        .flatMap(page -> page.examples().stream())
        .filter(example -> example.shows() == RulePage.Shows.BAD)
        .map(
            example ->
                new Case(
                    example.toString(),
                    example.page().workspace(example.path(), example.text()),
                    example.path()));
  }

  static Stream<Case> cases() {
    Stream<Case> pages = Rules.severities().keySet().stream().flatMap(RuleFixTests::bad);
    List<Case> mistakes = new ArrayList<>();
    for (Path file : Fixtures.examples()) {
      if (Fixtures.path(file).contains("mistakes/")) {
        View view = Fixtures.view(Fixtures.path(file), Fixtures.read(file));
        mistakes.add(new Case(Fixtures.path(file), view.workspace(), Fixtures.path(file)));
      }
    }
    assertThat(mistakes).isNotEmpty();
    return Stream.concat(pages, mistakes.stream());
  }

  @TestFactory
  Stream<DynamicTest> everyMendingMends() {
    return cases().map(one -> DynamicTest.dynamicTest(one.name(), () -> checkAll(one)));
  }

  private static void checkAll(Case one) {
    View view = one.view();
    String text = view.tree().source().text();
    for (Finding finding : view.checked().findings()) {
      if (!view.tree().contains(finding.origin())) {
        continue;
      }
      List<Action> actions =
          Fixes.at(view, view.tree().start(finding.origin()), view.tree().end(finding.origin()));
      for (Action action : actions) {
        Finding mended = action.finding();
        assertThat(mended).isNotNull();
        View after = one.with(TextEdit.apply(text, action.edits())).view();
        assertThat(count(after, mended.rule()))
            .as(one.name() + ": " + action.title())
            .isLessThan(count(view, mended.rule()));
        if (mended.rule().equals("syntax")) {
          continue; // a line that cannot be read hides what is wrong around it
        }
        assertThat(errors(after))
            .as(one.name() + ": " + action.title())
            .allSatisfy(
                (rule, count) ->
                    assertThat(count).isLessThanOrEqualTo(errors(view).getOrDefault(rule, 0L)));
      }
    }
    View fixed = one.with(TextEdit.apply(text, Fixes.all(view))).view();
    assertThat(count(fixed, "syntax")).isLessThanOrEqualTo(count(view, "syntax"));
  }

  /** These have a mending on their own page. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "heavy-pass",
        "power",
        "deflection",
        "speed-out-of-range",
        "rubbing",
        "no-finish-allowance",
        "burr-under-work",
        "measure-before-deburr",
        "touch-missing",
        "jaw-cocks",
        "grips-parallels",
        "bar-missing",
        "bar-not-needed",
        "seat-not-proved",
        "measure-before-finish",
        "lock-conflict",
        "zero-lost",
        "hole-without-zero",
        "tap-depth",
        "ream-allowance",
        "drill-sequence",
        "unused-name",
        "no-units",
        "ignore-reason",
        "unused-ignore",
        "undefined-name",
        "syntax",
        "unknown-property",
        "material-unknown",
        "spacer-too-wide",
        "vise-not-trued",
        "heavy-climb",
        "travel-direction",
        "face-not-covered",
        "parallels-too-tall",
        "too-low-grip",
        "tolerance-not-measurable",
        "unit-suspect",
        "repeated-line",
        "repeated-clause"
      })
  void aRuleWithACertainMendingOffersIt(String rule) {
    List<String> titles = new ArrayList<>();
    bad(rule)
        .map(Case::view)
        .forEach(
            view ->
                view.checked().findings().stream()
                    .filter(finding -> finding.rule().equals(rule))
                    .forEach(
                        finding ->
                            Fixes.of(view, finding).forEach(fix -> titles.add(fix.title()))));
    assertThat(titles).as(rule).isNotEmpty();
  }

  /** The mending to take ends the finding, and no other comes of it, not even a note. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "no-way-down | Take SD6",
        "pocket-corner | Draw the corners with 3.00 mm",
        "outline-gouge | Take",
        "no-steps | Take",
        "outline-not-reached | Cut it once more and leave nothing",
        "feature-order | Do this setup before the edge is cut away",
        "depth-over-flutes | Take",
        "heavy-pass | Go down in 2 levels of",
        "cutter-meets-jaw | Lay it on",
        "cutter-meets-parallel | Lay it on",
        "cutter-meets-table | Lay it on",
        "cutter-meets-stop | Put the stop at the other end",
        "drill-hits-parallel | Lay it on",
        "drill-hits-table | Lay it on",
        "hole-not-made | "
      })
  void aMendingOfHolesAndFeaturesEndsItAndStartsNothing(String rule, @Nullable String title) {
    List<String> titles = new ArrayList<>();
    bad(rule)
        .forEach(
            one -> {
              View view = one.view();
              view.checked().findings().stream()
                  .filter(finding -> finding.rule().equals(rule))
                  .flatMap(finding -> Fixes.of(view, finding).stream())
                  .filter(action -> action.choice() == Action.Choice.PREFERRED)
                  .filter(action -> action.title().startsWith(title == null ? "" : title))
                  .forEach(
                      action -> {
                        titles.add(action.title());
                        String text = TextEdit.apply(view.tree().source().text(), action.edits());
                        Map<String, Long> after = all(one.with(text).view());
                        assertThat(after.getOrDefault(rule, 0L))
                            .as(text)
                            .isLessThan(count(view, rule));
                        assertThat(after)
                            .as(text)
                            .allSatisfy(
                                (id, count) ->
                                    assertThat(count)
                                        .isLessThanOrEqualTo(all(view).getOrDefault(id, 0L)));
                      });
            });
    assertThat(titles).isNotEmpty();
  }

  private static Map<String, Long> all(View view) {
    return view.checked().findings().stream()
        .collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
  }

  /** A plan with this one mistake; the mending to take leaves none. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "heavy-pass         | Take it in 6 passes of",
        "power              | Take it in 2 passes of",
        "deflection         | Repeat the pass without a new depth",
        "speed-out-of-range | Write `speed 930 rpm`",
        "rubbing            | Write `feed 0.12 mm/tooth`"
      })
  void oneMistakeIsMendedAtOnce(String rule, String title) {
    Path file =
        Fixtures.examples().stream()
            .filter(path -> Fixtures.path(path).endsWith("mistakes/" + rule + ".plan"))
            .findFirst()
            .orElseThrow();
    View view = Fixtures.view(Fixtures.path(file), Fixtures.read(file));
    assertThat(view.checked().findings()).extracting(Finding::rule).containsExactly(rule);
    Finding finding = view.checked().findings().get(0);
    Action action = Fixes.of(view, finding).get(0);
    assertThat(action.choice()).isEqualTo(Action.Choice.PREFERRED);
    assertThat(action.title()).startsWith(title);
    Case one = new Case(rule, view.workspace(), Fixtures.path(file));
    String mended = TextEdit.apply(view.tree().source().text(), action.edits());
    assertThat(one.with(mended).view().checked().findings()).isEmpty();
  }

  /** Fed from the side, the chip is thinner than the feed: 0.02 mm of it rubs, 0.05 does not. */
  @Test
  void aNarrowCutIsFedFaster() {
    Path file =
        Fixtures.examples().stream()
            .filter(path -> Fixtures.path(path).endsWith("mistakes/power.plan"))
            .findFirst()
            .orElseThrow();
    String text =
        Fixtures.read(file)
            .replace("feed 0.12 mm/tooth", "feed 0.02 mm/tooth")
            .replace("leaving 0.25, pass 1.8", "leaving 0.5, pass 1.2");
    View view = Fixtures.view(Fixtures.path(file), text);
    Finding finding =
        view.checked().findings().stream()
            .filter(found -> found.rule().equals("rubbing"))
            .findFirst()
            .orElseThrow();
    assertThat(Fixes.of(view, finding))
        .first()
        .satisfies(action -> assertThat(action.title()).matches("Write `feed 0\\.0\\d+ mm/tooth`"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"overcut", "heavy-pass", "jaw-cocks"})
  void silencingIsNeverPreferred(String rule) {
    View view = bad(rule).findFirst().orElseThrow().view();
    List<Action> ignores =
        Fixes.at(view, 0, view.tree().source().length()).stream()
            .filter(action -> action.title().startsWith("Ignore"))
            .toList();
    assertThat(ignores).isNotEmpty();
    assertThat(ignores).allMatch(action -> action.choice() == Action.Choice.POSSIBLE);
  }

  private static long count(View view, String rule) {
    return view.checked().findings().stream()
        .filter(finding -> finding.rule().equals(rule))
        .count();
  }

  private static Map<String, Long> errors(View view) {
    return view.checked().findings().stream()
        .filter(finding -> finding.severity() == Severity.ERROR)
        .collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
  }
}
