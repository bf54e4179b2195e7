package org.handwheel.work.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.examples.ExampleFolder;
import org.handwheel.model.Face;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.junit.jupiter.api.Test;

/** The end of a plan against its drawing; the areas are elementary geometry. */
class RemainderTests {
  private static Remainder remainder(String drawn, String cut) throws IOException {
    String text =
        "language 1\nplan \"Trial\"\n  units mm\n  use \"shop/inch-mill.shop\"\n"
            + "part\n  length 60\n  width 40\n  height 20\n"
            + drawn.strip().indent(2)
            + "stock\n  size 60 x 40 x 20\n  milled left right front back top bottom\n"
            + "setup one\n  hold in V80, up top, fixed back, on pair P3x10\n"
            + "  find left from operator-left with finder F5, zero x at edge\n"
            + "  find front from operator-front with finder F5, zero y at edge\n"
            + cut.strip().indent(2);
    Path shop = ExampleFolder.PATH.resolve("shop").resolve("inch-mill.shop");
    var run =
        new Checker(StandardTables.builtIn())
            .check(
                Workspace.of(
                    SyntaxTree.parse("t.plan", text),
                    SyntaxTree.parse("shop/inch-mill.shop", Files.readString(shop))),
                "t.plan")
            .run();
    assertThat(run).isNotNull();
    return Remainder.of(run, StandardTables.builtIn(), Length.mm("0.15"));
  }

  private static LengthRange depth(String from, String to) {
    return new LengthRange(Length.mm(from), Length.mm(to));
  }

  private static final String POCKET = "pocket well in top, at (30, 20), size 30 x 18, depth 4";
  private static final String BLIND = "hole pin in top, dia 6, at (8, 8), depth 10";

  @Test
  void allMadeAsDrawnLeavesNothing() throws IOException {
    assertThat(remainder(POCKET + "\n" + BLIND, "pocket well with SD6\ndrill pin 6").isNothing())
        .isTrue();
  }

  @Test
  void whatIsNotCutIsLeft() throws IOException {
    Remainder rest = remainder(POCKET + "\n" + BLIND, "drill pin 6");
    assertThat(rest.over()).isEmpty();
    assertThat(rest.left()).hasSize(1);
    assertThat(rest.left().get(0).face()).isEqualTo(Face.TOP);
    assertThat(rest.left().get(0).depth()).isEqualTo(depth("0", "4"));
    assertThat(rest.left().get(0).area()).isCloseTo(30 * 18, within(1e-6));
  }

  @Test
  void aHoleTooShallowAndOneTooDeep() throws IOException {
    Remainder rest = remainder(BLIND, "drill pin 6, depth 7");
    assertThat(rest.left()).hasSize(1);
    assertThat(rest.left().get(0).depth()).isEqualTo(depth("7", "10"));
    assertThat(rest.left().get(0).area()).isCloseTo(Math.PI * 9, within(0.06));
    Remainder deep = remainder(BLIND, "drill pin 6, depth 12");
    assertThat(deep.left()).isEmpty();
    assertThat(deep.over()).hasSize(1);
    assertThat(deep.over().get(0).depth()).isEqualTo(depth("10", "12"));
  }

  /** A ring of 8 less 6; half a tenth all round is no matter. */
  @Test
  void aHoleTooWide() throws IOException {
    Remainder wide = remainder(BLIND, "drill pin 8");
    assertThat(wide.left()).isEmpty();
    assertThat(wide.over()).hasSize(1);
    assertThat(wide.over().get(0).depth()).isEqualTo(depth("0", "10"));
    assertThat(wide.over().get(0).area()).isCloseTo(Math.PI * (16 - 9), within(0.1));
    assertThat(wide.isNothing()).isFalse();
    assertThat(remainder(BLIND, "drill pin 6.1").isNothing()).isTrue();
    assertThat(remainder(BLIND, "drill pin 6, depth 10.1").isNothing()).isTrue();
  }

  /** Depths count from the right, the back and the top, whatever face the feature is in. */
  @Test
  void facesThatAreCountedFromBehind() throws IOException {
    Remainder bottom = remainder("pocket well in bottom, at (30, 20), size 30 x 18, depth 4", "");
    assertThat(bottom.left()).hasSize(1);
    assertThat(bottom.left().get(0).face()).isEqualTo(Face.TOP);
    assertThat(bottom.left().get(0).depth()).isEqualTo(depth("16", "20"));
    Remainder front = remainder("hole a in front, dia 6, depth 10, at (20, 10)", "");
    assertThat(front.left().get(0).face()).isEqualTo(Face.BACK);
    assertThat(front.left().get(0).depth()).isEqualTo(depth("30", "40"));
    Remainder right = remainder("hole a in right, dia 6, depth 10, at (20, 10)", "");
    assertThat(right.left().get(0).face()).isEqualTo(Face.RIGHT);
    assertThat(right.left().get(0).depth()).isEqualTo(depth("0", "10"));
    Remainder through = remainder("hole a in top, dia 6, through, at (20, 20)", "");
    assertThat(through.left().get(0).depth()).isEqualTo(depth("0", "20"));
  }

  @Test
  void aCounterboreIsWantedToItsDepth() throws IOException {
    String hole = "hole a in top, dia 6, through, at (20, 20), counterbore dia 11 depth 5";
    Remainder rest = remainder(hole, "drill a");
    assertThat(rest.left()).hasSize(1);
    assertThat(rest.left().get(0).depth()).isEqualTo(depth("0", "5"));
    assertThat(rest.left().get(0).area()).isCloseTo(Math.PI * (5.5 * 5.5 - 9), within(0.2));
    assertThat(remainder(hole, "drill a\ncounterbore a").isNothing()).isTrue();
  }

  /** Between core and outer diameter of a thread nothing is amiss, nor is a spotface. */
  @Test
  void threadsAndSpotfaces() throws IOException {
    String thread = "hole a in top, M6, thread 7, drill 12, at (20, 20)";
    assertThat(remainder(thread, "drill a\ntap a").isNothing()).isTrue();
    assertThat(remainder(thread, "").left()).hasSize(1);
    assertThat(
            remainder(
                    "hole a in top, dia 6, through, at (20, 20), spotface dia 14",
                    "drill a\ncounterbore a, 14, depth 1")
                .isNothing())
        .isTrue();
    // Cones are not compared.
    assertThat(
            remainder(
                    "hole a in top, dia 6, through, at (20, 20), countersink dia 9",
                    "spot a\ndrill a\ncountersink a")
                .isNothing())
        .isTrue();
  }
}
