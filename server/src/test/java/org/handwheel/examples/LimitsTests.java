package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.files.TextFile;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every limit ends in a finding at its place; the table in server/README.md names each. */
class LimitsTests {
  private static final String START =
      "language 1\nplan \"p\"\n  units mm\npart\n  height 10\nstock\n  size 40 x 30 x 12\n";

  private static String using(String shop) {
    return START.replace("part\n", "  use \"" + shop + "\"\npart\n");
  }

  private static List<Finding> check(String text) {
    return check(Workspace.of(SyntaxTree.parse("a.plan", text)));
  }

  private static List<Finding> check(Workspace workspace) {
    return ExampleFiles.CHECKER.check(workspace, "a.plan").findings();
  }

  private static String messages(List<Finding> findings, String rule) {
    return String.join(
        "\n", findings.stream().filter(f -> f.rule().equals(rule)).map(Finding::message).toList());
  }

  @Test
  void aTextThatIsTooLargeIsNotReadAndNotChanged() throws IOException {
    String text = START + "# x\n".repeat(2_700_000);
    SyntaxTree tree = SyntaxTree.parse("a.plan", text);
    assertThat(messages(check(Workspace.of(tree)), "syntax"))
        .isEqualTo("this text is larger than 10 MB, so nothing of it is read");
    assertThat(tree.sections()).hasSize(1);
    SyntaxTree smaller = tree.update(START);
    assertThat(check(Workspace.of(smaller))).isEqualTo(check(START));
    assertThat(smaller.update(text).sections()).hasSize(1);
    assertThat(Formatter.edits(tree)).isEmpty();
  }

  @Test
  void aFileThatIsTooLargeIsNotRead(@TempDir Path folder) throws IOException {
    Files.write(folder.resolve("a.shop"), new byte[TextFile.MOST_BYTES + 1]);
    Files.writeString(folder.resolve("a.plan"), using("a.shop"));
    WorkspaceLoader loader = new WorkspaceLoader(new WorkspaceRoot(folder), System::nanoTime);
    Workspace workspace = loader.load(List.of("a.plan"), Map.of()).workspace();
    assertThat(messages(check(workspace), "use-path"))
        .isEqualTo("cannot read \"a.shop\": it is larger than 10 MB");
  }

  @Test
  void aLineHasAtMostSoManyCharacters() {
    String sum = "  let a = 1" + " + 1".repeat(497) + "\n";
    assertThat(sum).hasSize(2000);
    assertThat(messages(check(START + sum), "syntax")).isEmpty();
    assertThat(messages(check(START + sum.strip().replace("let a", "  let aaa") + "\n"), "syntax"))
        .isEqualTo("a line has at most 2000 characters; from here on it is not read");
    assertThat(messages(check(START + "  let a = 1" + " \\\n + 1".repeat(400) + "\n"), "syntax"))
        .isEqualTo("a line has at most 2000 characters; from here on it is not read");
    assertThat(messages(check(START + "  let a = 1 # " + "x".repeat(5000) + "\n"), "syntax"))
        .isEmpty();
  }

  @Test
  void bracketsAreNestedOnlySoDeep() {
    assertThat(
            messages(
                check(START + "let a = " + "(".repeat(64) + "1" + ")".repeat(64) + "\n"), "syntax"))
        .isEmpty();
    assertThat(
            messages(
                check(START + "let a = " + "(".repeat(65) + "1" + ")".repeat(65) + "\n"), "syntax"))
        .isEqualTo("brackets are nested more than 64 deep");
  }

  @Test
  void numbersAreOnlySoLong() {
    assertThat(messages(check(START + "let a = " + "1".repeat(61) + "\n"), "overflow"))
        .isEqualTo("a number has at most 60 digits");
    String product = "let a = " + "1".repeat(60) + (" * " + "1".repeat(60)).repeat(4) + "\n";
    assertThat(messages(check(START + product), "overflow"))
        .isEqualTo("this has grown too long to compute exactly");
    for (String tooLong : List.of("10000000.001", "9001000000", "10000000000000")) {
      assertThat(messages(check(START.replace("height 10", "height " + tooLong)), "overflow"))
          .isEqualTo("this length is larger than 10 km");
    }
    assertThat(messages(check(START + "let a = 5 mm + 10000000 mm\n"), "overflow"))
        .isEqualTo("this length is larger than 10 km");
    assertThat(messages(check(START + "let a = 1000000001 rpm\n"), "overflow"))
        .isEqualTo("this is larger than is worked with: 1 000 000 000 in its unit");
    assertThat(messages(check(START + "let a = 1000000000 rpm\n"), "overflow")).isEmpty();
    assertThat(messages(check(START.replace("height 10", "height 10000000")), "overflow"))
        .isEmpty();
  }

  @Test
  void filesUseEachOtherOnlySoDeep() {
    List<SyntaxTree> trees = new ArrayList<>();
    trees.add(SyntaxTree.parse("a.plan", using("s0.shop")));
    for (int i = 0; i < 9; i++) {
      trees.add(SyntaxTree.parse("s" + i + ".shop", "language 1\nuse \"s" + (i + 1) + ".shop\"\n"));
    }
    assertThat(messages(check(Workspace.of(trees.toArray(SyntaxTree[]::new))), "use-path"))
        .isEqualTo("files use each other more than 8 deep");
  }

  @Test
  void theTableNamesEachOfThem() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    Map<String, String> rows = new HashMap<>();
    readme
        .lines()
        .filter(line -> line.startsWith("| ") && line.contains(" | "))
        .forEach(line -> rows.put(line.split(" \\| ")[0].substring(2), line));
    for (String limit :
        List.of(
            "file on disk",
            "text in the editor",
            "line",
            "brackets",
            "number",
            "length",
            "`use` of files that use others",
            "message of the protocol")) {
      assertThat(rows).containsKey(limit);
    }
  }
}
