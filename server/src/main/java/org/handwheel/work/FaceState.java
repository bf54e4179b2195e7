package org.handwheel.work;

import org.handwheel.model.Stock.Skin;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What a face is like at a point of the plan.
 *
 * @param condition how far it has come
 * @param skin what it was to begin with
 * @param flatness how flat it is known to be; nothing for a raw face
 * @param removed the least that has certainly come off since the stock was bought
 * @param burr the line that left burrs on its edges, if they are still there
 * @param since the line that made it what it is
 */
public record FaceState(
    Condition condition,
    Skin skin,
    @Nullable Length flatness,
    Length removed,
    @Nullable Origin burr,
    Origin since) {

  /** How far a face has come. */
  public enum Condition {
    RAW,
    SKIMMED,
    CLEAN,
    FINISHED;

    public boolean isMachined() {
      return this == CLEAN || this == FINISHED;
    }
  }

  /** Whether it can serve as a reference: machined all over, of known flatness, free of burrs. */
  public boolean isGood() {
    return condition.isMachined() && flatness != null && burr == null;
  }

  /** Machined all over, burrs or not. */
  public boolean isMachined() {
    return condition.isMachined();
  }

  FaceState withBurr(@Nullable Origin origin) {
    return new FaceState(condition, skin, flatness, removed, origin, since);
  }

  /** How a message names it: "as sawn", "skimmed, with marks left", "clean". */
  public String words() {
    return switch (condition) {
      case RAW -> skin.words();
      case SKIMMED -> "skimmed, with marks left";
      case CLEAN -> skin.isMachined() && removed.isZero() ? skin.words() : "clean";
      case FINISHED -> "finished";
    };
  }
}
