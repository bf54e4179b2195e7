package org.handwheel.plan.draft;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.units.Length;

/** Which of the shop's cutters to take. */
final class Cutters {
  private final Task task;

  Cutters(Task task) {
    this.task = task;
  }

  /**
   * Cutters to face a strip with, the best first: those that cover it in one lane before those that
   * need several, and the smallest of the first and the largest of the others.
   */
  List<Owned.Cutter> facing(Length across) {
    Comparator<Owned.Cutter> best =
        Comparator.<Owned.Cutter>comparingInt(one -> covers(one, across) ? 0 : 1)
            .thenComparingInt(one -> one.cutterKind() == CutterKind.SLOT_DRILL ? 1 : 0)
            .thenComparing(
                (a, b) ->
                    covers(a, across) ? a.dia().compareTo(b.dia()) : b.dia().compareTo(a.dia()))
            .thenComparing(Owned.Cutter::name);
    return all()
        .filter(one -> one.cutterKind() != CutterKind.CHAMFER_MILL && one.flute().isPositive())
        .sorted(best)
        .toList();
  }

  /** Whether one lane along the middle covers the strip, with a little to spare at each side. */
  boolean covers(Owned.Cutter cutter, Length across) {
    Length flat = cutter.dia().minus(cutter.corner().times(2));
    return !flat.minus(task.numbers().usual("1", "0.040")).isLessThan(across);
  }

  /**
   * How far to step over: three quarters of the diameter (common practice, no source), and never
   * more than the cutter's flat end.
   */
  Length stepOver(Owned.Cutter cutter) {
    Length part = Length.ofMillimetres(cutter.dia().millimetres() * 0.75);
    Length flat = cutter.dia().minus(cutter.corner().times(2)).times(9);
    return task.numbers()
        .down(Length.min(part, Length.ofMillimetres(flat.millimetres() / 10)), "1", "0.05");
  }

  /** Cutters whose side reaches down a wall, the stiffest first. */
  List<Owned.Cutter> sideways(Length height) {
    return all()
        .filter(Cutters::cutsWithItsSide)
        .filter(one -> !one.flute().isLessThan(height.plus(below())))
        .filter(one -> one.reach() == null || !one.reach().isLessThan(height.plus(below())))
        .sorted(
            Comparator.<Owned.Cutter>comparingInt(
                    one -> one.cutterKind() == CutterKind.SLOT_DRILL ? 1 : 0)
                .thenComparing(Comparator.comparing(Owned.Cutter::dia).reversed())
                .thenComparing(Owned.Cutter::flute)
                .thenComparing(Owned.Cutter::name))
        .toList();
  }

  Optional<Owned.Cutter> longest() {
    return all().filter(Cutters::cutsWithItsSide).max(Comparator.comparing(Owned.Cutter::flute));
  }

  /** How far the cutter's end goes below the work's lower edge. */
  Length below() {
    return task.numbers().usual("1", "0.040");
  }

  /** Cutters that fit between two walls and reach down so deep, the largest first. */
  List<Owned.Cutter> between(Length width, Length depth) {
    return all()
        .filter(
            one ->
                one.cutterKind() == CutterKind.SLOT_DRILL
                    || one.cutterKind() == CutterKind.END_MILL)
        .filter(one -> !one.dia().isMoreThan(width) && !one.flute().isLessThan(depth))
        .sorted(
            Comparator.<Owned.Cutter>comparingInt(
                    one -> one.cutterKind() == CutterKind.SLOT_DRILL ? 0 : 1)
                .thenComparing(Comparator.comparing(Owned.Cutter::dia).reversed())
                .thenComparing(Owned.Cutter::name))
        .toList();
  }

  private java.util.stream.Stream<Owned.Cutter> all() {
    return task.shop().all(Owned.Cutter.class).stream();
  }

  private static boolean cutsWithItsSide(Owned.Cutter cutter) {
    return switch (cutter.cutterKind()) {
      case END_MILL, SLOT_DRILL, SHELL_MILL -> true;
      case FACE_MILL, FLY_CUTTER, CHAMFER_MILL -> false;
    };
  }
}
