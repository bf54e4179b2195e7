package org.handwheel.rules.feature;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureRun.Refusal;
import org.handwheel.work.feature.FeatureRun.Result;

/** A pocket, slot, outline or window whose corners or hollows are tighter than its cutter. */
public final class PocketCorner extends SimpleRule implements EachSetup {
  public PocketCorner() {
    super("pocket-corner", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    FeatureLines.forEach(
        checkup,
        (setup, step) -> {
          FeatureRun run = step.feature();
          if (run != null
              && run.result() instanceof Result.None none
              && none.refusal() == Refusal.CORNER_TOO_TIGHT
              && run.cutter() != null
              && run.spec().radius() == null) {
            out.accept(
                finding(
                    step.step().origin(),
                    run.cutter().name()
                        + " does not fit `"
                        + run.spec().name()
                        + "`: "
                        + none.reason(),
                    FeatureLines.drawing(run)));
          } else if (run != null
              && run.result() instanceof Result.None none
              && none.refusal() == Refusal.CORNER_TOO_TIGHT
              && run.cutter() != null
              && run.spec().radius() != null) {
            out.accept(
                finding(
                    step.step().origin(),
                    run.cutter().name()
                        + " leaves corners of "
                        + run.cutter().radius()
                        + ", but `"
                        + run.spec().name()
                        + "` has corners of "
                        + run.spec().radius(),
                    FeatureLines.drawing(run)));
          }
        });
  }
}
