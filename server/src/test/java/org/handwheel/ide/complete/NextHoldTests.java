package org.handwheel.ide.complete;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.plan.draft.DraftProgress;
import org.handwheel.plan.draft.Drafted;
import org.handwheel.plan.draft.Drafter;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The holds proposed for the two ends, taken as they are, check clean with the cuts behind them.
 */
final class NextHoldTests {
  @TestFactory
  Stream<DynamicTest> bothEndsAreHeldAsProposed() {
    return Stream.of(
            "bearing-block.plan",
            "stern-gland.plan",
            "name-plate.plan",
            "bilge-pump-link.plan",
            "boiler-cradle-foot.plan",
            "rudder-key.plan")
        .map(path -> DynamicTest.dynamicTest(path, () -> endsAreHeldAsProposed(path)));
  }

  private static void endsAreHeldAsProposed(String path) {
    String example =
        Fixtures.examples().stream()
            .filter(file -> Fixtures.path(file).equals(path))
            .findFirst()
            .map(Fixtures::read)
            .orElseThrow();
    String bare = Drafter.bareText(SyntaxTree.parse(path, example));
    Drafted drafted =
        new Drafter(StandardTables.builtIn())
            .draft(Fixtures.view(path, bare).workspace(), path, 1, DraftProgress.NONE);
    String text = ((Drafted.Plans) drafted).drafts().get(0).text();
    int ends = 0;
    for (int start = text.indexOf("\nsetup "); start >= 0; ) {
      int next = text.indexOf("\nsetup ", start + 1);
      String setup = text.substring(start, next < 0 ? text.indexOf("\ninspect") : next);
      if (setup.matches("(?s)\\nsetup \\S+ \"(Left|Right) end.*")) {
        ends++;
        isHeldAsProposed(path, text.substring(0, start), setup);
      }
      start = next;
    }
    assertThat(ends).isEqualTo(2);
  }

  private static void isHeldAsProposed(String path, String before, String setup) {
    List<String> lines = setup.lines().toList();
    String header = before + "\n" + lines.get(1) + "\n";
    List<String> proposed = new ArrayList<>();
    for (Proposal one : proposals(path, header + "  ")) {
      proposed.add(one.label());
      if (one.label().startsWith("hold ")) {
        break;
      }
    }
    String end = lines.get(1).contains("Left end") ? "left" : "right";
    assertThat(proposed.get(proposed.size() - 1)).startsWith("hold in ").contains(end);
    StringBuilder text = new StringBuilder(header);
    proposed.forEach(line -> text.append("  ").append(line).append('\n'));
    boolean held = false;
    for (String line : lines) {
      if (held) {
        text.append(line).append('\n');
      }
      held = held || line.startsWith("  hold ");
    }
    View after = Fixtures.view(path, text.toString());
    Optional<Finding> against =
        after.checked().findings().stream()
            .filter(one -> one.origin().section().kind() == SectionKind.SETUP)
            .filter(one -> one.severity() != Severity.INFO)
            .findFirst();
    assertThat(against).as(text.toString()).isEmpty();
  }

  private static List<Proposal> proposals(String path, String text) {
    return Completion.at(Fixtures.view(path, text + "\n"), text.length()).proposals().stream()
        .filter(proposal -> proposal.kind() == Proposal.Kind.STATEMENT)
        .toList();
  }
}
