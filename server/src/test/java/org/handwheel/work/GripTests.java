package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Work of 60 x 33.5 x 24.5 give or take 0.3, jaws 80 wide and 25 deep. */
class GripTests {
  private static Grip held(String how) {
    return Worked.block().setup("a", "hold in " + how).grip();
  }

  private static Length mm(String value) {
    return Length.mm(value);
  }

  @Test
  void inTheMiddleOnParallels() {
    Grip grip = held("V80, up top, fixed back, on pair P6x10");

    assertThat(grip.seat()).isEqualTo(mm("10"));
    // 25 - 10, however high the work is: it stands above the jaws.
    assertThat(grip.depth().low()).isEqualTo(mm("15"));
    assertThat(grip.depth().high()).isEqualTo(mm("15"));
    // 10 + 24.5 - 25, give or take 0.3.
    assertThat(grip.proud().low()).isEqualTo(mm("9.2"));
    assertThat(grip.proud().high()).isEqualTo(mm("9.8"));
    assertThat(grip.opening()).isEqualTo(mm("33.8"));
    assertThat(grip.workLeft()).isEqualTo(mm("-30"));
    assertThat(grip.workRight()).isEqualTo(mm("30"));
    assertThat(grip.gripLength()).isEqualTo(mm("60"));
    assertThat(grip.offCentre()).isEqualTo(Length.ZERO);
    assertThat(grip.supportSpan()).isEqualTo(mm("60"));
    assertThat(grip.parallelCount()).isEqualTo(2);
    assertThat(grip.fixedFace()).isEqualTo(Face.BACK);
    assertThat(grip.movingFace()).isEqualTo(Face.FRONT);
    assertThat(grip.underFace()).isEqualTo(Face.BOTTOM);
    assertThat(grip.overhang(Direction.OPERATOR_RIGHT)).isEqualTo(mm("-10"));
  }

  /** Check row B45, arithmetic: 38 deep jaws, 12 high, 5 proud: 31 high parallels grip 7. */
  @Test
  void aLowPieceIsGrippedByLessThanItsHeight() {
    Grip grip =
        Worked.block()
            .toward("length 56\nwidth 30\nheight 12")
            .from("size 60 x 33.5 x 12\nground front back top bottom left right")
            .setup("a", "hold in V80, up top, fixed back, on soft-strip 18")
            .grip();

    // 25 - 18 = 7 gripped and 12 - 7 = 5 standing out, as 38 - 31 = 7 there.
    assertThat(grip.depth().low()).isEqualTo(mm("7"));
    assertThat(grip.proud().middle()).isEqualTo(mm("5"));
    assertThat(grip.parallelCount()).isZero();
    assertThat(grip.parallels()).isEmpty();
  }

  @Test
  void workBelowTheJawsIsGrippedOverItsWholeHeight() {
    Grip grip =
        Worked.block()
            .from("size 60 x 33.5 x 24.5\nground front back top bottom left right")
            .setup("a", "hold in V80, up top, fixed back, on bed")
            .grip();

    assertThat(grip.depth().low()).isEqualTo(mm("24.2"));
    assertThat(grip.depth().high()).isEqualTo(mm("24.8"));
    assertThat(grip.proud().high()).isEqualTo(mm("-0.2"));
    assertThat(grip.seat()).isEqualTo(Length.ZERO);
    assertThat(grip.supportSpan()).isEqualTo(mm("60"));
  }

  @ParameterizedTest
  @CsvSource({
    // how, left end, right end, grip from, grip to
    "'at operator-right', -20, 40, -20, 40",
    "'at operator-left', -40, 20, -40, 20",
    "'overhang right 9', -11, 49, -11, 40",
    "'overhang operator-left 9', -49, 11, -40, 11"
  })
  void atAnEndOfTheJaws(String how, String left, String right, String from, String to) {
    Grip grip = held("V80, up top, fixed back, on pair P6x10, " + how);

    assertThat(grip.workLeft()).isEqualTo(mm(left));
    assertThat(grip.workRight()).isEqualTo(mm(right));
    assertThat(grip.gripLeft()).isEqualTo(mm(from));
    assertThat(grip.gripRight()).isEqualTo(mm(to));
    assertThat(grip.gripLength()).isEqualTo(mm(to).minus(mm(from)));
    assertThat(grip.offCentre().times(2)).isEqualTo(mm(from).plus(mm(to)));
  }

  @Test
  void turnedOverThePartsRightOverhangsAtTheOperatorsLeft() {
    Grip grip = held("V80, up bottom, fixed back, on pair P6x10, overhang right 9");

    assertThat(grip.overhang(Direction.OPERATOR_LEFT)).isEqualTo(mm("9"));
    assertThat(grip.overhang(Direction.OPERATOR_RIGHT)).isEqualTo(mm("-29"));
    // The parallels reach 35 to either side.
    assertThat(grip.supportSpan()).isEqualTo(mm("46"));
  }

  @Test
  void longWorkOverhangsBothEnds() {
    Grip grip =
        Worked.block()
            .from("size 100 x 33.5 x 24.5\ncast front back top bottom\nsawn left right")
            .setup("a", "hold in V80, up top, fixed back, on bed")
            .grip();

    assertThat(grip.overhang(Direction.OPERATOR_LEFT)).isEqualTo(mm("10"));
    assertThat(grip.overhang(Direction.OPERATOR_RIGHT)).isEqualTo(mm("10"));
    assertThat(grip.gripLength()).isEqualTo(mm("80"));
    // The bed carries no more of it than lies between the jaws.
    assertThat(grip.supportSpan()).isEqualTo(mm("80"));
  }

  @Test
  void aBarAndPackingWidenTheOpening() {
    Grip bar = held("V80, up top, fixed back, on pair P6x10, bar 8 at mid-grip");
    Grip beside = held("V80, up top, fixed back, on pair P6x10, beside shim");

    assertThat(bar.opening()).isEqualTo(mm("41.8"));
    assertThat(bar.clamped()).isEqualTo(bar.gripped().plus(mm("8")));
    assertThat(beside.opening()).isEqualTo(mm("36.8"));
    assertThat(beside.clamped()).isEqualTo(beside.gripped().plus(mm("3")));
  }

  @Test
  void withTheFixedJawInFrontTheNamedFaceLooksAtTheOperator() {
    Grip grip = held("F80, up top, fixed back, on pair P6x10, overhang right 9");

    assertThat(grip.orientation().facing(Direction.OPERATOR_FRONT)).isEqualTo(Face.BACK);
    assertThat(grip.fixedFace()).isEqualTo(Face.BACK);
    assertThat(grip.overhang(Direction.OPERATOR_LEFT)).isEqualTo(mm("9"));
  }

  /** Common practice: parallels as thick as the work take the clamping force. */
  @Test
  void parallelsAsThickAsTheWorkTakeTheForce() {
    String thin = "size 60 x 32 x 24.5\ncast front back top bottom\nsawn left right";
    Worked work = Worked.block().from(thin);
    String pair = "hold in V80, up top, fixed back, on pair P16x5";

    assertThat(Holding.isLoose(work.setup("a", pair).grip())).isTrue();
    assertThat(Holding.parallelsThickness(work.setup("a", pair).grip())).isEqualTo(mm("32"));
    // A second parallel or packing beside the work cures it, and so does a bar.
    assertThat(Holding.isLoose(work.setup("a", pair + ", beside shim").grip())).isFalse();
    assertThat(Holding.isLoose(work.setup("a", pair + ", bar 8 at mid-grip").grip())).isFalse();
    assertThat(
            Holding.isLoose(
                work.setup("a", "hold in V80, up top, fixed back, on one P16x5").grip()))
        .isFalse();
    assertThat(Holding.isLoose(held("V80, up top, fixed back, on pair P6x10"))).isFalse();
  }

  @Test
  void aSpacerOfTheWorksWidthKeepsTheJawStraight() {
    String start = "V80, up top, fixed back, on pair P6x10, overhang right 9";
    Grip without = known(start);
    Grip good = known(start + ", spacer 33.4 at operator-left");
    Grip narrow = known(start + ", spacer 33.3 at operator-left");
    Grip wide = known(start + ", spacer 33.49 at operator-left");
    Grip misplaced = known(start + ", spacer 33.4 at operator-right");

    assertThat(Holding.needsSpacer(without)).isTrue();
    assertThat(Holding.needsSpacer(known("V80, up top, fixed back, on pair P6x10"))).isFalse();
    assertThat(Holding.isCocked(known("V80, up top, fixed back, on pair P6x10"))).isFalse();
    assertThat(Holding.pullsOutside(without)).isFalse();
    assertThat(Holding.isCocked(without)).isTrue();
    assertThat(Holding.isCocked(misplaced)).isTrue();
    assertThat(Holding.isCocked(good)).isFalse();
    // 0.22 over 29 is more than the 5 in 1000 the jaw may swivel.
    assertThat(Holding.isCocked(narrow)).isTrue();
    // 33.5 - 0.02 is less than the spacer: the work may be loose.
    assertThat(Holding.isCocked(wide)).isTrue();
    // Middle of the grip 14.5 from the screw, the spacer as far on the other side.
    assertThat(Holding.cock(good)).isEqualTo(Slope.of(mm("0.12"), mm("29")));
    assertThat(Holding.cock(without)).isEqualTo(Slope.NONE);
    assertThat(Holding.cock(known(start + ", spacer 33.6 at operator-left"))).isEqualTo(Slope.NONE);
  }

  private static Grip known(String how) {
    return Worked.block()
        .on(Worked.INCH_MILL + "own limits usual\n  stock-variation: 0.02\n")
        .setup("a", "hold in " + how)
        .grip();
  }

  @Test
  void aScrewThatPullsOutsideTheWorkCannotHoldIt() {
    String small = "size 20 x 33.5 x 24.5\ncast front back top bottom\nsawn left right";
    String hold = "hold in V80, up top, fixed back, on pair P6x10, at operator-right";

    assertThat(Holding.pullsOutside(Worked.block().from(small).setup("a", hold).grip())).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"15, true", "20, true", "14.9, false", "20.1, false"})
  void theBarBearsInTheMiddleThirdOfTheGrip(String height, boolean within) {
    // The grip runs from 10 to 25 above the bed.
    Grip grip = held("V80, up top, fixed back, on pair P6x10, bar 8 at " + height);

    assertThat(Holding.isBarInMiddleThird(grip)).isEqualTo(within);
  }
}
