package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.CoordinateTable.Mark;
import org.handwheel.work.hole.CoordinateTable.Operation;
import org.handwheel.work.hole.CoordinateTable.Result;
import org.handwheel.work.hole.CoordinateTable.Row;
import org.jspecify.annotations.Nullable;

/** Coordinates of holes as text and as JSON. */
final class CoordinatesReport {
  private static final List<String> SOURCES =
      List.of(
          "hole circles: D/2 cos a and D/2 sin a, rounded once; order: fewest chains in which"
              + " neither axis goes back; edge finding and backlash: common practice");

  private final String plan;
  private final List<CoordinateTable> tables;

  CoordinatesReport(String plan, List<CoordinateTable> tables) {
    this.plan = plan;
    this.tables = tables;
  }

  // ---- Text

  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    if (tables.isEmpty()) {
      lines.add(plan + ": no holes are cut");
      return lines;
    }
    for (CoordinateTable table : tables) {
      if (!lines.isEmpty()) {
        lines.add("");
      }
      lines.addAll(lines(table, width));
    }
    lines.add("");
    lines.addAll(
        Wrapping.wrap(
            "",
            "",
            "Turns are whole turns from zero with the mark to stop at, on dials that count up the"
                + " way the coordinates grow; each is rounded once, from zero, and `<0` is less than a"
                + " turn below it. At `*` the hole"
                + " lies behind: run past it by the take-up and come up to it again. Z counts from"
                + " where that tool touches the face, point included. Spot first; wear eye"
                + " protection, no gloves at a turning spindle, chuck key out, work clamped; the"
                + " machine maker's manual and local rules come first.",
            width));
    return lines;
  }

  private static List<String> lines(CoordinateTable table, int width) {
    String title = table.setup().setup().words() + ": coordinates of holes";
    if (table.result() instanceof Result.None none) {
      return Wrapping.wrap("", "    ", title + ": none, for " + none.reason(), width);
    }
    Result.Rows rows = (Result.Rows) table.result();
    Facts facts = new Facts(title);
    facts.add("X from", rows.x().counting());
    facts.add("Y from", rows.y().counting());
    facts.add(
        "take-up", "X " + LengthText.both(rows.x().takeUp()) + ", Y " + both(rows.y().takeUp()));
    facts.add("rounding", "at most " + both(rows.worstRounding()) + " on an axis");
    List<String> lines = new ArrayList<>(facts.lines(width));
    int name =
        Math.max(4, rows.rows().stream().mapToInt(r -> r.hole().name().length()).max().orElse(4));
    lines.add("");
    lines.add("  From zero");
    lines.add(header(name, rows));
    for (Row row : rows.rows()) {
      lines.add(
          line(row.hole().name(), name, mark(row.x().at(), row.x().stop(), rows.x()))
              + mark(row.y().at(), row.y().stop(), rows.y())
              + behind(row));
    }
    lines.add("");
    lines.add("  From the hole before, the first one from zero");
    lines.add(header(name, rows));
    for (Row row : rows.rows()) {
      lines.add(
          line(row.hole().name(), name, wind(row.x(), rows.x()))
              + wind(row.y(), rows.y())
              + behind(row));
    }
    lines.add("");
    for (Operation operation : table.operations()) {
      lines.addAll(Wrapping.wrap("  ", "    ", words(operation), width));
    }
    return lines;
  }

  private static String both(Length length) {
    return LengthText.both(length);
  }

  private static String header(int name, Result.Rows rows) {
    return line("hole", name, columns("X", rows.x())) + columns("Y", rows.y());
  }

  private static String columns(String axis, AxisZero zero) {
    boolean inches = zero.isInInches();
    return String.format(
        Locale.ROOT,
        " %9s %9s %5s %5s",
        axis + (inches ? " in" : " mm"),
        inches ? "mm" : "in",
        "turns",
        "mark");
  }

  private static String line(String hole, int name, String rest) {
    return "  " + hole + " ".repeat(Math.max(0, name - hole.length())) + rest;
  }

  private static String mark(Length at, Stop stop, AxisZero zero) {
    String mm = LengthText.number(at, LengthUnit.MM, 3, 3);
    String inches = LengthText.number(at, LengthUnit.IN, 4, 4);
    return String.format(
        Locale.ROOT,
        " %9s %9s %5s %5s",
        zero.isInInches() ? inches : mm,
        zero.isInInches() ? mm : inches,
        stop.countedTurns(),
        stop.reading().toPlainString());
  }

  /**
   * A step from hole to hole: turns and divisions to wind, both counted back where it goes back.
   */
  private static String wind(Mark mark, AxisZero zero) {
    Stop wind = mark.wind();
    String mm = LengthText.number(mark.step(), LengthUnit.MM, 3, 3);
    String inches = LengthText.number(mark.step(), LengthUnit.IN, 4, 4);
    boolean back = wind.divisions().signum() < 0;
    return String.format(
        Locale.ROOT,
        " %9s %9s %5s %5s",
        zero.isInInches() ? inches : mm,
        zero.isInInches() ? mm : inches,
        wind.countedTurns(),
        (back ? wind.readingDown() : wind.reading()).toPlainString());
  }

  private static String behind(Row row) {
    String axes =
        row.turnsRound().stream()
            .sorted()
            .map(axis -> "*" + axis.name())
            .collect(Collectors.joining(" "));
    return axes.isEmpty() ? "" : " " + axes;
  }

  private static String words(Operation operation) {
    StringBuilder words = new StringBuilder();
    words.append(operation.cut().verb().name().toLowerCase(Locale.ROOT)).append(" with ");
    words.append(operation.bit().name());
    if (operation.bit().dia() != null && !operation.bit().name().contains(" mm")) {
      words.append(", ").append(both(operation.bit().dia()));
    }
    words.append(": ").append(String.join(", ", operation.holes()));
    Length depth = operation.depth();
    if (depth != null && operation.tip() != null && operation.stop() != null) {
      words.append(operation.through() ? "; through" : "; " + both(depth) + " deep");
      if (operation.cut().verb() == HoleVerb.COUNTERSINK) {
        words.append(", from where its cone touches the rim of the hole: Z ");
      } else {
        words.append(", its end ").append(both(operation.tip())).append(" down: Z ");
      }
      words.append(operation.stop().turns());
      words.append(operation.stop().turns() == 1 ? " turn + " : " turns + ");
      words.append(operation.stop().reading().toPlainString());
    }
    return words.toString();
  }

  // ---- JSON

  private record Document(int version, List<String> sources, String plan, List<Holes> tables) {}

  private record Size(double mm, double in) {
    static @Nullable Size of(@Nullable Length length) {
      return length == null
          ? null
          : new Size(
              Double.parseDouble(LengthText.number(length, LengthUnit.MM, 6, 0)),
              Double.parseDouble(LengthText.number(length, LengthUnit.IN, 7, 0)));
    }
  }

  private record Holes(
      String setup,
      @Nullable String none,
      @Nullable Zero x,
      @Nullable Zero y,
      @Nullable Size rounding,
      List<Place> holes,
      List<Tool> operations) {}

  private record Zero(
      String from,
      String dial,
      String cutterGoes,
      String tableGoes,
      @Nullable String turn,
      @Nullable Size takeUp) {
    static Zero of(AxisZero zero) {
      return new Zero(
          zero.words(),
          zero.isInInches() ? "in" : "mm",
          zero.counts().words(),
          zero.table().words(),
          zero.turn() == null ? null : zero.turn().words(),
          Size.of(zero.takeUp()));
    }
  }

  private record Place(String hole, At x, At y, List<String> turnsRound) {}

  private record At(
      @Nullable Size at,
      double divisions,
      long turns,
      double reads,
      @Nullable Size error,
      @Nullable Size step,
      double stepDivisions) {
    static At of(Mark mark) {
      return new At(
          Size.of(mark.at()),
          number(mark.stop().divisions()),
          mark.stop().turns(),
          mark.stop().reading().doubleValue(),
          Size.of(mark.stop().error()),
          Size.of(mark.step()),
          number(mark.wind().divisions()));
    }

    private static double number(BigFraction fraction) {
      return fraction.doubleValue();
    }
  }

  private record Tool(
      String operation,
      String tool,
      @Nullable Size dia,
      List<String> holes,
      @Nullable Size depth,
      @Nullable Size tip,
      boolean through,
      @Nullable Double divisions) {}

  String json() {
    return Json.of(
        new Document(1, SOURCES, plan, tables.stream().map(CoordinatesReport::json).toList()));
  }

  private static Holes json(CoordinateTable table) {
    List<Tool> tools = table.operations().stream().map(CoordinatesReport::tool).toList();
    String setup = table.setup().setup().words();
    if (table.result() instanceof Result.None none) {
      return new Holes(setup, none.reason(), null, null, null, List.of(), tools);
    }
    Result.Rows rows = (Result.Rows) table.result();
    return new Holes(
        setup,
        null,
        Zero.of(rows.x()),
        Zero.of(rows.y()),
        Size.of(rows.worstRounding()),
        rows.rows().stream()
            .map(
                row ->
                    new Place(
                        row.hole().name(), At.of(row.x()), At.of(row.y()), axes(row.turnsRound())))
            .toList(),
        tools);
  }

  private static List<String> axes(Set<Axis> axes) {
    return axes.stream().sorted().map(Axis::word).toList();
  }

  private static Tool tool(Operation operation) {
    return new Tool(
        operation.cut().verb().name().toLowerCase(Locale.ROOT),
        operation.bit().name(),
        Size.of(operation.bit().dia()),
        operation.holes(),
        Size.of(operation.depth()),
        Size.of(operation.tip()),
        operation.through(),
        operation.stop() == null ? null : operation.stop().divisions().doubleValue());
  }
}
