package org.handwheel.rules.size;

import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;
import org.handwheel.work.Drawing.Demand;
import org.jspecify.annotations.Nullable;

/** A cut to a size below the drawing's limit, or a reading below it: the metal cannot come back. */
public final class Overcut extends SimpleRule implements EachSetup {
  public Overcut() {
    super("overcut", Severity.ERROR);
  }

  @Override
  public Reach reach() {
    // The size a cut is told to go to does not depend on what was read before it.
    return Reach.ALL;
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .run()
        .steps()
        .filter(step -> step.cut() != null)
        .forEach(step -> checkCut(checkup, step.cut(), out));
  }

  @Override
  public void checkPlan(Checkup checkup, Consumer<Finding> out) {
    checkup.countedCuts().forEach(cut -> checkPasses(checkup, cut, out));
    if (checkup.run().log() != null) {
      checkup.run().log().readings().forEach(reading -> checkReading(checkup, reading, out));
    }
  }

  private void checkCut(Checkup checkup, @Nullable CutRun cut, Consumer<Finding> out) {
    if (cut == null) {
      return;
    }
    Demand demand = checkup.demand(cut.face().dimension());
    Length goal = cut.goal();
    if (demand == null
        || goal == null
        || cut.cut().purpose() instanceof Purpose.Clean
        || !goal.isLessThan(demand.limits().low())) {
      return;
    }
    out.accept(
        finding(
            cut.cut().origin(),
            "this goes "
                + demand.limits().low().minus(goal)
                + " below the least "
                + demand.dimension().word()
                + ": to "
                + goal
                + ", and the drawing allows "
                + demand.limits(),
            new Related(demand.origin(), "the " + demand.dimension().word() + " on the drawing")));
  }

  /** A stated number of passes that goes below size although the cut names a sound one. */
  private void checkPasses(Checkup checkup, CutRun cut, Consumer<Finding> out) {
    Demand demand = checkup.demand(cut.face().dimension());
    Passes.Counted counted = cut.countedPasses();
    if (demand == null || counted == null) {
      return;
    }
    Length total = counted.depth().times(counted.count());
    Length left = cut.before().range().middle().minus(total);
    if (left.isLessThan(demand.limits().low())) {
      out.accept(
          finding(
              counted.origin(),
              (counted.count() == 1 ? "one pass of " : counted.count() + " passes of ")
                  + counted.depth()
                  + (counted.count() == 1 ? " leaves only " : " leave only ")
                  + left
                  + " of the "
                  + demand.dimension().word()
                  + "; the drawing allows "
                  + demand.limits(),
              new Related(
                  demand.origin(), "the " + demand.dimension().word() + " on the drawing")));
    }
  }

  private void checkReading(Checkup checkup, Reading reading, Consumer<Finding> out) {
    Demand demand = checkup.demand(reading.dimension());
    List<Length> values = reading.values();
    Length least = values.stream().reduce(values.get(0), Length::min);
    boolean slip = demand != null && Drawing.isSlip(least, demand.aim());
    if (demand != null && !slip && least.isLessThan(demand.limits().low())) {
      out.accept(
          finding(
              reading.origin(),
              "the "
                  + demand.dimension().word()
                  + " was read as "
                  + least
                  + ", "
                  + demand.limits().low().minus(least)
                  + " below the least the drawing allows",
              new Related(
                  demand.origin(), "the " + demand.dimension().word() + " on the drawing")));
    }
  }
}
