package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.handwheel.plan.sheet.Sheet.Expected;
import org.handwheel.plan.sheet.Sheet.IfRead;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.Sheet.SheetStep;
import org.handwheel.plan.sheet.Sheet.ToMeasure;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMove.Stop;
import org.jsoup.nodes.Element;

/** Steps of a sheet as HTML. */
final class HtmlSteps {
  /** So many passes fit side by side. */
  private static final int PASSES = 10;

  /** Longer tables are set side by side in halves. */
  private static final int LONG = 6;

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
    Page.facts(item, step.facts(), "run");
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
    for (int from = 0; from < move.stops().size(); from += PASSES) {
      int to = Math.min(from + PASSES, move.stops().size());
      stops(item, axis, from, move.stops().subList(from, to));
    }
  }

  /** Passes side by side: that takes a third of the height of one below the other. */
  private static void stops(Element item, String axis, int from, List<Stop> stops) {
    List<String> heads = new ArrayList<>(List.of("pass"));
    for (int i = 0; i < stops.size(); i++) {
      heads.add("#" + (from + i + 1));
    }
    Element body =
        Page.table(item, "Stops of the " + axis + " dial, from zero", heads.toArray(new String[0]));
    Page.narrow(body);
    row(body, "turns", stops, Stop::countedTurns);
    row(body, "mark", stops, Words::mark).addClass("stops");
    row(body, "mark if it counts down", stops, stop -> stop.readingDown().toPlainString());
  }

  private static Element row(
      Element body, String head, List<Stop> stops, Function<Stop, String> words) {
    Element row = body.appendElement("tr");
    Page.add(row, "th", head).attr("scope", "row");
    stops.forEach(stop -> Page.number(row, words.apply(stop)));
    return row;
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

  /** With as many places in each row; {@code least} for millimetres. */
  private static String read(Length length, LengthUnit unit, int least) {
    return unit == LengthUnit.MM
        ? LengthText.number(length, LengthUnit.MM, 3, least)
        : LengthText.number(length, LengthUnit.IN, 4, 4);
  }

  private static LengthUnit other(IfRead table) {
    return table.unit() == LengthUnit.MM ? LengthUnit.IN : LengthUnit.MM;
  }

  private static void ifRead(Element item, IfRead table) {
    boolean stops = table.rows().stream().anyMatch(row -> row.stop() != null);
    LengthUnit other = other(table);
    String caption = "If you read this " + table.dimension().word() + ", wind in from the last cut";
    String[] heads =
        stops
            ? new String[] {
              "#read, " + table.unit().symbol(), "#" + other.symbol(), "wind in", "stop at"
            }
            : new String[] {"#read, " + table.unit().symbol(), "#" + other.symbol(), "wind in"};
    List<IfRead.Row> rows = table.rows();
    if (rows.size() <= LONG) {
      ifRead(Page.narrow(Page.table(item, caption, heads)), table, rows, stops);
      return;
    }
    Element pair = item.appendElement("div").addClass("pair");
    int half = (rows.size() + 1) / 2;
    Element first = Page.table(pair, caption, heads);
    ifRead(Page.narrow(first), table, rows.subList(0, half), stops);
    pair.appendText(" ");
    Element second = Page.table(pair, "and more", heads);
    ifRead(Page.narrow(second), table, rows.subList(half, rows.size()), stops);
  }

  private static void ifRead(Element body, IfRead table, List<IfRead.Row> rows, boolean withStops) {
    LengthUnit other = other(table);
    for (IfRead.Row row : rows) {
      Element line = body.appendElement("tr");
      Page.number(line, read(row.read(), table.unit(), 2)).addClass("read");
      Page.number(line, read(row.read(), other, 3)).addClass(other.symbol());
      switch (row.verdict()) {
        case CUT -> Page.add(line, "td", row.wind() == null ? "" : Words.shortWinding(row.wind()));
        case IN_SIZE -> Page.add(line, "td", "in size: leave it");
        case UNDER_SIZE -> Page.add(line, "td", "under size: stop");
      }
      if (withStops) {
        Page.add(line, "td", row.stop() == null ? "" : Words.shortWinding(row.stop()));
      }
    }
  }
}
