package org.handwheel.rules;

import java.util.List;
import org.handwheel.model.Limits;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun;
import org.jspecify.annotations.Nullable;

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

  /**
   * Whether every line of every setup could be read and every cut be worked out: only then does
   * what seems to be missing at the end of the plan really miss.
   */
  public boolean isWhole() {
    return plan.setups().stream().allMatch(setup -> setup.damage() == Setup.Damage.NONE)
        && run.steps().allMatch(step -> !(step.step() instanceof Step.Cut) || step.cut() != null);
  }

  /** The setups in which what seems to be missing really misses. */
  public List<PlanRun.SetupRun> wholeSetups() {
    return setups().stream().filter(setup -> setup.setup().damage() == Setup.Damage.NONE).toList();
  }

  /** The size the drawing asks for along a dimension, if it can be relied on. */
  public Drawing.@Nullable Demand demand(PartDimension dimension) {
    return run.drawing().demand(dimension);
  }
}
