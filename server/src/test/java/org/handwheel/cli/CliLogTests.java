package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that writes a reading into the log. */
final class CliLogTests {
  private static final Path EXAMPLES =
      Stream.of(Path.of("..", "examples"), Path.of("examples"))
          .filter(Files::isDirectory)
          .findFirst()
          .orElseThrow();

  @TempDir private Path folder;

  @BeforeEach
  void copyExamples() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.createFile(folder.resolve(".handwheel"));
    for (String name :
        new String[] {
          "shop/inch-mill.shop",
          "shop/metric-mill.shop",
          "bearing-block.plan",
          "bilge-pump-link.plan"
        }) {
      Files.copy(EXAMPLES.resolve(name), folder.resolve(name));
    }
  }

  private String text(String plan) throws IOException {
    return Files.readString(folder.resolve(plan));
  }

  @Test
  void aPlanWithoutALogGetsOneBeforeItsInspection() throws IOException {
    String before = text("bearing-block.plan");
    Result result =
        CommandRun.in(folder)
            .run("log", "bearing-block.plan", "four", "height", "21.22", "--with", "mic25");
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    String line = "log \"the first one\"\n  in four: read height 21.22 with mic25\n\n";
    assertThat(text("bearing-block.plan"))
        .isEqualTo(before.replace("inspect\n", line + "inspect\n"));
    CommandRun.in(folder)
        .run("log", "bearing-block.plan", "four", "height", "20.98", "20.97", "--with", "mic25");
    assertThat(text("bearing-block.plan"))
        .isEqualTo(
            before.replace(
                "inspect\n",
                "log \"the first one\"\n  in four: read height 21.22 with mic25\n"
                    + "  in four: read height 20.98 20.97 with mic25\n\ninspect\n"));
  }

  @Test
  void theLineGoesIntoTheLogOfItsPieceAndLineEndsStay() throws IOException {
    Path file = folder.resolve("bilge-pump-link.plan");
    String before = text("bilge-pump-link.plan").replace("\n", "\r\n");
    Files.writeString(file, "\uFEFF" + before);
    Result result =
        CommandRun.in(folder)
            .run(
                "log",
                "bilge-pump-link.plan",
                "second-end",
                "length",
                "80.01",
                "--with",
                "caliper",
                "--piece",
                "the first link");
    assertThat(result.err()).isEmpty();
    String note = "  in bores: note \"reamer took a shaving only\"\r\n";
    assertThat(text("bilge-pump-link.plan"))
        .isEqualTo(
            "\uFEFF"
                + before.replace(
                    note, note + "  in second-end: read length 80.01 with caliper\r\n"));
  }

  @Test
  void whatThePlanCannotTakeIsRefusedInOneLine() throws IOException {
    String before = text("bearing-block.plan");
    for (String[] arguments :
        new String[][] {
          {"four", "height", "21,22", "--with", "mic25"},
          {"four", "height", "21.22", "--with", "no-such"},
          {"nowhere", "height", "21.22", "--with", "mic25"},
          {"four", "depth", "21.22", "--with", "mic25"},
          {"four", "height", "21.22\ninspect", "--with", "mic25"},
          {"four", "height", "21.22 # x", "--with", "mic25"}
        }) {
      String[] command =
          Stream.concat(Stream.of("log", "bearing-block.plan"), Stream.of(arguments))
              .toArray(String[]::new);
      Result result = CommandRun.in(folder).run(command);
      assertThat(result.exitCode()).as(String.join(" ", arguments)).isEqualTo(2);
      assertThat(text("bearing-block.plan")).isEqualTo(before);
    }
  }
}
