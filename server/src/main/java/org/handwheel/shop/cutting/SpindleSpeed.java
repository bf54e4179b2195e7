package org.handwheel.shop.cutting;

import java.util.Comparator;
import java.util.List;
import org.handwheel.units.Length;

/**
 * Spindle speed and cutting speed.
 *
 * <p>Formula: v = pi D n. In metres per minute and millimetres n = 1000 v/(pi D); in feet per
 * minute and inches n = 12 V/(pi D), where 12/pi is the 3.82 of the shop (US Army subcourse OD1645,
 * read at http://armyordnance.tpub.com/Od1645/Od16450055.htm).
 */
public final class SpindleSpeed {
  /** Metres in a foot, exactly. */
  public static final double METRES_PER_FOOT = 0.3048;

  private SpindleSpeed() {}

  /**
   * Turns per minute.
   *
   * @param metresPerMinute cutting speed
   * @param diameter of the cutter, over zero
   */
  public static double turnsPerMinute(double metresPerMinute, Length diameter) {
    return metresPerMinute / circumferenceMetres(diameter);
  }

  /** Turns per minute for a cutting speed in feet per minute. */
  public static double turnsPerMinuteFromFeet(double feetPerMinute, Length diameter) {
    return turnsPerMinute(feetPerMinute * METRES_PER_FOOT, diameter);
  }

  /** The cutting speed in metres per minute. */
  public static double metresPerMinute(double turnsPerMinute, Length diameter) {
    return turnsPerMinute * circumferenceMetres(diameter);
  }

  /** The cutting speed in feet per minute. */
  public static double feetPerMinute(double turnsPerMinute, Length diameter) {
    return metresPerMinute(turnsPerMinute, diameter) / METRES_PER_FOOT;
  }

  private static double circumferenceMetres(Length diameter) {
    if (!diameter.isPositive()) {
      throw new IllegalArgumentException("a cutter has a diameter over zero");
    }
    return Math.PI * diameter.millimetres() / 1000;
  }

  /**
   * The step of a stepped drive to use: the fastest that is not above the speed wanted, or the
   * slowest there is.
   *
   * <p>Common practice, no source.
   *
   * @param steps the speeds the machine has in turns per minute, at least one
   */
  public static Choice choose(List<Double> steps, double wanted) {
    double slowest = steps.stream().min(Comparator.naturalOrder()).orElseThrow();
    double chosen =
        steps.stream()
            .filter(step -> step <= wanted)
            .max(Comparator.naturalOrder())
            .orElse(slowest);
    return new Choice(chosen, wanted);
  }

  /**
   * The speed of a drive that can be set to anything between its limits.
   *
   * @param slowest turns per minute
   * @param fastest turns per minute, not below {@code slowest}
   */
  public static Choice choose(double slowest, double fastest, double wanted) {
    if (fastest < slowest) {
      throw new IllegalArgumentException("the fastest speed is not below the slowest");
    }
    return new Choice(Math.max(slowest, Math.min(fastest, wanted)), wanted);
  }

  /**
   * A speed the machine has.
   *
   * @param turnsPerMinute what it turns at
   * @param wanted what the cut would like
   */
  public record Choice(double turnsPerMinute, double wanted) {
    /** Whether even the slowest speed is above what the cut would like. */
    public boolean isTooFast() {
      return turnsPerMinute > wanted;
    }
  }
}
