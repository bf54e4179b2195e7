package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Stock.Skin;
import org.handwheel.plan.draft.FaceCut.Care;
import org.handwheel.plan.draft.FaceCut.Way;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Orientation;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * The ways a face can be cut from the work as it is: up, under the flat end of the cutter.
 *
 * <p>The choices follow the order of squaring a block: a clean face on the fixed jaw, a round bar
 * while the face at the moving jaw is not parallel to it, a clean face down on parallels as soon as
 * there is one (common practice, no source; what each cut then proves is for {@link
 * org.handwheel.work.Bearing} to say).
 */
final class Holds {
  /** A setup by itself: what every other cost is measured by. */
  static final int SETUP = 100;

  private static final int CHANGE_OF_CUTTER = 5;

  private final Task task;
  private final Seats seats;
  private final Cutters cutters;
  private final Bars bars;
  private final Seating seating;
  private final List<Face> rank;

  Holds(Task task) {
    this.task = task;
    this.seats = new Seats(task);
    this.cutters = new Cutters(task);
    this.bars = new Bars(task);
    this.seating = new Seating(task);
    this.rank = task.byRank();
  }

  /**
   * The work between two setups.
   *
   * @param left the faces still to be cut
   * @param cutter the cutter in the spindle, if any
   * @param trued vises that were set true
   */
  record State(Workpiece work, Set<Face> left, @Nullable String cutter, Set<String> trued) {}

  /** All ways to cut a face next with the end of the cutter; what stands in the way goes to why. */
  List<SetupDraft> endCuts(State state, Face face, Why why) {
    List<SetupDraft> drafts = new ArrayList<>();
    Optional<FaceCut> cut = cut(state, face, why);
    if (cut.isEmpty()) {
      return drafts;
    }
    for (Owned.Vise vise : task.shop().all(Owned.Vise.class)) {
      for (Face fixed : rank) {
        if (fixed.adjoins(face)) {
          hold(state, cut.get(), vise, fixed, why, drafts);
        }
      }
    }
    return drafts;
  }

  Optional<FaceCut> cut(State state, Face face, Why why) {
    boolean opposite = state.left().contains(face.opposite());
    return FaceCut.of(task, state.work(), face, opposite, why);
  }

  private void hold(
      State state, FaceCut cut, Owned.Vise vise, Face fixed, Why why, List<SetupDraft> drafts) {
    Workpiece work = state.work();
    SizeState across = work.size(fixed.dimension());
    PartDimension along = along(cut.face(), fixed);
    SizeState length = work.size(along);
    if (across == null || length == null) {
      why.add("the stock does not say its " + (across == null ? fixed.dimension() : along).word());
      return;
    }
    boolean clean = work.face(fixed).isMachined();
    if (!clean && isRawWorse(state, cut.face(), fixed, vise)) {
      return;
    }
    boolean bar = clean && work.relation(fixed, fixed.opposite()) == null;
    Length bound = across.range().high();
    if (bound.isMoreThan(vise.opening())) {
      why.add(opens(vise, fixed.dimension(), bound));
      return;
    }
    Length lowest = cut.isSkim() ? cut.lowestAfter() : cut.before().low();
    if (cut.goal() != null) {
      lowest = Length.min(lowest, cut.goal());
    }
    Asked asked = new Asked(vise, cut.before(), across.range(), Length.ZERO, lowest, Length.ZERO);
    List<Seat> choices = seats(state, cut.face(), clean, asked);
    if (choices.isEmpty()) {
      why.add(seats.whyNone(asked));
    }
    for (Seat seat : choices) {
      Optional<Owned.Piece> round = Optional.empty();
      if (bar) {
        round = bars.thickest(asked, seat);
        if (round.isEmpty()) {
          why.add(bars.whyNone(asked, seat, fixed));
          continue;
        }
      }
      facing(state, cut, vise, fixed, seat, round, asked, length.range(), why, drafts);
    }
  }

  /** Whether the seat and the jaw would be better with a clean face that could lie there. */
  private boolean isRawWorse(State state, Face face, Face fixed, Owned.Vise vise) {
    boolean drawn = state.work().face(fixed).skin() == Skin.DRAWN && !isSquareAsked(face);
    return !drawn
        && Face.all().stream()
            .filter(other -> other.adjoins(face) && state.work().face(other).isMachined())
            .map(other -> state.work().size(other.dimension()))
            .anyMatch(size -> size != null && !size.range().high().isMoreThan(vise.opening()));
  }

  private boolean isSquareAsked(Face face) {
    return task.part().callouts().stream()
        .anyMatch(
            one ->
                one instanceof Callout.SquareAll
                    || (one instanceof Callout.Square square
                        && (square.face() == face || square.reference() == face)));
  }

  private List<Seat> seats(State state, Face face, boolean cleanFixed, Asked asked) {
    boolean cleanUnder = state.work().face(face.opposite()).isMachined();
    List<Seat> pairs = seats.pairs(asked);
    List<Seat> choices = new ArrayList<>();
    if (!cleanUnder && cleanFixed) {
      // A raw face on two hard parallels fights the jaw: it settles on something soft.
      choices.addAll(first(seats.soft(asked), 1));
      first(pairs, 1).stream().map(seat -> dearer(seat, 6)).forEach(choices::add);
    } else {
      choices.addAll(first(pairs, 2));
    }
    if (pairs.isEmpty()) {
      choices.addAll(first(seats.singles(asked), 2));
    }
    if (choices.isEmpty() || pairs.isEmpty()) {
      choices.addAll(seats.bed(asked));
    }
    return choices;
  }

  private static Seat dearer(Seat seat, int more) {
    return new Seat(
        seat.clause(),
        seat.height(),
        seat.length(),
        seat.thickness(),
        seat.kind(),
        seat.cost() + more);
  }

  static <T> List<T> first(List<T> list, int count) {
    return list.subList(0, Math.min(count, list.size()));
  }

  static String opens(Owned.Vise vise, PartDimension dimension, Length needed) {
    return "vise `"
        + vise.name()
        + "` is too small: it opens "
        + vise.opening()
        + ", and gripping the "
        + dimension.word()
        + " needs "
        + needed;
  }

  private void facing(
      State state,
      FaceCut cut,
      Owned.Vise vise,
      Face fixed,
      Seat seat,
      Optional<Owned.Piece> bar,
      Asked asked,
      LengthRange along,
      Why why,
      List<SetupDraft> drafts) {
    LengthRange strip = asked.across().high().isMoreThan(along.high()) ? along : asked.across();
    List<Owned.Cutter> choices = cutters.facing(strip.high());
    if (choices.isEmpty()) {
      why.add("the shop has no cutter that faces");
      return;
    }
    int penalty = 0;
    for (Owned.Cutter cutter : inHandFirst(first(choices, 3), state, strip.high())) {
      for (Care care : Care.values()) {
        drafts.add(setup(state, cut, vise, fixed, seat, bar, asked, along, cutter, care, penalty));
      }
      penalty += 3;
    }
  }

  /** A cutter that is in the spindle already stays there if it covers the face, too. */
  private List<Owned.Cutter> inHandFirst(List<Owned.Cutter> choices, State state, Length strip) {
    return choices.stream()
        .sorted(
            Comparator.comparingInt(
                one -> one.name().equals(state.cutter()) && cutters.covers(one, strip) ? 0 : 1))
        .toList();
  }

  private SetupDraft setup(
      State state,
      FaceCut cut,
      Owned.Vise vise,
      Face fixed,
      Seat seat,
      Optional<Owned.Piece> bar,
      Asked asked,
      LengthRange along,
      Owned.Cutter cutter,
      Care care,
      int penalty) {
    Workpiece work = state.work();
    Face face = cut.face();
    Numbers numbers = task.numbers();
    boolean travelsAcross = asked.across().high().isMoreThan(along.high());
    Length strip = travelsAcross ? along.high() : asked.across().high();
    boolean lanes = !cutters.covers(cutter, strip);
    boolean standing = asked.up().low().isMoreThan(along.low());
    Optional<Seating.Upright> upright = seating.upright(work, face, fixed, seat, standing);
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
            + bar.map(piece -> ", bar " + numbers.write(Bars.dia(piece)) + " at mid-grip")
                .orElse(""));
    seating.line(work, cut, fixed, seat, asked, upright).ifPresent(lines::add);
    if (!cutter.name().equals(state.cutter())) {
      lines.add("cutter " + cutter.name());
    }
    lines.add("touch " + face.word() + " with paper " + paper() + ", zero z");
    lines.add(lanes ? "lock z" : travelsAcross ? "lock x z" : "lock y z");
    String clauses = lanes ? ", step over " + numbers.write(cutters.stepOver(cutter)) : "";
    lines.addAll(cut.lines(cutter, Way.END, care, clauses, Axis.Z));
    int cost =
        SETUP
            + seat.cost()
            + penalty
            + bar.map(piece -> Bars.dia(piece).isMoreThan(asked.grip(seat.height())) ? 14 : 8)
                .orElse(0)
            + (lanes ? 6 : 0)
            + (care == Care.CAUTIOUS ? 8 : 0)
            + (cutter.name().equals(state.cutter()) ? 0 : CHANGE_OF_CUTTER)
            + (upright.isPresent() ? 14 : 0)
            + cut.passes(cutter, Way.END, care) / 2
            + (isRawRisk(work, fixed, asked) ? 15 : 0)
            + place(state, face, fixed);
    return new SetupDraft(
        "end " + face.word() + " " + vise.name() + " " + fixed.word(),
        Words.endTitle(cut, work, fixed, upright.isPresent()),
        Words.endReasons(task, state, cut, fixed, seat, bar.isPresent(), asked, upright),
        List.of(),
        lines,
        face,
        cutter.name(),
        null,
        cost);
  }

  String paper() {
    return task.numbers().write(task.numbers().usual("0.05", "0.002"));
  }

  /** Between two raw faces only flat work surely follows its seat. */
  private static boolean isRawRisk(Workpiece work, Face fixed, Asked asked) {
    return !work.face(fixed).isMachined()
        && Face.all().stream().anyMatch(one -> work.face(one).isMachined())
        && asked.across().low().isLessThan(asked.up().high().times(3));
  }

  /** References come by their rank; it only decides between ways that cost the same otherwise. */
  private int place(State state, Face face, Face fixed) {
    boolean first = Face.all().stream().noneMatch(one -> state.work().face(one).isMachined());
    int place = rank.indexOf(fixed);
    // The face opposite the first reference waits until both its neighbours are made: without a bar
    // it then seats best.
    boolean waits =
        face == rank.get(0).opposite()
            && state.left().stream()
                .anyMatch(one -> one.adjoins(face) && one.dimension() == rank.get(1).dimension());
    if (waits) {
      place += 12;
    }
    // Ends come last: they are made square to what the broad faces have become.
    boolean early =
        face.dimension() == task.longest()
            && state.left().stream().anyMatch(one -> one.dimension() != task.longest());
    if (early) {
      place += 14;
    }
    return first ? place + 6 * rank.indexOf(face) : place + rank.indexOf(face);
  }

  static PartDimension along(Face up, Face fixed) {
    return up.cross(fixed).dimension();
  }

  /** How the part lies with one face up and one on the fixed jaw. */
  static Orientation orientation(Owned.Vise vise, Face up, Face fixed) {
    return new Orientation(
        up, vise.fixedJaw() == Direction.OPERATOR_FRONT ? fixed.opposite() : fixed);
  }
}
