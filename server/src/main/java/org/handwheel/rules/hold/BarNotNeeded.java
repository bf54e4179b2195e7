package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.Relation;

/** A bar at the moving jaw although both jaw faces are parallel: it keeps the work from seating. */
public final class BarNotNeeded extends SimpleRule implements EachSetup {
  public BarNotNeeded() {
    super("bar-not-needed", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null || setup.grip().hold().bar() == null) {
      return;
    }
    Relation parallel =
        setup.before().relation(setup.grip().fixedFace(), setup.grip().movingFace());
    boolean underGood = setup.before().face(setup.grip().underFace()).isMachined();
    if (parallel == null || !underGood) {
      return;
    }
    out.accept(
        finding(
            setup.grip().hold().bar().origin(),
            "the "
                + setup.grip().movingFace().word()
                + " is already parallel to the "
                + setup.grip().fixedFace().word()
                + "; without the bar the work can be tapped down and seats on the "
                + setup.grip().underFace().word(),
            new Related(parallel.origin(), parallel.reason())));
  }
}
