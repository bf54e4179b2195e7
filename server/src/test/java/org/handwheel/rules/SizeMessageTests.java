package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rules of sizes with all they say, over a block of 60 x 34 whose top is cut to a height of
 * 21.00 +0/-0.05 from stock of 22.5, which may differ by 0.3. Source: arithmetic, and common
 * practice without a source.
 */
class SizeMessageTests {
  private static final String MILLED = "milled front back bottom";
  private static final String HEIGHT = "height 21.00 +0/-0.05";
  private static final String ROUGH = "rough top to height leaving 0.25, pass 0.5";
  private static final String ON_DRAWING = "  see `%s`: the height on the drawing\n";

  private static BenchPlan stock(String height, String... faces) {
    return BenchPlan.of("60 x 34 x " + height, faces);
  }

  private static BenchPlan top(BenchPlan plan, String... lines) {
    return plan.setup(
        Stream.concat(
                Stream.of(
                    "hold in V80, up top, fixed back, on pair P6x10",
                    "seat tapped, both parallels tight",
                    "cutter FC40",
                    "touch top with paper 0.05, zero z"),
                Stream.of(lines))
            .toArray(String[]::new));
  }

  private static BenchPlan cut(String height, String... lines) {
    return top(stock("22.5", MILLED).part(height), lines);
  }

  // ---- Above and below

  /** From 22.5: 2 x 0.5 leave 21.5, 4 x 0.4 leave 20.9, 1 x 1.6 leaves 20.9. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "by 3 passes of 0.5 | ",
        "by 4 passes of 0.4 | 4 passes of 0.40 mm (15.7 thou) leave only 20.90 mm (0.8228 in)",
        "by 1 passes of 1.6 | one pass of 1.60 mm (63 thou) leaves only 20.90 mm (0.8228 in)",
      })
  void countedPassesThatGoTooFar(String passes, String words) {
    for (String verb : new String[] {"rough", "finish"}) {
      assertThat(cut(HEIGHT, verb + " top to height, " + passes).said("overcut"))
          .isEqualTo(
              words == null
                  ? ""
                  : "error overcut at `%s`: %s of the height; the drawing allows"
                          .formatted(passes, words)
                      + " 20.95..21.00 mm (0.8248..0.8268 in)\n"
                      + ON_DRAWING.formatted(HEIGHT));
    }
  }

  /** From 22.2 at the least, to 20.975 in the middle of the limits: 1.225 has to come off. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "by 3 passes of 0.5 | ",
        "by 2 passes of 0.5 | 2 passes of 0.50 mm (19.7 thou) take off 1.00 mm (39.4 thou)",
        "by 1 passes of 1 | one pass of 1.00 mm (39.4 thou) takes off 1.00 mm (39.4 thou)",
      })
  void countedPassesThatStopShort(String passes, String words) {
    for (String verb : new String[] {"rough", "finish"}) {
      String said = cut(HEIGHT, verb + " top to height, " + passes).said("short-of-size");
      assertThat(said)
          .isEqualTo(
              words == null
                  ? ""
                  : "error short-of-size at `%s`: %s; at least 1.225 mm (48.2 thou) has to come off\n"
                          .formatted(passes, words)
                      + "  see `size 60 x 34 x 22.5`: the size before comes from here\n");
    }
  }

  /** The least is 20.95. */
  @ParameterizedTest
  @CsvSource({"20.95, ''", "20.94, 0.01 mm (0.4 thou)", "20.90, 0.05 mm (2 thou)"})
  void aCutBelowTheLeast(String to, String below) {
    String line = "finish top to " + to;
    String inches = to.equals("20.94") ? "0.8244" : "0.8228";
    assertThat(cut(HEIGHT, line).said("overcut"))
        .isEqualTo(
            below.isEmpty()
                ? ""
                : """
                error overcut at `%s`: this goes %s below the least height: to %s mm (%s in), and the\
                 drawing allows 20.95..21.00 mm (0.8248..0.8268 in)
                """
                        .formatted(line, below, to, inches)
                    + ON_DRAWING.formatted(HEIGHT));
  }

  @ParameterizedTest
  @CsvSource({"21.00, ''", "21.01, found"})
  void thePlanEndsAboveTheMost(String to, String found) {
    String line = "finish top to " + to;
    String said = cut(HEIGHT, line).said("short-of-size");
    if (found.isEmpty()) {
      assertThat(said).isEmpty();
    } else {
      assertThat(said)
          .startsWith(
              "error short-of-size at `finish top to 21.01`: the plan leaves the height at ")
          .endsWith(
              "; the drawing allows at most 21.00 mm (0.8268 in)\n" + ON_DRAWING.formatted(HEIGHT));
    }
  }

  /** No setup cuts the width, and the stock is wider by more than it may differ. */
  @Test
  void aSizeThatNoSetupCuts() {
    assertThat(cut(HEIGHT + "\n  width 33", ROUGH, "finish top to height").said("short-of-size"))
        .isEqualTo(
            """
            error short-of-size at `width 33`: the plan leaves the width at 33.70..34.30 mm\
             (1.3268..1.3504 in); the drawing allows at most 33.10 mm (1.3031 in)
              see `size 60 x 34 x 22.5`: the size comes from here and no setup cuts it
            """);
  }

  /** A raw face that no setup machines is said by a rule of its own and explains the size. */
  @Test
  void aRawFaceExplainsTheSize() {
    BenchPlan plan =
        top(
            stock("22.5", MILLED, "cast left").part(HEIGHT).part("length 58"),
            ROUGH,
            "finish top to height");
    assertThat(plan.said("short-of-size")).isEmpty();
    assertThat(plan.said("face-never-squared"))
        .isEqualTo(
            """
            warning face-never-squared at `left`: the left is as cast and no setup machines it
              see `length 58`: the length on the drawing
            """);
  }

  /** Cleaned by 0.4 to 0.6 of 22.2 to 22.8 the height ends at 21.6 to 22.4. */
  @ParameterizedTest
  @CsvSource({"22 +-0.4, false", "22 +-0.39, true"})
  void aCleanedFaceMayStayTooHigh(String height, boolean found) {
    BenchPlan plan = cut("height " + height, "clean top at 0.4, at most 0.6");
    assertThat(plan.said("short-of-size").isEmpty()).isEqualTo(!found);
  }

  // ---- The finishing allowance

  private static final String USUAL = "; about 0.25 mm (10 thou) is usual on a small mill\n";

  /** A tenth is the least to leave. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.1 | ",
        "0.09 | this leaves only 0.09 mm (3.5 thou) for the finishing pass",
      })
  void whatRoughingLeaves(String left, String words) {
    BenchPlan plan =
        cut(HEIGHT, "rough top to height leaving " + left + ", pass 0.5", "finish top to height");
    assertThat(plan.said("no-finish-allowance"))
        .isEqualTo(
            words == null
                ? ""
                : "warning no-finish-allowance at `leaving 0.09`: "
                    + words
                    + USUAL
                    + "  see `finish top to height`: the finishing pass is here\n");
  }

  @Test
  void roughingStraightToSize() {
    String line = "rough top to height, pass 0.5";
    assertThat(cut(HEIGHT, line, "finish top to height").said("no-finish-allowance"))
        .isEqualTo(
            "warning no-finish-allowance at `"
                + line
                + "`: this leaves nothing for the finishing pass"
                + USUAL
                + "  see `finish top to height`: the finishing pass is here\n");
    assertThat(cut(HEIGHT, line).said("no-finish-allowance"))
        .isEqualTo(
            "warning no-finish-allowance at `"
                + line
                + "`: this roughs straight to size and nothing is left for a finishing pass"
                + USUAL
                + ON_DRAWING.formatted(HEIGHT));
    // What is roughed above the limit is short of size instead.
    assertThat(cut(HEIGHT, ROUGH).said("no-finish-allowance")).isEmpty();
  }

  /** A tolerance of more than 0.4 in all needs no finishing pass. */
  @ParameterizedTest
  @CsvSource({"21 +-0.2, true", "21 +-0.21, false"})
  void aWideToleranceMayBeRoughed(String height, boolean found) {
    BenchPlan plan = cut("height " + height, "rough top to height, pass 0.5");
    assertThat(plan.said("no-finish-allowance").isEmpty()).isEqualTo(!found);
    // If it is finished all the same, something has to be left.
    assertThat(
            cut("height " + height, "rough top to height, pass 0.5", "finish top to height")
                .said("no-finish-allowance"))
        .isNotEmpty();
  }

  // ---- How well the size is known

  /** 22.5 may be 0.3 off, and no more is known when it is finished. */
  @Test
  void finishingWithoutMeasuring() {
    String finish = "finish top to height";
    assertThat(cut(HEIGHT, ROUGH, finish).said("measure-before-finish"))
        .contains(
            "warning measure-before-finish at `rough top to height leaving 0.25, pass 0.5`: the height"
                + " is known only within +-0.30 mm (11.8 thou), so with the errors")
        .contains(
            "warning measure-before-finish at `finish top to height`: the height is known only within"
                + " +-0.3")
        .contains(", so with the errors of touch and dial this may end anywhere in ")
        .endsWith(
            "; the drawing allows 20.95..21.00 mm (0.8248..0.8268 in); measure the height first\n"
                + "  see `"
                + ROUGH
                + "`: the height comes from here\n"
                + ON_DRAWING.formatted(HEIGHT));
    assertThat(
            cut(HEIGHT, ROUGH, "measure height with mic25", finish).said("measure-before-finish"))
        .doesNotContain("at `finish top to height`");
  }

  /** Roughing straight to size is a mistake of its own if a finishing pass follows. */
  @Test
  void roughingStraightToSizeIsNotToBeMeasuredFirst() {
    String rough = "rough top to height, pass 0.5";
    assertThat(cut("height 21 +-0.21", rough).said("measure-before-finish"))
        .startsWith("warning measure-before-finish at `" + rough + "`: ");
    assertThat(cut("height 21 +-0.21", rough, "finish top to height").said("measure-before-finish"))
        .doesNotContain("at `" + rough + "`");
  }

  @Test
  void onceCalibratedOnlyAFinerInstrumentHelps() {
    String instrument = "\nown instrument coarse\n  kind: caliper\n  accuracy: 0.2 mm\n";
    BenchPlan plan =
        cut(
                HEIGHT,
                ROUGH,
                "deburr edges of top",
                "measure height with coarse",
                "finish top to height")
            .with(instrument);
    assertThat(plan.said("measure-before-finish"))
        .contains("; measure the height with a finer instrument first\n");
    BenchPlan before =
        top(
                stock("22.5", MILLED, "milled top").part(HEIGHT),
                "measure height with coarse",
                "finish top to height")
            .with(instrument);
    assertThat(before.said("measure-before-finish"))
        .contains(
            "; take a roughing pass, measure in the same grip, and go on from that reading\n");
  }

  @Test
  void burrsOnBothFaces() {
    BenchPlan plan = cut(HEIGHT, ROUGH, "measure height with mic25", "measure width with caliper");
    assertThat(plan.said("measure-before-deburr"))
        .isEqualTo(
            """
            warning measure-before-deburr at `measure height with mic25`: the edges of the top still\
             have burrs; deburr them before measuring the height
              see `rough top to height leaving 0.25, pass 0.5`: the burrs of the top come from here
            """);
    BenchPlan both =
        top(stock("22.5", MILLED).part(HEIGHT), "clean top at 0.2")
            .setup(
                "hold in V80, up bottom, fixed back, on pair P6x10",
                "cutter FC40",
                "touch bottom with paper 0.05, zero z",
                "clean bottom at 0.2",
                "measure height with mic25");
    assertThat(both.said("measure-before-deburr"))
        .contains(": the edges of the bottom and the top still have burrs;")
        .contains("  see `clean top at 0.2`: the burrs of the top come from here\n")
        .contains("  see `clean bottom at 0.2`: the burrs of the bottom come from here\n");
  }

  // ---- Instruments and dials

  /** A division of 1 thou, 0.0254: half of it is the whole of +-0.0127. */
  @ParameterizedTest
  @CsvSource({"21 +-0.0128, false", "21 +-0.0127, true", "21 +-0.01, true"})
  void aDivisionAsWideAsTheTolerance(String height, boolean found) {
    assertThat(
            cut("height " + height, ROUGH, "finish top to height").said("dial-rounding").isEmpty())
        .isEqualTo(!found);
    // Roughing is not meant to hit it.
    assertThat(cut("height " + height, ROUGH).said("dial-rounding")).isEmpty();
  }

  /** Four times finer than the tolerance: 0.03 is a quarter of 0.12. */
  @ParameterizedTest
  @CsvSource({
    "21 +-0.06, ''",
    "21 +-0.05, '0.10 mm (3.9 thou) in all, and a quarter of it, 0.025 mm (1 thou)'"
  })
  void anInstrumentTooCoarse(String height, String words) {
    String line = "measure height with caliper";
    String said =
        cut("height " + height, ROUGH, "finish top to height", "deburr edges of top", line)
            .said("tolerance-not-measurable");
    assertThat(said)
        .isEqualTo(
            words.isEmpty()
                ? ""
                : """
                warning tolerance-not-measurable at `%s`: `caliper` is good to 0.03 mm (1.2 thou); the\
                 tolerance is %s, is wanted
                  see `height %s`: the height on the drawing
                  see `caliper`: `caliper` is described here
                """
                    .formatted(line, words, height));
    // Before a later cut it may be rough.
    assertThat(
            cut("height " + height, ROUGH, line, "finish top to height")
                .said("tolerance-not-measurable"))
        .isEmpty();
  }

  @Test
  void instrumentsThatCannotMeasureIt() {
    assertThat(cut(HEIGHT, "measure height with dti").said("tolerance-not-measurable"))
        .isEqualTo(
            """
            warning tolerance-not-measurable at `measure height with dti`: `dti` does not measure sizes
              see `dti`: `dti` is described here
            """);
    assertThat(cut(HEIGHT, "measure height with mic50").said("tolerance-not-measurable"))
        .isEqualTo(
            """
            warning tolerance-not-measurable at `measure height with mic50`: `mic50` measures\
             25.00..50.00 mm (0.9843..1.9685 in); the height is 22.20..22.80 mm (0.874..0.8976 in) here
              see `mic50`: `mic50` is described here
            """);
    assertThat(
            cut(HEIGHT, ROUGH, "finish top to height", "measure height with mic25")
                .said("tolerance-not-measurable"))
        .isEmpty();
  }

  // ---- Stock and skins

  @ParameterizedTest
  @CsvSource({"20.95, ''", "20.94, found"})
  void stockBelowTheLeast(String height, String found) {
    assertThat(stock(height, MILLED).part(HEIGHT).said("stock-too-small"))
        .isEqualTo(
            found.isEmpty()
                ? ""
                : """
                error stock-too-small at `size 60 x 34 x 20.94`: the stock's height of 20.94 mm (0.8244\
                 in) is below the part's 20.95..21.00 mm (0.8248..0.8268 in)
                """
                    + ON_DRAWING.formatted(HEIGHT));
  }

  /** A cast skin may be 1 deep: 22 is 1.025 over 20.975, 21.9 is 0.925 over it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "22 | ",
        "21.9 | the stock is only 0.925 mm (36.4 thou) over the height",
        "20.97 | the stock has nothing to spare over the height",
      })
  void stockWithoutRoomForItsSkin(String height, String words) {
    BenchPlan plan = top(stock(height, MILLED, "cast top").part(HEIGHT), "finish top to height");
    assertThat(plan.said("face-not-cleaned"))
        .isEqualTo(
            words == null
                // 22 may be 21.7, and then 0.725 comes off.
                ? """
                warning face-not-cleaned at `finish top to height`: the top is as cast and its marks may\
                 be 1.00 mm (39.4 thou) deep; only 0.725 mm (28.5 thou) is sure to come off in all
                  see `top`: the top is as cast here
                """
                : "warning face-not-cleaned at `size 60 x 34 x %s`: %s;".formatted(height, words)
                    + " its marks may go 1.00 mm (39.4 thou) deep in all, so some may be left\n"
                    + ON_DRAWING.formatted(HEIGHT));
  }

  @Test
  void aFaceThatIsCleanedTooLittle() {
    BenchPlan plan = stock("23", MILLED, "cast top");
    assertThat(top(plan, "clean top at 0.5").said("face-not-cleaned"))
        .isEqualTo(
            """
            warning face-not-cleaned at `clean top at 0.5`: the top is as cast and its marks may be 1.00\
             mm (39.4 thou) deep; only 0.50 mm (19.7 thou) is sure to come off in all
              see `top`: the top is as cast here
            """);
    assertThat(top(plan, "clean top at 0.5", "clean top at 0.5").said("face-not-cleaned"))
        .isEmpty();
    // The last cut of that face is named, not that of another.
    BenchPlan other =
        top(plan, "clean top at 0.2", "clean top at 0.3")
            .setup(
                "hold in V80, up bottom, fixed back, on pair P6x10",
                "cutter FC40",
                "touch bottom with paper 0.05, zero z",
                "clean bottom at 0.1");
    assertThat(other.said("face-not-cleaned"))
        .startsWith("warning face-not-cleaned at `clean top at 0.3`: the top is as cast")
        .containsOnlyOnce("warning");
  }

  /** 22.2 less 1.3 is 20.9. */
  @ParameterizedTest
  @CsvSource({"1.25, false", "1.3, true"})
  void cleaningMayGoBelowSize(String most, boolean found) {
    String line = "clean top at 0.4, at most " + most;
    assertThat(cut(HEIGHT, line).said("stock-too-small"))
        .isEqualTo(
            found
                ? """
                warning stock-too-small at `clean top at 0.4, at most 1.3`: cleaning by up to 1.30 mm\
                 (51.2 thou) may leave only 20.90 mm (0.8228 in) of the height; the part needs 20.95 mm\
                 (0.8248 in)
                """
                    + ON_DRAWING.formatted(HEIGHT)
                : "");
  }

  // ---- Slips of the unit

  /** Ten times the heavy pass, 5.08, is a slip; so are more than 50 passes. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rough top to 15, pass 5.08 | | ",
        "rough top to 15, pass 5.1 | pass 5.1 | a pass of 5.10 mm (0.2008 in) is many times the usual;"
            + " is the unit right?",
        "finish top to 15, pass 5.1 | pass 5.1 | a pass of 5.10 mm (0.2008 in) is many times the usual;"
            + " is the unit right?",
        "clean top at 5.1 | at 5.1 | a pass of 5.10 mm (0.2008 in) is many times the usual; is the unit"
            + " right?",
        "rough top to 15 leaving 5.1, pass 0.5 | leaving 5.1 | leaving 5.10 mm (0.2008 in) is many"
            + " times the usual; is the unit right?",
        // From 22.8 at the most 50 passes of 0.036 are 1.8.
        "rough top to 21, pass 0.036 | | ",
        "rough top to 21, pass 0.035 | pass 0.035 | passes of 0.035 mm (1.4 thou) would be 52 in"
            + " number; is the unit right?",
      })
  void aDepthThatLooksLikeASlip(String line, String where, String words) {
    assertThat(top(stock("22.5", MILLED), line).said("unit-suspect"))
        .isEqualTo(
            where == null
                ? ""
                : "warning unit-suspect at `%s`: %s\n".formatted(where, words)
                    + "  see `size 60 x 34 x 22.5`: the size before comes from here\n");
  }

  // ---- Square, parallel, flat

  /** Both milled before the plan begins, so that no setup is to be blamed. */
  @Test
  void aSquarenessThatNoCutTries() {
    BenchPlan plan =
        cut(HEIGHT + "\n  square left to back 0.05\n  parallel left to right 0.05", ROUGH);
    assertThat(plan.said("face-never-squared"))
        .isEqualTo(
            """
            warning face-never-squared at `square left to back 0.05`: no setup makes the left and the\
             back square to each other
              see `setup`: the setups begin here
            """);
    assertThat(plan.said("not-parallel"))
        .isEqualTo(
            """
            warning not-parallel at `parallel left to right 0.05`: no setup makes the left and the right\
             parallel
              see `setup`: the setups begin here
            """);
  }

  /** Twelve pairs of faces meet at an edge, of which the cut of the top makes at most four. */
  @Test
  void squareAllCountsItsPairs() {
    String said = cut(HEIGHT + "\n  square all 0.05", ROUGH).said("face-never-squared");
    assertThat(said).containsPattern("square to each other.*\\(and ([7-9]|1[01]) more pairs\\)\n");
  }

  @Test
  void aFaceThatIsToBeFlat() {
    assertThat(cut(HEIGHT + "\n  flat left 0.01", ROUGH).said("not-flat"))
        .startsWith("warning not-flat at `flat left 0.01`: the left stays as it is, ")
        .endsWith("; the drawing asks for flat within 0.01 mm (0.4 thou)\n");
    String finish = "finish top to height";
    String flat = cut(HEIGHT + "\n  flat top 0.001", ROUGH, finish).said("not-flat");
    assertThat(flat)
        .startsWith("warning not-flat at `flat top 0.001`: the top is flat only within ")
        .endsWith(
            " the way it is cut; the drawing asks for 0.001 mm (under 0.1 thou)\n  see `"
                + finish
                + "`: it comes from here\n");
    assertThat(cut(HEIGHT + "\n  flat top 0.1", ROUGH, finish).said("not-flat")).isEmpty();
  }

  /** How well depends on jaws, seat and parallels; better than a hundredth it is not. */
  @Test
  void whatIsSquareOrParallelOnlyWithinSomething() {
    String finish = "finish top to height";
    assertThat(cut(HEIGHT + "\n  parallel top to bottom 0.001", ROUGH, finish).said("not-parallel"))
        .startsWith(
            "warning not-parallel at `parallel top to bottom 0.001`: the top and the bottom are parallel"
                + " only within 0.0")
        .endsWith(
            " the way they are held; the drawing asks for 0.001 mm (under 0.1 thou)\n  see `"
                + finish
                + "`: cut seated on the bottom, tapped down\n");
    assertThat(cut(HEIGHT + "\n  parallel top to bottom 0.1", ROUGH, finish).said("not-parallel"))
        .isEmpty();
    BenchPlan barred =
        stock("22.5", MILLED)
            .part(HEIGHT)
            .part("square all 0.001")
            .setup(
                "hold in V80, up top, fixed back, on pair P6x10, bar 8 at mid-grip",
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                ROUGH,
                finish);
    // Twelve pairs of faces meet at an edge: one is made, and not well enough; eleven are not.
    assertThat(barred.said("face-never-squared"))
        .contains(
            ": no setup makes the left and the front square to each other (and 10 more pairs)\n")
        .contains(": the back and the top are square only within 0.0")
        .contains(
            " the way they are held; the drawing asks for 0.001 mm (under 0.1 thou)\n  see `finish top")
        .contains("`: cut with the back on the fixed jaw\n");
    // It is parallel to the face opposite, too, if it is to be square all round: three pairs.
    String parallel = barred.said("not-parallel");
    for (String pair : new String[] {"the right and the left", "the back and the front"}) {
      assertThat(parallel).contains(": no setup makes " + pair + " parallel\n");
    }
    assertThat(parallel).contains("the top and the bottom");
  }

  /** What another rule says of a face is not said again of its flatness. */
  @Test
  void aSkimmedFaceIsNotCalledUneven() {
    BenchPlan plan = top(stock("23", MILLED, "cast top"), "clean top at 0.2");
    assertThat(plan.part("flat top 0.01").said("not-flat")).isEmpty();
  }

  /**
   * Only a raw face of the same dimension explains a size: here the left has none to do with it.
   */
  @Test
  void aRawFaceOfAnotherDimensionExplainsNothing() {
    BenchPlan plan =
        top(
            stock("22.5", MILLED, "cast left").part(HEIGHT).part("length 58"),
            "finish top to 21.1");
    assertThat(plan.said("short-of-size"))
        .startsWith("error short-of-size at `finish top to 21.1`: the plan leaves the height at ")
        .containsOnlyOnce("short-of-size");
  }

  /** A pass over the end comes between, and the top is finished all the same. */
  @Test
  void theNextCutOfTheSameDimensionIsTheFinishingPass() {
    BenchPlan plan =
        cut(
            HEIGHT,
            "rough top to height leaving 0.05, pass 0.5",
            "clean right at 0.2",
            "finish top to height");
    assertThat(plan.said("no-finish-allowance"))
        .startsWith(
            "warning no-finish-allowance at `leaving 0.05`: this leaves only 0.05 mm (2 thou)")
        .endsWith("  see `finish top to height`: the finishing pass is here\n");
  }

  /** What is wrong with the stock's height says nothing of its ends. */
  @Test
  void aFaceOfAnotherDimensionIsReportedBesideShortStock() {
    BenchPlan plan =
        BenchPlan.of("60 x 34 x 21.5", MILLED, "cast top right", "milled left")
            .part(HEIGHT)
            .setup(
                "hold in V80, up top, fixed back, on pair P6x10, overhang right 8",
                "seat tapped, both parallels tight",
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                "finish top to height",
                "cutter EM16",
                "touch right, zero x",
                "set z 21 below top",
                "clean right at 0.4, conventional");
    assertThat(plan.said("face-not-cleaned"))
        .contains(
            "at `size 60 x 34 x 21.5`: the stock is only 0.525 mm (20.7 thou) over the height")
        .contains(
            "at `clean right at 0.4, conventional`: the right is as cast and its marks may be");
  }

  /** The cause is named where no rule of its own names it: nothing rules how the two lie. */
  @Test
  void whyAFaceIsNotSquare() {
    assertThat(
            cut(HEIGHT + "\n  square top to left 0.05", ROUGH, "finish top to height")
                .said("face-never-squared"))
        .isEqualTo(
            """
            warning face-never-squared at `square top to left 0.05`: no setup makes the top and the left\
             square to each other: nothing in this setup rules how the two lie
              see `finish top to height`: nothing in this setup rules how the two lie
            """);
  }
}
