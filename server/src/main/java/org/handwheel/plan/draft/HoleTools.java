package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Limit;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.shop.drill.Reaming;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/**
 * The lines that make a hole with the shop's drills, reamers and taps; or what is not there.
 *
 * <p>A set of drills ({@code own drills}) is taken to go by tenths of a millimetre up to its
 * largest; a single drill has its own size.
 */
final class HoleTools {
  private static final Length TENTH = Length.mm("0.1");
  private static final Length SMALLEST = Length.mm("1");

  /** ISO 286 grades from 11 on are met by a drill (common practice, no source). */
  private static final int DRILLED_GRADE = 11;

  private final Task task;

  HoleTools(Task task) {
    this.task = task;
  }

  /**
   * What a hole takes.
   *
   * @param sizes of the drills, one after the other; the last makes the hole or leaves it to the
   *     reamer or the tap
   * @param further the operations after drilling: words, then what follows the hole's name
   * @param stay whether the spindle has to stay over the hole after drilling
   */
  record Work(List<Length> sizes, List<String[]> further, Stay stay) {
    Work {
      sizes = List.copyOf(sizes);
      further = List.copyOf(further);
    }

    Length largest() {
      return sizes.get(sizes.size() - 1);
    }
  }

  /** Whether the spindle stays where it drilled. */
  enum Stay {
    FREE,
    OVER_THE_HOLE
  }

  /** The work on a hole, or nothing with the reason in why. */
  Optional<Work> work(HoleSpec hole, Why why) {
    List<String[]> further = new ArrayList<>();
    Optional<Length> drilled;
    Stay stay = Stay.FREE;
    if (hole.thread() != null) {
      drilled = tapped(hole, hole.thread(), further, why);
    } else if (hole.dia() == null) {
      why.add("the hole " + hole.name() + " has no diameter");
      return Optional.empty();
    } else if (isReamed(hole, hole.dia())) {
      drilled = reamed(hole, hole.dia(), further, why);
      stay = Stay.OVER_THE_HOLE;
    } else {
      drilled = plain(hole, hole.dia(), why);
    }
    if (drilled.isEmpty() || !sunk(hole, further, why)) {
      return Optional.empty();
    }
    return Optional.of(new Work(steps(drilled.get()), further, stay));
  }

  private boolean isReamed(HoleSpec hole, Length dia) {
    if (hole.fit() != null) {
      String grade = hole.fit().replaceAll("\\D", "");
      return grade.isEmpty() || Integer.parseInt(grade) < DRILLED_GRADE;
    }
    return hole.limits() != null
        && hole.limits().width().isLessThan(TENTH)
        && reamer(dia).isPresent();
  }

  private Optional<Length> plain(HoleSpec hole, Length dia, Why why) {
    LengthRange limits =
        hole.limits() != null
            ? hole.limits()
            : LengthRange.around(dia, task.limits().length(Limit.UNTOLERANCED));
    Optional<Length> drill = nearest(dia, limits);
    if (drill.isEmpty()) {
      why.add("no drill for the hole " + hole.name() + " of " + dia + largest());
    }
    return drill;
  }

  private Optional<Length> reamed(HoleSpec hole, Length dia, List<String[]> further, Why why) {
    Optional<Owned.Piece> reamer = reamer(dia);
    if (reamer.isEmpty()) {
      why.add("no reamer of " + dia + " for the hole " + hole.name() + fit(hole));
      return Optional.empty();
    }
    LengthRange before = Reaming.drilledForMachine(dia);
    Optional<Length> drill = nearest(before.middle(), before);
    if (drill.isEmpty()) {
      why.add(
          "no drill of "
              + before.low()
              + " to "
              + before.high()
              + " before the reamer of the hole "
              + hole.name());
    }
    further.add(new String[] {"ream", " with " + reamer.get().name()});
    return drill;
  }

  private static String fit(HoleSpec hole) {
    return hole.fit() == null ? "" : ", " + hole.fit();
  }

  private Optional<Owned.Piece> reamer(Length dia) {
    return pieces(OwnKind.REAMER).filter(piece -> dia.equals(piece.size("dia"))).findFirst();
  }

  private Optional<Length> tapped(
      HoleSpec hole, String designation, List<String[]> further, Why why) {
    Optional<ScrewThread> thread = task.tables().threads().find(designation);
    if (thread.isEmpty()) {
      why.add("the thread " + designation + " of the hole " + hole.name() + " is in no table");
      return Optional.empty();
    }
    Length major = thread.get().major();
    Length pitch = thread.get().pitch();
    boolean owned =
        pieces(OwnKind.TAP)
            .anyMatch(
                piece -> {
                  Length dia = piece.size("dia");
                  Length own = piece.size("pitch");
                  return dia != null
                      && dia.minus(major).abs().isLessThan(TENTH)
                      && (own == null || own.minus(pitch).abs().isLessThan(Length.mm("0.01")));
                });
    if (!owned) {
      why.add(
          "no tap "
              + designation
              + " for the hole "
              + hole.name()
              + ": "
              + major
              + " with a pitch of "
              + pitch);
      return Optional.empty();
    }
    Length tapping = thread.get().tapDrill().diameter();
    Optional<Length> drill = nearest(tapping, LengthRange.around(tapping, TENTH));
    if (drill.isEmpty()) {
      why.add("no tapping drill of " + tapping + " for the hole " + hole.name() + largest());
    }
    further.add(new String[] {"tap", " by hand, guide in spindle"});
    return drill;
  }

  /** Seats for heads and washers. */
  private boolean sunk(HoleSpec hole, List<String[]> further, Why why) {
    Length flat = hole.counterboreDia() != null ? hole.counterboreDia() : hole.spotface();
    if (flat != null) {
      Optional<Owned.Cutter> cutter =
          task.shop().all(Owned.Cutter.class).stream()
              .filter(
                  one ->
                      one.cutterKind() == Owned.CutterKind.SLOT_DRILL
                          || one.cutterKind() == Owned.CutterKind.END_MILL)
              .filter(one -> one.dia().equals(flat))
              .findFirst();
      if (cutter.isEmpty()) {
        why.add("no cutter of " + flat + " to sink the seat of the hole " + hole.name());
        return false;
      }
      String depth =
          hole.counterboreDepth() == null
              ? ""
              : ", depth " + task.numbers().write(hole.counterboreDepth());
      further.add(new String[] {"counterbore", " with " + cutter.get().name() + depth});
    }
    Length cone = hole.countersink();
    if (cone != null) {
      Optional<Owned.Cutter> cutter =
          task.shop().all(Owned.Cutter.class).stream()
              .filter(one -> one.cutterKind() == Owned.CutterKind.CHAMFER_MILL)
              .filter(one -> !one.dia().isLessThan(cone))
              .min(Comparator.comparing(Owned.Cutter::dia));
      if (cutter.isEmpty()) {
        why.add("no chamfering cutter of " + cone + " or more for the hole " + hole.name());
        return false;
      }
      further.add(new String[] {"countersink", " with " + cutter.get().name()});
    }
    return true;
  }

  /** The owned drill nearest to a size within limits. */
  private Optional<Length> nearest(Length size, LengthRange limits) {
    List<Length> sizes = new ArrayList<>();
    pieces(OwnKind.DRILL)
        .filter(Owned.Piece::isTwistDrill)
        .flatMap(piece -> Optional.ofNullable(piece.size("dia")).stream())
        .forEach(sizes::add);
    pieces(OwnKind.DRILLS)
        .flatMap(piece -> Optional.ofNullable(piece.size("dia")).stream())
        .forEach(
            most -> {
              long tenths = size.picometres() / TENTH.picometres();
              for (long i = tenths - 2; i <= tenths + 2; i++) {
                Length one = TENTH.times(i);
                if (!one.isLessThan(SMALLEST) && !one.isMoreThan(most)) {
                  sizes.add(one);
                }
              }
            });
    return sizes.stream()
        .filter(limits::contains)
        .min(
            Comparator.<Length, Length>comparing(one -> one.minus(size).abs())
                .thenComparing(Comparator.naturalOrder()));
  }

  private String largest() {
    return Stream.concat(
            pieces(OwnKind.DRILL).filter(Owned.Piece::isTwistDrill), pieces(OwnKind.DRILLS))
        .flatMap(piece -> Optional.ofNullable(piece.size("dia")).stream())
        .max(Comparator.naturalOrder())
        .map(dia -> "; the largest is " + dia)
        .orElse("; the shop has no drills");
  }

  /**
   * A large drill wants a smaller one before it, so that its blunt middle has nothing to push:
   * about six tenths of it (common practice, no source).
   */
  private List<Length> steps(Length last) {
    Length small = Length.mm("6.5");
    if (!last.isMoreThan(small)) {
      return List.of(last);
    }
    Length half = Length.mm("0.5");
    Length wanted = half.times((long) (last.millimetres() * 0.6 / half.millimetres()));
    return nearest(wanted, LengthRange.around(wanted, Length.mm("1")))
        .map(pilot -> List.of(pilot, last))
        .orElse(List.of(last));
  }

  private Stream<Owned.Piece> pieces(OwnKind kind) {
    return task.shop().all(Owned.Piece.class).stream().filter(piece -> piece.kind() == kind);
  }
}
