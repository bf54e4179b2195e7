package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rules of holding with all they say. The vise V80 has jaws of 80 x 25 that open 70; bought
 * stock may differ by 0.3. Source: common practice, no source.
 */
class HoldingMessageTests {
  private static final String SAWN = "sawn left right";
  private static final String DRAWN = "drawn front back top bottom";
  private static final String CUT = "clean top at 0.3, at most 1";

  // ---- A raw face on the fixed jaw

  private static String raw(BenchPlan plan) {
    return plan.said("raw-reference");
  }

  private static BenchPlan back(String... faces) {
    return BenchPlan.of("60 x 40 x 22", faces);
  }

  private static final String HOLD = "up top, fixed back, on pair P6x10";

  @Test
  void aCleanFaceCouldLieOnTheJaw() {
    BenchPlan plan = back("milled front", "cast back top bottom", SAWN);
    assertThat(raw(plan.face(HOLD, "top", CUT)))
        .isEqualTo(
            """
            warning raw-reference at `fixed back`: the back on the fixed jaw is as cast, so what is cut\
             here becomes square to nothing; the front is clean and could be there
              see `back`: the back is left as cast here
              see `front`: the front becomes clean here
            """);
    // A face that is cut here, or lies across the way, or is not cut at all, is none.
    assertThat(raw(plan.face(HOLD, "front", "clean front at 0.2"))).isEmpty();
    assertThat(raw(plan.setup("hold in V80, " + HOLD, "measure height with caliper"))).isEmpty();
    assertThat(raw(back("milled top", "cast back front bottom", SAWN).face(HOLD, "top", CUT)))
        .isEmpty();
    assertThat(raw(back("milled back", "cast front top bottom", SAWN).face(HOLD, "top", CUT)))
        .isEmpty();
  }

  /** Ends 80 apart do not go between jaws that open 70; ends 60 apart do. */
  @ParameterizedTest
  @CsvSource({"60, true", "69.7, true", "69.8, false", "80, false"})
  void aCleanFaceTheViseCannotGripIsNoChoice(String length, boolean found) {
    BenchPlan plan =
        BenchPlan.of(length + " x 40 x 22", "milled left", "cast front back top bottom right");
    assertThat(raw(plan.face(HOLD, "top", CUT)).contains("; the left is clean")).isEqualTo(found);
  }

  /** Bright bar is good enough where the drawing asks nothing of how the cut face lies. */
  @ParameterizedTest
  @CsvSource({
    "'', false",
    "square top to back 0.05, true",
    "square back to top 0.05, true",
    "square left to back 0.05, false",
    "square all 0.05, true",
    "flat top 0.05, false",
  })
  void brightBarOnTheJaw(String callout, boolean found) {
    BenchPlan plan = back("milled left", "drawn front back top bottom", "sawn right");
    BenchPlan asked = callout.isEmpty() ? plan : plan.part(callout);
    assertThat(raw(asked.face(HOLD, "top", CUT)).isEmpty()).isEqualTo(!found);
  }

  // ---- Seat and bar

  @ParameterizedTest
  @CsvSource({
    "pair P6x10, ', try that neither parallel moves, and say `seat tapped, both parallels tight`'",
    "one P6x10, ' and say `seat tapped`'",
  })
  void nothingProvesTheSeat(String support, String cure) {
    BenchPlan plan = BenchPlan.of("60 x 30 x 22", "milled bottom back", "cast front top", SAWN);
    assertThat(plan.face("up top, fixed back, on " + support, "top", CUT).said("seat-not-proved"))
        .isEqualTo(
            """
            warning seat-not-proved at `on %s`: the bottom is clean and should seat, but nothing proves\
             it; tap the work down%s
              see `bottom`: the bottom becomes clean here
            """
                .formatted(support, cure));
  }

  @Test
  void aBarInTheWrongPlace() {
    BenchPlan plan = BenchPlan.of("60 x 30 x 22", "milled back", "cast front top bottom", SAWN);
    // The jaws grip from 10 to 25 above the bed: the middle third is 15 to 20.
    assertThat(plan.face(HOLD + ", bar 8 at 12", "top", CUT).said("bar-missing"))
        .startsWith("warning bar-missing at `bar 8 at 12`: ")
        .contains(", where it presses the work flat against the fixed jaw: `at mid-grip`\n")
        .endsWith("  see `front`: the front becomes what it is here\n");
    assertThat(plan.face(HOLD + ", bar 8 at mid-grip", "top", CUT).said("bar-missing")).isEmpty();
    assertThat(plan.face(HOLD, "top", CUT).said("bar-missing"))
        .startsWith("warning bar-missing at `hold in V80, up top, fixed back, on pair P6x10`: ")
        .contains(
            "; the moving jaw can pull the work away from the fixed one: put a round bar between it"
                + " and the work, `bar DIA at mid-grip`\n");
  }

  @Test
  void burrsOnAnyFaceThatTouches() {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 22", "milled front back bottom top", SAWN)
            .setup(
                "hold in V80, " + HOLD,
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                "clean top at 0.3")
            .setup("hold in V80, up bottom, fixed back, on pair P6x10");
    assertThat(plan.said("burr-under-work"))
        .isEqualTo(
            """
            warning burr-under-work at `hold in V80, up bottom, fixed back, on pair P6x10`: the top\
             under the work still has burrs on its edges; take them off first: `deburr edges of top`
              see `clean top at 0.3`: the burrs come from here
            """);
    BenchPlan turned =
        BenchPlan.of("60 x 30 x 22", "milled front back bottom top", SAWN)
            .setup(
                "hold in V80, " + HOLD,
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                "clean top at 0.3")
            .setup("hold in V80, up back, fixed bottom, on pair P6x10");
    assertThat(turned.said("burr-under-work")).contains("the top against the moving jaw still");
  }

  // ---- How much is gripped, and where

  /** The third of the least height, 44.7 / 3 = 14.9 and 45.7 / 3 = 15.233, of 15 gripped. */
  @ParameterizedTest
  @CsvSource({"45, ''", "45.3, ''", "46, '15.233 mm (0.5997 in) (a third of the height)'"})
  void theLeastGrip(String height, String need) {
    BenchPlan plan = BenchPlan.of("60 x 30 x " + height, DRAWN, SAWN).face(HOLD, "top", CUT);
    assertThat(plan.said("too-low-grip"))
        .isEqualTo(
            need.isEmpty()
                ? ""
                : """
                warning too-low-grip at `on pair P6x10`: the jaws grip 15.00 mm (0.5906 in) of 45.70 mm\
                 (1.7992 in); at least %s is wanted
                  see `V80`: the jaws are 25.00 mm (0.9843 in) high above the bed
                """
                    .formatted(need));
  }

  /** Work lower than the jaws reach: 2 is the least grip, whatever the third of its height. */
  @ParameterizedTest
  @CsvSource({"2.3, ''", "2.2, 1.90 mm (74.8 thou)"})
  void aGripOfThinStock(String height, String grip) {
    BenchPlan plan = BenchPlan.of("60 x 30 x " + height, DRAWN, SAWN).face(HOLD, "top", CUT);
    assertThat(plan.said("too-low-grip"))
        .isEqualTo(
            grip.isEmpty()
                ? ""
                : """
                error too-low-grip at `on pair P6x10`: the jaws grip %s of %s; at least 2.00 mm (78.7\
                 thou) is wanted
                  see `V80`: the jaws are 25.00 mm (0.9843 in) high above the bed
                """
                    .formatted(grip, grip));
  }

  /** Jaws of 25: parallels of 23 leave 2, those of 25 nothing. */
  @ParameterizedTest
  @CsvSource({
    "23, ''",
    "24, these parallels leave only 1.00 mm (39.4 thou) of the jaws above them to grip the work",
    "25, 'these parallels stand as high as the jaws, so nothing grips the work'",
  })
  void tallParallels(String height, String words) {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 40", DRAWN, SAWN)
            .with("\nown parallels P\n  thickness: 6\n  height: " + height + "\n  length: 70\n")
            .face("up top, fixed back, on pair P", "top", CUT);
    assertThat(plan.said("parallels-too-tall"))
        .isEqualTo(
            words.isEmpty()
                ? ""
                : """
                error parallels-too-tall at `on pair P`: %s
                  see `V80`: the jaws are 25.00 mm (0.9843 in) high above the bed
                """
                    .formatted(words));
  }

  /** With 0.3 more than is named the jaws are open just 70. */
  @ParameterizedTest
  @CsvSource({"69.7, ''", "69.8, 70.10 mm (2.7598 in)"})
  void theOpening(String width, String needed) {
    BenchPlan plan =
        BenchPlan.of("60 x " + width + " x 22", DRAWN, SAWN)
            .face("up top, fixed back, on pair P6x10", "top", CUT);
    assertThat(plan.said("jaw-opening"))
        .isEqualTo(
            needed.isEmpty()
                ? ""
                : """
                error jaw-opening at `hold in V80, up top, fixed back, on pair P6x10`: this needs an\
                 opening of %s; `V80` opens 70.00 mm (2.7559 in)
                  see `V80`: the vise's opening is given here
                """
                    .formatted(needed));
  }

  /** Two of 6 are 12; drawn stock named 12 is 11.7 at the least, 12.3 at the most. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12 | pair P6x10 | error | the vise closes on the parallels: they are 12.00 mm (0.4724 in)"
            + " together, the work is 11.70 mm (0.4606 in) at the least; the work is loose; take"
            + " thinner ones",
        "11.5 | pair P6x10 | error | the vise closes on the parallels: they are 12.00 mm (0.4724 in)"
            + " together, the work is 11.20 mm (0.4409 in); the work is loose; take thinner ones",
        "12.5 | pair P6x10 | warning | the two parallels are only 0.20 mm (7.9 thou) narrower than"
            + " the work together; as the jaw lifts they may take the clamping force; take thinner"
            + " ones",
        "13.3 | pair P6x10 | | ",
        "6.4 | one P6x10 | warning | the parallel is only 0.10 mm (3.9 thou) thinner than the work;"
            + " as the jaw lifts it may take the clamping force; take a thinner one, or put a second"
            + " parallel beside the work: `beside P6x10`",
        "6.5 | one P6x10 | | ",
        "6 | one P6x10 | error | the vise closes on the parallel: it is 6.00 mm (0.2362 in) thick, the"
            + " work is 5.70 mm (0.2244 in) at the least; the work is loose; take a thinner one, or"
            + " put a second parallel beside the work: `beside P6x10`",
      })
  void theViseClosesOnTheParallels(String width, String support, String weight, String words) {
    BenchPlan plan =
        BenchPlan.of("60 x " + width + " x 22", DRAWN, SAWN)
            .face("up top, fixed back, on " + support, "top", CUT);
    assertThat(plan.said("grips-parallels"))
        .isEqualTo(
            weight == null
                ? ""
                : "%s grips-parallels at `on %s`: %s\n".formatted(weight, support, words)
                    + "  see `size 60 x %s x 22`: the work's size comes from here\n"
                        .formatted(width));
  }

  // ---- At one end of the jaws

  private static BenchPlan overhanging(String clauses) {
    return overhanging(DRAWN, clauses);
  }

  private static BenchPlan overhanging(String faces, String clauses) {
    return BenchPlan.of("60 x 30 x 21", faces, SAWN)
        .end(
            "up top, fixed back, on pair P6x10, " + clauses,
            "right",
            "set z 23 below top",
            "clean right at 0.5, at most 1.5, conventional");
  }

  /**
   * The jaws reach 40 from their middle; work of 60 that stands out 9 at the right is gripped from
   * 40 - 51 = -11 to 40, so 14.5 off the middle.
   */
  @ParameterizedTest
  @CsvSource({
    "overhang right 9, '', operator-left",
    "'overhang right 9, spacer 29.7 at operator-right', spacer 29.7 at operator-right,"
        + " operator-left",
    "overhang left 9, '', operator-right",
  })
  void aSpacerBelongsAtTheOtherEnd(String clauses, String where, String end) {
    String at =
        where.isEmpty() ? "hold in V80, up top, fixed back, on pair P6x10, " + clauses : where;
    String cure =
        where.isEmpty()
            ? "put a spacer as wide as the work at the other end: "
            : "the spacer belongs at the other end: ";
    assertThat(overhanging(clauses).said("jaw-cocks"))
        .isEqualTo(
            """
            warning jaw-cocks at `%s`: the grip is 14.50 mm (0.5709 in) off the middle of the jaws, so\
             the moving jaw stands askew; %s`spacer WIDTH at %s`
              see `V80`: the jaws are 80.00 mm (3.1496 in) wide
            """
                .formatted(at, cure, end));
  }

  /** Work named 30 is 29.7 at the least: a spacer of 29.5 certainly lacks 0.2. */
  @Test
  void aSpacerThatIsTooNarrow() {
    assertThat(overhanging("overhang right 9, spacer 29.5 at operator-left").said("jaw-cocks"))
        .startsWith(
            "error jaw-cocks at `spacer 29.5 at operator-left`: the spacer is 0.20 mm (7.9 thou) too"
                + " narrow, so the moving jaw swivels by ")
        .endsWith(" over its width\n  see `V80`: the jaws are 80.00 mm (3.1496 in) wide\n");
    assertThat(overhanging("overhang right 9, spacer 29.65 at operator-left").said("jaw-cocks"))
        .isEmpty();
    // With a clean face to rule the work what the spacer may lack counts, too.
    assertThat(
            overhanging(
                    "milled back\n  drawn front top bottom",
                    "overhang right 9, spacer 29.7 at operator-left")
                .said("jaw-cocks"))
        .isEqualTo(
            """
            warning jaw-cocks at `spacer 29.7 at operator-left`: the work may be as wide as 30.30 mm\
             (1.1929 in), and then the moving jaw stands askew; measure it and take a spacer of its\
             width
              see `V80`: the jaws are 80.00 mm (3.1496 in) wide
            """);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "29.7 | | ",
        "29.8 | warning | 29.80 mm (1.1732 in) wide and the work 29.70 mm (1.1693 in) at the least:"
            + " the vise may close on the spacer; measure, and take the spacer a little narrower",
        "30.3 | warning | 30.30 mm (1.1929 in) wide and the work 29.70 mm (1.1693 in) at the least:"
            + " the vise may close on the spacer; measure, and take the spacer a little narrower",
        "30.4 | error | 30.40 mm (1.1969 in) wide and the work 30.30 mm (1.1929 in): the vise closes"
            + " on the spacer and the work is loose",
      })
  void aSpacerThatIsTooWide(String width, String weight, String words) {
    String spacer = "spacer " + width + " at operator-left";
    assertThat(overhanging("overhang right 9, " + spacer).said("spacer-too-wide"))
        .isEqualTo(
            weight == null
                ? ""
                : "%s spacer-too-wide at `%s`: the spacer is %s\n".formatted(weight, spacer, words)
                    + "  see `size 60 x 30 x 21`: the work's size comes from here\n");
  }

  /** Standing out 15, 45 are gripped, a third is 15; the height is 20.7 at the least. */
  @ParameterizedTest
  @CsvSource({"15, ''", "16, 14.667 mm (0.5774 in)"})
  void howFarWorkMayStandOut(String overhang, String limit) {
    BenchPlan plan = overhanging("overhang right " + overhang);
    assertThat(plan.said("overhang-too-long"))
        .isEqualTo(
            limit.isEmpty()
                ? ""
                : """
                warning overhang-too-long at `overhang right 16`: the work stands out 16.00 mm (0.6299\
                 in); beyond %s (a third of the gripped length, and not more than the height) it springs\
                 and chatters
                  see `V80`: the jaws are 80.00 mm (3.1496 in) wide
                """
                    .formatted(limit));
    assertThat(overhanging("overhang right 70").said("overhang-too-long"))
        .isEqualTo(
            """
            error overhang-too-long at `overhang right 70`: nothing of the work is between the jaws
              see `V80`: the jaws are 80.00 mm (3.1496 in) wide
            """);
  }

  /** Long work at both ends is cut at one: the other end may stand out. */
  @Test
  void onlyTheEndThatIsCutMatters() {
    assertThat(overhanging("overhang left 25").said("overhang-too-long")).isEmpty();
  }

  /** The first cut with the cutter's side tells; facing does not ask for a true vise. */
  @Test
  void aViseThatWasNotTrued() {
    BenchPlan bar = BenchPlan.of("100 x 30 x 21", "milled back", "drawn front top bottom", SAWN);
    String hold = HOLD + ", bar 8 at mid-grip";
    String line = "clean right at 0.5, at most 1.5, conventional";
    assertThat(bar.end(hold, "right", "set z 23 below top", line).said("vise-not-trued"))
        .isEqualTo(
            """
            warning vise-not-trued at `%s`: this face gets its direction from the table, and `V80` was\
             not set true to it; true it with an indicator first: `true V80 with INSTRUMENT`
              see `hold in V80, up top, fixed back, on pair P6x10, bar 8 at mid-grip`: the work is held\
             here
            """
                .formatted(line));
    assertThat(bar.face(hold, "top", CUT).said("vise-not-trued")).isEmpty();
  }

  /** Two of 6 beside work of 6 and a parallel beside it, or with a bar. */
  @Test
  void whatStandsBesideTheWorkCounts() {
    BenchPlan thin = BenchPlan.of("60 x 5.5 x 22", DRAWN, SAWN);
    assertThat(
            thin.face("up top, fixed back, on pair P6x10, beside P6x10", "top", CUT)
                .said("grips-parallels"))
        .contains("; take thinner ones")
        .contains("the work and what stands beside it 11.20 mm (0.4409 in)")
        .doesNotContain("beside P6x10`:");
    assertThat(
            BenchPlan.of("60 x 12 x 22", DRAWN, SAWN)
                .face("up top, fixed back, on pair P6x10, bar 0.2", "top", CUT)
                .said("grips-parallels"))
        .contains("the work and what stands beside it 11.90 mm (0.4685 in) at the least;");
  }

  /**
   * Where the drawing wants the faces at the jaws parallel and the plan never makes them so, that
   * is the mistake; then the bar is not asked for as well.
   */
  @ParameterizedTest
  @CsvSource({
    "'', true",
    "parallel front to back 0.05, false",
    "square all 0.05, false",
    "parallel left to right 0.05, true",
    "square top to back 0.05, true",
  })
  void aBarWhereTheFacesAreToBeParallel(String callout, boolean found) {
    BenchPlan plan = BenchPlan.of("60 x 30 x 22", "milled front back", "cast top bottom", SAWN);
    BenchPlan asked = callout.isEmpty() ? plan : plan.part(callout);
    assertThat(asked.face(HOLD, "top", CUT).said("bar-missing").isEmpty()).isEqualTo(!found);
    // A raw face at the moving jaw wants its bar in any case.
    BenchPlan raw = BenchPlan.of("60 x 30 x 22", "milled back", "cast front top bottom", SAWN);
    BenchPlan rawAsked = callout.isEmpty() ? raw : raw.part(callout);
    assertThat(rawAsked.face(HOLD, "top", CUT).said("bar-missing")).isNotEmpty();
  }

  @Test
  void burrsAgainstAPlate() {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 21", "sawn back", "milled bottom front")
            .with("\nown angle-plate AP\n  width: 100\n  height: 80\n")
            .setup("hold on angle-plate AP, up top, fixed back");
    assertThat(plan.said("burr-under-work"))
        .isEqualTo(
            """
            warning burr-under-work at `hold on angle-plate AP, up top, fixed back`: the back against the\
             plate still has burrs on its edges; take them off first: `deburr edges of back`
              see `back`: the burrs come from here
            """);
  }
}
