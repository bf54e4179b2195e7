package org.handwheel.plan.sheet;

import java.util.List;
import org.handwheel.plan.sheet.Sheet.Expected;
import org.handwheel.plan.sheet.Sheet.IfRead;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.Sheet.SheetStep;
import org.handwheel.plan.sheet.Sheet.ToMeasure;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMove.Stop;
import org.jsoup.nodes.Element;

/** Steps of a sheet as HTML. */
final class HtmlSteps {
  private HtmlSteps() {}

  static void step(Element list, SetupPage setup, SheetStep step) {
    Element item = list.appendElement("li");
    item.attr("id", "step-" + setup.number() + "-" + step.number());
    item.attr("data-line", Integer.toString(step.line()));
    Element tick = item.appendElement("span").addClass("tick");
    Page.tick(tick, "Step " + step.number() + " of setup " + setup.number() + " is done");
    Page.add(item, "span", "no", Integer.toString(step.number()));
    Element action = item.appendElement("p").addClass("action");
    Page.apart(action, step.action());
    action.appendText(" ");
    Page.add(action, "span", "line", "line " + step.line());
    if (step.dial() != null) {
      dial(item, step.dial());
    }
    String where = "Setup " + setup.number() + ", step " + step.number();
    Page.facts(item, step.facts(), where);
    if (step.ifRead() != null) {
      ifRead(item, step.ifRead());
    }
    if (step.expected() != null) {
      expected(item, step.expected());
    }
    if (step.measure() != null) {
      measure(item, step.measure(), where);
    }
  }

  private static void dial(Element item, DialMove move) {
    String axis = move.axis().name();
    boolean fromZero = !(move.start() instanceof Start.LastCut last) || last.reading() != null;
    if (!fromZero) {
      Element line = item.appendElement("p");
      line.appendText("From where the " + axis + " dial stood at the last cut, wind in ");
      Page.add(line, "span", "stop", Words.winding(move.wind()));
      return;
    }
    if (move.stops().size() == 1) {
      Element line = item.appendElement("p");
      line.appendText("Stop the " + axis + " dial at ");
      Page.add(line, "span", "stop", Words.winding(move.last()));
      line.appendText(" from zero" + down(move.last()));
      if (move.start() instanceof Start.LastCut) {
        line.appendText("; that is ");
        Page.add(line, "span", "wind", Words.winding(move.wind()));
        line.appendText(" further than the last cut, if the size is what the plan expects");
      }
      return;
    }
    Element body =
        Page.table(
            item,
            "Stops of the " + axis + " dial, from zero",
            "#pass",
            "#turns",
            "#mark",
            "#mark if it counts down");
    List<Stop> stops = move.stops();
    for (int i = 0; i < stops.size(); i++) {
      Element row = body.appendElement("tr");
      Page.number(row, Integer.toString(i + 1));
      Page.number(row, stops.get(i).countedTurns());
      Page.number(row, Words.mark(stops.get(i))).addClass("stop");
      Page.number(row, stops.get(i).readingDown().toPlainString());
    }
    narrow(body);
  }

  private static void narrow(Element body) {
    Element table = body.parent();
    if (table != null) {
      table.addClass("narrow");
    }
  }

  private static String down(Stop stop) {
    return " (a dial that counts down shows " + stop.readingDown().toPlainString() + ")";
  }

  private static void expected(Element item, Expected expected) {
    Element line = item.appendElement("p").addClass("expected");
    line.appendText(Words.capital(expected.dimension().word()) + " after it: ");
    Page.add(line, "span", "size", LengthText.range(expected.size()));
    if (expected.limits() != null) {
      line.appendText("; the drawing allows ");
      Page.add(line, "span", "limits", LengthText.range(expected.limits()));
    }
  }

  private static void measure(Element item, ToMeasure measure, String where) {
    Element line = item.appendElement("p").addClass("write");
    line.appendText("Measured ");
    String label = where + ": measured " + measure.dimension().word();
    Element box = Page.write(line, label);
    if (measure.reading() != null) {
      box.attr(
          "value",
          String.join(
              ", ",
              measure.reading().values().stream()
                  .map(value -> LengthText.number(value, LengthUnit.MM, 3, 2) + " mm")
                  .toList()));
    }
    if (measure.expected() != null) {
      line.appendText(" expected ");
      Page.add(line, "span", "size", LengthText.range(measure.expected()));
    }
    if (measure.limits() != null) {
      line.appendText("; the drawing allows ");
      Page.add(line, "span", "limits", LengthText.range(measure.limits()));
    }
  }

  private static void ifRead(Element item, IfRead table) {
    boolean stops = table.rows().stream().anyMatch(row -> row.stop() != null);
    LengthUnit other = table.unit() == LengthUnit.MM ? LengthUnit.IN : LengthUnit.MM;
    String caption = "If you read this " + table.dimension().word() + ", wind in this much";
    String[] heads =
        stops
            ? new String[] {
              "#read, " + table.unit().symbol(),
              "#" + other.symbol(),
              "wind in from the last cut",
              "stop the dial at"
            }
            : new String[] {
              "#read, " + table.unit().symbol(), "#" + other.symbol(), "wind in from the last cut"
            };
    Element body = Page.table(item, caption, heads);
    Element parent = body.parent();
    if (parent != null) {
      parent.addClass("narrow").addClass("if-read");
    }
    for (IfRead.Row row : table.rows()) {
      Element line = body.appendElement("tr");
      Page.number(line, Words.number(row.read(), table.unit())).addClass("read");
      Page.number(line, Words.number(row.read(), other));
      switch (row.verdict()) {
        case CUT -> Page.add(line, "td", row.wind() == null ? "" : Words.winding(row.wind()));
        case IN_SIZE -> Page.add(line, "td", "in size: leave it");
        case UNDER_SIZE -> Page.add(line, "td", "under size: stop");
      }
      if (stops) {
        Page.add(line, "td", row.stop() == null ? "" : Words.winding(row.stop()));
      }
    }
  }
}
