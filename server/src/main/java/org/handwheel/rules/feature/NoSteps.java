package org.handwheel.rules.feature;

import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureRun.Refusal;

/** A slot, pocket or outline for which no stops can be given. */
public final class NoSteps extends SimpleRule implements EachSetup {
  /** What has a rule of its own. */
  private static final Set<Refusal> TOLD_ELSEWHERE =
      Set.of(Refusal.CORNER_TOO_TIGHT, Refusal.CUTTER_TOO_WIDE);

  public NoSteps() {
    super("no-steps", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    FeatureLines.forEach(
        checkup,
        (setup, step) -> {
          FeatureRun run = step.feature();
          if (run == null) {
            return;
          }
          run.refusal()
              .filter(none -> !TOLD_ELSEWHERE.contains(none.refusal()))
              .ifPresent(
                  none ->
                      out.accept(
                          finding(
                              step.step().origin(),
                              "no stops can be given for `"
                                  + run.spec().name()
                                  + "`: "
                                  + none.reason(),
                              FeatureLines.drawing(run))));
        });
  }
}
