package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned.Screw;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CutRun;

/** A climb cut that pulls the table through its backlash. */
public final class HeavyClimb extends SimpleRule implements EachSetup {
  public HeavyClimb() {
    super("heavy-climb", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.cuts().forEach(cut -> check(checkup, cut, out));
  }

  private void check(Checkup checkup, CutRun cut, Consumer<Finding> out) {
    double pull = -cut.meanForce();
    if (pull <= checkup.limits().number(Limit.TABLE_DRAG) || cut.engagement().isConventional()) {
      return;
    }
    Length backlash = backlash(checkup, cut.travel().axis());
    if (!backlash.isPositive()) {
      return;
    }
    Origin origin =
        cut.cut().direction() == null ? cut.cut().origin() : cut.cut().direction().origin();
    out.accept(
        finding(
            origin,
            "this climb cut pulls the table along with about "
                + Math.round(pull)
                + " N (drag "
                + Math.round(checkup.limits().number(Limit.TABLE_DRAG))
                + " N); it can jump by the backlash of "
                + LengthText.both(backlash)
                + "; cut conventionally, or climb only a light finishing pass",
            new Related(machine(checkup, cut), "the backlash is given here")));
  }

  private static Origin machine(Checkup checkup, CutRun cut) {
    return checkup.plan().machine() == null
        ? cut.cut().origin()
        : checkup.plan().machine().origin();
  }

  private static Length backlash(Checkup checkup, Axis axis) {
    Screw screw = checkup.plan().machine() == null ? null : checkup.plan().machine().screw(axis);
    return screw == null ? Length.ZERO : screw.backlash();
  }
}
