package org.handwheel.plan.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.LogSection;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Plan;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CutRun;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.DialMoves;
import org.handwheel.work.Drawing;
import org.handwheel.work.Engine;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/**
 * What the last reading of a log leads to: the next cut on that size in the same setup.
 *
 * @param reading what was measured
 * @param demand what the drawing asks of that size, if it does
 * @param cut the next cut on that size in the setup, if there is one
 * @param move how its dial is set, if that can be told
 */
public record NextCut(
    Reading reading,
    Drawing.@Nullable Demand demand,
    @Nullable CutRun cut,
    @Nullable DialMove move) {

  /** After the last reading of a log; nothing if the log has none that a measurement waits for. */
  public static Optional<NextCut> after(Plan plan, LogSection log, StandardTables tables) {
    if (log.readings().isEmpty()) {
      return Optional.empty();
    }
    Reading last = log.readings().get(log.readings().size() - 1);
    PlanRun run = Engine.run(plan, log, tables);
    for (SetupRun setup : run.knownSetups().toList()) {
      for (int i = 0; i < setup.steps().size(); i++) {
        if (last.equals(setup.steps().get(i).reading())) {
          return Optional.of(after(run, setup, i, last));
        }
      }
    }
    return Optional.empty();
  }

  private static NextCut after(PlanRun run, SetupRun setup, int measured, Reading reading) {
    Drawing.Demand demand = run.drawing().demand(reading.dimension());
    for (int i = measured + 1; i < setup.steps().size(); i++) {
      StepRun step = setup.steps().get(i);
      CutRun cut = step.cut();
      if (cut != null && cut.face().dimension() == reading.dimension()) {
        return new NextCut(reading, demand, cut, DialMoves.of(run, setup, i).orElse(null));
      }
    }
    return new NextCut(reading, demand, null, null);
  }

  /** What to know at the machine, a sentence each. */
  public List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    String size = reading.dimension().word();
    if (cut == null) {
      finished().ifPresent(sentences::add);
      return sentences;
    }
    Length goal = cut.goal();
    String what = "Next, " + cut.cut().origin().text().strip() + ": ";
    if (goal == null) {
      sentences.add(what + "a skim, until the marks are gone.");
      return sentences;
    }
    Length most = highest();
    if (!most.isMoreThan(goal)) {
      sentences.add(
          "The "
              + size
              + " is at most "
              + LengthText.both(most)
              + ", and this cut goes to "
              + LengthText.both(goal)
              + ": nothing is left for it.");
      return sentences;
    }
    sentences.add(
        what + LengthText.range(cut.removal()) + " to come off, to " + LengthText.both(goal) + ".");
    if (move != null) {
      sentences.add(dial(move));
    }
    return sentences;
  }

  private Length highest() {
    return reading.values().stream().reduce(Length::max).orElseThrow();
  }

  private Optional<String> finished() {
    if (demand == null) {
      return Optional.empty();
    }
    boolean within = reading.values().stream().allMatch(demand.limits()::contains);
    return Optional.of(
        "No further cut on the "
            + reading.dimension().word()
            + " in this setup; the drawing asks for "
            + LengthText.range(demand.limits())
            + ": "
            + (within ? "within." : "not within."));
  }

  private static String dial(DialMove move) {
    String axis = move.axis().name();
    boolean isFromZero = !(move.start() instanceof Start.LastCut last) || last.reading() != null;
    String way = move.turn() == null ? "" : " " + move.turn().words();
    return isFromZero
        ? axis + " dial: stop at " + words(move.last()) + " from its zero" + way + "."
        : axis
            + " dial: wind in "
            + words(move.wind())
            + " from where the last cut left it"
            + way
            + ".";
  }

  private static String words(Stop stop) {
    String reading = stop.reading().toPlainString();
    return stop.turns() == 0
        ? reading
        : (stop.turns() == 1 ? "1 turn" : stop.turns() + " turns") + " + " + reading;
  }
}
