package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.plan.draft.HoleTools.Stay;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Orientation;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * The setups in which the holes, slots and pockets of one face are made: how the work is held clear
 * of what goes through, which edges are found, and the lines in their order.
 */
final class OpeningSetups {
  private final Task task;
  private final Seats seats;
  private final OpeningLines lines;

  OpeningSetups(Task task) {
    this.task = task;
    this.seats = new Seats(task);
    this.lines = new OpeningLines(task);
  }

  /** Ways to make them, the cheapest first; what stands in the way goes to why. */
  List<SetupDraft> candidates(
      Workpiece work, Face face, List<Opening> openings, @Nullable String cutter, Why why) {
    Optional<Owned.Finder> finder = Continued.finder(task);
    if (finder.isEmpty()) {
      why.add("the shop has no edge finder (`own finder`)");
      return List.of();
    }
    List<SetupDraft> drafts = new ArrayList<>();
    for (Owned.Vise vise : task.shop().all(Owned.Vise.class)) {
      for (Face fixed : task.byRank()) {
        if (fixed.adjoins(face)) {
          hold(work, face, openings, vise, fixed, finder.get(), cutter, why, drafts);
        }
      }
    }
    drafts.sort(Comparator.comparingInt(SetupDraft::cost));
    return Holds.first(drafts, 8);
  }

  private void hold(
      Workpiece work,
      Face face,
      List<Opening> openings,
      Owned.Vise vise,
      Face fixed,
      Owned.Finder finder,
      @Nullable String cutter,
      Why why,
      List<SetupDraft> drafts) {
    SizeState up = work.size(face.dimension());
    SizeState across = work.size(fixed.dimension());
    if (up == null || across == null) {
      return;
    }
    if (across.range().high().isMoreThan(vise.opening())) {
      why.add(Holds.opens(vise, fixed.dimension(), across.range().high()));
      return;
    }
    Length beside = Opening.beside(openings);
    Length below = openings.stream().map(Opening::below).reduce(Length.ZERO, Length::max);
    Asked asked =
        new Asked(
            vise,
            up.range(),
            across.range(),
            Length.ZERO,
            // The finder has to reach the edge above the jaws, and a cutter beside the work, too.
            up.range().low().minus(beside),
            below);
    Asked low = new Asked(vise, up.range(), across.range(), Length.ZERO, Length.ZERO, below);
    List<Seat> choices = clear(seats.pairs(asked), openings, work, fixed);
    if (below.isZero() && choices.isEmpty()) {
      choices.addAll(seats.bed(asked));
    }
    for (Seat seat : Holds.first(choices, 2)) {
      drafts.add(setup(work, face, openings, vise, fixed, seat, asked, finder, cutter, null));
    }
    if (!choices.isEmpty()) {
      return;
    }
    if (beside.isPositive()) {
      why.add(seats.whyNone(asked));
      return;
    }
    List<Seat> deep = clear(seats.pairs(low), openings, work, fixed);
    Optional<Out> out = out(work, face, vise, fixed, finder, openings);
    if (deep.isEmpty()) {
      boolean fits = !seats.pairs(low).isEmpty();
      why.add(fits ? notClear(openings, work, fixed) : seats.whyNone(low));
    } else if (out.isEmpty()) {
      why.add(seats.whyNone(asked) + "; lower down no edge of it can be found");
    }
    // As high as it goes: the chuck has to come down between the jaws.
    deep.sort(Comparator.comparing(Seat::height).reversed());
    for (Seat seat : Holds.first(deep, 2)) {
      out.ifPresent(
          one ->
              drafts.add(setup(work, face, openings, vise, fixed, seat, low, finder, cutter, one)));
    }
  }

  /**
   * Work that lies below the jaws' top stands out at one end, where the finder gets to its edges.
   *
   * @param end the end that stands out
   */
  private record Out(Face end, Length overhang) {}

  private Optional<Out> out(
      Workpiece work,
      Face face,
      Owned.Vise vise,
      Face fixed,
      Owned.Finder finder,
      List<Opening> openings) {
    Orientation orientation = Holds.orientation(vise, face, fixed);
    Face end =
        OpeningLines.edges(openings, orientation).stream()
            .filter(edge -> orientation.axisOf(edge) == Axis.X)
            .findFirst()
            .orElse(orientation.facing(Direction.OPERATOR_RIGHT));
    SizeState length = work.size(end.dimension());
    if (length == null) {
      return Optional.empty();
    }
    Length overhang =
        task.numbers().up(finder.dia().plus(task.numbers().usual("2.5", "0.100")), "1", "0.05");
    Length half = vise.jawWidth().half();
    Length inner = Length.max(half.plus(overhang).minus(length.range().middle()), half.negated());
    Length offCentre = inner.plus(half).half();
    boolean sits =
        !offCentre.times(6).isMoreThan(vise.jawWidth())
            && !overhang.times(4).isMoreThan(length.range().low());
    return sits ? Optional.of(new Out(end, overhang)) : Optional.empty();
  }

  private List<Seat> clear(List<Seat> seats, List<Opening> openings, Workpiece work, Face fixed) {
    List<Seat> clear = new ArrayList<>();
    seats.stream().filter(seat -> isClear(seat, openings, work, fixed)).forEach(clear::add);
    return clear;
  }

  /** Whether no tool that goes through meets a parallel. */
  private boolean isClear(Seat seat, List<Opening> openings, Workpiece work, Face fixed) {
    return openings.stream()
        .allMatch(one -> one.isClearOf(seat.thickness(), fixed, work, task.numbers()));
  }

  private String notClear(List<Opening> openings, Workpiece work, Face fixed) {
    Length least =
        openings.stream()
            .filter(one -> one.below().isPositive())
            .flatMap(one -> one.room(fixed, work, task.numbers()).stream())
            .min(Comparator.naturalOrder())
            .orElse(Length.ZERO);
    return "no parallels are thin enough to stay clear of what goes through, with the "
        + fixed.word()
        + " on the fixed jaw: they may be "
        + Length.max(least, Length.ZERO)
        + " thick at most";
  }

  // ---- The setup's text
  // ---------------------------------------------------------------------

  private SetupDraft setup(
      Workpiece work,
      Face face,
      List<Opening> openings,
      Owned.Vise vise,
      Face fixed,
      Seat seat,
      Asked asked,
      Owned.Finder finder,
      @Nullable String inSpindle,
      @Nullable Out out) {
    Orientation orientation = Holds.orientation(vise, face, fixed);
    List<String> lines = new ArrayList<>();
    lines.add(
        "hold in "
            + vise.name()
            + ", up "
            + face.word()
            + ", fixed "
            + fixed.word()
            + ", "
            + seat.clause()
            + (out == null
                ? ""
                : ", overhang " + out.end().word() + " " + task.numbers().write(out.overhang()))
            + stop(openings, orientation, out));
    lines.add("seat tapped" + (seat.isPair() ? ", both parallels tight" : ""));
    int cost = Holds.SETUP + seat.cost() + task.byRank().indexOf(fixed);
    cost += work.face(fixed).isMachined() ? 0 : 20;
    cost += out == null ? 0 : 12;
    boolean little = asked.proud(seat.height()).isLessThan(task.numbers().usual("2", "0.080"));
    cost += out == null && little ? 6 : 0;
    cost += work.relation(fixed, fixed.opposite()) == null ? 10 : 0;
    for (Face edge : OpeningLines.edges(openings, orientation)) {
      // An edge at the fixed jaw is hard to reach with the finder.
      cost += orientation.directionOf(edge) == vise.fixedJaw() ? 15 : 0;
    }
    String cutter = this.lines.add(face, openings, orientation, finder, inSpindle, lines);
    return new SetupDraft(
        "openings " + face.word(),
        OpeningLines.what(openings) + " from the " + face.word(),
        why(work, openings, face, fixed, seat, asked, out),
        List.of(),
        lines,
        null,
        cutter,
        null,
        cost);
  }

  /** A stop at the end that is measured from; where that end stands out there can be none. */
  private String stop(List<Opening> openings, Orientation orientation, @Nullable Out out) {
    if (task.stock().pieces() < 2 || out != null) {
      return "";
    }
    boolean left =
        OpeningLines.edges(openings, orientation).stream()
            .anyMatch(edge -> orientation.directionOf(edge) == Direction.OPERATOR_LEFT);
    return ", stop at " + (left ? "operator-left" : "operator-right");
  }

  private List<String> why(
      Workpiece work,
      List<Opening> openings,
      Face face,
      Face fixed,
      Seat seat,
      Asked asked,
      @Nullable Out out) {
    List<String> why = new ArrayList<>();
    List<Opening> placed =
        openings.stream().filter(one -> !one.extent().along().isEmpty()).toList();
    List<Face> found =
        placed.stream()
            .map(one -> one.extent().corner())
            .filter(corner -> corner.size() == 2)
            .findFirst()
            .orElse(List.of());
    if (!placed.isEmpty()) {
      why.add(
          found.size() == 2
              ? "Measured from the "
                  + found.get(0).word()
                  + " and the "
                  + found.get(1).word()
                  + ", as on the drawing."
              : "Found by two edges; the drawing measures from the middle.");
    }
    boolean through = openings.stream().anyMatch(one -> one.below().isPositive());
    if (through && seat.isPair()) {
      why.add(
          "The parallels, "
              + task.numbers().inWords(seat.thickness())
              + " thick, stay clear of what goes through.");
    }
    if (out != null) {
      why.add(
          "It lies below the jaws' top, so the "
              + out.end().word()
              + " stands out: there the finder gets to the edges.");
    }
    if (task.stock().pieces() > 1 && out == null) {
      why.add(Words.stop(task));
    }
    if (work.relation(fixed, fixed.opposite()) != null) {
      why.add("The jaws close on parallel faces.");
    }
    if (openings.stream()
        .anyMatch(
            one ->
                one.work() != null && one.work().stay() == Stay.OVER_THE_HOLE && !one.several())) {
      why.add("The table stays locked from the drill to the reamer.");
    }
    LengthRange height = asked.up();
    why.add(
        "The jaws grip "
            + task.numbers().inWords(asked.grip(seat.height()))
            + " of "
            + task.numbers().inWords(height.middle())
            + " under the "
            + face.word()
            + ".");
    return Words.filled(why);
  }
}
