package org.handwheel.work.hole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.hole.CoordinateTable.Operation;
import org.handwheel.work.hole.CoordinateTable.Result;
import org.handwheel.work.hole.CoordinateTable.Row;
import org.junit.jupiter.api.Test;

/**
 * Where coordinates begin and which way they count; sums of the sizes in the plan, done by hand.
 */
class AxisZeroTests {
  private static final String TWO =
      "hole a in top, dia 3, through, at (20, 15)\nhole b in top, dia 3, through, at (50, 25)";
  private static final String MILL = "own cutter EM10\n  kind: end-mill\n  dia: 10\n  flute: 25\n";

  private static List<CoordinateTable> tables(HoleTrial trial) {
    return Coordinates.all(trial.run());
  }

  private static Result.Rows rows(HoleTrial trial) {
    List<CoordinateTable> tables = tables(trial);
    return (Result.Rows) tables.get(tables.size() - 1).result();
  }

  private static String reason(HoleTrial trial) {
    List<CoordinateTable> tables = tables(trial);
    return ((Result.None) tables.get(tables.size() - 1).result()).reason();
  }

  private static List<String> names(Result.Rows rows) {
    return rows.rows().stream().map(row -> row.hole().name()).toList();
  }

  /** The axis of a cutter of 10 stands 5 and the paper's 0.05 off the face it touches. */
  @Test
  void fromAFaceThatTheCutterTouched() {
    Result.Rows rows =
        rows(
            HoleTrial.of(TWO)
                .with(MILL)
                .lines("cutter EM10", "touch left with paper 0.05, zero x", "drill a, b"));
    assertThat(names(rows)).containsExactly("a", "b");
    assertThat(rows.rows().get(0).x().at()).isEqualTo(Length.mm("25.05"));
    assertThat(rows.rows().get(0).y().at()).isEqualTo(Length.mm("15"));
    assertThat(rows.x().words()).startsWith("where EM10 touches the left, " + Length.mm("5.05"));
    assertThat(rows.x().counts()).isEqualTo(Direction.OPERATOR_RIGHT);
    assertThat(rows.x().arrives()).isEqualTo(Direction.OPERATOR_RIGHT);
    // From the right they count to the left: 60 - 20 + 5.05.
    Result.Rows right =
        rows(
            HoleTrial.of(TWO)
                .with(MILL)
                .lines("cutter EM10", "touch right with paper 0.05, zero x", "drill a, b"));
    assertThat(names(right)).containsExactly("b", "a");
    assertThat(right.rows().get(1).x().at()).isEqualTo(Length.mm("45.05"));
  }

  /**
   * With a tip of 5 half of it is 2.5: before the edge from outside, behind it from a jaw's side.
   */
  @Test
  void fromWhereAFinderTouched() {
    String find = "find left from %s with finder F, zero x at touch";
    Result.Rows outside =
        rows(HoleTrial.of(TWO).lines(find.formatted("operator-left"), "drill a, b"));
    assertThat(outside.rows().get(0).x().at()).isEqualTo(Length.mm("22.5"));
    assertThat(outside.x().lead()).isEqualTo(Length.mm("2.5"));
    Result.Rows inside =
        rows(HoleTrial.of(TWO).lines(find.formatted("operator-right"), "drill a, b"));
    assertThat(inside.x().lead()).isEqualTo(Length.mm("-2.5"));
    // The screw bore going to the left, so the holes come in that order.
    assertThat(inside.x().arrives()).isEqualTo(Direction.OPERATOR_LEFT);
    assertThat(inside.x().counts()).isEqualTo(Direction.OPERATOR_RIGHT);
    assertThat(names(inside)).containsExactly("b", "a");
    assertThat(inside.rows().get(1).x().at()).isEqualTo(Length.mm("17.5"));
    assertThat(inside.x().words())
        .isEqualTo(
            "where the finder touches the left, half its tip, " + Length.mm("2.5") + ", off");
    assertThat(outside.y().words()).isEqualTo("the front edge");
    assertThat(outside.y().lead()).isEqualTo(Length.ZERO);
  }

  @Test
  void anEdgeOfTheOtherAxisIsNoZero() {
    String why = "where the zero of x lies cannot be told from its line";
    assertThat(
            reason(
                HoleTrial.of(TWO)
                    .lines("find front from operator-front with finder F, zero x", "drill a")))
        .isEqualTo(why);
    assertThat(
            reason(
                HoleTrial.of(TWO)
                    .with(MILL)
                    .lines("cutter EM10", "touch front with paper 0.05, zero x", "drill a")))
        .isEqualTo(why);
    assertThat(reason(HoleTrial.of(TWO).lines("zero x", "drill a"))).isEqualTo(why);
  }

  @Test
  void aHolesCentreIsTheZeroOfAFeature() {
    HoleTrial trial =
        HoleTrial.of(
                "hole a in top, dia 3, through, at (10, 20)\n"
                    + "slot way in top, size 30 x 10, depth 3, at (15, 20)")
            .with(MILL + "own instrument dti\n  kind: indicator\n  resolution: 0.01 mm\n")
            .lines(
                "drill a",
                "find centre of a with dti, zero x y",
                "cutter EM10",
                "slot way with EM10, pass 1");
    FeatureTable table = FeatureTable.all(trial.run()).get(0);
    // The slot begins at the left: out by the radius and 2, so 7 before the edge; its end at 30
    // less the radius. Counted from 10.
    assertThat(table.rows().get(0).x().asked()).isEqualTo(Length.mm("-17"));
    assertThat(table.rows().get(1).x().asked()).isEqualTo(Length.mm("15"));
    assertThat(table.rows().get(0).y().asked()).isEqualTo(Length.ZERO);
  }

  @Test
  void whyThereIsNoZero() {
    String dials = "  lead-z: 2\n  divisions-z: 100\n";
    String onlyY = "own machine m\n  lead-y: 2\n  divisions-y: 100\n" + dials;
    assertThat(reason(HoleTrial.of(TWO).with(onlyY).lines("drill a")))
        .isEqualTo("the shop does not describe the machine's x dial");
    String round =
        "own machine m\n  column: round\n  lead-x: 2\n  divisions-x: 100\n"
            + "  lead-y: 2\n  divisions-y: 100\n"
            + dials;
    HoleTrial moved = HoleTrial.of(TWO).with(round).lines("move head up 40", "drill b, a");
    assertThat(reason(moved)).isEqualTo("the zero of x was lost");
    PlanRun run = moved.run();
    StepRun line = HoleTrial.drilled(run).get(0);
    assertThat(Coordinates.zero(run, HoleTrial.setup(run), line, Axis.X)).isNull();
    // Without coordinates the holes are named as the line names them.
    assertThat(tables(moved).get(0).operations().get(0).holes()).containsExactly("b", "a");
    PlanRun known = HoleTrial.of(TWO).lines("drill b, a").run();
    AxisZero zero =
        Coordinates.zero(known, HoleTrial.setup(known), HoleTrial.drilled(known).get(0), Axis.X);
    assertThat(zero).isNotNull();
    assertThat(zero.edge()).isNotNull();
    assertThat(tables(HoleTrial.of(TWO).lines("drill b, a")).get(0).operations().get(0).holes())
        .containsExactly("a", "b");
  }

  /** Backlash 0.1 and a quarter of a turn of 2 mm; a division of 0.02 mm is none of an inch. */
  @Test
  void whatTheScrewSays() {
    AxisZero metric = rows(HoleTrial.of(TWO).lines("drill a")).x();
    assertThat(metric.takeUp()).isEqualTo(Length.mm("0.6"));
    assertThat(metric.isInInches()).isFalse();
    String inch =
        "own machine m\n  lead-x: 0.1 in\n  divisions-x: 100\n  backlash-x: 8 thou\n"
            + "  handle-x: operator-left\n  clockwise-x: operator-left\n"
            + "  lead-y: 0.1 in\n  divisions-y: 100\n";
    AxisZero thou = rows(HoleTrial.of(TWO).with(inch).lines("drill a")).x();
    assertThat(thou.isInInches()).isTrue();
    assertThat(thou.takeUp()).isEqualTo(Length.inches("0.033"));
    // As coordinates grow the cutter goes to the right, so the table to the left.
    assertThat(thou.table()).isEqualTo(Direction.OPERATOR_LEFT);
  }

  // ---- The order, and what is done

  /**
   * With rising X the Y are 20, 5, 30, 10: 30 goes on behind 20 and 10 behind 5, so one way back is
   * enough. Behind 5 the 30 would leave the 10 alone, and there would be two.
   */
  @Test
  void holesGoOnBehindTheNearestBelow() {
    Result.Rows rows =
        rows(
            HoleTrial.of(
                    "hole a in top, dia 3, through, at (10, 20)\n"
                        + "hole b in top, dia 3, through, at (20, 5)\n"
                        + "hole c in top, dia 3, through, at (30, 30)\n"
                        + "hole d in top, dia 3, through, at (40, 10)")
                .lines("drill d, c, b, a"));
    assertThat(names(rows)).containsExactly("a", "c", "b", "d");
    assertThat(rows.rows().stream().map(Row::turnsRound))
        .containsExactly(
            java.util.Set.of(),
            java.util.Set.of(),
            java.util.Set.of(Axis.X, Axis.Y),
            java.util.Set.of());
    // Level with the one before is not back.
    Result.Rows level =
        rows(
            HoleTrial.of(
                    "hole a in top, dia 3, through, at (10, 20)\n"
                        + "hole b in top, dia 3, through, at (20, 20)\n"
                        + "hole c in top, dia 3, through, at (20, 10)")
                .lines("drill a, b, c"));
    assertThat(names(level)).containsExactly("a", "b", "c");
    assertThat(level.rows().get(2).turnsRound()).containsExactly(Axis.Y);
    assertThat(level.rows().get(2).x().step()).isEqualTo(Length.ZERO);
    assertThat(level.rows().get(2).y().step()).isEqualTo(Length.mm("-10"));
  }

  /** A dial of 0.02 mm stands 0.005 off 10.005, and 0.01 off 20.01 whichever way it is set. */
  @Test
  void theWorstThatRoundingLeaves() {
    assertThat(
            rows(HoleTrial.of("hole a in top, dia 3, through, at (10.005, 15)").lines("drill a"))
                .worstRounding())
        .isEqualTo(Length.mm("0.005"));
    assertThat(
            rows(HoleTrial.of("hole a in top, dia 3, through, at (10.005, 20.01)").lines("drill a"))
                .worstRounding())
        .isEqualTo(Length.mm("0.01"));
  }

  @Test
  void eachToolWithItsDepthOnTheDial() {
    List<Operation> operations =
        tables(
                HoleTrial.of(
                        "hole a in top, dia 10, depth 9, at (20, 15)\n"
                            + "hole b in top, dia 10, depth 9, at (50, 25)")
                    .lines("spot a, b", "drill b, a, 6 then 10"))
            .get(0)
            .operations();
    assertThat(operations).hasSize(3);
    assertThat(operations.get(0).stop()).isNull();
    assertThat(operations.get(1).bit().dia()).isEqualTo(Length.mm("6"));
    assertThat(operations.get(2).holes()).containsExactly("a", "b");
    // 9 and a point of 118 degrees, 5 / tan 59 = 3.0043: six turns of 2, to a dial of 0.02.
    Operation last = operations.get(2);
    assertThat(last.depth()).isEqualTo(Length.mm("9"));
    assertThat(last.tip().millimetres()).isCloseTo(12.0043, within(0.00005));
    assertThat(last.stop()).isNotNull();
    assertThat(last.stop().turns()).isEqualTo(6);
    assertThat(last.stop().reading()).isEqualByComparingTo("0");
    assertThat(last.through()).isFalse();
    // A machine without a Z dial has no stop.
    String noZ =
        "own machine m\n  lead-x: 2\n  divisions-x: 100\n  lead-y: 2\n  divisions-y: 100\n";
    assertThat(
            tables(HoleTrial.of(TWO).with(noZ).lines("drill a")).get(0).operations().get(0).stop())
        .isNull();
  }

  /** A new zero begins a new table, and each line is found in its own. */
  @Test
  void linesFromOtherZerosStandInTablesOfTheirOwn() {
    PlanRun run =
        HoleTrial.of(TWO)
            .lines(
                "spot a",
                "drill a",
                "find right from operator-right with finder F, zero x at edge",
                "drill b")
            .run();
    List<CoordinateTable> tables = Coordinates.all(run);
    assertThat(tables).hasSize(2);
    assertThat(tables.get(0).cuts()).hasSize(2);
    var second = tables.get(1).cuts().get(0);
    assertThat(Coordinates.of(run, HoleTrial.setup(run), second)).contains(tables.get(1));
    assertThat(((Result.Rows) tables.get(1).result()).rows().get(0).x().at())
        .isEqualTo(Length.mm("10"));
  }
}
