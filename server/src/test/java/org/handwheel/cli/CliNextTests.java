package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command for use at the machine, between one reading and the next. */
final class CliNextTests {
  @TempDir private Path folder;

  @BeforeEach
  void copyExamples() throws IOException {
    ExampleFolder.copyShops(folder);
    ExampleFolder.copy("bearing-block.plan", folder.resolve("block.plan"));
    ExampleFolder.copy("bilge-pump-link.plan", folder.resolve("link.plan"));
  }

  private Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }

  @Test
  void itBeginsAtTheBeginningAndEndsWithTheFirstMeasurement() {
    Result result = run("next", "block.plan");
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    assertThat(result.out())
        .startsWith("block.plan: from the beginning; no reading is in the log\n")
        .contains("Setup 1: ", "Then: handwheel log block.plan one height READING --with ")
        .doesNotContain("Setup 2: ")
        .contains("Eye protection");
    assertThat(result.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void afterAReadingItGoesOnWithTurnsThatCountWithIt() {
    assertThat(run("log", "block.plan", "four", "height", "21.24", "--with", "mic25").exitCode())
        .isZero();
    Result near = run("next", "block.plan");
    assertThat(near.out())
        .startsWith("block.plan, piece 1: after step ")
        .contains(" of setup 4\n", "Setup 4: ")
        .contains("Then: handwheel log block.plan four height READING --with mic25")
        .doesNotContain("Setup 5: ");
    String dial = dial(near.out());
    // More is read, so more is wound in.
    assertThat(
            run("log", "block.plan", "four", "height", "21.30", "--with", "mic25", "--piece", "b")
                .exitCode())
        .isZero();
    assertThat(dial(run("next", "block.plan", "--piece", "b").out())).isNotEqualTo(dial);
  }

  private static String dial(String out) {
    return out.lines().filter(line -> line.strip().startsWith("Dial: Z")).findFirst().orElseThrow();
  }

  @Test
  void eachPieceIsWhereItsLogEnds() {
    Result first = run("next", "link.plan", "--piece", "the first link");
    assertThat(first.exitCode()).isZero();
    assertThat(first.out()).startsWith("link.plan, the first link: after step ");
    assertThat(first.out()).contains("Then inspect the part.");
    assertThat(run("next", "link.plan", "--piece", "nobody").err()).contains("no log \"nobody\"");
    assertThat(run("next", "nowhere.plan").exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
  }
}
