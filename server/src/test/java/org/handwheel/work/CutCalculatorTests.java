package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.model.Direction;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.CutRun.Hit;
import org.handwheel.work.CutRun.Thing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One cut worked out by hand: on bought stock of 60 x 33.5 x 24.5, each 0.3 more or less, in jaws
 * 80 long and 25 high on parallels 10 high and 70 long, toward a height of 21 +0/-0.05.
 */
class CutCalculatorTests {
  private static final String STOCK =
      "size 60 x 33.5 x 24.5\nground top front back bottom left right";
  private static final String VISE = "hold in V80, up top, fixed back, on pair P6x10\n";
  private static final String TOUCH = "touch top with paper 0.05, zero z\n";

  private static CutRun cut(String lines) {
    return Worked.block().from(STOCK).setup("one", lines).lastCut();
  }

  private static CutRun facing(String cutter, String cut) {
    return cut(VISE + "cutter " + cutter + "\n" + TOUCH + cut);
  }

  private static LengthRange range(String low, String high) {
    return new LengthRange(Length.mm(low), Length.mm(high));
  }

  // ---- Sizes and passes

  /** 24.2 to 24.8 less 22 are 2.2 to 2.8; a skim takes what it says. */
  @ParameterizedTest
  @CsvSource({
    "'clean top at 0.4, at most 1.2', 3, 0.4",
    "'clean top at 0.4, at most 1.3', 4, 0.4",
    "'clean top at 0.4', 1, 0.4",
    "'rough top to 22, pass 0.5', 6, 0.5",
    "'rough top to 22, pass 0.7', 4, 0.7",
    "'rough top to 22, pass 5', 1, 2.8",
    "'rough top to 22 by 3 passes of 0.3', 3, 0.3",
    "'rough top to 22, one pass', 1, 2.5",
    "'finish top to 24.3, pass 0.2', 3, 0.2",
    "'finish top to 30, one pass', 0, 0",
    "'rough top to 30, pass 0.5', 0, 0",
  })
  void passesAndTheirDepth(String line, long passes, String depth) {
    CutRun run = facing("FC40", line);
    assertThat(run.passes()).isEqualTo(passes);
    assertThat(run.passDepth()).isEqualTo(Length.mm(depth));
    assertThat(run.axialDepth()).isEqualTo(Length.mm(depth));
  }

  /** Named alone the height means the middle of its tolerance, 20.975. */
  @ParameterizedTest
  @CsvSource({
    "'rough top to height leaving 0.2, pass 0.5', 21.175",
    "'rough top to (height) leaving 0.2, pass 0.5', 21.2",
    "'finish top to height', 20.975",
    "'rough top to 22, pass 0.5', 22",
  })
  void whatItGoesTo(String line, String goal) {
    assertThat(facing("FC40", line).goal()).isEqualTo(Length.mm(goal));
  }

  @Test
  void aSkimHasNoGoalAndLeavesARange() {
    CutRun skim = facing("FC40", "clean top at 0.4, at most 1.2");
    assertThat(skim.goal()).isNull();
    assertThat(skim.removal()).isEqualTo(range("0.4", "1.2"));
    assertThat(skim.after().range()).isEqualTo(range("23", "24.4"));
    CutRun rough = facing("FC40", "rough top to 22, pass 0.5");
    assertThat(rough.removal()).isEqualTo(range("2.2", "2.8"));
    // What is not there the cutter does not meet.
    assertThat(facing("FC40", "finish top to 30, one pass").after().range())
        .isEqualTo(range("24.2", "24.8"));
    // Round the goal by what was not known of the size, the touch, and half a division.
    LengthRange after = rough.after().range();
    assertThat(after.middle()).isEqualTo(Length.mm("22"));
    assertThat(after.spread())
        .isEqualTo(
            rough
                .before()
                .uncertainty()
                .plus(Worked.block().plan().shop().limits().length(org.handwheel.model.Limit.TOUCH))
                .plus(Length.inches("0.0005")));
  }

  // ---- Travel and engagement

  @ParameterizedTest
  @CsvSource({
    "'', OPERATOR_RIGHT",
    "', travel right to left', OPERATOR_LEFT",
    "', travel front to back', OPERATOR_BACK",
  })
  void facingGoesTheLongWayUnlessToldOtherwise(String travel, Direction expected) {
    assertThat(facing("FC60", "clean top at 0.4" + travel).travel()).isEqualTo(expected);
    // Turned by a right angle the long way is to the back.
    assertThat(
            cut("hold in V80, up top, fixed left, on pair P6x10\ncutter FC60\n"
                    + TOUCH
                    + "clean top at 0.4")
                .travel())
        .isEqualTo(Direction.OPERATOR_BACK);
  }

  /**
   * A cutter of radius 30 five to the front of the middle of 33.8: going right, 21.9 of the work
   * lie to its left and 11.9 to its right; going left the other way round. Across the length of
   * 60.3, five to the right, it is all in the work at its left.
   */
  @ParameterizedTest
  @CsvSource({
    "', offset 5 toward front', -11.9, 21.9",
    "', offset 5 toward back', -21.9, 11.9",
    "', offset 5 toward front, travel right to left', -21.9, 11.9",
    "', offset 5 toward right', -16.9, 16.9",
    "', offset 5 toward right, travel front to back', -25.15, 30",
    "', offset 5 toward right, travel back to front', -30, 25.15",
    "'', -16.9, 16.9",
  })
  void howTheTeethMeetTheFace(String more, double right, double left) {
    CutRun run = facing("FC60", "clean top at 0.4" + more);
    assertThat(run.engagement().right()).isCloseTo(right / 30, within(1e-9));
    assertThat(run.engagement().left()).isCloseTo(left / 30, within(1e-9));
  }

  /** Rows 6 apart take 6 of a diameter of 16, by the side that cuts conventionally. */
  @Test
  void rowsAreCutByTheSide() {
    CutRun run = facing("EM16", "clean top at 0.4, step over 6");
    assertThat(run.engagement().width()).isCloseTo(6 / 8.0, within(1e-9));
    assertThat(run.engagement().isClimb()).isFalse();
    assertThat(facing("EM16", "clean top at 0.4, step over 6, climb").engagement().isClimb())
        .isTrue();
    // Rows further apart than the cutter is wide take all of it.
    assertThat(facing("EM16", "clean top at 0.4, step over 20").engagement().width())
        .isCloseTo(2, within(1e-9));
  }

  /** The force rises with the feed; the line's comes before the cutter's. */
  @Test
  void theForceGoesWithTheFeed() {
    double cutter = facing("FC60, feed 0.04 mm/tooth", "clean top at 0.4").meanForce();
    double line =
        facing("FC60, feed 0.04 mm/tooth", "clean top at 0.4, feed 0.08 mm/tooth").meanForce();
    double deep = facing("FC60, feed 0.04 mm/tooth", "clean top at 0.8").meanForce();
    assertThat(Math.abs(cutter)).isPositive();
    assertThat(line).isCloseTo(2 * cutter, within(1e-9));
    assertThat(deep).isCloseTo(2 * cutter, within(1e-9));
  }

  // ---- Depth, and what it meets

  private static CutRun end(String set) {
    return cut(
        VISE
            + "cutter EM16\ntouch right with paper 0.05, zero x\n"
            + set
            + "clean right at 0.5, at most 1.5");
  }

  @Test
  void anEndIsCutAsDeepAsTheCutterIsSet() {
    assertThat(end("set z 10 below top\n").axialDepth()).isEqualTo(Length.mm("10"));
    assertThat(end("").axialDepth()).isEqualTo(Length.mm("24.8"));
    assertThat(end("set z 30 below top\n").axialDepth()).isEqualTo(Length.mm("24.8"));
    // Below the cutter's end the face stays raw: at least 24.2 less 10.
    assertThat(end("set z 10 below top\n").uncovered()).isEqualTo(Length.mm("14.2"));
    assertThat(end("set z 30 below top\n").uncovered()).isEqualTo(Length.ZERO);
    assertThat(end("").uncovered()).isEqualTo(Length.ZERO);
  }

  private static Length clearance(List<Hit> hits, Thing thing) {
    return hits.stream()
        .filter(hit -> hit.thing() == thing)
        .map(Hit::clearance)
        .findFirst()
        .orElseThrow();
  }

  /** The highest top is at 10 + 24.8, so 23 below it 11.8; parallels end at 10, jaws at 25. */
  @Test
  void beyondAnEndLieParallelsAndJaws() {
    List<Hit> hits = end("set z 23 below top\n").hits();
    assertThat(clearance(hits, Thing.PARALLEL)).isEqualTo(Length.mm("1.8"));
    assertThat(clearance(hits, Thing.JAW)).isEqualTo(Length.mm("-13.2"));
    assertThat(hits).noneMatch(hit -> hit.thing() == Thing.BED);
    // All the way down it is level with the underside of the work.
    assertThat(clearance(end("").hits(), Thing.PARALLEL)).isEqualTo(Length.ZERO);
    // Overhanging by 9 and cut at most 1.5 back, nothing is under the cutter.
    assertThat(
            cut(VISE.replace("P6x10", "P6x10, overhang right 9")
                    + "cutter EM16\ntouch right with paper 0.05, zero x\n"
                    + "set z 23 below top\nclean right at 0.5, at most 1.5")
                .hits())
        .isEmpty();
  }

  /**
   * Standing out by half a millimetre, an end that is cut 1.5 back brings the cutter to the jaws.
   */
  @ParameterizedTest
  @CsvSource({"1.5, true", "0.6, true", "0.5, false"})
  void howFarBackAnEndIsCut(String atMost, boolean meets) {
    CutRun run =
        cut(
            VISE.replace("P6x10", "P6x10, overhang right 0.5")
                + "cutter EM16\ntouch right with paper 0.05, zero x\n"
                + "set z 23 below top\nclean right at 0.5, at most "
                + atMost);
    assertThat(run.hits().stream().anyMatch(hit -> hit.thing() == Thing.JAW)).isEqualTo(meets);
  }

  /** 40 below the highest top of 34.8 is 5.2 below the bed, which ends with the jaws. */
  @Test
  void belowTheBedOnlyBetweenTheJaws() {
    assertThat(clearance(end("set z 40 below top\n").hits(), Thing.BED))
        .isEqualTo(Length.mm("-5.2"));
    assertThat(
            cut(VISE.replace("P6x10", "P6x10, overhang right 9")
                    + "cutter EM16\ntouch right with paper 0.05, zero x\n"
                    + "set z 40 below top\nclean right at 0.5, at most 1.5")
                .hits())
        .isEmpty();
  }

  /** A wall at the back is cut beside the fixed jaw, at the front beside the moving one. */
  @Test
  void wallsAlongTheJaws() {
    String lines = VISE + "cutter EM16\ntouch %1$s, zero y\nset z 15 below top\nclean %1$s at 0.5";
    // 10 + 24.8 - 15 = 19.8, 5.2 below the jaws' top.
    assertThat(cut(lines.formatted("front")).hits())
        .filteredOn(hit -> hit.thing() == Thing.JAW)
        .containsExactly(new Hit(Thing.JAW, "the moving jaw", Length.mm("-5.2")));
    assertThat(cut(lines.formatted("back")).hits())
        .filteredOn(hit -> hit.thing() == Thing.JAW)
        .containsExactly(new Hit(Thing.JAW, "the fixed jaw", Length.mm("-5.2")));
  }

  /** The lowest top is at 10 + 24.2, so skims of 1.2 end at 33, 8 above the jaws. */
  @Test
  void aFaceClearsTheJawsByWhatStandsOut() {
    assertThat(clearance(facing("FC40", "clean top at 0.4, at most 1.2").hits(), Thing.JAW))
        .isEqualTo(Length.mm("8"));
    assertThat(clearance(facing("FC40", "rough top to 22, pass 0.5").hits(), Thing.JAW))
        .isEqualTo(Length.mm("7"));
    assertThat(clearance(facing("FC40", "finish top to 14, pass 0.5").hits(), Thing.JAW))
        .isEqualTo(Length.mm("-1"));
  }

  /**
   * A cutter of 40 with corners of 0.4 leaves 39.2 flat: 6 off the middle of 33.5 a strip stays.
   */
  @Test
  void aStripThatTheCutterMisses() {
    assertThat(facing("FC40", "clean top at 0.4, offset 6 toward back").uncovered())
        .isEqualTo(Length.mm("3.15"));
    assertThat(facing("FC40", "clean top at 0.4, offset 2 toward back").uncovered())
        .isEqualTo(Length.ZERO);
    // Going across, 60 long: 30 less 19.6 at either end.
    assertThat(facing("FC40", "clean top at 0.4, travel front to back").uncovered())
        .isEqualTo(Length.mm("10.4"));
  }

  /** On the table the cutter meets it where it goes below the work's underside. */
  @Test
  void clampedToTheTable() {
    String hold = "hold on table, up top, clamp strap at (30, 17)\ncutter EM16\n";
    String cut = "touch right with paper 0.05, zero x\nset z %s below top\nclean right at 0.5";
    assertThat(cut(hold + cut.formatted("24")).hits()).isEmpty();
    assertThat(clearance(cut(hold + cut.formatted("26")).hits(), Thing.TABLE))
        .isEqualTo(Length.mm("-1.2"));
    // The strap stands 12 above a top of 24.8; the skim ends at 24.2 less 0.4.
    List<Hit> over = cut(hold + TOUCH + "clean top at 0.4").hits();
    assertThat(clearance(over, Thing.CLAMP)).isEqualTo(Length.mm("-13"));
  }
}
