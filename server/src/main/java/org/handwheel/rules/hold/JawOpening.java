package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Grip;

/** The vise does not open wide enough. */
public final class JawOpening extends SimpleRule implements EachSetup {
  public JawOpening() {
    super("jaw-opening", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(grip, out)));
  }

  private void check(Grip grip, Consumer<Finding> out) {
    if (grip.opening().isMoreThan(grip.vise().opening())) {
      out.accept(
          finding(
              grip.hold().origin(),
              "this needs an opening of "
                  + grip.opening()
                  + "; `"
                  + grip.vise().name()
                  + "` opens "
                  + grip.vise().opening(),
              new Related(grip.vise().origin(), "the vise's opening is given here")));
    }
  }
}
