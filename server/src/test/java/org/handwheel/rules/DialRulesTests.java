package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules of zeros, dials, locks, names and the motor with all they say. */
class DialRulesTests {
  private static final String MILLED = "milled front back top bottom left right";
  private static final String HOLD = "hold in V80, up top, fixed back, on pair P6x10";
  private static final BenchPlan BLOCK = BenchPlan.of("100 x 30 x 22", MILLED).in("steel-mild");

  // ---- Locks

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lock x | clean top at 0.2, travel left to right | the travel of this cut moves x | x",
        "lock y | clean top at 0.2, travel left to right | | ",
        "lock z | touch top with paper 0.05, zero z | touching the top moves z | z",
        "lock y | touch front with paper 0.05, zero y | touching the front moves y | y",
        "lock x | touch front with paper 0.05, zero y | | ",
        "lock x | find left from operator-left with finder F5, zero x | finding the edge moves x | x",
        "lock y | find left from operator-left with finder F5, zero x | | ",
        "lock z | set z 2 below top | setting the depth moves z | z",
        "lock x | set z 2 below top | | ",
      })
  void whatMovesALockedAxis(String lock, String line, String why, String axis) {
    BenchPlan plan = BLOCK.setup(HOLD, "cutter FC40", "touch top", lock, line);
    assertThat(plan.said("lock-conflict"))
        .isEqualTo(
            why == null
                ? ""
                : "warning lock-conflict at `%s`: %s, which is locked\n  see `%s`: %s is locked here\n"
                    .formatted(line, why, lock, axis));
  }

  /** Over one hole the spindle may stay; the quill moves all the same. */
  @Test
  void drillingWithLockedAxes() {
    BenchPlan plan =
        BLOCK
            .part("hole pin in top, dia 6, through, at (20, 15) from left front")
            .part("hole oil in top, dia 6, through, at (40, 15) from left front");
    String[] zeros = {
      "find left from operator-left with finder F5, zero x at edge",
      "find front from operator-front with finder F5, zero y at edge"
    };
    assertThat(
            plan.setup(HOLD, zeros[0], zeros[1], "spot pin", "lock x y", "drill pin 6")
                .said("lock-conflict"))
        .isEmpty();
    assertThat(
            plan.setup(HOLD, zeros[0], zeros[1], "spot pin", "lock x y", "drill oil 6")
                .said("lock-conflict"))
        .isEqualTo(
            """
            warning lock-conflict at `drill oil 6`: going to the hole moves x, which is locked
              see `lock x y`: x is locked here
            warning lock-conflict at `drill oil 6`: going to the hole moves y, which is locked
              see `lock x y`: y is locked here
            """);
    assertThat(
            plan.setup(HOLD, zeros[0], zeros[1], "spot pin oil", "lock x", "drill pin oil 6")
                .said("lock-conflict"))
        .contains("going to the hole moves x");
    assertThat(
            plan.setup(HOLD, zeros[0], zeros[1], "spot pin", "lock z", "drill pin 6")
                .said("lock-conflict"))
        .contains("`drill pin 6`: the quill moves z, which is locked");
  }

  // ---- Zeros

  @Test
  void aCutThatStartsFromNowhere() {
    assertThat(BLOCK.setup(HOLD, "clean top at 0.2").said("touch-missing"))
        .isEqualTo(
            """
            error touch-missing at `clean top at 0.2`: no cutter is in the spindle yet: say `cutter\
             NAME` before this
              see `setup`: the setup begins here
            """);
    // Said once for each axis.
    assertThat(
            BLOCK
                .setup(
                    HOLD,
                    "cutter FC40",
                    "clean top at 0.2",
                    "clean top at 0.2",
                    "clean front at 0.1")
                .said("touch-missing"))
        .isEqualTo(
            """
            error touch-missing at `clean top at 0.2`: the depth of this cut starts from nowhere: touch\
             the top first, for example `touch top, zero z`
              see `setup`: the setup begins here, and all zeros with it
            error touch-missing at `clean front at 0.1`: the depth of this cut starts from nowhere:\
             touch the front first, for example `touch front, zero y`
              see `setup`: the setup begins here, and all zeros with it
            """);
    assertThat(
            BLOCK
                .setup(
                    HOLD,
                    "cutter FC40",
                    "touch top, zero z",
                    "cutter EM16",
                    "clean top at 0.2",
                    "clean top at 0.2")
                .said("touch-missing"))
        .isEqualTo(
            """
            error touch-missing at `clean top at 0.2`: the cutter was changed since it touched; touch\
             the top again
              see `cutter EM16`: the cutter is changed here
              see `touch top, zero z`: the zero was taken here
            """);
  }

  @Test
  void movingTheHeadLosesTheZeros() {
    BenchPlan plan =
        BLOCK.setup(
            HOLD,
            "cutter FC40",
            "touch top, zero z",
            "move head up 40",
            "clean top at 0.2",
            "clean top at 0.2");
    assertThat(plan.said("zero-lost"))
        .isEqualTo(
            """
            error zero-lost at `clean top at 0.2`: the zero of z was lost when the head was moved; find\
             it again
              see `move head up 40`: the head is moved here
              see `touch top, zero z`: the zero was taken here
            """);
    assertThat(plan.said("touch-missing")).isEmpty();
    BenchPlan holes =
        BLOCK
            .part("hole pin in top, dia 6, through, at (20, 15) from left front")
            .setup(
                HOLD,
                "find left from operator-left with finder F5, zero x at edge",
                "find front from operator-front with finder F5, zero y at edge",
                "spot pin",
                "move head up 40",
                "drill pin 6");
    assertThat(holes.said("zero-lost"))
        .isEqualTo(
            """
            error zero-lost at `drill pin 6`: the zero of x and y was lost when the head was moved; find\
             it again
              see `move head up 40`: the head is moved here
              see `find left from operator-left with finder F5, zero x at edge`: the zero was taken here
            """);
  }

  /** Found from the left with the cutter going right, the right end is cut going left. */
  @Test
  void theBacklashIsOnTheOtherSide() {
    String[] lines = {
      HOLD,
      "cutter EM16",
      "touch left with paper 0.05, zero x",
      "set z 22 below top",
      "clean right at 0.2, conventional"
    };
    assertThat(BLOCK.setup(lines).said("backlash-side"))
        .isEqualTo(
            """
            warning backlash-side at `clean right at 0.2, conventional`: the zero of x was taken with the\
             cutter going right, this cut goes left; the size is off by the backlash of 0.203 mm (8 thou)\
             unless it is taken up
              see `touch left with paper 0.05, zero x`: the zero was taken here
            """);
    lines[2] = "touch right with paper 0.05, zero x";
    assertThat(BLOCK.setup(lines).said("backlash-side")).isEmpty();
  }

  // ---- Names

  @Test
  void materialsNobodyKnows() {
    assertThat(BLOCK.in("gunmetal-LG3").said("material-unknown"))
        .isEqualTo(
            """
            warning material-unknown at `gunmetal-LG3`: no material `gunmetal-LG3` is known; did you mean\
             `gunmetal-LG2`?
              change: Write `gunmetal-LG2`: `gunmetal-LG2` for `gunmetal-LG3`
            """);
    assertThat(BLOCK.in("whalebone").said("material-unknown"))
        .isEqualTo(
            """
            warning material-unknown at `whalebone`: no material `whalebone` is known; describe it in the\
             shop: `own material whalebone`
            """);
    // The shop's own are among those that may be meant.
    assertThat(
            BLOCK
                .in("whalebon")
                .with("\nown material whalebone\n  like: steel-mild\n")
                .said("material-unknown"))
        .contains("did you mean `whalebone`?");
    assertThat(BenchPlan.of("60 x 30 x 22", MILLED, "material whalebone").said("material-unknown"))
        .contains("at `whalebone`: no material `whalebone` is known");
  }

  // ---- The motor

  private static final String LOSSY = "\nown limits mine\n  efficiency: %s\n";

  private static BenchPlan facing(String cutter, String cut) {
    return BenchPlan.of("60 x 30 x 22", MILLED)
        .in("steel-mild")
        .setup(HOLD, "cutter " + cutter, "touch top with paper 0.05, zero z", "lock y z", cut);
  }

  /**
   * 930 rpm, 4 teeth, 0.2 mm a tooth: 744 mm a minute over 30 x 0.5 is 11.2 cubic centimetres a
   * minute. What the motor bears goes with the depth: of 0.5 times 0.45 kW over what is asked, in
   * whole steps of 0.05.
   */
  @Test
  void moreThanTheMotorGives() {
    String cutter = "FC40, speed 930 rpm, feed 0.2 mm/tooth";
    String said = facing(cutter, "clean top at 0.5").said("power");
    assertThat(said)
        .startsWith("warning power at `at 0.5`: this pass asks about 0.")
        .contains(" of the motor, which gives 0.45 kW (0.6 hp); take about 0.")
        .endsWith(
            " at a time, or feed more slowly\n"
                + "  see `inch-mill`: the motor's power is given here\n"
                + "  see `cutter FC40, speed 930 rpm, feed 0.2 mm/tooth`: the feed is given here\n");
    double asked = Double.parseDouble(said.replaceAll("(?s).*asks about ([0-9.]+) kW.*", "$1"));
    double taken = Double.parseDouble(said.replaceAll("(?s).*take about ([0-9.]+) mm.*", "$1"));
    assertThat(taken).isBetween(0.5 * 0.45 / asked - 0.055, 0.5 * 0.45 / asked + 0.005);
    assertThat(asked).isGreaterThan(0.45);
    // A feed of the line itself is not the cutter's.
    assertThat(facing("FC40, speed 930 rpm", "clean top at 0.5, feed 0.2 mm/tooth").said("power"))
        .endsWith("  see `inch-mill`: the motor's power is given here\n");
  }

  /** Half as much comes through at half the efficiency, so twice as much is asked. */
  @Test
  void theEfficiencyOfTheMill() {
    String cutter = "FC40, speed 930 rpm, feed 0.2 mm/tooth";
    double asked = asked(facing(cutter, "clean top at 0.5").with(LOSSY.formatted("0.6")));
    double twice = asked(facing(cutter, "clean top at 0.5").with(LOSSY.formatted("0.3")));
    assertThat(twice).isBetween(asked * 2 - 0.02, asked * 2 + 0.02);
    assertThat(facing(cutter, "clean top at 0.05").with(LOSSY.formatted("0.01")).said("power"))
        .contains("; take less at a time, or feed more slowly");
    // A pass that is a slip of the unit is not judged.
    assertThat(facing(cutter, "clean top at 5.1").said("power")).isEmpty();
  }

  private static double asked(BenchPlan plan) {
    return Double.parseDouble(
        plan.said("power").replaceAll("(?s).*asks about ([0-9.]+) kW.*", "$1"));
  }

  /** A slot: the place is the clause of its level. */
  @ParameterizedTest
  @CsvSource({"', pass 1.5', pass 1.5", "'', slot oil with SD6"})
  void aSlotThatAsksTooMuch(String pass, String where) {
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 22", MILLED)
            .in("steel-mild")
            .part("length 60")
            .part("width 30")
            .part("height 22")
            .part("slot oil in top, width 6, length 30, depth 3, at (28, 15) from left front")
            .with(LOSSY.formatted("0.01"))
            .setup(
                "hold in V80, up top, fixed back, on pair P3x10",
                "find left from operator-left with finder F5, zero x at edge",
                "find front from operator-front with finder F5, zero y at edge",
                "cutter SD6",
                "touch top with paper 0.05, zero z",
                "slot oil with SD6" + pass);
    assertThat(plan.said("power")).startsWith("warning power at `" + where + "`: this pass asks");
  }
}
