package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.model.Workspace;
import org.handwheel.plan.draft.DraftProgress;
import org.handwheel.plan.draft.Drafted;
import org.handwheel.plan.draft.Drafted.Draft;
import org.handwheel.plan.draft.Drafter;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every example's part, stock and shop give a plan that checks clean. */
class DraftedExampleTests {
  private static Drafted draft(String path, String text, int most) {
    Map<String, String> texts = ExampleFiles.texts();
    texts.put(path, Drafter.bareText(SyntaxTree.parse(path, text)));
    return drafted(texts, path, most);
  }

  private static Drafted drafted(Map<String, String> texts, String path, int most) {
    return new Drafter(StandardTables.builtIn())
        .draft(workspace(texts), path, most, DraftProgress.NONE);
  }

  private static Workspace workspace(Map<String, String> texts) {
    return Workspace.of(
        texts.entrySet().stream()
            .map(file -> SyntaxTree.parse(file.getKey(), file.getValue()))
            .toArray(SyntaxTree[]::new));
  }

  private static Draft only(String path) {
    Drafted drafted = draft(path, ExampleFiles.text(path), 1);
    assertThat(drafted).as(drafted.toString()).isInstanceOf(Drafted.Plans.class);
    return ((Drafted.Plans) drafted).drafts().get(0);
  }

  private static Stream<String> plans() {
    return ExampleFiles.texts().keySet().stream()
        .filter(path -> path.endsWith(".plan") && !path.startsWith("mistakes/"))
        .sorted();
  }

  @TestFactory
  Stream<DynamicTest> everyExampleIsDraftedClean() {
    return plans().map(path -> DynamicTest.dynamicTest(path, () -> draftedClean(path)));
  }

  private static void draftedClean(String path) {
    Draft draft = only(path);
    Checked checked = ExampleFiles.check(path, draft.text());
    // Values that only the example's own setups use are left over; nothing else may be found.
    List<Finding> findings =
        checked.findings().stream().filter(one -> !one.rule().equals("unused-name")).toList();
    assertThat(findings).as(ExampleFiles.words(checked)).isEmpty();
    SyntaxTree tree = SyntaxTree.parse(path, draft.text());
    assertThat(Formatter.edits(tree)).isEmpty();
    assertThat(draft.text()).startsWith(Drafter.bareText(SyntaxTree.parse(path, draft.text())));
    // Each setup says why.
    assertThat(draft.text().lines().filter(line -> line.startsWith("setup ")).count())
        .isEqualTo(draft.setups().size());
    assertThat(draft.text()).containsPattern("setup one \".*\"\n  # ");
  }

  /**
   * Without two of the shop's tools the draft asks for just these; with them it is clean, as above.
   * The sizes are those of the example's text; the thread's are those of ISO 228-1 (G 1/8: 9.728
   * mm, 28 threads to the inch, 0.907 mm).
   */
  @Test
  void whatTheShopLacksIsSaid() {
    String path = "valve-chest-cover.plan";
    String shop = "shop/inch-mill.shop";
    Map<String, String> texts = ExampleFiles.texts();
    texts.put(path, Drafter.bareText(SyntaxTree.parse(path, ExampleFiles.text(path))));
    texts.put(shop, without(without(ExampleFiles.text(shop), "cutter EM-half"), "tap BSP18-taps"));
    Drafted drafted = drafted(texts, path, 1);
    assertThat(drafted).isInstanceOf(Drafted.Missing.class);
    assertThat(((Drafted.Missing) drafted).missing())
        .containsExactly(
            "no cutter of 12.70 mm (0.500 in) to sink the seat of the hole stud",
            "no tap BSP 1/8 for the hole gauge: 9.728 mm (0.383 in) with a pitch of 0.907 mm"
                + " (35.7 thou)");
  }

  /** A shop's text without one of the things it owns. */
  private static String without(String shop, String thing) {
    String less = shop.replaceFirst("(?s)\nown " + thing + ".*?(?=\nown )", "");
    assertThat(less).isNotEqualTo(shop);
    return less;
  }

  @Test
  void everyDraftIsTheSameEachTime() {
    plans()
        .forEach(
            path ->
                assertThat(draft(path, ExampleFiles.text(path), 1))
                    .isEqualTo(draft(path, ExampleFiles.text(path), 1)));
  }

  private static List<Setup> setups(String path) {
    Checked checked = ExampleFiles.check(path, only(path).text());
    return checked.plan() == null ? List.of() : checked.plan().setups();
  }

  private static Face up(Setup setup) {
    return Optional.ofNullable(setup.hold()).map(Hold::up).orElseThrow().value();
  }

  private static Face fixed(Setup setup) {
    return Optional.ofNullable(setup.hold()).map(Hold::fixed).orElseThrow().value();
  }

  private static List<Face> cut(Setup setup) {
    List<Face> faces = new ArrayList<>();
    for (Step step : setup.steps()) {
      if (step instanceof Step.Cut cut && !faces.contains(cut.face())) {
        faces.add(cut.face());
      }
    }
    return faces;
  }

  private static boolean onParallels(Setup setup) {
    return setup.hold() != null
        && setup.hold().support() != null
        && setup.hold().support().value() instanceof Hold.Support.Pair;
  }

  private static boolean isTapped(Setup setup) {
    return setup.steps().stream()
        .anyMatch(step -> step instanceof Step.Seat seat && seat.tapped() && seat.bothTight());
  }

  /**
   * The order in which a block is squared: the first reference; the second against it with a round
   * bar at the raw side; its opposite the same way, seated on the second; the first's opposite,
   * seated on the first, without a bar; then the ends. Source: common practice, no source.
   */
  @Test
  void sixFacesComeInTheOrderTheTradeTeaches() {
    List<Setup> setups = setups("bearing-block.plan");
    assertThat(setups.stream().map(DraftedExampleTests::cut).limit(4))
        .containsExactly(
            List.of(Face.TOP), List.of(Face.BACK), List.of(Face.FRONT), List.of(Face.BOTTOM));
    Setup second = setups.get(1);
    assertThat(fixed(second)).isEqualTo(Face.TOP);
    assertThat(second.hold().bar()).isNotNull();
    Setup third = setups.get(2);
    assertThat(fixed(third)).isEqualTo(Face.TOP);
    assertThat(third.hold().bar()).isNotNull();
    assertThat(onParallels(third) && isTapped(third)).isTrue();
    Setup fourth = setups.get(3);
    assertThat(fixed(fourth)).isIn(Face.BACK, Face.FRONT);
    assertThat(fourth.hold().bar()).isNull();
    assertThat(onParallels(fourth) && isTapped(fourth)).isTrue();
    assertThat(setups.subList(4, 6).stream().flatMap(setup -> cut(setup).stream()))
        .containsExactlyInAnyOrder(Face.LEFT, Face.RIGHT);
    // The tapped hole runs into the reamed one and is made before it: its burr is then cut away.
    assertThat(setups.subList(6, setups.size()).stream().map(DraftedExampleTests::up))
        .containsExactly(Face.FRONT, Face.TOP);
  }

  /** What stays in the vise cannot be put back wrongly: common practice, no source. */
  @Test
  void openingsAreMadeWhereTheWorkIsIfTheyCanBe() {
    List<Setup> setups = setups("stern-gland.plan");
    assertThat(setups).hasSize(6);
    Setup last = setups.get(5);
    assertThat(cut(last)).containsExactly(Face.RIGHT);
    assertThat(last.steps().stream().filter(Step.HoleCut.class::isInstance)).hasSize(2);
    // The parallels of the bearing block's last end lie under two of its holes.
    assertThat(setups("bearing-block.plan")).hasSize(8);
  }

  /** Thin flat stock is faced flat, on its edges, before it stands on edge: common practice. */
  @Test
  void thinFlatStockIsMadeFlatFirst() {
    assertThat(setups("name-plate.plan").stream().limit(4).map(DraftedExampleTests::up))
        .containsExactly(Face.TOP, Face.BOTTOM, Face.BACK, Face.FRONT);
  }

  @TestFactory
  Stream<DynamicTest> theSamePlanInTheOtherUnitIsHeldTheSameWay() {
    return plans().map(path -> DynamicTest.dynamicTest(path, () -> heldTheSameWay(path)));
  }

  private static void heldTheSameWay(String path) {
    String bare = Drafter.bareText(SyntaxTree.parse(path, ExampleFiles.text(path)));
    Drafted other = draft(path, OtherUnit.rewrite(bare), 1);
    assertThat(other).as(other.toString()).isInstanceOf(Drafted.Plans.class);
    String text = ((Drafted.Plans) other).drafts().get(0).text();
    List<String> here = choices(ExampleFiles.check(path, only(path).text()));
    assertThat(choices(ExampleFiles.check(path, text))).isEqualTo(here);
  }

  /** What is chosen, without the figures: they are round in their own unit. */
  private static List<String> choices(Checked checked) {
    List<String> choices = new ArrayList<>();
    for (Setup setup : checked.plan() == null ? List.<Setup>of() : checked.plan().setups()) {
      Hold hold = setup.hold();
      choices.add(
          up(setup)
              + " "
              + fixed(setup)
              + " "
              + Optional.ofNullable(hold.support())
                  .map(
                      support ->
                          support.value() instanceof Hold.Support.Pair pair
                              ? pair.parallels().name()
                              : support.value().getClass().getSimpleName())
                  .orElse("-")
              + (hold.bar() == null ? "" : " bar")
              + (hold.spacer() == null ? "" : " spacer")
              + (hold.overhang() == null ? "" : " " + hold.overhang().value().end())
              + " "
              + cut(setup));
      for (Step step : setup.steps()) {
        if (step instanceof Step.UseCutter use) {
          choices.add(use.cutter().name());
        }
      }
    }
    return choices;
  }

  @Test
  void severalWaysDifferInTheOrderOfTheFacesAndAllCheckClean() {
    String path = "bearing-block.plan";
    Drafted drafted = draft(path, ExampleFiles.text(path), 4);
    List<Draft> drafts = ((Drafted.Plans) drafted).drafts();
    assertThat(drafts).hasSize(4).isSortedAccordingTo((a, b) -> a.cost() - b.cost());
    assertThat(drafts.stream().map(Draft::setups)).doesNotHaveDuplicates();
    for (Draft draft : drafts) {
      assertThat(ExampleFiles.check(path, draft.text()).findings())
          .noneMatch(one -> one.severity() == Severity.ERROR || one.severity() == Severity.WARNING);
    }
  }
}
