package org.handwheel.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.handwheel.model.Limits;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;
import org.handwheel.work.Obstacle;
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

  /**
   * The setups at whose start the state of the work is known: up to and with the first in which a
   * line could not be read.
   */
  public List<PlanRun.SetupRun> setups() {
    List<PlanRun.SetupRun> setups = run.setups();
    return setups.subList(0, Math.min(setups.size(), wholeSetups().size() + 1));
  }

  /**
   * Whether every line of every setup could be read and every cut be worked out: only then does
   * what seems to be missing at the end of the plan really miss.
   */
  public boolean isWhole() {
    return plan.setups().stream().allMatch(Checkup::isRead)
        && run.steps().allMatch(step -> !(step.step() instanceof Step.Cut) || step.cut() != null);
  }

  /**
   * The setups in which what seems to be missing really misses: those before the first with a line
   * that could not be read, for what that line does to the work is not known after it.
   */
  public List<PlanRun.SetupRun> wholeSetups() {
    return run.setups().stream().takeWhile(setup -> isRead(setup.setup())).toList();
  }

  private static boolean isRead(Setup setup) {
    return setup.damage() == Setup.Damage.NONE;
  }

  /**
   * Whether a rule of its own reports what kept two faces from becoming square or parallel; then it
   * need not be said a second time.
   */
  public boolean isReported(@Nullable Obstacle obstacle) {
    if (obstacle == null || !obstacle.kind().isReportedElsewhere()) {
      return false;
    }
    List<Finding> found = new ArrayList<>();
    Rules.all().stream()
        .filter(rule -> obstacle.kind().rules().contains(rule.id()))
        .forEach(rule -> rule.check(this, found::add));
    return !found.isEmpty();
  }

  /** Every cut with its setup, as far as the plan could be read. */
  public void forEachKnownCut(BiConsumer<PlanRun.SetupRun, CutRun> action) {
    for (PlanRun.SetupRun setup : run.knownSetups().toList()) {
      for (PlanRun.StepRun step : setup.steps()) {
        CutRun cut = step.cut();
        if (cut != null) {
          action.accept(setup, cut);
        }
      }
    }
  }

  /** The size the drawing asks for along a dimension, if it can be relied on. */
  public Drawing.@Nullable Demand demand(PartDimension dimension) {
    return run.drawing().demand(dimension);
  }
}
