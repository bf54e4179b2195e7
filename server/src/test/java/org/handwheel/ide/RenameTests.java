package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** New names: every place, no other, and reasons where they are refused. */
final class RenameTests {
  private static final String PLAN =
      Fixture.HEAD
          + """
            let rib = 3 mm
          part
            length (40 + rib)
            width 30
            hole oilway in front, M6, thread 7, drill 12, at (24, 9.5) from left bottom
            hole foot in top, dia 5.5, through
          setup one
            hold in V80, up top, fixed back, on pair P6x10
            cutter FC40
            drill oilway
          log "first"
            in one: read height 19.2 with mic25
          """;

  private static Map<String, String> renamed(
      String marked, String newName, Map<String, String> others) {
    Fixture fixture = Fixture.of("keep.plan", marked, others);
    Project project = Project.of(fixture.view().workspace(), () -> {});
    Rename.Outcome outcome =
        new Rename(project).rename(fixture.view().tree(), fixture.cursor(), newName);
    assertThat(outcome).isInstanceOf(Rename.Changes.class);
    Map<String, String> texts = new TreeMap<>();
    for (Project.NamedFile file : project.files()) {
      SyntaxTree tree = file.tree();
      List<Origin> places =
          new ArrayList<>(
              ((Rename.Changes) outcome).places().stream().filter(tree::contains).toList());
      places.sort((a, b) -> Integer.compare(tree.start(b), tree.start(a)));
      StringBuilder text = new StringBuilder(tree.source().text());
      places.forEach(place -> text.replace(tree.start(place), tree.end(place), newName));
      texts.put(tree.path(), text.toString());
    }
    return texts;
  }

  private static String refused(String marked, String newName) {
    Fixture fixture = Fixture.plan(marked);
    Project project = Project.of(fixture.view().workspace(), () -> {});
    Rename.Outcome outcome =
        new Rename(project).rename(fixture.view().tree(), fixture.cursor(), newName);
    assertThat(outcome).isInstanceOf(Rename.Refused.class);
    return ((Rename.Refused) outcome).reason();
  }

  @Test
  void aValueIsRenamedWhereverItIs() {
    assertThat(renamed(PLAN.replace("let rib", "let r$0ib"), "web", Map.of()).get("keep.plan"))
        .isEqualTo(PLAN.replace("rib", "web"));
  }

  @Test
  void aHoleAndASetupAreRenamed() {
    assertThat(
            renamed(PLAN.replace("drill oilway", "drill oil$0way"), "oil", Map.of())
                .get("keep.plan"))
        .isEqualTo(PLAN.replace("oilway", "oil"));
    assertThat(renamed(PLAN.replace("in one", "in o$0ne"), "top-side", Map.of()).get("keep.plan"))
        .isEqualTo(PLAN.replace("setup one", "setup top-side").replace("in one", "in top-side"));
  }

  @Test
  void aThingOfTheShopIsRenamedInEveryPlan() {
    String other = Fixture.HEAD + "setup one\n  hold in V80, up top, fixed back\n";
    String unrelated =
        "language 1\nplan \"Other shop\"\n  units mm\nsetup one\n  hold in V80, up top\n";
    Map<String, String> texts =
        renamed(
            PLAN.replace("in V80", "in V8$00"),
            "big-vise",
            Map.of("a/other.plan", other, "none.plan", unrelated));
    assertThat(texts.get("keep.plan")).isEqualTo(PLAN.replace("V80", "big-vise"));
    assertThat(texts.get(Fixture.SHOP))
        .isEqualTo(Fixture.example(Fixture.SHOP).replace("vise V80", "vise big-vise"));
    // It uses shop/... below its own folder, which is not there.
    assertThat(texts.get("a/other.plan")).isEqualTo(other);
    assertThat(texts.get("none.plan")).isEqualTo(unrelated);
  }

  @Test
  void theResultMeansTheSame() {
    String after = renamed(PLAN.replace("let rib", "let r$0ib"), "pass", Map.of()).get("keep.plan");
    assertThat(Fixture.plan(after).view().checked().findings())
        .hasSameSizeAs(Fixture.plan(PLAN).view().checked().findings());
  }

  @Test
  void aNameThatIsTakenIsRefused() {
    assertThat(refused(PLAN.replace("hole foot", "hole fo$0ot"), "OilWay"))
        .contains("there is already a hole `oilway` in keep.plan");
    assertThat(refused(PLAN.replace("cutter FC40", "cutter FC4$00"), "EM16"))
        .contains("already a cutter `EM16` in shop/inch-mill.shop");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "two words",
        "top",
        "mm",
        "7up",
        "M6",
        "setup",
        "a,b",
        " rib2",
        "x",
        "in",
        "a\nb"
      })
  void whatIsNoNameIsRefused(String name) {
    assertThat(refused(PLAN.replace("let rib", "let r$0ib"), name)).contains("cannot be a name");
  }

  @Test
  void aValueCannotTakeThePartsOwnSizes() {
    assertThat(refused(PLAN.replace("let rib", "let r$0ib"), "width"))
        .contains("the part's own size");
  }

  @Test
  void wordsFacesAndSizesAreRefused() {
    assertThat(refused(PLAN.replace("  width 30", "  wi$0dth 30"), "breadth"))
        .contains("own sizes");
    assertThat(refused(PLAN.replace("up top", "up t$0op"), "upper")).contains("faces");
    assertThat(refused(PLAN.replace("setup one", "set$0up one"), "op")).contains("only names");
    assertThat(refused(PLAN.replace("40 + rib", "4$00 + rib"), "op")).contains("only names");
  }

  @Test
  void anUndefinedNameIsRefused() {
    assertThat(refused(PLAN.replace("drill oilway", "drill nowh$0ere"), "op"))
        .contains("nothing of this name");
  }
}
