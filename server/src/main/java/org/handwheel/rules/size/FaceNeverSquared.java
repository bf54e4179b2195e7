package org.handwheel.rules.size;

import java.util.ArrayList;
import java.util.Arrays;
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
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Drawing.Demand;
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
        report(checkup, List.of(new Wanted(square.face(), square.reference())), callout, out);
      } else if (callout instanceof Callout.SquareAll) {
        report(checkup, adjoining(), callout, out);
      }
    }
  }

  /** A face that shall be square to a reference. */
  private record Wanted(Face face, Face reference) {
    String words() {
      return "the " + face.word() + " and the " + reference.word();
    }
  }

  private static List<Wanted> adjoining() {
    List<Wanted> pairs = new ArrayList<>();
    for (Face face : Face.all()) {
      for (Face other : Face.all()) {
        if (face.compareTo(other) < 0 && face.adjoins(other)) {
          pairs.add(new Wanted(face, other));
        }
      }
    }
    return pairs;
  }

  private void reportRaw(Checkup checkup, Face face, Consumer<Finding> out) {
    Demand demand = checkup.demand(face.dimension());
    if (demand == null) {
      return;
    }
    out.accept(
        finding(
            checkup.run().start().face(face).since(),
            "the "
                + face.word()
                + " is "
                + checkup.run().end().face(face).words()
                + " and no setup machines it",
            new Related(demand.origin(), "the " + demand.dimension().word() + " on the drawing")));
  }

  /** Reports one demand of the drawing, with all its pairs of faces in one finding each way. */
  private void report(
      Checkup checkup, List<Wanted> wanted, Callout callout, Consumer<Finding> out) {
    List<Wanted> loose = new ArrayList<>();
    List<Wanted> missing = new ArrayList<>();
    for (Wanted pair : wanted) {
      if (isLeftRaw(checkup, pair.face()) || isLeftRaw(checkup, pair.reference())) {
        continue;
      }
      Relation relation = checkup.run().end().relation(pair.face(), pair.reference());
      if (relation == null && !checkup.isReported(obstacle(checkup, pair))) {
        missing.add(pair);
      } else if (relation != null && bound(checkup, pair, relation).isMoreThan(callout.zone())) {
        loose.add(pair);
      }
    }
    if (!missing.isEmpty()) {
      reportMissing(checkup, missing, callout, out);
    }
    if (!loose.isEmpty()) {
      reportLoose(checkup, loose, callout, out);
    }
  }

  private void reportMissing(
      Checkup checkup, List<Wanted> missing, Callout callout, Consumer<Finding> out) {
    Obstacle first = obstacle(checkup, missing.get(0));
    List<Related> related = new ArrayList<>();
    missing.stream()
        .flatMap(pair -> Arrays.stream(related(checkup, obstacle(checkup, pair))))
        .distinct()
        .forEach(related::add);
    out.accept(
        finding(
            callout.origin(),
            "no setup makes "
                + missing.get(0).words()
                + " square to each other"
                + why(first)
                + more(missing.size()),
            related.toArray(Related[]::new)));
  }

  private void reportLoose(
      Checkup checkup, List<Wanted> loose, Callout callout, Consumer<Finding> out) {
    Wanted worst = loose.get(0);
    Length most = Length.ZERO;
    List<Related> related = new ArrayList<>();
    for (Wanted pair : loose) {
      Relation relation = checkup.run().end().relation(pair.face(), pair.reference());
      if (relation != null) {
        related.add(new Related(relation.origin(), relation.reason()));
        Length bound = bound(checkup, pair, relation);
        if (bound.isMoreThan(most)) {
          most = bound;
          worst = pair;
        }
      }
    }
    out.accept(
        finding(
            callout.origin(),
            worst.words()
                + " are square only within "
                + beyond(most, callout.zone())
                + " the way they are held; the drawing asks for "
                + callout.zone()
                + more(loose.size()),
            related.stream().distinct().toArray(Related[]::new)));
  }

  /** A bound that is over a limit, so that a reader sees that it is, however little. */
  static String beyond(Length bound, Length limit) {
    String words = bound.toString();
    return words.equals(limit.toString()) ? "a little more than " + words : words;
  }

  private static Length bound(Checkup checkup, Wanted pair, Relation relation) {
    return relation.zone(pair.face(), pair.reference(), checkup.run().end().sizes());
  }

  private static @Nullable Obstacle obstacle(Checkup checkup, Wanted pair) {
    return checkup.run().end().obstacles().get(new FacePair(pair.face(), pair.reference()));
  }

  private static String more(int pairs) {
    return pairs == 1
        ? ""
        : pairs == 2 ? " (and another pair)" : " (and " + (pairs - 1) + " more pairs)";
  }

  static String why(@Nullable Obstacle obstacle) {
    return obstacle == null ? "" : ": " + obstacle.why();
  }

  /** Where to look: what stood in the way, or where the setups begin if no cut ever tried. */
  static Related[] related(Checkup checkup, @Nullable Obstacle obstacle) {
    return new Related[] {
      obstacle == null
          ? new Related(checkup.plan().setups().get(0).header(), "the setups begin here")
          : new Related(obstacle.origin(), obstacle.why())
    };
  }
}
