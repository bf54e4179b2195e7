package org.handwheel.ide;

import java.util.Locale;
import java.util.Optional;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.LengthText;
import org.handwheel.work.DialMove;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.CrankPath;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.FeatureWords;
import org.handwheel.work.feature.OpeningSize;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.outline.RoundOutline;
import org.handwheel.work.outline.StepTable;

/** What is told of a line that cuts a slot, pocket or outline. */
final class FeatureHover {
  private FeatureHover() {}

  static Optional<HoverText> text(PlanRun run, SetupRun setup, StepRun step) {
    return FeatureTable.of(run, setup, step).map(table -> text(run, table));
  }

  private static HoverText text(PlanRun plan, FeatureTable table) {
    FeatureRun run = table.run();
    HoverText.Builder text =
        HoverText.titled(
            run.spec().featureKind().name().toLowerCase(Locale.ROOT) + " " + run.spec().name());
    if (run.cutter() != null) {
      text.fact(
          "Cutter", run.cutter().name() + ", " + LengthText.both(run.cutter().dia()) + " across");
    }
    if (run.drawn() != null) {
      text.fact(
          "Depth",
          (run.drawn().isThrough() ? "through, " : "")
              + LengthText.both(run.drawn().depth())
              + (run.levels() == 1 ? "" : ", on " + run.levels() + " levels"));
    }
    if (run.result() instanceof Result.Steps steps) {
      addSteps(text, steps.table());
      FeatureWords.wayIn(run).ifPresent(words -> text.fact("Way in", words));
      FeatureWords.slug(run).ifPresent(text::note);
    } else if (run.result() instanceof Result.Lines lines) {
      addLines(text, table, lines.path());
      OpeningSize.of(table, plan.plan().shop().limits())
          .forEach(size -> text.fact(capital(size.size().word()) + " becomes", size.words()));
    } else if (run.result() instanceof Result.None none) {
      text.note("No stops can be given: " + none.reason() + ".");
    }
    FeatureTable.Middle middle = table.middle();
    if (middle != null) {
      text.fact("Middle in X", place(middle.atX(), middle.x()));
      text.fact("Middle in Y", place(middle.atY(), middle.y()));
    }
    run.bite().ifPresent(bite -> text.fact("Takes", bite.words()));
    CuttingAdvice.of(plan, table.step()).ifPresent(advice -> advice.add(text));
    if (run.refusal().isEmpty() && !(run.result() instanceof Result.AlongEdges)) {
      text.markup("All stops: `handwheel steps`.");
    }
    return text.build();
  }

  private static void addSteps(HoverText.Builder text, StepTable table) {
    text.fact("Steps", Integer.toString(table.steps()));
    text.fact("Way", FeatureWords.around(table));
    text.fact(
        "Ridges between steps",
        "at most "
            + LengthText.both(table.ridge())
            + (table.ridge().isMoreThan(table.wanted())
                ? "; the dials allow no less, wanted was " + LengthText.both(table.wanted())
                : ""));
    text.fact("Left at most", LengthText.both(table.bound()));
    if (table.outline() instanceof RoundOutline) {
      text.formula(
          "ridge = (R + r)·cos(θ/2) − √(r² − (R + r)²·sin²(θ/2)) − R, with θ between stops");
    }
  }

  private static void addLines(HoverText.Builder text, FeatureTable table, CrankPath path) {
    boolean climb = path.direction() == CutDirection.CLIMB;
    text.fact("Moves", Integer.toString(path.moves()));
    text.fact(
        "Way along the walls",
        climb
            ? "climb: counter-clockwise, seen from above"
            : "conventional: clockwise, seen from above");
    if (!path.ridge().isZero()) {
      text.fact("Ridges round the corners", "at most " + LengthText.both(path.ridge()));
    }
    text.fact("Left at the walls", "at most " + LengthText.both(table.bound()));
    if (path.isClosed()) {
      table.down().ifPresent(way -> text.fact("Way down", way.words()));
    }
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  private static String place(DialMove.Stop stop, AxisZero zero) {
    return LengthText.both(stop.asked())
        + " = "
        + stop.turns()
        + " turns + "
        + stop.reading().toPlainString()
        + " from "
        + zero.words();
  }
}
