package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.PartBox;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.DrawnFeature.Open;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;

/** Features of a part of 60 x 40 x 20 at their places; the areas are elementary geometry. */
class DrawnFeatureTests {
  private static final PartBox BOX = new PartBox(Length.mm("60"), Length.mm("40"), Length.mm("20"));

  /** What a square corner of a side of 1 loses when it is made round. */
  private static final double LOST = 1 - Math.PI / 4;

  private static Optional<DrawnFeature> find(String line) {
    String text = "language 1\nplan \"Trial\"\n  units mm\npart\n  " + line + "\n";
    Plan plan = PlanFiles.build(Workspace.of(SyntaxTree.parse("t.plan", text)), "t.plan");
    assertThat(plan.part()).isNotNull();
    return DrawnFeature.of(plan.part().features().get(0), BOX);
  }

  private static DrawnFeature drawn(String line) {
    return find(line).orElseThrow();
  }

  private static Form.Sunk sunk(String line) {
    return (Form.Sunk) drawn(line).form();
  }

  private static Place place(String first, String second) {
    return new Place(Length.mm(first), Length.mm(second));
  }

  /** 30 x 6 about (x, y): a side on the edge of the part or beyond it has no wall. */
  @ParameterizedTest
  @CsvSource({
    "30, 20, false, false, false, false",
    "15, 20, true, false, false, false",
    "15.1, 20, false, false, false, false",
    "45, 20, false, true, false, false",
    "44.9, 20, false, false, false, false",
    "30, 3, false, false, true, false",
    "30, 3.1, false, false, false, false",
    "30, 37, false, false, false, true",
    "30, 36.9, false, false, false, false",
    "10, 39, true, false, false, true",
  })
  void aSideThatReachesTheEdgeIsOpen(
      String x, String y, boolean low1, boolean high1, boolean low2, boolean high2) {
    Form.Sunk sunk = sunk("pocket p in top, size 30 x 6, depth 3, at (" + x + ", " + y + ")");
    assertThat(sunk.open()).isEqualTo(new Open(low1, high1, low2, high2));
    assertThat(sunk.open().any()).isEqualTo(low1 || high1 || low2 || high2);
    assertThat(sunk.middle()).isEqualTo(place(x, y));
    // Two walls meet where neither side is open; from the low corner counter-clockwise.
    assertThat(sunk.corners())
        .containsExactly(!(low1 || low2), !(high1 || low2), !(high1 || high2), !(low1 || high2));
  }

  @Test
  void depthsAndWhatGoesThrough() {
    assertThat(drawn("slot s in top, size 30 x 6, depth 3, at (30, 20)").depth())
        .isEqualTo(Length.mm("3"));
    assertThat(drawn("slot s in top, size 30 x 6, depth 3, at (30, 20)").isThrough()).isFalse();
    DrawnFeature through = drawn("slot s in top, size 30 x 6, through, at (30, 20)");
    assertThat(through.depth()).isEqualTo(Length.mm("20"));
    assertThat(through.isThrough()).isTrue();
    // Deeper than the part is thick is through.
    assertThat(drawn("slot s in top, size 30 x 6, depth 25, at (30, 20)").depth())
        .isEqualTo(Length.mm("20"));
    assertThat(find("slot s in top, size 30 x 6, at (30, 20)")).isEmpty();
    assertThat(find("slot s in top, depth 3, at (30, 20)")).isEmpty();
    // A chamfer is as deep as it is wide.
    assertThat(drawn("chamfer c in top, width 1").depth()).isEqualTo(Length.mm("1"));
    assertThat(drawn("corner c seen from top, radius 5").depth()).isEqualTo(Length.mm("20"));
    assertThat(drawn("slot s in front, size 30 x 6, through, at (30, 10)").depth())
        .isEqualTo(Length.mm("40"));
    assertThat(drawn("slot keyway in top, size 30 x 6, depth 3, at (30, 20)").words())
        .isEqualTo("slot keyway");
  }

  @Test
  void aPocketTakesAwayARectangleWithRoundCorners() {
    String pocket = "pocket p in top, size 30 x 18, depth 4, at (%s, 20)";
    Geometry square = drawn(pocket.formatted("30")).gone(0);
    assertThat(square.getArea()).isCloseTo(30 * 18, within(1e-9));
    assertThat(square.getEnvelopeInternal().getMinX()).isCloseTo(15, within(1e-9));
    assertThat(square.getEnvelopeInternal().getMaxY()).isCloseTo(29, within(1e-9));
    // The cutter of radius 3 rounds all four; the drawing's radius of 4 comes before it.
    assertThat(drawn(pocket.formatted("30")).gone(3).getArea())
        .isCloseTo(30 * 18 - 4 * 9 * LOST, within(0.02));
    assertThat(drawn(pocket.formatted("30") + ", radius 4").gone(3).getArea())
        .isCloseTo(30 * 18 - 4 * 16 * LOST, within(0.03));
    // Open at the left by 5 only two are round, and nothing lies beyond the part.
    Geometry open = drawn(pocket.formatted("10")).gone(3);
    assertThat(open.getArea()).isCloseTo(25 * 18 - 2 * 9 * LOST, within(0.01));
    assertThat(open.getEnvelopeInternal().getMinX()).isZero();
    // A radius of more than half the width makes the ends round: 12 x 18 and a circle of 18.
    assertThat(drawn(pocket.formatted("30")).gone(20).getArea())
        .isCloseTo(12 * 18 + Math.PI * 81, within(0.1));
  }

  /** Toward the corner named: 5 inside it lies the middle of the arc. */
  @ParameterizedTest
  @CsvSource({
    "left front, 5, 5, -1, -1",
    "right front, 55, 5, 1, -1",
    "right back, 55, 35, 1, 1",
    "left back, 5, 35, -1, 1",
  })
  void oneCorner(String corner, String x, String y, int towardFirst, int towardSecond) {
    DrawnFeature drawn = drawn("corner c seen from top, radius 5, at (0, 0) from " + corner);
    assertThat(drawn.form())
        .isEqualTo(new Form.OneCorner(place(x, y), Length.mm("5"), towardFirst, towardSecond));
    Geometry gone = drawn.gone(0);
    assertThat(gone.getArea()).isCloseTo(25 * LOST, within(0.01));
    assertThat(gone.getEnvelopeInternal().getMaxX())
        .isCloseTo(towardFirst > 0 ? 60 : 5, within(1e-6));
    assertThat(gone.getEnvelopeInternal().getMaxY())
        .isCloseTo(towardSecond > 0 ? 40 : 5, within(1e-6));
  }

  @Test
  void allCornersAtOnce() {
    DrawnFeature drawn = drawn("corner c seen from top, radius 5");
    assertThat(drawn.gone(0).getArea()).isCloseTo(4 * 25 * LOST, within(0.02));
    Form.Round round = (Form.Round) drawn.form();
    assertThat(round.middle()).isEqualTo(place("30", "20"));
    assertThat(drawn.finished(round).getEnvelopeInternal().getWidth()).isCloseTo(60, within(1e-6));
    assertThat(drawn.finished(round).getEnvelopeInternal().getHeight()).isCloseTo(40, within(1e-6));
    // Half the width is the most there is.
    assertThat(find("corner c seen from top, radius 20")).isPresent();
    assertThat(find("corner c seen from top, radius 20.1")).isEmpty();
    assertThat(find("corner c seen from front, radius 10.1")).isEmpty();
  }

  @Test
  void brokenEdges() {
    assertThat(drawn("chamfer c in top, width 1").gone(0).getArea())
        .isCloseTo(60 * 40 - 58 * 38, within(1e-6));
  }

  /** An ellipse of 30 x 16 has pi x 15 x 8; without a place it is in the middle. */
  @Test
  void outlinesAndWindows() {
    double ellipse = Math.PI * 15 * 8;
    DrawnFeature outline = drawn("outline o in top, ellipse 30 x 16, depth 4");
    assertThat(outline.gone(0).getArea()).isCloseTo(60 * 40 - ellipse, within(0.1));
    assertThat(((Form.Round) outline.form()).middle()).isEqualTo(place("30", "20"));
    DrawnFeature placed =
        drawn("outline o in top, at (10, 12) from right back, ellipse 12 x 8, depth 4");
    assertThat(((Form.Round) placed.form()).middle()).isEqualTo(place("50", "28"));
    assertThat(placed.depth()).isEqualTo(Length.mm("4"));
    DrawnFeature window = drawn("window w in top, at (25, 18), ellipse 30 x 16");
    assertThat(window.isThrough()).isTrue();
    assertThat(((Form.Window) window.form()).middle()).isEqualTo(place("25", "18"));
    assertThat(window.gone(0).getArea()).isCloseTo(ellipse, within(0.1));
    assertThat(window.gone(0).getCentroid().getX()).isCloseTo(25, within(1e-6));
    // What lies beyond the part is no part of it: half of an ellipse about its edge.
    assertThat(drawn("window w in top, at (0, 20), ellipse 30 x 16").gone(0).getArea())
        .isCloseTo(ellipse / 2, within(0.1));
  }

  // ---- Regions

  @Test
  void thicknessIsTheLargestCircleWithin() {
    assertThat(Plane.thickness(Plane.box(0, 0, 30, 4)).millimetres()).isCloseTo(4, within(0.005));
    assertThat(Plane.thickness(Plane.nothing())).isEqualTo(Length.ZERO);
    Geometry two = Plane.box(0, 0, 10, 2).union(Plane.box(20, 0, 30, 5));
    assertThat(Plane.thickness(two).millimetres()).isCloseTo(5, within(0.005));
    // Two points of contact and a line have no area, a box has.
    Geometry mixed =
        Plane.FACTORY.createGeometryCollection(
            new Geometry[] {
              Plane.box(0, 0, 10, 2),
              Plane.FACTORY.createPoint(DrawnFeature.coordinate(place("50", "5")))
            });
    assertThat(Plane.areas(mixed).getNumGeometries()).isEqualTo(1);
    assertThat(Plane.areas(mixed).getArea()).isCloseTo(20, within(1e-9));
  }

  @Test
  void grownByABuffersDistance() {
    // A rectangle grown by 2 has its own area, four sides of 2, and a circle of 2.
    assertThat(Plane.grown(Plane.box(0, 0, 30, 10), 2).getArea())
        .isCloseTo(300 + 2 * 80 + Math.PI * 4, within(0.01));
    assertThat(Plane.grown(Plane.box(0, 0, 30, 10), -2).getArea()).isCloseTo(26 * 6, within(1e-9));
    assertThat(Plane.disc(DrawnFeature.coordinate(place("3", "4")), 5).getArea())
        .isCloseTo(Math.PI * 25, within(0.02));
  }
}
