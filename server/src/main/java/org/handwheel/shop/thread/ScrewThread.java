package org.handwheel.shop.thread;

import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.table.Provenance;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * A standard screw thread and its tapping hole.
 *
 * <p>Formulas and their sources: {@link ThreadForm}.
 *
 * @param designation as a plan writes it: {@code M6}, {@code M8x1}, {@code UNC no 10-24}, {@code BA
 *     2}
 * @param series the series
 * @param major the nominal major diameter, exactly
 * @param exactPitch the pitch in picometres, exactly (18 to the inch is no whole number of them)
 * @param tapDrill the usual tapping drill
 * @param printedMinor limits of the nut's minor diameter (ISO 965-1 6H, ASME B1.1 2B) where printed
 * @param provenance where the row comes from
 */
public record ScrewThread(
    String designation,
    ThreadSeries series,
    Length major,
    BigFraction exactPitch,
    Drill tapDrill,
    @Nullable LengthRange printedMinor,
    Provenance provenance) {

  /** The pitch, rounded to a picometre. */
  public Length pitch() {
    return Length.ofPicometres(exactPitch);
  }

  /** Threads in an inch, exactly. */
  public BigFraction threadsPerInch() {
    return LengthUnit.IN.factor().divide(exactPitch);
  }

  /** The printed limits of the internal thread's minor diameter: the tapped hole lies between. */
  public Optional<LengthRange> minorLimits() {
    return Optional.ofNullable(printedMinor);
  }

  /** The basic minor diameter of the internal thread. */
  public Length minorDiameter() {
    return belowMajor(series.form().minorFactor());
  }

  /** The diameter of a hole that would leave a full thread: 100 per cent. */
  public Length fullThreadDiameter() {
    return belowMajor(series.form().percentFactor());
  }

  /**
   * The hole that leaves so many per cent of thread.
   *
   * @param percent over 0, to 100; 65 to 80 is usual
   */
  public Length holeFor(double percent) {
    if (!(percent > 0 && percent <= 100)) {
      throw new IllegalArgumentException("a thread has more than 0 and at most 100 per cent");
    }
    return belowMajor(series.form().percentFactor() * percent / 100);
  }

  /**
   * The per cent of thread a hole leaves; zero or less where it is not below the major diameter.
   */
  public double percentOfThread(Length hole) {
    return 100
        * major.minus(hole).millimetres()
        / (series.form().percentFactor() * pitchMillimetres());
  }

  private Length belowMajor(double pitches) {
    return Length.ofMillimetres(major.millimetres() - pitches * pitchMillimetres());
  }

  private double pitchMillimetres() {
    return exactPitch.doubleValue() / LengthUnit.MM.picometres();
  }
}
