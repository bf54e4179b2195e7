package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned.Screw;
import org.handwheel.units.Length;
import org.handwheel.work.Dial.Rounding;
import org.handwheel.work.Dial.Turn;
import org.handwheel.work.DialMove.Loading;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMove.Stop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The dials of the cuts of a plan.
 *
 * <p>Source: arithmetic; order of touching and winding, Modern Metalworking p. 469; rounding toward
 * metal left on and taking up backlash, common practice, no source.
 */
class DialMovesTests {
  private static final String HOLD =
      "hold in V80, up top, fixed back, on pair P6x10\ncutter FC40\n";
  private static final String TOUCH = "touch top with paper 0.05, zero z\n";

  private static List<DialMove> top(String machine, String lines) {
    return Worked.block().on(machine).setup("a", HOLD + TOUCH + lines).dials();
  }

  private static DialMove last(List<DialMove> moves) {
    return moves.get(moves.size() - 1);
  }

  private static List<Integer> divisions(DialMove move) {
    return move.stops().stream().map(stop -> stop.divisions().intValue()).toList();
  }

  private static Length mm(String value) {
    return Length.mm(value);
  }

  // ---- From the touch

  @Test
  void aSkimIsCountedFromThePaperAndNeverGoesTooDeep() {
    DialMove move = last(top(Worked.INCH_MILL, "clean top at 0.4, at most 1.2"));

    assertThat(move.axis()).isEqualTo(Axis.Z);
    assertThat(move.distance()).isEqualTo(mm("1.25"));
    // 0.45, 0.85 and 1.25 mm are 17.7, 33.5 and 49.2 thou.
    assertThat(divisions(move)).containsExactly(17, 33, 49);
    assertThat(move.last().turns()).isZero();
    assertThat(move.last().reading()).isEqualByComparingTo("49");
    assertThat(move.last().readingDown()).isEqualByComparingTo("51");
    assertThat(move.last().error()).isEqualTo(mm("-0.0054"));
    assertThat(move.last().reached()).isEqualTo(Length.inches("0.049"));
    assertThat(move.wind().divisions()).isEqualTo(BigFraction.of(49));
    assertThat(move.start()).isInstanceOf(Start.Touch.class);
    assertThat(move.start().size()).isEqualTo(mm("24.5"));
    assertThat(move.start().origin().text()).contains("touch top");
    assertThat(move.cut().face().word()).isEqualTo("top");
  }

  @Test
  void roughingGoesFromTheTouchedFaceInPasses() {
    DialMove move = last(top(Worked.INCH_MILL, "rough top to height leaving 0.25, pass 0.5"));

    // 24.5 less 20.975 less 0.25, and the paper: 3.325 mm are 130.9 thou.
    assertThat(move.distance()).isEqualTo(mm("3.325"));
    assertThat(divisions(move)).containsExactly(21, 41, 61, 80, 100, 120, 130);
    assertThat(move.last().turns()).isEqualTo(1);
    assertThat(move.last().reading()).isEqualByComparingTo("30");
    assertThat(move.last().readingDown()).isEqualByComparingTo("70");
    assertThat(move.last().error().isNegative()).isTrue();
  }

  @Test
  void countedPassesStopWhereTheyEnd() {
    assertThat(divisions(last(top(Worked.INCH_MILL, "rough top to 22 by 3 passes of 0.5"))))
        .containsExactly(21, 41, 61);
    assertThat(divisions(last(top(Worked.INCH_MILL, "rough top to 24 by 3 passes of 0.5"))))
        .containsExactly(21);
    assertThat(divisions(last(top(Worked.INCH_MILL, "rough top to 23.5, one pass"))))
        .containsExactly(41);
    // More than a hundred passes are told by the last.
    assertThat(last(top(Worked.INCH_MILL, "rough top to 22, pass 0.02")).stops()).hasSize(1);
  }

  @Test
  void aMeasurementAfterTheTouchSaysWhatWasTouched() {
    List<DialMove> moves =
        Worked.block()
            .setup("a", HOLD + TOUCH + "measure height with mic\nrough top to 24, one pass")
            .log("in a: read height 24.61 with mic")
            .dials();

    assertThat(last(moves).start().size()).isEqualTo(mm("24.61"));
    assertThat(last(moves).distance()).isEqualTo(mm("0.66"));
  }

  @Test
  void twoCutsFromOneTouchAreBothCountedFromIt() {
    DialMove move =
        last(top(Worked.INCH_MILL, "rough top to 24, one pass\nrough top to 23, one pass"));

    assertThat(move.distance()).isEqualTo(mm("1.55"));
    assertThat(move.start().size()).isEqualTo(mm("24.5"));
  }

  // ---- From the reading at which the size was cut

  private static final String TO_SIZE =
      """
      rough top to height leaving 0.25, pass 0.5
      deburr all edges
      measure height with mic
      finish top to height
      """;

  @Test
  void afterAMeasurementTheRestIsWoundFromTheReadingOfTheCut() {
    List<DialMove> moves = top(Worked.INCH_MILL, TO_SIZE);
    DialMove finish = last(moves);
    Start.LastCut start = (Start.LastCut) finish.start();

    assertThat(start.size()).isEqualTo(mm("21.225"));
    assertThat(start.reading()).isEqualTo(moves.get(0).last());
    assertThat(finish.distance()).isEqualTo(mm("0.25"));
    // From 130 divisions: 3.302 and 0.25 are 3.552 mm or 139.84 thou; nearest 140.
    assertThat(divisions(finish)).containsExactly(140);
    assertThat(finish.last().error()).isEqualTo(mm("0.004"));
    assertThat(finish.wind().divisions()).isEqualTo(BigFraction.of(10));
    assertThat(finish.wind().error()).isEqualTo(mm("0.004"));
    assertThat(finish.loading()).isEqualTo(Loading.SAME_SIDE);
  }

  @Test
  void theReadingOfThePieceDecidesHowFarToWind() {
    List<DialMove> moves =
        Worked.block()
            .setup("a", HOLD + TOUCH + TO_SIZE)
            .log("in a: read height 21.31 21.33 with mic")
            .dials();

    assertThat(last(moves).start().size()).isEqualTo(mm("21.32"));
    assertThat(last(moves).distance()).isEqualTo(mm("0.345"));
    // 3.302 and 0.345 are 143.58 thou: nearest 144, 14 more than 130.
    assertThat(last(moves).wind().divisions()).isEqualTo(BigFraction.of(14));
    assertThat(last(moves).last().turns()).isEqualTo(1);
    assertThat(last(moves).last().reading()).isEqualByComparingTo("44");
  }

  @Test
  void theReadingAfterASkimIsTheOperators() {
    DialMove move =
        last(
            top(
                Worked.INCH_MILL,
                "clean top at 0.4, at most 1.2\nmeasure height with mic\n"
                    + "rough top to 23, pass 0.5"));

    assertThat(((Start.LastCut) move.start()).reading()).isNull();
    // 24.5 less 0.8 as the middle of the skims, down to 23.
    assertThat(move.distance()).isEqualTo(mm("0.7"));
    assertThat(divisions(move)).containsExactly(19, 27);
    // What follows it is relative too.
    DialMove next =
        last(
            top(
                Worked.INCH_MILL,
                "clean top at 0.4, at most 1.2\nmeasure height with mic\n"
                    + "rough top to 23, pass 0.5\nmeasure height with mic\nfinish top to 22.5"));
    assertThat(((Start.LastCut) next.start()).reading()).isNull();
    assertThat(next.distance()).isEqualTo(mm("0.5"));
  }

  @Test
  void aDialSetToZeroAtTheLastCutCountsFromThere() {
    DialMove move =
        last(
            top(
                Worked.INCH_MILL,
                "clean top at 0.4, at most 1.2\nmeasure height with mic\nzero z\n"
                    + "rough top to 23, one pass"));
    Stop reading = ((Start.LastCut) move.start()).reading();

    assertThat(reading.divisions()).isEqualTo(BigFraction.ZERO);
    assertThat(divisions(move)).containsExactly(27);
  }

  @Test
  void aNewTouchStartsTheCountAgain() {
    DialMove move =
        last(
            top(
                Worked.INCH_MILL,
                "rough top to 23, one pass\nmeasure height with mic\n"
                    + TOUCH
                    + "measure height with mic\nfinish top to 22.5"));

    assertThat(move.start()).isInstanceOf(Start.Touch.class);
    assertThat(move.distance()).isEqualTo(mm("0.55"));
  }

  // ---- Which way

  @Test
  void aQuillGoesWithTheCutterAndClockwiseAsTheShopSays() {
    DialMove move = last(top(Worked.INCH_MILL, "clean top at 0.4, at most 1.2"));

    assertThat(move.cutter()).isEqualTo(Direction.DOWN);
    assertThat(move.moved()).isEqualTo(Direction.DOWN);
    assertThat(move.handle()).isEqualTo(Direction.OPERATOR_RIGHT);
    assertThat(move.turn()).isEqualTo(Turn.CLOCKWISE);
    // 6 thou of backlash and a quarter of a turn.
    assertThat(move.takeUp()).isEqualTo(Length.inches("0.031"));
    assertThat(move.loading()).isEqualTo(Loading.SAME_SIDE);
    // 0.0054 of rounding, half a division of reading, 0.01 of touch.
    assertThat(move.doubt()).isEqualTo(mm("0.0281"));
  }

  @Test
  void aKneeGoesAgainstTheCutter() {
    DialMove move = last(top(Worked.METRIC_MILL, "clean top at 0.4, at most 1.2"));

    assertThat(move.cutter()).isEqualTo(Direction.DOWN);
    assertThat(move.moved()).isEqualTo(Direction.UP);
    assertThat(move.turn()).isEqualTo(Turn.CLOCKWISE);
    // 1.25 mm on a screw of 1.25: one turn exactly.
    assertThat(move.last().turns()).isEqualTo(1);
    assertThat(move.last().reading()).isEqualByComparingTo("0");
    assertThat(move.last().readingDown()).isEqualByComparingTo("0");
    assertThat(move.last().error()).isEqualTo(Length.ZERO);
  }

  private static Worked end(String machine, String face, String touch) {
    return Worked.block()
        .on(machine)
        .setup(
            "a",
            "hold in V80, up top, fixed back, on pair P6x10\ncutter EM16\n"
                + touch
                + ("\nset z 20 below top\nrough " + face + " to 58, pass 2"));
  }

  @ParameterizedTest
  @CsvSource({
    // face, cutter goes, table goes, turn of the handle at the left whose clockwise sends it left
    "right, OPERATOR_LEFT, OPERATOR_RIGHT, COUNTER_CLOCKWISE",
    "left, OPERATOR_RIGHT, OPERATOR_LEFT, CLOCKWISE"
  })
  void theTableGoesAgainstTheCutter(String face, Direction cutter, Direction moved, Turn turn) {
    DialMove move =
        last(end(Worked.INCH_MILL, face, "touch " + face + " with paper 0.05, zero x").dials());

    assertThat(move.axis()).isEqualTo(Axis.X);
    assertThat(move.cutter()).isEqualTo(cutter);
    assertThat(move.moved()).isEqualTo(moved);
    assertThat(move.turn()).isEqualTo(turn);
    assertThat(move.handle()).isEqualTo(Direction.OPERATOR_LEFT);
    assertThat(move.distance()).isEqualTo(mm("2.05"));
  }

  @Test
  void whatTheShopDoesNotSayIsNotGuessed() {
    DialMove move =
        last(end(Worked.METRIC_MILL, "right", "touch right with paper 0.05, zero x").dials());

    assertThat(move.turn()).isNull();
    assertThat(move.handle()).isNull();
    // 2.05 mm are 102.5 divisions of 0.02: short of it.
    assertThat(move.last().divisions()).isEqualTo(BigFraction.of(102));
  }

  @Test
  void halfADivisionIsSetOnlyWhereTheShopSaysItCanBeRead() {
    String readable = Worked.METRIC_MILL.replace("lead-x", "readable-x: 1/2\n  lead-x");
    DialMove move = last(end(readable, "right", "touch right with paper 0.05, zero x").dials());

    assertThat(move.last().divisions()).isEqualTo(BigFraction.of(205, 2));
    assertThat(move.last().reading()).isEqualByComparingTo("2.5");
    assertThat(move.last().error()).isEqualTo(Length.ZERO);
    // A quarter of a division of reading and the touch.
    assertThat(move.doubt()).isEqualTo(mm("0.015"));
  }

  // ---- From an edge that was found

  @Test
  void fromAFoundEdgeTheCutterStandsOffByItsRadius() {
    DialMove move =
        last(
            end(
                    Worked.INCH_MILL,
                    "left",
                    "find left from operator-left with finder F5, zero x at edge")
                .dials());

    assertThat(move.start()).isInstanceOf(Start.Edge.class);
    // 60 to 58 is 2 past the edge, the axis 8 before that.
    assertThat(move.distance()).isEqualTo(mm("-6"));
    assertThat(move.loading()).isEqualTo(Loading.SAME_SIDE);
    // -6 mm are -236.2 thou: short of it is -237, 2 turns and 37 back, collar at 63 of the third.
    assertThat(move.last().divisions()).isEqualTo(BigFraction.of(-237));
    assertThat(move.last().turns()).isEqualTo(-3);
    assertThat(move.last().reading()).isEqualByComparingTo("63");
    assertThat(move.last().readingDown()).isEqualByComparingTo("37");
    assertThat(move.last().error().isNegative()).isTrue();
  }

  @Test
  void aZeroAtTheTouchOfTheFinderIsHalfItsTipOff() {
    DialMove move =
        last(
            end(
                    Worked.INCH_MILL,
                    "left",
                    "find left from operator-left with finder F5, zero x at touch")
                .dials());

    assertThat(move.distance()).isEqualTo(mm("-3.46"));
  }

  @Test
  void theOtherEndIsReachedAgainstTheLoadedSide() {
    DialMove edge =
        last(
            end(
                    Worked.INCH_MILL,
                    "right",
                    "find left from operator-left with finder F5, zero x at edge")
                .dials());
    DialMove touch =
        last(
            end(
                    Worked.INCH_MILL,
                    "right",
                    "find left from operator-left with finder F5, zero x at touch")
                .dials());

    // The wall ends 58 from the left edge and the axis 8 outside it, counted toward the left.
    assertThat(edge.distance()).isEqualTo(mm("-66"));
    assertThat(edge.loading()).isEqualTo(Loading.OTHER_SIDE);
    assertThat(touch.distance()).isEqualTo(mm("-68.54"));
    // 8 thou and a quarter of a turn.
    assertThat(edge.takeUp()).isEqualTo(Length.inches("0.033"));
  }

  @Test
  void anEdgeFoundFromNoSideSaysNothingOfTheBacklash() {
    DialMove move = last(end(Worked.INCH_MILL, "left", "find left with dti, zero x").dials());

    assertThat(move.loading()).isEqualTo(Loading.UNKNOWN);
    assertThat(move.distance()).isEqualTo(mm("-6"));
  }

  @Test
  void whereNothingIsToCountFromThereIsNoMove() {
    assertThat(end(Worked.INCH_MILL, "left", "zero x").dials()).isEmpty();
    assertThat(end(Worked.INCH_MILL, "left", "note \"no zero\"").dials()).isEmpty();
    assertThat(end(Worked.INCH_MILL, "left", "touch right with paper 0.05, zero x").dials())
        .isEmpty();
    assertThat(end(Worked.INCH_MILL, "left", "find front from operator-front, zero x").dials())
        .isEmpty();
    assertThat(
            end(
                    Worked.INCH_MILL,
                    "left",
                    "touch left with paper 0.05, zero x\ncutter FC40\ncutter EM16")
                .dials())
        .isEmpty();
    assertThat(top("own machine bare\n  column: round\n", "clean top at 0.4, at most 1.2"))
        .isEmpty();
  }

  @Test
  void aMoveIsFoundByItsStep() {
    PlanRun run = Worked.block().setup("a", HOLD + TOUCH + "clean top at 0.4, at most 1.2").run();
    PlanRun.SetupRun setup = run.setups().get(0);

    assertThat(DialMoves.of(run, setup, 1)).isEmpty();
    assertThat(DialMoves.of(run, setup, 2)).contains(DialMoves.of(run).get(0));
  }

  // ---- Rounding

  @Test
  void aFinishingCutTakesTheNearestSettingInsideTheToleranceAndElseLeavesMetalOn() {
    String size = "length 56\nwidth 30\nheight 21.00 ";
    String lines = "finish top to 21.01";
    // 24.5 less 21.01 and the paper are 3.54 mm or 139.37 thou: nearest 139, size 21.019.
    DialMove wide =
        last(Worked.block().toward(size + "+-0.05").setup("a", HOLD + TOUCH + lines).dials());
    // To 21.00: 139.76 thou, nearest 140, size 20.994: below the limit.
    DialMove inside =
        last(
            Worked.block()
                .toward(size + "+-0.01")
                .setup("a", HOLD + TOUCH + "finish top to 21")
                .dials());
    DialMove outside =
        last(
            Worked.block()
                .toward(size + "+0.05/-0")
                .setup("a", HOLD + TOUCH + "finish top to 21")
                .dials());

    assertThat(divisions(wide)).containsExactly(139);
    assertThat(divisions(inside)).containsExactly(140);
    assertThat(divisions(outside)).containsExactly(139);
    assertThat(outside.last().error().isNegative()).isTrue();
  }

  @Test
  void inchesAndMillimetresSetTheSameDivisions() {
    Worked metric = Worked.block().setup("a", HOLD + TOUCH + "rough top to 22.86, pass 0.508");
    Worked inch =
        Worked.block()
            .setup(
                "a",
                HOLD + "touch top with paper 0.05, zero z\n" + "rough top to 0.9 in, pass 20 thou");

    assertThat(last(inch.dials()).stops()).isEqualTo(last(metric.dials()).stops());
    assertThat(last(inch.dials()).distance()).isEqualTo(last(metric.dials()).distance());
  }

  // ---- Laws of a stop

  @Provide
  Arbitrary<Screw> screws() {
    Arbitrary<Length> leads =
        Arbitraries.of(
            mm("2"),
            mm("1.25"),
            mm("1.5"),
            mm("2.5"),
            Length.inches("0.1"),
            Length.inches("0.0625"));
    Arbitrary<BigFraction> divisions =
        Arbitraries.of(
            BigFraction.of(100),
            BigFraction.of(50),
            BigFraction.of(125),
            BigFraction.of(125, 2),
            BigFraction.of(3937, 50));
    Arbitrary<BigFraction> readable =
        Arbitraries.of(BigFraction.ONE, BigFraction.of(1, 2), BigFraction.of(1, 4));
    return Combinators.combine(leads, divisions, readable)
        .as(
            (lead, perTurn, part) ->
                new Screw(Axis.X, lead, perTurn, Length.ZERO, null, null, null, part));
  }

  @Property(tries = 300)
  void aStopIsOffByNoMoreThanHalfOfWhatCanBeRead(
      @ForAll("screws") Screw screw,
      @ForAll @LongRange(min = -200_000_000_000L, max = 200_000_000_000L) long pm) {
    Stop stop = DialMoves.stop(new Length(pm), screw, Rounding.NEAREST);
    Stop shy = DialMoves.stop(new Length(pm), screw, Rounding.SHORT);

    // The division itself may be rounded to a picometre.
    double part = screw.lead().picometres() / screw.divisions().doubleValue();
    double grain = part * screw.readable().doubleValue();
    assertThat((double) stop.error().abs().picometres()).isLessThanOrEqualTo(grain / 2 + 1);
    assertThat(shy.error().picometres()).isLessThanOrEqualTo(1);
    assertThat((double) -shy.error().picometres()).isLessThanOrEqualTo(grain + 1);
    assertThat(stop.divisions().divide(screw.readable()).getDenominatorAsInt()).isEqualTo(1);
  }

  @Property(tries = 300)
  void turnsAndReadingAddUpToTheDivisions(
      @ForAll("screws") Screw screw,
      @ForAll @LongRange(min = -200_000_000_000L, max = 200_000_000_000L) long pm) {
    Stop stop = DialMoves.stop(new Length(pm), screw, Rounding.NEAREST);
    double perTurn = screw.divisions().doubleValue();
    double reading = stop.reading().doubleValue();

    assertThat(stop.turns() * perTurn + reading)
        .isCloseTo(stop.divisions().doubleValue(), within(0.006));
    assertThat(reading).isBetween(0.0, perTurn);
    // Counting the other way round the collar the two readings make a whole turn, or both are 0.
    double both = reading + stop.readingDown().doubleValue();
    assertThat(reading == 0 ? 0 : perTurn).isCloseTo(both, within(0.011));
  }

  /** Check row B26 as a law: settings from one zero do not add up their rounding. */
  @Property(tries = 300)
  void countingFromZeroNeverAccumulates(
      @ForAll("screws") Screw screw,
      @ForAll @LongRange(min = 1_000_000_000L, max = 9_000_000_000L) long step) {
    Length grain = screw.lead().times(screw.divisions().reciprocal()).times(screw.readable());
    for (int i = 1; i <= 25; i++) {
      Length wanted = new Length(step).times(i);
      Stop stop = DialMoves.stop(wanted, screw, Rounding.NEAREST);
      assertThat(stop.reached().minus(wanted).abs().picometres())
          .isLessThanOrEqualTo(grain.half().picometres() + 2);
    }
  }

  @ParameterizedTest
  @CsvSource({
    // mm, divisions a turn, turns, reading: a screw of 2 mm
    "5, 62.5, 2, 31",
    "4, 62.5, 2, 0",
    "-1, 62.5, -1, 31.5",
    "3, 78.74, 1, 39.26",
    "-0.5, 100, -1, 75"
  })
  void aTurnNeedNotBeAWholeNumberOfDivisions(
      String distance, String perTurn, long turns, String reading) {
    BigFraction divisions =
        BigFraction.of(new BigDecimal(perTurn).movePointRight(2).longValueExact(), 100);
    Screw screw =
        new Screw(Axis.X, mm("2"), divisions, Length.ZERO, null, null, null, BigFraction.ONE);
    Stop stop = DialMoves.stop(mm(distance), screw, Rounding.NEAREST);

    assertThat(stop.turns()).isEqualTo(turns);
    assertThat(stop.reading()).isEqualByComparingTo(reading);
  }

  @Test
  void aSenselessPartOfADivisionCountsAsAWholeOne() {
    Screw screw =
        new Screw(
            Axis.X, mm("2"), BigFraction.of(100), Length.ZERO, null, null, null, BigFraction.ZERO);

    assertThat(DialMoves.stop(mm("0.05"), screw, Rounding.SHORT).divisions())
        .isEqualTo(BigFraction.of(2));
  }

  /**
   * What is left after a reading: 22.6 to 22.0 are 0.6, whatever was expected. A cut counted from
   * the touch does not go by a reading, and a line that is no cut has none.
   */
  @Test
  void ifASizeWereRead() {
    PlanRun run =
        Worked.block()
            .setup(
                "one",
                """
                hold in V80, up top, fixed back, on pair P6x10
                cutter FC40
                touch top with paper 0.05, zero z
                rough top to 22.5, one pass
                measure height with mic
                finish top to 22
                """)
            .run();
    PlanRun.SetupRun setup = run.setups().get(0);
    assertThat(setup.steps()).hasSize(5);
    DialMove read = DialMoves.ifRead(run, setup, 4, Length.mm("22.6")).orElseThrow();
    assertThat(read.distance()).isEqualTo(Length.mm("0.6"));
    assertThat(DialMoves.of(run, setup, 4).orElseThrow().distance()).isEqualTo(Length.mm("0.5"));
    assertThat(DialMoves.ifRead(run, setup, 2, Length.mm("24.6"))).isEmpty();
    assertThat(DialMoves.ifRead(run, setup, 1, Length.mm("24.6"))).isEmpty();
  }
}
