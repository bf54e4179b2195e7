package org.handwheel.ide;

import java.util.Set;

/** Which hints are shown beside cuts. */
public record HintSettings(Set<Kind> shown) {
  /** All of them. */
  public static final HintSettings ALL = new HintSettings(Set.of(Kind.values()));

  public HintSettings {
    shown = Set.copyOf(shown);
  }

  /** What a hint tells. */
  public enum Kind {
    /** The size after the cut and what is left to the drawing. */
    SIZE,
    /** Where the dial stands at the end. */
    DIAL,
    /** Conventional, climb or mixed. */
    DIRECTION
  }

  public boolean shows(Kind kind) {
    return shown.contains(kind);
  }
}
