package org.handwheel.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.model.Step;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/**
 * The lines of one setup that rules about the whole plan ask for.
 *
 * @param cuts the cuts that could be worked out
 * @param unknownCuts how many could not
 * @param facesToCut the faces of all cuts, worked out or not
 * @param finished the faces that a finishing cut brings to size
 */
record SetupLines(
    List<CutRun> cuts,
    int unknownCuts,
    List<Line> onHoles,
    List<Line> onFeatures,
    Set<Face> facesToCut,
    Set<Face> finished) {
  /** A line with its setup. */
  record Line(SetupRun setup, StepRun step) {}

  static SetupLines of(SetupRun setup) {
    List<CutRun> cuts = new ArrayList<>();
    int unknownCuts = 0;
    List<Line> onHoles = new ArrayList<>();
    List<Line> onFeatures = new ArrayList<>();
    Set<Face> toCut = EnumSet.noneOf(Face.class);
    Set<Face> finished = EnumSet.noneOf(Face.class);
    for (StepRun step : setup.steps()) {
      CutRun cut = step.cut();
      if (cut != null) {
        cuts.add(cut);
        if (cut.cut().purpose() instanceof Step.Purpose.Finish) {
          finished.add(cut.face());
        }
      }
      if (step.step() instanceof Step.Cut planned) {
        toCut.add(planned.face());
        unknownCuts += cut == null ? 1 : 0;
      }
      if (step.holes() != null) {
        onHoles.add(new Line(setup, step));
      }
      if (step.feature() != null) {
        onFeatures.add(new Line(setup, step));
      }
    }
    return new SetupLines(
        List.copyOf(cuts),
        unknownCuts,
        List.copyOf(onHoles),
        List.copyOf(onFeatures),
        toCut,
        finished);
  }
}
