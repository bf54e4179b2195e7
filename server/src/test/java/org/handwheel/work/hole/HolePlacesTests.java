package org.handwheel.work.hole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.reference.CheckRow;
import org.handwheel.reference.RowChecks;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.PartBox;
import org.junit.jupiter.api.Test;

/** Where the holes of a drawing are, against values from outside. */
class HolePlacesTests implements RowChecks {
  private static final PartBox BOX =
      new PartBox(Length.mm("200"), Length.mm("300"), Length.mm("40"));

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new RowChecks.Builder()
        .row("B02", row -> ofFive(row, 2))
        .row("B03", row -> ofFive(row, 3))
        .row("B04", row -> ofFive(row, 4))
        .row("B05", row -> ofFive(row, 5))
        .row("B06", HolePlacesTests::straddling)
        .row("B07", HolePlacesTests::chords)
        .build();
  }

  static List<Place> places(String lines, String units) {
    String text =
        "language 1\nplan \"Trial\"\n  units " + units + "\npart\n" + lines.strip().indent(2);
    Plan plan = PlanFiles.build(Workspace.of(SyntaxTree.parse("t.plan", text)), "t.plan");
    assertThat(plan.findings()).as(text).isEmpty();
    Part part = plan.part();
    assertThat(part).isNotNull();
    return DrawnHoles.of(part, BOX, StandardTables.builtIn()).all().stream()
        .map(DrawnHole::place)
        .toList();
  }

  private static List<Place> circle(String dia, int count, String first, String units) {
    return places(
        "hole a in top, dia 1, through\npattern p of a, circle dia "
            + dia
            + ", count "
            + count
            + ", first at "
            + first
            + " deg, about (0, 0) from left front",
        units);
  }

  private static void ofFive(CheckRow row, int number) {
    Place place = circle("100", 5, "0", "mm").get(number - 1);
    List<BigDecimal> expected = row.numbers();
    double tolerance = expected.get(2).doubleValue();
    assertThat(place.first().millimetres())
        .isCloseTo(expected.get(0).doubleValue(), within(tolerance));
    assertThat(place.second().millimetres())
        .isCloseTo(expected.get(1).doubleValue(), within(tolerance));
  }

  /** Twelve holes, none on an axis: half a part of the circle off it. */
  private static void straddling(CheckRow row) {
    Place place = circle("8", 12, "15", "in").get(0);
    double inch = Length.of("1", LengthUnit.IN).millimetres();
    assertThat(place.first().millimetres() / inch)
        .isCloseTo(row.numbers().get(0).doubleValue(), within(0.00005));
    assertThat(place.second().millimetres() / inch)
        .isCloseTo(row.numbers().get(1).doubleValue(), within(0.00005));
  }

  private static void chords(CheckRow row) {
    int index = 0;
    for (int count : new int[] {5, 6, 8}) {
      List<Place> places = circle("100", count, "0", "mm");
      double chord =
          Math.hypot(
              places.get(1).first().minus(places.get(0).first()).millimetres(),
              places.get(1).second().minus(places.get(0).second()).millimetres());
      assertThat(chord).isCloseTo(row.numbers().get(index).doubleValue(), within(0.00005));
      index++;
    }
  }

  @Test
  void quartersOfACircleAreExact() {
    assertThat(circle("50", 4, "0", "mm"))
        .containsExactly(
            new Place(Length.mm("25"), Length.ZERO),
            new Place(Length.ZERO, Length.mm("25")),
            new Place(Length.mm("-25"), Length.ZERO),
            new Place(Length.ZERO, Length.mm("-25")));
  }

  @Test
  void aCircleRunsCounterClockwiseAsOneLooksAtTheFace() {
    // From behind, the first coordinate grows to the left: the first hole, to the right, has less.
    List<Place> places =
        places(
            "hole a in back, dia 1, depth 2\n"
                + "pattern p of a, circle dia 20, count 4, about (50, 20) from left bottom",
            "mm");
    assertThat(places.get(0)).isEqualTo(new Place(Length.mm("40"), Length.mm("20")));
    assertThat(places.get(1)).isEqualTo(new Place(Length.mm("50"), Length.mm("30")));
  }

  @Test
  void stepsCountAwayFromTheCornerTheyCountFrom() {
    List<Place> places =
        places(
            "hole a in top, dia 1, through\n"
                + "pattern p of a, grid 2 x 2, at (10, 20) from right back, by (5, 7)",
            "mm");
    assertThat(places)
        .containsExactly(
            new Place(Length.mm("190"), Length.mm("280")),
            new Place(Length.mm("185"), Length.mm("280")),
            new Place(Length.mm("190"), Length.mm("273")),
            new Place(Length.mm("185"), Length.mm("273")));
  }

  /** Mirrored twice about the middles of a part of 200 x 300, one hole is four. */
  @Test
  void mirroredAboutTheMiddleAndALine() {
    assertThat(
            places(
                "hole a in top, dia 1, through\n"
                    + "pattern p of a, at (10, 20), mirrored left to right, mirrored front to back",
                "mm"))
        .containsExactly(
            place("10", "20"), place("190", "20"), place("10", "280"), place("190", "280"));
    // About the line at 45 degrees through (5, 0), x and y change places: (x, y) to (y + 5, x - 5).
    assertThat(
            places(
                "hole a in top, dia 1, through\n"
                    + "pattern p of a, row, count 2, at (30, 10), by (10, 0),"
                    + " mirrored about (5, 0) to (45, 40)",
                "mm"))
        .containsExactly(
            place("30", "10"), place("40", "10"), place("15", "25"), place("15", "35"));
    // The middle one of three lies on the line and is drilled once; upright lines are exact.
    assertThat(
            places(
                "hole a in top, dia 1, through\n"
                    + "pattern p of a, row, count 3, at (90, 10), by (10, 0),"
                    + " mirrored about (100, 0) to (100, 9)",
                "mm"))
        .containsExactly(place("90", "10"), place("100", "10"), place("110", "10"));
  }

  private static Place place(String first, String second) {
    return new Place(Length.mm(first), Length.mm(second));
  }

  @Test
  void aPatternIsNamedByItsNameOrItsHole() {
    String text =
        "language 1\nplan \"T\"\n  units mm\npart\n  hole a in top, dia 1, through\n"
            + "  pattern p of a, row, count 3, at (5, 5), by (5, 0)\n";
    Part part = PlanFiles.build(Workspace.of(SyntaxTree.parse("t.plan", text)), "t.plan").part();
    assertThat(part).isNotNull();
    DrawnHoles drawn = DrawnHoles.of(part, BOX, StandardTables.builtIn());
    assertThat(drawn.named("P")).extracting(DrawnHole::name).containsExactly("p 1", "p 2", "p 3");
    assertThat(drawn.named("a")).hasSize(3);
    assertThat(drawn.all()).allMatch(hole -> hole.spec().face() == Face.TOP);
  }
}
