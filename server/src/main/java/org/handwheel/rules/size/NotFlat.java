package org.handwheel.rules.size;

import java.util.function.Consumer;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.FaceState;

/** Faces the drawing wants flatter than the way they are cut makes them. */
public final class NotFlat extends SimpleRule {
  public NotFlat() {
    super("not-flat", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    if (part == null || !checkup.isWhole() || checkup.plan().setups().isEmpty()) {
      return;
    }
    for (Callout callout : part.callouts()) {
      if (callout instanceof Callout.Flat flat) {
        check(checkup, flat, out);
      }
    }
  }

  private void check(Checkup checkup, Callout.Flat flat, Consumer<Finding> out) {
    FaceState end = checkup.run().end().face(flat.face());
    String face = "the " + flat.face().word();
    if (end.flatness() == null) {
      // What leaves a face that has a size raw or skimmed is reported as just that.
      boolean reported =
          FaceNeverSquared.isLeftRaw(checkup, flat.face())
              || end.condition() == FaceState.Condition.SKIMMED;
      if (!reported) {
        out.accept(
            finding(
                flat.origin(),
                face
                    + " stays as it is, "
                    + end.words()
                    + "; the drawing asks for flat within "
                    + flat.zone()));
      }
    } else if (end.flatness().isMoreThan(flat.zone())) {
      out.accept(
          finding(
              flat.origin(),
              face
                  + " is flat only within "
                  + FaceNeverSquared.beyond(end.flatness(), flat.zone())
                  + " the way it is cut; the drawing"
                  + " asks for "
                  + flat.zone(),
              new Related(end.since(), "it comes from here")));
    }
  }
}
