package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;

/** While a line is being typed it is the only one with findings. */
class HalfTypedTests {
  private static final Path PLAN = Path.of("..", "examples", "bearing-block.plan");

  private static List<String> lines() throws IOException {
    return Files.readString(PLAN).lines().toList();
  }

  private static Checked check(String text) {
    Map<String, SyntaxTree> files = new TreeMap<>(RulePage.shops());
    files.put("example.plan", SyntaxTree.parse("example.plan", text));
    return new Checker(StandardTables.builtIn())
        .check(new Workspace(files, Map.of()), "example.plan");
  }

  /** Every beginning of a line that ends behind a word. */
  private static List<String> beginnings(String line) {
    List<String> beginnings = new ArrayList<>();
    String code = line.replaceFirst("\\s*#.*$", "");
    for (int end = 1; end < code.length(); end++) {
      if (!Character.isWhitespace(code.charAt(end - 1)) && code.charAt(end) == ' ') {
        beginnings.add(code.substring(0, end));
      }
    }
    return beginnings;
  }

  @Test
  void aLineThatCannotBeReadBringsNoFindingsOnOthers() throws IOException {
    List<String> lines = lines();
    List<String> wrong = new ArrayList<>();
    int broken = 0;
    for (int i = 0; i < lines.size(); i++) {
      for (String beginning : beginnings(lines.get(i))) {
        List<String> typed = new ArrayList<>(lines);
        typed.set(i, beginning);
        Checked checked = check(String.join("\n", typed) + "\n");
        int line = i;
        boolean unread =
            checked.findings().stream()
                .anyMatch(
                    finding ->
                        FindingRules.stopsReading(finding.rule())
                            && checked.tree().line(finding.origin()) == line);
        if (!unread) {
          continue;
        }
        broken++;
        for (Finding finding : checked.findings()) {
          if (checked.tree().line(finding.origin()) != i) {
            wrong.add(
                (i + 1)
                    + " `"
                    + beginning.strip()
                    + "`: "
                    + RulePage.place(checked.tree(), finding)
                    + " "
                    + finding.message());
          }
        }
      }
    }
    assertThat(broken).isGreaterThan(150);
    assertThat(wrong).isEmpty();
  }
}
