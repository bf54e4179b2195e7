package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.handwheel.examples.ExampleFolder;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun;
import org.handwheel.work.Removed;
import org.handwheel.work.feature.CrankPath.Purpose;
import org.handwheel.work.feature.FeatureRun.Refusal;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.outline.StepTable;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Ways through slots and pockets, and corners, against a simulation of the cutter with JTS. The
 * shapes themselves are geometry and need no other source.
 */
class FeatureTableTests {
  private static final GeometryFactory PLANE = new GeometryFactory();

  private static PlanRun run(String drawn, String cut) throws IOException {
    String text =
        "language 1\nplan \"Trial\"\n  units mm\n  use \"shop/inch-mill.shop\"\n"
            + "part\n  length 60\n  width 40\n  height 20\n"
            + drawn.strip().indent(2)
            + "stock\n  size 60 x 40 x 20\n  milled left right front back top bottom\n"
            + "setup one\n  hold in V80, up top, fixed back, on pair P3x10\n"
            + "  find left from operator-left with finder F5, zero x at edge\n"
            + "  find front from operator-front with finder F5, zero y at edge\n"
            + cut.strip().indent(2);
    Path shop = ExampleFolder.PATH.resolve("shop").resolve("inch-mill.shop");
    PlanRun run =
        new Checker(StandardTables.builtIn())
            .check(
                Workspace.of(
                    SyntaxTree.parse("t.plan", text),
                    SyntaxTree.parse("shop/inch-mill.shop", Files.readString(shop))),
                "t.plan")
            .run();
    assertThat(run).isNotNull();
    return run;
  }

  private static FeatureTable table(PlanRun run) {
    List<FeatureTable> tables = FeatureTable.all(run);
    assertThat(tables).hasSize(1);
    return tables.get(0);
  }

  private static Geometry box(double x1, double y1, double x2, double y2) {
    return PLANE.toGeometry(new Envelope(x1, x2, y1, y2));
  }

  /** The way of the dials as they are really set, one handle after the other. */
  private static Geometry dialled(FeatureTable table) {
    List<Coordinate> way = new java.util.ArrayList<>();
    for (FeatureTable.Row row : table.rows()) {
      Coordinate here =
          new Coordinate(row.x().reached().millimetres(), row.y().reached().millimetres());
      if (row.first() != null) {
        Coordinate before = way.get(way.size() - 1);
        way.add(
            row.first() == org.handwheel.model.Axis.X
                ? new Coordinate(here.x, before.y)
                : new Coordinate(before.x, here.y));
      }
      way.add(here);
    }
    return PLANE.createLineString(way.toArray(Coordinate[]::new));
  }

  @Test
  void aPocketWithCornersAsTheCutterLeavesThem() throws IOException {
    FeatureTable table =
        table(
            run(
                "pocket well in top, size 30 x 17, depth 4, at (30, 20) from left front",
                "pocket well with SD6, pass 1"));
    Geometry swept = Plane.grown(dialled(table), 3);
    Geometry walls = box(15, 11.5, 45, 28.5);
    assertThat(swept.difference(walls).getArea()).as("never over a wall").isLessThan(0.001);
    double bound = table.bound().millimetres();
    // A dial of 0.001 in, set to whole divisions, leaves less than one on.
    assertThat(bound).isLessThanOrEqualTo(0.0254);
    Geometry reached = Plane.grown(Plane.grown(walls, -3 - bound), 3);
    assertThat(reached.difference(swept).getArea()).as("all taken out").isLessThan(0.01);
    assertThat(table.run().levels()).isEqualTo(4);
  }

  @Test
  void aCornerRounderThanTheCutterIsGoneRoundInsideItsBound() throws IOException {
    FeatureTable table =
        table(
            run(
                "pocket well in top, size 30 x 20, radius 6, depth 4, at (30, 20) from left front",
                "pocket well with SD6, cusp 0.05"));
    Geometry drawn = Plane.grown(box(21, 16, 39, 24), 6);
    Geometry swept = Plane.grown(dialled(table), 3);
    assertThat(swept.difference(Plane.grown(drawn, 0.002)).getArea()).isLessThan(0.001);
    double highest = 0;
    for (Coordinate corner : drawn.difference(swept).getCoordinates()) {
      highest = Math.max(highest, drawn.getBoundary().distance(PLANE.createPoint(corner)));
    }
    assertThat(highest).isLessThan(table.bound().millimetres() + 0.002);
    CrankPath path = ((Result.Lines) table.run().result()).path();
    assertThat(path.ridge()).isBetween(new Length(1), Length.mm("0.05"));
  }

  /**
   * The ridge on an inside radius, R - ((R - r) cos(d/2) + sqrt(r^2 - (R - r)^2 sin^2(d/2))),
   * against the distance of densely sampled points that no cutter reaches.
   */
  @Test
  void theRidgeOfAnInsideCornerAgainstSampling() throws IOException {
    FeatureTable table =
        table(
            run(
                "pocket well in top, size 40 x 30, radius 10, depth 4, at (30, 20) from left front",
                "pocket well with SD6, cusp 0.08"));
    CrankPath path = ((Result.Lines) table.run().result()).path();
    // The round at the right and back, about (10, 5) from the middle of a pocket of 40 x 30.
    List<Coordinate> stops =
        path.points().stream()
            .filter(point -> point.purpose() == Purpose.WALL)
            .map(point -> new Coordinate(point.x().millimetres(), point.y().millimetres()))
            .filter(at -> at.x >= 10 - 1e-9 && at.y >= 5 - 1e-9)
            .toList();
    double ridge = 0;
    for (int i = 0; i <= 20_000; i++) {
      double angle = Math.PI / 2 * i / 20_000;
      double reached = 0;
      // From outside inward, the first point of the ray that some stop's circle covers.
      for (Coordinate stop : stops) {
        double along = (stop.x - 10) * Math.cos(angle) + (stop.y - 5) * Math.sin(angle);
        double across = -(stop.x - 10) * Math.sin(angle) + (stop.y - 5) * Math.cos(angle);
        if (Math.abs(across) < 3) {
          reached = Math.max(reached, along + Math.sqrt(9 - across * across));
        }
      }
      ridge = Math.max(ridge, 10 - reached);
    }
    assertThat(path.ridge().millimetres()).isCloseTo(ridge, within(1e-5));
  }

  @Test
  void aSlotOfTheCuttersOwnWidthIsOneLineAndRunsOutOfItsOpenEnd() throws IOException {
    FeatureTable table =
        table(
            run(
                "slot way in top, size 30 x 6, depth 3, at (15, 20) from left front",
                "slot way with SD6"));
    assertThat(table.rows()).hasSize(2);
    assertThat(table.rows().get(0).x().asked()).isEqualTo(Length.mm("-5"));
    assertThat(table.rows().get(1).x().asked()).isEqualTo(Length.mm("27"));
    assertThat(((Result.Lines) table.run().result()).path().isClosed()).isFalse();
    assertThat(table.setup().after().removed())
        .extracting(Removed::kind)
        .containsExactly(Removed.Kind.SLOT);
  }

  @Test
  void oneCornerIsAQuarterOfTheRound() throws IOException {
    FeatureTable table =
        table(
            run(
                "corner nose seen from top, radius 5, at (0, 0) from right front",
                "corner nose with EM10, cusp 0.05, conventional"));
    StepTable steps = ((Result.Steps) table.run().result()).table();
    assertThat(steps.stations())
        .allMatch(station -> !station.x().isNegative() && !station.y().isPositive());
    Geometry keeps =
        box(0, 0, 60, 40)
            .difference(box(55, 0, 60, 5))
            .union(PLANE.createPoint(new Coordinate(55, 5)).buffer(5, 64));
    assertThat(table.run().sweep()).isNotNull();
    assertThat(table.run().sweep().intersection(keeps).getArea()).isLessThan(0.01);
    assertThat(table.middle()).isNotNull();
    assertThat(table.middle().atX().asked()).isEqualTo(Length.mm("55"));
    assertThat(table.middle().atY().asked()).isEqualTo(Length.mm("5"));
  }

  @Test
  void refusesWhatCannotBeCut() throws IOException {
    String tight = "pocket well in top, size 30 x 20, radius 2, depth 4, at (30, 20)";
    String narrow = "slot oil in top, size 30 x 5, depth 4, at (30, 20)";
    String under = "slot oil in bottom, size 30 x 6, depth 4, at (30, 20)";
    assertThat(refusal(tight, "pocket well with SD6")).isEqualTo(Refusal.CORNER_TOO_TIGHT);
    assertThat(refusal(narrow, "slot oil with SD6")).isEqualTo(Refusal.CUTTER_TOO_WIDE);
    assertThat(refusal(narrow, "slot oil with FC40")).isEqualTo(Refusal.WRONG_CUTTER);
    assertThat(refusal(under, "slot oil with SD6")).isEqualTo(Refusal.HIDDEN);
    assertThat(refusal(narrow, "slot oil")).isEqualTo(Refusal.UNKNOWN);
  }

  private static Refusal refusal(String drawn, String cut) throws IOException {
    return ((Result.None) table(run(drawn, cut)).run().result()).refusal();
  }

  /** Turned end for end, the coordinates count the other way, and the sweep stays in the slot. */
  @Test
  void aThroughSlotCutFromBelow() throws IOException {
    PlanRun below =
        run(
            "slot bolt in bottom, size 30 x 8, through, at (25, 16) from left front",
            "slot bolt with SD6");
    FeatureTable table = table(below);
    assertThat(table.run().sweep()).isNotNull();
    assertThat(box(10, 12, 40, 20).contains(table.run().sweep())).isTrue();
  }

  /**
   * Three rows to and fro and once round: X turns round at the end of each row, and then X and Y in
   * turns at the corners. 30 x 17 about (30, 20) leaves the axis 24 x 11.
   */
  @Test
  void whereHandlesTurnRound() throws IOException {
    FeatureTable table =
        table(
            run(
                "pocket well in top, size 30 x 17, depth 4, at (30, 20) from left front",
                "pocket well with SD6"));
    assertThat(table.rows())
        .extracting(FeatureTable.Row::turnsRound)
        .containsExactly(
            List.of(),
            List.of(),
            List.of(org.handwheel.model.Axis.X),
            List.of(),
            List.of(org.handwheel.model.Axis.X),
            List.of(),
            List.of(org.handwheel.model.Axis.Y),
            List.of(org.handwheel.model.Axis.X),
            List.of(org.handwheel.model.Axis.Y),
            List.of(org.handwheel.model.Axis.X),
            List.of());
    assertThat(table.rows()).allMatch(row -> row.first() == null);
    assertThat(table.rows().get(0).x().asked()).isEqualTo(Length.mm("18"));
    assertThat(table.rows().get(0).y().asked()).isEqualTo(Length.mm("17.25"));
    assertThat(table.rows().get(6).x().asked()).isEqualTo(Length.mm("42"));
    assertThat(table.rows().get(6).y().asked()).isEqualTo(Length.mm("25.5"));
    assertThat(table.middle()).isNotNull();
    assertThat(table.middle().atX().asked()).isEqualTo(Length.mm("30"));
    // Rounded toward the middle: never further out than asked, by less than a division.
    for (FeatureTable.Row row : table.rows()) {
      double x = row.x().reached().millimetres() - 30;
      double asked = row.x().asked().millimetres() - 30;
      assertThat(Math.abs(x)).isBetween(Math.abs(asked) - 0.0254, Math.abs(asked) + 1e-9);
    }
  }

  /** From the right and the back coordinates grow the other way; the stops are those places. */
  @Test
  void fromTheRightAndTheBack() throws IOException {
    FeatureTable table =
        table(
            run(
                "pocket well in top, size 30 x 17, depth 4, at (30, 20) from left front",
                "find right from operator-right with finder F5, zero x at edge\n"
                    + "find back from operator-back with finder F5, zero y at edge\n"
                    + "pocket well with SD6"));
    // 60 - 18 and 40 - 17.25.
    assertThat(table.rows().get(0).x().asked()).isEqualTo(Length.mm("42"));
    assertThat(table.rows().get(0).y().asked()).isEqualTo(Length.mm("22.75"));
    for (FeatureTable.Row row : table.rows()) {
      double x = row.x().reached().millimetres() - 30;
      double asked = row.x().asked().millimetres() - 30;
      assertThat(Math.abs(x)).isBetween(Math.abs(asked) - 0.0254, Math.abs(asked) + 1e-9);
    }
  }
}
