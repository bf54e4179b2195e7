package org.handwheel.shop.material;

import org.handwheel.shop.table.Provenance;

/**
 * How fast a twist drill of high-speed steel cuts a material: starting points, the machine maker's
 * manual comes first.
 *
 * @param speeds at the outside of the drill
 * @param feed which part of the usual feed to take
 * @param provenance where they come from
 */
public record DrillSpeeds(SpeedRange speeds, FeedShare feed, Provenance provenance) {
  /** Which part of the usual range of feeds a material takes. */
  public enum FeedShare {
    /** Tough, or hardening where a drill rubs: the cautious end. */
    LOW,
    MIDDLE,
    /** Free-cutting: the brisk end. */
    HIGH
  }
}
