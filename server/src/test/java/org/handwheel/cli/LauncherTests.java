package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launchers of the distribution: the shell script as it runs, the Windows one as it reads. */
final class LauncherTests {
  private static final Path SHELL_LAUNCHER = Path.of("bin", "handwheel");
  private static final Path WINDOWS_LAUNCHER = Path.of("bin", "handwheel.cmd");

  private static void saysItsVersion(Run run) {
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).startsWith("handwheel (unpackaged)\nJava ");
    assertThat(run.err()).isEmpty();
  }

  /** Runs a copy in a distribution whose jar points at the classes under test. */
  @Nested
  @DisabledOnOs(OS.WINDOWS)
  final class Shell {
    @TempDir Path folder;
    private Path home;
    private Path launcher;

    @BeforeEach
    void unpack() throws IOException {
      home = Files.createDirectory(folder.resolve("steam launch (1898)"));
      launcher = Files.createDirectory(home.resolve("bin")).resolve("handwheel");
      Files.copy(SHELL_LAUNCHER, launcher);
      assertThat(launcher.toFile().setExecutable(true)).isTrue();
      writeJar(Files.createDirectory(home.resolve("lib")).resolve("handwheel.jar"));
    }

    @Test
    void startsFromAnotherFolder() throws Exception {
      Run run = run(Map.of(), launcher.toString(), "--version");
      assertThat(run).satisfies(LauncherTests::saysItsVersion);
    }

    @Test
    void startsThroughSymbolicLinks() throws Exception {
      Path absolute = Files.createSymbolicLink(home.resolve("absolute"), launcher);
      Files.createDirectory(folder.resolve("links"));
      Path relative =
          Files.createSymbolicLink(
              folder.resolve("links").resolve("handwheel"),
              Path.of("..").resolve(folder.relativize(absolute)));
      assertThat(run(Map.of(), relative.toString(), "--version").exitCode()).isZero();
    }

    @Test
    void startsWhenFoundInThePath() throws Exception {
      String path = launcher.getParent() + File.pathSeparator + System.getenv("PATH");
      Run run = run(Map.of("PATH", path), "/bin/sh", "-c", "handwheel --version");
      assertThat(run.exitCode()).isZero();
    }

    @Test
    void startsInACheckout() throws Exception {
      Files.move(home.resolve("lib"), home.resolve("target"));
      assertThat(run(Map.of(), launcher.toString(), "--version").exitCode()).isZero();
    }

    @Test
    void keepsTheExitCodeAndTheArguments() throws Exception {
      Run run = run(Map.of(), launcher.toString(), "check", "two words", "*");
      assertThat(run.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains(": two words: ").contains(": *: ");
    }

    @Test
    void honoursMoreOptionsForJava() throws Exception {
      Map<String, String> options = Map.of("HANDWHEEL_JAVA_OPTS", "-Xmx64m -showversion");
      Run run = run(options, launcher.toString(), "--version");
      assertThat(run.exitCode()).isZero();
      assertThat(run.err()).contains(System.getProperty("java.version"));
    }

    @Test
    void keepsStandardOutputCleanWhenTheClassDataArchiveDoesNotFit() throws Exception {
      Files.writeString(home.resolve("lib").resolve("handwheel.jsa"), "made by another Java");
      Run run = run(Map.of(), launcher.toString(), "--version");
      assertThat(run.exitCode()).isZero();
      saysItsVersion(run);
    }

    @Test
    void saysHowToBuildAMissingJar() throws Exception {
      Files.delete(home.resolve("lib").resolve("handwheel.jar"));
      assertRefused(run(Map.of(), launcher.toString()), "build it with: mvn package");
    }

    @Test
    void saysThatThereIsNoJava() throws Exception {
      Path empty = Files.createDirectory(folder.resolve("empty"));
      Map<String, String> environment =
          Map.of("PATH", empty.toString(), "JAVA_HOME", empty.toString());
      assertRefused(run(environment, "/bin/sh", launcher.toString()), "no Java found");
    }

    @Test
    void refusesAnOldJavaByItsReleaseFile() throws Exception {
      Path old = fakeJava("exit 99");
      Files.writeString(old.resolve("release"), "IMPLEMENTOR=\"X\"\nJAVA_VERSION=\"11.0.2\"\n");
      Run run = run(Map.of("JAVA_HOME", old.toString()), launcher.toString(), "--version");
      assertRefused(run, "is Java 11.0.2");
    }

    @Test
    void refusesAnOldJavaByItsAnswer() throws Exception {
      Path old = fakeJava("echo 'java version \"1.8.0_402\"' >&2");
      Run run = run(Map.of("JAVA_HOME", old.toString()), launcher.toString(), "--version");
      assertRefused(run, "is Java 1.8.0_402");
    }

    @Test
    void saysThatAJavaDoesNotStart() throws Exception {
      Path broken = fakeJava("exit 1");
      Run run = run(Map.of("JAVA_HOME", broken.toString()), launcher.toString(), "--version");
      assertRefused(run, "does not start");
    }

    private void assertRefused(Run run, String words) {
      assertThat(run.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
      assertThat(run.out()).isEmpty();
      assertThat(run.err().lines()).singleElement().asString().contains(words);
    }

    private Path fakeJava(String script) throws IOException {
      Path java = folder.resolve("fake java").resolve("bin").resolve("java");
      Files.createDirectories(java.getParent());
      Files.writeString(java, "#!/bin/sh\n" + script + "\n");
      assertThat(java.toFile().setExecutable(true)).isTrue();
      return java.getParent().getParent();
    }

    private Run run(Map<String, String> environment, String... command) throws Exception {
      Path out = folder.resolve("out");
      Path err = folder.resolve("err");
      ProcessBuilder builder =
          new ProcessBuilder(command)
              .directory(Files.createDirectories(folder.resolve("elsewhere")).toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile());
      Map<String, String> all = new HashMap<>(environment);
      all.putIfAbsent("JAVA_HOME", System.getProperty("java.home"));
      builder.environment().keySet().removeAll(List.of("HANDWHEEL_JAVA_OPTS", "JAVA_TOOL_OPTIONS"));
      builder.environment().putAll(all);
      Process process = builder.start();
      if (!process.waitFor(60, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("still running after a minute: " + Arrays.toString(command));
      }
      return new Run(process.exitValue(), Files.readString(out), Files.readString(err));
    }
  }

  record Run(int exitCode, String out, String err) {}

  private static void writeJar(Path jar) throws IOException {
    Manifest manifest = new Manifest();
    Attributes main = manifest.getMainAttributes();
    main.put(Attributes.Name.MANIFEST_VERSION, "1.0");
    main.put(Attributes.Name.MAIN_CLASS, Main.class.getName());
    main.put(
        Attributes.Name.CLASS_PATH,
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
            .map(entry -> Path.of(entry).toUri().toString())
            .collect(Collectors.joining(" ")));
    try (OutputStream out = Files.newOutputStream(jar)) {
      new JarOutputStream(out, manifest).close();
    }
  }

  /** What can go wrong in a Windows command file, checked where no Windows runs. */
  @Nested
  final class Windows {
    /** A variable or parameter that holds a path, as the command file expands it. */
    private static final Pattern PATH_USE =
        Pattern.compile("%(?:~dp0|HW_JAVA|HW_LIB|HW_RELEASE|JAVA_HOME(?::\"=)?)%?");

    @Test
    void endsEveryLineInCarriageReturnAndLineFeed() throws IOException {
      String text = text();
      assertThat(text).endsWith("\r\n");
      assertThat(text.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
      assertThat(text).matches("\\p{ASCII}+");
    }

    @Test
    void quotesEveryPath() throws IOException {
      List<String> unquoted = new ArrayList<>();
      int uses = 0;
      for (String line : code()) {
        Matcher use = PATH_USE.matcher(line);
        while (use.find()) {
          uses++;
          String before = line.substring(0, use.start()).replace("^\"", "");
          if (before.chars().filter(c -> c == '"').count() % 2 == 0) {
            unquoted.add(line);
          }
        }
      }
      assertThat(uses).isGreaterThan(10);
      assertThat(unquoted).isEmpty();
    }

    @Test
    void keepsPathsOutOfBlocksInParentheses() throws IOException {
      // The first ")" of a path such as "Program Files (x86)" would end such a block.
      assertThat(code()).noneMatch(line -> line.endsWith("(") || line.startsWith(")"));
    }

    @Test
    void endsWithTheExitCodeOfJava() throws IOException {
      List<String> code = code();
      assertThat(code.get(code.size() - 1)).isEqualTo("exit /b %ERRORLEVEL%");
      assertThat(code.get(code.size() - 2)).startsWith("\"%HW_JAVA%\" ").endsWith(" %*");
      assertThat(code.stream().filter(line -> line.startsWith(">&2 echo ")))
          .isNotEmpty()
          .allSatisfy(
              message -> assertThat(code.get(code.indexOf(message) + 1)).isEqualTo("exit /b 2"));
    }

    @Test
    void jumpsOnlyToLabelsItHas() throws IOException {
      List<String> code = code();
      List<String> targets =
          code.stream()
              .filter(line -> line.contains("goto "))
              .map(line -> ":" + line.substring(line.indexOf("goto ") + 5))
              .toList();
      assertThat(targets).isNotEmpty();
      assertThat(code).containsAll(targets);
    }

    @Test
    void leavesTheCodePageOfTheConsoleAlone() throws IOException {
      assertThat(code()).noneMatch(line -> line.contains("chcp"));
    }

    @Test
    void givesJavaTheSameOptionsAsTheShellLauncher() throws IOException {
      assertThat(javaOptions(text()))
          .isNotEmpty()
          .isEqualTo(javaOptions(Files.readString(SHELL_LAUNCHER)));
    }

    private static List<String> javaOptions(String launcher) {
      return Pattern.compile("-X(?:share|log|X):[+\\w:=]+|-Dfile[\\w.=-]+")
          .matcher(launcher)
          .results()
          .map(match -> match.group())
          .sorted()
          .distinct()
          .toList();
    }

    private static String text() throws IOException {
      return Files.readString(WINDOWS_LAUNCHER, StandardCharsets.UTF_8);
    }

    /** The lines without remarks and blank lines. */
    private static List<String> code() throws IOException {
      return text().lines().filter(line -> !line.isBlank() && !line.startsWith("rem")).toList();
    }
  }
}
