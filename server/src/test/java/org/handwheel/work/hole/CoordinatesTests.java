package org.handwheel.work.hole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.handwheel.examples.ExampleFolder;
import org.handwheel.model.Axis;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.hole.CoordinateTable.Result;
import org.handwheel.work.hole.CoordinateTable.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From the drawing's places to what two dials show. */
class CoordinatesTests {
  private static PlanRun run(String text) throws IOException {
    PlanRun run =
        new Checker(StandardTables.builtIn())
            .check(
                Workspace.of(
                    SyntaxTree.parse("t.plan", text),
                    shop("shop/inch-mill.shop"),
                    shop("shop/metric-mill.shop")),
                "t.plan")
            .run();
    assertThat(run).isNotNull();
    return run;
  }

  private static SyntaxTree shop(String path) throws IOException {
    return SyntaxTree.parse(path, Files.readString(ExampleFolder.PATH.resolve(path)));
  }

  private static String plan(String holes, String finds, String steps) {
    return "language 1\nplan \"Trial\"\n  units mm\n  use \"shop/inch-mill.shop\"\n"
        + "part\n  length 60\n  width 40\n  height 20\n"
        + holes.strip().indent(2)
        + "stock\n  size 60 x 40 x 20\n  milled left right front back top bottom\n"
        + "setup one\n  hold in V80, up top, fixed back, on pair P3x10\n"
        + finds.strip().indent(2)
        + steps.strip().indent(2);
  }

  private static final String EDGES =
      "find left from operator-left with finder F5, zero x at edge\n"
          + "find front from operator-front with finder F5, zero y at edge";

  private static Result.Rows rows(String text) throws IOException {
    List<CoordinateTable> tables = Coordinates.all(run(text));
    assertThat(tables).hasSize(1);
    assertThat(tables.get(0).result()).isInstanceOf(Result.Rows.class);
    return (Result.Rows) tables.get(0).result();
  }

  /** X = R cos a, Y = R sin a from the circle's middle, R = 21 and a = 30, 90, ... degrees. */
  @Test
  void theFlangeEqualsTheFormulaToTheMicrometre() throws IOException {
    Result.Rows rows = rows(Files.readString(ExampleFolder.PATH.resolve("boiler-flange.plan")));
    double across = 21 * Math.sqrt(3) / 2;
    double[][] expected = {
      {30 + across, 40.5},
      {30, 51},
      {30 - across, 40.5},
      {30 - across, 19.5},
      {30, 9},
      {30 + across, 19.5}
    };
    int found = 0;
    for (Row row : rows.rows()) {
      if (row.hole().pattern() != null) {
        double[] place = expected[row.hole().number() - 1];
        assertThat(row.x().at().millimetres()).isCloseTo(place[0], within(1e-6));
        assertThat(row.y().at().millimetres()).isCloseTo(place[1], within(1e-6));
        found++;
      }
    }
    assertThat(found).isEqualTo(6);
  }

  /** The positions of a lubricator block worked out by hand in the notes of the trade. */
  @ParameterizedTest
  @CsvSource({
    "7.5, 2, 95, -0.0070",
    "24, 9, 45, 0.0030",
    "40.5, 15, 94, -0.0124",
  })
  void turnsAndDivisionsAreCountedFromZero(String at, long turns, String mark, double error)
      throws IOException {
    Result.Rows rows =
        rows(plan("hole a in top, dia 3, through, at (" + at + ", 16)", EDGES, "drill a"));
    var stop = rows.rows().get(0).x().stop();
    assertThat(stop.turns()).isEqualTo(turns);
    assertThat(stop.reading()).isEqualByComparingTo(mark);
    assertThat(stop.error().millimetres()).isCloseTo(error, within(0.0005));
  }

  @Test
  void atTheTouchHalfTheTipIsAdded() throws IOException {
    String touch = EDGES.replace("zero x at edge", "zero x at touch");
    String hole = "hole a in top, dia 3, through, at (24, 16)";
    Length edge = rows(plan(hole, EDGES, "drill a")).rows().get(0).x().at();
    Length atTouch = rows(plan(hole, touch, "drill a")).rows().get(0).x().at();
    assertThat(edge).isEqualTo(Length.mm("24"));
    assertThat(atTouch).isEqualTo(Length.mm("24").plus(Length.inches("0.1")));
  }

  @Test
  void fromTheRightEdgeCoordinatesGrowToTheLeft() throws IOException {
    String right = EDGES.replace("left from operator-left", "right from operator-right");
    Result.Rows rows =
        rows(
            plan(
                "hole a in top, dia 3, through, at (24, 16)\n"
                    + "hole b in top, dia 3, through, at (50, 16)",
                right,
                "drill a, b 3"));
    assertThat(rows.rows()).extracting(row -> row.hole().name()).containsExactly("b", "a");
    assertThat(rows.rows().get(1).x().at()).isEqualTo(Length.mm("36"));
    assertThat(rows.x().counts().words()).isEqualTo("left");
    assertThat(rows.x().table().words()).isEqualTo("right");
  }

  @Test
  void aHoleIsTheZeroOfOthers() throws IOException {
    String finds = EDGES.replace("\n", "\ndrill a\n") + "\nfind centre of a with dti, zero x y";
    String text =
        plan(
            "hole a in top, dia 3, through, at (20, 16)\n"
                + "hole b in top, dia 3, through, at (50, 10)",
            finds,
            "drill b");
    List<CoordinateTable> tables = Coordinates.all(run(text));
    CoordinateTable last = tables.get(tables.size() - 1);
    Row row = ((Result.Rows) last.result()).rows().get(0);
    assertThat(row.x().at()).isEqualTo(Length.mm("30"));
    assertThat(row.y().at()).isEqualTo(Length.mm("-6"));
    assertThat(row.turnsRound()).containsExactly(Axis.Y);
  }

  /** Whatever the order, no axis can go back less often: tried over all orders of five holes. */
  @Test
  void noOrderTurnsBackLessOften() throws IOException {
    String[][] sets = {
      {"10,10", "50,10", "10,30", "50,30", "30,20"},
      {"10,30", "20,25", "30,20", "40,15", "50,10"},
      {"10,10", "20,30", "30,15", "40,35", "50,5"}
    };
    for (String[] set : sets) {
      StringBuilder holes = new StringBuilder();
      StringBuilder names = new StringBuilder();
      for (int i = 0; i < set.length; i++) {
        String name = "h" + (char) ('a' + i);
        holes
            .append("hole ")
            .append(name)
            .append(" in top, dia 3, through, at (")
            .append(set[i])
            .append(")\n");
        names.append(i == 0 ? "" : ", ").append(name);
      }
      Result.Rows rows = rows(plan(holes.toString(), EDGES, "drill " + names + " 3"));
      long ours = rows.rows().stream().filter(row -> !row.turnsRound().isEmpty()).count();
      assertThat(ours).as(String.join(" ", set)).isEqualTo(fewest(points(set), List.of()));
    }
  }

  private static List<double[]> points(String[] set) {
    List<double[]> points = new ArrayList<>();
    for (String at : set) {
      int comma = at.indexOf(',');
      points.add(
          new double[] {
            Double.parseDouble(at.substring(0, comma)), Double.parseDouble(at.substring(comma + 1))
          });
    }
    return points;
  }

  private static long fewest(List<double[]> left, List<double[]> taken) {
    if (left.isEmpty()) {
      long back = 0;
      for (int i = 1; i < taken.size(); i++) {
        double[] a = taken.get(i - 1);
        double[] b = taken.get(i);
        back += b[0] < a[0] || b[1] < a[1] ? 1 : 0;
      }
      return back;
    }
    long best = Long.MAX_VALUE;
    for (double[] next : left) {
      List<double[]> rest = new ArrayList<>(left);
      rest.remove(next);
      List<double[]> more = new ArrayList<>(taken);
      more.add(next);
      best = Math.min(best, fewest(rest, more));
    }
    return best;
  }

  @Test
  void roundedStepsAreNotAddedUp() throws IOException {
    Result.Rows rows =
        rows(
            plan(
                "hole a in top, dia 1, through\n"
                    + "pattern p of a, row, count 9, at (5, 10), by (5.5, 0)",
                EDGES,
                "drill p 1"));
    for (Row row : rows.rows()) {
      Length half = Length.inches("0.0005");
      assertThat(row.x().stop().error().abs().isMoreThan(half)).isFalse();
    }
    long sum = rows.rows().stream().mapToLong(row -> row.x().wind().divisions().intValue()).sum();
    Row last = rows.rows().get(8);
    assertThat(sum).isEqualTo(last.x().stop().divisions().intValue());
  }

  @Test
  void withoutAZeroThereAreNoCoordinates() throws IOException {
    String text =
        plan(
            "hole a in top, dia 3, through, at (24, 16)",
            "find left from operator-left with finder F5, zero x at edge",
            "drill a");
    assertThat(Coordinates.all(run(text)).get(0).result())
        .isEqualTo(new Result.None("no edge or centre was found for y in this setup"));
  }

  // ---- What has been made of a hole

  private static HoleState state(String hole, String steps) throws IOException {
    return run(plan(hole, EDGES, steps)).end().holes().get("a");
  }

  @Test
  void aHoleGoesThroughItsStates() throws IOException {
    String shaft = "hole a in top, dia 12 H7, through, at (24, 16)";
    assertThat(state(shaft, "spot a").words()).isEqualTo("spotted");
    HoleState drilled = state(shaft, "spot a\ndrill a 8 then 11.8");
    assertThat(drilled.bore()).isEqualTo(Length.mm("11.8"));
    assertThat(drilled.through()).isTrue();
    assertThat(drilled.reamedBy()).isNull();
    HoleState reamed = state(shaft, "drill a 11.8\nream a");
    assertThat(reamed.bore()).isEqualTo(Length.mm("12"));
    assertThat(reamed.reamedBy()).isNotNull();
    HoleState tapped = state("hole a in top, M6, thread 7, at (24, 16)", "drill a\ntap a by hand");
    // Its tapping drill, three pitches beyond the thread.
    assertThat(tapped.bore()).isEqualTo(Length.mm("5"));
    assertThat(tapped.depth()).isEqualTo(Length.mm("10"));
    assertThat(tapped.thread()).isEqualTo(Length.mm("7"));
  }

  @Test
  void aDrillGoesDeeperByItsPoint() throws IOException {
    PlanRun run = run(plan("hole a in top, dia 10, depth 9, at (24, 16)", EDGES, "drill a 10"));
    HoleRun.Result result =
        run.steps()
            .flatMap(step -> step.holes() == null ? null : step.holes().results())
            .findFirst()
            .orElseThrow();
    assertThat(result.depth()).isEqualTo(Length.mm("9"));
    // 118 degrees: half the diameter over the tangent of 59 degrees, 3.0043 mm.
    assertThat(result.tip().millimetres()).isCloseTo(12.0043, within(0.00005));
    assertThat(run.end().removed()).hasSize(1);
    assertThat(run.end().removed().get(0).depth().high()).isEqualTo(Length.mm("9"));
    assertThat(run.end().removed().get(0).region().getArea()).isCloseTo(Math.PI * 25, within(0.2));
  }

  // ---- What it runs into

  @ParameterizedTest
  @CsvSource({"4.5, 1", "6.01, 0", "35.5, 1", "33.99, 0"})
  void aThroughHoleOverAParallelIsFound(String y, int hits) throws IOException {
    // Parallels 3 thick under a width of 40, a hole of 6: clear from 6 to 34.
    PlanRun run =
        run(plan("hole a in top, dia 6, through, at (24, " + y + ")", EDGES, "drill a 6"));
    var setup = run.setups().get(0);
    long found =
        setup.steps().stream()
            .flatMap(step -> HoleHits.of(run, setup, step).stream())
            .filter(hit -> hit.what() == HoleHits.What.PARALLEL)
            .count();
    assertThat(found).isEqualTo(hits);
  }

  @Test
  void holesOfTwoFacesMeetOrPassEachOther() throws IOException {
    String shaft = "hole a in top, dia 12, through, at (24, 16)\n";
    assertThat(crosses(shaft + "hole b in front, dia 4, depth 8, at (24, 10)")).isFalse();
    assertThat(crosses(shaft + "hole b in front, dia 4, depth 12, at (24, 10)")).isTrue();
    assertThat(crosses(shaft + "hole b in front, dia 4, depth 12, at (33, 10)")).isFalse();
    assertThat(
            crosses(
                "hole a in top, dia 12, depth 5, at (24, 16)\n"
                    + "hole b in front, dia 4, depth 12, at (24, 10)"))
        .isFalse();
  }

  private static boolean crosses(String holes) throws IOException {
    String text =
        plan(holes, EDGES, "drill a 12")
            + "setup two\n  hold in V80, up front, fixed top, on pair P3x10\n  drill b 4\n";
    PlanRun run = run(text);
    HoleRun.Result made =
        run.setups().get(1).steps().get(0).holes().results().findFirst().orElseThrow();
    DrawnHole a = run.setups().get(1).steps().get(0).holes().drawn().named("a").get(0);
    assertThat(Set.of(made.hole().name())).containsExactly("b");
    return Crossing.meets(made, a, Length.mm("12"));
  }
}
