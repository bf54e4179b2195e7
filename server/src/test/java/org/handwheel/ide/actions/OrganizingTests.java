package org.handwheel.ide.actions;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.syntax.TextEdit;
import org.junit.jupiter.api.Test;

/** What is declared and not used is taken away, and nothing else. */
final class OrganizingTests {
  private static final String USE = "  use \"shop/metric-mill.shop\"\n";

  private static String organized(String text) {
    View view = Fixtures.view("a.plan", text);
    return TextEdit.apply(text, Organizing.edits(view));
  }

  private static String door() throws IOException {
    return Files.readString(Path.of("../examples/hand-hole-door.plan")).replace("\r\n", "\n");
  }

  @Test
  void aTidyPlanStaysAsItIs() throws IOException {
    assertThat(organized(door())).isEqualTo(door());
  }

  @Test
  void aSecondUseOfAFileAndAValueOfNoUseGo() throws IOException {
    String untidy = door().replace(USE, USE + "  let spare = 4\n" + USE);
    assertThat(untidy).isNotEqualTo(door());
    assertThat(organized(untidy)).isEqualTo(door());
  }

  @Test
  void aValueKeptForAReasonStays() throws IOException {
    String kept =
        door().replace(USE, USE + "  let spare = 4  # ignore unused-name: for the second door\n");
    assertThat(organized(kept)).isEqualTo(kept);
  }

  @Test
  void aPlanOfALaterLevelIsLeftAlone() throws IOException {
    String later = door().replace("language 1", "language 9").replace(USE, USE + USE);
    assertThat(Organizing.edits(Fixtures.view("a.plan", later))).isEqualTo(List.of());
  }
}
