package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Direction;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun.SetupRun;

/** Work standing out beyond the jaws further than it can bear. */
public final class OverhangTooLong extends SimpleRule implements EachSetup {
  public OverhangTooLong() {
    super("overhang-too-long", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    Grip grip = setup.grip();
    if (grip == null) {
      return;
    }
    Origin origin =
        grip.hold().overhang() == null ? grip.hold().origin() : grip.hold().overhang().origin();
    Related vise =
        new Related(grip.vise().origin(), "the jaws are " + grip.vise().jawWidth() + " wide");
    if (!grip.gripLength().isPositive()) {
      out.accept(finding(Severity.ERROR, origin, "nothing of the work is between the jaws", vise));
      return;
    }
    for (Direction end : new Direction[] {Direction.OPERATOR_LEFT, Direction.OPERATOR_RIGHT}) {
      boolean cutThere =
          setup.steps().stream().anyMatch(step -> step.cut() != null && step.cut().normal() == end);
      Length overhang = grip.overhang(end);
      Length third = grip.gripLength().times(BigFraction.of(1, 3));
      Length limit = Length.min(third, grip.height().low());
      if (cutThere && overhang.isMoreThan(limit)) {
        out.accept(
            finding(
                origin,
                "the work stands out "
                    + overhang
                    + "; beyond "
                    + limit
                    + " (a third of the gripped length, and not more than the height) it springs"
                    + " and chatters",
                vise));
      }
    }
  }
}
