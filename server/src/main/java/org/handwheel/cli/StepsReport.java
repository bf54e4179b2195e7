package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.model.Axis;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Dial;
import org.handwheel.work.outline.OutlineCut;
import org.handwheel.work.outline.StepTable;
import org.handwheel.work.outline.StepTable.Station;
import org.jspecify.annotations.Nullable;

/** Step tables as text and as JSON. */
final class StepsReport {
  private static final List<String> SOURCES =
      List.of("geometry: the true parallel curve; rounding toward metal left on: common practice");

  private final String plan;
  private final List<OutlineCut> cuts;

  StepsReport(String plan, List<OutlineCut> cuts) {
    this.plan = plan;
    this.cuts = cuts;
  }

  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    if (cuts.isEmpty()) {
      lines.add(plan + ": no outline is cut by steps");
      return lines;
    }
    for (OutlineCut cut : cuts) {
      if (!lines.isEmpty()) {
        lines.add("");
      }
      lines.addAll(lines(cut, width));
    }
    lines.add("");
    lines.addAll(
        Wrapping.wrap(
            "",
            "",
            "Both dials are at zero at the outline's middle and count up as the cutter goes right"
                + " and away from you; turns are whole turns from zero, with the mark to stop at."
                + " Turn the handle under `first` before the other one: that way the cutter keeps"
                + " off the finished outline. At `*` a handle turns the other way from here on:"
                + " take up its slack before counting. Come to the first station from outside."
                + " Eye protection on, work clamped, the machine maker's manual and local rules"
                + " come first.",
            width));
    return lines;
  }

  private static List<String> lines(OutlineCut cut, int width) {
    String title = cut.setup().setup().words() + ", outline " + cut.outline().name();
    if (cut.result() instanceof OutlineCut.Result.None none) {
      return Wrapping.wrap("", "    ", title + ": no steps: " + none.reason(), width);
    }
    StepTable table = ((OutlineCut.Result.Steps) cut.result()).table();
    Facts facts =
        new Facts(title)
            .add("cutter", (cut.cutter() == null ? "" : cut.cutter().name() + ", ") + way(table))
            .add("steps", table.steps() + levels(cut))
            .add("left on", LengthText.both(table.left()))
            .add("ridges", "at most " + LengthText.both(table.ridge()) + ridge(table))
            .add("bound", "nowhere more than " + LengthText.both(table.bound()) + " left");
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
                  turns(station.dialX()),
                  station.dialX().reading().toPlainString(),
                  LengthText.number(station.y(), LengthUnit.MM, 3, 3),
                  turns(station.dialY()),
                  station.dialY().reading().toPlainString(),
                  number == 0 ? "" : station.first().name(),
                  round(station))
              .stripTrailing());
      number++;
    }
    return lines;
  }

  private static String way(StepTable table) {
    return table.direction() == CutDirection.CLIMB
        ? "climb: clockwise round the work seen from above"
        : "conventional: counter-clockwise round the work seen from above";
  }

  private static String levels(OutlineCut cut) {
    return cut.levels() == 1 ? "" : ", on each of " + cut.levels() + " levels";
  }

  private static String ridge(StepTable table) {
    return table.ridge().isMoreThan(table.wanted())
        ? "; the dials allow no less, wanted was " + LengthText.both(table.wanted())
        : table.left().isZero() ? ", to be filed away" : "";
  }

  private static String round(Station station) {
    return String.join(" ", station.turnsRound().stream().map(axis -> "*" + axis.name()).toList());
  }

  /** Whole turns away from zero; below zero the count runs down. */
  private static String turns(Dial.Setting setting) {
    long down = setting.reading().signum() == 0 ? setting.turns() : setting.turns() + 1;
    return setting.divisions() < 0 ? "-" + -down : Long.toString(setting.turns());
  }

  // ---- JSON

  private record Document(int version, List<String> sources, String plan, List<Outline> outlines) {}

  private record Size(double mm, double in) {
    static Size of(Length length) {
      return new Size(
          Double.parseDouble(LengthText.number(length, LengthUnit.MM, 4, 0)),
          Double.parseDouble(LengthText.number(length, LengthUnit.IN, 5, 0)));
    }
  }

  private record Outline(
      String setup,
      String name,
      @Nullable String cutter,
      @Nullable String none,
      @Nullable String direction,
      @Nullable Integer steps,
      long levels,
      @Nullable Size left,
      @Nullable Size ridge,
      @Nullable Size bound,
      List<Stop> stations) {}

  private record Stop(Mark x, Mark y, String first, List<String> turnsRound) {}

  private record Mark(Size at, long divisions, double reads) {}

  String json() {
    return Json.of(new Document(1, SOURCES, plan, cuts.stream().map(StepsReport::json).toList()));
  }

  private static Outline json(OutlineCut cut) {
    String cutter = cut.cutter() == null ? null : cut.cutter().name();
    String name = cut.outline().name();
    String setup = cut.setup().setup().words();
    if (cut.result() instanceof OutlineCut.Result.None none) {
      return new Outline(
          setup,
          name,
          cutter,
          none.reason(),
          null,
          null,
          cut.levels(),
          null,
          null,
          null,
          List.of());
    }
    StepTable table = ((OutlineCut.Result.Steps) cut.result()).table();
    return new Outline(
        setup,
        name,
        cutter,
        null,
        table.direction().name().toLowerCase(Locale.ROOT),
        table.steps(),
        cut.levels(),
        Size.of(table.left()),
        Size.of(table.ridge()),
        Size.of(table.bound()),
        table.stations().stream().map(StepsReport::stop).toList());
  }

  private static Stop stop(Station station) {
    return new Stop(
        mark(station.x(), station.dialX()),
        mark(station.y(), station.dialY()),
        word(station.first()),
        station.turnsRound().stream().map(StepsReport::word).toList());
  }

  private static Mark mark(Length length, Dial.Setting dial) {
    return new Mark(Size.of(length), dial.divisions(), dial.reading().doubleValue());
  }

  private static String word(Axis axis) {
    return axis.name().toLowerCase(Locale.ROOT);
  }
}
