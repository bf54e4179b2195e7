package org.handwheel.ide.complete;

import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.Orientation;
import org.handwheel.work.SizeState;

/** Depths and allowances for a cut, from what is to come off and what the shop's limits are. */
public final class CutSizes {
  private static final Length ALLOWANCE_MM = Length.mm("0.25");
  private static final Length ALLOWANCE_INCH = Length.of("10", LengthUnit.THOU);

  private final Situation now;

  public CutSizes(Situation now) {
    this.now = now;
  }

  /**
   * What is usually left for a finishing pass on a small mill: 0.25 mm or 10 thou (common practice,
   * no source).
   */
  public Length allowance() {
    return now.units() == LengthUnit.MM ? ALLOWANCE_MM : ALLOWANCE_INCH;
  }

  /** What a cut that goes to the drawing's size less an allowance has to take off at most. */
  Optional<Length> removal(Face face, Length leaving) {
    Demand demand = now.demand(face);
    SizeState size = now.work() == null ? null : now.work().size(face.dimension());
    if (demand == null || size == null) {
      return Optional.empty();
    }
    Length removal = size.range().high().minus(demand.aim()).minus(leaving);
    return removal.isPositive() ? Optional.of(removal) : Optional.empty();
  }

  /** The deepest pass the shop's limits allow on a face. */
  public Length passLimit(Face face) {
    Limits limits = now.shop().limits();
    Orientation orientation = now.orientation();
    boolean side = orientation != null && orientation.up() != face;
    if (side && now.bench() != null && now.bench().cutter() != null) {
      return Length.ofMillimetres(
          limits.number(Limit.SIDE_PASS) * now.bench().cutter().cutter().dia().millimetres());
    }
    return limits.length(Limit.HEAVY_PASS);
  }

  /** How many passes it takes to remove something within a limit. */
  public static long passes(Length removal, Length limit) {
    return Math.max(1, removal.stepsOf(limit));
  }

  /** The depth of equal passes within the limit, rounded up to what is written, or the limit. */
  public Length evenPass(Length removal, Length limit) {
    long passes = passes(removal, limit);
    Length even = removal.times(BigFraction.of(1, passes));
    Length up = roundedUp(even);
    return up.isMoreThan(limit) ? roundedDown(limit) : up;
  }

  private Length step() {
    return now.units() == LengthUnit.MM ? Length.mm("0.01") : Length.of("0.5", LengthUnit.THOU);
  }

  private Length roundedUp(Length length) {
    return step().times(length.stepsOf(step()));
  }

  /** Rounded down to a hundredth of a millimetre or half a thou. */
  public Length roundedDown(Length length) {
    return roundedDown(length, step());
  }

  /** Rounded down to a multiple. */
  public static Length roundedDown(Length length, Length step) {
    long steps = length.picometres() / step.picometres();
    return step.times(steps);
  }

  /**
   * The most a face may be cleaned by: all that is over the drawing's size, or half of it where the
   * opposite face still has to be cleaned too.
   */
  Optional<Length> mostToClean(Face face) {
    Demand demand = now.demand(face);
    SizeState size = now.work() == null ? null : now.work().size(face.dimension());
    if (demand == null || size == null) {
      return Optional.empty();
    }
    Length over = size.range().low().minus(demand.aim());
    boolean both = now.face(face.opposite()).map(state -> !state.isMachined()).orElse(false);
    Length most = both ? over.half() : over;
    Length coarse =
        now.units() == LengthUnit.MM ? Length.mm("0.1") : Length.of("5", LengthUnit.THOU);
    Length rounded = roundedDown(most, coarse);
    return rounded.isPositive() ? Optional.of(rounded) : Optional.empty();
  }
}
