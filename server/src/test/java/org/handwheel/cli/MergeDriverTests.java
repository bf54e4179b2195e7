package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.cli.GitFolder.Said;
import org.handwheel.plan.merge.StatementMerge;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What {@code git merge} does with the merge driver. */
@DisabledOnOs(OS.WINDOWS)
final class MergeDriverTests {
  private static final String PLAN = "bearing-block.plan";

  @TempDir Path outside;
  private GitFolder git;
  private String launcher;

  @BeforeEach
  void repository() throws IOException {
    git = GitFolder.ofBearingBlock(outside);
    launcher = GitFolder.launcher(outside).toString();
  }

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
    git.setUp(launcher, "--merge-driver");
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
    git.setUp(launcher, "--merge-driver");
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
}
