package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.handwheel.model.LogSection;
import org.handwheel.model.Step;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.Sheet.IfRead;
import org.handwheel.plan.sheet.Sheet.IfRead.Row;
import org.handwheel.plan.sheet.Sheet.IfRead.Verdict;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.Sheet.SheetStep;
import org.handwheel.plan.sheet.SheetLook;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.CutRun;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMoves;
import org.handwheel.work.Drawing;
import org.handwheel.work.Engine;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Sheets of the examples say what the engine says. */
class SheetExampleTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  static Stream<String> plans() {
    return ExampleFiles.texts().keySet().stream()
        .filter(path -> path.endsWith(".plan") && !path.contains("mistakes/"))
        .sorted();
  }

  private static Sheet sheet(Checked checked) {
    return new Sheets(TABLES, Projection.FIRST).sheet(checked, null);
  }

  private static Document page(Sheet sheet) {
    return Jsoup.parse(HtmlSheet.of(sheet, SheetLook.USUAL));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void sizesAndStopsAreThoseOfTheEngine(String path) {
    Checked checked = ExampleFiles.check(path);
    PlanRun run = checked.run();
    Document page = page(sheet(checked));
    int cuts = 0;
    int number = 0;
    for (SetupRun setup : run.setups()) {
      number++;
      Element section = page.getElementById("setup-" + number);
      for (int i = 0; i < setup.steps().size(); i++) {
        StepRun step = setup.steps().get(i);
        CutRun cut = step.cut();
        if (cut == null) {
          continue;
        }
        cuts++;
        int line = checked.tree().line(step.step().origin()) + 1;
        Element item = section.selectFirst("li[data-line=" + line + "]");
        assertThat(item.selectFirst(".expected .size").text())
            .isEqualTo(LengthText.range(cut.after().range()));
        DialMove move = DialMoves.of(run, setup, i).orElse(null);
        if (move != null) {
          assertThat(item.text()).contains(move.last().reading().toPlainString());
        }
      }
    }
    assertThat(page.select(".expected")).hasSize(cuts);
    assertThat(page.select("section.setup")).hasSameSizeAs(run.setups());
    assertThat(page.select("section.setup figure svg")).hasSameSizeAs(run.setups());
    for (Drawing.Demand demand : run.drawing().demands()) {
      assertThat(page.select("#inspection .limits").eachText())
          .contains(LengthText.range(demand.limits()));
    }
  }

  @ParameterizedTest
  @MethodSource("plans")
  void whatToWindForAReadingIsWhatTheEngineSaysOnceItIsInTheLog(String path) {
    Checked checked = ExampleFiles.check(path);
    PlanRun run = checked.run();
    for (SetupPage page : sheet(checked).setups()) {
      SetupRun setup = run.setups().get(page.number() - 1);
      for (SheetStep step : page.steps()) {
        IfRead table = step.ifRead();
        if (table == null) {
          continue;
        }
        List<Row> rows = table.rows().stream().filter(row -> row.verdict() == Verdict.CUT).toList();
        assertThat(rows).isNotEmpty();
        assertThat(table.rows()).hasSizeLessThanOrEqualTo(24);
        int index = index(checked, setup, step.line());
        for (Row row : List.of(rows.get(0), rows.get(rows.size() / 2), rows.get(rows.size() - 1))) {
          DialMove move = moveWithLog(path, checked, setup, index, table, row);
          assertThat(row.wind()).isEqualTo(move.wind());
          if (row.stop() != null) {
            assertThat(row.stop()).isEqualTo(move.last());
          }
        }
        assertThat(rows.stream().map(row -> row.wind().divisions()).toList())
            .as("the more is read, the more is wound")
            .isSorted();
      }
    }
  }

  private static int index(Checked checked, SetupRun setup, int line) {
    for (int i = 0; i < setup.steps().size(); i++) {
      if (checked.tree().line(setup.steps().get(i).step().origin()) + 1 == line) {
        return i;
      }
    }
    throw new AssertionError("no step on line " + line);
  }

  private static int lastMeasure(SetupRun setup, int index, IfRead table) {
    int last = -1;
    for (int i = 0; i < index; i++) {
      if (setup.steps().get(i).step() instanceof Step.Measure measure
          && measure.dimension() == table.dimension()) {
        last = i;
      }
    }
    return last;
  }

  private static DialMove moveWithLog(
      String path, Checked checked, SetupRun setup, int index, IfRead table, Row row) {
    List<String> lines = new ArrayList<>();
    int last = lastMeasure(setup, index, table);
    for (int i = 0; i <= last; i++) {
      StepRun step = setup.steps().get(i);
      if (step.step() instanceof Step.Measure measure && measure.dimension() == table.dimension()) {
        // What was read earlier is what the plan expects.
        Length read =
            i == last ? row.read() : step.before().size(table.dimension()).range().middle();
        lines.add(
            "  in "
                + setup.setup().name().value()
                + ": read "
                + measure.dimension().word()
                + " "
                + LengthText.number(read, LengthUnit.MM, 9, 2)
                + " mm with "
                + measure.instrument().name());
      }
    }
    String text = ExampleFiles.text(path) + "\nlog \"tried\"\n" + String.join("\n", lines) + "\n";
    PlanRun planned = ExampleFiles.check(path, text).run();
    LogSection log =
        planned.plan().logs().stream()
            .filter(one -> one.title().equals("tried"))
            .findFirst()
            .orElseThrow();
    PlanRun run = Engine.run(planned.plan(), log, TABLES);
    int place = checked.run().setups().indexOf(setup);
    return DialMoves.of(run, run.setups().get(place), index).orElseThrow();
  }

  @Test
  void aSheetOfAPlanWithMistakesSaysSoOnTop() {
    Document page = page(sheet(ExampleFiles.check("mistakes/four-in-one.plan")));
    assertThat(page.select(".warning li").eachText()).anyMatch(text -> text.contains("overcut"));
    assertThat(page(sheet(ExampleFiles.check("bearing-block.plan"))).select(".warning")).isEmpty();
  }

  /** Text of a plan stays text, whatever it is. */
  @Test
  void hostileNamesDoNotBecomeMarkup() {
    String hostile =
        "</title><script>alert(1)</script> ]]> ' onload='x \u202e\u2066abc\u0007 &amp;";
    String text =
        ExampleFiles.text("bearing-block.plan")
            .replace("Feed pump bearing block", hostile)
            .replace("Top, from the casting skin", hostile)
            .replace("deburr edges of top\n", "note \"" + hostile + "\"\n  deburr edges of top\n");
    Checked checked = ExampleFiles.check("bearing-block.plan", text);
    String html = HtmlSheet.of(sheet(checked), SheetLook.USUAL);
    Document page = Jsoup.parse(html);
    assertThat(page.select("script")).isEmpty();
    assertThat(page.title()).contains("<script>alert(1)</script>", "&amp;");
    assertThat(page.select("h1").text()).contains("<script>alert(1)</script>");
    assertThat(page.select(".action").eachText()).anyMatch(line -> line.contains("<script>"));
    assertThat(html).doesNotContain("<script", "\u202e", "\u2066", "\u0007");
    page.getAllElements()
        .forEach(
            element ->
                element
                    .attributes()
                    .forEach(attribute -> assertThat(attribute.getKey()).doesNotStartWith("on")));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void theFileNeedsNothingElseAndEveryBoxHasAName(String path) {
    Document page = page(sheet(ExampleFiles.check(path)));
    assertThat(page.select("script, link, img, iframe, object, embed")).isEmpty();
    assertThat(page.select("[src], [href]:not([href^=#])")).isEmpty();
    page.select("input:not([type=radio])")
        .forEach(input -> assertThat(input.attr("aria-label")).isNotBlank());
    List<String> ids = page.select("[id]").eachAttr("id");
    assertThat(ids).doesNotHaveDuplicates();
  }
}
