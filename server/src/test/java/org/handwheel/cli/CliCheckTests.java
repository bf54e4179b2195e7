package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code check} on files that can be read. */
final class CliCheckTests {
  private static final String WHERE = "bearing.plan:6:10: error[syntax]";

  @TempDir Path folder;

  @Test
  void saysThatNothingWasFound() throws IOException {
    Samples.write(folder, "ring.plan", Samples.CLEAN);
    assertThat(run("check")).isEqualTo(new Result(0, "1 plan, nothing found\n", ""));
  }

  @Test
  void showsTheLineWithThePlaceUnderlined() throws IOException {
    Samples.write(folder, "bearing.plan", Samples.COMMA);
    Result result = run("check", "bearing.plan");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .isEqualTo(
            """
            bearing.plan:6:10: error[syntax] write a decimal point, not a comma: 19.05
                height 19,05 +0/-0.04
                       ^^^^^
              fix: Write 19.05

            1 error in 1 plan
            """);
  }

  @Test
  void countsWhatItFound() throws IOException {
    Samples.write(folder, "a.plan", Samples.COMMA);
    Samples.write(folder, "b.plan", Samples.UNUSED);
    Samples.write(folder, "c.plan", Samples.IGNORING);
    assertThat(run("check").outLines()).endsWith("1 error, 1 warning, 1 note in 3 plans");
  }

  @ParameterizedTest
  @CsvSource({
    "CLEAN,  error,   0",
    "CLEAN,  warning, 0",
    "UNUSED, warning, 0",
    "IGNORING, error,   0",
    "IGNORING, warning, 1",
    "IGNORING, none,    0",
    "COMMA,  error,   1",
    "COMMA,  warning, 1",
    "COMMA,  none,    0",
    "COMMA,  NONE,    0"
  })
  void failsOnWhatIsAsked(String sample, String threshold, int exitCode) throws IOException {
    String text =
        Map.of(
                "CLEAN", Samples.CLEAN,
                "UNUSED", Samples.UNUSED,
                "IGNORING", Samples.IGNORING,
                "COMMA", Samples.COMMA)
            .get(sample);
    Samples.write(folder, "a.plan", text);
    assertThat(run("check", "--fail-on", threshold).exitCode()).isEqualTo(exitCode);
  }

  @Test
  void failsOnErrorsUnlessTold() throws IOException {
    Samples.write(folder, "a.plan", Samples.IGNORING);
    assertThat(run("check").exitCode()).isZero();
  }

  @Test
  void takesAllPlansOfAFolderInOrder() throws IOException {
    for (String name :
        List.of("b.plan", "a/z.plan", "a/B.PLAN", "C.plan", "a.plan", "notes.txt", "a/x.shop")) {
      Samples.write(folder, name, name.endsWith("shop") ? "shop\n" : Samples.COMMA);
    }
    for (String skipped :
        List.of(".hidden/a.plan", "node_modules/a.plan", "target/a.plan", ".a.plan")) {
      Samples.write(folder, skipped, Samples.COMMA);
    }
    assertThat(findingLines(run("check", ".")))
        .extracting(line -> line.substring(0, line.indexOf(':')))
        .containsExactly("C.plan", "a.plan", "a/B.PLAN", "a/z.plan", "b.plan");
  }

  @Test
  void checksAFileOnceHoweverOftenItIsNamed() throws IOException {
    Samples.write(folder, "plans/bearing.plan", Samples.COMMA);
    Result result = run("check", "plans", "plans/bearing.plan", ".", "plans/../plans/bearing.plan");
    assertThat(result.outLines()).endsWith("1 error in 1 plan");
  }

  @Test
  void checksShopFilesThatAreUsedOnceEach() throws IOException {
    Samples.write(folder, "mill.shop", "shop\n  unit mm\n");
    for (String name : List.of("a.plan", "b.plan")) {
      Samples.write(folder, name, Samples.CLEAN + "  use \"mill.shop\"\n");
    }
    Result result = run("check");
    assertThat(findingLines(result)).singleElement().asString().startsWith("mill.shop:2:3: error");
    assertThat(result.outLines()).endsWith("1 error in 2 plans and 1 shop file");
  }

  @Test
  void checksAShopFileByItself() throws IOException {
    Samples.write(folder, "mill.shop", Samples.example("shop/inch-mill.shop"));
    assertThat(run("check", "mill.shop").outLines()).endsWith("1 shop file, nothing found");
  }

  @Test
  void theExampleChecksClean() throws IOException {
    Samples.writeBearingBlock(folder);
    assertThat(run("check", "--fail-on", "warning"))
        .isEqualTo(new Result(0, "1 plan and 1 shop file, nothing found\n", ""));
  }

  @Test
  void readsStandardInputAsTheFileItStandsFor() throws IOException {
    Samples.writeBearingBlock(folder);
    String text = Samples.example("bearing-block.plan");
    Result clean =
        CommandRun.in(folder).reading(text).run("check", "-", "--stdin-filename", "draft.plan");
    assertThat(clean.outLines()).containsExactly("1 plan and 1 shop file, nothing found");
    Result elsewhere =
        CommandRun.in(folder).reading(text).run("check", "-", "--stdin-filename", "a/draft.plan");
    assertThat(findingLines(elsewhere))
        .first()
        .asString()
        .startsWith("a/draft.plan:5:7: error[use-path]");
  }

  @Test
  void readsStandardInputWithoutAName() {
    Result result = CommandRun.in(folder).reading(Samples.COMMA).run("check", "-");
    assertThat(result.out()).startsWith("stdin.plan:6:10: error[syntax]");
    assertThat(result.exitCode()).isEqualTo(1);
  }

  @Test
  void findsTheWorkspaceAboveThePlan() throws IOException {
    Samples.write(folder, "shed/.handwheel", "");
    Samples.write(folder, "shed/shop/mill.shop", "shop\n");
    Samples.write(folder, "shed/plans/a.plan", Samples.CLEAN + "  use \"../shop/mill.shop\"\n");
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Result result = CommandRun.in(elsewhere).run("check", "../shed/plans");
    assertThat(result.outLines()).containsExactly("1 plan and 1 shop file, nothing found");
  }

  @Test
  void keepsToTheWorkspaceItIsGiven() throws IOException {
    Samples.write(folder, "shop/mill.shop", "shop\n");
    Samples.write(folder, "plans/a.plan", Samples.CLEAN + "  use \"../shop/mill.shop\"\n");
    assertThat(run("check", "--workspace", ".", "plans").exitCode()).isZero();
    Result tight = run("check", "--workspace", "plans", "plans");
    assertThat(tight.out())
        .startsWith("plans/a.plan:4:7: error[use-path] the path leads outside the workspace");
    Result outside = run("check", "--workspace", "shop", "plans");
    assertThat(outside.exitCode()).isEqualTo(2);
    assertThat(outside.errLines()).singleElement().asString().contains("not in the workspace");
  }

  @Test
  void namesFilesFromTheCurrentFolder() throws IOException {
    Samples.write(folder, "plans/bearing.plan", Samples.COMMA);
    Path shed = Files.createDirectories(folder.resolve("shed"));
    assertThat(CommandRun.in(shed).run("check", "../plans").out())
        .startsWith(Path.of("..", "plans") + "/" + WHERE);
    assertThat(run("check", folder.resolve("plans").toAbsolutePath().toString()).out())
        .startsWith("plans/" + WHERE);
  }

  @Test
  void showsRelatedLines() throws IOException {
    String plan = Samples.CLEAN + "  let a = 1\n  let a = 2\n";
    Samples.write(folder, "a.plan", plan);
    assertThat(run("check").out())
        .contains("error[duplicate-name]")
        .contains("  related a.plan:4: ");
  }

  @Test
  void findingsAreTheSameWhateverEndsTheLines() throws IOException {
    Samples.write(folder, "shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    String plan =
        Samples.example("bearing-block.plan")
            .replace("leaving 0.25", "leaving 1,25")
            .replace("units mm", "units mm\n  let a = 1\n  let a = 2")
            .replace("deburr edges of back", "debur edges of back");
    List<String> outputs = new ArrayList<>();
    for (String end : List.of("\n", "\r\n", "\r")) {
      for (String mark : List.of("", "\ufeff")) {
        Samples.write(folder, "a.plan", mark + plan.replace("\n", end));
        outputs.add(run("check", "a.plan").out());
      }
    }
    assertThat(outputs.get(0)).contains("error[").contains("related a.plan:");
    assertThat(outputs).allMatch(outputs.get(0)::equals);
  }

  @Test
  void coloursOnlyATerminal() throws IOException {
    Samples.write(folder, "bearing.plan", Samples.COMMA);
    String escape = "\u001b[";
    assertThat(run("check").out()).doesNotContain(escape);
    assertThat(run("check", "--color", "always").out()).contains(escape);
    assertThat(terminal().run("check").out()).contains(escape);
    assertThat(terminal().run("check", "--color", "never").out()).doesNotContain(escape);
    assertThat(terminal().with("NO_COLOR", "1").run("check").out()).doesNotContain(escape);
    assertThat(terminal().with("NO_COLOR", "").run("check").out()).contains(escape);
    assertThat(terminal().with("NO_COLOR", "1").run("check", "--color", "always").out())
        .contains(escape);
    assertThat(terminal().with("TERM", "dumb").run("check").out()).doesNotContain(escape);
    assertThat(terminal().with("OS", "Windows_NT").run("check").out()).doesNotContain(escape);
    assertThat(terminal().with("OS", "Windows_NT").with("WT_SESSION", "1").run("check").out())
        .contains(escape);
  }

  @Test
  void colourChangesNothingElse() throws IOException {
    Samples.write(folder, "a.plan", Samples.COMMA + Samples.UNUSED);
    String coloured = run("check", "--color", "always").out();
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", "")).isEqualTo(run("check").out());
  }

  @Test
  void timesEachStep() throws IOException {
    Samples.writeBearingBlock(folder);
    Result result = run("check", "--timing");
    assertThat(result.out()).isEqualTo("1 plan and 1 shop file, nothing found\n");
    assertThat(result.errLines())
        .hasSize(6)
        .allMatch(line -> line.matches(".* {1,9}\\d+\\.\\d ms(?:  \\S+)?"))
        .anyMatch(line -> line.endsWith("bearing-block.plan"))
        .anyMatch(line -> line.endsWith("inch-mill.shop"));
  }

  @Test
  void jsonAgreesWithTheChecker() throws IOException {
    Samples.write(folder, "shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    String plan =
        Samples.example("bearing-block.plan")
            .replace("leaving 0.25", "leaving 1.25")
            .replace(
                "units mm",
                "units mm\n  let a = 1\n  let a = 2\n  let \u00e9t\u00e9 = 19,05   # \ud83d\udea4 \u00b1");
    Samples.write(folder, "a.plan", plan);
    Result result = run("check", "--format", "json", "a.plan");
    assertThat(result.out()).matches("\\p{ASCII}+");
    JsonObject root = JsonParser.parseString(result.out()).getAsJsonObject();
    assertThat(root.get("version").getAsInt()).isEqualTo(1);

    Workspace workspace =
        new WorkspaceLoader(new WorkspaceRoot(folder), System::nanoTime)
            .load(List.of("a.plan"), Map.of())
            .workspace();
    Checked checked = new Checker(StandardTables.builtIn()).check(workspace, "a.plan");
    List<String> expected = new ArrayList<>();
    for (Finding finding : checked.findings()) {
      expected.add(describe(checked.tree(), finding));
    }
    List<String> actual = new ArrayList<>();
    for (JsonElement element : root.getAsJsonArray("findings")) {
      actual.add(describe(plan, element.getAsJsonObject()));
    }
    assertThat(expected).hasSizeGreaterThan(2);
    assertThat(actual).containsExactlyInAnyOrderElementsOf(expected);
    JsonObject counts = root.getAsJsonObject("counts");
    assertThat(
            counts.get("errors").getAsInt()
                + counts.get("warnings").getAsInt()
                + counts.get("notes").getAsInt())
        .isEqualTo(expected.size());
  }

  private static String describe(SyntaxTree tree, Finding finding) {
    int start = tree.start(finding.origin());
    return finding.rule()
        + " "
        + start
        + " "
        + finding.origin().text()
        + " "
        + finding.message()
        + " "
        + finding.related().size()
        + " "
        + finding.fixes().size();
  }

  /** The same from the JSON, with line and column turned into an offset by other means. */
  private static String describe(String plan, JsonObject finding) {
    JsonObject range = finding.getAsJsonObject("range");
    int start = offset(plan, range.getAsJsonObject("start"));
    int end = offset(plan, range.getAsJsonObject("end"));
    return finding.get("rule").getAsString()
        + " "
        + start
        + " "
        + plan.substring(start, end)
        + " "
        + finding.get("message").getAsString()
        + " "
        + finding.getAsJsonArray("related").size()
        + " "
        + finding.getAsJsonArray("fixes").size();
  }

  private static int offset(String plan, JsonObject position) {
    String[] lines = plan.split("\n", -1);
    int offset = position.get("column").getAsInt() - 1;
    for (int i = 0; i < position.get("line").getAsInt() - 1; i++) {
      offset += lines[i].length() + 1;
    }
    assertThat(position.get("offset").getAsInt()).isEqualTo(offset);
    return offset;
  }

  @Test
  void jsonFixesMendThePlan() throws IOException {
    Samples.write(folder, "a.plan", Samples.COMMA);
    JsonObject root =
        JsonParser.parseString(run("check", "--format", "json").out()).getAsJsonObject();
    JsonArray edits =
        root.getAsJsonArray("findings")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("fixes")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("edits");
    JsonObject edit = edits.get(0).getAsJsonObject();
    JsonObject range = edit.getAsJsonObject("range");
    String mended =
        new StringBuilder(Samples.COMMA)
            .replace(
                range.getAsJsonObject("start").get("offset").getAsInt(),
                range.getAsJsonObject("end").get("offset").getAsInt(),
                edit.get("text").getAsString())
            .toString();
    assertThat(mended).isEqualTo(Samples.COMMA.replace("19,05", "19.05"));
  }

  @Test
  void givesTheSameBytesEveryTime() throws IOException {
    Samples.writeBearingBlock(folder);
    Samples.write(folder, "a.plan", Samples.COMMA + Samples.UNUSED);
    Samples.write(folder, "b.plan", Samples.UNUSED);
    for (String format : List.of("text", "json")) {
      String first = run("check", "--format", format).out();
      assertThat(run("check", "--format", format).out()).isEqualTo(first);
      assertThat(run("check", "b.plan", "--format", format, "a.plan", ".").out()).isEqualTo(first);
    }
  }

  @Test
  void writesNothing() throws IOException {
    Samples.writeBearingBlock(folder);
    Samples.write(folder, "a.plan", Samples.COMMA);
    Map<String, String> before = contents();
    run("check");
    run("check", "--format", "json", "--timing");
    run("check", "nothing.plan");
    assertThat(contents()).isEqualTo(before);
  }

  private Map<String, String> contents() throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.toList()) {
        contents.put(
            file + " " + Files.getLastModifiedTime(file),
            Files.isRegularFile(file) ? Files.readString(file, StandardCharsets.UTF_8) : "");
      }
    }
    return contents;
  }

  @Test
  void saysWithTheExitCodeThatOutputWasLost() throws IOException {
    Samples.write(folder, "a.plan", Samples.CLEAN);
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("No space left on device");
          }
        };
    assertThat(CommandRun.in(folder).run(full, "check").exitCode()).isEqualTo(2);
  }

  @Test
  void endsLinesAsTheSystemDoes() throws IOException {
    Samples.write(folder, "bearing.plan", Samples.COMMA);
    String unix = run("check").out();
    assertThat(CommandRun.in(folder).lineEnd("\r\n").run("check").out())
        .isEqualTo(unix.replace("\n", "\r\n"));
  }

  private Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }

  private CommandRun terminal() {
    return CommandRun.in(folder).onTerminal(80);
  }

  private static List<String> findingLines(Result result) {
    return result.outLines().stream().filter(line -> line.matches("\\S+:\\d+:\\d+: .*")).toList();
  }

  // ---- Settings of the project

  @Test
  void aProjectSaysWhatFails() throws IOException {
    Samples.write(folder, "a.plan", Samples.IGNORING);
    assertThat(run("check").exitCode()).isZero();
    Samples.write(folder, ".handwheel", "fail-on: warning\n");
    assertThat(run("check").exitCode()).isEqualTo(1);
    assertThat(run("check", "--fail-on", "none").exitCode()).isZero();
  }

  @Test
  void aProjectNamesWhatIsKnownAndWhatIsSkipped() throws IOException {
    Samples.write(folder, "a.plan", Samples.COMMA);
    Samples.write(folder, "old/b.plan", Samples.COMMA);
    Samples.write(folder, ".handwheel", "baseline: ci/known.json\nskip: old\n");
    Result missing = run("check");
    assertThat(missing.exitCode()).isEqualTo(2);
    assertThat(missing.err()).startsWith("handwheel: ci/known.json: ");
    Files.createDirectory(folder.resolve("ci"));
    assertThat(run("check", "--write-baseline", "ci/known.json").exitCode()).isZero();
    assertThat(run("check").out()).contains("1 known");
    assertThat(run("check").exitCode()).isZero();
    assertThat(run("check", "old").exitCode()).isEqualTo(1);
  }

  @Test
  void aSettingThatCannotBeReadIsNotPassedOver() throws IOException {
    Samples.write(folder, "a.plan", Samples.CLEAN);
    Samples.write(folder, ".handwheel", "# ours\nfail-no: warning\n");
    Result result = run("check");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.err())
        .isEqualTo(
            "handwheel: .handwheel:2: there is no setting `fail-no`; did you mean `fail-on`?\n");
  }
}
