package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rules of cuts with all they say. Speeds: v = pi d n; mild steel and high-speed steel up to 34
 * m/min, a tenth more allowed, so 37.4; the mill's steps are 95, 180, 270, 500, 930, 1420 and 2100
 * rpm. Limits: common practice, no source.
 */
class CuttingMessageTests {
  private static final String MILLED = "milled front back top bottom left right";
  private static final String VISE = "hold in V80, up top, fixed back, on pair P6x10";
  private static final BenchPlan BAR = BenchPlan.of("100 x 30 x 21", MILLED).in("steel-mild");

  private static BenchPlan facing(BenchPlan plan, String cutter, String cut) {
    return plan.setup(
        VISE, "cutter " + cutter, "touch top with paper 0.05, zero z", "lock y z", cut);
  }

  private static BenchPlan facing(String cutter, String cut) {
    return facing(BenchPlan.of("60 x 30 x 22", MILLED).in("steel-mild"), cutter, cut);
  }

  private static BenchPlan end(BenchPlan plan, String cutter, String cut) {
    return plan.setup(
        VISE,
        "cutter " + cutter,
        "touch right with paper 0.05, zero x",
        "set z 22 below top",
        "lock x z",
        cut);
  }

  private static BenchPlan feature(String material, String spec, String... lines) {
    return BenchPlan.of("60 x 30 x 22", MILLED)
        .in(material)
        .part("length 60")
        .part("width 30")
        .part("height 22")
        .part(spec)
        .setup(
            Stream.concat(
                    Stream.of(
                        "hold in V80, up top, fixed back, on pair P3x10",
                        "find left from operator-left with finder F5, zero x at edge",
                        "find front from operator-front with finder F5, zero y at edge",
                        "touch top with paper 0.05, zero z"),
                    Stream.of(lines))
                .toArray(String[]::new));
  }

  private static String cutter(String name, String kind, String dia, int teeth) {
    return "\nown cutter %s\n  kind: %s\n  dia: %s\n  teeth: %d\n  flute: 30\n"
        .formatted(name, kind, dia, teeth);
  }

  // ---- Speed

  private static final String SPEEDS = "  see `inch-mill`: the machine's speeds are given here\n";

  /** 930 rpm over 16 mm is 46.7 m/min, 153 ft/min. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "500 rpm | ",
        "930 rpm | 930 rpm is 47 m/min (153 ft/min) at the edge of `EM16`; usual for mild steel and"
            + " high-speed steel are up to 34 m/min (112 ft/min)",
        "50 rpm | `inch-mill` has no step of 50 rpm; it has 95 rpm",
        "9.5 rpm | `inch-mill` has no step of 9.5 rpm; it has 95 rpm",
        "600 rpm | `inch-mill` has no step of 600 rpm; it has 500 rpm and 930 rpm",
        "2500 rpm | 2500 rpm is above the top speed of `inch-mill`, 2100 rpm",
      })
  void statedSpeeds(String speed, String words) {
    assertThat(facing("EM16, speed " + speed, "clean top at 0.2").said("speed-out-of-range"))
        .isEqualTo(
            words == null
                ? ""
                : "warning speed-out-of-range at `speed %s`: %s\n".formatted(speed, words)
                    + SPEEDS
                    + "  see `EM16`: the cutter is described here\n"
                    + "  change: Write `speed 500 rpm`: `speed 500 rpm` for `speed "
                    + speed
                    + "`\n");
  }

  /** A plate's step is meant within a hundredth, 2100 + 21; an unknown material has no usual. */
  @ParameterizedTest
  @CsvSource({"2121, false", "2122, true", "2079, false", "2078, true"})
  void aHundredthIsTheSameStep(String rpm, boolean found) {
    BenchPlan plan = facing("EM16, speed " + rpm + " rpm", "clean top at 0.2").in("whalebone");
    assertThat(plan.said("speed-out-of-range").isEmpty()).isEqualTo(!found);
  }

  /** 500 rpm over 22 mm is 34.6 m/min and within a tenth, over 24 it is 37.7. */
  @ParameterizedTest
  @CsvSource({"22, false", "24, true"})
  void aTenthAboveTheUsualIsAllowed(String dia, boolean found) {
    BenchPlan plan =
        facing("E, speed 500 rpm", "clean top at 0.2").with(cutter("E", "end-mill", dia, 4));
    assertThat(plan.said("speed-out-of-range").isEmpty()).isEqualTo(!found);
  }

  /** 95 rpm over 115 mm is 34.3 m/min, over 130 mm 38.8 m/min or 127 ft/min. */
  @Test
  void aCutterForWhichTheMachineTurnsTooFast() {
    BenchPlan plan = facing("E", "clean top at 0.2");
    assertThat(plan.with(cutter("E", "fly-cutter", "115", 1)).said("speed-out-of-range")).isEmpty();
    String words =
        "the slowest speed of `inch-mill`, 95 rpm, is 39 m/min (127 ft/min) at the edge of `E`; usual"
            + " for mild steel and high-speed steel are up to 34 m/min (112 ft/min); take a smaller"
            + " cutter\n";
    String big = cutter("E", "end-mill", "130", 6);
    assertThat(plan.with(big).said("speed-out-of-range"))
        .isEqualTo(
            "warning speed-out-of-range at `cutter E`: "
                + words
                + SPEEDS
                + "  see `E`: the cutter is described here\n");
    // A line on a feature that takes it into the spindle, unless it is there already.
    String fork = "slot fork in top, width 131, length 24, depth 2, at (50, 15) from left front";
    String line = "slot fork with E, pass 1";
    assertThat(feature("steel-mild", fork, line).with(big).said("speed-out-of-range"))
        .isEqualTo(
            "warning speed-out-of-range at `slot fork with E, pass 1`: "
                + words
                + SPEEDS
                + "  see `E`: the cutter is described here\n");
    assertThat(feature("steel-mild", fork, "cutter E", line).with(big).said("speed-out-of-range"))
        .startsWith("warning speed-out-of-range at `cutter E`")
        .containsOnlyOnce("warning");
    assertThat(
            feature("steel-mild", fork, "cutter EM16", line).with(big).said("speed-out-of-range"))
        .startsWith("warning speed-out-of-range at `slot fork with E, pass 1`")
        .containsOnlyOnce("warning");
  }

  // ---- Feed

  @Test
  void aFeedThatRubsInAKnownAndAnUnknownMaterial() {
    String said =
        """
        warning rubbing at `feed 0.01 mm/tooth`: a feed of 0.01 mm (0.4 thou) a tooth is below 0.013\
         mm (0.5 thou): the teeth rub and grow dull instead of cutting
          see `EM16`: the cutter is described here
        """;
    BenchPlan plan = end(BAR, "EM16", "clean right at 1, conventional, feed 0.01 mm/tooth");
    assertThat(plan.in("whalebone").said("rubbing")).isEqualTo(said);
    // What is usual lies between 0.05 and 0.1 mm for 16 mm in mild steel.
    assertThat(plan.said("rubbing"))
        .startsWith(said)
        .containsPattern(
            "  change: Write `feed 0\\.0\\d+ mm/tooth`: `feed 0\\.0\\d+ mm/tooth` for");
    // Where the shop wants more than what is usual nothing is offered.
    assertThat(plan.with("\nown limits l\n  least-chip: 0.2\n").said("rubbing"))
        .contains("below 0.20 mm (7.9 thou)")
        .doesNotContain("change:");
  }

  /** 0.1 of 16: 2 sqrt(a (1 - a)) = 0.158, of a feed of 0.03 it is 0.0047. */
  @Test
  void aNarrowCutRubs() {
    String words =
        "so narrow a cut makes a chip of at most 0.005 mm (0.2 thou) from a feed of 0.03 mm (1.2"
            + " thou) a tooth, below 0.013 mm (0.5 thou): the teeth rub; feed faster or cut wider\n";
    assertThat(
            end(BAR, "EM16", "clean right at 0.1, conventional, feed 0.03 mm/tooth")
                .said("rubbing"))
        .isEqualTo(
            "warning rubbing at `feed 0.03 mm/tooth`: "
                + words
                + "  see `EM16`: the cutter is described here\n");
    assertThat(
            end(BAR, "EM16, feed 0.03 mm/tooth", "clean right at 0.1, conventional")
                .said("rubbing"))
        .isEqualTo(
            "warning rubbing at `clean right at 0.1, conventional`: "
                + words
                + "  see `cutter EM16, feed 0.03 mm/tooth`: the feed is given here\n");
    // Along the middle the chip is as thick as the feed: 0.02 is enough there.
    assertThat(
            end(BAR, "EM16, feed 0.02 mm/tooth", "clean right at 8, conventional").said("rubbing"))
        .isEmpty();
  }

  private static final String WELL =
      "pocket well in top, size 30 x 20, radius 5, depth 8, at (28, 15) from left front";

  @Test
  void theLastPassOfAPocketRubs() {
    BenchPlan plan =
        feature(
            "steel-mild",
            WELL,
            "cutter SD6, feed 0.02 mm/tooth",
            "pocket well with SD6, leaving 0.1, pass 1",
            "pocket well with SD6, pass 3");
    assertThat(plan.said("rubbing"))
        .startsWith("warning rubbing at `pocket well with SD6, pass 3`: so narrow a cut makes a")
        .contains("from a feed of 0.02 mm (0.8 thou) a tooth, below 0.013 mm (0.5 thou)")
        .endsWith("  see `cutter SD6, feed 0.02 mm/tooth`: the feed is given here\n")
        .containsOnlyOnce("warning");
  }

  // ---- Depth

  /**
   * Off the wall of a pocket 0.12 of the diameter, 0.72; deeper than half of it, 3, is too much.
   */
  @ParameterizedTest
  @CsvSource({"0.72, 3.5, false", "0.8, 3, false", "0.8, 3.5, true", "0.5, 8, false"})
  void aDeepPassOffAWall(String left, String pass, boolean found) {
    BenchPlan plan =
        feature(
            "gunmetal-LG2",
            WELL,
            "cutter SD6",
            "pocket well with SD6, leaving " + left + ", pass 1",
            "pocket well with SD6, pass " + pass);
    assertThat(plan.said("heavy-pass"))
        .satisfies(
            said -> {
              if (found) {
                assertThat(said)
                    .startsWith("warning heavy-pass at `pass 3.5`: taking 0.8")
                    .contains(
                        " off a wall 3.50 mm (0.1378 in) deep at once is heavy for a small mill;"
                            + " leave at most 0.72 mm (28.3 thou) for it, or go down by 3.00 mm"
                            + " (0.1181 in) at a time\n  see `"
                            + WELL
                            + "`: it is drawn here\n");
              } else {
                assertThat(said).isEmpty();
              }
            });
  }

  /** Half of 6 is 3: a depth of 4 wants 2 levels. */
  @ParameterizedTest
  @CsvSource({"', pass 3', ''", "', pass 3.1', pass 3.1", "'', 'slot oil with SD6'"})
  void aLevelOfASlot(String pass, String where) {
    String oil = "slot oil in top, width 6, length 30, depth 4, at (28, 15) from left front";
    String deep = pass.isEmpty() ? "4.00 mm (0.1575 in)" : "3.10 mm (0.122 in)";
    assertThat(
            feature("gunmetal-LG2", oil, "cutter SD6", "slot oil with SD6" + pass)
                .said("heavy-pass"))
        .isEqualTo(
            where.isEmpty()
                ? ""
                : """
                warning heavy-pass at `%s`: cutting 6.00 mm (0.2362 in) wide with `SD6`, %s at once is\
                 heavy for a small mill; keep it to 3.00 mm (0.1181 in) (2 levels for 4.00 mm (0.1575\
                 in))
                  see `%s`: it is drawn here
                """
                    .formatted(where, deep, oil));
  }

  /**
   * From stock of 22, which may be 22.3, to 20 and 20.8: 2.3 are 5 passes of 0.508, 1.5 are 3. A
   * face that is only cleaned has no number of passes; the side of 16 takes 0.12 x 16 = 1.92.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20 | rough top to height, pass 0.6 | pass 0.6 | 0.60 mm (23.6 thou) | (5 passes for 2.30 mm"
            + " (90.6 thou))",
        "20.8 | finish top to height, by 2 passes of 0.6 | by 2 passes of 0.6 | 0.60 mm (23.6 thou) |"
            + " (3 passes for 1.50 mm (59.1 thou))",
        "20.8 | finish top to height | finish top to height | 1.20 mm (47.2 thou) | (3 passes for"
            + " 1.50 mm (59.1 thou))",
        "20 | clean top at 0.6 | at 0.6 | 0.60 mm (23.6 thou) | ",
        "20 | rough top to height, pass 0.5 | | | ",
      })
  void aPassOverAFace(String height, String cut, String where, String pass, String count) {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 22", "drawn front back top bottom", "sawn left right")
            .part("height " + height + " +-0.5");
    assertThat(facing(plan, "FC40", cut).said("heavy-pass"))
        .isEqualTo(
            where == null
                ? ""
                : """
                warning heavy-pass at `%s`: a pass of %s is heavy for a small mill; keep it to 0.508\
                 mm (20 thou)%s
                  see `size 60 x 30 x 22`: the size it starts from comes from here
                """
                    .formatted(where, pass, count == null ? "" : " " + count));
  }

  @Test
  void aPassWithTheSide() {
    assertThat(end(BAR, "EM16", "clean right at 1.92, conventional").said("heavy-pass")).isEmpty();
    assertThat(end(BAR, "EM16", "clean right at 1.93, conventional").said("heavy-pass"))
        .isEqualTo(
            """
            warning heavy-pass at `at 1.93`: a pass of 1.93 mm (76 thou) is heavy for a small mill;\
             keep it to 1.92 mm (75.6 thou)
              see `size 100 x 30 x 21`: the size it starts from comes from here
            """);
    // Deeper than the cutter is wide it is a slip of unit, which another rule reports.
    assertThat(end(BAR, "EM16", "clean right at 17, conventional").said("heavy-pass")).isEmpty();
    assertThat(end(BAR, "EM16", "clean right at 16, conventional").said("heavy-pass")).isNotEmpty();
  }

  /** The flutes are 10 long; the shank rubs unless it is thinner, then what holds it comes down. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "10 | '' | ",
        "10.1 | '' | 10.10 mm (0.3976 in) deep; the flutes of `E` are 10.00 mm (0.3937 in) long and"
            + " the shank would rub",
        "10.1 | shank: 16 | 10.10 mm (0.3976 in) deep; the flutes of `E` are 10.00 mm (0.3937 in)"
            + " long and the shank would rub",
        "12 | shank: 15; reach: 12 | ",
        "12.5 | shank: 15; reach: 12 | 12.50 mm (0.4921 in) deep; `E` reaches 12.00 mm (0.4724 in),"
            + " then what holds it comes down on the work",
        "12.5 | shank: 15 | ",
      })
  void aSlotDeeperThanTheFlutes(String depth, String more, String words) {
    String fork =
        "slot fork in top, width 17, length 24, depth " + depth + ", at (50, 15) from left front";
    String shop =
        cutter("E", "end-mill", "16", 4).replace("flute: 30", "flute: 10")
            + Stream.of(more.split("; ", -1))
                .filter(line -> !line.isEmpty())
                .map(line -> "  " + line + "\n")
                .reduce("", String::concat);
    assertThat(
            feature("steel-mild", fork, "cutter E", "slot fork with E, pass 1")
                .with(shop)
                .said("depth-over-flutes"))
        .isEqualTo(
            words == null
                ? ""
                : """
                error depth-over-flutes at `slot fork with E, pass 1`: `fork` is %s
                  see `E`: the cutter is described here
                  see `%s`: it is drawn here
                """
                    .formatted(words, fork));
  }

  /** 22 along the cutter of 22 flutes. */
  @ParameterizedTest
  @CsvSource({"22, false", "22.5, true"})
  void aWallDeeperThanTheFlutes(String depth, boolean found) {
    BenchPlan plan =
        BenchPlan.of("100 x 20 x 35", MILLED)
            .setup(
                VISE,
                "cutter EM10",
                "touch right with paper 0.05, zero x",
                "set z " + depth + " below top",
                "clean right at 0.5, conventional");
    assertThat(plan.said("depth-over-flutes"))
        .isEqualTo(
            found
                ? """
                error depth-over-flutes at `clean right at 0.5, conventional`: this is 22.50 mm (0.8858\
                 in) deep along the cutter; the flutes of `EM10` are 22.00 mm (0.8661 in) long and\
                 the shank would rub
                  see `EM10`: the flutes are given here
                """
                : "");
  }

  // ---- Travel

  /** Front to back is conventional at the right-hand side with a right-hand cutter: geometry. */
  @Test
  void whatIsWrongWithATravel() {
    assertThat(
            end(BAR, "EM16", "clean right at 0.2, conventional, travel back to front")
                .said("travel-direction"))
        .isEqualTo(
            """
            warning travel-direction at `travel back to front`: with this travel the cut is climb, not\
             conventional; for that the cutter travels away from you
              see `conventional`: the kind of cut is stated here
            """);
    assertThat(
            end(BAR, "EM16", "clean right at 0.2, conventional, travel left to right")
                .said("travel-direction"))
        .isEqualTo(
            """
            warning travel-direction at `travel left to right`: the cutter cannot travel this way over\
             the right, which looks right here; it travels from one side of the face to the opposite\
             one
              see `right`: the face is named here
            """);
    assertThat(
            end(BAR, "EM16", "clean right at 0.2, conventional, offset 2 toward front")
                .said("travel-direction"))
        .isEqualTo(
            """
            warning travel-direction at `offset 2 toward front`: an offset is for facing; at a wall the\
             side of the cutter sets the size
              see `clean right at 0.2, conventional, offset 2 toward front`: the cut is here
            """);
    assertThat(
            facing("FC40", "clean top at 0.3, travel left to right, offset 2 toward right")
                .said("travel-direction"))
        .isEqualTo(
            """
            warning travel-direction at `offset 2 toward right`: an offset shifts the cutter to one\
             side of its travel; here the cutter travels right
              see `clean top at 0.3, travel left to right, offset 2 toward right`: the cut is here
            """);
  }

  @Test
  void facingUnderTheMiddleIsBothKindsOfCut() {
    assertThat(
            facing("FC40", "clean top at 0.3, travel left to right, climb")
                .said("travel-direction"))
        .startsWith("warning travel-direction at `climb`: this cut is ")
        .contains(
            ", not climb: what it is follows from the side of the cutter the face lies on, by travel"
                + " and offset\n  see `clean top at 0.3, travel left to right, climb`: the cut is"
                + " here\n");
  }

  // ---- What is not covered

  /** The flat of 40 with corners of 0.4 is 39.2 wide; 41 leaves 1.8, 0.9 and 0.9. */
  @Test
  void aStripThatIsNotCovered() {
    BenchPlan wide = BenchPlan.of("80 x 41 x 21", MILLED);
    assertThat(
            facing(wide, "FC40", "clean top at 0.3, travel left to right").said("face-not-covered"))
        .isEqualTo(
            """
            warning face-not-covered at `clean top at 0.3, travel left to right`: a strip 0.90 mm (35.4\
             thou) wide of the top is not covered: `FC40` is 40.00 mm (1.5748 in) across with corners\
             of 0.40 mm (15.7 thou); take a wider cutter, less offset or several lanes: `step over`
              see `cutter FC40`: the cutter is chosen here
            """);
    assertThat(
            facing(wide, "EM16", "clean top at 0.3, travel left to right, step over 16.5")
                .said("face-not-covered"))
        .contains(
            "`EM16` is 16.00 mm (0.6299 in) across; step over less, or shift the lanes less\n");
  }

  // ---- Pull and bending

  private static final BenchPlan LEDGES =
      BenchPlan.of("100 x 30 x 22", MILLED)
          .in("steel-mild")
          .part("length 100")
          .part("width 30")
          .part("height 22");

  /** A step along the right end, 10 deep. */
  private static BenchPlan ledge(String width, String depth, String cutter, String clauses) {
    String middle = new BigDecimal("100").subtract(half(width)).toPlainString();
    return LEDGES
        .part(
            "step ledge in top, at (%s, 15) from left front, size %s x 30, depth %s"
                .formatted(middle, width, depth))
        .setup(
            "hold in V80, up top, fixed back, on pair P3x10",
            "find left from operator-left with finder F5, zero x at edge",
            "find front from operator-front with finder F5, zero y at edge",
            "cutter " + cutter,
            "touch top with paper 0.05, zero z",
            "step ledge with " + cutter.substring(0, 4) + clauses);
  }

  private static BigDecimal half(String width) {
    return new BigDecimal(width).divide(new BigDecimal("2"));
  }

  /**
   * A step and an end of the same width and depth are the same cut, so the table is pulled along as
   * much. The force of a feature is worked out by the power, with the specific force of its chip,
   * so a third may lie between them.
   */
  @ParameterizedTest
  @CsvSource({"1.5", "2", "4", "6"})
  void aStepPullsLikeAnEnd(String width) {
    String cutter = "EM16, speed 500 rpm, feed 0.05 mm/tooth";
    double step = pull(ledge(width, "10", cutter, ", pass 10, climb"));
    double end =
        pull(
            LEDGES.setup(
                VISE,
                "cutter " + cutter,
                "touch right with paper 0.05, zero x",
                "set z 10 below top",
                "clean right at " + width + ", climb"));
    assertThat(step).isBetween(end / 1.33, end * 1.33);
    assertThat(ledge(width, "10", cutter, ", pass 10, conventional").said("heavy-climb")).isEmpty();
    assertThat(ledge(width, "10", cutter, ", pass 10").said("heavy-climb")).isEmpty();
  }

  private static double pull(BenchPlan plan) {
    String said = plan.said("heavy-climb");
    assertThat(said)
        .startsWith(
            "warning heavy-climb at `climb`: this climb cut pulls the table along with about ")
        .endsWith(
            " N (drag 50 N); it can jump by the backlash of 0.203 mm (8 thou); cut conventionally, or"
                + " climb only a light finishing pass\n"
                + "  see `inch-mill`: the backlash is given here\n");
    return Double.parseDouble(said.replaceAll("(?s).*about ([0-9]+) N .drag.*", "$1"));
  }

  /** The drag is the shop's to say; what stays below it does not jump. */
  @Test
  void aStifferTable() {
    String cutter = "EM16, speed 500 rpm, feed 0.05 mm/tooth";
    BenchPlan plan = ledge("4", "10", cutter, ", pass 10, climb");
    long pull = Math.round(pull(plan));
    String limits = "\nown limits mine\n  table-drag: ";
    assertThat(plan.with(limits + (pull + 1) + "\n").said("heavy-climb")).isEmpty();
    assertThat(plan.with(limits + (pull - 1) + "\n").said("heavy-climb")).isNotEmpty();
  }

  /**
   * Give or take 0.1 where nothing is said, 0.2 in all, and 0.05, 0.1 in all; a quarter of that is
   * allowed, or what the shop says.
   */
  @Test
  void anEndMillBendsBesideAStep() {
    String cutter = "EM10, speed 930 rpm, feed 0.05 mm/tooth";
    BenchPlan plan = ledge("1.5", "20", cutter, "");
    String said = plan.said("deflection");
    assertThat(said)
        .startsWith("warning deflection at `step ledge with EM10`: `EM10` bends by up to 0.")
        .endsWith(
            " in this cut; the tolerance of `ledge` is 0.20 mm (7.9 thou) in all; first leave a little"
                + " on, go down in shallower passes, or hold the cutter shorter\n"
                + "  see `step ledge in top, at (99.25, 15) from left front, size 1.5 x 30, depth 20`:"
                + " it is drawn here\n"
                + "  see `EM10`: the cutter is described here\n");
    double bent = Double.parseDouble(said.replaceAll("(?s).*up to ([0-9.]+) mm.*", "$1"));
    String limits = "\nown limits mine\n  deflection: ";
    assertThat(plan.with(limits + (bent / 0.2 + 0.01) + "\n").said("deflection")).isEmpty();
    assertThat(plan.with(limits + (bent / 0.2 - 0.01) + "\n").said("deflection")).isEqualTo(said);
    // What is left on for a later cut may bend.
    assertThat(ledge("1.5", "20", cutter, ", leaving 0.2").said("deflection")).isEmpty();
    assertThat(ledge("1.5", "2", cutter, "").said("deflection")).isEmpty();
    BenchPlan narrow =
        new BenchPlan(
            plan.material(),
            plan.part().replace("depth 20", "depth 20, tolerance +-0.05"),
            plan.stock(),
            plan.shop(),
            plan.setups());
    assertThat(narrow.said("deflection"))
        .contains("the tolerance of `ledge` is 0.10 mm (3.9 thou) in all");
  }

  // ---- What the cutter meets

  /** Jaws of 25 on parallels of 10: 15.9 may be 15.6, 0.6 proud, less what is cut. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "16 | | ",
        "15.9 | warning | the cutter passes only 0.40 mm (15.7 thou) above the fixed jaw",
        "15.5 | error | the cutter comes down on the fixed jaw",
        "15.4 | error | the cutter goes 0.10 mm (3.9 thou) into the fixed jaw",
      })
  void theCutterOverTheJaws(String height, String weight, String words) {
    BenchPlan plan = BenchPlan.of("60 x 30 x " + height, MILLED);
    assertThat(facing(plan, "FC40", "clean top at 0.2").said("cutter-meets-jaw"))
        .isEqualTo(
            weight == null
                ? ""
                : """
                %s cutter-meets-jaw at `clean top at 0.2`: %s
                  see `hold in V80, up top, fixed back, on pair P6x10`: the work is held here
                """
                    .formatted(weight, words));
  }

  @Test
  void theForceGoesToTheMovingJaw() {
    assertThat(
            BAR.setup(
                    VISE,
                    "cutter EM16",
                    "touch left, zero x",
                    "set z 22 below top",
                    "clean left at 0.5, conventional")
                .said("force-to-moving-jaw"))
        .isEqualTo(
            """
            info force-to-moving-jaw at `hold in V80, up top, fixed back, on pair P6x10`: at this end the\
             cutter pushes the work against the moving jaw; turn the work round so that the end stands\
             out at operator-right
              see `clean left at 0.5, conventional`: the cut is here
            """);
    String left = cutter("E", "end-mill", "16", 4) + "  hand: left\n";
    assertThat(
            BenchPlan.of("60 x 30 x 21", MILLED)
                .with(left)
                .setup(
                    VISE + ", overhang right 9",
                    "cutter E",
                    "touch right, zero x",
                    "set z 22 below top",
                    "clean right at 0.5, conventional")
                .said("force-to-moving-jaw"))
        .startsWith("info force-to-moving-jaw at `overhang right 9`: ")
        .contains("stands out at operator-left\n");
  }

  /** 12 below the top of work that is 20.7 high at the least: 8.7 stay. */
  @Test
  void theFootOfAWallStaysUncut() {
    assertThat(
            BAR.setup(
                    VISE,
                    "cutter EM16",
                    "touch right, zero x",
                    "set z 12 below top",
                    "clean right at 0.5, conventional")
                .said("face-not-covered"))
        .isEqualTo(
            "warning face-not-covered at `clean right at 0.5, conventional`: the lowest 8.70 mm (0.3425"
                + " in) of the right stay uncut, as the cutter ends above; set z deeper\n"
                + "  see `set z 12 below top`: the depth is set here\n");
  }
}
