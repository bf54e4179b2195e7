package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.cli.GitFolder.Said;
import org.handwheel.cli.GitSetup.Extra;
import org.handwheel.examples.OtherUnit;
import org.handwheel.plan.format.Formatter;
import org.handwheel.plan.merge.StatementMerge;
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
    git = GitFolder.below(outside);
    git.writeExample("shop/inch-mill.shop");
    git.writeExample(PLAN);
    git.commit("the bearing block");
    launcher = GitFolder.launcher(outside).toString();
  }

  private void setUp(String... more) throws IOException {
    List<String> args = new ArrayList<>(List.of("git-setup", "--write", "--command", launcher));
    args.addAll(List.of(more));
    Result result = git.handwheel(args.toArray(String[]::new));
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
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
    setUp("--diff-command", "--merge-driver");
    setUp("--diff-command", "--merge-driver");
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
    assertThat(GitSetup.isTrusting(version)).isEqualTo(trusting);
    assertThat(GitSetup.configuration("h", List.of(Extra.DIFF_COMMAND), trusting))
        .containsEntry(
            "diff.handwheel.command", "h git-diff-driver" + (trusting ? " --exit-code" : ""))
        .satisfies(
            keys ->
                assertThat(keys.containsKey("diff.handwheel.trustExitCode")).isEqualTo(trusting));
  }

  // ---- Git doing it

  @Test
  void hunksNameTheirSetup() throws IOException {
    setUp();
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
    setUp();
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
    setUp();
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
    setUp("--diff-command");
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
    setUp("--diff-command");
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

  // ---- Merging

  private Said mergeOf(String ours, String theirs) throws IOException {
    git.git("switch", "--quiet", "--create", "topic");
    git.write(PLAN, theirs);
    git.commit("theirs");
    git.git("switch", "--quiet", "main");
    git.write(PLAN, ours);
    git.commit("ours");
    return git.tryGit("merge", "--no-edit", "topic");
  }

  @Test
  void neighbouringStatementsMergeThatLinesWouldNot() throws IOException {
    String base = git.read(PLAN);
    String ours = base.replace("leaving 0.3, pass 0.6", "leaving 0.4, pass 0.6");
    String theirs = base.replace("lock x z\n  rough left", "lock x y z\n  rough left");
    assertThat(mergeOf(ours, theirs).exitCode()).isEqualTo(1);
    git.git("merge", "--abort");
    setUp("--merge-driver");
    git.commit("drivers");
    Said merge = git.tryGit("merge", "--no-edit", "topic");
    assertThat(merge.exitCode()).as(merge.err() + merge.out()).isZero();
    assertThat(merge.err()).contains(PLAN + ": merged by statement; check it");
    assertThat(git.read(PLAN))
        .isEqualTo(ours.replace("lock x z\n  rough left", "lock x y z\n  rough left"));
  }

  @Test
  void aRealConflictIsMarkedAsGitMarksIt() throws IOException {
    String base = git.read(PLAN);
    String ours = base.replace("leaving 0.3, pass 0.6", "leaving 0.4, pass 0.6");
    String theirs = base.replace("leaving 0.3, pass 0.6", "leaving 0.2, pass 0.6");
    assertThat(mergeOf(ours, theirs).exitCode()).isEqualTo(1);
    String marked = git.read(PLAN);
    git.git("merge", "--abort");
    setUp("--merge-driver");
    git.commit("drivers");
    Said merge = git.tryGit("merge", "--no-edit", "topic");
    assertThat(merge.exitCode()).isEqualTo(1);
    assertThat(merge.out()).contains("CONFLICT (content)");
    assertThat(git.read(PLAN).replaceAll("(?m)^(<<<<<<<|>>>>>>>) .*$", "$1"))
        .isEqualTo(marked.replaceAll("(?m)^(<<<<<<<|>>>>>>>) .*$", "$1"));
    assertThat(marked).contains("<<<<<<< HEAD");
  }

  /** Byte for byte what git says, wherever the statements do not settle it. */
  @Test
  void theDriverGivesGitsMarksOrAMergeThatIsCertain() throws IOException {
    Random random = new Random(1898);
    int certain = 0;
    int conflicts = 0;
    for (int i = 0; i < 60; i++) {
      String base = lines(random, "base");
      git.write("o", base);
      git.write("a", changed(random, base, "ours"));
      git.write("b", changed(random, base, "theirs"));
      String ours = git.read("a");
      Said plain =
          git.tryGit("merge-file", "-p", "-L", "ours", "-L", "base", "-L", "theirs", "a", "o", "b");
      Result driver = git.handwheel("merge-driver", "o", "a", "b", "7", "x.plan");
      Optional<String> merged = StatementMerge.of(base, ours, git.read("b"));
      if (plain.exitCode() == 0 || merged.isEmpty()) {
        assertThat(git.read("a")).isEqualTo(plain.out());
        assertThat(driver.exitCode()).isEqualTo(plain.exitCode() == 0 ? 0 : 1);
        conflicts += plain.exitCode() == 0 ? 0 : 1;
      } else {
        assertThat(git.read("a")).isEqualTo(merged.get());
        assertThat(driver.exitCode()).isZero();
        certain++;
      }
    }
    assertThat(certain).isGreaterThan(2);
    assertThat(conflicts).isGreaterThan(2);
  }

  private static String lines(Random random, String words) {
    StringBuilder text = new StringBuilder("setup one\n");
    for (int i = 0; i < 6 + random.nextInt(6); i++) {
      text.append("  note \"").append(words).append(i).append("\"\n");
    }
    return text.toString();
  }

  private static String changed(Random random, String base, String words) {
    StringBuilder text = new StringBuilder();
    base.lines()
        .forEach(
            line -> {
              int act = random.nextInt(10);
              String other = "  note \"" + words + random.nextInt(1000) + "\"\n";
              text.append(act < 2 ? other : act == 2 ? "" : line + "\n");
              text.append(act == 3 ? other : "");
            });
    return text.toString();
  }

  /** One version that is no text does not stop a diff of all others. */
  @Test
  void whatIsNoTextIsShownAsItIs() throws IOException {
    setUp();
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
