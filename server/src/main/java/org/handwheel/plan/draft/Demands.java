package org.handwheel.plan.draft;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Drawing;
import org.handwheel.work.FacePair;
import org.handwheel.work.Relation;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/** How far the faces made so far lie as the drawing wants them. */
final class Demands {
  /** The weight of a pair of faces that the drawing wants square or parallel and that is not. */
  private static final int WANTED = 60;

  /** The weight of a new face that lies in no known way to any face made before. */
  private static final int ADRIFT = 40;

  private final Task task;

  Demands(Task task) {
    this.task = task;
  }

  /**
   * What is missing between the faces made so far, as a cost; nothing if a demand of the drawing
   * cannot be met any more; then the reason is added.
   */
  Optional<Integer> missing(
      Workpiece work, Set<Face> left, @Nullable Face cut, Map<Face, Why> reasons) {
    int cost = 0;
    if (cut == null) {
      return Optional.of(0);
    }
    List<Face> made =
        Face.all().stream()
            .filter(face -> face != cut && !left.contains(face) && work.face(face).isMachined())
            .toList();
    // Faces that stay as they were bought are no measure for the others unless the drawing says so.
    List<Face> own = made.stream().filter(task.toCut()::contains).toList();
    if (!own.isEmpty() && own.stream().allMatch(face -> work.relation(cut, face) == null)) {
      cost += ADRIFT;
    }
    for (Face other : made) {
      Length zone = zone(cut, other);
      if (zone == null) {
        continue;
      }
      Relation relation = work.relation(cut, other);
      if (relation == null) {
        cost += WANTED;
      } else if (zoneOf(relation, cut, other, work).isMoreThan(zone)) {
        String reason =
            "held the ways the shop allows it comes "
                + (cut.adjoins(other) ? "square" : "parallel")
                + " to the "
                + other.word()
                + " within "
                + zoneOf(relation, cut, other, work)
                + "; the drawing asks for "
                + zone;
        reasons.computeIfAbsent(cut, Why::of).add(reason);
        return Optional.empty();
      }
    }
    return Optional.of(cost);
  }

  /** The zone on the finished part: what is still too large now will be smaller. */
  private Length zoneOf(Relation relation, Face face, Face reference, Workpiece work) {
    Map<PartDimension, SizeState> sizes = new EnumMap<>(PartDimension.class);
    work.sizes()
        .forEach(
            (dimension, size) -> {
              Drawing.Demand demand = task.demand(dimension);
              LengthRange range = demand == null ? size.range() : demand.limits();
              sizes.put(dimension, new SizeState(range, null, null, size.since()));
            });
    return relation.zone(face, reference, sizes);
  }

  /** The narrowest zone the drawing gives for two faces, if it gives one. */
  private @Nullable Length zone(Face a, Face b) {
    Length zone = null;
    for (Callout callout : task.part().callouts()) {
      boolean about =
          callout instanceof Callout.SquareAll
              || (callout instanceof Callout.Square square
                  && new FacePair(square.face(), square.reference()).equals(new FacePair(a, b)))
              || (callout instanceof Callout.Parallel parallel
                  && new FacePair(parallel.face(), parallel.reference())
                      .equals(new FacePair(a, b)));
      if (about && (zone == null || callout.zone().isLessThan(zone))) {
        zone = callout.zone();
      }
    }
    return zone;
  }
}
