package org.handwheel.work;

import org.handwheel.model.Face;

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
