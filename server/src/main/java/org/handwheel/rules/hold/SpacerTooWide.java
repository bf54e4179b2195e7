package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Hold.Spacer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;

/** A spacer wider than the work takes the clamping force. */
public final class SpacerTooWide extends SimpleRule {
  public SpacerTooWide() {
    super("spacer-too-wide", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(grip, out)));
  }

  private void check(Grip grip, Consumer<Finding> out) {
    Spacer spacer = Holding.spacer(grip);
    if (spacer == null
        || grip.hold().spacer() == null
        || !spacer.width().isMoreThan(grip.gripped().low())) {
      return;
    }
    boolean sure = spacer.width().isMoreThan(grip.gripped().high());
    out.accept(
        finding(
            sure ? severity() : Severity.WARNING,
            grip.hold().spacer().origin(),
            "the spacer is "
                + spacer.width()
                + " wide and the work "
                + grip.gripped()
                + (sure ? "; the work is loose" : "; the work may be loose")));
  }
}
