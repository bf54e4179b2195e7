package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

  OpeningSetups(Task task) {
    this.task = task;
    this.seats = new Seats(task);
  }

  /** Ways to make them, the cheapest first; what stands in the way goes to why. */
  List<SetupDraft> candidates(
      Workpiece work, Face face, List<Opening> openings, @Nullable String cutter, Why why) {
    Optional<Owned.Finder> finder =
        task.shop().all(Owned.Finder.class).stream()
            .min(Comparator.comparing(Owned.Finder::dia).thenComparing(Owned.Finder::name));
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
    Length below = openings.stream().map(Opening::below).reduce(Length.ZERO, Length::max);
    Asked asked =
        new Asked(
            vise,
            up.range(),
            across.range(),
            Length.ZERO,
            // The finder has to reach the edge above the jaws.
            up.range().low(),
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
        edges(openings, orientation).stream()
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
        .filter(one -> one.below().isPositive())
        .allMatch(
            one ->
                room(one, work, fixed)
                    .map(room -> !room.isLessThan(seat.thickness()))
                    .orElse(false));
  }

  private Optional<Length> room(Opening opening, Workpiece work, Face fixed) {
    return opening
        .extent()
        .beside(fixed.dimension(), opening.half(), work)
        .map(room -> room.minus(task.numbers().usual("0.3", "0.012")));
  }

  private String notClear(List<Opening> openings, Workpiece work, Face fixed) {
    Length least =
        openings.stream()
            .filter(one -> one.below().isPositive())
            .flatMap(one -> room(one, work, fixed).stream())
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
                : ", overhang " + out.end().word() + " " + task.numbers().write(out.overhang())));
    lines.add("seat tapped" + (seat.isPair() ? ", both parallels tight" : ""));
    int cost = Holds.SETUP + seat.cost() + task.byRank().indexOf(fixed);
    cost += work.face(fixed).isMachined() ? 0 : 20;
    cost += out == null ? 0 : 12;
    boolean little = asked.proud(seat.height()).isLessThan(task.numbers().usual("2", "0.080"));
    cost += out == null && little ? 6 : 0;
    cost += work.relation(fixed, fixed.opposite()) == null ? 10 : 0;
    for (Face edge : edges(openings, orientation)) {
      Direction from = orientation.directionOf(edge);
      // An edge at the fixed jaw is hard to reach with the finder.
      cost += from == vise.fixedJaw() ? 15 : 0;
      lines.add(
          "find "
              + edge.word()
              + " from "
              + from.name().toLowerCase(Locale.ROOT).replace('_', '-')
              + " with finder "
              + finder.name()
              + ", zero "
              + from.axis().word()
              + " at edge");
    }
    String cutter = slots(face, openings, inSpindle, lines);
    holes(openings, lines);
    lines.add("deburr all edges");
    boolean slots = openings.stream().anyMatch(one -> one.cut() != null);
    boolean holes = openings.stream().anyMatch(one -> one.work() != null);
    String what = slots && holes ? "Slots and holes" : slots ? "Slots and pockets" : "Holes";
    return new SetupDraft(
        "openings " + face.word(),
        what + " from the " + face.word(),
        why(work, openings, face, fixed, seat, asked, out),
        List.of(),
        lines,
        null,
        cutter,
        null,
        cost);
  }

  /** The two edges that the first opening is measured from. */
  private static List<Face> edges(List<Opening> openings, Orientation orientation) {
    List<Face> edges = new ArrayList<>();
    List<Face> corner =
        openings.stream()
            .map(one -> one.extent().corner())
            .filter(faces -> faces.size() == 2)
            .findFirst()
            .orElse(List.of());
    for (Axis axis : new Axis[] {Axis.X, Axis.Y}) {
      Face negative = Face.of(orientation.along(axis), -1);
      edges.add(
          corner.stream()
              .filter(face -> face.dimension() == orientation.along(axis))
              .findFirst()
              .orElse(negative));
    }
    return edges;
  }

  private @Nullable String slots(
      Face face, List<Opening> openings, @Nullable String inSpindle, List<String> lines) {
    String cutter = inSpindle;
    for (Opening one : openings) {
      if (one.cut() == null || one.cutter() == null) {
        continue;
      }
      if (!one.cutter().name().equals(cutter)) {
        cutter = one.cutter().name();
        lines.add("cutter " + cutter);
      }
      lines.add(
          "touch "
              + face.word()
              + " with paper "
              + task.numbers().write(task.numbers().usual("0.05", "0.002"))
              + ", zero z");
      lines.add(one.cut());
    }
    return cutter;
  }

  private void holes(List<Opening> openings, List<String> lines) {
    List<Opening> holes = openings.stream().filter(one -> one.work() != null).toList();
    if (holes.isEmpty()) {
      return;
    }
    lines.add("spot " + String.join(", ", holes.stream().map(Opening::name).toList()));
    // Free holes of one drill together; then each that the spindle has to stay over.
    Map<String, List<String>> together = new LinkedHashMap<>();
    for (Opening hole : holes) {
      if (hole.work() != null && hole.work().stay() == Stay.FREE) {
        together.computeIfAbsent(drillWords(hole), words -> new ArrayList<>()).add(hole.name());
      }
    }
    together.forEach((words, names) -> lines.add("drill " + String.join(", ", names) + words));
    for (Opening hole : holes) {
      HoleTools.Work work = hole.work();
      if (work == null) {
        continue;
      }
      boolean stays = work.stay() == Stay.OVER_THE_HOLE;
      if (stays) {
        lines.add("drill " + hole.name() + drillWords(hole));
      }
      boolean lock = stays && !hole.several();
      if (lock) {
        lines.add("lock x y");
      }
      work.further().forEach(next -> lines.add(next[0] + " " + hole.name() + next[1]));
      if (lock) {
        lines.add("unlock x y");
      }
    }
    if (lines.get(lines.size() - 1).equals("unlock x y")) {
      lines.remove(lines.size() - 1);
    }
  }

  /** Sizes of the drills, and pecking where the hole is deeper than three times the drill. */
  private String drillWords(Opening hole) {
    HoleTools.Work work = hole.work();
    if (work == null) {
      return "";
    }
    Numbers numbers = task.numbers();
    List<String> sizes = work.sizes().stream().map(numbers::write).toList();
    boolean deep = hole.depth().isMoreThan(work.sizes().get(0).times(3));
    String peck =
        deep
            ? ", peck "
                + numbers.write(
                    Length.max(
                        numbers.down(work.sizes().get(0), "1", "0.05"), numbers.usual("1", "0.05")))
            : "";
    return " " + String.join(" then ", sizes) + peck;
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
    List<Face> found = openings.get(0).extent().corner();
    why.add(
        found.size() == 2
            ? "Measured from the "
                + found.get(0).word()
                + " and the "
                + found.get(1).word()
                + ", as on the drawing."
            : "Found by two edges; the drawing measures from the middle.");
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
