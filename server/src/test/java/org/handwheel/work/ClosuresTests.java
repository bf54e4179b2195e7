package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What follows from faces known to be square or parallel: geometry of planes. A block's face square
 * to one of two parallel faces is square to the other; two opposite faces square to the same two
 * adjoining faces are parallel; errors add.
 */
class ClosuresTests {
  private static final Origin ORIGIN =
      new Origin(SyntaxTree.parse("a.plan", "").sections().get(0), 0, 0);

  private final Map<FacePair, Relation> relations = new HashMap<>();

  private void square(Face a, Face b, long slope) {
    relations.put(new FacePair(a, b), Relation.square(a, b, new Slope(slope), "made so", ORIGIN));
  }

  private void parallel(Face a, Face b, long slope) {
    Map<PartDimension, Slope> slopes = new HashMap<>();
    for (PartDimension dimension : PartDimension.values()) {
      if (dimension != a.dimension()) {
        slopes.put(dimension, new Slope(slope));
      }
    }
    relations.put(new FacePair(a, b), new Relation(slopes, "made so", ORIGIN));
  }

  private Relation closed(Face a, Face b) {
    Closures.close(relations);
    return relations.get(new FacePair(a, b));
  }

  @Test
  void squareToOneOfTwoParallelFacesIsSquareToBoth() {
    parallel(Face.FRONT, Face.BACK, 7);
    square(Face.BACK, Face.TOP, 100);
    Relation found = closed(Face.FRONT, Face.TOP);
    assertThat(found).isNotNull();
    assertThat(found.along(PartDimension.HEIGHT)).isEqualTo(new Slope(107));
    assertThat(found.along(PartDimension.WIDTH)).isEqualTo(new Slope(107));
    assertThat(found.reason()).isEqualTo("parallel to the back, which is square to the top");
    // Nothing else follows: the bottom and the ends are not known.
    assertThat(relations).hasSize(3);
  }

  /** Of two ways to the same pair the one with the smaller sum. */
  @ParameterizedTest
  @CsvSource({
    "5, 100, 6, 90, 96, top",
    "5, 80, 6, 90, 85, back",
    "9, 91, 10, 90, 100, back",
  })
  void theTighterOfTwoWays(
      long frontToBack, long backToBottom, long topToBottom, long topToFront, long sum, String by) {
    parallel(Face.FRONT, Face.BACK, frontToBack);
    square(Face.BACK, Face.BOTTOM, backToBottom);
    parallel(Face.TOP, Face.BOTTOM, topToBottom);
    square(Face.TOP, Face.FRONT, topToFront);
    Relation found = closed(Face.FRONT, Face.BOTTOM);
    assertThat(found).isNotNull();
    assertThat(found.along(PartDimension.HEIGHT)).isEqualTo(new Slope(sum));
    assertThat(found.reason()).startsWith("parallel to the " + by);
  }

  @Test
  void squareToTheSameTwoFacesIsParallel() {
    square(Face.LEFT, Face.TOP, 1);
    square(Face.RIGHT, Face.TOP, 20);
    square(Face.LEFT, Face.BACK, 300);
    square(Face.RIGHT, Face.BACK, 4000);
    Relation found = closed(Face.LEFT, Face.RIGHT);
    assertThat(found).isNotNull();
    assertThat(found.along(PartDimension.HEIGHT)).isEqualTo(new Slope(21));
    assertThat(found.along(PartDimension.WIDTH)).isEqualTo(new Slope(4300));
    assertThat(found.along(PartDimension.LENGTH)).isEqualTo(Slope.NONE);
    assertThat(found.reason()).startsWith("both are square to the ");
  }

  /** About the normal of the one face they may be twisted; opposite ones do not help. */
  @Test
  void squareToOneFaceAloneIsNotParallel() {
    square(Face.LEFT, Face.TOP, 1);
    square(Face.RIGHT, Face.TOP, 1);
    assertThat(closed(Face.LEFT, Face.RIGHT)).isNull();
    square(Face.LEFT, Face.BOTTOM, 1);
    square(Face.RIGHT, Face.BOTTOM, 1);
    assertThat(closed(Face.LEFT, Face.RIGHT)).isNull();
    assertThat(relations).hasSize(4);
    // A second face that only one of them is square to does not, either.
    square(Face.LEFT, Face.BACK, 1);
    assertThat(closed(Face.LEFT, Face.RIGHT)).isNull();
  }

  @Test
  void whatIsKnownStays() {
    parallel(Face.FRONT, Face.BACK, 7);
    square(Face.BACK, Face.TOP, 100);
    square(Face.FRONT, Face.TOP, 500);
    assertThat(closed(Face.FRONT, Face.TOP).along(PartDimension.HEIGHT)).isEqualTo(new Slope(500));
  }

  /** One thing follows from the other: parallel, then square, and so on, until all 15 are known. */
  @Test
  void closuresFollowOneAnother() {
    parallel(Face.TOP, Face.BOTTOM, 1);
    parallel(Face.FRONT, Face.BACK, 1);
    square(Face.TOP, Face.BACK, 1);
    square(Face.LEFT, Face.TOP, 1);
    square(Face.LEFT, Face.BACK, 1);
    square(Face.RIGHT, Face.BOTTOM, 1);
    square(Face.RIGHT, Face.FRONT, 1);
    Closures.close(relations);
    assertThat(relations).hasSize(15);
  }

  // ---- What readings show

  private static Worked read(String faces, String readings) {
    return Worked.block()
        .from("size 60 x 33.5 x 24.5\n" + faces)
        .setup("one", "hold in V80, up top, fixed back, on pair P6x10\nmeasure width with mic")
        .log("in one: read width " + readings + " with mic");
  }

  /**
   * Readings 0.01 apart and an instrument good to 0.004 twice, over the longest way along the
   * faces: their length, which is known best.
   */
  @Test
  void readingsBoundTheTaper() {
    Workpiece end = read("ground top front back bottom left right", "33.50 33.51").end();
    Relation parallel = end.relation(Face.FRONT, Face.BACK);
    assertThat(parallel).isNotNull();
    Length longest = end.size(PartDimension.LENGTH).range().low();
    Slope slope = Slope.of(Length.mm("0.018"), longest);
    assertThat(parallel.along(PartDimension.LENGTH)).isEqualTo(slope);
    assertThat(parallel.along(PartDimension.HEIGHT)).isEqualTo(slope);
    assertThat(parallel.along(PartDimension.WIDTH)).isEqualTo(Slope.NONE);
    assertThat(parallel.reason()).startsWith("read as 33.50..33.51 mm");
  }

  @Test
  void rawFacesAreNotParallelHoweverTheyRead() {
    assertThat(
            read("ground top bottom left right back\ncast front", "33.50 33.51")
                .end()
                .relation(Face.FRONT, Face.BACK))
        .isNull();
    assertThat(
            read("ground top bottom left right front\ncast back", "33.50 33.51")
                .end()
                .relation(Face.FRONT, Face.BACK))
        .isNull();
  }
}
