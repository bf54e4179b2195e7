package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Hold.Spacer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.SizeState;

/** A spacer wider than the work takes the clamping force. */
public final class SpacerTooWide extends SimpleRule implements EachSetup {
  public SpacerTooWide() {
    super("spacer-too-wide", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(setup, grip, out)));
  }

  private void check(SetupRun setup, Grip grip, Consumer<Finding> out) {
    if (grip.hold().spacer() == null) {
      return;
    }
    Spacer spacer = grip.hold().spacer().value();
    LengthRange room = Holding.spacerWidth(grip, spacer);
    if (!spacer.width().isMoreThan(room.low())) {
      return;
    }
    boolean sure = spacer.width().isMoreThan(room.high());
    SizeState size = setup.before().size(grip.orientation().along(Axis.Y));
    out.accept(
        finding(
            sure ? severity() : Severity.WARNING,
            grip.hold().spacer().origin(),
            "the spacer is "
                + spacer.width()
                + " wide and the work "
                + (sure ? room.high() : room.low() + " at the least")
                + (sure
                    ? ": the vise closes on the spacer and the work is loose"
                    : ": the vise may close on the spacer; measure, and take the spacer a little"
                        + " narrower"),
            new Related(
                size == null ? grip.hold().origin() : size.since(),
                "the work's size comes from here")));
  }
}
