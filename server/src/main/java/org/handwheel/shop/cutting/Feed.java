package org.handwheel.shop.cutting;

import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.units.Length;

/**
 * Table feed and what it is at the handwheel.
 *
 * <p>Formulas: vf = fz z n (Carvill, Mechanical Engineer's Data Handbook p. 187, formula read);
 * seconds per turn = 60 lead/vf.
 */
public final class Feed {
  /** A handwheel turned faster than this, in seconds a turn, is hard to keep up. */
  public static final double FASTEST_CRANKING = 0.7;

  /** A handwheel turned slower than this, in seconds a turn, is hard to keep steady. */
  public static final double SLOWEST_CRANKING = 15;

  /** A feed worked back from the fastest winding is not faster for being rounded. */
  private static final double ROUNDING = 1e-6;

  private Feed() {}

  /**
   * The table feed in millimetres per minute.
   *
   * @param perTooth feed per tooth
   * @param teeth of the cutter, at least 1
   * @param turnsPerMinute of the spindle
   */
  public static double table(Length perTooth, int teeth, double turnsPerMinute) {
    return perTooth.millimetres() * atLeastOne(teeth) * turnsPerMinute;
  }

  /** The feed per tooth a table feed in millimetres per minute comes to. */
  public static Length perTooth(double millimetresPerMinute, int teeth, double turnsPerMinute) {
    return Length.ofMillimetres(millimetresPerMinute / (atLeastOne(teeth) * turnsPerMinute));
  }

  private static int atLeastOne(int teeth) {
    if (teeth < 1) {
      throw new IllegalArgumentException("a cutter has at least one tooth");
    }
    return teeth;
  }

  /**
   * The hand feed at a handwheel.
   *
   * @param millimetresPerMinute table feed, over zero
   * @param lead travel for one turn of the handwheel
   * @param divisions on its dial, over zero; need not be whole
   */
  public static HandFeed byHand(double millimetresPerMinute, Length lead, BigFraction divisions) {
    if (!(millimetresPerMinute > 0) || !lead.isPositive() || divisions.signum() <= 0) {
      throw new IllegalArgumentException("feed, lead and divisions are over zero");
    }
    double secondsPerTurn = 60 * lead.millimetres() / millimetresPerMinute;
    return new HandFeed(secondsPerTurn, divisions.doubleValue() / secondsPerTurn);
  }

  /**
   * How a table feed is wound by hand.
   *
   * @param secondsPerTurn time for one turn of the handwheel
   * @param divisionsPerSecond marks of the dial passing in a second
   */
  public record HandFeed(double secondsPerTurn, double divisionsPerSecond) {
    /** Common practice, no source. */
    public boolean isTooFastToCrank() {
      return secondsPerTurn < FASTEST_CRANKING * (1 - ROUNDING);
    }

    /** Common practice, no source. */
    public boolean isTooSlowToKeepSteady() {
      return secondsPerTurn > SLOWEST_CRANKING;
    }
  }
}
