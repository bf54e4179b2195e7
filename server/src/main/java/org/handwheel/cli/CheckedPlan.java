package org.handwheel.cli;

import java.util.List;
import java.util.Map;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.PlanRun;

/**
 * One plan that was named, worked through.
 *
 * @param run its run
 */
record CheckedPlan(Checked checked, PlanRun run) {
  /**
   * Reads and checks a plan.
   *
   * @throws UserException if it cannot be read or worked through
   */
  static CheckedPlan load(String file, Surroundings surroundings) {
    Targets targets = Targets.find(List.of(file), null, "stdin.plan", surroundings);
    if (targets.targets().size() != 1) {
      throw new UserException(
          targets.unreadable().values().stream()
              .findFirst()
              .map(reason -> file + ": " + reason)
              .orElse(file + ": name one plan"));
    }
    Targets.Target target = targets.targets().get(0);
    Workspace workspace =
        new WorkspaceLoader(target.root(), surroundings.nanoClock())
            .load(List.of(target.path()), Map.of())
            .workspace();
    String reason = workspace.unreadable().get(target.path());
    if (reason != null) {
      throw new UserException(file + ": " + reason);
    }
    Checked checked = new Checker(StandardTables.builtIn()).check(workspace, target.path());
    PlanRun run = checked.run();
    if (run == null) {
      throw new UserException(file + ": it is no plan that can be worked through");
    }
    if (checked.findings().stream().anyMatch(found -> found.rule().equals("language-level"))) {
      throw new UserException(file + ": it is written in a newer level of the language");
    }
    return new CheckedPlan(checked, run);
  }
}
