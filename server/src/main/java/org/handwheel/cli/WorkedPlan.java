package org.handwheel.cli;

import java.util.List;
import java.util.Map;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.PlanRun;

/** Reads the one plan a command is about and works it through. */
final class WorkedPlan {
  private WorkedPlan() {}

  /**
   * The plan worked through.
   *
   * @throws UserException if it cannot be read, is no plan, or is written in a newer level
   */
  static PlanRun read(String plan, Surroundings surroundings) {
    Checked checked = checked(plan, surroundings);
    PlanRun run = checked.run();
    if (run == null) {
      throw new UserException(plan + ": it is no plan that can be worked through");
    }
    if (checked.findings().stream().anyMatch(found -> found.rule().equals("language-level"))) {
      throw new UserException(plan + ": it is written in a newer level of the language");
    }
    return run;
  }

  private static Checked checked(String plan, Surroundings surroundings) {
    Targets targets = Targets.find(List.of(plan), null, "stdin.plan", surroundings);
    if (targets.targets().size() != 1) {
      throw new UserException(
          targets.unreadable().values().stream()
              .findFirst()
              .map(reason -> plan + ": " + reason)
              .orElse(plan + ": name one plan"));
    }
    Targets.Target target = targets.targets().get(0);
    Workspace workspace =
        new WorkspaceLoader(target.root(), surroundings.nanoClock())
            .load(List.of(target.path()), Map.of())
            .workspace();
    String reason = workspace.unreadable().get(target.path());
    if (reason != null) {
      throw new UserException(plan + ": " + reason);
    }
    return new Checker(StandardTables.builtIn()).check(workspace, target.path());
  }
}
