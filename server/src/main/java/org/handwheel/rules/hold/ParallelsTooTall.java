package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;

/** Parallels so tall that the jaws hardly reach the work above them. */
public final class ParallelsTooTall extends SimpleRule implements EachSetup {
  public ParallelsTooTall() {
    super("parallels-too-tall", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(checkup, grip, out)));
  }

  /** Whether the jaws reach less than the least grip above the seat, however high the work is. */
  static boolean isTooTall(Checkup checkup, Grip grip) {
    Length left = grip.vise().jawDepth().minus(grip.seat());
    return grip.parallels().isPresent()
        && left.isLessThan(checkup.limits().length(Limit.LEAST_GRIP));
  }

  private void check(Checkup checkup, Grip grip, Consumer<Finding> out) {
    if (!isTooTall(checkup, grip) || grip.hold().support() == null) {
      return;
    }
    Length left = grip.vise().jawDepth().minus(grip.seat());
    out.accept(
        finding(
            grip.hold().support().origin(),
            left.isPositive()
                ? "these parallels leave only " + left + " of the jaws above them to grip the work"
                : "these parallels stand as high as the jaws, so nothing grips the work",
            new Related(
                grip.vise().origin(),
                "the jaws are " + grip.vise().jawDepth() + " high above the bed")));
  }
}
