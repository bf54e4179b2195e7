package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.OutlineTable;
import org.handwheel.units.LengthText;
import org.handwheel.work.Dial;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.outline.OutlineCut;
import org.handwheel.work.outline.StepTable;

/** The ways round the outlines of a setup. */
final class OutlineTables {
  private OutlineTables() {}

  static List<OutlineTable> of(PlanRun run, SetupRun setup) {
    return OutlineCut.all(run).stream()
        .filter(cut -> cut.setup().equals(setup))
        .map(OutlineTables::table)
        .toList();
  }

  private static OutlineTable table(OutlineCut cut) {
    String title =
        "Outline "
            + cut.outline().name()
            + (cut.cutter() == null ? "" : ", cutter " + cut.cutter().name());
    if (cut.result() instanceof OutlineCut.Result.None none) {
      return new OutlineTable(title, none.reason(), List.of(), List.of());
    }
    StepTable table = ((OutlineCut.Result.Steps) cut.result()).table();
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "Way",
            table.direction() == CutDirection.CLIMB
                ? "climb: clockwise round the work seen from above"
                : "conventional: counter-clockwise round the work seen from above"));
    if (cut.levels() > 1) {
      facts.add(new Fact("Levels", cut.levels() + ", the whole way round on each"));
    }
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
