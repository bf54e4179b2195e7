package org.handwheel.shop.fit;

import org.handwheel.units.Length;

/**
 * Whether a reading is fine enough for a tolerance, judged by the rule of ten to one and, where
 * that cannot be had, four to one.
 *
 * <p>Common practice, no source: a warning, never proof. The width of the tolerance zone (twice a
 * plus-or-minus) is compared with what the instrument resolves, or with the width of its
 * uncertainty.
 */
public enum MeasuringCapability {
  /** The tolerance is at least ten times as wide. */
  GOOD,
  /** At least four times. */
  FAIR,
  /** At least twice: a size near a limit cannot be told from one beyond it. */
  DOUBTFUL,
  /** Less than twice: the reading says nothing about the limits. */
  TOO_COARSE;

  /**
   * The capability for a tolerance zone.
   *
   * @param zone width from the lower to the upper limit, not negative
   * @param step what the instrument or dial resolves, over zero
   */
  public static MeasuringCapability of(Length zone, Length step) {
    if (zone.isNegative() || !step.isPositive()) {
      throw new IllegalArgumentException("a zone is not negative and a step is more than nothing");
    }
    if (atLeast(10, zone, step)) {
      return GOOD;
    }
    if (atLeast(4, zone, step)) {
      return FAIR;
    }
    return atLeast(2, zone, step) ? DOUBTFUL : TOO_COARSE;
  }

  /** As {@link #of}, by the width of the instrument's uncertainty or its step, the coarser. */
  public static MeasuringCapability of(Length zone, Instrument instrument) {
    return of(zone, Length.max(instrument.resolution(), instrument.uncertainty().times(2)));
  }

  private static boolean atLeast(int times, Length zone, Length step) {
    return !zone.isLessThan(step.times(times));
  }

  /** Whether it keeps four to one or better. */
  public boolean isAcceptable() {
    return this == GOOD || this == FAIR;
  }
}
