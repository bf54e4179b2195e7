package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.cli.GitFolder.Said;
import org.handwheel.cli.GitSetup.Extra;
import org.handwheel.examples.OtherUnit;
import org.handwheel.plan.format.Formatter;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@code git-setup} tells git, and git doing it. */
@DisabledOnOs(OS.WINDOWS)
final class GitDriverTests {
  private static final String PLAN = "bearing-block.plan";

  @TempDir Path outside;
  private GitFolder git;
  private String launcher;

  @BeforeEach
  void repository() throws IOException {
    git = GitFolder.ofBearingBlock(outside);
    launcher = GitFolder.launcher(outside).toString();
  }

  private void replace(String from, String to) throws IOException {
    String text = git.read(PLAN);
    assertThat(text).contains(from);
    git.write(PLAN, text.replace(from, to));
  }

  // ---- Printing, writing, undoing

  @Test
  void withoutAnOptionNothingIsWritten() throws IOException {
    String before = git.git("config", "--local", "--list");
    Result result = git.handwheel("git-setup", "--diff-command", "--merge-driver");
    assertThat(result.exitCode()).isZero();
    assertThat(result.outLines())
        .startsWith(
            "# In .gitattributes, to be committed:",
            "*.plan diff=handwheel merge=handwheel",
            "*.shop diff=handwheel merge=handwheel")
        .contains("git config diff.handwheel.textconv 'handwheel git-textconv'");
    assertThat(git.git("config", "--local", "--list")).isEqualTo(before);
    assertThat(git.git("status", "--porcelain")).isEmpty();
  }

  /** What is printed is shell and git can read it. */
  @Test
  void whatIsPrintedDoesWhatWritingDoes() throws IOException {
    Result printed = git.handwheel("git-setup", "--command", "it's/handwheel");
    StringBuilder script = new StringBuilder();
    for (String line : printed.outLines()) {
      if (line.startsWith("git config ")) {
        script.append(line).append('\n');
      }
    }
    git.git("-c", "alias.sh=!sh -c \"$SCRIPT\"", "config", "--local", "test.script", script + "");
    git.git("-c", "alias.play=!git config test.script | sh", "play");
    git.git("config", "--local", "--remove-section", "test");
    String byHand = git.git("config", "--local", "--list");
    git.handwheel("git-setup", "--undo");
    assertThat(git.handwheel("git-setup", "--write", "--command", "it's/handwheel").exitCode())
        .isZero();
    assertThat(git.git("config", "--local", "--list")).isEqualTo(byHand);
    assertThat(git.git("config", "diff.handwheel.textconv"))
        .isEqualTo("it's/handwheel git-textconv\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "*.png binary\n", "*.png binary", "*.png binary\r\n"})
  void undoingPutsBackEveryByte(String attributes) throws IOException {
    if (!attributes.isEmpty()) {
      git.write(".gitattributes", attributes);
    }
    String before = git.git("config", "--local", "--list");
    git.setUp(launcher, "--diff-command", "--merge-driver");
    git.setUp(launcher, "--diff-command", "--merge-driver");
    assertThat(git.git("check-attr", "diff", "merge", "--", "x/y.plan", "z.shop").lines())
        .hasSize(4)
        .allSatisfy(line -> assertThat(line).endsWith(": handwheel"));
    assertThat(git.read(".gitattributes").lines().filter(line -> line.contains("*.plan")))
        .hasSize(1);
    assertThat(git.handwheel("git-setup", "--undo").exitCode()).isZero();
    assertThat(git.git("config", "--local", "--list")).isEqualTo(before);
    if (attributes.isEmpty()) {
      assertThat(git.folder().resolve(".gitattributes")).doesNotExist();
    } else {
      assertThat(git.read(".gitattributes")).isEqualTo(attributes);
    }
  }

  @Test
  void settingsOfAnotherOriginAreLeftAlone() throws IOException {
    git.git("config", "diff.handwheel.textconv", "cat");
    Result result = git.handwheel("git-setup", "--write");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.err()).contains("diff.handwheel.textconv is set to cat already");
    assertThat(git.folder().resolve(".gitattributes")).doesNotExist();
    assertThat(git.git("config", "diff.handwheel.textconv")).isEqualTo("cat\n");
  }

  @ParameterizedTest
  @CsvSource({
    "git version 2.39.5, false",
    "git version 2.46.0, true",
    "git version 2.45.2.windows.1, false",
    "git version 3.0, true",
    "git version 2.50.1 (a builder's), true",
    "git version, false",
    "2, false"
  })
  void exitCodesAreTrustedByGitsThatKnowHow(String version, boolean trusting) {
    GitVersion known = GitVersion.of(version);
    assertThat(known.trustsExitCodes()).isEqualTo(trusting);
    assertThat(GitSetup.configuration("h", List.of(Extra.DIFF_COMMAND), known))
        .containsEntry(
            "diff.handwheel.command", "h git-diff-driver" + (trusting ? " --exit-code" : ""))
        .satisfies(
            keys ->
                assertThat(keys.containsKey("diff.handwheel.trustExitCode")).isEqualTo(trusting));
  }

  @ParameterizedTest
  @CsvSource({"git version 2.43.9, false", "git version 2.44.0, true", "git version 2.46.0, true"})
  void mergesAreLabelledByGitsThatKnowHow(String version, boolean labelled) {
    String driver =
        GitSetup.configuration("h", List.of(Extra.MERGE_DRIVER), GitVersion.of(version))
            .get("merge.handwheel.driver");
    assertThat(driver).startsWith("h merge-driver %O %A %B %L %P");
    assertThat(driver.endsWith(" %S %X %Y")).isEqualTo(labelled);
  }

  // ---- Git doing it

  @Test
  void hunksNameTheirSetup() throws IOException {
    git.setUp(launcher);
    replace("finish bottom to height", "finish bottom to 20.95");
    assertThat(git.git("diff").lines())
        .anyMatch(line -> line.matches("@@ .* @@ setup four \"Bottom, to height\""))
        .contains("-  finish bottom to height", "+  finish bottom to 20.95");
    git.git("checkout", "--quiet", PLAN);
    git.write(
        "shop/inch-mill.shop",
        git.read("shop/inch-mill.shop").replace("  bed-height: 45\n", "  bed-height: 46\n"));
    assertThat(git.git("diff").lines()).anyMatch(line -> line.matches("@@ .* @@ own vise V80 .*"));
  }

  @Test
  void numbersAndUnitsAreOneWord() throws IOException {
    git.setUp(launcher);
    git.write("x.plan", "let a = 1-3/8 in + 10 thou\nlet b = edge-two * 2.50 mm\n");
    git.commit("words");
    git.write("x.plan", "let a = 1-5/8 in + 12 thou\nlet b = edge-one * 2.55 mm\n");
    assertThat(git.git("diff", "--word-diff=plain", "--no-textconv", "x.plan"))
        .contains(
            "let a = [-1-3/8 in-]{+1-5/8 in+} + [-10 thou-]{+12 thou+}",
            "let b = [-edge-two-]{+edge-one+} * [-2.50 mm-]{+2.55 mm+}");
  }

  @Test
  void formattingAndUnitsAreNoDifference() throws IOException {
    git.setUp(launcher);
    git.write(PLAN, git.read(PLAN).replaceAll("(?m)^ +", "        "));
    assertThat(git.git("diff")).isEmpty();
    assertThat(git.git("diff", "--no-textconv")).isNotEmpty();
    git.git("checkout", "--quiet", PLAN);
    git.write(
        "in.plan",
        "language 1\nplan \"Pin\"\n  units in\n\npart\n  length 1-3/8\n  width 0.75 +0/-0.002\n"
            + "  height 10 thou\n");
    git.commit("inches");
    git.write(
        "in.plan",
        "language 1\nplan \"Pin\"\n  units mm\n\npart\n  length 34.925\n"
            + "  width 19.05 +0/-0.0508\n  height 0.254\n");
    assertThat(git.git("diff", "--no-textconv")).isNotEmpty();
    assertThat(git.git("diff")).isEmpty();
  }

  @Test
  void theDiffCommandSpeaksAsAMachinist() throws IOException {
    git.setUp(launcher, "--diff-command");
    git.write(PLAN, Formatter.format(SyntaxTree.parse(PLAN, OtherUnit.rewrite(git.read(PLAN)))));
    assertThat(git.git("diff")).isEmpty();
    git.git("checkout", "--quiet", PLAN);
    replace("finish bottom to height", "finish bottom to 20.80");
    String out = git.git("diff");
    assertThat(out)
        .contains("bearing-block.plan: Feed pump bearing block", "Setup four", "error[overcut]");
    git.commit("too low");
    git.git("mv", PLAN, "block.plan");
    assertThat(git.git("diff", "--cached", "-M", "HEAD")).isEmpty();
    git.git("rm", "--quiet", "-f", "block.plan");
    assertThat(git.git("diff", "--ext-diff", "HEAD", "--", PLAN)).contains("is gone");
    assertThat(git.git("show", "--ext-diff", "--format=", "HEAD~1", "--", PLAN)).contains("is new");
  }

  @Test
  void anUnmergedFileIsNamed() throws IOException {
    git.setUp(launcher, "--diff-command");
    git.git("switch", "--quiet", "--create", "topic");
    replace("rev 2", "rev 3");
    git.commit("three");
    git.git("switch", "--quiet", "main");
    replace("rev 2", "rev 4");
    git.commit("four");
    assertThat(git.tryGit("merge", "topic").exitCode()).isEqualTo(1);
    Said diff = git.tryGit("diff", "--cached");
    assertThat(diff.err()).isEmpty();
    assertThat(diff.exitCode()).isZero();
    assertThat(diff.out()).contains("* Unmerged path " + PLAN);
  }

  /** One version that is no text does not stop a diff of all others. */
  @Test
  void whatIsNoTextIsShownAsItIs() throws IOException {
    git.setUp(launcher);
    Files.write(git.folder().resolve("a.plan"), new byte[] {(byte) 0xff, '\n'});
    replace("finish bottom to height", "finish bottom to 20.90");
    git.git("add", "a.plan", PLAN);
    Said diff = git.tryGit("diff", "--cached");
    assertThat(diff.exitCode()).isZero();
    assertThat(diff.out()).contains("+  finish bottom to 20.9\n");
    assertThat(diff.err()).contains("handwheel: ").doesNotContain("Exception");
    assertThat(git.handwheel("git-textconv", "none.plan").exitCode()).isEqualTo(2);
  }

  @Test
  void aDiffCommandWithTrustedExitCodesNeverSaysMoreThanOne() throws IOException {
    Files.write(git.folder().resolve("x.plan"), new byte[] {(byte) 0xff, 0, 1});
    String[] same = {"bearing-block.plan", PLAN, "0", "100644", PLAN, "0", "100644"};
    String[] other = {"bearing-block.plan", "x.plan", "0", "100644", PLAN, "0", "100644"};
    assertThat(driver(same).exitCode()).isZero();
    assertThat(driver(same).out()).isEmpty();
    assertThat(driver(other).exitCode()).isEqualTo(1);
    assertThat(git.handwheel("git-diff-driver", PLAN, "a", "b").exitCode()).isEqualTo(2);
  }

  private Result driver(String... arguments) {
    List<String> words = new ArrayList<>(List.of("git-diff-driver", "--exit-code"));
    words.addAll(List.of(arguments));
    return git.handwheel(words.toArray(String[]::new));
  }
}
