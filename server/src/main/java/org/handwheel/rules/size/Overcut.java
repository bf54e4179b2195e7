package org.handwheel.rules.size;

import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;
import org.jspecify.annotations.Nullable;

/** A cut to a size below the drawing's limit, or a reading below it: the metal cannot come back. */
public final class Overcut extends SimpleRule {
  public Overcut() {
    super("overcut", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().cuts().forEach(cut -> checkCut(checkup, cut, out));
    checkup
        .run()
        .steps()
        .filter(step -> step.reading() != null)
        .forEach(step -> checkReading(checkup, step.reading(), out));
  }

  private void checkCut(Checkup checkup, CutRun cut, Consumer<Finding> out) {
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

  private void checkReading(Checkup checkup, @Nullable Reading reading, Consumer<Finding> out) {
    if (reading == null) {
      return;
    }
    Demand demand = checkup.demand(reading.dimension());
    List<Length> values = reading.values();
    Length least = values.stream().reduce(values.get(0), Length::min);
    if (demand != null && least.isLessThan(demand.limits().low())) {
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
