package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.handwheel.model.Face;
import org.handwheel.work.PlanRun;
import org.handwheel.work.Relation;
import org.handwheel.work.Workpiece;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How work is held and what that proves. Sources: common practice, no source, unless one is named.
 */
class HoldingRulesTests {
  private static final String DRAWN = "drawn front back top bottom";
  private static final String CAST = "cast front back top bottom";
  private static final String SAWN = "sawn left right";
  private static final String TIGHT = "seat tapped, both parallels tight";

  private static final BenchPlan BLOCK = BenchPlan.of("60 x 33.5 x 24.5", CAST, SAWN);

  /** The block with its top cleaned. */
  private static final BenchPlan TOPPED =
      BLOCK.face("up top, fixed back, on pair P6x10", "top", "clean top at 0.4, at most 1.2");

  private static final String ON_JAW = "up back, fixed top, on soft-strip 1.6";
  private static final String CLEAN_BACK = "clean back at 0.4, at most 1.2";

  private static Relation relation(BenchPlan plan, Face face, Face other) {
    PlanRun run = plan.check().run();
    assertThat(run).isNotNull();
    Workpiece end = run.end();
    return end.relation(face, other);
  }

  // ---- Parallels between the jaws

  /** Parallels as thick as the work take the clamping force; a second one beside it cures that. */
  @ParameterizedTest
  @CsvSource({
    "60 x 30 x 6, on one P6x10, error",
    "60 x 30 x 6, 'on one P6x10, beside P6x10', ''",
    "60 x 30 x 6.4, on one P6x10, warning",
    "60 x 30 x 6.6, on one P6x10, ''",
    "60 x 30 x 6, on one P3x10, ''",
    "60 x 30 x 12, on pair P6x10, error",
    "60 x 30 x 12.9, on pair P6x10, warning",
    "60 x 30 x 13.4, on pair P6x10, ''",
    // The jaw is kept off the parallels by what stands between, if that is thick enough.
    "60 x 30 x 12, 'on pair P6x10, bar 8 at mid-grip', ''",
    "60 x 30 x 12, 'on pair P6x10, bar 0.2', error",
  })
  void parallelsAsThickAsTheWorkTakeTheForce(String size, String support, String weight) {
    BenchPlan plan =
        BenchPlan.of(size, DRAWN, SAWN)
            .face("up back, fixed top, " + support, "back", "clean back at 0.4");
    assertThat(plan.found().stream().filter(found -> found.endsWith("grips-parallels")))
        .hasSize(weight.isEmpty() ? 0 : 1)
        .allMatch(found -> found.startsWith(weight));
  }

  @Test
  void looseWorkProvesNothing() {
    BenchPlan loose =
        BenchPlan.of("60 x 12 x 30", "milled back bottom", "drawn front top", SAWN)
            .face("up top, fixed back, on pair P6x10, bar 0.2", "top", "clean top at 0.4", TIGHT);
    assertThat(loose.found()).contains("error grips-parallels");
    assertThat(relation(loose, Face.TOP, Face.BACK)).isNull();
    assertThat(relation(loose, Face.TOP, Face.BOTTOM)).isNull();
  }

  /** Flat stock on edge, faces already parallel: one parallel rules its tilt, the jaw its lean. */
  @Test
  void aSingleParallelUnderStockOnEdgeRulesItsLength() {
    BenchPlan edge =
        BenchPlan.of("60 x 33 x 9", DRAWN, SAWN)
            .face("up top, fixed back, on pair P6x22", "top", "clean top at 0.4")
            .face("up bottom, fixed back, on pair P6x22", "bottom", "clean bottom at 0.4", TIGHT)
            .face("up back, fixed top, on one P6x10", "back", "clean back at 0.4")
            .face(
                "up front, fixed top, on one P6x10", "front", "clean front at 0.4", "seat tapped");
    assertThat(relation(edge, Face.TOP, Face.BOTTOM)).isNotNull();
    assertThat(relation(edge, Face.BACK, Face.TOP)).isNotNull();
    assertThat(relation(edge, Face.FRONT, Face.TOP)).isNotNull();
    assertThat(relation(edge, Face.FRONT, Face.BACK)).isNotNull();
  }

  // ---- The bar

  /** Round bar until two faces are parallel: teaching pages on squaring. */
  @Test
  void aBarIsWantedUntilTwoFacesAreParallel() {
    assertThat(TOPPED.face(ON_JAW, "back", CLEAN_BACK).found())
        .containsExactly("warning bar-missing");
    BenchPlan barred = TOPPED.face(ON_JAW + ", bar 8 at mid-grip", "back", CLEAN_BACK);
    assertThat(barred.found()).isEmpty();
    assertThat(relation(barred, Face.BACK, Face.TOP)).isNotNull();
    // Tapped down tight on a square face it still wants its bar, as its base is narrow.
    BenchPlan front =
        barred.face(
            "up front, fixed top, on pair P6x10",
            "front",
            "clean front at 0.4, at most 1.2",
            TIGHT);
    assertThat(front.found()).containsExactly("warning bar-missing");
  }

  @ParameterizedTest
  @CsvSource({"9, warning bar-missing", "10, ''", "17, ''", "18, warning bar-missing"})
  void theBarBelongsInTheMiddleThird(String height, String expected) {
    // The jaws grip from 1.6 to 25 above the bed: the middle third is 9.4 to 17.2.
    BenchPlan plan = TOPPED.face(ON_JAW + ", bar 8 at " + height, "back", CLEAN_BACK);
    assertThat(plan.found()).isEqualTo(list(expected));
  }

  // ---- What a cut proves

  /** Two faces square to one third face are not parallel: they may be twisted about its normal. */
  @Test
  void twoFacesSquareToAThirdAreNotThereforeParallel() {
    BenchPlan plan =
        TOPPED
            .face(ON_JAW + ", bar 8 at mid-grip", "back", CLEAN_BACK)
            .face(
                "up front, fixed top, on soft-strip 1.6, bar 8 at mid-grip",
                "front",
                "clean front at 0.4, at most 1.2");
    assertThat(relation(plan, Face.BACK, Face.TOP)).isNotNull();
    assertThat(relation(plan, Face.FRONT, Face.TOP)).isNotNull();
    assertThat(relation(plan, Face.FRONT, Face.BACK)).isNull();
  }

  @Test
  void truingOneViseDoesNotTrueAnother() {
    String other = "\nown vise V100\n  jaw-width: 100\n  jaw-depth: 30\n  opening: 80\n";
    BenchPlan block =
        BenchPlan.of("110 x 30 x 21", "milled back", "drawn front top bottom", SAWN).with(other);
    String hold = "up top, fixed back, on pair P6x10, bar 8 at mid-grip";
    BenchPlan wrong =
        block.setup(
            "true V100 with dti, 0.01 over 80",
            "note \"then the small vise\"",
            "hold in V80, " + hold,
            "cutter EM16",
            "touch right with paper 0.05, zero x",
            "set z 23 below top",
            "lock x z",
            "clean right at 0.5, at most 1.5, conventional");
    assertThat(wrong.found()).containsExactly("warning vise-not-trued");
    BenchPlan right =
        block.setup(
            "true V80 with dti, 0.01 over 80",
            "hold in V80, " + hold,
            "cutter EM16",
            "touch right with paper 0.05, zero x",
            "set z 23 below top",
            "lock x z",
            "clean right at 0.5, at most 1.5, conventional");
    assertThat(right.found()).doesNotContain("warning vise-not-trued");
    assertThat(relation(right, Face.RIGHT, Face.BACK)).isNotNull();
  }

  /** A wall along the jaws is parallel to the face on the fixed jaw of a true vise. */
  @Test
  void aWallFollowsATrueVise() {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 21", "milled back", "drawn front top bottom", SAWN)
            .setup(
                "true V80 with dti, 0.01 over 80",
                "hold in V80, up top, fixed back, on pair P6x10, bar 8 at mid-grip",
                "cutter EM16",
                "touch front with paper 0.05, zero y",
                "set z 5 below top",
                "lock y z",
                "clean front at 0.5, conventional");
    assertThat(relation(plan, Face.FRONT, Face.BACK)).isNotNull();
    // It stands 6 above the jaws, so only the upper part can be cut.
    assertThat(plan.found())
        .contains("warning face-not-covered")
        .doesNotContain("error cutter-meets-jaw");
  }

  // ---- Work at one end

  private static BenchPlan overhanging(String clauses) {
    return BenchPlan.of("60 x 30 x 21", DRAWN, SAWN)
        .end(
            "up top, fixed back, on pair P6x10, " + clauses,
            "right",
            "set z 23 below top",
            "clean right at 0.5, at most 1.5, conventional");
  }

  /** Work at one end of the jaws needs a spacer of the same width at the other. */
  @ParameterizedTest
  @CsvSource({
    "overhang right 9, warning jaw-cocks",
    "'overhang right 9, spacer 29.7 at operator-left', ''",
    "'overhang right 9, spacer 29.7 at operator-right', warning jaw-cocks",
    "'overhang right 9, spacer 30 at operator-left', warning spacer-too-wide",
    "'overhang right 9, spacer 30.4 at operator-left', error spacer-too-wide",
    "'overhang right 9, spacer 29.5 at operator-left', error jaw-cocks",
    // A spacer as wide as the work and the bar, where the bar ends with the work.
    "'overhang right 9, bar 8, spacer 37.7 at operator-left', ''",
    "'overhang right 9, bar 8, spacer 29.7 at operator-left', ''",
    "'overhang right 25, spacer 29.7 at operator-left', warning overhang-too-long",
    "'overhang right 59.9, spacer 29.7 at operator-left', warning overhang-too-long",
    "'overhang right 70', error overhang-too-long",
    "'overhang front 9', error bad-value",
    "'overhang operator-front 9', error bad-value",
    "'overhang right 0', error bad-value",
    "'overhang right (5 - 9)', error bad-value",
  })
  void workAtOneEndWantsASpacer(String clauses, String expected) {
    List<String> found = overhanging(clauses).found();
    assertThat(found.stream().filter(rule -> !rule.startsWith("info")))
        .as(clauses)
        .containsExactlyElementsOf(list(expected));
  }

  // ---- On plates

  private static final String CLAMPS =
      "\nown clamp strap\n  width: 20\n  height: 12\n"
          + "\nown angle-plate AP\n  width: 100\n  height: 80\n"
          + "\nown subplate S1\n";

  @Test
  void workClampedToTheTableFollowsItsCleanFace() {
    BenchPlan plan =
        BenchPlan.of("120 x 30 x 21", "milled bottom", "cast front back top", SAWN)
            .with(CLAMPS)
            .setup(
                "hold on table, up top, clamp strap at (10, 15)",
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                "lock y z",
                "clean top at 0.4, at most 1.2");
    assertThat(plan.found()).contains("error cutter-meets-clamp");
    assertThat(relation(plan, Face.TOP, Face.BOTTOM)).isNotNull();
  }

  @Test
  void workAgainstAnAngleBecomesSquareToThePlate() {
    BenchPlan block =
        BenchPlan.of("60 x 40 x 38", "milled back bottom", "cast front top", SAWN).with(CLAMPS);
    String cut = "clean top at 0.4, at most 1.2";
    BenchPlan plan =
        block.setup(
            "hold on angle-plate AP, up top, fixed back",
            "cutter FC40",
            "touch top with paper 0.05, zero z",
            "lock y z",
            cut);
    assertThat(relation(plan, Face.TOP, Face.BACK)).isNotNull();
    // Nothing says that it sits on the table.
    assertThat(relation(plan, Face.TOP, Face.BOTTOM)).isNull();
    assertThat(block.setup("hold on angle-plate AP, up top", cut).found())
        .contains("error missing-clause");
    assertThat(block.setup("hold on angle-plate AP, up top, fixed bottom", cut).found())
        .contains("error bad-value");
  }

  @Test
  void burrsUnderClampedWorkCountToo() {
    BenchPlan plan =
        BenchPlan.of("120 x 30 x 21", "sawn bottom", "cast front back top left right")
            .with(CLAMPS)
            .setup(
                "hold on table, up top",
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                "lock y z",
                "clean top at 0.4, at most 1.2");
    assertThat(plan.found()).contains("warning burr-under-work");
  }

  @ParameterizedTest
  @CsvSource({
    "'hold in V80, up top'",
    "'hold in V80, fixed back'",
    "'hold in V80'",
    "'hold in V80, up top, fixed bottom'",
    "'hold on table'",
    "'hold in V80, up top, fixed back, on pair NONE'",
    "'hold in NONE, up top, fixed back'",
  })
  void aHoldThatCannotBeReadIsReportedAndNothingFails(String hold) {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 21", DRAWN, SAWN)
            .setup(hold, "cutter FC40", "touch top with paper 0.05, zero z", "clean top at 0.4");
    assertThat(plan.found()).isNotEmpty().anyMatch(found -> found.startsWith("error"));
  }

  private static List<String> list(String expected) {
    return expected.isEmpty() ? List.of() : List.of(expected);
  }
}
