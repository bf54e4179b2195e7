package org.handwheel.ide;

/**
 * What is shown in a text beyond its findings.
 *
 * @param hints beside cuts
 * @param lens over setups
 */
public record Settings(HintSettings hints, Lens lens) {
  /** Where nothing is set: all hints and no lenses. */
  public static final Settings USUAL = new Settings(HintSettings.ALL, Lens.HIDDEN);

  /** Whether lines over the setups tell their times and tools. */
  public enum Lens {
    SHOWN,
    HIDDEN
  }
}
