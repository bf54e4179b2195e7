package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is left beside pockets, windows and outlines of a block of 56 x 30 x 20; at least a
 * millimetre is wanted. Source: geometry.
 */
class WallRulesTests {
  private static String walls(String... features) {
    BenchPlan plan =
        BenchPlan.of("56 x 30 x 20", "milled left right front back top bottom")
            .part("length 56 +-0.2")
            .part("width 30 +-0.2")
            .part("height 20 +-0.2");
    for (String feature : features) {
      plan = plan.part(feature);
    }
    return plan.said("wall-too-thin");
  }

  private static String pocket(String name, String size, String depth, String place) {
    return "pocket %s in top, size %s, radius 3, depth %s, at (%s) from left front"
        .formatted(name, size, depth, place);
  }

  private static String hole(String face, String dia, String place) {
    return "hole pin in %s, dia %s, through, at (%s) from left front".formatted(face, dia, place);
  }

  private static String said(String line, String words, String see, String what) {
    return "warning wall-too-thin at `%s`: %s\n  see `%s`: %s\n".formatted(line, words, see, what);
  }

  /** A pocket of 30 x 20 reaches 15 and 10 from its middle; 54.5 + 0.5 would be the right edge. */
  @ParameterizedTest
  @CsvSource({
    "4, '28, 15', ''",
    "19, '28, 15', ''",
    "19.4, '28, 15', 'only 0.60 mm (23.6 thou) is left below `well`'",
    "4, '16, 15', ''",
    "4, '15.5, 15', 'only 0.50 mm (19.7 thou) is left between `well` and the left edge'",
    "4, '40.5, 15', 'only 0.50 mm (19.7 thou) is left between `well` and the right edge'",
    "4, '28, 10.5', 'only 0.50 mm (19.7 thou) is left between `well` and the front edge'",
    "4, '28, 19.5', 'only 0.50 mm (19.7 thou) is left between `well` and the back edge'",
    // Where it reaches the edge it is open.
    "4, '15, 15', ''",
    "4, '41, 15', ''",
  })
  void aPocketAlone(String depth, String place, String words) {
    String well = pocket("well", "30 x 20", depth, place);
    assertThat(walls(well))
        .isEqualTo(words.isEmpty() ? "" : said(well, words, "part", "the part's sizes"));
  }

  /** The first ends at 15 + 10 = 25, the second begins 10 before its middle. */
  @ParameterizedTest
  @CsvSource({"36, ''", "35.6, 0.60 mm (23.6 thou)", "35, ''", "30, ''"})
  void pocketsBesideEachOther(String middle, String left) {
    String well = pocket("well", "20 x 10", "4", "15, 15");
    String pit = pocket("pit", "20 x 10", "4", middle + ", 15");
    assertThat(walls(well, pit))
        .isEqualTo(
            left.isEmpty()
                ? ""
                : said(
                    pit,
                    "only " + left + " is left between `pit` and `well`",
                    well,
                    "the other one"));
    assertThat(walls(well, pit.replace("in top", "in bottom"))).isEmpty();
  }

  /** The pocket ends at 25, the hole of 5 begins 2.5 before its middle. */
  @ParameterizedTest
  @CsvSource({"28.5, ''", "28.1, 0.60 mm (23.6 thou)", "27.5, ''", "15, ''"})
  void aHoleBesideAPocket(String middle, String left) {
    String well = pocket("well", "20 x 10", "4", "15, 15");
    String pin = hole("top", "5", middle + ", 15");
    assertThat(walls(well, pin))
        .isEqualTo(
            left.isEmpty()
                ? ""
                : said(
                    well, "only " + left + " is left between `well` and `pin`", pin, "the hole"));
  }

  private static final String PORT =
      "window port in top, at (28, 15) from left front, obround %s, tolerance +-0.1";

  /** (30 - 28.4) / 2 is 0.8. */
  @ParameterizedTest
  @CsvSource({
    "30 x 28, ''",
    "30 x 28.4, 'only 0.80 mm (31.5 thou) is left between `port` and the edge'",
    "31 x 31, '`port` breaks out of the edge'",
  })
  void aWindowAgainstTheEdge(String size, String words) {
    String port = PORT.formatted(size);
    assertThat(walls(port))
        .isEqualTo(words.isEmpty() ? "" : said(port, words, "part", "the part's sizes"));
  }

  /** The window ends at 28 + 15 = 43; the hole of 5 at 46.1 begins at 43.6. */
  @ParameterizedTest
  @CsvSource({"46.5, ''", "46.1, 0.60 mm (23.6 thou)"})
  void aHoleBesideAWindow(String middle, String left) {
    String port = PORT.formatted("30 x 10");
    String pin = hole("top", "5", middle + ", 15");
    assertThat(walls(port, pin))
        .isEqualTo(
            left.isEmpty()
                ? ""
                : said(
                    port, "only " + left + " is left between `port` and `pin`", pin, "the hole"));
  }

  private static final String RIM =
      "outline rim in top, at (28, 15) from left front, obround 50 x 28";

  /** The outline begins at 28 - 25 = 3; the hole of 5 reaches 2.5 from its middle. */
  @ParameterizedTest
  @CsvSource({
    "top, 5, '28, 15', ''",
    "top, 5, '6.5, 15', ''",
    "top, 5, '6.1, 15', 'only 0.60 mm (23.6 thou) is left between `pin` and the outline `rim`'",
    "bottom, 5, '6.1, 15', 'only 0.60 mm (23.6 thou) is left between `pin` and the outline `rim`'",
    "top, 5, '4, 15', '`pin` breaks out of the outline `rim`'",
    // In the waste beside the outline, as a screw's hole may be.
    "top, 2, '2.2, 2.2', ''",
  })
  void aHoleInAnOutline(String face, String dia, String place, String words) {
    String pin = hole(face, dia, place);
    assertThat(walls(RIM, pin))
        .isEqualTo(words.isEmpty() ? "" : said(pin, words, RIM, "the outline"));
    // An outline that is not cut right through has metal all round below it.
    assertThat(walls(RIM + ", depth 4", pin)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"front, 'left bottom'", "left, 'front bottom'"})
  void aHoleInASideHasNothingToDoWithTheOutline(String face, String corner) {
    assertThat(walls(RIM, "hole pin in " + face + ", dia 2, depth 4, at (6, 10) from " + corner))
        .isEmpty();
  }

  /**
   * At 13.5 the pocket's corners are round about (6.5, 13), sqrt(10.5^2 + 2^2) = 10.689 from the
   * middle (17, 15) of the outline's end, whose radius is 14: 14 - 10.689 - 3 = 0.311.
   */
  @ParameterizedTest
  @CsvSource({
    "14.5, ''",
    "13.5, 'only 0.311 mm (12.3 thou) is left between `well` and the outline `rim`'",
    "12, '`well` breaks out of the outline `rim`'",
    // Open at the edge: it is meant to.
    "10, ''",
  })
  void aPocketInAnOutline(String middle, String words) {
    String well = pocket("well", "20 x 10", "4", middle + ", 15");
    assertThat(walls(RIM, well))
        .isEqualTo(words.isEmpty() ? "" : said(well, words, RIM, "the outline"));
  }

  /** (28 - 26.6) / 2 is 0.7; the edge of the part is 1.7 away. */
  @ParameterizedTest
  @CsvSource({"40 x 26, ''", "40 x 26.6, 0.70 mm (27.6 thou)"})
  void aWindowInAnOutline(String size, String left) {
    String port = PORT.formatted(size);
    assertThat(walls(RIM, port))
        .isEqualTo(
            left.isEmpty()
                ? ""
                : said(
                    port,
                    "only " + left + " is left between `port` and the outline `rim`",
                    RIM,
                    "the outline"));
  }
}
