package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.OtherUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Differences and new findings between revisions of real repositories. */
final class GitReviewTests {
  private static final List<String> PLANS =
      List.of("bearing-block.plan", "crosshead-slipper.plan", "rudder-key.plan");

  @TempDir Path outside;
  private GitFolder git;

  @BeforeEach
  void repository() throws IOException {
    git = GitFolder.below(outside);
    git.writeExample("shop/inch-mill.shop");
    git.writeExample("shop/metric-mill.shop");
    for (String plan : PLANS) {
      git.writeExample(plan);
    }
    git.commit("the plans of the launch");
  }

  private void replace(String file, String from, String to) throws IOException {
    String text = git.read(file);
    assertThat(text).contains(from);
    git.write(file, text.replace(from, to));
  }

  @Test
  void aCommitWithoutChangesIsNoChange() {
    Result result = git.handwheel("diff", "--git", "HEAD");
    assertThat(result.err()).isEmpty();
    assertThat(result.out()).isEqualTo("no change\n");
    assertThat(result.exitCode()).isZero();
  }

  @Test
  void theWorkTreeIsComparedWithARevision() throws IOException {
    replace("rudder-key.plan", "units", "units ");
    git.write("bearing-block.plan", OtherUnit.rewrite(git.read("bearing-block.plan")));
    assertThat(git.handwheel("diff", "--git", "HEAD").out()).isEqualTo("no change\n");
    replace("bearing-block.plan", "finish bottom to height", "finish bottom to 20 mm");
    Result result = git.handwheel("diff", "--git", "HEAD");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.out()).contains("bearing-block.plan").contains("error[overcut]");
  }

  @Test
  void branchesAreComparedFromWhereTheyPart() throws IOException {
    git.git("switch", "--quiet", "--create", "topic");
    replace(
        "bearing-block.plan",
        "pass 0.5\n  deburr edges of front",
        "pass 0.4\n  deburr edges of front");
    git.commit("front in lighter passes");
    git.git("switch", "--quiet", "main");
    replace("rudder-key.plan", "plan \"", "plan \"New ");
    git.commit("another title");
    Result fromBase = git.handwheel("diff", "--git", "main...topic");
    assertThat(fromBase.out()).contains("bearing-block.plan").contains("1 file is different");
    assertThat(fromBase.out()).contains("Setup three").contains("depth per pass: 0.5");
    assertThat(git.handwheel("diff", "--git", "main", "topic").out()).contains("2 files are");
    assertThat(git.handwheel("diff", "--git", "main..topic", "rudder-key.plan").out())
        .contains("1 file is different")
        .doesNotContain("bearing-block");
  }

  @Test
  void aRenamedFileIsComparedWithWhatItWas() throws IOException {
    git.git("switch", "--quiet", "--create", "topic");
    Files.createDirectory(git.folder().resolve("engine"));
    git.git("mv", "bearing-block.plan", "engine/pump-block.plan");
    replace("engine/pump-block.plan", "\"shop/", "\"../shop/");
    git.commit("moved to the engine's folder");
    assertThat(git.handwheel("diff", "--git", "main", "topic").out()).isEqualTo("no change\n");
    replace("engine/pump-block.plan", "leaving 0.3, pass 0.6", "leaving 0.4, pass 0.6");
    git.commit("more left for the last cut");
    Result result = git.handwheel("diff", "--git", "main", "topic");
    assertThat(result.out())
        .contains("engine/pump-block.plan, was bearing-block.plan: Feed pump bearing block")
        .contains("leaving: 0.30 mm");
    assertThat(git.handwheel("check", "--since", "main").exitCode()).isZero();
  }

  @Test
  void aChangeOfTheShopIsToldForEveryPlanItBreaks() throws IOException {
    git.git("switch", "--quiet", "--create", "topic");
    for (String shop : List.of("shop/inch-mill.shop", "shop/metric-mill.shop")) {
      String text = git.read(shop);
      git.write(shop, text.replaceAll("(?m)^own instrument caliper", "own instrument new-caliper"));
    }
    git.commit("the caliper has a new name");
    Result result = git.handwheel("diff", "--git", "main", "topic", "--format", "json");
    assertThat(result.exitCode()).isEqualTo(1);
    JsonArray files =
        JsonParser.parseString(result.out()).getAsJsonObject().getAsJsonArray("files");
    List<String> broken = new ArrayList<>();
    for (JsonElement each : files) {
      if (each.getAsJsonObject().getAsJsonArray("findings").size() > 0) {
        broken.add(each.getAsJsonObject().get("after").getAsString());
      }
    }
    assertThat(broken).containsExactlyElementsOf(PLANS);
    assertThat(git.handwheel("diff", "--git", "main", "topic").out()).contains("  Shop\n");
    Result since = git.handwheel("check", "--since", "main", "--format", "sarif");
    assertThat(since.exitCode()).isEqualTo(1);
    assertThat(PLANS).allSatisfy(plan -> assertThat(since.out()).contains("\"" + plan + "\""));
  }

  @Test
  void sinceLeavesOutWhatWasFoundBefore() throws IOException {
    replace("rudder-key.plan", "plan \"", "let old = 3\nplan \"");
    git.commit("a finding");
    assertThat(git.handwheel("check").out()).isNotEmpty();
    Result known = git.handwheel("check", "--since", "HEAD", "--fail-on", "warning");
    assertThat(known.exitCode()).isZero();
    replace("bearing-block.plan", "finish bottom to height", "finish bottom to 20 mm");
    Result news = git.handwheel("check", "--since", "HEAD", "--format", "github");
    assertThat(news.exitCode()).isEqualTo(1);
    assertThat(news.outLines())
        .allSatisfy(line -> assertThat(line).contains("file=bearing-block.plan,"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"none", "--output=x", "-x", "HEAD:rudder-key.plan", "main^{tree}", ""})
  void whatIsNoRevisionIsRefused(String revision) {
    Result diff = git.handwheel("diff", "--git", "--", revision);
    assertThat(diff.exitCode()).isEqualTo(2);
    assertThat(diff.errLines()).hasSize(1);
    assertThat(git.handwheel("check", "--since=" + revision).exitCode()).isEqualTo(2);
    assertThat(git.folder().resolve("x")).doesNotExist();
  }

  @Test
  void outsideOfARepositoryItIsSaid() throws IOException {
    Path other = Files.createDirectory(outside.resolve("other"));
    Result result =
        CommandRun.in(other)
            .with("GIT_CEILING_DIRECTORIES", outside.toString())
            .run("diff", "--git", "HEAD");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.err()).startsWith("handwheel: not in a git repository");
  }

  @Test
  void aConflictIsFoundAtItsPlace() throws IOException {
    git.git("switch", "--quiet", "--create", "topic");
    replace("rudder-key.plan", "plan \"", "plan \"New ");
    git.commit("a title");
    git.git("switch", "--quiet", "main");
    replace("rudder-key.plan", "plan \"", "plan \"Old ");
    git.commit("another title");
    assertThat(git.tryGit("merge", "topic").exitCode()).isEqualTo(1);
    assertThat(git.read("rudder-key.plan")).contains("<<<<<<< HEAD");
    Result check = git.handwheel("check", "rudder-key.plan");
    assertThat(check.exitCode()).isEqualTo(1);
    assertThat(check.out()).contains("error[syntax]");
    Result diff = git.handwheel("diff", "--git", "HEAD");
    assertThat(diff.exitCode()).isEqualTo(1);
    assertThat(diff.err()).isEmpty();
    assertThat(diff.out()).contains("error[syntax]");
  }
}
