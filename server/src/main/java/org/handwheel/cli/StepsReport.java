package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Limits;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.DialMove;
import org.handwheel.work.feature.CrankPath;
import org.handwheel.work.feature.CrankPath.Purpose;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.FeatureWords;
import org.handwheel.work.feature.OpeningSize;
import org.handwheel.work.feature.Remainder;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.outline.StepTable;
import org.handwheel.work.outline.StepTable.Station;

/** Step tables and the ways through slots and pockets as text. */
final class StepsReport {
  private static final String HANDLES =
      "Turns are whole turns from zero, with the mark to stop at; below zero the count runs down,"
          + " and `<0` is less than a turn below it. At `*` a handle turns the other way from here on: take up its slack before counting.";
  private static final String ROUND =
      "Step tables count from the outline's middle: both dials at zero there, counting up as the"
          + " cutter goes right and away from you. Turn the handle under `first` before the other"
          + " one: that way the cutter keeps off the finished outline. Come to the first station"
          + " from outside.";
  private static final String CARE =
      "Eye protection on, work clamped, the machine maker's manual and local rules come first.";

  private final String plan;
  private final List<FeatureTable> cuts;
  private final Remainder remainder;
  private final Limits limits;

  StepsReport(String plan, List<FeatureTable> cuts, Remainder remainder, Limits limits) {
    this.remainder = remainder;
    this.limits = limits;
    this.plan = plan;
    this.cuts = cuts;
  }

  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    if (cuts.isEmpty()) {
      lines.add(plan + ": no slot, pocket or outline is cut");
      return lines;
    }
    for (FeatureTable cut : cuts) {
      if (!lines.isEmpty()) {
        lines.add("");
      }
      lines.addAll(lines(cut, width));
    }
    lines.add("");
    lines.addAll(against(width));
    boolean hasSteps = cuts.stream().anyMatch(cut -> cut.run().result() instanceof Result.Steps);
    String notes = (hasSteps ? ROUND + " " : "") + HANDLES + " " + CARE;
    lines.addAll(Wrapping.wrap("", "", notes, width));
    return lines;
  }

  /** What all setups together leave on, or take too much, against the drawing. */
  private List<String> against(int width) {
    List<String> lines = new ArrayList<>();
    for (Remainder.Layer layer : remainder.left()) {
      lines.addAll(
          Wrapping.wrap("", "    ", "Still on after the last setup: " + words(layer), width));
    }
    for (Remainder.Layer layer : remainder.over()) {
      lines.addAll(
          Wrapping.wrap("", "    ", "Taken where the drawing keeps metal: " + words(layer), width));
    }
    if (remainder.isNothing()) {
      lines.addAll(
          Wrapping.wrap(
              "",
              "    ",
              "After the last setup no hole, slot, pocket, step, corner, outline or window of the"
                  + " drawing is left to cut, and none is cut too deep.",
              width));
    }
    lines.add("");
    return lines;
  }

  private static String words(Remainder.Layer layer) {
    var middle = layer.region().getCentroid().getCoordinate();
    return String.format(
        Locale.ROOT,
        "%.1f mm2 (%.3f sq in) from %s to %s below the %s, about (%.1f, %.1f) mm from its low"
            + " edges",
        layer.area(),
        layer.area() / 645.16,
        LengthText.both(layer.depth().low()),
        LengthText.both(layer.depth().high()),
        layer.face().word(),
        middle.x,
        middle.y);
  }

  private List<String> lines(FeatureTable cut, int width) {
    String title = cut.setup().setup().words() + ", " + words(cut);
    Result result = cut.run().result();
    if (result instanceof Result.Steps steps) {
      return steps(title, cut, steps.table(), width);
    } else if (result instanceof Result.Lines way) {
      return way(title, cut, way.path(), width);
    }
    String why =
        result instanceof Result.None none
            ? ": no steps: " + none.reason()
            : ": along the edges; nothing to count";
    return Wrapping.wrap("", "    ", title + why, width);
  }

  private static String words(FeatureTable cut) {
    return cut.run().spec().featureKind().name().toLowerCase(Locale.ROOT)
        + " "
        + cut.run().spec().name();
  }

  private static String cutter(FeatureTable cut) {
    return cut.run().cutter() == null ? "" : cut.run().cutter().name() + ", ";
  }

  private static String levels(FeatureTable cut) {
    return cut.run().levels() == 1 ? "" : ", on each of " + cut.run().levels() + " levels";
  }

  // ---- Round a curve

  private static List<String> steps(String title, FeatureTable cut, StepTable table, int width) {
    Facts facts =
        new Facts(title)
            .add("cutter", cutter(cut) + around(table))
            .add("middle", middle(cut, "; set both dials to zero there"))
            .add("way in", FeatureWords.wayIn(cut.run()))
            .add("steps", table.steps() + levels(cut))
            .add("left on", LengthText.both(table.left()))
            .add("ridges", "at most " + LengthText.both(table.ridge()) + ridge(table))
            .add("bound", "nowhere more than " + LengthText.both(table.bound()) + " left");
    FeatureWords.slug(cut.run()).ifPresent(facts::note);
    List<String> lines = new ArrayList<>(facts.lines(width));
    lines.add("");
    lines.add("  no       X mm  turns  reads       Y mm  turns  reads  first  turns round");
    int number = 0;
    for (Station station : table.stations()) {
      lines.add(
          String.format(
                  Locale.ROOT,
                  "%4d %10s %6s %6s %10s %6s %6s  %-5s  %s",
                  number,
                  LengthText.number(station.x(), LengthUnit.MM, 3, 3),
                  station.dialX().countedTurns(),
                  station.dialX().reading().toPlainString(),
                  LengthText.number(station.y(), LengthUnit.MM, 3, 3),
                  station.dialY().countedTurns(),
                  station.dialY().reading().toPlainString(),
                  number == 0 ? "" : station.first().name(),
                  round(station.turnsRound()))
              .stripTrailing());
      number++;
    }
    return lines;
  }

  private static String around(StepTable table) {
    return FeatureWords.around(table);
  }

  private static String ridge(StepTable table) {
    return table.ridge().isMoreThan(table.wanted())
        ? "; the dials allow no less, wanted was " + LengthText.both(table.wanted())
        : table.left().isZero() ? ", to be filed away" : "";
  }

  private static Optional<String> middle(FeatureTable cut, String more) {
    FeatureTable.Middle middle = cut.middle();
    return middle == null
        ? Optional.empty()
        : Optional.of(
            place("X", middle.atX(), middle.x())
                + "; "
                + place("Y", middle.atY(), middle.y())
                + more);
  }

  private static String place(String axis, DialMove.Stop stop, AxisZero zero) {
    return axis
        + " "
        + LengthText.both(stop.asked())
        + " = "
        + stop.turns()
        + (Math.abs(stop.turns()) == 1 ? " turn + " : " turns + ")
        + stop.reading().toPlainString()
        + " from "
        + zero.words();
  }

  private static String round(List<Axis> axes) {
    return String.join(" ", axes.stream().map(axis -> "*" + axis.name()).toList());
  }

  // ---- Straight lines

  private List<String> way(String title, FeatureTable cut, CrankPath path, int width) {
    Facts facts =
        new Facts(title)
            .add("cutter", cutter(cut) + along(path))
            .add("depth", depth(cut))
            .add("middle", middle(cut, ""));
    if (cut.middle() == null) {
      facts.add("zero", "both dials at the middle, no other is in force");
    } else {
      facts.add("zero of X", cut.middle().x().counting());
      facts.add("zero of Y", cut.middle().y().counting());
    }
    facts
        .add("moves", path.moves() + levels(cut))
        .add("left on", LengthText.both(path.left()))
        .add("bound", "walls at most " + LengthText.both(cut.bound()) + " too tight");
    if (!path.ridge().isZero()) {
      facts.add("ridges", "round the corners at most " + LengthText.both(path.ridge()));
    }
    for (OpeningSize size : OpeningSize.of(cut, limits)) {
      facts.add(size.size().word(), size.words());
    }
    if (path.isClosed()) {
      cut.down().ifPresent(way -> facts.add("way down", way.words()));
    }
    List<String> lines = new ArrayList<>(facts.lines(width));
    lines.add("");
    lines.add("  no       X mm  turns  reads       Y mm  turns  reads  first  for    turns round");
    int number = 0;
    for (FeatureTable.Row row : cut.rows()) {
      lines.add(
          String.format(
                  Locale.ROOT,
                  "%4d %10s %6s %6s %10s %6s %6s  %-5s  %-5s  %s",
                  number,
                  LengthText.number(row.x().reached(), LengthUnit.MM, 3, 3),
                  row.x().countedTurns(),
                  row.x().reading().toPlainString(),
                  LengthText.number(row.y().reached(), LengthUnit.MM, 3, 3),
                  row.y().countedTurns(),
                  row.y().reading().toPlainString(),
                  row.first() == null ? "" : row.first().name(),
                  row.purpose() == Purpose.WALL ? "wall" : "clear",
                  round(row.turnsRound()))
              .stripTrailing());
      number++;
    }
    return lines;
  }

  private static String along(CrankPath path) {
    return path.direction() == CutDirection.CLIMB
        ? "climb: counter-clockwise along the walls seen from above"
        : "conventional: clockwise along the walls seen from above";
  }

  private static Optional<String> depth(FeatureTable cut) {
    return Optional.ofNullable(cut.run().drawn())
        .map(
            drawn ->
                drawn.isThrough()
                    ? "through, " + LengthText.both(drawn.depth())
                    : LengthText.both(drawn.depth()));
  }
}
