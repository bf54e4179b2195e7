package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.plan.draft.FaceCut.Care;
import org.handwheel.plan.draft.FaceCut.Way;
import org.handwheel.plan.draft.Holds.State;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.units.Length;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * The ways an end can be cut with the side of the cutter: the work lies flat and stands out over
 * the end of the jaws.
 *
 * <p>With a cutter turning clockwise the force on the end at the operator's right is away from the
 * operator, so that end stands out where the fixed jaw is at the back (geometry; common practice,
 * no source). It stands out by no more than a third of the gripped length, and no more than its
 * height.
 */
final class Ends {
  private final Task task;
  private final Seats seats;
  private final Cutters cutters;
  private final Places places;
  private final List<Face> rank;

  Ends(Task task) {
    this.task = task;
    this.seats = new Seats(task);
    this.cutters = new Cutters(task);
    this.places = new Places(task);
    this.rank = task.byRank();
  }

  List<SetupDraft> sideCuts(State state, Face end, FaceCut cut, Why why) {
    List<SetupDraft> drafts = new ArrayList<>();
    for (Owned.Vise vise : task.shop().all(Owned.Vise.class)) {
      for (Face up : rank) {
        if (!up.adjoins(end)) {
          continue;
        }
        for (Face fixed : rank) {
          if (fixed.adjoins(end) && fixed.adjoins(up) && isAtForceSide(vise, end, up, fixed)) {
            hold(state, cut, vise, up, fixed, why, drafts);
          }
        }
      }
    }
    return drafts;
  }

  private static boolean isAtForceSide(Owned.Vise vise, Face end, Face up, Face fixed) {
    Direction wanted =
        vise.fixedJaw() == Direction.OPERATOR_FRONT
            ? Direction.OPERATOR_LEFT
            : Direction.OPERATOR_RIGHT;
    return Holds.orientation(vise, up, fixed).directionOf(end) == wanted;
  }

  private void hold(
      State state,
      FaceCut cut,
      Owned.Vise vise,
      Face up,
      Face fixed,
      Why why,
      List<SetupDraft> drafts) {
    Workpiece work = state.work();
    boolean sidesDone =
        List.of(up, up.opposite(), fixed, fixed.opposite()).stream()
            .noneMatch(state.left()::contains);
    boolean cleanOrAsBought =
        work.face(fixed).isMachined()
            || (!work.face(fixed.opposite()).isMachined()
                && !work.face(up.opposite()).isMachined());
    SizeState across = work.size(fixed.dimension());
    SizeState upward = work.size(up.dimension());
    if (!sidesDone || !cleanOrAsBought || across == null || upward == null) {
      return;
    }
    if (across.range().high().isMoreThan(vise.opening())) {
      why.add(Holds.opens(vise, fixed.dimension(), across.range().high()));
      return;
    }
    List<Owned.Cutter> choices = cutters.sideways(upward.range().high());
    if (choices.isEmpty()) {
      why.add(tooShort(upward.range().high(), cut.face()));
      return;
    }
    boolean isTrue = vise.trued() != null || state.trued().contains(vise.name());
    Optional<Owned.Instrument> indicator = task.instrument(Owned.InstrumentKind.INDICATOR);
    if (!isTrue && work.face(fixed).isMachined() && indicator.isEmpty()) {
      why.add("the shop has no indicator to set vise `" + vise.name() + "` true with");
      return;
    }
    // Room for the cutter's end below the work.
    Asked asked =
        new Asked(
            vise,
            upward.range(),
            across.range(),
            Length.ZERO,
            Length.ZERO,
            cutters.below().plus(task.numbers().usual("1", "0.040")));
    List<Seat> pairs = seats.pairs(asked);
    if (pairs.isEmpty()) {
      why.add(seats.whyNone(asked));
    }
    Optional<Owned.Instrument> truing =
        isTrue || !work.face(fixed).isMachined() ? Optional.empty() : indicator;
    for (Seat seat : Holds.first(pairs, 3)) {
      places
          .place(vise, asked, seat, cut, fixed, why)
          .ifPresent(
              place -> {
                for (Owned.Cutter cutter : Holds.first(choices, 2)) {
                  for (Care care : Care.values()) {
                    drafts.add(
                        setup(
                            state,
                            cut,
                            vise,
                            up,
                            fixed,
                            seat,
                            asked,
                            place,
                            cutter,
                            care,
                            truing.orElse(null)));
                  }
                }
              });
    }
  }

  private String tooShort(Length height, Face face) {
    Length needed = height.plus(cutters.below());
    return cutters
        .longest()
        .map(
            one ->
                "no cutter is long enough: its side has to reach "
                    + needed
                    + " down the "
                    + face.word()
                    + "; the longest, `"
                    + one.name()
                    + "`, has flutes of "
                    + one.flute())
        .orElse("the shop has no end mill to cut the " + face.word() + " with its side");
  }

  private SetupDraft setup(
      State state,
      FaceCut cut,
      Owned.Vise vise,
      Face up,
      Face fixed,
      Seat seat,
      Asked asked,
      Places.Place place,
      Owned.Cutter cutter,
      Care care,
      Owned.@Nullable Instrument truing) {
    Numbers numbers = task.numbers();
    Face end = cut.face();
    boolean right = Holds.orientation(vise, up, fixed).directionOf(end) == Direction.OPERATOR_RIGHT;
    List<String> lines = new ArrayList<>();
    Places.Spacer spacer = place.spacer();
    if (spacer != null && spacer.owned() == null) {
      lines.add(
          "note \"Make a spacer "
              + numbers.write(spacer.width())
              + (numbers.isMetric() ? " mm" : "")
              + " wide, a hair under the work, for the other end of the jaws.\"");
    }
    lines.add(
        "hold in "
            + vise.name()
            + ", up "
            + up.word()
            + ", fixed "
            + fixed.word()
            + ", "
            + seat.clause()
            + ", overhang "
            + end.word()
            + " "
            + numbers.write(place.overhang())
            + (spacer == null
                ? ""
                : ", spacer "
                    + numbers.write(spacer.width())
                    + (right ? " at operator-left" : " at operator-right"))
            + (spacer == null && task.stock().pieces() > 1
                ? ", stop at " + (right ? "operator-left" : "operator-right")
                : ""));
    lines.add("seat tapped, both parallels tight");
    if (!cutter.name().equals(state.cutter())) {
      lines.add("cutter " + cutter.name());
    }
    lines.add(
        "touch "
            + end.word()
            + " with paper "
            + numbers.write(numbers.usual("0.05", "0.002"))
            + ", zero x");
    Length depth = numbers.up(asked.up().high().plus(cutters.below()), "0.5", "0.020");
    if (depth.isMoreThan(cutter.flute())) {
      depth = cutter.flute();
    }
    lines.add("set z " + numbers.write(depth) + " below " + up.word());
    lines.add("lock x z");
    lines.addAll(cut.lines(cutter, Way.SIDE, care, ", conventional", Axis.X));
    List<String> before =
        truing == null ? List.of() : List.of("true " + vise.name() + " with " + truing.name());
    int cost =
        Holds.SETUP
            + 4
            + seat.cost()
            + (spacer == null ? 0 : spacer.owned() != null ? 6 : 16)
            + (truing == null ? 0 : 6)
            + (care == Care.CAUTIOUS ? 8 : 0)
            + (cutter.name().equals(state.cutter()) ? 0 : 5)
            + cut.passes(cutter, Way.SIDE, care) / 2
            + rank.indexOf(fixed)
            + rank.indexOf(end);
    return new SetupDraft(
        "side " + end.word() + " " + vise.name() + " " + up.word() + " " + fixed.word(),
        Words.sideTitle(cut),
        Words.sideReasons(task, cut, up, fixed, vise, place, cutter, state.work()),
        before,
        lines,
        end,
        cutter.name(),
        truing == null ? null : vise.name(),
        cost);
  }
}
