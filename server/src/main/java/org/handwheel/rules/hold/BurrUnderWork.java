package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;

/** A burr between the work and what it is to lie against. */
public final class BurrUnderWork extends SimpleRule {
  public BurrUnderWork() {
    super("burr-under-work", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null) {
      return;
    }
    Face fixed = setup.grip().fixedFace();
    Face under = setup.grip().underFace();
    check(setup, fixed, "against the fixed jaw", out);
    check(setup, under, "under the work", out);
    check(setup, fixed.opposite(), "against the moving jaw", out);
  }

  private void check(SetupRun setup, Face face, String where, Consumer<Finding> out) {
    Origin burr = setup.before().face(face).burr();
    if (burr == null || setup.grip() == null) {
      return;
    }
    out.accept(
        finding(
            setup.grip().hold().origin(),
            "the " + face.word() + " " + where + " still has burrs on its edges",
            new Related(burr, "the burrs come from here")));
  }
}
