package org.handwheel.work.hole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.model.Face;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.PlanRun;
import org.handwheel.work.Removed;
import org.handwheel.work.hole.HoleRun.Result;
import org.handwheel.work.hole.HoleRun.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What each tool does to a hole: with what, how deep, and what comes out. Cones are geometry: one
 * of diameter D and angle a is D / (2 tan(a / 2)) long.
 */
class HoleWorkTests {
  private static final String TOOLS =
      """
      own drill D8
        dia: 8
        angle: 90 deg
        length: 120
      own drill SPOT8
        kind: spotting-drill
        dia: 8
      own drills set-small
        dia: 5
        angle: 135 deg
      own drills set-large
        dia: 13
      own reamer R10
        dia: 10
      own tap T6
        dia: 6
        pitch: 1
      own cutter EM10
        kind: end-mill
        dia: 10
        flute: 25
      """;

  private static HoleTrial trial(String holes, String... lines) {
    return HoleTrial.of(holes).with(TOOLS).lines(lines);
  }

  /** How long the point of a drill is. */
  private static double point(double dia, double degrees) {
    return dia / 2 / Math.tan(Math.toRadians(degrees / 2));
  }

  // ---- With what

  @Test
  void theShopsOwnDrillOfTheSizeIsTaken() {
    Bit bit = trial("hole a in top, dia 8, depth 9, at (20, 20)", "drill a").last().bit();
    assertThat(bit)
        .isEqualTo(new Bit("D8", Length.mm("8"), new DrillPoint(90), Length.mm("120"), true));
    assertThat(bit.pointLength()).isEqualTo(Length.mm("4"));
  }

  /** The first set that goes up to the size gives the angle of the point. */
  @ParameterizedTest
  @CsvSource({"5, 135", "5.1, 118", "13, 118", "4.2, 135", "14, 118"})
  void otherSizesComeOutOfASet(String dia, double degrees) {
    Bit bit = trial("hole a in top, dia " + dia + ", depth 9, at (20, 20)", "drill a").last().bit();
    assertThat(bit.dia()).isEqualTo(Length.mm(dia));
    assertThat(bit.point()).isEqualTo(new DrillPoint(degrees));
    assertThat(bit.known()).isTrue();
  }

  /** Drills are sold by tenths, number and letter; of 5.03 mm there is none. */
  @Test
  void aSizeThatIsNotSoldIsNotKnown() {
    Bit odd = trial("hole a in top, dia 5.03, depth 9, at (20, 20)", "drill a").last().bit();
    assertThat(odd.known()).isFalse();
    assertThat(odd.name()).isEqualTo(Length.mm("5.03").toString());
    // ISO 235 and DIN 338 (from memory): a jobber drill of 5 mm is 86 mm long.
    Bit five = trial("hole a in top, dia 5, depth 9, at (20, 20)", "drill a").last().bit();
    assertThat(five.known()).isTrue();
    assertThat(five.length()).isEqualTo(Length.mm("86"));
  }

  @Test
  void withoutAnySizeNothingIsSaidOfTheDrill() {
    Result result = trial("hole a in top, depth 9, at (20, 20)", "drill a").last();
    assertThat(result.bit().name()).isEqualTo("drill");
    assertThat(result.bit().dia()).isNull();
    assertThat(result.bit().known()).isFalse();
    assertThat(result.after().bore()).isNull();
  }

  @Test
  void numberAndLetterDrillsHaveTheirDefinedDiameters() {
    // Number 7 is 0.201 in and letter F 0.257 in, by definition.
    List<Result> results =
        trial("hole a in top, dia 8, depth 9, at (20, 20)", "drill a, no 7 then letter F")
            .results();
    assertThat(results.get(0).bit().dia()).isEqualTo(Length.inches("0.201"));
    assertThat(results.get(1).bit().dia()).isEqualTo(Length.inches("0.257"));
    assertThat(results.get(1).after().bore()).isEqualTo(Length.inches("0.257"));
  }

  @Test
  void aToolThatIsNamedMakesItsOwnSize() {
    HoleTrial trial = trial("hole a in top, dia 9, depth 9, at (20, 20)");
    Result drilled = trial.lines("drill a, with D8").last();
    assertThat(drilled.bit().name()).isEqualTo("D8");
    assertThat(drilled.bit().dia()).isEqualTo(Length.mm("8"));
    assertThat(drilled.bit().point()).isEqualTo(new DrillPoint(90));
    assertThat(drilled.bit().length()).isEqualTo(Length.mm("120"));
    // A mill is flat at its end.
    Result milled = trial.lines("drill a, with EM10").last();
    assertThat(milled.bit().dia()).isEqualTo(Length.mm("10"));
    assertThat(milled.bit().point()).isNull();
    assertThat(milled.tip()).isEqualTo(Length.mm("9"));
    // So is a reamer.
    Result reamed = trial.lines("drill a, 8", "ream a, with R10").last();
    assertThat(reamed.bit().dia()).isEqualTo(Length.mm("10"));
    assertThat(reamed.bit().point()).isNull();
  }

  @Test
  void toolsThatAreNotNamedAreCalledByWhatTheyDo() {
    String hole =
        "hole a in top, dia 9, through, at (20, 20), counterbore dia 15 depth 6\n"
            + "hole b in top, M6, thread 8, drill 12, at (40, 20), countersink dia 7";
    List<Result> results =
        trial(
                hole,
                "spot a",
                "drill a",
                "ream a",
                "bore a",
                "counterbore a",
                "drill b",
                "tap b",
                "countersink b")
            .results();
    assertThat(results)
        .extracting(result -> result.bit().name())
        .containsExactly(
            "spotting drill",
            results.get(1).bit().name(),
            "reamer",
            "boring head",
            "counterbore",
            results.get(5).bit().name(),
            "tap M6",
            "countersink");
    assertThat(results.get(1).bit().name()).contains("9 mm");
    // The tapping drill of M6 is 5 (ISO 2306, from memory): 6 less the pitch of 1.
    assertThat(results.get(5).bit().dia()).isEqualTo(Length.mm("5"));
    assertThat(results)
        .extracting(result -> result.bit().dia())
        .containsExactly(
            null,
            Length.mm("9"),
            Length.mm("9"),
            Length.mm("9"),
            Length.mm("15"),
            Length.mm("5"),
            Length.mm("6"),
            Length.mm("7"));
    assertThat(results).allMatch(result -> result.bit().known());
  }

  /** A spotface is made by a counterbore that only cleans the face. */
  @Test
  void aSpotfaceHasTheDiameterDrawnAndNoDepth() {
    Result result =
        trial("hole a in top, dia 8, through, at (20, 20), spotface dia 14", "counterbore a")
            .last();
    assertThat(result.bit().dia()).isEqualTo(Length.mm("14"));
    assertThat(result.depth()).isEqualTo(Length.ZERO);
    assertThat(result.after().counterbore()).isEqualTo(Length.mm("14"));
    assertThat(result.through()).isFalse();
  }

  // ---- How deep

  @Test
  void aThroughHoleGoesOutByThePointAndAMillimetre() {
    Result result = trial("hole a in top, dia 10, through, at (20, 20)", "drill a, 10").last();
    assertThat(result.through()).isTrue();
    assertThat(result.depth()).isEqualTo(Length.mm("20"));
    assertThat(result.tip().millimetres()).isCloseTo(20 + point(10, 118) + 1, within(1e-6));
    // As deep as the part is thick, or deeper, is through, too; a little less is not.
    String blind = "hole a in top, dia 10, depth 9, at (20, 20)";
    assertThat(trial(blind, "drill a, 10, depth 20").last().through()).isTrue();
    Result deeper = trial(blind, "drill a, 10, depth 25").last();
    assertThat(deeper.through()).isTrue();
    assertThat(deeper.depth()).isEqualTo(Length.mm("20"));
    Result less = trial(blind, "drill a, 10, depth 19.9").last();
    assertThat(less.through()).isFalse();
    assertThat(less.tip().millimetres()).isCloseTo(19.9 + point(10, 118), within(1e-6));
  }

  /** Spots, counterbores and countersinks are never through, however deep. */
  @ParameterizedTest
  @CsvSource({"spot", "counterbore", "countersink"})
  void whatOpensAHoleDoesNotComeOutBelow(String verb) {
    Result result =
        trial(
                "hole a in top, dia 8, through, at (20, 20), counterbore dia 15 depth 20,"
                    + " countersink dia 12",
                verb + " a, depth 20")
            .last();
    assertThat(result.through()).isFalse();
    assertThat(result.depth()).isEqualTo(Length.mm("20"));
  }

  /** A cone of 90 degrees opens by twice its depth: from 5 to 9 it is 2 deep. */
  @Test
  void aCountersinkIsAsDeepAsItsConeOpens() {
    String hole = "hole a in top, dia 5, through, at (20, 20), countersink dia 9";
    Result result = trial(hole, "drill a", "countersink a").last();
    assertThat(result.depth()).isEqualTo(Length.mm("2"));
    assertThat(result.after().countersink()).isEqualTo(Length.mm("9"));
    // To 5 it only touches the edge; to less it goes nowhere.
    assertThat(trial(hole, "countersink a, 5").last().depth()).isEqualTo(Length.ZERO);
    assertThat(trial(hole, "countersink a, 4").last().depth()).isNull();
    // The cone's own diameter does not matter, only how far it is let in.
    HoleTrial large = trial(hole, "countersink a, with EM10");
    assertThat(large.last().after().countersink()).isEqualTo(Length.mm("9"));
  }

  /** Three pitches of a tap's end cut no full thread (common practice, no source). */
  @Test
  void theTappingDrillGoesDeeperThanTheThread() {
    Result drilled = trial("hole a in top, M6, thread 7, at (20, 20)", "drill a").last();
    assertThat(drilled.depth()).isEqualTo(Length.mm("10"));
    // A depth that is drawn comes first.
    assertThat(
            trial("hole a in top, M6, thread 7, drill 12, at (20, 20)", "drill a").last().depth())
        .isEqualTo(Length.mm("12"));
    Result tapped = trial("hole a in top, M6, thread 7, at (20, 20)", "drill a", "tap a").last();
    assertThat(tapped.depth()).isEqualTo(Length.mm("7"));
    assertThat(tapped.after().thread()).isEqualTo(Length.mm("7"));
    assertThat(tapped.through()).isFalse();
    Result through = trial("hole a in top, M6, through, at (20, 20)", "drill a", "tap a").last();
    assertThat(through.depth()).isEqualTo(Length.mm("20"));
    assertThat(through.through()).isTrue();
  }

  // ---- From which side, and what comes out

  @Test
  void aHoleIsMadeFromItsOwnFaceTheOppositeOrNot() {
    String top = "hole a in top, dia 6, through, at (20, 15)";
    assertThat(trial(top, "drill a").last().side()).isEqualTo(Side.OWN);
    PlanRun below = trial(top, "drill a").on("in V, up bottom, fixed back, on pair P").run();
    Result opposite = HoleTrial.drilled(below).get(0).holes().results().findFirst().orElseThrow();
    assertThat(opposite.side()).isEqualTo(Side.OPPOSITE);
    assertThat(opposite.after().bore()).isEqualTo(Length.mm("6"));
    Removed removed = below.end().removed().get(0);
    assertThat(removed.from()).isEqualTo(Face.BOTTOM);
    // Opposite faces count from the same low edges: 20 from the left, 15 from the front.
    assertThat(removed.region().getCentroid().getX()).isCloseTo(20, within(1e-9));
    assertThat(removed.region().getCentroid().getY()).isCloseTo(15, within(1e-9));

    PlanRun beside = trial(top, "drill a").on("in V, up front, fixed top, on pair P").run();
    Result hidden = HoleTrial.drilled(beside).get(0).holes().results().findFirst().orElseThrow();
    assertThat(hidden.side()).isEqualTo(Side.NONE);
    assertThat(hidden.after()).isEqualTo(HoleState.UNTOUCHED);
    assertThat(beside.end().removed()).isEmpty();
  }

  @Test
  void eachToolTakesOutWhatItsKindSays() {
    PlanRun run =
        trial(
                "hole a in top, dia 9, through, at (20, 20), counterbore dia 15 depth 6\n"
                    + "hole b in top, dia 5, depth 12, at (45, 20), countersink dia 9",
                "spot a, b, with SPOT8",
                "drill a",
                "counterbore a",
                "drill b",
                "countersink b")
            .run();
    List<Removed> removed = run.end().removed();
    assertThat(removed)
        .extracting(Removed::kind)
        .containsExactly(
            Removed.Kind.HOLE,
            Removed.Kind.COUNTERBORE,
            Removed.Kind.HOLE,
            Removed.Kind.COUNTERSINK);
    assertThat(removed).extracting(Removed::feature).containsExactly("a", "a", "b", "b");
    assertThat(removed).extracting(Removed::through).containsExactly(true, false, false, false);
    assertThat(removed)
        .extracting(Removed::depth)
        .containsExactly(depth("20"), depth("6"), depth("12"), depth("2"));
    // A circle of 15, as a polygon of 64 sides: n/2 r^2 sin(2 pi / n).
    assertThat(removed.get(1).region().getArea())
        .isCloseTo(32 * 7.5 * 7.5 * Math.sin(Math.PI / 32), within(1e-9));
  }

  private static LengthRange depth(String to) {
    return new LengthRange(Length.ZERO, Length.mm(to));
  }

  // ---- What has been made of it

  @Test
  void aSmallerToolChangesNothing() {
    HoleState state =
        trial("hole a in top, dia 9, through, at (20, 20)", "drill a", "ream a", "drill a, 5")
            .last()
            .after();
    assertThat(state.bore()).isEqualTo(Length.mm("9"));
    assertThat(state.reamedBy()).isNotNull();
    assertThat(state.words()).isEqualTo("brought to " + Length.mm("9") + ", through");
    // A drill of the same size opens it again, so it is no longer to size.
    HoleState again =
        trial("hole a in top, dia 9, through, at (20, 20)", "drill a", "ream a", "drill a")
            .last()
            .after();
    assertThat(again.reamedBy()).isNull();
    assertThat(again.words()).isEqualTo("drilled " + Length.mm("9") + ", through");
  }

  @Test
  void inWordsWithAllThatWasDone() {
    HoleTrial trial =
        trial("hole a in top, M6, thread 7, drill 12, at (20, 20), countersink dia 7");
    assertThat(HoleState.UNTOUCHED.words()).isEqualTo("not begun");
    assertThat(trial.lines("spot a").last().after().words()).isEqualTo("spotted");
    assertThat(trial.lines("spot a").last().after().spotted()).isTrue();
    assertThat(
            trial
                .lines("spot a", "drill a", "tap a", "counterbore a, 10", "countersink a")
                .last()
                .after()
                .words())
        .isEqualTo(
            "drilled "
                + Length.mm("5")
                + ", "
                + Length.mm("12")
                + " deep, tapped, counterbored "
                + Length.mm("10")
                + ", countersunk "
                + Length.mm("7"));
  }

  // ---- Two holes

  @Test
  void boresMeetWhereTheyAreNearerThanTheirRadii() {
    // Along X at 20 and at 28: 5 and 3 of radius just touch, and touching is not meeting.
    String a = "hole a in top, dia 10, depth 12, at (20, 20)\n";
    assertThat(meets(a + "hole b in front, dia 6, depth 30, at (28, 10)", "3")).isFalse();
    assertThat(meets(a + "hole b in front, dia 6, depth 30, at (27.9, 10)", "3")).isTrue();
    // The wall of a is 15 behind the front: a tip there touches, deeper it breaks through.
    double tip = point(6, 118);
    assertThat(meets(a + "hole b in front, dia 6, depth 15, at (20, 10)", "3")).isTrue();
    assertThat(meets(a + "hole b in front, dia 6, depth 10, at (20, 10)", "3"))
        .isEqualTo(10 + tip > 15);
    // The floor of a is 12 deep: b at 17 below the top with radius 3 lies under it by 2.
    assertThat(meets(a + "hole b in front, dia 6, depth 30, at (20, 3)", "3")).isFalse();
    assertThat(meets(a + "hole b in front, dia 6, depth 30, at (20, 6)", "3")).isTrue();
    // Of one direction, they are none of this test's business.
    assertThat(meets(a + "hole b in top, dia 6, depth 30, at (20, 20)", "3")).isFalse();
  }

  private static boolean meets(String holes, String radius) {
    boolean inFront = holes.contains("in front");
    PlanRun run =
        trial(holes, "drill b, " + Length.mm(radius).times(2).millimetres())
            .on(
                inFront
                    ? "in V, up front, fixed top, on pair P"
                    : "in V, up top, fixed back, on bed")
            .run();
    Result made = HoleTrial.drilled(run).get(0).holes().results().findFirst().orElseThrow();
    DrawnHole a = HoleTrial.drilled(run).get(0).holes().drawn().named("a").get(0);
    return Crossing.meets(made, a, Length.mm("10"));
  }

  // ---- What the drawing says

  @Test
  void theWidestAndTheDepthOfADrawnHole() {
    DrawnHole all =
        trial(
                "hole a in top, dia 6, depth 9, at (20, 20), spotface dia 11,"
                    + " counterbore dia 12 depth 2, countersink dia 10",
                "spot a")
            .last()
            .hole();
    assertThat(all.widest()).isEqualTo(Length.mm("12"));
    assertThat(all.depth()).isEqualTo(Length.mm("9"));
    assertThat(all.dia()).isEqualTo(Length.mm("6"));
    DrawnHole bare = trial("hole a in top, at (20, 20)", "spot a").last().hole();
    assertThat(bare.widest()).isEqualTo(Length.ZERO);
    assertThat(bare.depth()).isNull();
    DrawnHole thread =
        trial("hole a in top, M6, thread 7, at (20, 20), countersink dia 5", "spot a")
            .last()
            .hole();
    assertThat(thread.widest()).isEqualTo(Length.mm("6"));
    assertThat(thread.depth()).isEqualTo(Length.mm("7"));
    assertThat(thread.name()).isEqualTo("a");
  }
}
