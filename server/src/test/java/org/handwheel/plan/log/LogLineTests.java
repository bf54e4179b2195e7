package org.handwheel.plan.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;

/** A line of a log is put into any text as one insertion that reads back as that line. */
final class LogLineTests {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private static final String LINE = "in one: note \"the new one\"";

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> lines =
        Arbitraries.of(
            "log \"first\"",
            "log \"second\"",
            "  in one: note \"a\"",
            "in one: note \"b\"",
            "\tin one: note \"c\"",
            "",
            "  ",
            "# about the next",
            "  # aside",
            "inspect",
            "setup one",
            "  hold in",
            "part",
            "\"broken",
            "  in one:",
            "note \"long\" \\");
    return Arbitraries.of("\n", "\r\n", "\r")
        .flatMap(end -> lines.list().ofMaxSize(14).map(all -> String.join(end, all)));
  }

  @Property(tries = 2000, seed = "20261127")
  void itIsOneInsertionOfOneLine(@ForAll @From("texts") String text) {
    SyntaxTree tree = SyntaxTree.parse("p.plan", text);
    Plan plan = plan(tree);
    TextEdit edit = new LogLine(LINE, null).in(tree, plan);
    assertThat(edit.start()).isEqualTo(edit.end());
    String after = TextEdit.apply(text, List.of(edit));
    SyntaxTree changed = SyntaxTree.parse("p.plan", after);
    int logs = plan.logs().size();
    assertThat(plan(changed).logs()).hasSize(Math.max(1, logs));
    if (logs > 0) {
      assertThat(edit.text().strip()).isEqualTo(LINE);
    }
    // It reads back as a line of its own in the last log.
    Section log = plan(changed).logs().get(Math.max(1, logs) - 1).header().section();
    assertThat(log.lines().stream().map(line -> log.origin(line).text().strip())).contains(LINE);
    assertThat(lines(log)).isEqualTo(logs == 0 ? 1 : lines(section(plan)) + 1);
  }

  private static Section section(Plan plan) {
    return plan.logs().get(plan.logs().size() - 1).header().section();
  }

  /** How often the line stands in a section as a line of its own. */
  private static long lines(Section section) {
    return section.lines().stream()
        .filter(line -> section.origin(line).text().strip().equals(LINE))
        .count();
  }

  private static Plan plan(SyntaxTree tree) {
    Plan plan =
        new Checker(TABLES).check(new Workspace(Map.of("p.plan", tree), Map.of()), "p.plan").plan();
    assertThat(plan).isNotNull();
    return plan;
  }
}
