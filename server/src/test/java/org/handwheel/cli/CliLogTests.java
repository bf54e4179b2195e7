package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that writes a reading into a plan. */
final class CliLogTests {
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

  private String read(String file) throws IOException {
    return Files.readString(folder.resolve(file));
  }

  @Test
  void aUnitMayStandBehindABlankAndHoldsForAll() throws IOException {
    String[] reading = {"log", "link.plan", "second-end", "length", "3.165", "3.166", "in"};
    Result result =
        run(
            Stream.concat(Stream.of(reading), Stream.of("--with", "caliper"))
                .toArray(String[]::new));
    assertThat(result.err()).isEmpty();
    assertThat(read("link.plan"))
        .contains("  in second-end: read length 3.165 3.166 in with caliper\n");
    assertThat(run("log", "link.plan", "second-end", "length", "in", "--with", "caliper").err())
        .contains("in: ");
  }

  @Test
  void aReadingIsTheLastLineOfItsPiecesLogAndAllElseStays() throws IOException {
    String before = read("link.plan");
    Result result =
        run(
            "log",
            "link.plan",
            "second-end",
            "length",
            "80.40",
            "80.42",
            "--with",
            "caliper",
            "--piece",
            "the first link");
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    String after = read("link.plan");
    String line = "  in second-end: read length 80.40 80.42 with caliper\n";
    String anchor = "  in bores: note \"reamer took a shaving only\"\n";
    assertThat(after).isEqualTo(before.replace(anchor, anchor + line));
    assertThat(run("check", "link.plan").exitCode()).isZero();
  }

  @Test
  void withoutAPieceItIsTheLastLog() throws IOException {
    String before = read("link.plan");
    assertThat(
            run("log", "link.plan", "SECOND-END", "Length", "79.95mm", "--with", "caliper").err())
        .isEmpty();
    assertThat(read("link.plan"))
        .isEqualTo(
            before.replace(
                "  in second-end: read length 79.94 79.96 with caliper\n",
                "  in second-end: read length 79.94 79.96 with caliper\n"
                    + "  in second-end: read length 79.95 mm with caliper\n"));
  }

  @Test
  void aPlanWithoutALogGetsOneAtItsEndAndTheNextCutIsSaid() throws IOException {
    String before = read("block.plan");
    Result result = run("log", "block.plan", "four", "height", "21.240", "--with", "mic25");
    assertThat(result.err()).isEmpty();
    assertThat(read("block.plan"))
        .isEqualTo(before + "\nlog \"piece 1\"\n  in four: read height 21.240 with mic25\n");
    // 21.24 less the aim, the middle of 20.95 to 21.00, is 0.265: 10 divisions of a thou is
    // nearest.
    assertThat(result.out())
        .contains("block.plan: in four: read height 21.240 with mic25")
        .contains("block.plan, piece 1: after step 8 of setup 4")
        .contains("Finish the bottom to height 20.975 mm (0.8258 in)")
        .contains("Dial: Z: stop at 1 turn + 9 div. from zero")
        .contains("Then: handwheel log block.plan four height READING --with mic25");
  }

  @Test
  void windowsLineEndsAMissingLastOneAndAMarkStay() throws IOException {
    String text = read("block.plan").stripTrailing().replace("\n", "\r\n");
    Files.write(folder.resolve("block.plan"), ("\ufeff" + text).getBytes(StandardCharsets.UTF_8));
    assertThat(run("log", "block.plan", "four", "height", "21.24", "--with", "mic25").exitCode())
        .isZero();
    assertThat(read("block.plan"))
        .isEqualTo(
            "\ufeff"
                + text
                + "\r\n\r\nlog \"piece 1\"\r\n  in four: read height 21.24 with mic25\r\n");
    assertThat(run("log", "block.plan", "four", "height", "20.98", "--with", "mic25").exitCode())
        .isZero();
    assertThat(read("block.plan"))
        .endsWith(
            "  in four: read height 21.24 with mic25\r\n"
                + "  in four: read height 20.98 with mic25\r\n");
  }

  @Test
  void theFilesPermissionsStay() throws IOException {
    Path plan = folder.resolve("block.plan");
    if (!Files.getFileStore(plan).supportsFileAttributeView("posix")) {
      return;
    }
    Files.setPosixFilePermissions(plan, PosixFilePermissions.fromString("rw-r-----"));
    assertThat(run("log", "block.plan", "four", "height", "21.24", "--with", "mic25").exitCode())
        .isZero();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(plan)))
        .isEqualTo("rw-r-----");
  }

  @Test
  void aSizeThatIsOutOfTheDrawingIsWrittenAndSaid() throws IOException {
    // The drawing allows 20.95 to 21.00 at the end of setup four.
    assertThat(run("log", "block.plan", "four", "height", "21.24", "--with", "mic25").exitCode())
        .isZero();
    Result small = run("log", "block.plan", "four", "height", "20.90", "--with", "mic25");
    assertThat(small.exitCode()).isEqualTo(Handwheel.EXIT_FINDINGS);
    assertThat(read("block.plan")).endsWith("  in four: read height 20.90 with mic25\n");
    assertThat(small.out().replaceAll("\\s+", " "))
        .contains("the height was read as 20.90 mm (0.8228 in), 0.05 mm (2 thou) below the least")
        .contains("not within the drawing's 20.95..21.00 mm");
  }

  @Test
  void aSizeThatIsInTheDrawingIsSaidToBe() {
    assertThat(run("log", "block.plan", "four", "height", "21.24", "--with", "mic25").exitCode())
        .isZero();
    Result good = run("log", "block.plan", "four", "height", "20.97", "--with", "mic25");
    assertThat(good.exitCode()).isZero();
    assertThat(good.out().replaceAll("\\s+", " "))
        .contains(": the height is within the drawing's 20.95..21.00 mm");
  }

  @Test
  void whatWouldBeWrongIsNotWritten() throws IOException {
    String before = read("block.plan");
    assertRefused("setup 'fuor'", "fuor", "height", "21.24", "--with", "mic25");
    assertRefused("there is no", "four", "height", "21.24", "--with", "mic52");
    assertRefused("tallness", "four", "tallness", "21.24", "--with", "mic25");
    assertRefused("21,24", "four", "height", "21,24", "--with", "mic25");
    assertRefused("same unit", "four", "height", "21.24mm", "0.836in", "--with", "mic25");
    assertRefused("--with", "four", "height", "21.24");
    assertRefused("quotation", "four", "height", "21.2", "--with", "mic25", "--piece", "a\"b");
    assertThat(read("block.plan")).isEqualTo(before);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(file -> file.getFileName().toString()))
          .noneMatch(name -> name.endsWith(".tmp"));
    }
  }

  private void assertRefused(String words, String... rest) {
    String[] args =
        Stream.concat(Stream.of("log", "block.plan"), Stream.of(rest)).toArray(String[]::new);
    Result result = run(args);
    assertThat(result.exitCode()).as(result.out()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(result.err()).contains(words);
    assertThat(result.out()).isEmpty();
  }

  @Test
  void aTextThatChangedMeanwhileIsNotOverwritten() throws IOException {
    Path plan = folder.resolve("block.plan");
    String before = read("block.plan");
    Files.writeString(plan, before + "\n# someone else was here\n");
    assertThat(NewText.change(plan, before, before + "x"))
        .hasValueSatisfying(why -> assertThat(why).contains("changed meanwhile"));
    assertThat(read("block.plan")).isEqualTo(before + "\n# someone else was here\n");
  }
}
