package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that puts files into their usual form. */
final class CliFormatTests {
  private static final String MESSY = "plan \"Gland\"\nunits mm\npart\nlength   5\n";
  private static final String TIDY = "plan \"Gland\"\n  units mm\n\npart\n  length 5\n";

  @TempDir private Path folder;

  private CommandRun.Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }

  @Test
  void filesAreFormattedInPlace() throws IOException {
    Path plan = Samples.write(folder, "a.plan", MESSY);
    Path shop = Samples.write(folder, "shop/b.shop", "shop\nunits   mm\n");
    CommandRun.Result result = run("format");
    assertThat(result.exitCode()).isZero();
    assertThat(result.out() + result.err()).isEmpty();
    assertThat(Files.readString(plan)).isEqualTo(TIDY);
    assertThat(Files.readString(shop)).isEqualTo("shop\n  units mm\n");
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrder("a.plan", "shop");
    }
  }

  @Test
  void checkingChangesNothingAndTells() throws IOException {
    Path plan = Samples.write(folder, "a.plan", MESSY);
    Samples.write(folder, "b.plan", TIDY);
    CommandRun.Result result = run("format", "--check");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.out()).isEqualTo("a.plan\n");
    assertThat(Files.readString(plan)).isEqualTo(MESSY);
    assertThat(run("format", "--check", "b.plan").exitCode()).isZero();
  }

  @Test
  void theDifferenceIsShown() throws IOException {
    Path plan = Samples.write(folder, "a.plan", MESSY);
    CommandRun.Result result = run("format", "--diff", "a.plan");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.outLines())
        .containsExactly(
            "--- a.plan",
            "+++ a.plan",
            "@@ -1,4 +1,5 @@",
            " plan \"Gland\"",
            "-units mm",
            "+  units mm",
            "+",
            " part",
            "-length   5",
            "+  length 5");
    assertThat(Files.readString(plan)).isEqualTo(MESSY);
  }

  /** A plan that goes through a pipe is a file, whatever the terminal can show. */
  @Test
  void standardOutputIsUtf8() {
    String plan = "plan \"Glande \u00e9troite \u00b1\"\n  units mm\n";
    assertThat(
            CommandRun.in(folder)
                .charset(StandardCharsets.UTF_8)
                .reading(plan)
                .run("format", "-")
                .out())
        .isEqualTo(plan);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CommandRun.in(folder).charset(StandardCharsets.US_ASCII).reading(plan).run(out, "format", "-");
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(plan);
  }

  @Test
  void standardInputStandsForAFile() {
    CommandRun run = CommandRun.in(folder).reading("shop\nunits   mm\n");
    CommandRun.Result diff = run.run("format", "--diff", "-", "--stdin-filename", "shop/b.shop");
    assertThat(diff.outLines()).startsWith("--- shop/b.shop", "+++ shop/b.shop");
    CommandRun again = CommandRun.in(folder).reading("shop\nunits   mm\n");
    CommandRun.Result check = again.run("format", "--check", "-", "--stdin-filename", "b.shop");
    assertThat(check.out()).isEqualTo("b.shop\n");
    assertThat(check.exitCode()).isEqualTo(1);
  }

  @Test
  void foldersAProjectSkipsAreLeftAlone() throws IOException {
    Samples.write(folder, ".handwheel", "skip: old\n");
    Path old = Samples.write(folder, "old/a.plan", MESSY);
    Path own = Samples.write(folder, "a.plan", MESSY);
    assertThat(run("format").exitCode()).isZero();
    assertThat(Files.readString(own)).isEqualTo(TIDY);
    assertThat(Files.readString(old)).isEqualTo(MESSY);
    assertThat(run("format", "old").exitCode()).isZero();
    assertThat(Files.readString(old)).isEqualTo(TIDY);
  }

  @Test
  void standardInputGoesToStandardOutput() {
    CommandRun.Result result = CommandRun.in(folder).reading(MESSY).run("format", "-");
    assertThat(result.exitCode()).isZero();
    assertThat(result.out()).isEqualTo(TIDY);
    assertThat(CommandRun.in(folder).reading(MESSY).run("format", "--check", "-").exitCode())
        .isEqualTo(1);
  }

  @Test
  void whatIsNoTextIsRefusedAndLeft() throws IOException {
    byte[] binary = {'p', 'l', 'a', 'n', 0, 1};
    byte[] latin = "plan \"Stopfb\u00fcchse\"".getBytes(StandardCharsets.ISO_8859_1);
    Path first = Samples.write(folder, "a.plan", binary);
    Path second = Samples.write(folder, "b.plan", latin);
    Path third = Samples.write(folder, "c.plan", MESSY);
    CommandRun.Result result = run("format");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.errLines()).hasSize(2).allMatch(line -> line.startsWith("handwheel: "));
    assertThat(Files.readAllBytes(first)).isEqualTo(binary);
    assertThat(Files.readAllBytes(second)).isEqualTo(latin);
    assertThat(Files.readString(third)).isEqualTo(TIDY);
  }

  @Test
  void namesThatFitNothingAreTrouble() throws IOException {
    Samples.write(folder, "a.txt", "a");
    assertThat(run("format", "a.txt").err()).contains("a.txt: it is neither a plan");
    assertThat(run("format", "no.plan").err()).contains("no.plan: there is no such file");
    assertThat(run("format", "--check", "--diff").exitCode()).isEqualTo(2);
  }

  @Test
  void permissionsAndLinksAreKept() throws IOException {
    if (!Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      return;
    }
    Path plan = Samples.write(folder, "a.plan", MESSY);
    Files.setPosixFilePermissions(plan, PosixFilePermissions.fromString("rw-r-----"));
    Path link = Files.createSymbolicLink(folder.resolve("b.plan"), plan);
    assertThat(run("format", "b.plan").exitCode()).isZero();
    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(plan)).isEqualTo(TIDY);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(plan)))
        .isEqualTo("rw-r-----");
  }

  @Test
  void aByteOrderMarkAndOtherLineEndsAreSeen() throws IOException {
    Path plan = Samples.write(folder, "a.plan", TIDY.replace("\n", "\r\n"));
    assertThat(run("format", "--check").exitCode()).isZero();
    Samples.write(folder, "a.plan", "part\r  length 5\r");
    assertThat(run("format", "--diff").out()).isEqualTo("a.plan: only line ends change\n");
    assertThat(run("format").exitCode()).isZero();
    assertThat(Files.readString(plan)).isEqualTo("part\n  length 5\n");
  }
}
