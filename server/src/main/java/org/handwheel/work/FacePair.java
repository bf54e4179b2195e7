package org.handwheel.work;

import org.handwheel.model.Face;
import org.jspecify.annotations.Nullable;

/** Two faces, in no order. */
public record FacePair(Face first, Face second) {
  public FacePair {
    if (first == second) {
      throw new IllegalArgumentException("a face has no relation to itself");
    }
    if (first.compareTo(second) > 0) {
      Face swap = first;
      first = second;
      second = swap;
    }
  }

  // Written out: what a record has of its own is made at run time, which takes its time at the
  // start.

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FacePair pair && first == pair.first && second == pair.second;
  }

  @Override
  public int hashCode() {
    return first.hashCode() * 31 + second.hashCode();
  }

  public boolean has(Face face) {
    return first == face || second == face;
  }

  public Face other(Face face) {
    return first == face ? second : first;
  }

  public boolean adjoin() {
    return first.adjoins(second);
  }
}
