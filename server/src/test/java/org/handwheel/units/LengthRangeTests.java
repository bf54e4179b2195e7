package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Intervals of lengths: a worked example and the laws of interval arithmetic. */
final class LengthRangeTests {
  @Test
  void convertsLimitsExactly() {
    // 1.250 +-0.001 in is 31.7246..31.7754 mm: elementary arithmetic (limits are converted first
    // and rounded afterwards: the idea of ISO/R 370, from memory).
    LengthRange limits = LengthRange.around(Length.inches("1.250"), Length.inches("0.001"));
    assertThat(limits).isEqualTo(new LengthRange(Length.mm("31.7246"), Length.mm("31.7754")));
    assertThat(LengthText.number(limits.low(), LengthUnit.MM, 2, 2)).isEqualTo("31.72");
    assertThat(LengthText.number(limits.high(), LengthUnit.MM, 2, 2)).isEqualTo("31.78");
  }

  @Test
  void takesTheAbsoluteValueOfASpread() {
    Length middle = Length.mm("10");
    LengthRange range = new LengthRange(Length.mm("9"), Length.mm("11"));
    assertThat(LengthRange.around(middle, Length.mm("-1"))).isEqualTo(range);
    assertThat(LengthRange.exactly(middle).widened(Length.mm("-1"))).isEqualTo(range);
  }

  @Test
  void refusesEndsInTheWrongOrder() {
    Length one = Length.mm("1");
    Length two = Length.mm("2");
    assertThatThrownBy(() -> new LengthRange(two, one))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void holdsItsEndsAndNothingBeyond() {
    LengthRange range = new LengthRange(Length.mm("1"), Length.mm("2"));
    Length step = new Length(1);
    assertThat(range.contains(range.low())).isTrue();
    assertThat(range.contains(range.high())).isTrue();
    assertThat(range.contains(range.low().minus(step))).isFalse();
    assertThat(range.contains(range.high().plus(step))).isFalse();
    assertThat(range.overlaps(new LengthRange(Length.mm("2"), Length.mm("3")))).isTrue();
    assertThat(range.overlaps(new LengthRange(Length.mm("0"), Length.mm("1")))).isTrue();
    assertThat(range.overlaps(new LengthRange(Length.mm("2.001"), Length.mm("3")))).isFalse();
    assertThat(range.overlaps(new LengthRange(Length.mm("0"), Length.mm("0.999")))).isFalse();
    assertThat(range.contains(new LengthRange(Length.mm("1"), Length.mm("2.1")))).isFalse();
    assertThat(range.contains(new LengthRange(Length.mm("0.9"), Length.mm("2")))).isFalse();
  }

  @Property
  void middleAndSpreadGiveTheIntervalBack(@ForAll("ranges") LengthRange range) {
    assertThat(range.contains(range.middle())).isTrue();
    LengthRange again = LengthRange.around(range.middle(), range.spread());
    Length picometre = new Length(1);
    assertThat(again.low().minus(range.low()).abs()).isLessThanOrEqualTo(picometre);
    assertThat(again.high().minus(range.high()).abs()).isLessThanOrEqualTo(picometre);
  }

  @Property
  void differenceHoldsTheDifferenceOfAnyTwoValues(
      @ForAll("ranges") LengthRange a, @ForAll("ranges") LengthRange b) {
    LengthRange difference = a.minus(b);
    assertThat(difference.width()).isEqualTo(a.width().plus(b.width()));
    assertThat(difference.low()).isEqualTo(a.low().minus(b.high()));
    assertThat(difference.contains(a.low().minus(b.low()))).isTrue();
    assertThat(difference.contains(a.high().minus(b.low()))).isTrue();
    assertThat(difference.contains(a.middle().minus(b.middle()))).isTrue();
  }

  @Property
  void wideningHoldsTheNarrowerInterval(
      @ForAll("ranges") LengthRange range, @ForAll("lengths") Length spread) {
    LengthRange wider = range.widened(spread);
    assertThat(wider.contains(range)).isTrue();
    assertThat(wider.overlaps(range)).isTrue();
    assertThat(wider.width()).isEqualTo(range.width().plus(spread.abs().times(2)));
  }

  @Property
  void overlapIsMutualAndKeptByAShift(
      @ForAll("ranges") LengthRange a,
      @ForAll("ranges") LengthRange b,
      @ForAll("lengths") Length shift) {
    assertThat(a.overlaps(b)).isEqualTo(b.overlaps(a));
    assertThat(a.plus(shift).overlaps(b.plus(shift))).isEqualTo(a.overlaps(b));
    assertThat(a.overlaps(b)).isEqualTo(a.minus(b).contains(Length.ZERO));
  }

  @Provide
  static Arbitrary<Length> lengths() {
    return Arbitraries.longs()
        .between(-1_000_000_000_000L, 1_000_000_000_000L)
        .map(picometres -> new Length(picometres));
  }

  @Provide
  static Arbitrary<LengthRange> ranges() {
    return Combinators.combine(lengths(), lengths())
        .as((a, b) -> new LengthRange(Length.min(a, b), Length.max(a, b)));
  }
}
