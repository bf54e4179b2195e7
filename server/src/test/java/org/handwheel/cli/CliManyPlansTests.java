package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets and pictures of many plans, and what a terminal shows meanwhile. */
final class CliManyPlansTests {
  @TempDir private Path folder;

  /** A clock by which all work takes long. */
  private static LongSupplier slow() {
    AtomicLong now = new AtomicLong();
    return () -> now.addAndGet(TimeUnit.SECONDS.toNanos(1));
  }

  private Path copied() throws IOException {
    Path project = Files.createDirectories(folder.resolve("project"));
    Files.createDirectories(project.resolve("shop"));
    Files.createDirectories(project.resolve("engine"));
    Files.createFile(project.resolve(".handwheel"));
    try (Stream<Path> shops = Files.list(ExampleFolder.PATH.resolve("shop"))) {
      for (Path shop : shops.toList()) {
        Files.copy(shop, project.resolve("shop").resolve(shop.getFileName().toString()));
      }
    }
    Files.copy(ExampleFolder.PATH.resolve("rudder-key.plan"), project.resolve("rudder-key.plan"));
    String flange = Files.readString(ExampleFolder.PATH.resolve("boiler-flange.plan"));
    Files.writeString(
        project.resolve("engine/flange.plan"), flange.replace("\"shop/", "\"../shop/"));
    return project;
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .map(file -> folder.relativize(file).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  @Test
  void aFolderOfPlansGivesAFolderOfSheets() throws IOException {
    Path project = copied();
    Path into = Files.createDirectory(folder.resolve("sheets"));
    Result result = CommandRun.in(project).run("sheet", ".", "-o", into.toString());
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    assertThat(names(into)).containsExactly("engine/flange.html", "rudder-key.html");
    assertThat(Files.readString(into.resolve("engine/flange.html"))).contains("Stop valve flange");
    Result again = CommandRun.in(project).run("sheet", ".", "-o", into.toString());
    assertThat(again.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(again.errLines()).hasSize(2).allMatch(line -> line.contains("--overwrite"));
    Result replaced =
        CommandRun.in(project)
            .run("sheet", "rudder-key.plan", "engine", "-o", into.toString(), "--overwrite");
    assertThat(replaced.err()).isEmpty();
    assertThat(names(into)).contains("flange.html");
  }

  @Test
  void allSetupsOfAPlanGiveAPictureEach() throws IOException {
    Path project = copied();
    Path into = Files.createDirectory(folder.resolve("pictures"));
    Result result = CommandRun.in(project).run("picture", "engine", "-o", into.toString());
    assertThat(result.err()).isEmpty();
    assertThat(names(into))
        .containsExactly("flange-bores.svg", "flange-face.svg", "flange-joint.svg");
    Result one =
        CommandRun.in(project)
            .run("picture", "engine/flange.plan", "joint", "-o", into.toString(), "--overwrite");
    assertThat(one.exitCode()).isZero();
  }

  @Test
  void onePlanThatCannotBeReadDoesNotKeepBackTheOthers() throws IOException {
    Path project = copied();
    Files.write(project.resolve("broken.plan"), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
    Path into = Files.createDirectory(folder.resolve("sheets"));
    Result result = CommandRun.in(project).run("sheet", ".", "-o", into.toString());
    assertThat(result.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(result.errLines()).hasSize(1).allMatch(line -> line.contains("broken.plan"));
    assertThat(names(into)).containsExactly("engine/flange.html", "rudder-key.html");
  }

  @Test
  void severalPlansNeedAFolder() throws IOException {
    Path project = copied();
    for (String[] command :
        new String[][] {
          {"sheet", "."},
          {"sheet", "rudder-key.plan", "engine/flange.plan"},
          {"sheet", ".", "-o", folder.resolve("none").toString()}
        }) {
      Result result = CommandRun.in(project).run(command);
      assertThat(result.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
      assertThat(result.errLines()).hasSize(1).allMatch(line -> line.contains("folder"));
      assertThat(result.out()).isEmpty();
    }
  }

  /** What a terminal shows in the end: each line without what was written over. */
  private static List<String> screen(String err) {
    return Arrays.stream(err.split("\n", -1))
        .map(
            line -> {
              StringBuilder shown = new StringBuilder();
              for (String part : line.split("\r", -1)) {
                shown.replace(0, Math.min(part.length(), shown.length()), part);
              }
              return shown.toString().stripTrailing();
            })
        .filter(line -> !line.isEmpty())
        .toList();
  }

  @Test
  void aTerminalShowsHowFarItIsAndIsCleanInTheEnd() throws IOException {
    Path project = copied();
    Path into = Files.createDirectory(folder.resolve("sheets"));
    for (String[] command :
        new String[][] {
          {"sheet", ".", "-o", into.toString(), "--overwrite"},
          {"picture", ".", "-o", into.toString(), "--overwrite"},
          {"check", "."}
        }) {
      Result seen = CommandRun.in(project).errOnTerminal().clock(slow()).run(command);
      assertThat(seen.err()).as(command[0]).contains("\r2 of 2: ").contains("rudder-key.plan");
      assertThat(screen(seen.err())).as(command[0]).isEmpty();
      assertThat(seen.err().split("\r", -1)).allMatch(part -> part.length() <= 80);
      Result piped = CommandRun.in(project).clock(slow()).run(command);
      assertThat(piped.err()).isEmpty();
      assertThat(piped.out()).isEqualTo(seen.out());
      Result automation =
          CommandRun.in(project).errOnTerminal().with("CI", "true").clock(slow()).run(command);
      assertThat(automation.err()).isEmpty();
    }
    Result quick = CommandRun.in(project).errOnTerminal().clock(() -> 0).run("check", ".");
    assertThat(quick.err()).isEmpty();
  }

  @Test
  void troubleStandsAloneOnATerminal() throws IOException {
    Path project = copied();
    Path into = Files.createDirectory(folder.resolve("sheets"));
    Files.writeString(into.resolve("rudder-key.html"), "mine");
    Result result =
        CommandRun.in(project)
            .errOnTerminal()
            .clock(slow())
            .run("sheet", ".", "-o", into.toString());
    assertThat(screen(result.err())).hasSize(1).allMatch(line -> line.startsWith("handwheel: "));
    assertThat(Files.readString(into.resolve("rudder-key.html"))).isEqualTo("mine");
  }

  @Test
  void aLongSearchForAPlanShowsHowFarItIs() {
    Result result =
        CommandRun.in(ExampleFolder.PATH)
            .errOnTerminal()
            .clock(slow())
            .run("draft", "bearing-block.plan", "--anew");
    assertThat(result.exitCode()).isZero();
    assertThat(result.err()).contains("\rtried ");
    assertThat(screen(result.err())).allMatch(line -> line.startsWith("handwheel: "));
  }

  @Test
  void theProjectSaysHowViewsStandAndOnWhatItPrints() throws IOException {
    Path project = copied();
    Files.writeString(project.resolve(".handwheel"), "projection: third\npaper: letter\n");
    Result third = CommandRun.in(project).run("sheet", "rudder-key.plan");
    assertThat(third.out()).contains("Seen from the right", "size: letter");
    Result first =
        CommandRun.in(project)
            .run("sheet", "rudder-key.plan", "--projection", "first", "--paper", "a4");
    assertThat(first.out()).contains("Seen from the left", "size: a4");
    assertThat(CommandRun.in(project).run("picture", "rudder-key.plan").out())
        .contains("Seen from the right");
    Files.writeString(project.resolve(".handwheel"), "projection: second\n");
    Result wrong = CommandRun.in(project).run("sheet", "rudder-key.plan");
    assertThat(wrong.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(wrong.err()).contains(".handwheel:1: `projection` is `first` or `third`");
  }

  @Test
  void aNameThatEndsInPdfMakesAPdfFile() throws IOException {
    Path project = copied();
    Path file = folder.resolve("key.pdf");
    Result result = CommandRun.in(project).run("sheet", "rudder-key.plan", "-o", file.toString());
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
        .startsWith("%PDF-");
    Result screen =
        CommandRun.in(project).onTerminal(80).run("sheet", "rudder-key.plan", "--format", "pdf");
    assertThat(screen.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(screen.out()).isEmpty();
    Result wrong = CommandRun.in(project).run("sheet", "rudder-key.plan", "--format", "doc");
    assertThat(wrong.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(wrong.err()).contains("html, pdf");
  }
}
