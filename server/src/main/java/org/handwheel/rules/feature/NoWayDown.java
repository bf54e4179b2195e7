package org.handwheel.rules.feature;

import java.util.function.Consumer;
import org.handwheel.model.Owned;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.WayDown;

/** A cutter without teeth at its middle that is to go straight down into the metal. */
public final class NoWayDown extends SimpleRule implements EachSetup {
  public NoWayDown() {
    super("no-way-down", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    FeatureLines.forEach(
        checkup,
        (setup, step) -> {
          FeatureRun run = step.feature();
          Owned.Cutter cutter = run == null ? null : run.cutter();
          if (run == null || cutter == null) {
            return;
          }
          WayDown.of(step, checkup.limits())
              .filter(way -> way.kind() == WayDown.Kind.NONE)
              .ifPresent(
                  way ->
                      out.accept(
                          finding(
                              step.step().origin(),
                              "no side of `"
                                  + run.spec().name()
                                  + "` is open, and "
                                  + cutter.name()
                                  + " does not cut at its middle: it cannot go straight down; take"
                                  + " a slot drill, or first drill a hole there of at least "
                                  + way.wanted(),
                              FeatureLines.drawing(run),
                              new Related(cutter.origin(), "the cutter is described here"))));
        });
  }
}
