package org.handwheel.cli;

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
    return OnePlan.read(plan, surroundings).run();
  }
}
