package org.handwheel.shop.drill;

import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/** What is left in a hole for the reamer, and how fast it turns. */
public final class Reaming {
  private static final Length SMALL = Length.mm("5");
  private static final Length LARGE = Length.mm("20");

  private Reaming() {}

  /**
   * How much smaller than the reamer the drilled hole is to be, on the diameter, for reaming in the
   * machine.
   *
   * <p>0.005 to 0.010 in (0.127 to 0.254 mm), War Department TM 1-420, read at
   * http://digital.library.unt.edu/ark:/67531/metadc96655/m1/62/ocr/. Up to 5 mm the lower end is
   * 0.08 mm and the upper 0.2 mm, over 20 mm they are 0.2 and 0.4 mm: common practice, no source.
   *
   * @param diameter of the reamer, over zero
   */
  public static LengthRange machineAllowance(Length diameter) {
    if (!diameter.isMoreThan(SMALL)) {
      return new LengthRange(Length.mm("0.08"), Length.mm("0.2"));
    }
    if (diameter.isMoreThan(LARGE)) {
      return new LengthRange(Length.mm("0.2"), Length.mm("0.4"));
    }
    return new LengthRange(Length.inches("0.005"), Length.inches("0.010"));
  }

  /**
   * The same for reaming by hand: 0.002 to 0.003 in (0.05 to 0.08 mm), "not more than" that.
   *
   * <p>US Army TM 1-1500-204-23-9, read at
   * https://aviationmiscmanuals.tpub.com/TM-1-1500-204-23-9/css/TM-1-1500-204-23-9_89.htm.
   */
  public static LengthRange handAllowance() {
    return new LengthRange(Length.inches("0.002"), Length.inches("0.003"));
  }

  /** The bores a drill may leave for a machine reamer of this diameter. */
  public static LengthRange drilledForMachine(Length reamer) {
    return LengthRange.exactly(reamer).minus(machineAllowance(reamer));
  }

  /** About half the speed of drilling: War Department TM 1-420, read as above. */
  public static double speedFactor() {
    return 0.5;
  }
}
