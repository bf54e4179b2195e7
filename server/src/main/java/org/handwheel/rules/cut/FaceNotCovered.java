package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bench;
import org.handwheel.work.CutRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** A strip of the face that the cutter never reaches. */
public final class FaceNotCovered extends SimpleRule implements EachSetup {
  public FaceNotCovered() {
    super("face-not-covered", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().knownSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    for (StepRun step : setup.steps()) {
      if (step.cut() != null
          && step.cut().mode() == CutRun.Mode.END
          && step.cut().uncovered().isPositive()) {
        out.accept(strip(step.cut(), step.benchBefore()));
      }
    }
    Face.all().forEach(face -> checkWall(setup, face, out));
  }

  /**
   * A wall may be cut at several levels, one below the other: only the deepest has to reach its
   * foot, and it is enough to say so once.
   */
  private void checkWall(SetupRun setup, Face wall, Consumer<Finding> out) {
    StepRun deepest = null;
    CutRun deepestCut = null;
    for (StepRun step : setup.steps()) {
      CutRun cut = step.cut();
      if (cut == null || cut.face() != wall || cut.mode() == CutRun.Mode.END) {
        continue;
      }
      if (deepestCut == null || cut.uncovered().isLessThan(deepestCut.uncovered())) {
        deepest = step;
        deepestCut = cut;
      }
    }
    if (deepest != null && deepestCut != null && deepestCut.uncovered().isPositive()) {
      out.accept(shallow(deepestCut, deepest.benchBefore()));
    }
  }

  private Finding strip(CutRun cut, Bench bench) {
    Origin origin = cut.cut().offset() == null ? cut.cut().origin() : cut.cut().offset().origin();
    String cure =
        cut.cut().stepOver() != null
            ? "; step over less, or shift the lanes less"
            : "; take a wider cutter, less offset or several lanes: `step over`";
    return finding(
        origin,
        "a strip "
            + cut.uncovered()
            + " wide of the "
            + cut.face().word()
            + " is not covered: `"
            + cut.cutter().name()
            + "` is "
            + cut.cutter().dia()
            + " across"
            + (cut.cutter().corner().isPositive()
                ? " with corners of " + cut.cutter().corner()
                : "")
            + cure,
        new Related(
            bench.cutter() == null ? cut.cutter().origin() : bench.cutter().origin(),
            "the cutter is chosen here"));
  }

  private Finding shallow(CutRun cut, Bench bench) {
    return finding(
        cut.cut().origin(),
        "the lowest "
            + cut.uncovered()
            + " of the "
            + cut.face().word()
            + " stay uncut, as the cutter ends above; set z deeper",
        new Related(
            bench.depthSet() == null ? cut.cut().origin() : bench.depthSet().origin(),
            "the depth is set here"));
  }
}
