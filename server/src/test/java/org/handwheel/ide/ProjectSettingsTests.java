package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.handwheel.ide.HintSettings.Kind;
import org.handwheel.ide.Settings.Lens;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.Paper;
import org.junit.jupiter.api.Test;

/** The settings file of a project. */
final class ProjectSettingsTests {
  private static final Settings QUIET = new Settings(new HintSettings(Set.of()), Lens.HIDDEN);

  private static Settings over(Settings editor, String text) {
    ProjectSettings settings = ProjectSettings.parse(text);
    assertThat(settings.problems()).isEmpty();
    return settings.over(editor);
  }

  /** The problems, each as what it marks and what it says. */
  private static List<String> problems(String text) {
    return ProjectSettings.parse(text).problems().stream()
        .map(problem -> text.substring(problem.start(), problem.end()) + " | " + problem.message())
        .toList();
  }

  @Test
  void anEmptyFileSetsNothing() {
    for (String text : List.of("", "\n\r\n", "# only a mark\n", "   # and blanks")) {
      assertThat(over(Settings.USUAL, text)).isEqualTo(Settings.USUAL);
      assertThat(over(QUIET, text)).isEqualTo(QUIET);
    }
  }

  @Test
  void whatItSaysGoesBeforeTheEditor() {
    assertThat(over(Settings.USUAL, "lens: on").lens()).isEqualTo(Lens.SHOWN);
    assertThat(over(Settings.USUAL, "hints: off").hints().shown()).isEmpty();
    assertThat(over(QUIET, "hints.dial: on\r\nlens : ON # here\r\n"))
        .isEqualTo(new Settings(new HintSettings(Set.of(Kind.DIAL)), Lens.SHOWN));
    assertThat(over(new Settings(HintSettings.ALL, Lens.SHOWN), "hints.size: off").hints().shown())
        .containsExactlyInAnyOrder(Kind.DIAL, Kind.DIRECTION);
  }

  @Test
  void oneHintCountsBeforeAllInEitherOrder() {
    for (String text :
        List.of("hints: off\nhints.direction: on\n", "hints.direction: on\nhints: off\n")) {
      assertThat(over(Settings.USUAL, text).hints().shown()).containsExactly(Kind.DIRECTION);
    }
  }

  @Test
  void picturesAndSheets() {
    ProjectSettings settings = ProjectSettings.parse("projection: Third\npaper: letter # here\n");
    assertThat(settings.problems()).isEmpty();
    assertThat(settings.projection()).contains(Projection.THIRD);
    assertThat(settings.paper()).contains(Paper.LETTER);
    assertThat(ProjectSettings.NONE.projection()).isEmpty();
    assertThat(ProjectSettings.NONE.paper()).isEmpty();
    assertThat(problems("projection: second\npaper:\n"))
        .containsExactly(
            "second | `projection` is `first` or `third`", "paper: | `paper` is `a4` or `letter`");
  }

  @Test
  void problemsAreLocatedAndTheRestCounts() {
    String text =
        "  hints.sise: off\nlens on\n\nlens: maybe # ?\nhints:\nlens: on\nhints.dial: off\n";
    assertThat(problems(text))
        .containsExactly(
            "hints.sise | there is no setting `hints.sise`; did you mean `hints.size`?",
            "lens on | a setting is written `key: value`",
            "maybe | `lens` is `on` or `off`",
            "hints: | `hints` is `on` or `off`",
            "lens | `lens` is set on line 4 already");
    assertThat(ProjectSettings.parse(text).over(Settings.USUAL).hints().shown())
        .containsExactlyInAnyOrder(Kind.SIZE, Kind.DIRECTION);
    assertThat(problems("colour: on"))
        .containsExactly(
            "colour | there is no setting `colour`; there are `baseline`, `fail-on`, `hints`,"
                + " `hints.dial`, `hints.direction`, `hints.size`, `lens`, `paper`, `projection`,"
                + " `skip`");
  }

  @Test
  void settingsOfTheCommandLineAreRead() {
    ProjectSettings settings =
        ProjectSettings.parse("fail-on: Warning\nbaseline: ci/known.json # once\nskip: old, a/b\n");
    assertThat(settings.problems()).isEmpty();
    assertThat(settings.failOn()).contains("warning");
    assertThat(settings.baseline()).contains("ci/known.json");
    assertThat(settings.skip()).containsExactly("old", "a/b");
    assertThat(ProjectSettings.NONE.skip()).isEmpty();
  }

  @Test
  void pathsLeadNowhereElse() {
    assertThat(problems("baseline: ../known.json\nskip: a,,b\nfail-on: never\n"))
        .containsExactly(
            "../known.json | `baseline` takes a file below this folder",
            "a,,b | `skip` takes folders below this one, parted by commas",
            "never | `fail-on` is `error`, `warning` or `none`");
    assertThat(problems("baseline: /etc/x")).hasSize(1);
    assertThat(problems("baseline: c:\\x")).hasSize(1);
    assertThat(problems("skip:"))
        .containsExactly("skip: | `skip` takes folders below this one, parted by commas");
  }
}
