package org.handwheel.units;

/** A length beyond what 64 bits of picometres hold (about 9 223 km); reported as a finding. */
public final class LengthOverflowException extends ArithmeticException {
  private static final long serialVersionUID = 1L;

  public LengthOverflowException() {
    super("the length is larger than 9 000 km");
  }
}
