package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.handwheel.model.Limit;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/**
 * What work can sit on in a vise, of what the shop owns.
 *
 * <p>The jaws want a third of the height and the shop's least grip; the cutter wants the work to
 * stand above them; a pair of parallels has to be narrower than the work by the shop's margin
 * (common practice, no source).
 */
final class Seats {
  private final Task task;

  Seats(Task task) {
    this.task = task;
  }

  /**
   * A seat.
   *
   * @param clause the words of the {@code hold} line
   * @param height above the vise's bed
   * @param length of what the work lies on
   * @param thickness of the parallel at each jaw, zero if there is none
   * @param kind what it is
   * @param cost how much worse than the best pair
   */
  record Seat(String clause, Length height, Length length, Length thickness, Kind kind, int cost) {
    boolean isPair() {
      return kind == Kind.PAIR;
    }
  }

  enum Kind {
    PAIR,
    ONE,
    ONE_WITH_BESIDE,
    BED,
    SOFT
  }

  /**
   * What is asked of the seat.
   *
   * @param up the size that stands up
   * @param across the size between the jaws
   * @param between what stands between the jaws beside the work: a bar
   * @param lowest the lowest the cutter comes over the seat where it passes the jaws; zero if it
   *     does not pass them
   * @param least the least height of the seat
   */
  record Asked(
      Owned.Vise vise,
      LengthRange up,
      LengthRange across,
      Length between,
      Length lowest,
      Length least) {
    Length grip(Length seat) {
      return Length.min(vise.jawDepth(), seat.plus(up.low())).minus(seat);
    }

    Length proud(Length seat) {
      return seat.plus(up.low()).minus(vise.jawDepth());
    }

    Length clearance(Length seat) {
      return seat.plus(lowest).minus(vise.jawDepth());
    }
  }

  /** Whether jaws and cutter both have what they need over a seat of this height. */
  private boolean fits(Asked asked, Length height) {
    Length third = Length.ofMillimetres(asked.up().low().millimetres() / 3);
    Length need =
        Length.max(task.limits().length(Limit.LEAST_GRIP), third)
            .plus(task.numbers().usual("0.05", "0.002"));
    boolean grips = !asked.grip(height).isLessThan(need);
    boolean clear =
        !asked.lowest().isPositive()
            || asked.clearance(height).isMoreThan(task.limits().length(Limit.JAW_CLEARANCE));
    return grips && clear && !height.isLessThan(asked.least());
  }

  /** Pairs under both edges, the best first. */
  List<Seat> pairs(Asked asked) {
    List<Seat> seats = new ArrayList<>();
    Length margin = task.limits().length(Limit.PARALLELS_MARGIN);
    for (Owned.Parallels set : task.shop().all(Owned.Parallels.class)) {
      boolean narrow = !set.thickness().times(2).plus(margin).isMoreThan(asked.across().low());
      if (set.count() >= 2 && narrow && fits(asked, set.height())) {
        seats.add(
            new Seat(
                "on pair " + set.name(),
                set.height(),
                set.length(),
                set.thickness(),
                Kind.PAIR,
                risk(asked, set.height())
                    + (set.length().isMoreThan(asked.vise().jawWidth()) ? 3 : 0)));
      }
    }
    return sorted(seats, asked);
  }

  /** The vise's bed. */
  List<Seat> bed(Asked asked) {
    return fits(asked, Length.ZERO)
        ? List.of(
            new Seat(
                "on bed",
                Length.ZERO,
                asked.vise().jawWidth(),
                Length.ZERO,
                Kind.BED,
                8 + risk(asked, Length.ZERO)))
        : List.of();
  }

  /** Strips of soft metal or card that let a raw face settle. */
  List<Seat> soft(Asked asked) {
    List<Seat> seats = new ArrayList<>();
    for (Owned.Piece piece : task.shop().all(Owned.Piece.class)) {
      Length thickness = piece.size("thickness");
      if (piece.kind() == OwnKind.PACKING
          && thickness != null
          && thickness.isPositive()
          && !thickness.isMoreThan(task.numbers().usual("3", "0.125"))
          && fits(asked, thickness)) {
        seats.add(
            new Seat(
                "on soft-strip " + task.numbers().write(thickness),
                thickness,
                asked.vise().jawWidth(),
                Length.ZERO,
                Kind.SOFT,
                2 + risk(asked, thickness)));
      }
    }
    return sorted(seats, asked);
  }

  /**
   * A single parallel under work too thin for a pair. Where it is as thick as the work it would
   * take the clamping force, so a second piece stands beside the work.
   */
  List<Seat> singles(Asked asked) {
    List<Seat> seats = new ArrayList<>();
    List<Owned.Parallels> sets = task.shop().all(Owned.Parallels.class);
    Length margin = task.limits().length(Limit.THICKNESS_MARGIN);
    Length thin = asked.across().low();
    for (Owned.Parallels set : sets) {
      if (!fits(asked, set.height())) {
        continue;
      }
      boolean tips = set.thickness().times(2).isLessThan(asked.across().high());
      if (!set.thickness().plus(margin).isMoreThan(thin)) {
        seats.add(
            new Seat(
                "on one " + set.name(),
                set.height(),
                set.length(),
                set.thickness(),
                Kind.ONE,
                6 + risk(asked, set.height()) + (tips ? 15 : 0)));
        continue;
      }
      besides(asked, set, sets).ifPresent(seats::add);
    }
    return sorted(seats, asked);
  }

  private java.util.Optional<Seat> besides(
      Asked asked, Owned.Parallels under, List<Owned.Parallels> sets) {
    Length margin = task.limits().length(Limit.THICKNESS_MARGIN);
    return sets.stream()
        .filter(set -> !set.name().equals(under.name()) || set.count() > 2)
        // It has to bear on the work well above the seat, and stay below the jaws' top.
        .filter(set -> !set.height().isMoreThan(asked.vise().jawDepth()))
        .filter(
            set ->
                !set.height()
                    .minus(under.height())
                    .isLessThan(Length.ofMillimetres(asked.grip(under.height()).millimetres() / 3)))
        .filter(
            set ->
                under
                    .thickness()
                    .plus(margin)
                    .isLessThan(asked.across().low().plus(set.thickness())))
        .max(
            Comparator.comparing(Owned.Parallels::height)
                .thenComparing(Comparator.comparing(Owned.Parallels::name).reversed()))
        .map(
            set ->
                new Seat(
                    "on one " + under.name() + ", beside " + set.name(),
                    under.height(),
                    under.length(),
                    set.thickness(),
                    Kind.ONE_WITH_BESIDE,
                    9 + risk(asked, under.height())));
  }

  /**
   * The risk of a shallow grip under tall work, and of a cutter that passes close over the jaws.
   * Work may stand out twice as far as it is gripped (common practice, no source).
   */
  private int risk(Asked asked, Length height) {
    double grip = Math.max(0.1, asked.grip(height).millimetres());
    double proud = Math.max(0, asked.proud(height).millimetres());
    int risk = (int) Math.round(Math.max(0, proud / grip - 0.6) * 14);
    if (proud > 2 * grip) {
      risk += 25;
    }
    boolean close =
        asked.lowest().isPositive()
            && asked.clearance(height).isLessThan(task.numbers().usual("1", "0.040"));
    return risk + (close ? 2 : 0);
  }

  private static List<Seat> sorted(List<Seat> seats, Asked asked) {
    return seats.stream()
        .sorted(
            Comparator.comparingInt(Seat::cost)
                .thenComparing(
                    Comparator.<Seat, Length>comparing(seat -> asked.grip(seat.height()))
                        .reversed())
                .thenComparing(Comparator.comparing(Seat::thickness).reversed())
                .thenComparing(Seat::clause))
        .toList();
  }

  /** Why no pair fits, with the figures of the nearest. */
  String whyNone(Asked asked) {
    List<Owned.Parallels> sets = task.shop().all(Owned.Parallels.class);
    if (sets.isEmpty()) {
      return "the shop has no parallels";
    }
    Length third = Length.ofMillimetres(asked.up().low().millimetres() / 3);
    Length need = Length.max(task.limits().length(Limit.LEAST_GRIP), third);
    Length highest = asked.vise().jawDepth().minus(need);
    if (highest.isNegative()) {
      return "the work stands too tall in `"
          + asked.vise().name()
          + "`: it is "
          + asked.up().low()
          + " high, and the jaws, "
          + asked.vise().jawDepth()
          + " deep, should grip a third of it, "
          + need;
    }
    Length least =
        asked.lowest().isPositive()
            ? asked
                .vise()
                .jawDepth()
                .minus(asked.lowest())
                .plus(task.limits().length(Limit.JAW_CLEARANCE))
            : asked.least();
    least = Length.max(Length.max(least, asked.least()), Length.ZERO);
    Length thick = asked.across().low().minus(task.limits().length(Limit.PARALLELS_MARGIN)).half();
    return "no parallels fit in `"
        + asked.vise().name()
        + "` (jaws "
        + asked.vise().jawDepth()
        + " deep) under work "
        + asked.up().low()
        + " high and "
        + asked.across().low()
        + " wide: a pair would have to be "
        + least
        + " to "
        + highest
        + " high and at most "
        + thick
        + " thick";
  }
}
