package org.handwheel.model;

/** A side of the held work, said either by the part's face or by the place at the machine. */
public sealed interface Side {
  /** By a face of the part: {@code toward front}. */
  record OfPart(Face face) implements Side {}

  /** By a place at the machine: {@code toward operator-front}. */
  record AtMachine(Direction direction) implements Side {}
}
