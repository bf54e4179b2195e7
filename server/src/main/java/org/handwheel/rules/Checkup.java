package org.handwheel.rules;

import java.util.List;
import org.handwheel.model.Limits;
import org.handwheel.model.Plan;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.PlanRun;

/**
 * What rules look at: a plan, the plan worked through as planned or with one log's readings, and
 * the tables.
 */
public record Checkup(Plan plan, PlanRun run, StandardTables tables) {
  public Limits limits() {
    return plan.shop().limits();
  }

  public List<PlanRun.SetupRun> setups() {
    return run.setups();
  }
}
