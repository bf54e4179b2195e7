package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Paths of {@code use} lines, and what becomes of them when files move. */
final class UsePathsTests {
  private static Map<String, String> after(Map<String, String> moves) {
    Fixture fixture =
        Fixture.of(
            "boat/keep.plan",
            "plan \"A\"\n  units mm\n  use \"../shop/inch-mill.shop\"\n  use \"own.shop\"\n",
            Map.of("boat/own.shop", "shop \"B\"\n", "top.plan", Fixture.HEAD));
    Project project = Project.of(fixture.view().workspace(), () -> {});
    Map<String, String> texts = new TreeMap<>();
    UsePaths.afterMove(project, moves)
        .forEach(
            (origin, path) -> texts.merge(origin.section().path(), path, (a, b) -> a + " " + b));
    return texts;
  }

  @Test
  void plansFollowTheirShop() {
    assertThat(after(Map.of("shop/inch-mill.shop", "shed/mill.shop")))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of("boat/keep.plan", "../shed/mill.shop", "top.plan", "shed/mill.shop"));
  }

  @Test
  void aPlanThatMovesStillFindsItsShop() {
    assertThat(after(Map.of("boat/keep.plan", "boat/pump/keep.plan")))
        .isEqualTo(Map.of("boat/keep.plan", "../../shop/inch-mill.shop ../own.shop"));
  }

  @Test
  void filesThatMoveTogetherKeepWhatStillFits() {
    assertThat(
            after(Map.of("boat/keep.plan", "launch/keep.plan", "boat/own.shop", "launch/own.shop")))
        .isEmpty();
  }

  @Test
  void whatIsInAFolderMovesWithIt() {
    assertThat(after(Map.of("shop", "shed/shop")))
        .isEqualTo(
            Map.of(
                "boat/keep.plan",
                "../shed/shop/inch-mill.shop",
                "top.plan",
                "shed/shop/inch-mill.shop"));
    assertThat(after(Map.of("boat", "launch/pump")))
        .isEqualTo(Map.of("boat/keep.plan", "../../shop/inch-mill.shop"));
    // The name of a folder is all of it, and a file's own move goes first.
    assertThat(after(Map.of("sho", "x", "boa", "y"))).isEmpty();
    assertThat(after(Map.of("shop", "shed", "shop/inch-mill.shop", "mill.shop")))
        .isEqualTo(Map.of("boat/keep.plan", "../mill.shop", "top.plan", "mill.shop"));
  }

  @Test
  void relativePaths() {
    assertThat(UsePaths.relative("a.plan", "b.shop")).isEqualTo("b.shop");
    assertThat(UsePaths.relative("x/y/a.plan", "x/z/b.shop")).isEqualTo("../z/b.shop");
    assertThat(UsePaths.relative("x/a.plan", "b.shop")).isEqualTo("../b.shop");
  }
}
