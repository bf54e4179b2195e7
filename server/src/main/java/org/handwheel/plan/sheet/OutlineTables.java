package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.handwheel.model.Axis;
import org.handwheel.model.Limits;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.OutlineTable;
import org.handwheel.plan.sheet.Sheet.OutlineTable.Station;
import org.handwheel.units.LengthText;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.feature.CrankPath;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.FeatureWords;
import org.handwheel.work.feature.OpeningSize;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.outline.StepTable;

/** The ways round the outlines of a setup, and through its slots, pockets and steps. */
final class OutlineTables {
  private OutlineTables() {}

  static List<OutlineTable> of(PlanRun run, SetupRun setup) {
    return setup.steps().stream()
        .flatMap(step -> FeatureTable.of(run, setup, step).stream())
        .map(table -> table(table, run.plan().shop().limits()))
        .toList();
  }

  private static OutlineTable table(FeatureTable cut, Limits limits) {
    String kind = cut.run().spec().featureKind().name().toLowerCase(Locale.ROOT);
    String title =
        kind.substring(0, 1).toUpperCase(Locale.ROOT)
            + kind.substring(1)
            + " "
            + cut.run().spec().name()
            + (cut.run().cutter() == null ? "" : ", cutter " + cut.run().cutter().name());
    Result result = cut.run().result();
    if (result instanceof Result.Steps steps) {
      return round(title, cut, steps.table());
    }
    if (result instanceof Result.Lines lines) {
      return straight(title, cut, lines.path(), limits);
    }
    String none =
        result instanceof Result.None refused
            ? refused.reason()
            : "the cutter runs along the edges; there is nothing to count";
    return new OutlineTable(title, none, List.of(), List.of());
  }

  // ---- Round a curve

  private static OutlineTable round(String title, FeatureTable cut, StepTable table) {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact("Way", FeatureWords.around(table)));
    FeatureWords.wayIn(cut.run()).ifPresent(words -> facts.add(new Fact("Way in", words)));
    FeatureWords.slug(cut.run()).ifPresent(words -> facts.add(new Fact("Caution", words)));
    levels(facts, cut);
    facts.add(
        new Fact("Counted from", "its middle: both dials at zero there, then count" + middle(cut)));
    facts.add(new Fact("Left on", LengthText.both(table.left())));
    facts.add(
        new Fact(
            "Surface",
            "nowhere more than " + LengthText.both(table.bound()) + " above the finished form"));
    List<Station> stations = new ArrayList<>();
    for (StepTable.Station station : table.stations()) {
      stations.add(
          new Station(
              station.x(),
              station.y(),
              station.dialX().countedTurns(),
              station.dialX().reading().toPlainString(),
              station.dialY().countedTurns(),
              station.dialY().reading().toPlainString(),
              stations.isEmpty() ? "" : station.first().name(),
              names(station.turnsRound())));
    }
    return new OutlineTable(title, null, facts, stations);
  }

  private static String middle(FeatureTable cut) {
    FeatureTable.Middle middle = cut.middle();
    return middle == null
        ? ""
        : "; the middle is at "
            + place(middle.atX(), "X", middle.x())
            + ", "
            + place(middle.atY(), "Y", middle.y());
  }

  private static String place(Stop stop, String axis, AxisZero zero) {
    return axis
        + " "
        + LengthText.both(stop.asked())
        + " ("
        + Words.counted(stop)
        + ") from "
        + zero.words();
  }

  // ---- Straight lines

  private static OutlineTable straight(
      String title, FeatureTable cut, CrankPath path, Limits limits) {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "Way",
            path.direction() == CutDirection.CLIMB
                ? "climb: counter-clockwise along the walls seen from above"
                : "conventional: clockwise along the walls seen from above"));
    levels(facts, cut);
    FeatureTable.Middle middle = cut.middle();
    facts.add(
        new Fact(
            "Counted from",
            middle == null
                ? "its middle: both dials at zero there"
                : "the zeros in force: X at "
                    + middle.x().words()
                    + ", Y at "
                    + middle.y().words()));
    facts.add(new Fact("Left on", LengthText.both(path.left())));
    facts.add(new Fact("Walls", "at most " + LengthText.both(cut.bound()) + " too tight"));
    for (OpeningSize size : OpeningSize.of(cut, limits)) {
      facts.add(new Fact(Words.capital(size.size().word()), size.words()));
    }
    if (path.isClosed()) {
      cut.down().ifPresent(way -> facts.add(new Fact("Going in", way.words())));
    }
    List<Station> stations = new ArrayList<>();
    for (FeatureTable.Row row : cut.rows()) {
      stations.add(
          new Station(
              row.x().reached(),
              row.y().reached(),
              row.x().countedTurns(),
              row.x().reading().toPlainString(),
              row.y().countedTurns(),
              row.y().reading().toPlainString(),
              row.first() == null ? "" : row.first().name(),
              names(row.turnsRound())));
    }
    return new OutlineTable(title, null, facts, stations);
  }

  // ---- Words

  private static void levels(List<Fact> facts, FeatureTable cut) {
    if (cut.run().levels() > 1) {
      facts.add(new Fact("Levels", cut.run().levels() + ", the whole way on each"));
    }
  }

  private static String names(List<Axis> axes) {
    return axes.stream().map(Enum::name).collect(Collectors.joining(" "));
  }
}
