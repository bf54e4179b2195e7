package org.handwheel.plan.draft;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.jspecify.annotations.Nullable;

/**
 * Where work sits along the jaws when one end stands out, and what keeps the moving jaw straight
 * then.
 */
final class Places {
  /** What stays between the finished end and the jaws, and how finely it is set. */
  private static final List<String[]> ROOMS =
      List.of(
          new String[] {"7", "0.280", "1", "0.05"},
          new String[] {"5", "0.200", "1", "0.05"},
          new String[] {"3", "0.120", "0.5", "0.02"},
          new String[] {"1.5", "0.060", "0.1", "0.005"});

  private final Task task;

  Places(Task task) {
    this.task = task;
  }

  /**
   * Where the work sits along the jaws.
   *
   * @param overhang how far the end stands out
   * @param spacer what keeps the moving jaw straight, if it needs anything
   */
  record Place(Length overhang, @Nullable Spacer spacer) {}

  /**
   * A spacer at the other end of the jaws.
   *
   * @param owned its name, or nothing if it has to be made
   */
  record Spacer(Length width, @Nullable String owned) {}

  Optional<Place> place(Owned.Vise vise, Asked asked, Seat seat, FaceCut cut, Face fixed, Why why) {
    LengthRange length = cut.before();
    Length half = vise.jawWidth().half();
    Length limit = Length.ZERO;
    for (String[] room : ROOMS) {
      Length overhang =
          task.numbers()
              .up(cut.removalHigh().plus(task.numbers().usual(room[0], room[1])), room[2], room[3]);
      // A long parallel would lie where the cutter goes.
      Length wall = half.plus(overhang).minus(cut.removalHigh());
      Length gripped = Length.min(length.low().minus(overhang), vise.jawWidth());
      limit =
          Length.min(
              Length.ofMillimetres(Math.max(0, gripped.millimetres() / 3)), asked.up().low());
      if (overhang.isMoreThan(limit) || !wall.isMoreThan(seat.length().half())) {
        continue;
      }
      Length right = half.plus(overhang);
      Length left = Length.max(right.minus(length.middle()), half.negated());
      Length offCentre = left.plus(half).half();
      if (!offCentre.times(6).isMoreThan(vise.jawWidth())) {
        return Optional.of(new Place(overhang, null));
      }
      Optional<Spacer> spacer = spacer(asked.across(), offCentre);
      if (spacer.isPresent()) {
        return Optional.of(new Place(overhang, spacer.get()));
      }
      why.add(
          "the work would stand at one end of the jaws of `"
              + vise.name()
              + "`, and its "
              + fixed.dimension().word()
              + " is not known well enough to put a spacer beside it");
      return Optional.empty();
    }
    why.add(
        "too short to stand out over the end of the jaws of `"
            + vise.name()
            + "`: it may stand out "
            + limit
            + ", and the cutter needs "
            + cut.removalHigh().plus(task.numbers().usual("1.5", "0.060")));
    return Optional.empty();
  }

  /** One of the shop's that is a hair under the work's width, or the size to make one to. */
  private Optional<Spacer> spacer(LengthRange across, Length offCentre) {
    // The jaw may swivel by 1 in 1000 before it matters, over twice the distance off the middle.
    Length lack =
        Length.max(
            task.numbers().usual("0.1", "0.004"),
            Length.ofMillimetres(offCentre.millimetres() * 2 / 1000));
    Optional<Spacer> owned =
        task.shop().all(Owned.Piece.class).stream()
            .filter(piece -> piece.kind() == OwnKind.SPACER)
            .flatMap(
                piece ->
                    Optional.ofNullable(piece.size("width"))
                        .map(width -> new Spacer(width, piece.name()))
                        .stream())
            .filter(one -> !one.width().isMoreThan(across.low()))
            .filter(one -> !across.high().minus(one.width()).isMoreThan(lack))
            .max(Comparator.comparing(Spacer::width));
    if (owned.isPresent()) {
      return owned;
    }
    Length made = task.numbers().down(across.low(), "0.05", "0.002");
    return made.isPositive() && !across.high().minus(made).isMoreThan(lack.times(2))
        ? Optional.of(new Spacer(made, null))
        : Optional.empty();
  }
}
