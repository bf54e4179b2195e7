package org.handwheel.units;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fractions of an inch; an inch is 25.4 mm by definition, a 64th 0.396875 mm. */
final class SixtyFourthsTests {
  @ParameterizedTest
  @CsvSource({
    "25.4, 64, 1 in",
    "9.525, 24, 3/8 in",
    "34.925, 88, 1-3/8 in",
    "0.396875, 1, 1/64 in",
    "25.003125, 63, 63/64 in",
    "12.7, 32, 1/2 in",
    "19.05, 48, 3/4 in",
    "50.8, 128, 2 in",
    "0, 0, 0 in",
  })
  void wholeOnesAreExact(String millimetres, long count, String text) {
    SixtyFourths found = SixtyFourths.nearest(Length.mm(millimetres));
    assertThat(found.count()).isEqualTo(count);
    assertThat(found.error()).isEqualTo(Length.ZERO);
    assertThat(found.text()).isEqualTo(text);
  }

  /** 10 mm is 25.197 of them, so 25, which are 9.921875 mm; 0.3 mm is three quarters of one. */
  @ParameterizedTest
  @CsvSource({"10, 25, -0.078125", "0.3, 1, 0.096875"})
  void theErrorIsWhatTheyAreMore(String millimetres, long count, String error) {
    assertThat(SixtyFourths.nearest(Length.mm(millimetres)))
        .isEqualTo(new SixtyFourths(count, Length.mm(error)));
  }

  /** Half of a 64th is as near to 0 as to 1: the even one. One and a half go to two. */
  @Test
  void ofTwoAsNearTheEvenOne() {
    assertThat(SixtyFourths.nearest(Length.mm("0.1984375")).count()).isZero();
    assertThat(SixtyFourths.nearest(Length.mm("0.5953125")).count()).isEqualTo(2);
  }
}
