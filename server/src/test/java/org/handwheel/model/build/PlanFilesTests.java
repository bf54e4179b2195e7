package org.handwheel.model.build;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.Shape;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Examples;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole plans with the files they use. */
class PlanFilesTests {
  /** A workspace of path and text by turns. */
  private static Workspace files(String... pathsAndTexts) {
    SyntaxTree[] trees = new SyntaxTree[pathsAndTexts.length / 2];
    for (int i = 0; i < trees.length; i++) {
      trees[i] = SyntaxTree.parse(pathsAndTexts[2 * i], pathsAndTexts[2 * i + 1]);
    }
    return Workspace.of(trees);
  }

  private static List<String> findings(String... pathsAndTexts) {
    return PlanFiles.build(files(pathsAndTexts), pathsAndTexts[0]).findings().stream()
        .map(f -> f.rule() + ": " + f.message())
        .toList();
  }

  // ---- use
  // -----------------------------------------------------------------------------------------

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a/b.plan | c.shop | a/c.shop |",
        "a/b.plan | ../c.shop | c.shop |",
        "a/b.plan | ./d//c.shop | a/d/c.shop |",
        "b.plan | d/../c.shop | c.shop |",
        "b.plan | ../c.shop | | the path leads outside the workspace",
        "a/b.plan | ../../c.shop | | the path leads outside the workspace",
        "a/b.plan | d/../../../a/c.shop | | the path leads outside the workspace",
        "a/b.plan | /c.shop | | write the path relative to this file",
        "a/b.plan | C:/c.shop | | write the path relative to this file",
        "a/b.plan | ~/c.shop | | write the path relative to this file",
        "a/b.plan | file:///c.shop | d |",
        "a/b.plan | d\\c.shop | | write the path with `/`, which works everywhere"
      })
  void paths(String from, String written, String path, String problem) {
    WorkspacePath.Result result = WorkspacePath.resolve(from, written);
    if (written.startsWith("file:")) {
      // Not a scheme but a folder: it stays inside and is simply not there.
      assertThat(requireNonNull(result.path())).isEqualTo("a/file:/c.shop");
      return;
    }
    assertThat(result.path()).isEqualTo(path);
    assertThat(result.problem()).isEqualTo(problem);
  }

  @Test
  void anEmptyPathAndControlCharactersAreRefused() {
    assertThat(WorkspacePath.resolve("a.plan", " ").problem()).isEqualTo("name the file to use");
    assertThat(WorkspacePath.resolve("a.plan", "a\u0000b").problem()).isNotNull();
  }

  @Test
  void aMissingFileIsReportedAndItsThingsAreNot() {
    assertThat(
            findings(
                "a.plan",
                "units mm\nuse \"b.shop\"\nstock\nsize 9 x 9 x 9\nsetup\nhold in V, up top, fixed back, on pair P"))
        .containsExactly("use-path: cannot read \"b.shop\": there is no such file");
  }

  @Test
  void theReasonAFileCannotBeReadIsTold() {
    SyntaxTree tree = SyntaxTree.parse("a.plan", "use \"b.shop\"");
    Workspace workspace =
        new Workspace(Map.of("a.plan", tree), Map.of("b.shop", "it is larger than 1 MB"));
    assertThat(PlanFiles.build(workspace, "a.plan").findings())
        .extracting(Finding::message)
        .containsExactly("cannot read \"b.shop\": it is larger than 1 MB");
  }

  @Test
  void aFaultBehindAShopFileIsReportedAtThePlansOwnLine() {
    Workspace workspace =
        files("a.plan", "units mm\nuse \"b.shop\"", "b.shop", "shop\nuse \"c.shop\"");
    Finding finding = PlanFiles.build(workspace, "a.plan").findings().get(0);
    assertThat(finding.message())
        .isEqualTo("a shop file uses \"c.shop\", but: there is no such file");
    assertThat(finding.origin().text()).isEqualTo("\"b.shop\"");
  }

  @Test
  void circlesAreReportedOnce() {
    assertThat(findings("a.plan", "use \"a.plan\""))
        .containsExactly("use-cycle: the files use each other in a circle: a.plan -> a.plan");
    assertThat(
            findings(
                "a.plan", "use \"b.shop\"",
                "b.shop", "shop\nuse \"c.shop\"",
                "c.shop", "shop\nuse \"b.shop\""))
        .containsExactly(
            "use-cycle: the files use each other in a circle: b.shop -> c.shop -> b.shop");
  }

  @Test
  void useIsAtMostEightDeep() {
    for (int depth : List.of(7, 8, 9, 30)) {
      String[] texts = new String[2 * (depth + 1)];
      texts[0] = "a.plan";
      texts[1] = "use \"1.shop\"";
      for (int i = 1; i <= depth; i++) {
        texts[2 * i] = i + ".shop";
        texts[2 * i + 1] = i < depth ? "shop\nuse \"" + (i + 1) + ".shop\"" : "shop";
      }
      List<String> expected =
          depth <= 8 ? List.of() : List.of("use-path: files use each other more than 8 deep");
      assertThat(findings(texts)).as("%d", depth).isEqualTo(expected);
    }
  }

  @Test
  void aFileUsedTwiceIsReadOnce() {
    Workspace workspace =
        files(
            "a.plan", "use \"b.shop\"\nuse \"c.shop\"",
            "b.shop", "shop\nuse \"c.shop\"",
            "c.shop", "shop\nunits mm\nown finder F\ndia: 5");
    Plan plan = PlanFiles.build(workspace, "a.plan");
    assertThat(plan.findings()).isEmpty();
    assertThat(plan.shop().things()).hasSize(1);
  }

  @Test
  void aShopsNumbersTakeTheShopsUnits() {
    Workspace workspace =
        files(
            "a.plan",
            "units mm\nuse \"b.shop\"",
            "b.shop",
            "shop\nunits in\nown finder F\ndia: 0.2");
    Owned.Finder finder =
        PlanFiles.build(workspace, "a.plan").shop().find(Owned.Finder.class, "f").orElseThrow();
    assertThat(finder.dia()).isEqualTo(Length.mm("5.08"));
  }

  @Test
  void aFileThatIsNotThereIsAnArgument() {
    assertThatThrownBy(() -> PlanFiles.build(files(), "a.plan"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  // ---- names of things
  // -----------------------------------------------------------------------------

  @Test
  void aThingOfAnotherKindIsNotTaken() {
    String shop = "shop\nunits mm\nown packing P\nthickness: 4\nown clamp C\nwidth: 20\n";
    String plan =
        "units mm\nuse \"s.shop\"\nstock\nsize 9 x 9 x 9\nsetup\nhold on table, up top, clamp P at (1, 2)";
    assertThat(findings("a.plan", plan, "s.shop", shop))
        .containsExactly("undefined-name: `P` is a packing piece, not a clamp");
    assertThat(findings("a.plan", plan.replace("clamp P", "clamp c"), "s.shop", shop)).isEmpty();
  }

  @Test
  void aBrokenThingIsNotReportedWhereItIsUsed() {
    String plan =
        "units mm\nuse \"s.shop\"\nstock\nsize 9 x 9 x 9\nsetup\nhold in V, up top, fixed back";
    assertThat(findings("a.plan", plan, "s.shop", "shop\nunits mm\nown vise V\njaw-width: 80"))
        .isEmpty();
    assertThat(findings("a.plan", plan, "s.shop", "shop\nunits mm\nown vise V V\n")).isEmpty();
    assertThat(findings("a.plan", plan, "s.shop", "shop\nunits mm")).hasSize(1);
  }

  @Test
  void ofSeveralMachinesOneIsNamedOnce() {
    String shop = "shop\nunits mm\nown machine A\nown machine B\n";
    assertThat(findings("a.plan", "plan\nuse \"s.shop\"", "s.shop", shop))
        .singleElement()
        .asString()
        .startsWith("missing-line: the shop has several machines (A, B)");
    assertThat(findings("a.plan", "plan\nuse \"s.shop\"\nmachine b", "s.shop", shop)).isEmpty();
    assertThat(findings("a.plan", "plan\nuse \"s.shop\"\nmachine a\nmachine b", "s.shop", shop))
        .containsExactly("repeated-line: the machine is already given");
  }

  // ---- the plan of the reference, field by field
  // -----------------------------------------------------

  private static Plan sample() {
    String text =
        Examples.blocks().stream()
            .filter(b -> b.tag().equals("plan"))
            .findFirst()
            .orElseThrow()
            .text();
    return PlanFiles.build(files("x.plan", text, Examples.SHOP_PATH, Examples.shop()), "x.plan");
  }

  @Test
  void theSampleIsReadInFull() {
    Plan plan = sample();
    assertThat(plan.findings()).isEmpty();
    assertThat(plan.title()).isEqualTo("Feed pump bearing block");
    Owned.Machine machine = requireNonNull(plan.machine());
    Owned.Screw z = requireNonNull(machine.screw(Axis.Z));
    // 1/16 in a turn in 62.5 divisions is a thou each.
    assertThat(z.division()).isEqualTo(Length.inches("0.001"));
    assertThat(z.clockwise()).isEqualTo(Direction.DOWN);
    assertThat(machine.speeds()).containsExactly(95.0, 180.0, 270.0, 500.0, 930.0, 1420.0, 2100.0);
    assertThat(machine.watts()).isEqualTo(450);
    assertThat(requireNonNull(plan.part()).datums())
        .isEqualTo(Map.of("A", Face.TOP, "B", Face.BACK, "C", Face.LEFT));
    assertThat(requireNonNull(plan.stock()).sizes().get(PartDimension.WIDTH))
        .isEqualTo(Length.mm("34.5"));
    assertThat(plan.setups())
        .extracting(Setup::words)
        .containsExactly("setup first", "setup second");
    Hold hold = requireNonNull(plan.setups().get(1).hold());
    assertThat(requireNonNull(hold.up()).value()).isEqualTo(Face.BOTTOM);
    assertThat(requireNonNull(hold.support()).value()).isInstanceOf(Hold.Support.Pair.class);
    Step.Cut rough = (Step.Cut) plan.setups().get(1).steps().get(2);
    Step.Purpose.Rough purpose = (Step.Purpose.Rough) rough.purpose();
    assertThat(purpose.target().dimension()).isEqualTo(PartDimension.HEIGHT);
    assertThat(purpose.target().size()).isNull();
    assertThat(requireNonNull(purpose.leaving()).value()).isEqualTo(Length.mm("0.2"));
    assertThat(plan.logs().get(0).readings().get(0).values())
        .containsExactly(Length.mm("19.22"), Length.mm("19.24"), Length.mm("19.23"));
    assertThat(plan.inspections()).hasSize(2);
  }

  // ---- positions
  // ------------------------------------------------------------------------------------

  @ParameterizedTest
  @CsvSource({
    "top, LEFT FRONT", "bottom, LEFT FRONT", "front, LEFT BOTTOM",
    "back, LEFT BOTTOM", "left, FRONT BOTTOM", "right, FRONT BOTTOM"
  })
  void aPositionWithoutACornerCountsFromTheUsualOne(String face, String corner) {
    Plan plan =
        PlanFiles.build(
            files("x.plan", "units mm\npart\nhole a in " + face + ", dia 3, at (4, 5), depth 2"),
            "x.plan");
    assertThat(
            requireNonNull(requireNonNull(plan.part()).holes().get(0).position()).corner().stream()
                .map(Face::name)
                .collect(Collectors.joining(" ")))
        .isEqualTo(corner);
  }

  @Test
  void aPatternAboutTheCentreSaysSo() {
    String text =
        "units mm\npart\nhole a in top, dia 3, through\npattern p of a, circle dia 20, count 6, about (0, 0) from centre";
    Plan plan = PlanFiles.build(files("x.plan", text), "x.plan");
    Shape.Circle circle =
        (Shape.Circle) requireNonNull(requireNonNull(plan.part()).patterns().get(0).shape());
    assertThat(circle.about().isFromCentre()).isTrue();
    assertThat(circle.count()).isEqualTo(6);
  }

  @Test
  void aFeaturesFaceMayStandBehindItsPlace() {
    String text = "units mm\npart\nslot s, at (3, 4), in right, width 2, depth 1";
    Plan plan = PlanFiles.build(files("x.plan", text), "x.plan");
    assertThat(plan.findings()).isEmpty();
    assertThat(requireNonNull(requireNonNull(plan.part()).features().get(0).position()).corner())
        .isEqualTo(Arrays.asList(Face.FRONT, Face.BOTTOM));
  }
}
