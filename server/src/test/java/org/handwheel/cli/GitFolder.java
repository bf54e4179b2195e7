package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.handwheel.lsp.PackedPages;

/** A git repository of a test's own, which no configuration of the machine or its user reaches. */
final class GitFolder {
  private final Path folder;
  private final Map<String, String> environment = new TreeMap<>();

  /** What a program said. */
  record Said(int exitCode, String out, String err) {}

  private GitFolder(Path folder, Path outside) {
    this.folder = folder;
    environment.put("HOME", outside.toString());
    environment.put("XDG_CONFIG_HOME", outside.toString());
    environment.put("GIT_CONFIG_GLOBAL", outside.resolve("none").toString());
    environment.put("GIT_CONFIG_NOSYSTEM", "1");
    environment.put("GIT_CEILING_DIRECTORIES", outside.toString());
    environment.put("LC_ALL", "C.UTF-8");
    for (String who : List.of("AUTHOR", "COMMITTER")) {
      environment.put("GIT_" + who + "_NAME", "Fitter");
      environment.put("GIT_" + who + "_EMAIL", "fitter@example.org");
      environment.put("GIT_" + who + "_DATE", "2026-03-01T08:00:00Z");
    }
  }

  /** A new repository below a folder, with a branch main and nothing in it. */
  static GitFolder below(Path outside) throws IOException {
    Path folder = Files.createDirectory(outside.resolve("launch"));
    GitFolder git = new GitFolder(folder, outside);
    git.git("init", "--quiet", "--initial-branch=main");
    return git;
  }

  /** A new repository with the bearing block and its shop committed. */
  static GitFolder ofBearingBlock(Path outside) throws IOException {
    GitFolder git = below(outside);
    git.writeExample("shop/inch-mill.shop");
    git.writeExample("bearing-block.plan");
    git.commit("the bearing block");
    return git;
  }

  /** Lets git use Handwheel for plans, started by a launcher. */
  void setUp(String launcher, String... more) {
    List<String> args = new ArrayList<>(List.of("git-setup", "--write", "--command", launcher));
    args.addAll(List.of(more));
    CommandRun.Result result = handwheel(args.toArray(String[]::new));
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
  }

  Path folder() {
    return folder;
  }

  void write(String name, String text) throws IOException {
    Samples.write(folder, name, text);
  }

  String read(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  /** A copy of an example and what it uses, under its own name. */
  void writeExample(String name) throws IOException {
    write(name, Samples.example(name));
  }

  void commit(String message) throws IOException {
    git("add", "--all");
    git("commit", "--quiet", "--message", message);
  }

  /** Runs git, which has to succeed. */
  String git(String... arguments) throws IOException {
    Said said = tryGit(arguments);
    assertThat(said.exitCode()).as(said.err() + said.out()).isZero();
    return said.out();
  }

  Said tryGit(String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of("git", "--no-pager"));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().keySet().removeIf(key -> key.startsWith("GIT_"));
    builder.environment().putAll(environment);
    Path err = Files.createTempFile("git", ".err");
    builder.redirectError(err.toFile());
    try {
      Process process = builder.start();
      process.getOutputStream().close();
      String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
      return new Said(process.exitValue(), out, Files.readString(err));
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    } finally {
      Files.deleteIfExists(err);
    }
  }

  /** The command line run in this repository, within the test. */
  CommandRun.Result handwheel(String... arguments) {
    CommandRun run = CommandRun.in(folder).pages(new PackedPages());
    environment.forEach(run::with);
    return run.run(arguments);
  }

  /** A program for git to start: the classes under test in a Java of their own. */
  static Path launcher(Path folder) throws IOException {
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    Path launcher = folder.resolve("handwheel");
    Files.writeString(
        launcher,
        "#!/bin/sh\nexec "
            + quoted(java.toString())
            + " -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Dfile.encoding=UTF-8 -cp "
            + quoted(System.getProperty("java.class.path"))
            + " org.handwheel.cli.Main \"$@\"\n");
    assertThat(launcher.toFile().setExecutable(true)).isTrue();
    return launcher;
  }

  private static String quoted(String word) {
    return "'" + word.replace("'", "'\\''") + "'";
  }
}
