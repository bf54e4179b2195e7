package org.handwheel.rules.size;

import java.util.function.Consumer;
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
  }
}
