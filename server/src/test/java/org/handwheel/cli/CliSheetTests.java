package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that makes sheets. */
final class CliSheetTests {
  @Test
  void writesAFileAndReplacesNoneUnasked(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("block.html").toAbsolutePath();
    String[] command = {"sheet", "bearing-block.plan", "-o", file.toString()};
    Result first = CommandRun.in(ExampleFolder.PATH).run(command);
    assertThat(first.err()).isEmpty();
    assertThat(first.exitCode()).isZero();
    assertThat(Files.readString(file)).startsWith("<!doctype html>").contains("Inspection");
    Result second = CommandRun.in(ExampleFolder.PATH).run(command);
    assertThat(second.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(second.errLines()).hasSize(1);
    assertThat(second.err()).contains("--overwrite");
  }

  @Test
  void printsOneSetupAlone() {
    Result result = CommandRun.in(ExampleFolder.PATH).run("sheet", "bearing-block.plan", "four");
    assertThat(result.exitCode()).isZero();
    assertThat(result.out()).contains("id=\"setup-4\"").doesNotContain("id=\"setup-5\"");
  }

  @Test
  void whatIsNotThereIsSaidInOneLine() {
    for (String[] command :
        new String[][] {
          {"sheet", "bearing-block.plan", "nowhere"},
          {"sheet", "no-such.plan"},
          {"sheet", "bearing-block.plan", "--piece", "none such"}
        }) {
      Result result = CommandRun.in(ExampleFolder.PATH).run(command);
      assertThat(result.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
      assertThat(result.errLines()).hasSize(1);
    }
  }
}
