package org.handwheel.shop.thread;

import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.units.Length;

/** How deep to drill a blind hole for a thread. Common practice, no source. */
public final class Tapping {
  /** How many pitches of a tap's end do not cut a full thread. */
  public enum Lead {
    /** The first tap of a set. */
    TAPER(8),
    /** The second tap, called plug in America. */
    SECOND(4),
    /** The last tap, called plug in Britain. */
    BOTTOMING(2);

    private final int pitches;

    Lead(int pitches) {
      this.pitches = pitches;
    }

    public int pitches() {
      return pitches;
    }
  }

  private static final int LEAST_PITCHES_BEYOND = 3;

  private Tapping() {}

  /** The least full-diameter depth of the hole: three pitches beyond the full thread. */
  public static Length leastFullDepth(ScrewThread thread, Length threadDepth) {
    return threadDepth.plus(thread.pitch().times(LEAST_PITCHES_BEYOND));
  }

  /** The full-diameter depth at which a tap with this lead still makes the thread to depth. */
  public static Length fullDepth(ScrewThread thread, Length threadDepth, Lead lead) {
    return Length.max(
        leastFullDepth(thread, threadDepth),
        threadDepth.plus(thread.pitch().times(lead.pitches())));
  }

  /** How deep the tip of the drill goes for {@link #leastFullDepth}. */
  public static Length leastTipDepth(
      ScrewThread thread, Length threadDepth, Length drill, DrillPoint point) {
    return point.tipDepth(drill, leastFullDepth(thread, threadDepth));
  }

  /** The greatest full thread a hole of this full-diameter depth takes; never below zero. */
  public static Length greatestThread(ScrewThread thread, Length fullDepth) {
    return Length.max(Length.ZERO, fullDepth.minus(thread.pitch().times(LEAST_PITCHES_BEYOND)));
  }
}
