package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Cases of the rules of slots, pockets, outlines and windows that their pages do not show. Sources:
 * geometry, and common practice without a source.
 */
class FeatureRulesTests {
  private static final String[] EDGES = {
    "find left from operator-left with finder F5, zero x at edge",
    "find front from operator-front with finder F5, zero y at edge"
  };

  private static BenchPlan part(String sizes, String... features) {
    String[] size = sizes.split(" x ", -1);
    BenchPlan plan =
        BenchPlan.of(sizes, "milled left right front back top bottom")
            .with("\nown subplate S1\n")
            .part("length " + size[0] + " +-0.2")
            .part("width " + size[1] + " +-0.2")
            .part("height " + size[2] + " +-0.2");
    for (String feature : features) {
      plan = plan.part(feature);
    }
    return plan;
  }

  private static BenchPlan held(BenchPlan plan, String hold, String... lines) {
    return plan.setup(
        Stream.of(Stream.of("hold " + hold), Stream.of(EDGES), Stream.of(lines))
            .flatMap(part -> part)
            .toArray(String[]::new));
  }

  private static final String VISE = "in V80, up top, fixed back, on pair P3x10";

  /** Cut in the vise with a cutter; the block is 56 x 30 x 20. */
  private static BenchPlan cut(String cutter, String line, String... features) {
    return held(
        part("56 x 30 x 20", features),
        VISE,
        "cutter " + cutter,
        "touch top with paper 0.05, zero z",
        line);
  }

  private static final String OIL =
      "slot oil in top, width 8, length 30, depth 2, at (28, 15) from left front";

  // ---- Beside the form, and what stays on

  /** A cutter of 10 in a slot of 8 takes 1 off each side; what another feature takes is no loss. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "pocket eel in top, size 40 x 20, radius 3, depth 2 | false",
        "pocket eel in top, size 40 x 20, radius 3, depth 1 | true",
        "pocket eel in bottom, size 40 x 20, radius 3, depth 2 | true",
        "pocket eel in bottom, size 40 x 20, radius 3, through | false",
      })
  void aCutterTooWideForItsSlot(String other, boolean found) {
    BenchPlan plan = cut("EM10", "slot oil with EM10, pass 1", OIL, other + ", at (28, 15)");
    assertThat(plan.said("outline-gouge"))
        .isEqualTo(
            found
                ? """
                error outline-gouge at `slot oil with EM10, pass 1`: EM10 takes 1.00 mm (39.4 thou)\
                 off beside `oil`, where the part is to keep its metal
                  see `%s`: it is drawn here
                """
                    .formatted(OIL)
                : "");
  }

  /**
   * What is left on both sides of a round corner is as thick as its diagonal, 0.1 x sqrt 2 = 0.141.
   * Nothing said of the tolerance, 0.1 is allowed.
   */
  @ParameterizedTest
  @CsvSource({"0.05, ''", "0.07, ''", "0.1, 0.141 mm (5.6 thou)"})
  void whatTheLastCutLeavesOn(String left, String stays) {
    String line = "slot oil with SD6, leaving " + left + ", pass 1";
    assertThat(cut("SD6", line, OIL).said("outline-not-reached"))
        .isEqualTo(
            stays.isEmpty()
                ? ""
                : """
                warning outline-not-reached at `%s`: after the last cut up to %s stays on at `oil`;\
                 the drawing allows 0.10 mm (3.9 thou)
                  see `%s`: it is drawn here
                """
                    .formatted(line, stays, OIL));
  }

  @Test
  void aFeatureThatIsNeverCut() {
    String eel = "slot eel in top, width 8, length 30, depth 2, at (28, 5) from left front";
    assertThat(cut("SD6", "slot oil with SD6, pass 1", OIL, eel).said("outline-not-reached"))
        .isEqualTo(
            """
            warning outline-not-reached at `%s`: `eel` is never cut
              see `slot oil with SD6, pass 1`: the last feature is cut here
            """
                .formatted(eel));
    // A cutter that cannot cut it is the mistake, and it is said at that line.
    BenchPlan refused = cut("FC40", "slot oil with FC40, pass 1", OIL);
    assertThat(refused.said("outline-not-reached")).isEmpty();
    assertThat(refused.said("no-steps"))
        .isEqualTo(
            """
            warning no-steps at `slot oil with FC40, pass 1`: no stops can be given for `oil`: FC40\
             does not cut with its end and its side; an end mill does
              see `%s`: it is drawn here
            """
                .formatted(OIL));
  }

  @Test
  void aCutFromTheOtherSideCountsIfItGoesThrough() {
    String port = "pocket port in bottom, size 20 x 10, through, at (28, 15) from left front";
    assertThat(cut("SD6", "pocket port with SD6, pass 1", port).said("outline-not-reached"))
        .isEmpty();
  }

  // ---- Corners and the way down

  @ParameterizedTest
  @CsvSource({
    "', radius 3', ''",
    "'', ''",
    "', radius 2.5', 'leaves corners of 3.00 mm (0.1181 in), but `well` has corners of 2.50 mm"
        + " (98.4 thou)'",
  })
  void theCornersOfAPocket(String radius, String words) {
    String well = "pocket well in top, size 30 x 16" + radius + ", depth 4, at (28, 15)";
    assertThat(cut("SD6", "pocket well with SD6, pass 1", well).said("pocket-corner"))
        .isEqualTo(
            words.isEmpty()
                ? ""
                : "error pocket-corner at `pocket well with SD6, pass 1`: SD6 %s\n".formatted(words)
                    + "  see `%s`: it is drawn here\n".formatted(well));
  }

  @Test
  void theHollowOfAnOutline() {
    String lever =
        "outline lever in top, boss (14, 15) radius 10, hollow radius 4, boss (42, 15) radius 10";
    assertThat(cut("EM10", "profile lever with EM10, pass 1", lever).said("pocket-corner"))
        .isEqualTo(
            """
            error pocket-corner at `profile lever with EM10, pass 1`: EM10 does not fit `lever`: it\
             has a hollow of radius 4.00 mm (0.1575 in), the cutter has one of 5.00 mm (0.1969 in)
              see `%s`: it is drawn here
            """
                .formatted(lever));
  }

  /** A hole of 0.8 of the cutter's diameter lets it down: 8 for 10 (common practice, no source). */
  @ParameterizedTest
  @CsvSource({"8, false", "7.9, true"})
  void aHoleToGoDownIn(String dia, boolean found) {
    String well = "pocket well in top, size 30 x 16, radius 5, depth 4, at (28, 15)";
    String pin = "hole pin in top, dia " + dia + ", depth 4, at (28, 15)";
    BenchPlan plan =
        held(
            part("56 x 30 x 20", well, pin),
            VISE,
            "drill pin " + dia + ", depth 4",
            "cutter EM10",
            "touch top with paper 0.05, zero z",
            "pocket well with EM10, pass 1");
    assertThat(plan.said("no-way-down"))
        .isEqualTo(
            found
                ? """
                error no-way-down at `pocket well with EM10, pass 1`: no side of `well` is open, and\
                 EM10 does not cut at its middle: it cannot go straight down; take a slot drill, or\
                 first drill a hole there of at least 8.00 mm (0.315 in)
                  see `%s`: it is drawn here
                  see `EM10`: the cutter is described here
                """
                    .formatted(well)
                : "");
  }

  @Test
  void anOpenSideOrASlotDrillIsAWayDown() {
    String fork = "slot fork in top, width 12, length 24, depth 4, at (50, 15) from left front";
    assertThat(cut("EM10", "slot fork with EM10, pass 1", fork).said("no-way-down")).isEmpty();
    String well = "pocket well in top, size 30 x 16, radius 3, depth 4, at (28, 15)";
    assertThat(cut("SD6", "pocket well with SD6, pass 1", well).said("no-way-down")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "(40, 0) blend 8, corner (40, 20) | | ",
        "(40, 0) tangent, corner (40, 20) | corner (40, 0) tangent | the sides are not tangent here:"
            + " they meet at 90.00 deg",
        "(40, 0) blend 25, corner (40, 20) | corner (40, 0) blend 25 | a blend of radius 25.00 mm"
            + " (0.9843 in) does not fit here: a side beside it is too short",
      })
  void theFormOfAFreeOutline(String corners, String where, String words) {
    String edge = "outline edge in top, corner (0, 0), corner " + corners + ", corner (0, 20)";
    assertThat(part("56 x 30 x 20", edge).said("outline-form"))
        .isEqualTo(
            words == null
                ? ""
                : "error outline-form at `%s`: `edge`: %s\n  see `%s`: the outline\n"
                    .formatted(where, words, edge));
  }

  // ---- What holds the work

  private static final String PLATE = "50 x 30 x 6";
  private static final String RIM =
      "outline rim seen from top, obround 48 x 28, at (0, 0) from centre, tolerance +-0.15";
  private static final String SCREW = "hole screw in top, dia 5, through";
  private static final String SCREWS =
      "pattern screws of screw, row, count 2, at (-16, 0) from centre, by (32, 0)";
  private static final String ALL_ROUND = "profile rim with EM10, pass 1, conventional";

  private static BenchPlan rim(BenchPlan plan, String hold, String... before) {
    return held(
        plan,
        hold,
        Stream.concat(
                Stream.of(before),
                Stream.of("cutter EM10", "touch top with paper 0.05, zero z", ALL_ROUND))
            .toArray(String[]::new));
  }

  private static String lost(String words, String hold, String rim) {
    return "error holding-lost at `%s`: %s\n  see `hold %s`: it is held here\n"
            .formatted(ALL_ROUND, words, hold)
        + "  see `%s`: it is drawn here\n".formatted(rim);
  }

  /**
   * The jaws are 25 high, the parallels 20, so a plate of 6, 5.7 at the least, stands 0.7 proud.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "outline rim seen from top, obround 48 x 28, at (0, 0) from centre | the cutter frees it"
            + " from the metal they hold",
        "profile rim, seen from top, radius 4 | the cutter runs into the jaws that hold it",
        "outline rim seen from top, obround 48 x 28, depth 0.7, at (0, 0) from centre | ",
      })
  void anOutlineInTheVise(String rim, String words) {
    String hold = "in V80, up top, fixed back, on pair P3x20";
    assertThat(rim(part(PLATE, rim), hold).said("holding-lost"))
        .isEqualTo(
            words == null
                ? ""
                : lost(
                    "`rim` is cut 6.00 mm (0.2362 in) deep, but only 0.70 mm (27.6 thou) stands"
                        + " above the jaws: "
                        + words,
                    hold,
                    rim));
  }

  @Test
  void anOutlineUnderClamps() {
    String beside = "on table, up top, fixed back, on pair P3x10, clamp C1 at (2, 2)";
    assertThat(rim(part(PLATE, RIM), beside).said("holding-lost"))
        .isEqualTo(
            lost(
                "no clamp holds `rim` itself: it comes loose when it is cut through", beside, RIM));
    String on = "on table, up top, fixed back, on pair P3x10, clamp C1 at (25, 15)";
    assertThat(rim(part(PLATE, RIM), on).said("holding-lost")).isEmpty();
    // Nothing is said of how it is held on the table: another rule may ask.
    assertThat(rim(part(PLATE, RIM), "on table, up top").said("holding-lost")).isEmpty();
  }

  @Test
  void anOutlineOnASubplate() {
    BenchPlan plate = part(PLATE, RIM, SCREW, SCREWS);
    String hold = "on subplate S1, up top";
    String none =
        lost(
            "`rim` has no through hole yet that a screw into the subplate could hold it by",
            hold,
            RIM);
    assertThat(rim(plate, hold, "drill screws 5").said("holding-lost")).isEmpty();
    assertThat(rim(plate, hold).said("holding-lost")).isEqualTo(none);
    assertThat(rim(plate, hold, "drill screws 5, depth 3").said("holding-lost")).isEqualTo(none);
    // One hole remains one, however often it is drilled.
    assertThat(
            rim(
                    part(PLATE, RIM, SCREW + ", at (-16, 0) from centre"),
                    hold,
                    "drill screw 4",
                    "drill screw 5")
                .said("holding-lost"))
        .isEqualTo(
            lost(
                "one screw lets `rim` turn under the cutter; two through holes of its own hold it",
                hold,
                RIM));
    // Holes in the waste hold nothing.
    assertThat(
            rim(
                    part(
                        PLATE,
                        RIM,
                        "hole screw in top, dia 2, through",
                        "pattern screws of screw, row, count 2, at (-23.5, 13) from centre, by (47,"
                            + " 0)"),
                    hold,
                    "drill screws 2")
                .said("holding-lost"))
        .isEqualTo(none);
  }

  /** Once it is loose it is said once. */
  @Test
  void whatIsLooseIsSaidOnce() {
    String hold = "on subplate S1, up top";
    BenchPlan plan =
        held(
            part(PLATE, RIM),
            hold,
            "cutter EM10",
            "touch top with paper 0.05, zero z",
            "profile rim with EM10, leaving 0.2, pass 1, conventional",
            ALL_ROUND);
    assertThat(plan.said("holding-lost"))
        .containsOnlyOnce("error holding-lost")
        .contains("at `profile rim with EM10, leaving 0.2, pass 1, conventional`");
  }

  // ---- Edges that are gone

  private static final String CLAMPED =
      "on table, up top, fixed back, on pair P3x10, clamp C1 at (25, 15)";

  private static String gone(String where, String what, String by, String line) {
    return "error feature-order at `%s`: too late to %s: `%s` has taken it away\n"
            .formatted(where, what, by)
        + "  see `%s`: it is cut away here\n".formatted(line);
  }

  /** An obround of 50 x 28 leaves 22 of the 50 of the long sides, and a point of the short ones. */
  @Test
  void edgesAreNotFoundOnceAnOutlineHasTakenThem() {
    String rim = "outline rim seen from top, obround 50 x 28, at (0, 0) from centre";
    String right = "find right from operator-right with finder F5, zero x at edge";
    String back = "find back from operator-back with finder F5, zero y at edge";
    BenchPlan plan =
        held(rim(part(PLATE, rim), CLAMPED), CLAMPED, right, back, "touch front with paper 0.05");
    assertThat(plan.said("feature-order"))
        .isEqualTo(
            gone(EDGES[0], "find the left edge", "rim", ALL_ROUND)
                + gone(EDGES[1], "find the front edge", "rim", ALL_ROUND)
                + gone(right, "find the right edge", "rim", ALL_ROUND)
                + gone(back, "find the back edge", "rim", ALL_ROUND)
                + gone("touch front with paper 0.05", "find the front edge", "rim", ALL_ROUND));
    // It leaves the edges of an outline that does not go through.
    BenchPlan shallow =
        held(rim(part(PLATE, rim + ", depth 4"), CLAMPED), CLAMPED, right, "touch top");
    assertThat(shallow.said("feature-order")).isEmpty();
  }

  /** As wide as the part it leaves most of the long sides: 20 of 50 are straight, more is near. */
  @Test
  void anOutlineThatKeepsTheLongSides() {
    String rim = "outline rim seen from top, obround 50 x 30, at (0, 0) from centre";
    String right = "find right from operator-right with finder F5, zero x at edge";
    assertThat(held(rim(part(PLATE, rim), CLAMPED), CLAMPED, right).said("feature-order"))
        .isEqualTo(
            gone(EDGES[0], "find the left edge", "rim", ALL_ROUND)
                + gone(right, "find the right edge", "rim", ALL_ROUND));
  }

  /** More than seven tenths of the edge: more than 35 of 50. */
  @ParameterizedTest
  @CsvSource({"34.8, false", "36, true", "50, true"})
  void aSlotThroughTheEdge(String length, boolean found) {
    String side =
        "slot side in top, width 10, length " + length + ", through, at (25, 5) from left front";
    String line = "slot side with EM10, pass 1";
    BenchPlan plan =
        held(
            held(
                part(PLATE, side),
                CLAMPED,
                "cutter EM10",
                "touch top with paper 0.05, zero z",
                line),
            CLAMPED,
            "find back from operator-back with finder F5, zero y at edge");
    assertThat(plan.said("feature-order"))
        .isEqualTo(found ? gone(EDGES[1], "find the front edge", "side", line) : "");
  }

  @ParameterizedTest
  @CsvSource({
    "'in V80, up top, fixed back, on pair P3x20', back",
    "'in V80, up top, fixed right, on pair P3x20', right",
    "'in V80, up front, fixed top, on pair P3x20', ''",
    "'on table, up top, fixed back', ''",
  })
  void facesAreNotGrippedOnceAnOutlineHasTakenThem(String hold, String face) {
    String rim = "outline rim seen from top, obround 50 x 28, at (0, 0) from centre";
    BenchPlan plan = rim(part(PLATE, rim), CLAMPED).setup("hold " + hold);
    assertThat(plan.said("feature-order"))
        .isEqualTo(
            face.isEmpty() ? "" : gone("fixed " + face, "grip the " + face, "rim", ALL_ROUND));
  }

  // ---- The piece inside a window

  private static final String PORT =
      "window port in top, at (0, 0) from centre, obround 28 x 18, tolerance +-0.15";
  private static final String PIN = "hole pin in top, dia 4, at (5, 5), through";
  private static final String MIDDLE = "hole mid in top, dia 4, at (0, 0) from centre, through";
  private static final String OUT = "window port with SD6, pass 1, conventional";

  private static BenchPlan window(String hold, String lines) {
    return window(PORT, hold, lines);
  }

  private static BenchPlan window(String port, String hold, String lines) {
    return held(
        part("60 x 40 x 6", port, PIN, MIDDLE),
        hold,
        lines
            .replace("OUT", "cutter SD6; touch top with paper 0.05, zero z; " + OUT)
            .split("; ", -1));
  }

  private static final String BESIDE = "on table, up top, fixed back, clamp C1 at (3, 20)";

  /** What is screwed down on a plate stays; in a vise a hole of its own holds nothing. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        BESIDE + " | OUT; drill pin 4 | drill pin 4",
        BESIDE + " | OUT; window port with SD6, conventional | window port with SD6, conventional",
        BESIDE + " | OUT; cutter FC40; touch top; clean top at 0.1 | clean top at 0.1",
        BESIDE + " | OUT; deburr edges of top | ",
        BESIDE + " | drill pin 4; OUT | ",
        BESIDE + " | drill mid 4; OUT; drill pin 4 | ",
        BESIDE + " | drill mid 4, depth 3; OUT; drill pin 4 | drill pin 4",
        BESIDE + " | drill pin 4; OUT; drill mid 4 | drill mid 4",
        "on table, up top, clamp C1 at (30, 20) | OUT; drill pin 4 | ",
        "in V80, up top, fixed back, on pair P3x20 | drill mid 4; OUT; drill pin 4 | drill pin 4",
      })
  void thePieceInsideAWindow(String hold, String lines, String next) {
    assertThat(window(hold, lines).said("slug-loose"))
        .isEqualTo(
            next == null
                ? ""
                : """
                warning slug-loose at `%s`: the piece inside `port` comes loose when this cut goes\
                 through, and more is cut after it: put a clamp on it, screw it down by a hole of\
                 its own, or cut this through last of all
                  see `%s`: the next cut
                  see `%s`: it is drawn here
                """
                    .formatted(OUT, next, PORT));
  }

  /** A cutter of 6 leaves a piece of 2 x 1 of a window of 14 x 13, and 8 x 0.1 of 20 x 12.1. */
  @ParameterizedTest
  @CsvSource({"14 x 13, true", "20 x 12.1, false", "14 x 8, false"})
  void aSliverIsNoPiece(String size, boolean found) {
    String port = PORT.replace("28 x 18", size);
    assertThat(window(port, BESIDE, "OUT; drill pin 4").said("slug-loose").isEmpty())
        .isEqualTo(!found);
  }

  /** The roughing cut frees the piece; for the finishing cut it is gone. */
  @Test
  void aPieceComesLooseOnce() {
    String rough = "window port with SD6, leaving 0.3, pass 1, conventional";
    String said =
        window(
                BESIDE,
                "cutter SD6; touch top with paper 0.05, zero z; " + rough + "; OUT; drill pin 4")
            .said("slug-loose");
    assertThat(said)
        .startsWith("warning slug-loose at `" + rough + "`: ")
        .containsOnlyOnce("warning slug-loose");
  }
}
