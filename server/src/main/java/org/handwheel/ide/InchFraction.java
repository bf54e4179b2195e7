package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.units.Length;
import org.handwheel.units.SixtyFourths;

/** The 64th of an inch a length is near to, in words. */
final class InchFraction {
  /** Nearer than this a fraction is worth naming: an eighth of the step between 64ths. */
  private static final Length NEAR = Length.inches("0.002");

  /** An error below this is not worth its figures. */
  private static final Length NOTHING = Length.mm("0.0005");

  private InchFraction() {}

  /** The fraction with how far it is off, if the length is near one: {@code 1-3/8 in exactly}. */
  static Optional<String> words(Length length) {
    SixtyFourths nearest = SixtyFourths.nearest(length);
    Length error = nearest.error();
    if (nearest.count() <= 0 || error.abs().isMoreThan(NEAR)) {
      return Optional.empty();
    }
    if (error.isZero()) {
      return Optional.of(nearest.text() + " exactly");
    }
    return Optional.of(
        error.abs().isLessThan(NOTHING)
            ? nearest.text() + ", within " + NOTHING.times(2)
            : nearest.text()
                + ", which is "
                + error.abs()
                + (error.isNegative() ? " less" : " more"));
  }
}
