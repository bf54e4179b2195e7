package org.handwheel.work;

import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.model.Located;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/** Facts about a grip that both the engine and the rules ask for. */
public final class Holding {
  /**
   * How many times the base must exceed the grip for tapped work to follow the seat, not the jaw.
   */
  private static final int SEAT_OVER_JAW = 2;

  private Holding() {}

  /** Whether the work is so flat that tapped down it follows what it sits on, not the jaw. */
  public static boolean baseRules(Grip grip) {
    return !grip.gripped().low().isLessThan(grip.depth().high().times(SEAT_OVER_JAW));
  }

  /** The thickness of all parallels between the jaws under the work. */
  public static Length parallelsThickness(Grip grip) {
    return grip.parallels()
        .map(parallels -> parallels.thickness().times(grip.parallelCount()))
        .orElse(Length.ZERO);
  }

  /**
   * Whether the jaws close on the parallels instead of the work: the parallels between the jaws are
   * as thick as the work and what stands beside it (common practice, no source). A bar at the
   * moving jaw opens the jaws by its own thickness.
   */
  public static boolean isLoose(Grip grip) {
    return grip.parallels().isPresent()
        && !parallelsThickness(grip).isLessThan(grip.clamped().low());
  }

  /** Whether the jaws close on the parallels or on a spacer, so that nothing rules the work. */
  static boolean holdsNothing(Grip grip) {
    Located<Hold.Spacer> spacer = grip.hold().spacer();
    return isLoose(grip)
        || (spacer != null
            && spacer.value().width().isMoreThan(spacerWidth(grip, spacer.value()).high()));
  }

  /**
   * How wide a spacer should be: as the work, if a bar or a piece beside the work runs on in front
   * of the spacer too, else as both together. Which is meant shows from the spacer's own width.
   */
  public static LengthRange spacerWidth(Grip grip, Hold.Spacer spacer) {
    LengthRange alone = grip.gripped();
    LengthRange both = alone.plus(Grip.between(grip.hold()));
    Length toAlone = spacer.width().minus(alone.high()).abs();
    Length toBoth = spacer.width().minus(both.high()).abs();
    return toBoth.isLessThan(toAlone) ? both : alone;
  }

  /** Whether the grip is so far off the middle that the moving jaw needs a spacer. */
  public static boolean needsSpacer(Grip grip) {
    Length sixth = grip.vise().jawWidth().times(BigFraction.of(1, 6));
    return grip.offCentre().abs().isMoreThan(sixth);
  }

  /** Whether the screw pulls outside the gripped length, so that the jaw cannot hold at all. */
  public static boolean pullsOutside(Grip grip) {
    return grip.offCentre().abs().isMoreThan(grip.gripLength().half());
  }

  /**
   * How far the moving jaw swivels: what the spacer is too narrow over its distance from the work.
   * A spacer in the wrong place counts as none.
   */
  public static Slope cock(Grip grip) {
    Hold.Spacer spacer = spacer(grip);
    if (spacer == null) {
      return Slope.NONE;
    }
    return cock(grip, spacerWidth(grip, spacer).high().minus(spacer.width()));
  }

  /** How far the moving jaw swivels if a spacer at the mirrored place lacks this much. */
  public static Slope cock(Grip grip, Length lack) {
    Length distance = grip.offCentre().abs().times(2);
    return lack.isPositive() && distance.isPositive() ? Slope.of(lack, distance) : Slope.NONE;
  }

  /** The spacer, if it stands at the end away from the work. */
  public static Hold.@Nullable Spacer spacer(Grip grip) {
    if (grip.hold().spacer() == null) {
      return null;
    }
    Hold.Spacer spacer = grip.hold().spacer().value();
    boolean workAtRight = grip.offCentre().isPositive();
    boolean spacerAtLeft = spacer.at() == Direction.OPERATOR_LEFT;
    return workAtRight == spacerAtLeft ? spacer : null;
  }

  /** Whether the moving jaw stands askew beyond the vise's slack, or cannot hold. */
  public static boolean isCocked(Grip grip) {
    if (!needsSpacer(grip)) {
      return false;
    }
    Hold.Spacer spacer = spacer(grip);
    if (spacer == null) {
      return true;
    }
    // A spacer that may be wider than the work may leave it loose.
    return spacer.width().isMoreThan(spacerWidth(grip, spacer).low())
        || cock(grip).isMoreThan(grip.vise().slack());
  }

  /**
   * Whether the bar bears within the middle third of the grip, or nothing is said of its height.
   */
  public static boolean isBarInMiddleThird(Grip grip) {
    if (grip.hold().bar() == null || grip.hold().bar().value().height() == null) {
      return true;
    }
    Length height = grip.hold().bar().value().height();
    Length third = grip.depth().low().times(BigFraction.of(1, 3));
    Length low = grip.seat().plus(third);
    Length high = grip.seat().plus(third.times(2));
    return !height.isLessThan(low) && !height.isMoreThan(high);
  }
}
