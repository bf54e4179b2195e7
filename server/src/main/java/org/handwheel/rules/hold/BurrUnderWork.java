package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;

/** A burr between the work and what it is to lie against. */
public final class BurrUnderWork extends SimpleRule implements EachSetup {
  public BurrUnderWork() {
    super("burr-under-work", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    Hold hold = setup.setup().hold();
    if (hold == null || hold.up() == null) {
      return;
    }
    check(setup, hold, hold.up().value().opposite(), "under the work", out);
    if (setup.grip() != null) {
      Face fixed = setup.grip().fixedFace();
      check(setup, hold, fixed, "against the fixed jaw", out);
      check(setup, hold, fixed.opposite(), "against the moving jaw", out);
    } else if (hold.fixed() != null) {
      check(setup, hold, hold.fixed().value(), "against the plate", out);
    }
  }

  private void check(SetupRun setup, Hold hold, Face face, String where, Consumer<Finding> out) {
    Origin burr = setup.before().face(face).burr();
    if (burr == null) {
      return;
    }
    out.accept(
        finding(
            hold.origin(),
            "the "
                + face.word()
                + " "
                + where
                + " still has burrs on its edges; take them off first: `deburr edges of "
                + face.word()
                + "`",
            new Related(burr, "the burrs come from here")));
  }
}
