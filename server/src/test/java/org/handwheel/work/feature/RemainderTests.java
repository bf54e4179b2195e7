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
}
