package org.handwheel.plan.draft;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Face;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.units.Length;

/** The shop's round bars for the moving jaw: they keep a raw face from ruling a clean one. */
final class Bars {
  private final Task task;

  Bars(Task task) {
    this.task = task;
  }

  /** The thickest round bar that stays below the jaws' top at the middle of the grip. */
  Optional<Owned.Piece> thickest(Asked asked, Seat seat) {
    Length middle = seat.height().plus(asked.grip(seat.height()).half());
    return bars()
        .filter(piece -> !asked.across().high().plus(dia(piece)).isMoreThan(asked.vise().opening()))
        .filter(
            piece ->
                seat.height()
                    .plus(asked.lowest())
                    .isMoreThan(
                        middle.plus(dia(piece).half()).plus(task.numbers().usual("0.5", "0.02"))))
        .max(Comparator.comparing(Bars::dia));
  }

  private Stream<Owned.Piece> bars() {
    return task.shop().all(Owned.Piece.class).stream()
        .filter(piece -> piece.kind() == OwnKind.BAR && dia(piece).isPositive());
  }

  static Length dia(Owned.Piece piece) {
    Length dia = piece.size("dia");
    return dia == null ? Length.ZERO : dia;
  }

  String whyNone(Asked asked, Seat seat, Face fixed) {
    Optional<Length> least = bars().map(Bars::dia).min(Comparator.naturalOrder());
    if (least.isEmpty()) {
      return "the shop has no round bar for the moving jaw (`own bar`); without one the raw "
          + fixed.opposite().word()
          + " would pull the work off the fixed jaw";
    }
    Length needed = asked.across().high().plus(least.get());
    return needed.isMoreThan(asked.vise().opening())
        ? Holds.opens(asked.vise(), fixed.dimension(), needed) + " with the thinnest bar"
        : "the thinnest bar, "
            + least.get()
            + ", is too thick for a grip of "
            + asked.grip(seat.height());
  }
}
