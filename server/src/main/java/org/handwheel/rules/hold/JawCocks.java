package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Hold.Spacer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;

/** Work at one end of the jaws, with nothing of its width at the other. */
public final class JawCocks extends SimpleRule {
  public JawCocks() {
    super("jaw-cocks", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(grip, out)));
  }

  /** A spacer up to this much narrower than the work is as good as can be expected. */
  private static final Length PRACTICAL = Length.mm("0.1");

  /** From this error of angle the swivel of the moving jaw begins to matter. */
  private static final Slope NOTABLE = Slope.of(Length.mm("0.001"), Length.mm("1"));

  private void check(Grip grip, Consumer<Finding> out) {
    if (!Holding.needsSpacer(grip)) {
      return;
    }
    Spacer spacer = Holding.spacer(grip);
    if (spacer == null) {
      out.accept(
          finding(
              Holding.pullsOutside(grip) ? Severity.ERROR : severity(),
              grip.hold().origin(),
              "the grip is "
                  + grip.offCentre().abs()
                  + " off the middle of the jaws and the moving jaw stands askew; put a spacer as"
                  + " wide as the work ("
                  + grip.gripped().low()
                  + ") at the other end"));
      return;
    }
    Slope cock = Holding.cock(grip);
    boolean notable =
        cock.isMoreThan(NOTABLE)
            && grip.gripped().high().minus(spacer.width()).isMoreThan(PRACTICAL);
    if (notable && grip.hold().spacer() != null) {
      out.accept(
          finding(
              cock.isMoreThan(grip.vise().slack()) ? Severity.ERROR : severity(),
              grip.hold().spacer().origin(),
              "the spacer is "
                  + grip.gripped().high().minus(spacer.width())
                  + " narrower than the work, so the moving jaw swivels by "
                  + cock));
    }
  }
}
