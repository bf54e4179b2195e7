package org.handwheel.shop.thread;

/**
 * The profile of a thread, as twice its depth in pitches.
 *
 * <p>Formulas: for 60 degrees H = (sqrt(3)/2) P. The internal thread's basic minor diameter is D -
 * (5/4) H = D - 1.082532 P (ISO 724, ASME B1.1). Per cent of thread is counted on the older full
 * height, D - 1.299038 P, as in Machinery's Handbook's table of tap drills and in the constant
 * 76.98 = 100/1.299038; the two must not be mixed. Whitworth 55 degrees: D - 1.280654 P (BS 84). BA
 * 47.5 degrees: D - 1.2 P (BS 93).
 */
public enum ThreadForm {
  ISO_60("60 degrees", 5 * Math.sqrt(3) / 8, 3 * Math.sqrt(3) / 4),
  WHITWORTH_55("Whitworth, 55 degrees", 1.280654, 1.280654),
  BA_47_5("BA, 47.5 degrees", 1.2, 1.2);

  private final String words;
  private final double minorFactor;
  private final double percentFactor;

  ThreadForm(String words, double minorFactor, double percentFactor) {
    this.words = words;
    this.minorFactor = minorFactor;
    this.percentFactor = percentFactor;
  }

  public String words() {
    return words;
  }

  /** How many pitches the internal minor diameter is below the major. */
  public double minorFactor() {
    return minorFactor;
  }

  /** How many pitches a hole with a full thread, 100 per cent, is below the major diameter. */
  public double percentFactor() {
    return percentFactor;
  }
}
