package org.handwheel.plan.sheet;

import java.util.List;
import java.util.stream.Collectors;
import org.handwheel.plan.sheet.Sheet.OutlineTable;
import org.handwheel.plan.sheet.Sheet.OutlineTable.Station;
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

  /** So many rows stand side by side with as many: half a page. */
  private static final int ROWS = 23;

  /** A table of so many rows is not broken at the end of a page. */
  private static final int MOST_WHOLE = 15;

  private HtmlTables() {}

  static void holes(Element setup, CoordinateTable table) {
    Element section = setup.appendElement("div");
    if (!(table.result() instanceof Result.Rows all) || all.rows().size() <= MOST_WHOLE) {
      section.addClass("whole");
    }
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
    Page.number(line, LengthText.number(mark.at(), LengthUnit.MM, 3, 3)).addClass("mm");
    Page.number(line, LengthText.number(mark.at(), LengthUnit.IN, 4, 4)).addClass("in");
    Page.add(line, "td", Words.counted(mark.stop()));
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
            + " keeps off the finished outline. At *X or *Y a handle turns the other way from here on:"
            + " take up its slack before counting. Come to the first station from outside."
            + (table.stations().stream().anyMatch(HtmlTables::isJustBelow)
                ? " <0 is less than a turn below zero."
                : ""));
    List<Station> stations = table.stations();
    for (int from = 0; from < stations.size(); from += 2 * ROWS) {
      Element pair = section.appendElement("div").addClass("pair").addClass("stations");
      int middle = Math.min(from + ROWS, stations.size());
      int end = Math.min(middle + ROWS, stations.size());
      stations(pair, stations, from, middle);
      if (end > middle) {
        pair.appendText(" ");
        stations(pair, stations, middle, end);
      }
    }
  }

  private static boolean isJustBelow(Station station) {
    return station.turnsX().startsWith("<") || station.turnsY().startsWith("<");
  }

  private static void stations(Element to, List<Station> stations, int from, int end) {
    Element body =
        Page.table(
            to,
            "Stops " + from + " to " + (end - 1),
            "#No",
            "#X mm",
            "#turns",
            "#mark",
            "#Y mm",
            "#turns",
            "#mark",
            "First");
    Page.narrow(body);
    for (int i = from; i < end; i++) {
      Station station = stations.get(i);
      Element line = body.appendElement("tr");
      if (i % EVERY == 0) {
        line.addClass("every");
      }
      Page.number(line, Integer.toString(i));
      Page.number(line, LengthText.number(station.x(), LengthUnit.MM, 3, 3));
      Page.number(line, station.turnsX());
      Page.number(line, station.markX()).addClass("mark");
      Page.number(line, LengthText.number(station.y(), LengthUnit.MM, 3, 3));
      Page.number(line, station.turnsY());
      Page.number(line, station.markY()).addClass("mark");
      String round = station.turnsRound().isEmpty() ? "" : " *" + station.turnsRound();
      Page.add(line, "td", (station.first() + round).strip());
    }
  }
}
