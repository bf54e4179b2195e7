package org.handwheel.ide.complete;

import java.util.Comparator;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.units.Length;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * The next holding of the usual squaring order: the first datum face up; the second datum up with
 * the first on the fixed jaw; its opposite up; the first's opposite up with the second on the fixed
 * jaw; then the ends (common practice, no source).
 */
final class Holds {
  private final Situation now;

  Holds(Situation now) {
    this.now = now;
  }

  /** The whole {@code hold} line, if the work is known and something is left to square. */
  Optional<String> next() {
    Workpiece work = now.work();
    Optional<Owned.Vise> vise = now.shop().all(Owned.Vise.class).stream().findFirst();
    if (work == null || vise.isEmpty()) {
      return Optional.empty();
    }
    Face first = datum("A", Face.TOP);
    Face second = datum("B", Face.BACK);
    if (!first.adjoins(second)) {
      return Optional.empty();
    }
    if (isRaw(work, first)) {
      return line(vise.get(), first, second, "");
    }
    if (isRaw(work, second)) {
      return line(vise.get(), second, first, bar());
    }
    if (isRaw(work, second.opposite())) {
      return line(vise.get(), second.opposite(), first, isRaw(work, first.opposite()) ? bar() : "");
    }
    if (isRaw(work, first.opposite())) {
      return line(vise.get(), first.opposite(), second, "");
    }
    return Optional.empty();
  }

  private static boolean isRaw(Workpiece work, Face face) {
    return !work.face(face).isMachined();
  }

  private Face datum(String letter, Face fallback) {
    Part part = now.view().plan() == null ? null : now.view().plan().part();
    return part == null ? fallback : part.datums().getOrDefault(letter, fallback);
  }

  private String bar() {
    return ", bar " + now.number(Length.mm("8")) + " at mid-grip";
  }

  private Optional<String> line(Owned.Vise vise, Face up, Face fixed, String more) {
    String under =
        parallels(vise, up, fixed).map(set -> ", on pair " + set.name()).orElse(", on bed");
    return Optional.of(
        "hold in " + vise.name() + ", up " + up.word() + ", fixed " + fixed.word() + under + more);
  }

  /**
   * The tallest pair that leaves the jaws a third of the height to grip and is narrower than the
   * work by the shop's margin.
   */
  Optional<Owned.Parallels> parallels(Owned.Vise vise, Face up, Face fixed) {
    Workpiece work = now.work();
    SizeState high = work == null ? null : work.size(up.dimension());
    SizeState wide = work == null ? null : work.size(fixed.dimension());
    return now.shop().all(Owned.Parallels.class).stream()
        .filter(set -> set.count() >= 2)
        .filter(set -> fits(set, vise, high, wide))
        .max(Comparator.comparing(Owned.Parallels::height).thenComparing(set -> set.thickness()));
  }

  private boolean fits(
      Owned.Parallels set, Owned.Vise vise, @Nullable SizeState high, @Nullable SizeState wide) {
    if (high == null || wide == null) {
      return true;
    }
    Length margin = now.shop().limits().length(Limit.PARALLELS_MARGIN);
    Length third = high.range().low().times(BigFraction.of(1, 3));
    Length need = Length.max(third, now.shop().limits().length(Limit.RULING_GRIP));
    Length proud = set.height().plus(high.range().low()).minus(vise.jawDepth());
    boolean narrow = set.thickness().times(2).plus(margin).isLessThan(wide.range().low());
    boolean grips = !vise.jawDepth().minus(set.height()).isLessThan(need);
    return narrow && grips && proud.isMoreThan(now.shop().limits().length(Limit.JAW_CLEARANCE));
  }
}
