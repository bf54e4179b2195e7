package org.handwheel.work.outline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.outline.ContourSteps.Result;
import org.handwheel.work.outline.RoundOutline.Oval;
import org.handwheel.work.outline.RoundOutline.Rounded;
import org.handwheel.work.outline.StepTable.Side;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Free outlines and windows against a simulation of the cutter with JTS, an independent library.
 */
class ContourStepsTests {
  private static final GeometryFactory PLANE = new GeometryFactory();

  /** What the simulation's own polygons may be off, in millimetres. */
  private static final double FACETS = 0.0012;

  private static Screw screw(Axis axis, String lead) {
    return new Screw(
        axis,
        Length.mm(lead),
        BigFraction.of(100),
        Length.mm("0.15"),
        null,
        null,
        null,
        BigFraction.ONE);
  }

  private static Result steps(
      Contour contour,
      Side side,
      double radius,
      String left,
      String cusp,
      CutDirection direction,
      String lead) {
    return ContourSteps.of(
        contour,
        side,
        Length.ofMillimetres(radius),
        Length.mm(left),
        Length.mm(cusp),
        direction,
        screw(Axis.X, lead),
        screw(Axis.Y, lead),
        null);
  }

  private static StepTable table(
      Contour contour, Side side, double radius, String left, String cusp, CutDirection way) {
    return assertKeepsItsWord(steps(contour, side, radius, left, cusp, way, "2"));
  }

  private static Geometry grown(Geometry geometry, double distance) {
    BufferParameters exact = new BufferParameters(128);
    exact.setSimplifyFactor(0);
    return BufferOp.bufferOp(geometry, distance, exact);
  }

  /** Sweeps the cutter along the table's way and measures what it leaves and what it enters. */
  private static StepTable assertKeepsItsWord(Result result) {
    assertThat(result).isInstanceOf(Result.Found.class);
    StepTable table = ((Result.Found) result).table();
    LineString path = table.path();
    assertThat(path.isClosed()).isTrue();
    Polygon form = ((Contour) table.outline()).polygon(1500);
    Geometry swept = grown(path, table.cutterRadius().millimetres());
    double keeps = table.left().millimetres();
    // The metal that stays: within the form, or all round it.
    Geometry metal =
        table.side() == Side.OUTSIDE
            ? form
            : PLANE
                .toGeometry(
                    grown(form, 3 * table.cutterRadius().millimetres()).getEnvelopeInternal())
                .difference(form);
    Geometry core = grown(metal, keeps - FACETS);
    assertThat(swept.intersection(core).getArea()).as("the cutter keeps off").isLessThan(1e-5);
    assertThat(swept).isInstanceOf(Polygon.class);
    Polygon band = (Polygon) swept;
    Geometry rest =
        table.side() == Side.OUTSIDE
            ? PLANE.createPolygon(band.getInteriorRingN(0)).difference(form)
            : form.difference(PLANE.createPolygon(band.getExteriorRing()));
    double highest = 0;
    for (Coordinate corner : rest.getCoordinates()) {
      highest = Math.max(highest, metal.distance(PLANE.createPoint(corner)));
    }
    double bound = table.bound().millimetres();
    assertThat(highest).as("the bound holds").isLessThan(bound + FACETS);
    assertThat(highest).as("the bound is no idle one").isGreaterThanOrEqualTo(bound / 3);
    return table;
  }

  @org.junit.jupiter.api.Tag("long")
  @Test
  void windowsOfEveryForm() {
    Contour oval = Contour.of(new Oval(26, 16));
    StepTable table = table(oval, Side.INSIDE, 5, "0", "0.05", CutDirection.CONVENTIONAL);
    assertThat(table.bound()).isLessThanOrEqualTo(Length.mm("0.05"));
    table(oval, Side.INSIDE, 5, "0.25", "0.1", CutDirection.CLIMB);
    table(Contour.of(new Rounded(30, 12, 12)), Side.INSIDE, 5, "0", "0.05", CutDirection.CLIMB);
    table(Contour.of(new Rounded(9, 20, 9)), Side.INSIDE, 3, "0", "0.04", CutDirection.CLIMB);
    table(Contour.of(new Rounded(15, 15, 15)), Side.INSIDE, 8, "0", "0.05", CutDirection.CLIMB);
  }

  /** One of each, with the whole simulation; the others do the same for more forms. */
  @Test
  void aWindowAndALinkKeepTheirWord() {
    table(Contour.of(new Oval(20, 12)), Side.INSIDE, 4, "0.25", "0.1", CutDirection.CONVENTIONAL);
    table(FreeOutlineTests.link(), Side.OUTSIDE, 5, "0", "0.1", CutDirection.CLIMB);
  }

  /** Conventional within is clockwise, outside counter-clockwise (common practice, no source). */
  @Test
  void goesRoundTheWayItSays() {
    Contour round = Contour.of(new Rounded(15, 15, 15));
    for (CutDirection way : CutDirection.values()) {
      boolean conventional = way == CutDirection.CONVENTIONAL;
      assertThat(turnsLeft(table(round, Side.INSIDE, 5, "0", "0.1", way))).isEqualTo(!conventional);
      assertThat(turnsLeft(table(round, Side.OUTSIDE, 5, "0", "0.1", way))).isEqualTo(conventional);
    }
  }

  private static boolean turnsLeft(StepTable table) {
    return Area.ofRingSigned(table.path().getCoordinates()) < 0;
  }

  @org.junit.jupiter.api.Tag("long")
  @Test
  void freeOutlinesWithHollowsBossesAndSlopes() {
    for (CutDirection way : CutDirection.values()) {
      table(FreeOutlineTests.link(), Side.OUTSIDE, 5, "0", "0.05", way);
      table(FreeOutlineTests.bracket(), Side.OUTSIDE, 5, "0", "0.05", way);
      table(FreeOutlineTests.bracket(), Side.OUTSIDE, 5, "0.25", "0.1", way);
      table(FreeOutlineTests.link(), Side.INSIDE, 5, "0", "0.05", way);
    }
  }

  /** Turned over and rolled on its side the form is the same, seen from elsewhere. */
  @org.junit.jupiter.api.Tag("long")
  @Test
  void placedAnyWay() {
    for (int first : List.of(1, -1)) {
      for (int second : List.of(1, -1)) {
        for (boolean along : List.of(true, false)) {
          Contour placed = FreeOutlineTests.bracket().placed(along, first, second);
          assertThat(placed.polygon(60).getArea())
              .isCloseTo(
                  FreeOutlineTests.bracket().polygon(60).getArea(),
                  org.assertj.core.api.Assertions.within(1e-6));
          table(placed, Side.OUTSIDE, 5, "0", "0.06", CutDirection.CONVENTIONAL);
        }
      }
    }
  }

  @Test
  void refusesWhatTheCutterCannotDo() {
    Contour oval = Contour.of(new Oval(26, 10));
    // The ends of an ellipse have the radius b^2/a = 3.846 mm (geometry).
    assertThat(steps(oval, Side.INSIDE, 4, "0", "0.05", CutDirection.CLIMB, "2"))
        .isEqualTo(new Result.Tight(Length.ofMillimetres(100 / 26.0)));
    assertThat(steps(oval, Side.INSIDE, 3.7, "0.3", "0.1", CutDirection.CLIMB, "2"))
        .isInstanceOf(Result.LeavesTooMuch.class);
    assertThat(steps(oval, Side.INSIDE, 3.7, "0", "0.05", CutDirection.CLIMB, "2"))
        .isInstanceOf(Result.Found.class);
    Contour sharp = FreeOutlineTests.box(30, 20);
    assertThat(steps(sharp, Side.INSIDE, 3, "0", "0.05", CutDirection.CLIMB, "2"))
        .isInstanceOf(Result.SharpInside.class);
    assertKeepsItsWord(steps(sharp, Side.OUTSIDE, 3, "0", "0.05", CutDirection.CLIMB, "2"));
    assertThat(
            steps(
                Contour.of(new Rounded(400, 400, 400)),
                Side.OUTSIDE,
                3,
                "0",
                "0.0001",
                CutDirection.CLIMB,
                "2"))
        .isInstanceOf(Result.TooFine.class);
  }

  @Tag("long")
  @Property(tries = 25, seed = "20261127")
  void everyWindowKeepsItsWord(
      @ForAll @DoubleRange(min = 8, max = 40) double first,
      @ForAll @DoubleRange(min = 0.5, max = 1) double ratio,
      @ForAll @DoubleRange(min = 0.3, max = 0.95) double tight,
      @ForAll @IntRange(min = 40, max = 150) int cusp,
      @ForAll boolean oval,
      @ForAll boolean inches) {
    double second = first * ratio;
    double least = oval ? second * second / first : second;
    RoundOutline form = oval ? new Oval(first, second) : new Rounded(first, second, second);
    assertKeepsItsWord(
        ContourSteps.of(
            Contour.of(form),
            Side.INSIDE,
            Length.ofMillimetres(least * tight),
            Length.ZERO,
            Length.mm("0.001").times(cusp),
            CutDirection.CONVENTIONAL,
            screw(Axis.X, inches ? "2.54" : "2.5"),
            screw(Axis.Y, inches ? "2.54" : "2.5"),
            null));
  }

  /** Links of two bosses with straight or hollow sides, and blended boxes, at random. */
  @Tag("long")
  @Property(tries = 25, seed = "20261127")
  void everyFreeOutlineKeepsItsWord(
      @ForAll @DoubleRange(min = 6, max = 14) double boss,
      @ForAll @DoubleRange(min = 5, max = 14) double other,
      @ForAll @DoubleRange(min = 32, max = 60) double apart,
      @ForAll @DoubleRange(min = 0, max = 360) double turned,
      @ForAll @DoubleRange(min = 40, max = 150) double hollow,
      @ForAll @DoubleRange(min = 2, max = 8) double radius,
      @ForAll @IntRange(min = 0, max = 2) int kind) {
    double angle = Math.toRadians(turned);
    List<String> words = new ArrayList<>();
    words.add(String.format(java.util.Locale.ROOT, "boss 0 0 %.3f", boss));
    words.add(kind > 0 ? String.format(java.util.Locale.ROOT, "hollow %.3f", hollow) : "");
    words.add(
        String.format(
            java.util.Locale.ROOT,
            "boss %.3f %.3f %.3f",
            apart * Math.cos(angle),
            apart * Math.sin(angle),
            other));
    words.add(kind > 1 ? String.format(java.util.Locale.ROOT, "hollow %.3f", hollow) : "");
    Contour contour = FreeOutlineTests.contour(words.toArray(String[]::new));
    assertKeepsItsWord(
        steps(contour, Side.OUTSIDE, radius, "0", "0.06", CutDirection.CONVENTIONAL, "2.54"));
  }
}
