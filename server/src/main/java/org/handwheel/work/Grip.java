package org.handwheel.work;

import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.Support;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/**
 * The work between the jaws of a vise, in numbers.
 *
 * <p>Frame: X along the jaws with zero in their middle, Z up from the vise's bed.
 *
 * @param gripped the part's size between the jaws
 * @param height the part's size that stands up
 * @param length the part's size along the jaws
 * @param seat how high above the bed the work sits
 * @param depth how deep the jaws grip it; negative if it stands above them
 * @param proud how far it stands above the jaws; negative if it is below them
 * @param opening how far the vise has to open at most
 * @param workLeft X of the end at the operator's left
 * @param workRight X of the end at the operator's right
 * @param gripLeft X where the grip begins
 * @param gripRight X where it ends
 */
public record Grip(
    Hold hold,
    Owned.Vise vise,
    Orientation orientation,
    LengthRange gripped,
    LengthRange height,
    LengthRange length,
    Length seat,
    LengthRange depth,
    LengthRange proud,
    Length opening,
    Length workLeft,
    Length workRight,
    Length gripLeft,
    Length gripRight) {

  /** The grip of a hold on the work as it is now, if all three sizes are known. */
  static Optional<Grip> of(Hold hold, Workpiece work) {
    if (!(hold.rest() instanceof Hold.Rest.InVise inVise)
        || hold.up() == null
        || hold.fixed() == null) {
      return Optional.empty();
    }
    Owned.Vise vise = inVise.vise();
    Orientation orientation =
        Orientation.of(hold.up().value(), hold.fixed().value(), vise.fixedJaw());
    SizeState across = work.size(orientation.along(Axis.Y));
    SizeState upward = work.size(orientation.along(Axis.Z));
    SizeState along = work.size(orientation.along(Axis.X));
    if (across == null || upward == null || along == null) {
      return Optional.empty();
    }
    Length seat = seat(hold);
    LengthRange top = upward.range().plus(seat);
    LengthRange depth =
        new LengthRange(
            Length.min(vise.jawDepth(), top.low()).minus(seat),
            Length.min(vise.jawDepth(), top.high()).minus(seat));
    LengthRange proud = top.plus(vise.jawDepth().negated());
    Length half = vise.jawWidth().half();
    Length size = along.range().middle();
    Length left = left(hold, orientation, size, half);
    Length right = left.plus(size);
    return Optional.of(
        new Grip(
            hold,
            vise,
            orientation,
            across.range(),
            upward.range(),
            along.range(),
            seat,
            depth,
            proud,
            across.range().high().plus(between(hold)),
            left,
            right,
            Length.max(left, half.negated()),
            Length.min(right, half)));
  }

  private static Length left(Hold hold, Orientation orientation, Length size, Length half) {
    if (hold.overhang() != null) {
      Hold.Overhang overhang = hold.overhang().value();
      Direction end = orientation.resolve(overhang.end());
      if (end == Direction.OPERATOR_LEFT) {
        return half.negated().minus(overhang.length());
      }
      if (end == Direction.OPERATOR_RIGHT) {
        return half.plus(overhang.length()).minus(size);
      }
    }
    if (hold.place() != null && hold.place().value().axis() == Axis.X) {
      return hold.place().value() == Direction.OPERATOR_LEFT ? half.negated() : half.minus(size);
    }
    return size.half().negated();
  }

  /** How high the support carries the work. */
  public static Length seat(Hold hold) {
    Located<Support> located = hold.support();
    if (located == null || located.value() instanceof Support.Bed) {
      return Length.ZERO;
    }
    Support support = located.value();
    if (support instanceof Support.Pair pair) {
      return pair.parallels().height();
    }
    if (support instanceof Support.One one) {
      return one.parallels().height();
    }
    return ((Support.SoftStrip) support).thickness();
  }

  /** What stands between the jaws beside the work: a bar, a second parallel. */
  static Length between(Hold hold) {
    Length bar = hold.bar() == null ? Length.ZERO : hold.bar().value().dia();
    Length beside = hold.beside() == null ? Length.ZERO : hold.beside().value().thickness();
    return bar.plus(beside);
  }

  /** The length that is between the jaws; not above zero if the work is outside them. */
  public Length gripLength() {
    return gripRight.minus(gripLeft);
  }

  /** How far the middle of the grip is from the middle of the jaws, where the screw pulls. */
  public Length offCentre() {
    return gripLeft.plus(gripRight).half();
  }

  /** How far the work stands out beyond the jaws at an end; zero or negative if it does not. */
  public Length overhang(Direction end) {
    Length half = vise.jawWidth().half();
    return end == Direction.OPERATOR_LEFT ? half.negated().minus(workLeft) : workRight.minus(half);
  }

  /** The parallels it sits on, if any. */
  public Optional<Owned.Parallels> parallels() {
    Located<Support> support = hold.support();
    if (support != null && support.value() instanceof Support.Pair pair) {
      return Optional.of(pair.parallels());
    }
    if (support != null && support.value() instanceof Support.One one) {
      return Optional.of(one.parallels());
    }
    return Optional.empty();
  }

  /** How many parallels lie under it: 0, 1 or 2. */
  public int parallelCount() {
    Located<Support> support = hold.support();
    if (support == null) {
      return 0;
    }
    return support.value() instanceof Support.Pair
        ? 2
        : support.value() instanceof Support.One ? 1 : 0;
  }

  /** What the jaws close on at work height: the work, what stands beside it and a bar. */
  public LengthRange clamped() {
    return gripped.plus(between(hold));
  }

  /** The face against the fixed jaw. */
  public Face fixedFace() {
    return orientation.facing(vise.fixedJaw());
  }

  /** The face toward the moving jaw. */
  public Face movingFace() {
    return fixedFace().opposite();
  }

  /** The face underneath. */
  public Face underFace() {
    return orientation.facing(Direction.DOWN);
  }

  /** The length of the work that lies over the parallels, or over the bed between the jaws. */
  public Length supportSpan() {
    Length half = parallels().map(Owned.Parallels::length).orElse(vise.jawWidth()).half();
    return Length.min(workRight, half).minus(Length.max(workLeft, half.negated()));
  }
}
