package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.handwheel.examples.ExampleFiles.Found;
import org.handwheel.rules.Checked;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * One change to a plan that checks clean, a mistake a machinist makes, gives one finding: the right
 * one, on the right line, and nothing that merely follows from it.
 */
class ExampleMistakesTests {
  private static final String PATH = "bearing-block.plan";
  private static final String SEAT = "  seat tapped, both parallels tight\n";

  /** A mistake: a name, changes to the text, and the one finding they give. */
  private static final class Mistake {
    private final String name;
    private String text = ExampleFiles.text(PATH);
    private String rule = "";
    private int line;

    Mistake(String name) {
      this.name = name;
    }

    /** Replaces the first {@code old} in a setup, or in the whole plan if {@code setup} is "". */
    Mistake change(String setup, String old, String changed) {
      int from = start(setup);
      int to = end(from, setup);
      int at = text.indexOf(old, from);
      assertThat(at).as("`%s` in setup %s", old, setup).isBetween(from, to - old.length());
      text = text.substring(0, at) + changed + text.substring(at + old.length());
      return this;
    }

    /** The finding wanted: its rule, and the line of the changed text that begins like this. */
    Mistake gives(String wantedRule, String setup, String lineStart) {
      rule = wantedRule;
      int at = text.indexOf("\n  " + lineStart, start(setup));
      assertThat(at).as("line `%s`", lineStart).isBetween(0, end(start(setup), setup));
      line = (int) text.substring(0, at + 1).chars().filter(c -> c == '\n').count() + 1;
      return this;
    }

    private int start(String setup) {
      return setup.isEmpty() ? 0 : text.indexOf("\nsetup " + setup + " ");
    }

    private int end(int from, String setup) {
      int next = setup.isEmpty() ? -1 : text.indexOf("\nsetup ", from + 1);
      return next < 0 ? text.length() : next;
    }

    DynamicTest test() {
      return DynamicTest.dynamicTest(
          name,
          () -> {
            Checked checked = ExampleFiles.check(PATH, text);
            assertThat(ExampleFiles.found(checked))
                .as(ExampleFiles.words(checked))
                .containsExactly(new Found(line, rule));
          });
    }
  }

  @TestFactory
  Stream<DynamicTest> eachMistakeGivesItsOneFinding() {
    List<Mistake> mistakes = new ArrayList<>();
    mistakes.addAll(squaring());
    mistakes.addAll(sizes());
    mistakes.addAll(holding());
    mistakes.addAll(cutting());
    mistakes.addAll(dials());
    mistakes.addAll(holes());
    return mistakes.stream().map(Mistake::test);
  }

  private static List<Mistake> squaring() {
    return List.of(
        new Mistake("1 a raw face on the fixed jaw")
            .change("two", "fixed top", "fixed bottom")
            .gives("raw-reference", "two", "hold"),
        new Mistake("2 no bar against the raw bottom, back")
            .change("two", ", bar 8 at mid-grip", "")
            .gives("bar-missing", "two", "hold"),
        new Mistake("2 no bar against the raw bottom, front")
            .change("three", ", bar 8 at mid-grip", "")
            .gives("bar-missing", "three", "hold"),
        new Mistake("3 a bar between parallel faces")
            .change("four", "on pair P6x10", "on pair P6x10, bar 8 at mid-grip")
            .gives("bar-not-needed", "four", "hold"),
        new Mistake("4 not tapped down")
            .change("three", SEAT, "")
            .gives("seat-not-proved", "three", "hold"),
        new Mistake("5 front and back both square to the top, neither seated on the other")
            .change("three", "on pair P6x10", "on soft-strip 1.6")
            .gives("not-parallel", "", "parallel front to B"));
  }

  private static List<Mistake> sizes() {
    return List.of(
        new Mistake("6 below the least height")
            .change("four", "finish bottom to height", "finish bottom to 20.90")
            .gives("overcut", "four", "finish bottom"),
        new Mistake("7 nothing left to finish")
            .change("three", "leaving 0.25", "leaving 0")
            .gives("no-finish-allowance", "three", "rough front"),
        new Mistake("8 more may come off than there is")
            .change("one", "at most 1.2", "at most 4")
            .gives("stock-too-small", "one", "clean top"),
        new Mistake("9 the stock is too low to clean up")
            .change("", "size 60 x 33.5 x 24.5", "size 60 x 33.5 x 21.8")
            .gives("face-not-cleaned", "", "size"),
        new Mistake("11 measured over burrs")
            .change(
                "one",
                "  deburr edges of top\n  measure height with caliper\n",
                "  measure height with caliper\n  deburr edges of top\n")
            .gives("measure-before-deburr", "one", "measure height"),
        new Mistake("31 inches for millimetres")
            .change("", "height 21.00 +0/-0.05", "height 21.00 in +0/-0.05")
            .gives("unit-suspect", "", "height"),
        // The height's last check must be the reading: the inspection with the micrometer goes.
        new Mistake("32 read with a caliper, toleranced to a twentieth")
            .change("", "  check height with mic25\n", "")
            .change(
                "",
                "\ninspect",
                "\nlog \"the first one\"\n  in four: read height 21.23 with mic25\n"
                    + "  in four: read height 20.98 with caliper\n\ninspect")
            .gives("tolerance-not-measurable", "", "in four: read height 20.98"),
        new Mistake("27 a tolerance the dial cannot set")
            .change("", "width 30.00 +0/-0.05", "width 30.00 +-0.01")
            .gives("dial-rounding", "three", "finish front"),
        new Mistake("27 a tolerance the caliper cannot show")
            .change("", "check width with mic50", "check width with caliper")
            .gives("tolerance-not-measurable", "", "check width"));
  }

  private static List<Mistake> holding() {
    return List.of(
        // After the finishing pass nothing is measured here, so the burr is the only mistake; where
        // the next line measures, measuring over the burr is a second one.
        new Mistake("10 a burr under the work")
            .change(
                "four",
                "finish bottom to height\n  deburr edges of bottom\n  measure height with mic25\n",
                "finish bottom to height\n")
            .gives("burr-under-work", "five", "hold"),
        new Mistake("13 parallels as thick as the work")
            .change("one", "P6x10", "P17x10")
            .gives("grips-parallels", "one", "hold"),
        new Mistake("15 a spacer wider than the work")
            .change("five", "spacer 29.95", "spacer 30.10")
            .gives("spacer-too-wide", "five", "hold"),
        new Mistake("15 no spacer")
            .change("five", ", spacer 29.95 at operator-left", "")
            .gives("jaw-cocks", "five", "hold"),
        new Mistake("15 a spacer much narrower than the work")
            .change("five", "spacer 29.95", "spacer 28")
            .gives("jaw-cocks", "five", "hold"),
        new Mistake("18 standing out too far")
            .change("five", "overhang right 9", "overhang right 25")
            .gives("overhang-too-long", "five", "hold"),
        new Mistake("19 the cutter pushes against the moving jaw")
            .change("five", "up top", "up bottom")
            .change("five", "29.95 at operator-left", "29.95 at operator-right")
            .change("five", "below top", "below bottom")
            .gives("force-to-moving-jaw", "five", "hold"));
  }

  private static List<Mistake> cutting() {
    return List.of(
        new Mistake("12 too low in the vise")
            .change("one", "on pair P6x10", "on bed")
            .gives("cutter-meets-jaw", "one", "clean top"),
        new Mistake("16 flutes shorter than the end is high")
            .change("five", "cutter EM16", "cutter EM16-stub")
            .gives("depth-over-flutes", "five", "clean right"),
        new Mistake("17 parallels longer than the jaws")
            .change("five", "P6x10", "P6x10-long")
            .gives("cutter-meets-parallel", "five", "clean right"),
        new Mistake("20 climbing with a deep cut")
            .change("six", "pass 0.6, conventional", "pass 1.6, climb")
            .gives("heavy-climb", "six", "rough left"),
        new Mistake("21 the cutter too far to one side")
            .change("one", "offset 2 ", "offset 6 ")
            .gives("face-not-covered", "one", "clean top"));
  }

  private static List<Mistake> dials() {
    return List.of(
        new Mistake("22 never touched")
            .change("two", "  touch back with paper 0.05, zero z\n", "")
            .gives("touch-missing", "two", "clean back"),
        new Mistake("22 the cutter changed after it touched")
            .change(
                "five",
                "  cutter EM16\n  touch right with paper 0.05, zero x\n",
                "  touch right with paper 0.05, zero x\n  cutter EM16\n")
            .gives("touch-missing", "five", "clean right"),
        new Mistake("22 the cutter changed between roughing and finishing")
            .change("six", "  finish left", "  cutter EM10\n  finish left")
            .gives("touch-missing", "six", "finish left"),
        new Mistake("23 the head of a round column moved")
            .change("seven", "  spot oilway", "  move head up 60\n  spot oilway")
            .gives("zero-lost", "seven", "spot oilway"),
        new Mistake("24 X still locked on the way to the first hole")
            .change("seven", "zero x at edge\n", "zero x at edge\n  lock x\n")
            .gives("lock-conflict", "seven", "spot oilway"),
        new Mistake("24 X still locked on the way to the next hole")
            .change("eight", "  drill journal", "  lock x\n  drill journal")
            .gives("lock-conflict", "eight", "drill journal"),
        new Mistake("25 set from the other side than the zero was taken")
            .change(
                "five",
                "  touch right with paper 0.05, zero x\n",
                "  touch left with paper 0.05, zero x\n")
            .gives("backlash-side", "five", "clean right"));
  }

  private static List<Mistake> holes() {
    return List.of(
        new Mistake("14 through holes over thick parallels")
            .change("eight", "P3x10", "P6x10")
            .gives("drill-hits-parallel", "eight", "drill foot"),
        new Mistake("28 next to nothing left for the reamer")
            .change("eight", "13.75", "13.95")
            .gives("ream-allowance", "eight", "ream journal"),
        new Mistake("28 far too much left for the reamer")
            .change("eight", "13.75", "13")
            .gives("ream-allowance", "eight", "ream journal"),
        new Mistake("29 drilled too shallow for the thread")
            .change("", "drill 12", "drill 8")
            .gives("tap-depth", "", "hole oilway"),
        new Mistake("30 a wall too thin to stand")
            .change("", "at (8, 7.5)", "at (3, 7.5)")
            .gives("wall-too-thin", "", "hole foot"),
        new Mistake("30 a hole over the edge")
            .change("", "at (8, 7.5)", "at (2, 7.5)")
            .gives("hole-off-part", "", "hole foot"),
        new Mistake("the tapping drill forgotten")
            .change("seven", "  drill oilway 5\n", "")
            .gives("drill-sequence", "seven", "tap oilway"),
        new Mistake("not the tapping drill")
            .change("seven", "drill oilway 5", "drill oilway 5.5")
            .gives("drill-sequence", "seven", "tap oilway"),
        new Mistake("a hole that no line makes")
            .change("eight", "drill foot, ear 5.5", "drill foot 5.5")
            .gives("hole-not-made", "", "hole ear"),
        new Mistake("a hole cut larger than drawn")
            .change("eight", "drill foot, ear 5.5", "drill foot, ear 6")
            .gives("hole-oversize", "eight", "drill foot"),
        new Mistake("an edge forgotten")
            .change(
                "eight", "  find front from operator-front with finder F5, zero y at edge\n", "")
            .gives("hole-without-zero", "eight", "spot foot"),
        new Mistake("the wrong side up")
            .change("seven", "up front", "up back")
            .gives("hole-face-hidden", "seven", "spot oilway"));
  }

  /** Both passes of the setup go into the jaws, and each is a line that must be mended. */
  @Test
  void parallelsTooLowAreFoundAtEveryPassThatMeetsTheJaws() {
    Mistake mistake = new Mistake("12").change("four", "P6x10", "P6x3");
    Checked checked = ExampleFiles.check(PATH, mistake.text);
    Mistake rough = mistake.gives("cutter-meets-jaw", "four", "rough bottom");
    Found first = new Found(rough.line, rough.rule);
    Mistake finish = mistake.gives("cutter-meets-jaw", "four", "finish bottom");
    assertThat(ExampleFiles.found(checked))
        .as(ExampleFiles.words(checked))
        .containsExactly(first, new Found(finish.line, finish.rule));
  }

  @Test
  void fourMistakesInOnePlanGiveFourFindingsAndCorrectedItGivesNone() {
    String path = "mistakes/four-in-one.plan";
    String text = ExampleFiles.text(path);
    assertThat(ExampleFiles.found(ExampleFiles.check(path)))
        .extracting(Found::rule)
        .containsExactly("grips-parallels", "raw-reference", "no-finish-allowance", "overcut");
    String corrected =
        text.replace("P17x10", "P6x10")
            .replace("fixed bottom", "fixed top")
            .replace("leaving 0,", "leaving 0.25,")
            .replace("finish bottom to 17.85", "finish bottom to height");
    Checked checked = ExampleFiles.check(path, corrected);
    assertThat(checked.findings()).as(ExampleFiles.words(checked)).isEmpty();
  }
}
