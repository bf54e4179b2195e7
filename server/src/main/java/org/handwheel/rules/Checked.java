package org.handwheel.rules;

import java.util.List;
import org.handwheel.model.Plan;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun;
import org.jspecify.annotations.Nullable;

/**
 * A file checked.
 *
 * @param plan the plan, or nothing for a shop file
 * @param run the plan worked through, or nothing for a shop file or one that cannot be
 * @param usedFiles workspace paths of the shop files it rests on
 * @param findings in the order of the text, ignored ones left out
 */
public record Checked(
    SyntaxTree tree,
    @Nullable Plan plan,
    @Nullable PlanRun run,
    List<String> usedFiles,
    List<Finding> findings) {
  public Checked {
    usedFiles = List.copyOf(usedFiles);
    findings = List.copyOf(findings);
  }
}
