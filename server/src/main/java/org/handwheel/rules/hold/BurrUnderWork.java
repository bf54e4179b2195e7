package org.handwheel.rules.hold;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;

/**
 * A burr between the work and what it is to lie against. It is reported where it first does harm:
 * one line takes it off for all the setups that follow.
 */
public final class BurrUnderWork extends SimpleRule {
  public BurrUnderWork() {
    super("burr-under-work", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Burr> reported = new HashSet<>();
    checkup.wholeSetups().forEach(setup -> check(setup, reported, out));
  }

  /** The burrs that one line leaves on a face. */
  private record Burr(Face face, Origin origin) {}

  private void check(SetupRun setup, Set<Burr> reported, Consumer<Finding> out) {
    Hold hold = setup.setup().hold();
    if (hold == null || hold.up() == null) {
      return;
    }
    check(setup, reported, hold, hold.up().value().opposite(), "under the work", out);
    if (setup.grip() != null) {
      Face fixed = setup.grip().fixedFace();
      check(setup, reported, hold, fixed, "against the fixed jaw", out);
      check(setup, reported, hold, fixed.opposite(), "against the moving jaw", out);
    } else if (hold.fixed() != null) {
      check(setup, reported, hold, hold.fixed().value(), "against the plate", out);
    }
  }

  private void check(
      SetupRun setup,
      Set<Burr> reported,
      Hold hold,
      Face face,
      String where,
      Consumer<Finding> out) {
    Origin burr = setup.before().face(face).burr();
    if (burr == null || !reported.add(new Burr(face, burr))) {
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
