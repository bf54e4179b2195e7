package org.handwheel.plan.sheet;

import java.util.List;
import org.handwheel.plan.picture.Drawing;
import org.handwheel.plan.picture.SvgPicture;
import org.handwheel.plan.sheet.Sheet.Check;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.Sheet.Tool;
import org.handwheel.units.LengthText;
import org.handwheel.units.UnitChoice;
import org.jsoup.Jsoup;
import org.jsoup.nodes.DataNode;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.DocumentType;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;

/** A sheet as one HTML file: no script, nothing from outside, black on white. */
public final class HtmlSheet {
  /** What to heed at the machine; the trade's usual cautions. */
  private static final List<String> CAUTIONS =
      List.of(
          "The machine maker's manual, local rules and qualified people come first. Speeds, feeds"
              + " and depths here are starting points.",
          "Eye protection on. No gloves, rings, loose sleeves or long hair near a turning spindle.",
          "Chuck key out, work clamped, cutter tight before the spindle starts.",
          "Spindle stopped before measuring, wiping or clearing chips; chips go with a brush,"
              + " never by hand.",
          "The sheet knows the plan, not the machine: it cannot see a loose jaw, a chip or a worn"
              + " screw. Where a size read does not fit the sheet, stop and find out why.");

  private final Sheet sheet;
  private final String css;
  private final UnitChoice units;

  private HtmlSheet(Sheet sheet, String css, UnitChoice units) {
    this.sheet = sheet;
    this.css = css;
    this.units = units;
  }

  /** The whole file as text. */
  public static String of(Sheet sheet, SheetLook look) {
    return document(sheet, look).outerHtml();
  }

  /** The whole file as a document. */
  public static Document document(Sheet sheet, SheetLook look) {
    Document page =
        new HtmlSheet(sheet, Style.text(title(sheet), look.paper()), look.units()).draw();
    PageUnits.apply(page, look.units());
    return page;
  }

  /** The sheet's title as it stands in the window and on top. */
  public static String title(Sheet sheet) {
    String revision = sheet.revision() == null ? "" : ", rev " + sheet.revision();
    return Page.clean(sheet.title() + revision);
  }

  private Document draw() {
    Document page = new Document("");
    page.outputSettings().prettyPrint(false).charset("UTF-8");
    page.appendChild(new DocumentType("html", "", ""));
    Element html = page.appendElement("html").attr("lang", "en");
    Element head = html.appendElement("head");
    head.appendElement("meta").attr("charset", "utf-8");
    head.appendElement("meta")
        .attr("name", "viewport")
        .attr("content", "width=device-width, initial-scale=1");
    head.appendElement("meta")
        .attr("http-equiv", "Content-Security-Policy")
        .attr("content", "default-src 'none'; style-src 'unsafe-inline'");
    Page.add(head, "title", title(sheet));
    head.appendElement("style").appendChild(new DataNode(css));
    Element body = html.appendElement("body");
    Page.add(body, "a", "skip", "To the setups").attr("href", "#setups");
    header(body.appendElement("header"));
    Element main = body.appendElement("main");
    warnings(main);
    cautions(main);
    lists(main);
    Element setups = main.appendElement("div").attr("id", "setups");
    sheet.setups().forEach(setup -> setup(setups, setup));
    inspection(main);
    return page;
  }

  private void header(Element header) {
    Page.apart(header.appendElement("h1"), title(sheet));
    Element under = header.appendElement("p").addClass("under");
    under.appendText("Sheet for the machine, from ");
    Page.apart(under, sheet.path());
    if (sheet.piece() != null) {
      under.appendText(", with the readings of ");
      Page.apart(under, sheet.piece());
    }
    Page.facts(header, sheet.about(), "rows");
    Element form = header.appendElement("p").addClass("write");
    for (String what : List.of("Piece", "Made by", "Date")) {
      Element one = form.appendElement("span").addClass("one");
      one.appendText(what + " ");
      Page.write(one, what).removeAttr("inputmode");
      form.appendText(" ");
    }
    Element nav = header.appendElement("nav").attr("aria-label", "Setups");
    Element list = nav.appendElement("ul");
    for (SetupPage setup : sheet.setups()) {
      Element item = list.appendElement("li").appendElement("a");
      item.attr("href", "#setup-" + setup.number());
      Page.apart(item, setup.number() + ": " + words(setup));
    }
    if (!sheet.checks().isEmpty()) {
      Page.add(list.appendElement("li"), "a", "Inspection").attr("href", "#inspection");
    }
  }

  private static String words(SetupPage setup) {
    if (setup.title().isEmpty()) {
      return setup.name() == null ? "setup" : setup.name();
    }
    return setup.title() + (setup.name() == null ? "" : " (" + setup.name() + ")");
  }

  private void warnings(Element main) {
    if (sheet.warnings().isEmpty()) {
      return;
    }
    Element box = main.appendElement("section").addClass("warning");
    Page.add(box, "h2", "Do not cut yet: the plan does not check clean");
    Element list = box.appendElement("ul");
    for (String warning : sheet.warnings()) {
      Page.apart(list.appendElement("li"), warning);
    }
  }

  private static void cautions(Element main) {
    Element box = main.appendElement("section").addClass("care");
    Page.add(box, "h2", "Care");
    Element list = box.appendElement("ul");
    CAUTIONS.forEach(caution -> Page.add(list, "li", caution));
  }

  private void lists(Element main) {
    if (!sheet.stock().isEmpty()) {
      Element stock = main.appendElement("section").addClass("stock");
      Page.add(stock, "h2", "Stock to saw");
      Page.facts(stock, sheet.stock(), "rows");
    }
    if (!sheet.tools().isEmpty()) {
      Element tools = main.appendElement("section").addClass("tools");
      Page.add(tools, "h2", "Lay out");
      Element list = tools.appendElement("ul");
      for (Tool tool : sheet.tools()) {
        Element item = list.appendElement("li");
        Page.tick(item, tool.name() + " is laid out");
        item.appendText(" ");
        Page.apart(item.appendElement("b"), tool.name());
        item.appendText(" ");
        Page.apart(item, tool.words());
        list.appendText(" ");
      }
    }
  }

  private void setup(Element main, SetupPage setup) {
    Element section = main.appendElement("section").addClass("setup");
    section.attr("id", "setup-" + setup.number());
    Element start = section.appendElement("div").addClass("start");
    Element head = start.appendElement("h2");
    head.appendText("Setup " + setup.number() + ": ");
    Page.apart(head, words(setup));
    Page.facts(start, setup.facts(), "rows");
    if (setup.drawing() == null) {
      Page.add(start, "p", "No picture: it is not known how the work lies or how large it is.");
    } else {
      picture(start, setup.drawing().in(units));
    }
    Element list = section.appendElement("ol").addClass("steps");
    setup.steps().forEach(step -> HtmlSteps.step(list, setup, step));
    setup.holes().forEach(table -> HtmlTables.holes(section, table));
    setup.outlines().forEach(table -> HtmlTables.outline(section, table));
  }

  /** The views, and beside them what their numbers stand for. */
  private static void picture(Element start, Drawing drawing) {
    Element figure = start.appendElement("figure");
    Element views = figure.appendElement("div").addClass("views");
    Jsoup.parse(clean(SvgPicture.of(drawing)), "", Parser.xmlParser())
        .children()
        .forEach(views::appendChild);
    Element beside = figure.appendElement("figcaption");
    Element parts = beside.appendElement("ol");
    drawing.parts().forEach(part -> Page.apart(parts.appendElement("li"), part));
    drawing.notes().forEach(note -> Page.add(beside, "p", note));
  }

  /** The picture is markup of our own; marks that turn the direction of writing are left out. */
  private static String clean(String svg) {
    StringBuilder clean = new StringBuilder();
    svg.codePoints()
        .filter(c -> c == '\n' || !Character.isISOControl(c))
        .filter(c -> Character.getType(c) != Character.FORMAT)
        .forEach(clean::appendCodePoint);
    return clean.toString();
  }

  private void inspection(Element main) {
    if (sheet.checks().isEmpty()) {
      return;
    }
    Element section = main.appendElement("section").addClass("inspection");
    section.attr("id", "inspection");
    Page.add(section, "h2", "Inspection");
    Page.add(
        section,
        "p",
        "Clean and at room temperature; zero of the instrument tried. What falls outside fails.");
    Element body =
        Page.table(
            section, "Inspection", "What", "Drawing", "Allowed", "With", "Measured", "Result");
    int number = 0;
    for (Check check : sheet.checks()) {
      number++;
      Element row = body.appendElement("tr").addClass("check");
      Page.apart(row.appendElement("th").attr("scope", "row"), check.what());
      Page.apart(row.appendElement("td"), check.demand());
      Page.add(row, "td", "limits", check.limits() == null ? "" : LengthText.range(check.limits()));
      Page.apart(
          row.appendElement("td"), check.with().isEmpty() ? "not in the plan" : check.with());
      Page.write(row.appendElement("td"), "Measured: " + check.what()).addClass("write");
      Element set = row.appendElement("td").addClass("result").appendElement("fieldset");
      Page.add(set, "legend", "Result: " + check.what());
      for (String verdict : List.of("pass", "fail")) {
        Element label = set.appendElement("label");
        label
            .appendElement("input")
            .attr("type", "radio")
            .attr("name", "check-" + number)
            .addClass("verdict")
            .attr("value", verdict);
        label.appendText(" " + verdict);
        set.appendText(" ");
      }
    }
  }
}
