package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.plan.sheet.Sheet.Expected;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.DialMove;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** A cut over a face, in words. */
final class CutSteps {
  private CutSteps() {}

  static String action(Step.Cut cut, @Nullable CutRun run) {
    String face = "the " + cut.face().word();
    Step.Purpose purpose = cut.purpose();
    if (purpose instanceof Step.Purpose.Clean clean) {
      return "Skim "
          + face
          + " until the marks are gone, "
          + LengthText.both(clean.at().value())
          + " at a time, at most "
          + LengthText.both(clean.atMost().value())
          + " in all";
    }
    String dimension = cut.face().dimension().word();
    String goal =
        run == null || run.goal() == null
            ? ""
            : " to " + dimension + " " + LengthText.both(run.goal());
    if (purpose instanceof Step.Purpose.Rough rough) {
      String left =
          rough.leaving() == null
              ? ""
              : ": that leaves " + LengthText.both(rough.leaving().value()) + " for finishing";
      return "Rough " + face + goal + left;
    }
    return "Finish " + face + goal;
  }

  static @Nullable Expected expected(PlanRun plan, @Nullable CutRun cut) {
    if (cut == null) {
      return null;
    }
    boolean finished = cut.cut().purpose() instanceof Step.Purpose.Finish;
    Drawing.Demand demand = plan.drawing().demand(cut.face().dimension());
    LengthRange limits = finished && demand != null ? demand.limits() : null;
    return new Expected(cut.face().dimension(), cut.after().range(), limits);
  }

  static List<Fact> facts(PlanRun plan, StepRun step, @Nullable DialMove move) {
    List<Fact> facts = new ArrayList<>();
    CutRun cut = step.cut();
    Owned.Machine machine = plan.plan().machine();
    if (cut == null) {
      if (step.feature() != null) {
        CuttingCalculator.of(plan, step).ifPresent(found -> rates(found, facts));
      }
      return facts;
    }
    if (move != null) {
      facts.add(new Fact("Wind in", Words.handle(move.cutter(), machine)));
      facts.add(new Fact("Slack", slack(move)));
    }
    facts.add(new Fact("Lock", Words.axes(cut.locks())));
    String offset =
        cut.cut().offset() == null
            ? ""
            : ", its middle "
                + LengthText.both(cut.cut().offset().value().distance())
                + " off the middle of the work toward "
                + Words.side(cut.cut().offset().value().toward());
    facts.add(
        new Fact(
            "Cutter goes",
            "from "
                + Words.place(cut.travel().opposite())
                + " to "
                + Words.place(cut.travel())
                + " over the work, "
                + cut.engagement().words()
                + offset
                + "; "
                + Words.handle(cut.travel(), machine)));
    if (cut.cut().stepOver() != null) {
      facts.add(
          new Fact("Lanes", LengthText.both(cut.cut().stepOver().value()) + " from lane to lane"));
    }
    if (cut.cut().springPasses() > 0) {
      facts.add(
          new Fact(
              "Again",
              cut.cut().springPasses() + " more over the work with the dial as it stands"));
    }
    CuttingCalculator.of(plan, step).ifPresent(found -> rates(found, facts));
    return facts;
  }

  private static void rates(CuttingConditions found, List<Fact> facts) {
    if (found.spindle() == null) {
      return;
    }
    String words = Words.rpm(found.spindle().turnsPerMinute());
    if (found.table() != null) {
      words +=
          "; "
              + Words.feed(found.table().millimetresPerMinute())
              + Words.perTurn(found.table().hand(), found.asked().travel());
    }
    facts.add(new Fact("Start with", words));
  }

  private static String slack(DialMove move) {
    String takeUp = LengthText.both(move.takeUp());
    return switch (move.loading()) {
      case SAME_SIDE -> "taken up already; if you wind past, back off " + takeUp + " and come in";
      case OTHER_SIDE ->
          "the zero came from the other side: clear of the work, run past by "
              + takeUp
              + " and come back";
      case UNKNOWN -> "back off " + takeUp + " and come in";
    };
  }
}
