package org.handwheel.plan.draft;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** The text that is drafted: what it begins with, and the setups behind it. */
final class PlanText {
  private static final List<String> NAMES =
      List.of(
          "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
          "twelve");

  private final Workspace workspace;
  private final SyntaxTree tree;
  private final String begin;
  private final List<String> first;
  private final Checker checker;

  /**
   * A text to go on from.
   *
   * @param tree the file as it is, without setups
   * @param first lines for the beginning of the first setup
   */
  PlanText(Workspace workspace, SyntaxTree tree, List<String> first, StandardTables tables) {
    this.workspace = workspace;
    this.tree = tree;
    this.begin = tree.source().text().stripTrailing() + "\n";
    this.first = List.copyOf(first);
    this.checker = new Checker(tables);
  }

  static String name(int index) {
    return index < NAMES.size() ? NAMES.get(index) : "setup-" + (index + 1);
  }

  Checked check(List<SetupDraft> setups) {
    return check(tree, setups, "", null);
  }

  Checked check(List<SetupDraft> setups, Checked earlier) {
    return check(earlier.tree(), setups, "", earlier);
  }

  Checked check(List<SetupDraft> setups, String more, Checked earlier) {
    return check(earlier.tree(), setups, more, earlier);
  }

  private Checked check(
      SyntaxTree from, List<SetupDraft> setups, String more, @Nullable Checked earlier) {
    SyntaxTree next = from.update(begin + added(setups, more));
    Map<String, SyntaxTree> files = new HashMap<>(workspace.files());
    files.put(tree.path(), next);
    return checker.check(new Workspace(files, workspace.unreadable()), tree.path(), earlier);
  }

  /** The setups as text, and what comes behind them. */
  String added(List<SetupDraft> setups, String more) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < setups.size(); i++) {
      text.append(setups.get(i).text(name(i), i == 0 ? first : List.of()));
    }
    return text + more;
  }

  /** The whole file in its usual form. */
  String whole(List<SetupDraft> setups, String more) {
    return Formatter.format(SyntaxTree.parse(tree.path(), begin + added(setups, more)));
  }
}
