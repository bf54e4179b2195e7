package org.handwheel.work.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Part.Bow;
import org.handwheel.model.Part.Bulge;
import org.handwheel.model.Part.Turn;
import org.handwheel.model.Part.Vertex;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Where lines and arcs touch, against closed formulas. The formulas are elementary geometry, as
 * tables of shop trigonometry print them (from memory).
 */
class FreeOutlineTests {
  private static final Origin ORIGIN =
      new Origin(SyntaxTree.parse("a.plan", "").sections().get(0), 0, 0);

  /** {@code corner x y}, {@code blend x y R}, {@code tangent x y}, {@code boss x y R}, arcs. */
  static FreeOutline.Result result(String... words) {
    List<Vertex> vertices = new ArrayList<>();
    for (String word : words) {
      String[] part = word.split(" ");
      if (word.isEmpty()) {
        continue;
      }
      if (part[0].equals("arc") || part[0].equals("hollow")) {
        Vertex last = vertices.remove(vertices.size() - 1);
        Bulge bulge = part[0].equals("arc") ? Bulge.ARC : Bulge.HOLLOW;
        Bow bow = new Bow(Length.mm(part[1]), bulge, ORIGIN);
        vertices.add(new Vertex(last.first(), last.second(), last.turn(), bow, ORIGIN));
        continue;
      }
      Turn turn =
          switch (part[0]) {
            case "blend" -> new Turn.Blend(Length.mm(part[3]));
            case "boss" -> new Turn.Boss(Length.mm(part[3]));
            case "tangent" -> new Turn.Tangent();
            default -> new Turn.Sharp();
          };
      vertices.add(new Vertex(Length.mm(part[1]), Length.mm(part[2]), turn, null, ORIGIN));
    }
    return FreeOutline.of(vertices, ORIGIN);
  }

  static Contour contour(String... words) {
    FreeOutline.Result result = result(words);
    assertThat(result.problems()).isEmpty();
    assertThat(result.contour()).isNotNull();
    return result.contour();
  }

  /** Two bosses with a hollow waist on one side and a straight side on the other. */
  static Contour link() {
    return contour("boss 0 0 12", "boss 50 8 9", "hollow 40");
  }

  /** An L with a rounded inside corner, a slope, and an arc for one end. */
  static Contour bracket() {
    return contour(
        "blend 0 0 4",
        "corner 60 0",
        "arc 15",
        "corner 60 22",
        "blend 28 22 7",
        "blend 20 50 6",
        "corner 0 44");
  }

  static Contour box(double first, double second) {
    return contour(
        "corner 0 0",
        "corner " + first + " 0",
        "corner " + first + " " + second,
        "corner 0 " + second);
  }

  private static void assertAt(Coordinate at, double x, double y) {
    assertThat(at.x).isCloseTo(x, within(1e-6));
    assertThat(at.y).isCloseTo(y, within(1e-6));
  }

  /** A blend between two sides at the angle A touches R / tan(A/2) from the corner. */
  @Test
  void aBlendTouchesAtItsTangentLength() {
    for (double angle : List.of(40.0, 60.0, 90.0, 120.0, 150.0)) {
      double a = Math.toRadians(angle);
      Contour contour =
          contour(
              "blend 0 0 5",
              "corner 60 0",
              String.format(
                  java.util.Locale.ROOT, "corner %.9f %.9f", 60 * Math.cos(a), 60 * Math.sin(a)));
      double touch = 5 / Math.tan(a / 2);
      Piece.Arc arc = (Piece.Arc) contour.pieces().get(0);
      assertAt(arc.end(), touch, 0);
      assertAt(arc.start(), touch * Math.cos(a), touch * Math.sin(a));
      assertThat(arc.turn()).isCloseTo(Math.PI - a, within(1e-9));
    }
  }

  /**
   * Source: the open belt of two pulleys, R = 12 and r = 9 at the distance c = 50: the straight
   * length is sqrt(c^2 - (R - r)^2), the belt 2 sqrt(c^2 - (R - r)^2) + pi (R + r) + 2 (R - r)
   * asin((R - r)/c) (printed in many shop handbooks; from memory).
   */
  @Test
  void twoBossesAreAnOpenBelt() {
    Contour contour = contour("boss 0 0 12", "boss 50 0 9");
    double straight = Math.sqrt(50 * 50 - 9);
    double length = 2 * straight + Math.PI * 21 + 2 * 3 * Math.asin(3 / 50.0);
    assertThat(contour.pieces()).hasSize(4);
    double sum = contour.pieces().stream().mapToDouble(piece -> piece.speed(0)).sum();
    assertThat(sum).isCloseTo(length, within(1e-9));
    assertThat(contour.polygon(2000).getLength()).isCloseTo(length, within(1e-4));
  }

  /**
   * A hollow of radius R that touches two rounds of r1 and r2 at the distance c has its middle at
   * the corner of a triangle with the sides c, R + r1, R + r2 (law of cosines).
   */
  @Test
  void aHollowTouchesBothRounds() {
    Contour contour = contour("boss 0 0 12", "hollow 40", "boss 50 0 9", "hollow 40");
    Piece.Arc arc =
        (Piece.Arc)
            contour.pieces().stream()
                .filter(piece -> piece.curvature(0) < 0)
                .findFirst()
                .orElseThrow();
    double cosine = (50.0 * 50 + 52 * 52 - 49 * 49) / (2 * 50 * 52);
    double x = 52 * cosine;
    double y = -52 * Math.sqrt(1 - cosine * cosine);
    assertAt(arc.middle(), x, y);
    assertAt(arc.start(), 12 * x / 52, 12 * y / 52);
    assertAt(arc.end(), 50 + 9 * (x - 50) / 49, 9 * y / 49);
  }

  /** An arc over a chord c with radius R stands R - sqrt(R^2 - c^2/4) above it. */
  @Test
  void anArcStandsOutByItsRise() {
    Contour contour = contour("corner 0 0", "arc 25", "corner 40 0", "corner 40 20", "corner 0 20");
    assertThat(contour.polygon(500).getEnvelopeInternal().getMinY())
        .isCloseTo(-(25 - Math.sqrt(25 * 25 - 400)), within(1e-4));
    Contour hollow =
        contour("corner 0 0", "hollow 25", "corner 40 0", "corner 40 20", "corner 0 20");
    assertThat(hollow.distance(20, 9)).isCloseTo(1, within(1e-9));
    assertThat(hollow.distance(20, 11)).isCloseTo(-1, within(1e-9));
  }

  /** Every place where two pieces meet is one point, and all is smooth where it should be. */
  @Test
  void piecesMeet() {
    for (Contour contour :
        List.of(link(), bracket(), Contour.of(new RoundOutline.Rounded(20, 9, 4)))) {
      List<Piece> pieces = contour.pieces();
      for (int i = 0; i < pieces.size(); i++) {
        Piece next = pieces.get((i + 1) % pieces.size());
        assertThat(pieces.get(i).end().distance(next.start())).isLessThan(1e-9);
      }
    }
    List<Piece> smooth = link().pieces();
    for (int i = 0; i < smooth.size(); i++) {
      Piece next = smooth.get((i + 1) % smooth.size());
      assertThat(Math.cos(next.normal(0) - smooth.get(i).normal(1))).isCloseTo(1, within(1e-9));
    }
  }

  /** The sense in which an outline is written makes no difference. */
  @Test
  void eitherSenseIsTheSame() {
    Contour there = contour("corner 0 0", "blend 40 0 5", "arc 30", "corner 40 25", "corner 0 25");
    Contour back = contour("corner 0 25", "corner 40 25", "arc 30", "blend 40 0 5", "corner 0 0");
    Geometry difference = there.polygon(100).symDifference(back.polygon(100));
    assertThat(difference.getArea()).isLessThan(1e-6);
  }

  /** The true distance against JTS's distance from a fine polygon. */
  @Test
  void distanceIsTheTrueOne() {
    GeometryFactory plane = new GeometryFactory();
    for (Contour contour :
        List.of(
            link(),
            bracket(),
            Contour.of(new RoundOutline.Oval(26, 10)),
            Contour.of(new RoundOutline.Oval(7, 19)))) {
      Geometry polygon = contour.polygon(2000);
      for (int i = -30; i < 75; i += 3) {
        for (int k = -30; k < 60; k += 3) {
          var point = plane.createPoint(new Coordinate(i + 0.13, k + 0.29));
          double expected = polygon.getBoundary().distance(point);
          double signed = polygon.contains(point) ? -expected : expected;
          assertThat(contour.distance(i + 0.13, k + 0.29)).isCloseTo(signed, within(1e-4));
        }
      }
    }
  }

  @Test
  void saysWhatIsWrong() {
    assertProblem(
        "crosses or touches itself", "corner 0 0", "corner 40 30", "corner 40 0", "corner 0 30");
    assertProblem(
        "does not fit here", "blend 0 0 30", "corner 40 0", "corner 40 20", "corner 0 20");
    assertProblem(
        "not tangent here: they meet at 90.00 deg",
        "corner 0 0",
        "tangent 40 0",
        "corner 40 20",
        "corner 0 20");
    assertProblem(
        "it needs at least 20.00 mm",
        "corner 0 0",
        "arc 19",
        "corner 40 0",
        "corner 40 20",
        "corner 0 20");
    assertProblem("the same place", "corner 0 0", "corner 0 0", "corner 40 20");
    assertProblem("one round lies within the other", "boss 0 0 20", "boss 5 0 4");
    assertThat(
            result("corner 0 0", "tangent 40 0", "arc 10", "tangent 40 20", "corner 0 20")
                .problems())
        .isEmpty();
  }

  private static void assertProblem(String words, String... outline) {
    FreeOutline.Result result = result(outline);
    assertThat(result.contour()).isNull();
    assertThat(result.problems()).anyMatch(problem -> problem.message().contains(words));
  }
}
