package org.handwheel.rules.size;

import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.FacePair;
import org.handwheel.work.Obstacle;
import org.handwheel.work.Relation;

/** Opposite faces the drawing wants parallel, and no setup makes them so. */
public final class NotParallel extends SimpleRule {
  public NotParallel() {
    super("not-parallel", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    if (part == null || !checkup.isWhole() || checkup.plan().setups().isEmpty()) {
      return;
    }
    for (Callout callout : part.callouts()) {
      if (callout instanceof Callout.Parallel parallel) {
        checkPair(checkup, parallel.face(), parallel.zone(), parallel.origin(), out);
      } else if (callout instanceof Callout.SquareAll all) {
        checkPair(checkup, Face.RIGHT, all.zone(), all.origin(), out);
        checkPair(checkup, Face.BACK, all.zone(), all.origin(), out);
        checkPair(checkup, Face.TOP, all.zone(), all.origin(), out);
      }
    }
  }

  private void checkPair(
      Checkup checkup, Face face, Length zone, Origin origin, Consumer<Finding> out) {
    Face opposite = face.opposite();
    if (FaceNeverSquared.isLeftRaw(checkup, face)
        || FaceNeverSquared.isLeftRaw(checkup, opposite)) {
      return;
    }
    String pair = "the " + face.word() + " and the " + opposite.word();
    Relation relation = checkup.run().end().relation(face, opposite);
    if (relation != null) {
      Length bound = relation.zone(face, opposite, checkup.run().end().sizes());
      if (bound.isMoreThan(zone)) {
        out.accept(
            finding(
                origin,
                pair
                    + " are parallel only within "
                    + FaceNeverSquared.beyond(bound, zone)
                    + " the way they are held; the drawing asks for "
                    + zone,
                new Related(relation.origin(), relation.reason())));
      }
      return;
    }
    Obstacle obstacle = checkup.run().end().obstacles().get(new FacePair(face, opposite));
    // What this rule itself reports of other faces is no reason to be silent about these.
    boolean byOwnRule = obstacle != null && obstacle.kind() == Obstacle.Kind.JAWS_NOT_PARALLEL;
    if (byOwnRule || !checkup.isReported(obstacle)) {
      out.accept(
          finding(
              origin,
              "no setup makes " + pair + " parallel" + FaceNeverSquared.why(obstacle),
              FaceNeverSquared.related(checkup, obstacle)));
    }
  }
}
