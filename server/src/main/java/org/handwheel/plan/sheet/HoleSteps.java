package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Step;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.LengthText;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.CoordinateTable.Operation;
import org.handwheel.work.hole.HoleCalculator;
import org.handwheel.work.hole.HoleConditions;

/** What each tool of a line on holes does, in words. */
final class HoleSteps {
  private HoleSteps() {}

  /** One fact for each tool, and the speeds and feeds to start with. */
  static List<Fact> facts(
      PlanRun run, StepRun step, List<CoordinateTable> tables, StandardTables standards) {
    List<Fact> facts = new ArrayList<>();
    if (!(step.step() instanceof Step.HoleCut cut)) {
      return facts;
    }
    for (CoordinateTable table : tables) {
      for (Operation operation : table.operations()) {
        if (operation.cut().equals(cut)) {
          facts.add(new Fact("Tool", words(operation)));
        }
      }
    }
    for (HoleCalculator.Group group : HoleCalculator.of(run, step, standards)) {
      String rates = rates(group.conditions());
      if (!rates.isEmpty()) {
        facts.add(new Fact("Start with", group.conditions().asked().bit().name() + ": " + rates));
      }
    }
    return facts;
  }

  private static String words(Operation operation) {
    StringBuilder words = new StringBuilder(operation.bit().name());
    if (operation.bit().dia() != null && !operation.bit().name().contains(" mm")) {
      words.append(", ").append(LengthText.both(operation.bit().dia()));
    }
    words.append(", in ").append(String.join(", ", operation.holes()));
    if (operation.depth() != null) {
      words.append(
          operation.through()
              ? ": through"
              : ": " + LengthText.both(operation.depth()) + deep(operation));
    }
    if (operation.stop() != null && operation.cut().verb() == Step.HoleVerb.COUNTERSINK) {
      // Its point goes further down than that; where the cone meets the bore's rim is what counts.
      words.append(", counted from the rim: Z ").append(Words.winding(operation.stop()));
      words.append(" from where its cone touches the rim of the hole");
    } else if (operation.tip() != null && operation.stop() != null) {
      words.append(", its end ").append(LengthText.both(operation.tip()));
      words.append(" below the face: Z ").append(Words.winding(operation.stop()));
      words.append(" from where this tool touches the face");
    }
    return words.toString();
  }

  private static String deep(Operation operation) {
    return operation.cut().verb() == Step.HoleVerb.COUNTERSINK ? " deep" : " deep at full diameter";
  }

  private static String rates(HoleConditions found) {
    List<String> words = new ArrayList<>();
    if (found.asked().byHand()) {
      words.add("by hand");
    } else if (found.spindle() != null) {
      words.add(Words.rpm(found.spindle().turnsPerMinute()));
    }
    if (found.down() != null) {
      words.add(
          Words.feed(found.down().millimetresPerMinute())
              + Words.perTurn(found.down().hand(), Axis.Z));
    }
    if (found.pecks() > 1) {
      words.add("out for chips, in " + found.pecks() + " goes");
    }
    return String.join("; ", words);
  }
}
