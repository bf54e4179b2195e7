package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that drafts a plan. */
final class CliDraftTests {
  @TempDir private Path folder;

  @BeforeEach
  void copyExamples() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(
        ExampleFolder.PATH.resolve("shop/inch-mill.shop"), folder.resolve("shop/inch-mill.shop"));
    String text = Files.readString(ExampleFolder.PATH.resolve("bearing-block.plan"));
    Files.writeString(folder.resolve("block.plan"), text.substring(0, text.indexOf("setup one")));
    Files.writeString(folder.resolve("planned.plan"), text);
    // A slot 3 wide; the shop's only slot drill is 6.
    Files.writeString(
        folder.resolve("slipper.plan"),
        Files.readString(ExampleFolder.PATH.resolve("crosshead-slipper.plan"))
            .replace("width 6, depth 1.5", "width 3, depth 1.5"));
  }

  private Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }

  @Test
  void itPrintsAPlanThatChecksClean() throws IOException {
    Result result = run("draft", "block.plan");
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    Files.writeString(folder.resolve("drafted.plan"), result.out());
    Result check = run("check", "drafted.plan");
    assertThat(check.exitCode()).as(check.out()).isZero();
    assertThat(run("format", "--check", "drafted.plan").exitCode()).isZero();
    assertThat(run("draft", "block.plan").out()).isEqualTo(result.out());
  }

  @Test
  void aFileThatIsThereIsReplacedOnlyWhenTold() throws IOException {
    assertThat(run("draft", "block.plan", "-o", "new.plan").exitCode()).isZero();
    String drafted = Files.readString(folder.resolve("new.plan"));
    assertThat(drafted).contains("setup one");
    Files.writeString(folder.resolve("new.plan"), "mine");
    Result refused = run("draft", "block.plan", "-o", "new.plan");
    assertThat(refused.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(refused.err()).contains("new.plan: it is there already", "--overwrite");
    assertThat(Files.readString(folder.resolve("new.plan"))).isEqualTo("mine");
    assertThat(run("draft", "block.plan", "-o", "new.plan", "--overwrite").exitCode()).isZero();
    assertThat(Files.readString(folder.resolve("new.plan"))).isEqualTo(drafted);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(file -> file.getFileName().toString()))
          .noneMatch(name -> name.endsWith(".tmp"));
    }
    assertThat(run("draft", "block.plan", "-o", "nowhere/new.plan").err())
        .contains("no such folder");
  }

  @Test
  void whatIsMissingIsSaidWithFigures() {
    Result result = run("draft", "slipper.plan", "--anew");
    assertThat(result.exitCode()).isEqualTo(Handwheel.EXIT_FINDINGS);
    assertThat(result.out()).isEmpty();
    assertThat(result.err()).contains("slot oil", "3.00 mm (0.1181 in)");
  }

  @Test
  void aPlanWithSetupsIsDraftedAnewOnlyWhenTold() {
    Result refused = run("draft", "planned.plan");
    assertThat(refused.exitCode()).isEqualTo(Handwheel.EXIT_FINDINGS);
    assertThat(refused.err()).contains("setups");
    assertThat(run("draft", "planned.plan", "--anew").exitCode()).isZero();
  }

  @Test
  void severalWaysAreListedAndOneIsTaken() {
    Result listed = run("draft", "block.plan", "--alternatives", "2");
    assertThat(listed.exitCode()).isZero();
    assertThat(listed.out()).contains("1  cost ", "2  cost ").doesNotContain("setup one");
    assertThat(listed.outLines()).allMatch(line -> line.length() <= 80);
    Result second = run("draft", "block.plan", "--alternatives", "2", "--take", "2");
    assertThat(second.out()).contains("setup one");
    assertThat(second.out()).isNotEqualTo(run("draft", "block.plan").out());
    assertThat(run("draft", "block.plan", "--take", "2").exitCode())
        .isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(run("draft", "block.plan", "--alternatives", "0").exitCode())
        .isEqualTo(Handwheel.EXIT_TROUBLE);
  }

  @Test
  void badInputIsOneLine() throws IOException {
    assertThat(run("draft", "none.plan").exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(run("draft", "none.plan").errLines()).hasSize(1);
    Files.writeString(
        folder.resolve("half.plan"), "language 1\nplan \"x\"\n  units mm\npart\n  len");
    Result half = run("draft", "half.plan");
    assertThat(half.exitCode()).isEqualTo(Handwheel.EXIT_FINDINGS);
    assertThat(half.err()).contains("no `stock`");
  }
}
