package org.handwheel.shop.fit;

import java.math.BigInteger;
import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.units.Length;

/** What plus-or-minus tolerances come to when sizes are added in a chain. */
public final class StackUp {
  private StackUp() {}

  /** The worst case: the sum of the absolute deviations. */
  public static Length worstCase(List<Length> deviations) {
    return deviations.stream().map(Length::abs).reduce(Length.ZERO, Length::plus);
  }

  /**
   * The root of the sum of the squares, rounded up to a picometre.
   *
   * <p>A likely value, not a bound: it supposes independent deviations, centred and evenly
   * controlled, which a single part from a manual machine does not promise.
   */
  public static Length rootSumSquare(List<Length> deviations) {
    BigInteger sum =
        deviations.stream()
            .map(deviation -> BigInteger.valueOf(deviation.picometres()).pow(2))
            .reduce(BigInteger.ZERO, BigInteger::add);
    BigInteger root = sum.sqrt();
    return Length.ofPicometres(
        BigFraction.of(root.pow(2).equals(sum) ? root : root.add(BigInteger.ONE)));
  }
}
