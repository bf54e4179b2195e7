package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;

/** Values with their dimension. */
final class QuantityTests {
  @Test
  void keepsALengthExactUntilItIsAskedForOne() {
    // 5/16 in is 127/16 mm, by definition; computed with Commons Numbers 1.2.
    Quantity quantity = Quantity.length(BigFraction.of(5, 16), LengthUnit.IN);
    assertThat(quantity.is(Dimension.LENGTH)).isTrue();
    assertThat(quantity.toLength()).isEqualTo(Length.mm("7.9375"));
    assertThat(Quantity.of(Length.mm("7.9375"))).isEqualTo(quantity);
    // A third of a millimetre has no end in picometres; only the length is rounded.
    Quantity third = Quantity.length(BigFraction.of(1, 3), LengthUnit.MM);
    assertThat(third.value()).isEqualTo(BigFraction.of(1_000_000_000, 3));
    assertThat(third.toLength().picometres()).isEqualTo(333_333_333);
  }

  @Test
  void isNoLengthWithoutAUnit() {
    Quantity number = Quantity.number(BigFraction.of(3));
    assertThat(number.is(Dimension.LENGTH)).isFalse();
    assertThatThrownBy(number::toLength)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("a plain number is not a length");
  }
}
