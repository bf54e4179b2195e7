package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/** Small errors of angle as height per length. */
final class SlopeTests {
  private static final long MICROMETRE = 1_000_000L;
  private static final long METRE = 1_000_000_000_000L;

  @Test
  void isHeightPerLength() {
    // Elementary arithmetic: 0.02 mm over 100 mm is 0.0002, and 0.2 thou on each inch.
    Slope slope = Slope.of(Length.mm("0.02"), Length.mm("100"));
    assertThat(slope.billionths()).isEqualTo(200_000);
    assertThat(slope.over(Length.mm("250"))).isEqualTo(Length.mm("0.05"));
    assertThat(slope.over(Length.inches("1"))).isEqualTo(Length.of("0.2", LengthUnit.THOU));
    assertThat(slope).hasToString("0.02 mm over 100 mm (0.2 thou per inch)");
  }

  @Test
  void holdsOneMinuteOfArc() {
    // Elementary trigonometry: the tangent of one minute of arc is 0.2909 mm in a metre.
    Length rise = Length.ofMillimetres(1000 * Math.tan(Math.toRadians(1.0 / 60)));
    Length overAMetre = Slope.of(rise, Length.mm("1000")).over(Length.mm("1000"));
    assertThat(LengthText.number(overAMetre, LengthUnit.MM, 4, 4)).isEqualTo("0.2909");
  }

  @Test
  void refusesWhatIsNoBound() {
    assertThatThrownBy(() -> new Slope(-1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Slope.of(Length.mm("1"), Length.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Slope.of(Length.mm("1"), Length.mm("-1")))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void neverWraps() {
    Slope steepest = new Slope(Long.MAX_VALUE);
    assertThatThrownBy(() -> steepest.plus(new Slope(1)))
        .isInstanceOf(LengthOverflowException.class);
    assertThatThrownBy(() -> steepest.over(Length.mm("1000")))
        .isInstanceOf(LengthOverflowException.class);
    assertThatThrownBy(() -> Slope.of(new Length(Long.MAX_VALUE), new Length(1)))
        .isInstanceOf(LengthOverflowException.class);
  }

  @Property
  void isAnUpperBoundThatIsNoLooserThanItsUnit(
      @ForAll @LongRange(min = -METRE, max = METRE) long rise,
      @ForAll @LongRange(min = MICROMETRE, max = METRE) long run) {
    Length height = new Length(rise);
    Length length = new Length(run);
    Length bound = Slope.of(height, length).over(length);
    assertThat(bound).isGreaterThanOrEqualTo(height.abs());
    // A billionth of the length, and a picometre of rounding.
    assertThat(bound.minus(height.abs()).picometres())
        .isLessThanOrEqualTo(run / 1_000_000_000L + 2);
  }

  @Property
  void sumsAndOrderFollowTheHeights(
      @ForAll @LongRange(min = 0, max = METRE) long a,
      @ForAll @LongRange(min = 0, max = METRE) long b,
      @ForAll @LongRange(min = 0, max = METRE) long run) {
    Slope first = new Slope(a);
    Slope second = new Slope(b);
    Length length = new Length(run);
    Length apart = first.over(length).plus(second.over(length));
    assertThat(apart.minus(first.plus(second).over(length)).picometres()).isBetween(0L, 1L);
    assertThat(first.isMoreThan(second)).isEqualTo(a > b);
    assertThat(first.compareTo(second)).isEqualTo(Long.compare(a, b));
    assertThat(first.plus(Slope.NONE)).isEqualTo(first);
    assertThat(first.over(length)).isEqualTo(first.over(length.negated()));
  }
}
