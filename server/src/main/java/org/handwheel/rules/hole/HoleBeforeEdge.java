package org.handwheel.rules.hole;

import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.hole.Coordinates;
import org.handwheel.work.hole.HoleRun;
import org.jspecify.annotations.Nullable;

/** A hole placed from an edge that is cut only afterwards, and then lies elsewhere. */
public final class HoleBeforeEdge extends SimpleRule {
  public HoleBeforeEdge() {
    super("hole-before-edge", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.wholeSetups()) {
      for (StepRun step : setup.steps()) {
        boolean cutsHoles = step.holes() != null && !step.holes().holes().isEmpty();
        if (cutsHoles && check(checkup, setup, step, out)) {
          break;
        }
      }
    }
  }

  private boolean check(Checkup checkup, SetupRun setup, StepRun step, Consumer<Finding> out) {
    HoleRun made = step.holes();
    for (Axis axis : new Axis[] {Axis.X, Axis.Y}) {
      AxisZero zero = Coordinates.zero(checkup.run(), setup, step, axis);
      Face edge = zero == null ? null : zero.edge();
      CutRun later = edge == null ? null : laterCut(checkup, step, edge);
      if (zero != null && edge != null && later != null && made != null) {
        out.accept(
            finding(
                step.step().origin(),
                "the place of `"
                    + made.holes().get(0).name()
                    + "` is counted from the "
                    + edge.word()
                    + " edge, but up to "
                    + later.removal().high()
                    + " comes off there afterwards",
                new Related(zero.origin(), "the edge is found here"),
                new Related(later.cut().origin(), "and cut here")));
        return true;
      }
    }
    return false;
  }

  private static @Nullable CutRun laterCut(Checkup checkup, StepRun hole, Face edge) {
    boolean after = false;
    for (SetupRun setup : checkup.wholeSetups()) {
      for (StepRun step : setup.steps()) {
        CutRun cut = step.cut();
        if (step.step().equals(hole.step())) {
          after = true;
        } else if (after
            && cut != null
            && cut.face() == edge
            && cut.removal().high().isPositive()) {
          return cut;
        }
      }
    }
    return null;
  }
}
