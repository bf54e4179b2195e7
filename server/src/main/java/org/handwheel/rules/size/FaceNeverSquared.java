package org.handwheel.rules.size;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.Stock.Skin;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.FacePair;
import org.handwheel.work.FaceState.Condition;
import org.handwheel.work.Obstacle;
import org.handwheel.work.Relation;
import org.jspecify.annotations.Nullable;

/** A face that is never machined, or a squareness of the drawing that no setup makes. */
public final class FaceNeverSquared extends SimpleRule {
  public FaceNeverSquared() {
    super("face-never-squared", Severity.WARNING);
  }

  /**
   * Whether the plan never cuts a face that the stock leaves raw and the drawing gives a size to.
   */
  static boolean isLeftRaw(Checkup checkup, Face face) {
    return checkup.run().end().face(face).condition() == Condition.RAW
        && checkup.plan().stock() != null
        && checkup.plan().stock().skins().containsKey(face)
        && checkup.demand(face.dimension()) != null
        && checkup.run().start().face(face).skin() != Skin.DRAWN;
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    if (part == null || !checkup.isWhole() || checkup.plan().setups().isEmpty()) {
      return;
    }
    for (Face face : Face.all()) {
      if (isLeftRaw(checkup, face)) {
        reportRaw(checkup, face, out);
      }
    }
    for (Callout callout : part.callouts()) {
      if (callout instanceof Callout.Square square) {
        checkPair(checkup, square.face(), square.reference(), square.zone(), square.origin(), out);
      } else if (callout instanceof Callout.SquareAll all) {
        for (FacePair pair : adjoining()) {
          checkPair(checkup, pair.first(), pair.second(), all.zone(), all.origin(), out);
        }
      }
    }
  }

  private static List<FacePair> adjoining() {
    List<FacePair> pairs = new ArrayList<>();
    for (Face face : Face.all()) {
      for (Face other : Face.all()) {
        if (face.compareTo(other) < 0 && face.adjoins(other)) {
          pairs.add(new FacePair(face, other));
        }
      }
    }
    return pairs;
  }

  private void reportRaw(Checkup checkup, Face face, Consumer<Finding> out) {
    Origin origin = checkup.run().start().face(face).since();
    out.accept(
        finding(
            origin,
            "the "
                + face.word()
                + " is "
                + checkup.run().end().face(face).words()
                + " and no setup machines it"));
  }

  private void checkPair(
      Checkup checkup,
      Face face,
      Face reference,
      Length zone,
      Origin origin,
      Consumer<Finding> out) {
    if (isLeftRaw(checkup, face) || isLeftRaw(checkup, reference)) {
      return;
    }
    Relation relation = checkup.run().end().relation(face, reference);
    String pair = "the " + face.word() + " and the " + reference.word();
    if (relation != null) {
      Length bound = relation.zone(face, reference, checkup.run().end().sizes());
      if (bound.isMoreThan(zone)) {
        out.accept(
            finding(
                origin,
                pair
                    + " are square only within "
                    + bound
                    + " the way they are held; the drawing asks for "
                    + zone,
                new Related(relation.origin(), relation.reason())));
      }
      return;
    }
    Obstacle obstacle = checkup.run().end().obstacles().get(new FacePair(face, reference));
    if (obstacle == null || !obstacle.kind().isReportedElsewhere()) {
      out.accept(
          finding(
              origin,
              "no setup makes " + pair + " square to each other" + why(obstacle),
              related(obstacle)));
    }
  }

  static String why(@Nullable Obstacle obstacle) {
    return obstacle == null ? "" : ": " + obstacle.why();
  }

  static Related[] related(@Nullable Obstacle obstacle) {
    return obstacle == null
        ? new Related[0]
        : new Related[] {new Related(obstacle.origin(), obstacle.why())};
  }
}
