package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.handwheel.ide.Symbols.Symbol;
import org.junit.jupiter.api.Test;

/** The outline of files, and the search over all of them. */
final class SymbolsTests {
  private static String outline(List<Symbol> symbols, String indent) {
    StringBuilder out = new StringBuilder();
    for (Symbol symbol : symbols) {
      out.append(indent).append(symbol.kind()).append(' ').append(symbol.name());
      out.append(symbol.detail().isEmpty() ? "" : " | " + symbol.detail()).append('\n');
      out.append(outline(symbol.children(), indent + "  "));
    }
    return out.toString();
  }

  @Test
  void aPlanIsATree() {
    String plan =
        Fixture.HEAD
            + """
              let rib = 3 mm
            part
              length 48.00 +-0.10   # left to right
              hole foot in top, dia 5.5, through
            stock
              size 50 x 30 x 20
            setup one "Top"
              hold in V80, up top, fixed back
              cutter FC40
              clean top at 0.4, at most 1.2
            log "first"
            inspect
            """;
    assertThat(outline(Symbols.of(Fixture.plan(plan).view().tree()), ""))
        .isEqualTo(
            """
            PLAN plan Rudder stock keep
              VALUE rib | 3 mm
              PART part
                SIZE length | 48.00 +-0.10
                HOLE foot | in top, dia 5.5, through
              STOCK stock
                SIZE size 50 x 30 x 20
              SETUP setup one Top
                HOLD hold in V80 | up top, fixed back
                CUT clean top at 0.4 | at most 1.2
              LOG log first
              INSPECTION inspect
            """);
  }

  @Test
  void aShopListsItsThings() {
    Symbol shop =
        Symbols.of(
                Fixture.of("x.plan", "", Map.of())
                    .view()
                    .workspace()
                    .file(Fixture.SHOP)
                    .orElseThrow())
            .get(0);
    assertThat(shop.name()).isEqualTo("shop Boat shed, inch dials");
    assertThat(shop.children())
        .extracting(Symbol::name)
        .contains("inch-mill", "V80", "P6x10", "FC40", "mic25");
    assertThat(shop.children().get(0).detail()).startsWith("machine, Small vertical mill");
  }

  @Test
  void rangesNestAndNamesAreWithin() {
    String text = Fixture.example("bearing-block.plan");
    for (String cut :
        List.of(
            text,
            text.substring(0, text.length() / 2),
            "plan",
            "",
            "setup\n\n# x\n",
            "part\r\n  length 3 mm\r\n")) {
      Fixture fixture = Fixture.plan(cut);
      nests(Symbols.of(fixture.view().tree()), 0, cut.length());
    }
  }

  private static void nests(List<Symbol> symbols, int start, int end) {
    int at = start;
    for (Symbol symbol : symbols) {
      assertThat(symbol.name()).isNotBlank();
      assertThat(symbol.start()).isGreaterThanOrEqualTo(at);
      assertThat(symbol.end()).isLessThanOrEqualTo(end);
      assertThat(symbol.nameStart()).isBetween(symbol.start(), symbol.end());
      assertThat(symbol.nameEnd()).isBetween(symbol.nameStart(), symbol.end());
      nests(symbol.children(), symbol.start(), symbol.end());
      at = symbol.end();
    }
  }

  @Test
  void aSearchFindsScatteredLettersBestFirst() {
    Fixture fixture = Fixture.plan(Fixture.example("bearing-block.plan"));
    Project project = Project.of(fixture.view().workspace(), () -> {});
    assertThat(Symbols.search(project, "mic"))
        .extracting(found -> found.symbol().name())
        .startsWith("mic25", "mic50");
    assertThat(Symbols.search(project, "ptn10"))
        .extracting(found -> found.symbol().name())
        .isEmpty();
    assertThat(Symbols.search(project, "p610"))
        .extracting(found -> found.symbol().name())
        .startsWith("P6x10");
    assertThat(Symbols.search(project, "journal").get(0).path()).isEqualTo("keep.plan");
    assertThat(Symbols.search(project, "")).hasSizeGreaterThan(15);
  }

  @Test
  void scoresGrowWithGaps() {
    assertThat(Symbols.score("bench-mill", "ben")).isZero();
    assertThat(Symbols.score("bench-mill", "mill")).isEqualTo(6);
    assertThat(Symbols.score("bench-mill", "bml")).isPositive();
    assertThat(Symbols.score("bench-mill", "xyz")).isEqualTo(-1);
  }
}
