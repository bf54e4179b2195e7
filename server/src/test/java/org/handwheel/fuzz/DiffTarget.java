package org.handwheel.fuzz;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.handwheel.model.Workspace;
import org.handwheel.plan.diff.PlanComparison;
import org.handwheel.plan.diff.PlanDiff;
import org.handwheel.plan.merge.StatementMerge;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;

/**
 * A target for a fuzzer that is led by coverage: two plans, parted by a zero byte, are compared and
 * merged. A plan is no different from itself, and merging a change with none gives the change.
 */
public final class DiffTarget {
  private static final Checker CHECKER = new Checker(StandardTables.builtIn());
  private static final SyntaxTree SHOP = FuzzTexts.shop();

  private DiffTarget() {}

  /** One input of the fuzzer; throws if something is wrong. */
  public static void fuzzerTestOneInput(byte[] data) {
    int middle = 0;
    while (middle < data.length && data[middle] != 0) {
      middle++;
    }
    String before = FuzzTexts.text(data, 0, middle);
    String after = FuzzTexts.text(data, Math.min(data.length, middle + 1), data.length);
    Checked first = check(before);
    Checked second = check(after);
    PlanComparison.of(first, second);
    PlanComparison.of(second, first);
    PlanDiff self = PlanComparison.of(first, check(before));
    if (!self.isEmpty()) {
      throw new AssertionError("different from itself: " + self);
    }
    Optional<String> merged = StatementMerge.of(before, before, after);
    if (merged.isPresent() && !merged.get().equals(after)) {
      throw new AssertionError("merged: " + merged.get() + "\nchanged: " + after);
    }
  }

  private static Checked check(String text) {
    SyntaxTree tree = SyntaxTree.parse("a.plan", text);
    Map<String, SyntaxTree> files = new TreeMap<>();
    files.put(SHOP.path(), SHOP);
    files.put(tree.path(), tree);
    return CHECKER.check(new Workspace(files, Map.of()), tree.path());
  }
}
