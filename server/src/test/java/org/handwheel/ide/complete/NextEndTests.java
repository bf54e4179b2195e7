package org.handwheel.ide.complete;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.handwheel.ide.Fixtures;
import org.junit.jupiter.api.Test;

/** The hold that is proposed once the four broad faces are made. */
class NextEndTests {
  private static String example() throws IOException {
    Path file =
        Stream.of(Path.of("..", "examples"), Path.of("examples"))
            .filter(Files::isDirectory)
            .findFirst()
            .orElseThrow()
            .resolve("bearing-block.plan");
    return Files.readString(file).replace("\r\n", "\n");
  }

  private static List<String> proposals(String before, String wanted) throws IOException {
    String text = example();
    String begun = text.substring(0, text.indexOf(before)) + wanted + "\n  ";
    return Completion.at(Fixtures.view("a.plan", begun), begun.length()).proposals().stream()
        .filter(one -> one.kind() == Proposal.Kind.STATEMENT)
        .map(Proposal::label)
        .toList();
  }

  /**
   * Both ends follow: out over the end of the jaws where the cutter pushes to the fixed jaw, or
   * standing up (common practice, no source).
   */
  @Test
  void theEndsAreProposedOneAfterTheOther() throws IOException {
    assertThat(proposals("setup five", "setup five"))
        .first()
        .asString()
        .matches("hold in V80, .*(overhang (left|right) \\d+|up (left|right)).*");
    // The first end of the example is the right one.
    assertThat(proposals("setup six", "setup six"))
        .first()
        .asString()
        .matches("hold in V80, .*(overhang left \\d+|up left).*");
    assertThat(proposals("setup seven", "setup seven")).noneMatch(line -> line.startsWith("hold"));
  }
}
