package org.handwheel.rules.size;

import java.util.function.Consumer;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.Dial;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.OpeningSize;
import org.handwheel.work.feature.OpeningSize.By;

/** A tolerance so narrow that the dial's nearest division may lie outside it. */
public final class DialRounding extends SimpleRule implements EachSetup {
  public DialRounding() {
    super("dial-rounding", Severity.WARNING);
  }

  /**
   * Whether half a division is as much as half the tolerance: then the nearest division can miss
   * it. Source: common practice, no source (half a division is the finest setting).
   */
  static boolean isDialTooCoarse(CutRun cut, Demand demand) {
    return cut.screw() != null
        && !Dial.worstRounding(cut.screw()).isLessThan(demand.limits().width().half());
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .cuts()
        .filter(cut -> cut.cut().purpose() instanceof Purpose.Finish)
        .forEach(
            cut -> {
              Demand demand = checkup.demand(cut.face().dimension());
              if (demand != null && cut.screw() != null && isDialTooCoarse(cut, demand)) {
                out.accept(
                    finding(
                        cut.cut().origin(),
                        "one division on the "
                            + cut.depthAxis().word()
                            + " dial is "
                            + cut.screw().division()
                            + ", so a setting may be off by half of that; the tolerance is "
                            + demand.limits().width()
                            + " in all",
                        new Related(
                            demand.origin(),
                            "the " + demand.dimension().word() + " on the drawing")));
              }
            });
    checkup.forEachKnownFeature(
        (setup, step, feature) -> {
          if (feature.left().isZero()) {
            FeatureTable.of(checkup.run(), setup, step)
                .ifPresent(table -> check(checkup, table, out));
          }
        });
  }

  /** An opening has a wall on either side, and each is a setting of the dial. */
  private void check(Checkup checkup, FeatureTable table, Consumer<Finding> out) {
    for (OpeningSize size : OpeningSize.of(table, checkup.limits())) {
      Owned.Machine machine = checkup.plan().machine();
      Screw screw = machine == null ? null : machine.screw(size.along());
      if (size.by() == By.DIALS
          && screw != null
          && !Dial.worstRounding(screw).times(2).isLessThan(size.limits().width().half())) {
        out.accept(
            finding(
                table.step().step().origin(),
                "one division on the "
                    + size.along().word()
                    + " dial is "
                    + screw.division()
                    + ", so the two walls of `"
                    + table.run().spec().name()
                    + "` may be off by that together; the tolerance of its "
                    + size.size().word()
                    + " is "
                    + size.limits().width()
                    + " in all",
                new Related(table.run().spec().origin(), "it is drawn here")));
        return;
      }
    }
  }
}
