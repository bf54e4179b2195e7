package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.handwheel.ide.View;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.handwheel.work.PlanRun;

/**
 * Makes a change on paper and checks the file again. No change is offered that does not do what its
 * title says.
 */
final class Trial {
  private Trial() {}

  static Checked after(View view, List<TextEdit> edits) {
    SyntaxTree tree = view.tree();
    SyntaxTree changed = tree.update(TextEdit.apply(tree.source().text(), edits));
    Map<String, SyntaxTree> files = new HashMap<>(view.workspace().files());
    files.put(tree.path(), changed);
    Workspace workspace = new Workspace(files, view.workspace().unreadable());
    return new Checker(view.tables()).check(workspace, tree.path());
  }

  /**
   * Whether the change leaves one finding of the rule less, and no error more of any rule. A line
   * that could not be read hides what is missing around it, so after mending one others may show.
   */
  static boolean mends(View view, Finding finding, List<TextEdit> edits) {
    Checked after = after(view, edits);
    long before = count(view.checked(), finding.rule());
    if (count(after, finding.rule()) >= before) {
      return false;
    }
    if (finding.rule().equals("syntax")) {
      return true;
    }
    Map<String, Integer> errors = errors(view.checked());
    return errors(after).entrySet().stream()
        .allMatch(entry -> entry.getValue() <= errors.getOrDefault(entry.getKey(), 0));
  }

  /** Whether the change leaves one finding of the rule less, and no other finding more. */
  static boolean addsNothing(View view, Finding finding, List<TextEdit> edits) {
    Checked after = after(view, edits);
    Map<String, Long> before = counts(view.checked());
    Map<String, Long> left = counts(after);
    return left.getOrDefault(finding.rule(), 0L) < before.getOrDefault(finding.rule(), 0L)
        && left.entrySet().stream()
            .allMatch(entry -> entry.getValue() <= before.getOrDefault(entry.getKey(), 0L));
  }

  private static Map<String, Long> counts(Checked checked) {
    return checked.findings().stream()
        .collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
  }

  private static long count(Checked checked, String rule) {
    return checked.findings().stream().filter(finding -> finding.rule().equals(rule)).count();
  }

  private static Map<String, Integer> errors(Checked checked) {
    Map<String, Integer> errors = new TreeMap<>();
    checked.findings().stream()
        .filter(finding -> finding.severity() == Severity.ERROR)
        .forEach(finding -> errors.merge(finding.rule(), 1, Integer::sum));
    return errors;
  }

  /** Whether the change keeps every finding and every number of the plan. */
  static boolean keepsMeaning(View view, List<TextEdit> edits) {
    Checked after = after(view, edits);
    return meaning(view.checked()).equals(meaning(after));
  }

  private static List<String> meaning(Checked checked) {
    List<String> meaning = new ArrayList<>();
    checked.findings().stream()
        .filter(finding -> !finding.rule().equals("unused-name"))
        .map(finding -> finding.rule() + " " + finding.message())
        .sorted()
        .forEach(meaning::add);
    PlanRun run = checked.run();
    if (run != null) {
      run.setups().forEach(setup -> meaning.add(sizes(setup)));
      run.cuts()
          .forEach(cut -> meaning.add(cut.passes() + " " + cut.passDepth() + " " + cut.removal()));
      run.drawing()
          .demands()
          .forEach(demand -> meaning.add(demand.nominal() + " " + demand.limits()));
    }
    return meaning;
  }

  private static String sizes(PlanRun.SetupRun setup) {
    Map<String, String> sizes = new TreeMap<>();
    setup.after().sizes().forEach((key, size) -> sizes.put(key.word(), size.range().toString()));
    return sizes.toString();
  }
}
