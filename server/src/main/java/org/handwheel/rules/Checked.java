package org.handwheel.rules;

import java.util.List;
import org.handwheel.model.Plan;
import org.handwheel.model.build.PlanReading;
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
 * @param progress what the check of the next text can go on from; nothing for a shop file
 */
public record Checked(
    SyntaxTree tree,
    @Nullable Plan plan,
    @Nullable PlanRun run,
    List<String> usedFiles,
    List<Finding> findings,
    @Nullable Progress progress) {
  public Checked {
    usedFiles = List.copyOf(usedFiles);
    findings = List.copyOf(findings);
  }

  /** What a check has worked out in parts; it says nothing that the check does not say. */
  public static final class Progress {
    private final PlanReading reading;
    private final @Nullable SetupFindings inSetups;

    Progress(PlanReading reading, @Nullable SetupFindings inSetups) {
      this.reading = reading;
      this.inSetups = inSetups;
    }

    PlanReading reading() {
      return reading;
    }

    @Nullable SetupFindings inSetups() {
      return inSetups;
    }
  }
}
