package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.junit.jupiter.api.Test;

/**
 * How true the faces come, budget by budget, and why a pair is missing where nothing rules it. The
 * budgets add (worst case): jaw 0.02 over 100, tram 0.02 over 150, seat 0.005, parallels 0.005
 * apart (common practice, no source), each over the length that it acts on.
 */
class SquaringBudgetTests {
  private static final Slope TRAM = Slope.of(Length.mm("0.02"), Length.mm("150"));
  private static final Slope JAW = Slope.of(Length.mm("0.02"), Length.mm("100"));
  private static final String MILLED =
      "size 60 x 33.5 x 24.5\nground top front back bottom left right";
  private static final String FACE_TOP =
      "cutter FC40\ntouch top with paper 0.05, zero z\nclean top at 0.1, at most 0.2";

  private static Relation relation(Worked plan, Face a, Face b) {
    Relation relation = plan.end().relation(a, b);
    assertThat(relation).as(a + " to " + b).isNotNull();
    return relation;
  }

  private static Obstacle obstacle(Worked plan, Face a, Face b) {
    Obstacle obstacle = plan.end().obstacles().get(new FacePair(a, b));
    assertThat(obstacle).as(a + " to " + b).isNotNull();
    return obstacle;
  }

  private static Length low(Worked plan, PartDimension dimension) {
    return plan.run().setups().get(0).steps().get(0).before().size(dimension).range().low();
  }

  /** On the table both ways of the seat act over 100 mm. */
  @Test
  void clampedToTheTable() {
    Worked plan =
        Worked.block()
            .from(MILLED)
            .setup("one", "hold on table, up top, clamp strap at (5, 15)\n" + FACE_TOP);
    Slope seat = Slope.of(Length.mm("0.005"), Length.mm("100"));
    Relation parallel = relation(plan, Face.TOP, Face.BOTTOM);
    assertThat(parallel.along(PartDimension.LENGTH)).isEqualTo(seat.plus(TRAM));
    assertThat(parallel.along(PartDimension.WIDTH)).isEqualTo(seat.plus(TRAM));
    assertThat(parallel.along(PartDimension.HEIGHT)).isEqualTo(Slope.NONE);
    // The sides are not known to be square to the bottom, so not to the top.
    for (Face side : new Face[] {Face.BACK, Face.FRONT, Face.LEFT, Face.RIGHT}) {
      assertThat(obstacle(plan, Face.TOP, side).kind()).isEqualTo(Obstacle.Kind.OTHER);
      assertThat(obstacle(plan, Face.TOP, side).why()).contains("nothing in this setup rules");
    }
  }

  @Test
  void onARawFaceNothingIsProved() {
    Worked plan =
        Worked.block()
            .setup(
                "one",
                "hold on table, up top, clamp strap at (5, 15)\n"
                    + FACE_TOP.replace("at 0.1, at most 0.2", "at 0.4, at most 1.2"));
    for (Face other : new Face[] {Face.BACK, Face.FRONT, Face.BOTTOM}) {
      assertThat(obstacle(plan, Face.TOP, other).kind()).isEqualTo(Obstacle.Kind.RAW_UNDER);
    }
    assertThat(obstacle(plan, Face.TOP, Face.LEFT).kind()).isEqualTo(Obstacle.Kind.OTHER);
    assertThat(obstacle(plan, Face.TOP, Face.RIGHT).kind()).isEqualTo(Obstacle.Kind.OTHER);
  }

  /**
   * On parallels 6 thick at either jaw the seat acts across over the width less 6, with what the
   * parallels differ by; along over the work's length that lies on them.
   */
  @Test
  void seatedOnParallels() {
    Worked plan =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                "hold in V80, up top, fixed back, on pair P6x10\n"
                    + "seat tapped, both parallels tight\nmeasure width with mic")
            .log("in one: read width 33.50 33.51 with mic");
    Worked cut =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                "hold in V80, up top, fixed back, on pair P6x10, overhang right 9\n"
                    + "seat tapped, both parallels tight\n"
                    + FACE_TOP);
    assertThat(plan.end().relation(Face.FRONT, Face.BACK)).isNotNull();
    Relation parallel = relation(cut, Face.TOP, Face.BOTTOM);
    // Length 60 from -11 to 49 on parallels that reach from -35 to 35: 46 of it.
    Slope along = Slope.of(Length.mm("0.005"), Length.mm("46"));
    Length spacing = low(cut, PartDimension.WIDTH).minus(Length.mm("6"));
    assertThat(parallel.along(PartDimension.LENGTH)).isEqualTo(along.plus(TRAM));
    assertThat(parallel.along(PartDimension.WIDTH))
        .isEqualTo(Slope.of(Length.mm("0.01"), spacing).plus(TRAM));
  }

  /**
   * Against an angle plate: 0.02 over 100 as for a vise, and the face's flatness over its height.
   */
  @Test
  void againstAnAnglePlate() {
    Worked plan =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                "hold on angle-plate AP, up top, fixed back, clamp strap at (5, 15)\n"
                    + "seat tapped\n"
                    + FACE_TOP);
    Length flatness = plan.run().setups().get(0).steps().get(0).before().face(Face.BACK).flatness();
    assertThat(flatness).isNotNull();
    Slope jaw = JAW.plus(Slope.of(flatness, plan.end().size(PartDimension.HEIGHT).range().low()));
    Relation square = relation(plan, Face.TOP, Face.BACK);
    assertThat(square.along(PartDimension.HEIGHT)).isEqualTo(jaw.plus(TRAM));
    assertThat(square.reason()).isEqualTo("cut with the back against the angle plate");
    // The plate rules the lean; that the bottom is square to the back is not known.
    assertThat(obstacle(plan, Face.TOP, Face.BOTTOM).kind()).isEqualTo(Obstacle.Kind.CONFLICT);
    assertThat(obstacle(plan, Face.TOP, Face.BOTTOM).why())
        .contains("the fixed jaw rules the lean");
    assertThat(obstacle(plan, Face.TOP, Face.FRONT)).isNotNull();
  }

  @Test
  void lessThanHalfOnTheParallels() {
    // On parallels of 20 only a third of the length of 60 is carried.
    Worked plan =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                "hold in V80, up top, fixed back, on pair S6x10, bar 8 at mid-grip\n"
                    + "seat tapped, both parallels tight\n"
                    + FACE_TOP);
    assertThat(relation(plan, Face.TOP, Face.BACK).reason())
        .isEqualTo("cut with the back on the fixed jaw");
    assertThat(plan.end().relation(Face.TOP, Face.BOTTOM)).isNull();
    assertThat(obstacle(plan, Face.TOP, Face.BOTTOM)).isNotNull();
    Worked seated =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                "hold in V80, up top, fixed back, on pair S6x10, overhang right 9\n"
                    + "seat tapped, both parallels tight\n"
                    + FACE_TOP);
    assertThat(obstacle(seated, Face.TOP, Face.BOTTOM).why())
        .contains("less than half its length lies on the parallels");
  }

  /** A face that keeps marks of its skin proves nothing of any other. */
  @Test
  void marksThatAreLeft() {
    Worked plan =
        Worked.block()
            .setup(
                "one",
                "hold in V80, up top, fixed back, on pair P6x10\n"
                    + FACE_TOP.replace(
                        "clean top at 0.1, at most 0.2", "rough top to 24.45, one pass"));
    for (Face other : new Face[] {Face.BACK, Face.FRONT, Face.BOTTOM, Face.LEFT, Face.RIGHT}) {
      assertThat(obstacle(plan, Face.TOP, other).kind()).isEqualTo(Obstacle.Kind.MARKS_LEFT);
      assertThat(obstacle(plan, Face.TOP, other).why()).contains("still has marks");
    }
  }

  /** Two walls cut in one grip are as parallel as the table runs: twice 0.005 over 100. */
  @Test
  void twoWallsInOneGrip() {
    Worked plan =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                """
                hold on table, up top, clamp strap at (30, 15)
                cutter EM16
                touch front with paper 0.05, zero y
                set z 10 below top
                clean front at 0.1, at most 0.2
                touch back with paper 0.05, zero y
                clean back at 0.1, at most 0.2
                """);
    Slope table = Slope.of(Length.mm("0.01"), Length.mm("100"));
    Relation walls = relation(plan, Face.FRONT, Face.BACK);
    assertThat(walls.reason()).isEqualTo("both cut in one grip");
    assertThat(walls.along(PartDimension.LENGTH)).isEqualTo(table);
    assertThat(walls.along(PartDimension.HEIGHT)).isEqualTo(table);
    assertThat(walls.along(PartDimension.WIDTH)).isEqualTo(Slope.NONE);
    // Along the seat the walls are square to the bottom.
    assertThat(relation(plan, Face.FRONT, Face.BOTTOM).along(PartDimension.HEIGHT))
        .isEqualTo(Slope.of(Length.mm("0.005"), Length.mm("100")).plus(TRAM));
    for (Face other : new Face[] {Face.LEFT, Face.RIGHT, Face.TOP}) {
      assertThat(obstacle(plan, Face.BACK, other).kind()).isEqualTo(Obstacle.Kind.OTHER);
    }
  }

  /**
   * A square's error over half the height it stands along. Not tapped down the work is not proved
   * to sit, so its seat does not rule.
   */
  @Test
  void uprightByASquare() {
    Worked plan =
        Worked.block()
            .from(MILLED)
            .setup(
                "one",
                "hold in V80, up right, fixed top, on bed, bar 8 at mid-grip\n"
                    + "seat upright on back with square50\n"
                    + "cutter FC40\ntouch right with paper 0.05, zero z\n"
                    + "clean right at 0.1, at most 0.2");
    Length half = low(plan, PartDimension.LENGTH).half();
    Relation square = relation(plan, Face.RIGHT, Face.BACK);
    assertThat(square.reason()).isEqualTo("set upright by a square on the back");
    assertThat(square.along(PartDimension.WIDTH))
        .isEqualTo(Slope.of(Length.mm("0.01"), half).plus(TRAM));
    // Of the front, on the other side, nothing was shown.
    assertThat(obstacle(plan, Face.RIGHT, Face.FRONT).why()).contains("nothing in this setup");
  }

  /** A face that still has marks is no reference for what is cut in the same grip. */
  @Test
  void besideAFaceWithMarks() {
    Worked plan =
        Worked.block()
            .setup(
                "one",
                """
                hold on table, up top, clamp strap at (5, 15)
                cutter FC60
                touch top with paper 0.05, zero z
                rough top to 24.45, one pass
                cutter EM16
                touch right with paper 0.05, zero x
                set z 10 below top
                clean right at 0.5, at most 1.5
                """);
    assertThat(plan.end().relation(Face.RIGHT, Face.TOP)).isNull();
    assertThat(obstacle(plan, Face.RIGHT, Face.TOP).why())
        .isEqualTo("the top was not machined yet");
  }

  /** Cutting one face says nothing new of pairs that it is not one of. */
  @Test
  void obstaclesOfOtherPairsStay() {
    Worked one =
        Worked.block()
            .setup(
                "one",
                "hold in V80, up top, fixed back, on pair P6x10\n"
                    + FACE_TOP.replace("at 0.1, at most 0.2", "at 0.4, at most 1.2"));
    Worked two =
        one.setup(
            "two",
            "hold in V80, up right, fixed top, on bed\ncutter FC40\n"
                + "touch right with paper 0.05, zero z\nclean right at 0.5, at most 1.5");
    for (Face other : new Face[] {Face.BACK, Face.FRONT, Face.BOTTOM}) {
      assertThat(obstacle(two, Face.TOP, other).why())
          .isEqualTo(obstacle(one, Face.TOP, other).why());
    }
  }
}
