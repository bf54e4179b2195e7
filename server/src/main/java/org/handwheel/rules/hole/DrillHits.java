package org.handwheel.rules.hole;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleHits;
import org.handwheel.work.hole.HoleHits.Hit;
import org.handwheel.work.hole.HoleHits.What;

/** A drill or another tool for holes that runs into what holds or carries the work. */
abstract class DrillHits extends SimpleRule implements EachSetup {
  private final Set<What> things;

  DrillHits(String id, Set<What> things) {
    super(id, Severity.ERROR);
    this.things = Set.copyOf(things);
  }

  @Override
  public final void check(Checkup checkup, Consumer<Finding> out) {
    HoleLines.forEach(checkup, (setup, step) -> check(checkup, setup, step, out));
  }

  private void check(Checkup checkup, SetupRun setup, StepRun step, Consumer<Finding> out) {
    List<Hit> hits =
        HoleHits.of(checkup.run(), setup, step).stream()
            .filter(hit -> things.contains(hit.what()))
            .toList();
    if (hits.isEmpty()) {
      return;
    }
    Hit worst =
        hits.stream().reduce((a, b) -> b.into().isMoreThan(a.into()) ? b : a).orElse(hits.get(0));
    List<String> names = hits.stream().map(hit -> hit.result().hole().name()).toList();
    out.accept(
        finding(
            step.step().origin(),
            "at "
                + HoleLines.names(names)
                + " the tool goes "
                + worst.into()
                + " into "
                + worst.name(),
            holding(setup, step, worst.what())));
  }

  private static Related holding(SetupRun setup, StepRun step, What what) {
    Hold hold = setup.setup().hold();
    if (hold == null) {
      return new Related(step.step().origin(), "here");
    }
    boolean below = what == What.PARALLEL || what == What.BED;
    Origin origin =
        below && hold.support() != null
            ? hold.support().origin()
            : what == What.CLAMP && !hold.clamps().isEmpty()
                ? hold.clamps().get(0).origin()
                : hold.origin();
    return new Related(origin, "the work is held here");
  }
}
