package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;

/** Work gripped by too little of its height. */
public final class TooLowGrip extends SimpleRule implements EachSetup {
  public TooLowGrip() {
    super("too-low-grip", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(checkup, grip, out)));
  }

  private void check(Checkup checkup, Grip grip, Consumer<Finding> out) {
    if (ParallelsTooTall.isTooTall(checkup, grip)) {
      return;
    }
    Length third = grip.height().low().times(BigFraction.of(1, 3));
    Length need = Length.max(checkup.limits().length(Limit.LEAST_GRIP), third);
    Length depth = grip.depth().low();
    if (!depth.isLessThan(need)) {
      return;
    }
    out.accept(
        finding(
            depth.isLessThan(checkup.limits().length(Limit.LEAST_GRIP))
                ? Severity.ERROR
                : severity(),
            grip.hold().support() == null ? grip.hold().origin() : grip.hold().support().origin(),
            "the jaws grip "
                + depth
                + " of "
                + grip.height().low()
                + "; at least "
                + need
                + (need.isMoreThan(third) ? "" : " (a third of the height)")
                + " is wanted",
            new Related(
                grip.vise().origin(),
                "the jaws are " + grip.vise().jawDepth() + " high above the bed")));
  }
}
