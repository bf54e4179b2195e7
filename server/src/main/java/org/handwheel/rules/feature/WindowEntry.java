package org.handwheel.rules.feature;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureRun.Result;

/** A cutter that has no way into the window it is to cut. */
public final class WindowEntry extends SimpleRule implements EachSetup {
  public WindowEntry() {
    super("window-entry", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    FeatureLines.forEach(
        checkup,
        (setup, step) -> {
          FeatureRun run = step.feature();
          if (run != null
              && run.drawn() != null
              && run.cutter() != null
              && run.drawn().form() instanceof Form.Window
              && run.result() instanceof Result.Steps steps
              && steps.entry() == null) {
            out.accept(
                finding(
                    step.step().origin(),
                    run.cutter().name()
                        + " does not cut at its middle, and no hole is there to go down in: drill"
                        + " one through within `"
                        + run.spec().name()
                        + "`, at least "
                        + run.cutter().dia()
                        + " wide and clear of its wall, or take a slot drill",
                    FeatureLines.drawing(run)));
          }
        });
  }
}
