package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.handwheel.model.Step;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.OutlineTable;
import org.handwheel.units.LengthText;
import org.handwheel.work.Dial;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.outline.StepTable;

/** The ways round the outlines of a setup. */
final class OutlineTables {
  private OutlineTables() {}

  static List<OutlineTable> of(PlanRun run, SetupRun setup) {
    return FeatureTable.all(run).stream()
        .filter(cut -> cut.setup().equals(setup))
        .map(OutlineTables::table)
        .toList();
  }

  private static OutlineTable table(FeatureTable cut) {
    String title =
        cut.step().step() instanceof Step.FeatureCut feature
            ? Words.capital(feature.verb().name().toLowerCase(Locale.ROOT))
                + " "
                + feature.feature().value()
            : "Feature";
    Result result = cut.run().result();
    if (result instanceof Result.Steps steps) {
      return steps(title, steps.table(), cut);
    }
    if (result instanceof Result.Lines) {
      return new OutlineTable(title, null, List.of(counts(cut, "middle")), lines(cut));
    }
    String why =
        result instanceof Result.None none ? none.reason() : "along the edges; nothing to count";
    return new OutlineTable(title, why, List.of(), List.of());
  }

  private static Fact counts(FeatureTable cut, String otherwise) {
    FeatureTable.Middle middle = cut.middle();
    return new Fact(
        "Counts from",
        middle == null
            ? "zero at the " + otherwise
            : "X: " + middle.x().words() + "; Y: " + middle.y().words());
  }

  private static List<OutlineTable.Station> lines(FeatureTable cut) {
    List<OutlineTable.Station> stations = new ArrayList<>();
    for (FeatureTable.Row row : cut.rows()) {
      stations.add(
          new OutlineTable.Station(
              row.x().reached(),
              row.y().reached(),
              Words.turns(row.x()),
              Words.mark(row.x()),
              Words.turns(row.y()),
              Words.mark(row.y()),
              row.first() == null ? "" : row.first().name(),
              row.turnsRound().stream().map(Enum::name).collect(Collectors.joining(" "))));
    }
    return stations;
  }

  private static OutlineTable steps(String title, StepTable table, FeatureTable cut) {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "Way",
            table.direction() == CutDirection.CLIMB
                ? "climb: clockwise round the work seen from above"
                : "conventional: counter-clockwise round the work seen from above"));
    if (cut.run().levels() > 1) {
      facts.add(new Fact("Levels", cut.run().levels() + ", the whole way round on each"));
    }
    FeatureTable.Middle middle = cut.middle();
    facts.add(
        new Fact(
            "Counts from",
            "zero at the outline's middle"
                + (middle == null
                    ? ""
                    : ", which is at X "
                        + Words.winding(middle.atX())
                        + ", Y "
                        + Words.winding(middle.atY())
                        + " from the zeros that were found")));
    facts.add(new Fact("Left on", LengthText.both(table.left())));
    facts.add(
        new Fact(
            "Surface",
            "nowhere more than " + LengthText.both(table.bound()) + " above the finished outline"));
    List<OutlineTable.Station> stations = new ArrayList<>();
    for (StepTable.Station station : table.stations()) {
      stations.add(station(station, stations.isEmpty() ? "" : station.first().name()));
    }
    return new OutlineTable(title, null, facts, stations);
  }

  private static OutlineTable.Station station(StepTable.Station station, String first) {
    return new OutlineTable.Station(
        station.x(),
        station.y(),
        turns(station.dialX()),
        station.dialX().reading().toPlainString(),
        turns(station.dialY()),
        station.dialY().reading().toPlainString(),
        first,
        station.turnsRound().stream().map(Enum::name).collect(Collectors.joining(" ")));
  }

  /** Whole turns away from zero; below zero the count runs down. */
  private static String turns(Dial.Setting setting) {
    long down = setting.reading().signum() == 0 ? setting.turns() : setting.turns() + 1;
    return setting.divisions() < 0 ? "-" + -down : Long.toString(setting.turns());
  }
}
