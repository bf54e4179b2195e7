package org.handwheel.work.chain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chains on the drawing of a pump's valve box; the sums are elementary and done by hand here. */
class DrawnPointsTests {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private final DrawnPoints valveBox =
      points(
          """
          part
            tolerance 0 +-0.5, 0.0 +-0.2, 0.00 +-0.05
            length 60.0 +-0.1
            width 40.0
            height 20.0 +0/-0.1
            hole inlet in top, dia 10 H7, at (15.00, 12.0) from left front, through
            hole outlet in top, dia 8.0, at (15.00, 12.0) from right front, through
            hole drain in top, dia 6 +-0.1, depth 14, at (0, 10.0) from centre
            hole side in front, M6, thread 7, drill 12, at (20, 8) from left bottom
            hole stud in top, dia 5.0, through
            slot guide in top, at (30.00, 20.0) from left front, width 5 +0.1/-0, length 20, depth 3
            outline rim in top, at (0, 0) from centre, obround 50 x 30, tolerance +-0.2
            pattern studs of stud, row, count 3, at (10.00, 30.0) from left front, by (20, 0)
            hole screw in top, dia 4.0, through
            pattern screws of screw, at (5.00, 6.0) from left front, mirrored left to right
            hole lug in top, dia 4.0, through
            pattern lugs of lug, at (20.0, 0) from centre, mirrored left to right
          """);

  private static DrawnPoints points(String part) {
    String text = "language 1\nplan \"Valve box\"\n  units mm\n" + part;
    Checked checked =
        new Checker(TABLES).check(Workspace.of(SyntaxTree.parse("t.plan", text)), "t.plan");
    assertThat(checked.run()).isNotNull();
    return DrawnPoints.of(checked.run().plan(), checked.run().drawing(), TABLES).orElseThrow();
  }

  private DrawnChain chain(String from, String to, String along) {
    return valveBox
        .chain(from, to, PartDimension.valueOf(along.toUpperCase(Locale.ROOT)))
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    // one size
    "left, right, length, 60, 59.9, 60.1",
    "left, inlet, length, 15, 14.95, 15.05",
    // length 60 +-0.1 less 15 +-0.05
    "inlet, right, length, 45, 44.85, 45.15",
    // both coordinates and the length
    "inlet, outlet, length, 30, 29.8, 30.2",
    // both count from the front: +-0.2 each
    "inlet, outlet, width, 0, -0.4, 0.4",
    // half the length is +-0.05; the hole +-0.5 from it
    "left, drain, length, 30, 29.45, 30.55",
    "right, drain, length, 30, 29.45, 30.55",
    // 15 +-0.05 less half of 10 H7, 5 to 5.0075
    "left, left of inlet, length, 10, 9.9425, 10.05",
    // height 19.9 to 20 less 14 with the shop's limit of 0.1, as depths have no tolerance
    "bottom, floor of drain, height, 6, 5.8, 6.1",
    // the pattern's start drops out; the step has the shop's limit of 0.1
    "studs 1, studs 2, length, 20, 19.9, 20.1",
    "left, studs 2, length, 30, 29.85, 30.15",
    // a slot from the left, 15 +-0.05 and 30 +-0.05; both middles from the front, +-0.2 each
    "inlet, guide, length, 15, 14.9, 15.1",
    "inlet, guide, width, 8, 7.6, 8.4",
    // its middle less half its length, 20 +-0.5 by the places written; half its width 5 +0.1/-0
    "left, left of guide, length, 20, 19.7, 20.3",
    "front, front of guide, width, 17.5, 17.25, 17.7",
    // height 19.9 to 20 less 3 with the shop's limit of 0.1
    "bottom, floor of guide, height, 17, 16.8, 17.1",
    // half the length +-0.05, the middle as written with whole numbers +-0.5, the form +-0.2
    "left, left of rim, length, 5, 4.25, 5.75",
    // the mirror's side: the length +-0.1 less 5 +-0.05; both of one pattern less twice that
    "left, screws 2, length, 55, 54.85, 55.15",
    "screws 2, right, length, 5, 4.95, 5.05",
    "screws 1, screws 2, length, 50, 49.8, 50.2",
    "front, screws 2, width, 6, 5.8, 6.2",
    // from the centre each is 20 +-0.2 to its side
    "lugs 1, lugs 2, length, 40, 39.6, 40.4",
    // a floor in the front
    "back, floor of side, width, 28, 27.7, 28.3",
    // 15 +-0.05 from the right less half of 8.0 +-0.2
    "right, right of outlet, length, 11, 10.85, 11.15",
    "right, left of outlet, length, 19, 18.85, 19.15",
    // 12 +-0.2 less, or more, half of 10 H7
    "front, front of inlet, width, 7, 6.7925, 7.2",
    "front, back of inlet, width, 17, 16.8, 17.2075",
    // depths alone
    "top, floor of drain, height, 14, 13.9, 14.1",
    "front, floor of side, width, 12, 11.9, 12.1",
    "top, floor of guide, height, 3, 2.9, 3.1",
    // whole numbers are +-0.5; a thread has its diameter
    "left, side, length, 20, 19.5, 20.5",
    "bottom, side, height, 8, 7.5, 8.5",
    "top, side, height, 12, 11.4, 12.5",
    "left, left of side, length, 17, 16.5, 17.5",
    "bottom, top of side, height, 11, 10.5, 11.5",
    // two steps of a pattern are one size of the drawing
    "studs 1, studs 3, length, 40, 39.9, 40.1",
    "front, studs 2, width, 30, 29.8, 30.2",
    // half the width +-0.1, the middle +-0.5, the form +-0.2
    "front, front of rim, width, 5, 4.2, 5.8",
    "right, right of rim, length, 5, 4.25, 5.75",
    "left, guide, length, 30, 29.95, 30.05",
    // a point and itself
    "inlet, inlet, length, 0, 0, 0"
  })
  void sizesAddUp(String from, String to, String along, String nominal, String low, String high) {
    DrawnChain chain = chain(from, to, along);
    assertThat(chain.nominal()).isEqualTo(Length.mm(nominal));
    assertThat(chain.sizes().worstCase())
        .isEqualTo(new LengthRange(Length.mm(low), Length.mm(high)));
  }

  private final DrawnPoints behind =
      points(
          """
          part
            tolerance 0 +-0.5, 0.0 +-0.2, 0.00 +-0.05
            length 60.0 +-0.1
            width 40.0 +-0.2
            height 20.0
            hole a in bottom, dia 5.0, depth 8, at (10.00, 6.0) from right back
            slot s in bottom, at (15.00, 6.0) from left back, width 5, length 20, depth 3
            pocket p in bottom, at (40.00, 6.0) from left back, width 5, length 20, depth 20
            hole c in top, dia 4.0, through
            pattern ring of c, circle dia 20, count 4, about (30.00, 20.0) from left front
            hole g in top, dia 3.0, through
            pattern net of g, grid 2 x 2, at (5.00, 5.0) from left front, by (10, 8)
            hole m in top, dia 3.0, through
            pattern mids of m, at (0.00, 7.0) from left front, mirrored front to back
            corner nose seen from top, radius 5, at (0, 0) from right front
            chamfer lip in top, width 1
          """);

  @ParameterizedTest
  @CsvSource({
    "bottom, floor of a, height, 8, 7.9, 8.1",
    // height 20 +-0.2 less the depth
    "top, floor of a, height, 12, 11.7, 12.3",
    "right, a, length, 10, 9.95, 10.05",
    "back, a, width, 6, 5.8, 6.2",
    "front, a, width, 34, 33.6, 34.4",
    "bottom, floor of s, height, 3, 2.9, 3.1",
    "front, s, width, 34, 33.6, 34.4",
    "s, a, width, 0, -0.4, 0.4",
    "left, s, length, 15, 14.95, 15.05",
    // from the middle of the circle half its diameter, as one size of the shop's limit
    "left, ring 1, length, 40, 39.85, 40.15",
    "front, ring 2, width, 30, 29.7, 30.3",
    "left, ring 2, length, 30, 29.95, 30.05",
    "net 1, net 4, length, 10, 9.9, 10.1",
    "net 1, net 4, width, 8, 7.9, 8.1",
    // the mirror's side: width 40 +-0.2 less 7 +-0.2
    "front, mids 2, width, 33, 32.6, 33.4",
    "back, mids 2, width, 7, 6.8, 7.2",
    "back, front of mids 2, width, 8.5, 8.2, 8.8"
  })
  void sizesFromTheBackAndTheBottom(
      String from, String to, String along, String nominal, String low, String high) {
    DrawnChain chain =
        behind.chain(from, to, PartDimension.valueOf(along.toUpperCase(Locale.ROOT))).orElseThrow();
    assertThat(chain.nominal()).isEqualTo(Length.mm(nominal));
    assertThat(chain.sizes().worstCase())
        .isEqualTo(new LengthRange(Length.mm(low), Length.mm(high)));
  }

  /** Corners and chamfers have no middle, through features no floor, pockets no walls here. */
  @Test
  void whatIsNoPoint() {
    assertThat(behind.names())
        .contains("left", "top", "a", "floor of a", "s", "floor of s", "p", "ring 4", "net 4")
        .doesNotContain("nose", "lip", "floor of p", "floor of c", "floor of ring 1");
    assertThat(valveBox.names()).doesNotContain("floor of inlet");
    assertThat(valveBox.names()).contains("left of rim", "back of rim");
  }

  /** The links say which size, how often it counts and where it is written. */
  @Test
  void linksInWords() {
    DrawnChain chain = chain("inlet", "right", "length");
    assertThat(chain.links())
        .extracting(link -> link.size().words() + " " + link.halves())
        .containsExactlyInAnyOrder("length 2", "inlet from the left -2");
    assertThat(chain("left", "outlet", "length").links())
        .extracting(link -> link.size().words() + " " + link.halves())
        .containsExactlyInAnyOrder("length 2", "outlet from the right -2");
    assertThat(chain("left", "drain", "length").links())
        .extracting(link -> link.size().words() + " " + link.halves())
        .contains("length 1");
    assertThat(chain("front", "front of inlet", "width").links())
        .extracting(link -> link.size().words() + " " + link.halves())
        .containsExactlyInAnyOrder("inlet from the front 2", "dia of inlet -1");
    assertThat(chain("left", "left of rim", "length").links())
        .extracting(link -> link.size().words())
        .contains("rim from the centre", "length of rim");
  }

  /** The other way is the same distance. */
  @Test
  void aChainIsCountedForward() {
    assertThat(chain("right", "inlet", "length").nominal()).isEqualTo(Length.mm("45"));
    assertThat(chain("right", "inlet", "length").sizes().worstCase())
        .isEqualTo(chain("inlet", "right", "length").sizes().worstCase());
  }

  /** Three sizes of 0.1, 0.05 and 0.05: the root of 0.015. */
  @Test
  void theLikelySpreadIsTheRootOfTheSumOfTheSquares() {
    assertThat(chain("inlet", "outlet", "length").sizes().likely().spread().millimetres())
        .isCloseTo(Math.sqrt(0.1 * 0.1 + 2 * 0.05 * 0.05), within(1e-9));
  }

  @Test
  void pointsThatAreNotAndDirectionsThatAreNot() {
    assertThat(valveBox.chain("inlet", "right", PartDimension.HEIGHT)).isEmpty();
    assertThat(valveBox.chain("intake", "right", PartDimension.LENGTH)).isEmpty();
    assertThat(valveBox.directions("left", "inlet")).containsExactly(PartDimension.LENGTH);
    assertThat(valveBox.directions("inlet", "OUTLET"))
        .containsExactly(PartDimension.LENGTH, PartDimension.WIDTH);
    assertThat(valveBox.directions("top", "left")).isEmpty();
  }

  @Test
  void aDrawingWithoutASizeHasNoChainOverIt() {
    DrawnPoints bare =
        points(
            "part\n  length 60\n  hole a in top, dia 5, at (10, 10) from right front, through\n");
    assertThat(bare.chain("left", "a", PartDimension.LENGTH)).isPresent();
    assertThat(bare.chain("front", "a", PartDimension.WIDTH)).isPresent();
    assertThat(bare.chain("back", "a", PartDimension.WIDTH)).isEmpty();
  }
}
