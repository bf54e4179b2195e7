package org.handwheel.work;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/**
 * The machine and the tooling at one point of the plan.
 *
 * @param cutter what is in the spindle, with the line that put it there
 * @param zeros where each dial was set to zero, or what lost it
 * @param locks locked axes and the lines that locked them
 * @param seat how the work was seated in this setup, if it was
 * @param calibrated sizes that were measured since a cut at the present dial zero: further cuts go
 *     on from the reading and no longer depend on the touch
 * @param depthSet how deep below a face Z was set, for cuts with the side of the cutter; another
 *     cutter or a moved head undoes it
 * @param trued the vise that was set true to the table, if one was
 * @param tram how square the head is known to stand
 * @param lastHoles the holes the spindle was last positioned over
 */
public record Bench(
    @Nullable Tool cutter,
    Map<Axis, Zero> zeros,
    Map<Axis, Origin> locks,
    Step.@Nullable Seat seat,
    Set<PartDimension> calibrated,
    @Nullable DepthSet depthSet,
    @Nullable Trued trued,
    Slope tram,
    Set<String> lastHoles) {
  public Bench {
    zeros = Map.copyOf(zeros);
    locks = Map.copyOf(locks);
    calibrated = Set.copyOf(calibrated);
    lastHoles = Set.copyOf(lastHoles);
  }

  /** A cutter in the spindle. */
  public record Tool(
      Owned.Cutter cutter, @Nullable Double rpm, @Nullable Length feedPerTooth, Origin origin) {}

  /**
   * A dial's zero.
   *
   * @param face the face it was taken from, if one was named
   * @param approach the way the cutter or finder went to it, if known
   * @param loss what lost it, or nothing while it holds
   */
  public record Zero(
      @Nullable Face face, @Nullable Direction approach, Origin origin, @Nullable Loss loss) {}

  /** Why a zero no longer holds. */
  public record Loss(Cause cause, Origin origin) {
    /** What lost it. */
    public enum Cause {
      CUTTER_CHANGED,
      HEAD_MOVED
    }
  }

  /** A vise set true to the table. */
  public record Trued(String vise, Slope error) {}

  /** Z set to a depth below a face. */
  public record DepthSet(Length depth, Face face, Origin origin) {}

  static Bench atStart(Slope tram) {
    return new Bench(null, Map.of(), Map.of(), null, Set.of(), null, null, tram, Set.of());
  }

  /** A new setup: the work is taken out, so zeroes, locks and seat are gone; the cutter stays. */
  public Bench forNewSetup() {
    return new Bench(cutter, Map.of(), Map.of(), null, Set.of(), null, trued, tram, Set.of());
  }

  Bench withCutter(Tool tool) {
    if (cutter != null && cutter.cutter().name().equalsIgnoreCase(tool.cutter().name())) {
      // Named again, for another speed: it stays in the spindle and every zero holds.
      return new Bench(tool, zeros, locks, seat, calibrated, depthSet, trued, tram, lastHoles);
    }
    Map<Axis, Zero> next = new EnumMap<>(Axis.class);
    zeros.forEach(
        (axis, zero) -> {
          // A finder's zero on X or Y is the spindle axis and outlives the cutter; a touch does
          // not.
          boolean touched = axis == Axis.Z || (zero.face() != null && zero.approach() != null);
          next.put(axis, touched ? lost(zero, Loss.Cause.CUTTER_CHANGED, tool.origin()) : zero);
        });
    return new Bench(tool, next, locks, seat, Set.of(), null, trued, tram, lastHoles);
  }

  private static Zero lost(Zero zero, Loss.Cause cause, Origin origin) {
    return zero.loss() != null
        ? zero
        : new Zero(zero.face(), zero.approach(), zero.origin(), new Loss(cause, origin));
  }

  Bench withHeadMoved(Owned.Column column, Origin origin) {
    Map<Axis, Zero> next = new EnumMap<>(Axis.class);
    zeros.forEach(
        (axis, zero) -> {
          boolean loses = axis == Axis.Z || column == Owned.Column.ROUND;
          next.put(axis, loses ? lost(zero, Loss.Cause.HEAD_MOVED, origin) : zero);
        });
    return new Bench(cutter, next, locks, seat, Set.of(), null, trued, tram, lastHoles);
  }

  Bench withZero(Axis axis, Zero zero, @Nullable PartDimension dimension) {
    Map<Axis, Zero> next = new EnumMap<>(Axis.class);
    next.putAll(zeros);
    next.put(axis, zero);
    Set<PartDimension> still = EnumSet.noneOf(PartDimension.class);
    still.addAll(calibrated);
    if (dimension != null) {
      still.remove(dimension);
    }
    return new Bench(cutter, next, locks, seat, still, depthSet, trued, tram, lastHoles);
  }

  Bench withLocked(Set<Axis> axes, Origin origin) {
    Map<Axis, Origin> next = new EnumMap<>(Axis.class);
    next.putAll(locks);
    axes.forEach(axis -> next.putIfAbsent(axis, origin));
    return new Bench(cutter, zeros, next, seat, calibrated, depthSet, trued, tram, lastHoles);
  }

  Bench withUnlocked(Set<Axis> axes) {
    Map<Axis, Origin> next = new EnumMap<>(Axis.class);
    next.putAll(locks);
    axes.forEach(next::remove);
    return new Bench(cutter, zeros, next, seat, calibrated, depthSet, trued, tram, lastHoles);
  }

  Bench withSeat(Step.Seat next) {
    return new Bench(cutter, zeros, locks, next, calibrated, depthSet, trued, tram, lastHoles);
  }

  Bench withCalibrated(PartDimension dimension) {
    Set<PartDimension> next = EnumSet.of(dimension);
    next.addAll(calibrated);
    return new Bench(cutter, zeros, locks, seat, next, depthSet, trued, tram, lastHoles);
  }

  Bench withDepthSet(DepthSet next) {
    return new Bench(cutter, zeros, locks, seat, calibrated, next, trued, tram, lastHoles);
  }

  Bench withTrued(Trued next) {
    return new Bench(cutter, zeros, locks, seat, calibrated, depthSet, next, tram, lastHoles);
  }

  Bench withTram(Slope next) {
    return new Bench(cutter, zeros, locks, seat, calibrated, depthSet, trued, next, lastHoles);
  }

  Bench withLastHoles(Set<String> next) {
    return new Bench(cutter, zeros, locks, seat, calibrated, depthSet, trued, tram, next);
  }
}
