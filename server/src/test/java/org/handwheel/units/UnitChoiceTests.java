package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/** Lengths in both units, cut down to one. */
class UnitChoiceTests {
  private static final String AROUND = "left 3 (in all): %s; then, 2 in 3";

  @Property
  void oneUnitIsWhatItIsWrittenAloneAs(
      @ForAll @LongRange(min = -2_000_000_000_000L, max = 2_000_000_000_000L) long picometres) {
    Length length = new Length(picometres);
    String both = AROUND.formatted(LengthText.both(length));
    assertThat(UnitChoice.MM.of(both)).isEqualTo(AROUND.formatted(LengthText.mm(length)));
    assertThat(UnitChoice.INCH.of(both)).isEqualTo(AROUND.formatted(LengthText.inch(length)));
    assertThat(UnitChoice.BOTH.of(both)).isEqualTo(both);
  }

  @Test
  void intervalsSizesAndFeedsToo() {
    String text =
        "30.17..30.28 mm (1.1878..1.1921 in), 60.00 x 8.00 mm (2.3622 x 0.315 in),"
            + " 170 mm/min (6.7 in/min), the rest (5 of it)";
    assertThat(UnitChoice.MM.of(text))
        .isEqualTo("30.17..30.28 mm, 60.00 x 8.00 mm, 170 mm/min, the rest (5 of it)");
    assertThat(UnitChoice.INCH.of(text))
        .isEqualTo("1.1878..1.1921 in, 2.3622 x 0.315 in, 6.7 in/min, the rest (5 of it)");
  }
}
