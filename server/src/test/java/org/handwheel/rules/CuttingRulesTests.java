package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The cut itself. Sources: common practice, no source, unless one is named. */
class CuttingRulesTests {
  private static final String DRAWN = "drawn front back top bottom";
  private static final String SAWN = "sawn left right";
  private static final BenchPlan BAR = BenchPlan.of("100 x 30 x 21", DRAWN, SAWN);
  private static final String HOLD = "up top, fixed back, on pair P6x10";

  private static BenchPlan faced(String size, String support, String cut) {
    return BenchPlan.of(size, DRAWN, SAWN).face("up top, fixed back, " + support, "top", cut);
  }

  private static BenchPlan right(String cut) {
    return BAR.end(HOLD, "right", "set z 23 below top", cut);
  }

  /** Rough 10 to 20 thou a pass in aluminium. */
  @ParameterizedTest
  @CsvSource({"10 thou, ''", "20 thou, ''", "21 thou, warning heavy-pass"})
  void roughingPassesOnASmallMill(String depth, String expected) {
    BenchPlan plan = faced("60 x 30 x 21", "on pair P6x10", "clean top at " + depth);
    assertThat(plan.in("aluminium-6082").found()).isEqualTo(list(expected));
  }

  /** A slip of unit may take the whole block away: nothing is said of what would be left of it. */
  @Test
  void afterACutThroughTheWorkNothingIsKnown() {
    BenchPlan plan =
        faced("60 x 30 x 21", "on pair P6x10", "clean top at 10, at most 30")
            .face("up bottom, fixed back, on pair P6x10", "bottom", "clean bottom at 0.2");
    assertThat(plan.found())
        .containsExactlyInAnyOrder(
            "error cutter-meets-jaw", "error cutter-meets-parallel", "warning unit-suspect");
  }

  /** A couple of thou for a climb finishing pass in soft metal; a deep climb cut jumps. */
  @ParameterizedTest
  @CsvSource({
    "'clean right at 1 thou, climb', ''",
    "'clean right at 2 thou, climb', ''",
    "'clean right at 3 thou, climb', ''",
    "'clean right at 1.5, climb', warning heavy-climb",
    "'clean right at 1.5, conventional', ''",
    "'clean right at 1.5', ''",
  })
  void climbing(String cut, String expected) {
    BenchPlan bar = BenchPlan.of("100 x 30 x 21", DRAWN, "milled left right");
    assertThat(bar.end(HOLD, "right", "set z 23 below top", cut).found()).isEqualTo(list(expected));
  }

  /** On the right-hand side with a right-hand cutter front to back is conventional. */
  @ParameterizedTest
  @CsvSource({
    "'conventional, travel front to back', ''",
    "'conventional, travel back to front', warning travel-direction",
    "'climb, travel back to front', ''",
    "'travel back to front', ''",
    "'travel operator-front to operator-back, conventional', ''",
    "'conventional, travel left to right', warning travel-direction",
    "'conventional, travel front to top', warning travel-direction",
    "'conventional, travel front to front', warning travel-direction",
    "'conventional, offset 2 toward front', warning travel-direction",
  })
  void travelAtTheRightHandSide(String clauses, String expected) {
    assertThat(right("clean right at 0.2, at most 1.5, " + clauses).found())
        .isEqualTo(list(expected));
  }

  @ParameterizedTest
  @CsvSource({
    "'', ''",
    "'offset 2 toward front', ''",
    "'offset 2 toward operator-back', ''",
    "'offset 2 toward right', warning travel-direction",
    "'offset 6 toward front', warning face-not-covered",
    "conventional, warning travel-direction",
    "climb, warning travel-direction",
  })
  void facingUnderTheMiddleOfTheCutter(String clauses, String expected) {
    String cut =
        "clean top at 0.3, travel left to right" + (clauses.isEmpty() ? "" : ", ") + clauses;
    assertThat(faced("60 x 30 x 21", "on pair P6x10", cut).found()).isEqualTo(list(expected));
  }

  /** A face wholly to one side of the cutter's axis is what that side makes it. */
  @Test
  void facingWithTheFaceToOneSide() {
    String size = "60 x 12 x 21";
    String right = "clean top at 0.3, travel left to right, offset 8 toward back";
    assertThat(faced(size, "on pair P3x10", right + ", climb").found()).isEmpty();
    assertThat(faced(size, "on pair P3x10", right + ", conventional").found())
        .containsExactly("warning travel-direction");
  }

  /** Geometry: the flat of a 40 mm cutter with 0.4 mm corners is 39.2 wide. */
  @ParameterizedTest
  @CsvSource({
    "38.9, '', ''",
    "39.3, '', warning face-not-covered",
    "60, ', step over 20', ''",
    "60, ', step over 39', ''",
    "60, ', step over 39.5', warning face-not-covered",
    "60, ', step over 25, offset 20 toward back', warning face-not-covered",
  })
  void lanes(String width, String clauses, String expected) {
    BenchPlan plan =
        faced(
            "80 x " + width + " x 21",
            "on pair P6x10",
            "clean top at 0.3, travel left to right" + clauses);
    assertThat(plan.found()).isEqualTo(list(expected));
  }

  /** Proud after the last pass, at the least the work may measure (stock may be 0.3 less). */
  @ParameterizedTest
  @CsvSource({
    "16, 'clean top at 0.3', warning cutter-meets-jaw",
    "16.2, 'clean top at 0.2, at most 0.4', ''",
    "16.2, 'clean top at 0.2, at most 0.5', warning cutter-meets-jaw",
    "15.5, 'clean top at 0.2', error cutter-meets-jaw",
    "10, 'clean top at 0.2', error cutter-meets-jaw",
  })
  void theCutterMustStayAboveTheJaws(String height, String cut, String expected) {
    assertThat(faced("60 x 30 x " + height, "on pair P6x10", cut).found())
        .isEqualTo(list(expected));
  }

  @Test
  void aWallAlongTheJawsIsCutOnlyAboveThem() {
    String[] lines = {
      "hold in V80, " + HOLD,
      "cutter EM16",
      "touch front with paper 0.05, zero y",
      "SET",
      "lock y z",
      "clean front at 0.3, conventional"
    };
    lines[3] = "set z 4 below top";
    assertThat(BAR.setup(lines).found()).containsExactly("warning face-not-covered");
    lines[3] = "set z 23 below top";
    assertThat(BAR.setup(lines).found()).contains("error cutter-meets-jaw");
  }

  @Test
  void anEndMustBeClearOfTheJaws() {
    BenchPlan inside = BenchPlan.of("60 x 30 x 21", DRAWN, SAWN);
    assertThat(
            inside
                .end(HOLD, "right", "set z 23 below top", "clean right at 0.5, at most 1.5")
                .found())
        .contains("error cutter-meets-jaw", "error cutter-meets-parallel");
  }

  /** A wall may be cut at several levels; the deepest must reach its foot. */
  @Test
  void levels() {
    BenchPlan two =
        BAR.setup(
            "hold in V80, " + HOLD,
            "cutter EM16",
            "touch right with paper 0.05, zero x",
            "set z 12 below top",
            "lock x z",
            "clean right at 0.5, at most 1.5",
            "unlock z",
            "set z 23 below top",
            "lock z",
            "clean right at 0.5, at most 1.5");
    assertThat(two.found()).doesNotContain("warning face-not-covered");
    assertThat(
            BAR.end(HOLD, "right", "set z 12 below top", "clean right at 0.5, at most 1.5").found())
        .containsExactly("warning face-not-covered");
  }

  /** Cut toward the solid jaw: Modern Metalworking, p. 460. */
  @ParameterizedTest
  @CsvSource({
    "operator-back, right, right, false",
    "operator-back, right, left, true",
    "operator-front, right, right, true",
    "operator-front, right, left, false",
    "operator-back, left, right, true",
    "operator-back, left, left, false",
  })
  void theCutterPushesTowardTheFixedJaw(String jaw, String hand, String end, boolean wrong) {
    String things =
        "\nown vise W80\n  jaw-width: 80\n  jaw-depth: 25\n  opening: 70\n  fixed-jaw: "
            + jaw
            + "\n\nown cutter E16\n  dia: 16\n  teeth: 4\n  flute: 32\n  hand: "
            + hand
            + "\n";
    // With the fixed jaw in front the front lies on it, so that right stays at operator-right.
    String fixed = jaw.equals("operator-back") ? "back" : "front";
    BenchPlan plan =
        BAR.with(things)
            .setup(
                "hold in W80, up top, fixed " + fixed + ", on pair P6x10",
                "cutter E16",
                "touch " + end + " with paper 0.05, zero x",
                "set z 23 below top",
                "lock x z",
                "clean " + end + " at 0.5, at most 1.5, conventional");
    assertThat(plan.found()).isEqualTo(wrong ? List.of("info force-to-moving-jaw") : List.of());
  }

  /** With a left-hand cutter what is conventional turns round. */
  @Test
  void aLeftHandCutterTurnsTheTravelRound() {
    BenchPlan plan =
        BAR.with("\nown cutter E16\n  dia: 16\n  teeth: 4\n  flute: 32\n  hand: left\n")
            .setup(
                "hold in V80, " + HOLD,
                "cutter E16",
                "touch right with paper 0.05, zero x",
                "set z 23 below top",
                "lock x z",
                "clean right at 0.2, at most 1.5, conventional, travel front to back");
    assertThat(plan.found()).contains("warning travel-direction");
  }

  private static List<String> list(String expected) {
    return expected.isEmpty() ? List.of() : List.of(expected);
  }
}
