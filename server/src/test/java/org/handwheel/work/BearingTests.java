package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.work.Bearing.Ruler;
import org.handwheel.work.Obstacle.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What rules the lean, the tilt and the turn of held work.
 *
 * <p>Source: common practice, no source; seating, Modern Metalworking p. 460 and 469; the bar at
 * the moving jaw, teaching page and hobby article (check row B28).
 */
class BearingTests {
  private static final String MILLED =
      "size 60 x 33.5 x 24.5\nground top back bottom\ncast front\n";
  private static final String ALL_MILLED =
      "size 60 x 33.5 x 24.5\nground top front back bottom left right\n";
  private static final String TIGHT = "seat tapped, both parallels tight\n";
  private static final String CUT =
      "cutter FC40\ntouch top with paper 0.05, zero z\nclean top at 0.1, at most 0.2";

  /** Makes front and back parallel and both square to the bottom. */
  private static Worked trued() {
    return Worked.block()
        .from(ALL_MILLED)
        .setup(
            "a",
            """
            hold in V80, up back, fixed bottom, on pair P6x10, bar 8 at mid-grip
            cutter FC40
            touch back with paper 0.05, zero z
            clean back at 0.1, at most 0.2
            deburr all edges
            """)
        .setup(
            "b",
            """
            hold in V80, up front, fixed bottom, on pair P6x10, bar 8 at mid-grip
            seat tapped, both parallels tight
            touch front with paper 0.05, zero z
            clean front at 0.1, at most 0.2
            deburr all edges
            """);
  }

  private static Bearing of(String stock, String hold, String seat) {
    return Worked.block()
        .from(stock + (stock.contains("left") ? "" : "sawn left right"))
        .setup("a", "hold in V80, up top, fixed back, " + hold + "\n" + seat + CUT)
        .lastBearing();
  }

  @Test
  void twoParallelFacesAndAProvedSeatRuleTogether() {
    Bearing bearing =
        trued()
            .setup("c", "hold in V80, up top, fixed back, on pair P6x10\n" + TIGHT + CUT)
            .lastBearing();

    assertThat(bearing.lean()).isEqualTo(Ruler.BOTH);
    assertThat(bearing.tilt()).isEqualTo(Ruler.SEAT);
    assertThat(bearing.turn()).isEqualTo(Ruler.NONE);
    assertThat(bearing.plan().kind()).isEqualTo(Kind.NOT_TRUED);
    assertThat(bearing.jaw()).isNull();
    assertThat(bearing.seat()).isNull();
  }

  @Test
  void aTrueViseRulesTheTurn() {
    Bearing bearing =
        trued()
            .setup(
                "c",
                "true V80 with dti\nhold in V80, up top, fixed back, on pair P6x10\n" + TIGHT + CUT)
            .lastBearing();

    assertThat(bearing.turn()).isEqualTo(Ruler.JAW);
    assertThat(bearing.plan()).isNull();
  }

  @Test
  void aBarDoesNotCureATaperSeenFromAbove() {
    Bearing bearing =
        Worked.block()
            .from(MILLED + "sawn left right")
            .setup(
                "a",
                "true V80 with dti\n"
                    + "hold in V80, up top, fixed back, on pair P6x10, bar 8 at mid-grip\n"
                    + CUT)
            .lastBearing();

    assertThat(bearing.lean()).isEqualTo(Ruler.JAW);
    assertThat(bearing.turn()).isEqualTo(Ruler.NONE);
    assertThat(bearing.plan().why()).contains("front at the moving jaw");
  }

  @Test
  void aRawFaceAtTheMovingJawNeedsABar() {
    Bearing without = of(MILLED, "on pair P6x10", "");
    Bearing with = of(MILLED, "on pair P6x10, bar 8 at mid-grip", "");
    Bearing high = of(MILLED, "on pair P6x10, bar 8 at 22", "");

    assertThat(without.jaw().kind()).isEqualTo(Kind.NO_BAR);
    assertThat(without.jaw().why()).contains("as cast");
    assertThat(without.lean()).isEqualTo(Ruler.NONE);
    assertThat(with.lean()).isEqualTo(Ruler.JAW);
    assertThat(high.jaw().kind()).isEqualTo(Kind.NO_BAR);
    assertThat(high.jaw().why()).contains("middle third");
  }

  @Test
  void aMachinedFaceThatIsNotKnownToBeParallelNeedsABarToo() {
    assertThat(of(ALL_MILLED, "on pair P6x10", "").jaw().why())
        .contains("not parallel to the fixed one");
  }

  @Test
  void aRawFaceOnTheFixedJawRulesNothing() {
    Bearing bearing =
        of("size 60 x 33.5 x 24.5\ncast back\nground top bottom\n", "on pair P6x10", TIGHT);

    assertThat(bearing.jaw().kind()).isEqualTo(Kind.RAW_FIXED);
    assertThat(bearing.plan().kind()).isEqualTo(Kind.RAW_FIXED);
    // Gripped 15 deep and only 33 wide the work follows the seat: twice the grip.
    assertThat(bearing.lean()).isEqualTo(Ruler.SEAT);
    assertThat(bearing.tilt()).isEqualTo(Ruler.SEAT);
  }

  @Test
  void aNarrowBaseDoesNotRuleAgainstARawJaw() {
    Bearing bearing =
        of("size 60 x 28 x 24.5\ncast back\nground top bottom\n", "on pair P6x10", TIGHT);

    assertThat(bearing.lean()).isEqualTo(Ruler.NONE);
    assertThat(bearing.tilt()).isEqualTo(Ruler.SEAT);
  }

  @ParameterizedTest
  @CsvSource({
    "'', SEAT_NOT_PROVED",
    "'seat tapped', SEAT_NOT_PROVED",
    "'seat both parallels tight', SEAT_NOT_PROVED",
    "'seat tapped, both parallels tight', "
  })
  void aPairOfParallelsIsProvedByTapAndTightness(String seat, Kind kind) {
    Bearing bearing = of(MILLED, "on pair P6x10, bar 8 at mid-grip", seat + "\n");

    assertThat(bearing.seat() == null ? null : bearing.seat().kind()).isEqualTo(kind);
    assertThat(bearing.tilt()).isEqualTo(kind == null ? Ruler.SEAT : Ruler.NONE);
  }

  @Test
  void theBedNeedsOnlyTheTap() {
    assertThat(of(MILLED, "on bed, bar 8 at 12", "seat tapped\n").seat()).isNull();
    assertThat(of(MILLED, "on bed, bar 8 at 12", "").seat().kind()).isEqualTo(Kind.SEAT_NOT_PROVED);
  }

  @Test
  void aSoftStripAndASingleParallelDoNotRule() {
    assertThat(of(MILLED, "on soft-strip 1.6, bar 8 at mid-grip", TIGHT).seat().why())
        .contains("soft strip");
    // On a single parallel the work can lean over it, whatever the seat says.
    assertThat(of(MILLED, "on one P6x10, bar 8 at mid-grip", TIGHT).lean()).isEqualTo(Ruler.JAW);
  }

  @Test
  void aBarAgainstAParallelFaceKeepsTheWorkFromSeating() {
    Bearing bearing =
        trued()
            .setup(
                "c",
                "hold in V80, up top, fixed back, on pair P6x10, bar 8 at mid-grip\n" + TIGHT + CUT)
            .lastBearing();

    assertThat(bearing.seat().kind()).isEqualTo(Kind.BAR_NOT_NEEDED);
    assertThat(bearing.lean()).isEqualTo(Ruler.JAW);
    assertThat(bearing.tilt()).isEqualTo(Ruler.NONE);
  }

  @Test
  void burrsSpoilAReference() {
    String hold = "hold in V80, up top, fixed back, on pair P6x10\n" + TIGHT + CUT;
    Bearing bearing =
        trued()
            .setup(
                "c",
                """
                hold in V80, up bottom, fixed back, on pair P6x10
                cutter FC40
                touch bottom with paper 0.05, zero z
                clean bottom at 0.1, at most 0.2
                """)
            .setup("d", hold)
            .lastBearing();

    assertThat(bearing.seat().kind()).isEqualTo(Kind.BURR);
    assertThat(bearing.seat().why()).contains("bottom").contains("burrs");
    assertThat(bearing.seat().origin().text()).contains("clean bottom");
  }

  @Test
  void aRawFaceUnderneathDoesNotRule() {
    Bearing bearing =
        of(
            "size 60 x 33.5 x 24.5\nground top back\ncast bottom front\n",
            "on pair P6x10, bar 8 at mid-grip",
            TIGHT);

    assertThat(bearing.seat().kind()).isEqualTo(Kind.RAW_UNDER);
    assertThat(bearing.lean()).isEqualTo(Ruler.JAW);
  }

  @Test
  void aGripTooLowLeavesTheJawWithoutSay() {
    // 25 - 20 = 5 gripped: less than 6 and less than a third of 24.8.
    assertThat(of(MILLED, "on soft-strip 20, bar 8 at mid-grip", "").jaw().kind())
        .isEqualTo(Kind.LOW_GRIP);
    assertThat(of(MILLED, "on soft-strip 19, bar 8 at mid-grip", "").jaw()).isNull();
  }

  @Test
  void looseWorkIsRuledByNothing() {
    Bearing bearing =
        of("size 60 x 32 x 24.5\nground top back bottom\ncast front\n", "on pair P16x5", TIGHT);

    assertThat(bearing.jaw().kind()).isEqualTo(Kind.LOOSE);
    assertThat(bearing.seat().kind()).isEqualTo(Kind.LOOSE);
    assertThat(bearing.plan().kind()).isEqualTo(Kind.LOOSE);
    assertThat(bearing.lean()).isEqualTo(Ruler.NONE);
    assertThat(bearing.tilt()).isEqualTo(Ruler.NONE);
  }

  @Test
  void workAtOneEndWithoutASpacerCocksTheJaw() {
    Bearing bearing =
        trued()
            .setup(
                "c",
                "true V80 with dti\n"
                    + "hold in V80, up top, fixed back, on pair P6x10, overhang right 9\n"
                    + TIGHT
                    + CUT)
            .lastBearing();

    assertThat(bearing.jaw().kind()).isEqualTo(Kind.COCKED);
    assertThat(bearing.plan().kind()).isEqualTo(Kind.COCKED);
    // The back is known to be square to the bottom, so the seat serves for both.
    assertThat(bearing.lean()).isEqualTo(Ruler.SEAT);
  }

  @Test
  void halfTheLengthHasToBeGrippedAndToLieOnTheParallels() {
    Bearing bearing =
        trued()
            .setup(
                "c",
                "true V80 with dti\n"
                    + "hold in V80, up top, fixed back, on pair S6x10, overhang right 35\n"
                    + TIGHT
                    + CUT)
            .lastBearing();

    assertThat(bearing.plan().why()).contains("less than half");
    assertThat(bearing.tilt()).isEqualTo(Ruler.NONE);
  }

  @Test
  void aSquareOnAGoodEndRulesTheTiltWhereTheSeatDoesNot() {
    String hold = "hold in V80, up top, fixed back, on soft-strip 1.6, bar 8 at mid-grip\n";
    String upright = "seat upright on right with square50\n";
    Bearing good = Worked.block().from(ALL_MILLED).setup("a", hold + upright + CUT).lastBearing();
    Bearing raw =
        Worked.block()
            .from(MILLED + "sawn left right")
            .setup("a", hold + upright + CUT)
            .lastBearing();
    Bearing across =
        Worked.block()
            .from(ALL_MILLED)
            .setup("a", hold + "seat upright on front with square50\n" + CUT)
            .lastBearing();

    assertThat(good.tilt()).isEqualTo(Ruler.SQUARE);
    assertThat(raw.tilt()).isEqualTo(Ruler.NONE);
    assertThat(raw.upright()).isNull();
    assertThat(across.tilt()).isEqualTo(Ruler.NONE);
  }

  @Test
  void clampedWorkLiesOnTheTable() {
    String hold = "hold on table, up top, clamp strap at (5, 15)\n" + CUT;
    Bearing good = Worked.block().from(ALL_MILLED).setup("a", hold).lastBearing();
    Bearing raw = Worked.block().setup("a", hold).lastBearing();

    assertThat(good.lean()).isEqualTo(Ruler.SEAT);
    assertThat(good.tilt()).isEqualTo(Ruler.SEAT);
    assertThat(good.turn()).isEqualTo(Ruler.NONE);
    assertThat(raw.lean()).isEqualTo(Ruler.NONE);
    assertThat(raw.seat().kind()).isEqualTo(Kind.RAW_UNDER);
  }

  @ParameterizedTest
  @CsvSource({
    // An angle plate rules the lean; what was not tapped down is not proved to sit on anything.
    "angle-plate AP, JAW, NONE",
    "v-block VB, NONE, NONE",
    "subplate S1, SEAT, SEAT",
    "table, SEAT, SEAT"
  })
  void onlyAFlatPlateRulesByWhatLiesOnIt(String rest, Ruler lean, Ruler tilt) {
    Bearing bearing =
        Worked.block()
            .from(ALL_MILLED)
            .setup("a", "hold on " + rest + ", up top, fixed back, clamp strap at (5, 15)\n" + CUT)
            .lastBearing();

    assertThat(bearing.lean()).isEqualTo(lean);
    assertThat(bearing.tilt()).isEqualTo(tilt);
    assertThat(bearing.seat() == null).isEqualTo(tilt == Ruler.SEAT);
  }

  /** The bound of readings decides whether the moving jaw can follow: 5 in 1000 here. */
  @ParameterizedTest
  @CsvSource({"33.50 33.60, ", "33.40 33.70, NO_BAR"})
  void facesReadNearlyParallelNeedNoBar(String readings, Kind kind) {
    Bearing bearing =
        Worked.block()
            .from(ALL_MILLED)
            .setup("a", "hold in V80, up top, fixed back, on pair P6x10\nmeasure width with mic")
            .setup("b", "hold in V80, up top, fixed back, on pair P6x10\n" + CUT)
            .log("in a: read width " + readings + " with mic")
            .lastBearing();

    assertThat(bearing.jaw() == null ? null : bearing.jaw().kind()).isEqualTo(kind);
  }
}
