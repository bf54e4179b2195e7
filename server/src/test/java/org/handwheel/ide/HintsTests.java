package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.handwheel.ide.HintSettings.Kind;
import org.junit.jupiter.api.Test;

/** Hints behind cuts. */
final class HintsTests {
  private static final String PLAN = Fixture.example("bearing-block.plan");

  private static List<Hints.Hint> hints(HintSettings settings, int start, int end) {
    return Hints.of(Fixture.plan(PLAN).view(), settings, start, end);
  }

  private static List<String> behind(String line, Kind kind) {
    int at = PLAN.indexOf(line) + line.length();
    return hints(HintSettings.ALL, 0, PLAN.length()).stream()
        .filter(hint -> hint.offset() == at && hint.kind() == kind)
        .map(Hints.Hint::label)
        .toList();
  }

  @Test
  void theSizeAndWhatIsLeft() {
    // 24.5 +-0.3 less 0.4 to 1.2 is 23.7 +-0.7; the aim is 20.975, so 2.725 stays.
    assertThat(
            behind(
                "  clean top at 0.4, at most 1.2, travel left to right, offset 2 toward front",
                Kind.SIZE))
        .containsExactly("height 23.70 mm (0.9331 in) +-0.70, 2.725 mm (0.1073 in) left");
    // Roughing leaves 0.25 on the aim.
    assertThat(behind("  rough bottom to height leaving 0.25, pass 0.5", Kind.SIZE).get(0))
        .startsWith("height 21.225 mm")
        .endsWith("0.25 mm (9.8 thou) left");
    assertThat(behind("  finish bottom to height", Kind.SIZE).get(0)).endsWith("at the aim");
  }

  @Test
  void theDialAtTheEnd() {
    // From the touch with 0.05 of paper 1.2 + 0.05 = 1.25 mm goes down at most: 49.2 thou, cut
    // short to the half division that can be read: 49.
    assertThat(
            behind(
                "  clean top at 0.4, at most 1.2, travel left to right, offset 2 toward front",
                Kind.DIAL))
        .containsExactly("Z 49");
  }

  @Test
  void conventionalOrClimb() {
    assertThat(behind("  clean right at 0.5, at most 1.5, conventional", Kind.DIRECTION))
        .containsExactly("conventional");
  }

  @Test
  void eachKindCanBeSwitchedOff() {
    for (Kind kind : Kind.values()) {
      assertThat(hints(new HintSettings(Set.of(kind)), 0, PLAN.length()))
          .isNotEmpty()
          .allMatch(hint -> hint.kind() == kind);
    }
    assertThat(hints(new HintSettings(Set.of()), 0, PLAN.length())).isEmpty();
  }

  @Test
  void onlyTheRangeIsTold() {
    int start = PLAN.indexOf("setup two");
    int end = PLAN.indexOf("setup three");
    assertThat(hints(HintSettings.ALL, start, end))
        .isNotEmpty()
        .allMatch(hint -> hint.offset() >= start && hint.offset() <= end);
  }

  @Test
  void theTooltipTellsTheWholeStory() {
    assertThat(hints(HintSettings.ALL, 0, PLAN.length()).get(0).tooltip().plain())
        .contains("Comes off: ")
        .contains("starting points");
  }
}
