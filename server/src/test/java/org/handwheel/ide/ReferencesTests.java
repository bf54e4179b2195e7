package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.handwheel.ide.References.Listing;
import org.handwheel.ide.References.Touch;
import org.handwheel.syntax.Origin;
import org.junit.jupiter.api.Test;

/** Declarations, uses and marks. Every test marks all places it expects. */
final class ReferencesTests {
  private static final String PART =
      """
      part
        length 48
        width 30
        height 19
        datum A top
        hole oilway in front, M6, thread 7, drill 12, at (24, 9.5) from left bottom
      """;

  /** The first marked range is what the cursor's name leads to. */
  private static void leads(String marked) {
    Fixture fixture = Fixture.plan(marked);
    References.Link link = References.definition(fixture.view(), fixture.cursor()).orElseThrow();
    int[] expected = fixture.ranges().get(0);
    assertThat(fixture.view().place(link.to()))
        .isEqualTo(new View.Place("keep.plan", expected[0], expected[1]));
  }

  /** All marked ranges, and no others, are the same thing as at the cursor; write ones start. */
  private static List<Touch> marks(String marked) {
    Fixture fixture = Fixture.plan(marked);
    List<References.Mark> marks = References.highlights(fixture.view(), fixture.cursor());
    List<int[]> ranges =
        marks.stream()
            .map(mark -> fixture.view().place(mark.origin()))
            .map(place -> new int[] {place.start(), place.end()})
            .toList();
    assertThat(Fixture.marked(fixture.text(), ranges)).isEqualTo(Fixture.withoutCursor(marked));
    return marks.stream().map(References.Mark::touch).toList();
  }

  @Test
  void aValueLeadsToItsLet() {
    leads(
        Fixture.HEAD
            + "  let [[rib]] = 3 mm\npart\n  length 40 + ri$0b\n"
                .replace("40 + ri$0b", "(40 + ri$0b)"));
  }

  @Test
  void aHoleLeadsToThePart() {
    leads(
        Fixture.HEAD
            + PART.replace("oilway", "[[oilway]]")
            + "setup one\n  hold in V80, up front, fixed top\n  drill oil$0way\n");
  }

  @Test
  void aSizeLeadsToTheDrawing() {
    String plan = Fixture.HEAD + PART.replace("  height", "  [[height]]");
    leads(plan + "setup one\n  hold in V80, up top, fixed back\n  measure hei$0ght with mic25\n");
    leads(plan.replace("9.5)", "hei$0ght/2)"));
  }

  @Test
  void aDatumLeadsToItsLine() {
    leads(Fixture.HEAD + PART.replace("datum A", "datum [[A]]") + "  flat $0A 0.02\n");
  }

  @Test
  void aThingLeadsToTheShopFile() {
    Fixture fixture =
        Fixture.plan(Fixture.HEAD + "setup one\n  hold in V8$00, up top, fixed back\n");
    References.Link link = References.definition(fixture.view(), fixture.cursor()).orElseThrow();
    View.Place place = fixture.view().place(link.to());
    String shop = Fixture.example(Fixture.SHOP);
    assertThat(place.path()).isEqualTo(Fixture.SHOP);
    assertThat(shop.substring(place.start(), place.end())).isEqualTo("V80");
    View.Place line = fixture.view().place(link.line());
    assertThat(shop.substring(line.start(), line.end()))
        .isEqualTo("own vise V80 \"Screw vise, 80 mm jaws\"");
  }

  @Test
  void nothingLeadsFromAWord() {
    Fixture fixture = Fixture.plan(Fixture.HEAD + "part\n  mate$0rial gunmetal-LG2\n");
    assertThat(References.definition(fixture.view(), fixture.cursor())).isEmpty();
  }

  @Test
  void aDeclarationIsWrittenAndAUseIsRead() {
    assertThat(
            marks(
                Fixture.HEAD
                    + "  let [[rib]] = 3 mm\npart\n  length ([[ri$0b]] + 40)\n  width (2*[[rib]])\n"))
        .containsExactly(Touch.WRITE, Touch.READ, Touch.READ);
  }

  @Test
  void aSetupIsMarkedInTheLog() {
    marks(
        Fixture.HEAD
            + PART
            + "setup [[one]]\n  hold in V80, up top, fixed back\nlog \"first\"\n"
            + "  in [[o$0ne]]: read height 19.2 with mic25\n");
  }

  @Test
  void facesAreMarkedWithinTheirSetup() {
    marks(
        Fixture.HEAD
            + "setup one\n  hold in V80, up [[t$0op]], fixed back\n  deburr edges of [[top]]\n"
            + "setup two\n  hold in V80, up top, fixed back\n");
  }

  @Test
  void theWholeWorkspaceIsSearched() {
    String other =
        Fixture.HEAD
            + "setup one\n  hold in V80, up top, fixed back\n  cutter FC40\n  cutter EM16\n";
    Fixture fixture =
        Fixture.of(
            "keep.plan",
            Fixture.HEAD + "setup one\n  hold in V80, up top, fixed back\n  cutter FC$040\n",
            Map.of("other.plan", other));
    Project project = Project.of(fixture.view().workspace(), () -> {});
    List<Origin> all =
        References.all(project, fixture.view().tree(), fixture.cursor(), Listing.WITH_DECLARATION);
    assertThat(all.stream().map(origin -> origin.section().path() + ":" + origin.text()))
        .containsExactly("shop/inch-mill.shop:FC40", "keep.plan:FC40", "other.plan:FC40");
    assertThat(References.all(project, fixture.view().tree(), fixture.cursor(), Listing.USES_ONLY))
        .hasSize(2);
  }
}
