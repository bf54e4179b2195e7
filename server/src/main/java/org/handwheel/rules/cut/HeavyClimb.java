package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.model.Located;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.CuttingConditions.Bite;
import org.handwheel.work.CuttingConditions.Load;

/** A climb cut that pulls the table through its backlash. */
public final class HeavyClimb extends SimpleRule implements EachSetup {
  public HeavyClimb() {
    super("heavy-climb", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .cuts()
        .filter(cut -> !cut.engagement().isConventional())
        .forEach(
            cut ->
                check(
                    checkup,
                    -cut.meanForce(),
                    cut.travel().axis(),
                    cut.cut().direction() == null
                        ? cut.cut().origin()
                        : cut.cut().direction().origin(),
                    out));
    checkup.forEachKnownFeature(
        (setup, step, feature) -> {
          Located<CutDirection> direction = feature.cut().way().direction();
          if (direction != null && direction.value() == CutDirection.CLIMB) {
            CuttingCalculator.of(checkup.run(), step)
                .ifPresent(
                    conditions ->
                        check(
                            checkup,
                            pull(conditions),
                            conditions.asked().travel(),
                            direction.origin(),
                            out));
          }
        });
  }

  /** The mean pull of a climb cut along the travel: its share of the tangential force. */
  private static double pull(CuttingConditions conditions) {
    Bite bite = conditions.asked().bite();
    Load load = conditions.load();
    if (bite == null || load == null || bite.engagement().isConventional()) {
      return 0;
    }
    // The tangential force is a mean over the engagement's width, the net force a share of the
    // force on a chip as thick as the feed.
    double width = bite.engagement().width();
    return width <= 0 ? 0 : -load.tangentialForce() / width * bite.engagement().netForce();
  }

  private void check(
      Checkup checkup, double pull, Axis axis, Origin origin, Consumer<Finding> out) {
    if (pull <= checkup.limits().number(Limit.TABLE_DRAG)) {
      return;
    }
    Length backlash = backlash(checkup, axis);
    if (!backlash.isPositive()) {
      return;
    }
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
            new Related(machine(checkup, origin), "the backlash is given here")));
  }

  private static Origin machine(Checkup checkup, Origin line) {
    return checkup.plan().machine() == null ? line : checkup.plan().machine().origin();
  }

  private static Length backlash(Checkup checkup, Axis axis) {
    Screw screw = checkup.plan().machine() == null ? null : checkup.plan().machine().screw(axis);
    return screw == null ? Length.ZERO : screw.backlash();
  }
}
