package org.handwheel.plan.sheet;

import java.util.stream.Collectors;
import org.handwheel.plan.sheet.Sheet.OutlineTable;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.CoordinateTable.Mark;
import org.handwheel.work.hole.CoordinateTable.Result;
import org.handwheel.work.hole.CoordinateTable.Row;
import org.jsoup.nodes.Element;

/** Coordinates of holes and stations of outlines as HTML. */
final class HtmlTables {
  /** A thicker rule after so many rows, to keep the eye in its line. */
  private static final int EVERY = 5;

  private HtmlTables() {}

  static void holes(Element section, CoordinateTable table) {
    Page.add(section, "h3", "Holes, hole by hole");
    if (table.result() instanceof Result.None none) {
      Page.apart(section.appendElement("p"), "No coordinates: " + none.reason() + ".");
      return;
    }
    Result.Rows rows = (Result.Rows) table.result();
    Page.apart(section.appendElement("p"), zero("X", rows.x()));
    Page.apart(section.appendElement("p"), zero("Y", rows.y()));
    Page.add(
        section,
        "p",
        "At * the hole lies behind the one before on that axis: run past it by the take-up and come"
            + " back. Each stop is counted from zero and rounded once.");
    Element body =
        Page.table(
            section,
            "Coordinates from zero",
            "Done",
            "Hole",
            "#X mm",
            "#X in",
            "X: stop at",
            "#Y mm",
            "#Y in",
            "Y: stop at",
            "Past it");
    int number = 0;
    for (Row row : rows.rows()) {
      Element line = body.appendElement("tr");
      if (++number % EVERY == 0) {
        line.addClass("every");
      }
      Page.tick(line.appendElement("td"), row.hole().name() + " is done");
      Page.apart(line.appendElement("th").attr("scope", "row"), row.hole().name());
      mark(line, row.x());
      mark(line, row.y());
      Page.add(
          line,
          "td",
          row.turnsRound().stream()
              .sorted()
              .map(axis -> "*" + axis.name())
              .collect(Collectors.joining(" ")));
    }
  }

  private static String zero(String axis, AxisZero zero) {
    String turn = zero.turn() == null ? "" : ", handle " + zero.turn().words();
    return axis
        + " counts from "
        + zero.words()
        + " and grows as the cutter goes "
        + zero.counts().words()
        + ": table goes "
        + zero.table().words()
        + turn
        + "; take-up "
        + LengthText.both(zero.takeUp());
  }

  private static void mark(Element line, Mark mark) {
    Page.number(line, LengthText.number(mark.at(), LengthUnit.MM, 3, 3));
    Page.number(line, LengthText.number(mark.at(), LengthUnit.IN, 4, 4));
    Page.add(line, "td", mark.stop().countedTurns() + " t + " + Words.mark(mark.stop()));
  }

  static void outline(Element section, OutlineTable table) {
    Page.apart(section.appendElement("h3"), table.title());
    if (table.none() != null) {
      Page.apart(section.appendElement("p"), "No steps: " + table.none() + ".");
      return;
    }
    Page.facts(section, table.facts(), "run");
    Page.add(
        section,
        "p",
        "Settings are counted as said above, up as the cutter goes right and"
            + " away from you. Turn the handle under First before the other: that way the cutter"
            + " keeps off the finished outline. At * a handle turns the other way from here on:"
            + " take up its slack before counting. Come to the first station from outside.");
    Element body =
        Page.table(
            section,
            "Stops of the two handles, in order",
            "#No",
            "#X mm",
            "#X turns",
            "#X mark",
            "#Y mm",
            "#Y turns",
            "#Y mark",
            "First",
            "Turns round");
    int number = 0;
    for (OutlineTable.Station station : table.stations()) {
      Element line = body.appendElement("tr");
      if (number % EVERY == 0) {
        line.addClass("every");
      }
      Page.number(line, Integer.toString(number));
      Page.number(line, LengthText.number(station.x(), LengthUnit.MM, 3, 3));
      Page.number(line, station.turnsX());
      Page.number(line, station.markX()).addClass("mark");
      Page.number(line, LengthText.number(station.y(), LengthUnit.MM, 3, 3));
      Page.number(line, station.turnsY());
      Page.number(line, station.markY()).addClass("mark");
      Page.add(line, "td", station.first());
      Page.add(line, "td", station.turnsRound().isEmpty() ? "" : "*" + station.turnsRound());
      number++;
    }
  }
}
