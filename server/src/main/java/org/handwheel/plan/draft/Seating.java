package org.handwheel.plan.draft;

import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.Callout;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Kind;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.work.FacePair;
import org.handwheel.work.Workpiece;

/** Getting work down on its seat, and upright where the seat alone does not keep it so. */
final class Seating {
  private final Task task;

  Seating(Task task) {
    this.task = task;
  }

  /**
   * Work set upright by a square.
   *
   * @param against the face the square's blade lies on
   */
  record Upright(Face against, Owned.Instrument square) {}

  /** A raw face underneath does not keep the work upright; a square on a clean side does. */
  Optional<Upright> upright(Workpiece work, Face face, Face fixed, Seat seat, boolean standing) {
    if (work.face(face.opposite()).isMachined() || seat.kind() == Kind.ONE) {
      return Optional.empty();
    }
    return task.byRank().stream()
        .filter(one -> one.adjoins(face) && one.adjoins(fixed) && work.face(one).isMachined())
        .filter(one -> standing || isWantedSquare(face, one))
        .findFirst()
        .flatMap(
            one ->
                task.instrument(Owned.InstrumentKind.SQUARE)
                    .map(square -> new Upright(one, square)));
  }

  Optional<String> line(
      Workpiece work, FaceCut cut, Face fixed, Seat seat, Asked asked, Optional<Upright> upright) {
    boolean clean = work.face(cut.face().opposite()).isMachined();
    // Thin flat work bows when it is squeezed hard.
    boolean thin = !asked.across().low().isLessThan(asked.up().high().times(4));
    if (upright.isPresent()) {
      return Optional.of(
          "seat tapped, upright on "
              + upright.get().against().word()
              + " with "
              + upright.get().square().name());
    }
    String light = thin ? ", grip light" : "";
    if (clean) {
      return Optional.of("seat tapped" + light + (seat.isPair() ? ", both parallels tight" : ""));
    }
    boolean flat =
        !work.face(fixed).isMachined()
            && !asked.across().low().isLessThan(asked.grip(seat.height()).times(2));
    // Nothing else keeps the moving jaw from lifting it, where no bar rolls instead.
    boolean soft = seat.kind() == Kind.SOFT && work.relation(fixed, fixed.opposite()) != null;
    return flat || thin || soft ? Optional.of("seat tapped" + light) : Optional.empty();
  }

  private boolean isWantedSquare(Face a, Face b) {
    return task.part().callouts().stream()
        .anyMatch(
            one ->
                one instanceof Callout.SquareAll
                    || (one instanceof Callout.Square square
                        && new FacePair(square.face(), square.reference())
                            .equals(new FacePair(a, b))));
  }
}
