package org.handwheel.cli;

import java.util.function.Predicate;
import org.handwheel.syntax.Origin;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Parameters;

/** The plan that a command is about, and the one setup it is asked for. */
final class PlanArguments {
  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan's file.")
  private String plan = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SETUP",
      description = "One setup, by its name or its number counted from 1.")
  private @Nullable String setup;

  /** The plan as the command line names it. */
  String plan() {
    return plan;
  }

  /** The setup as the command line names it; nothing for all. */
  @Nullable String setup() {
    return setup;
  }

  /**
   * Reads the plan.
   *
   * @throws UserException if it cannot be read or worked through
   */
  OnePlan read(Surroundings surroundings) {
    return OnePlan.read(plan, surroundings);
  }

  /**
   * Which setups are asked for.
   *
   * @throws UserException if the plan has no such setup
   */
  Predicate<SetupRun> asked(OnePlan read) {
    if (setup == null) {
      return one -> true;
    }
    Origin asked = read.setup(setup).setup().header();
    return one -> one.setup().header().equals(asked);
  }
}
