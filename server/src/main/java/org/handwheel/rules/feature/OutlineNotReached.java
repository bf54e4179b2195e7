package org.handwheel.rules.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Removed;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.FeatureSizes;
import org.handwheel.work.feature.Plane;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/** What the drawing takes away and the plan leaves on: the work at its end against the drawing. */
public final class OutlineNotReached extends SimpleRule {
  public OutlineNotReached() {
    super("outline-not-reached", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    List<StepRun> lines = new ArrayList<>();
    FeatureLines.forEach(checkup, (setup, step) -> lines.add(step));
    // A plan that cuts no feature at all has not come to them yet, unless it inspects the part.
    Related end = end(checkup, lines);
    if (end == null || !checkup.isWhole()) {
      return;
    }
    for (DrawnFeature drawn : FeatureLines.drawn(checkup)) {
      List<StepRun> own =
          lines.stream()
              .filter(step -> step.feature() != null && step.feature().spec().equals(drawn.spec()))
              .toList();
      if (own.isEmpty()) {
        out.accept(finding(drawn.spec().origin(), "`" + drawn.name() + "` is never cut", end));
      } else if (own.stream().noneMatch(OutlineNotReached::isRefused)) {
        remaining(checkup, drawn, own, out);
      }
    }
  }

  /** What shows that no more comes; nothing if nothing does. */
  private static @Nullable Related end(Checkup checkup, List<StepRun> lines) {
    return lines.isEmpty()
        ? checkup
            .inspected()
            .map(check -> new Related(check, "the finished part is inspected here"))
            .orElse(null)
        : new Related(lines.get(lines.size() - 1).step().origin(), "the last feature is cut here");
  }

  /** Why it could not be cut is reported at its line. */
  private static boolean isRefused(StepRun step) {
    return step.feature() != null && step.feature().refusal().isPresent();
  }

  private void remaining(
      Checkup checkup, DrawnFeature drawn, List<StepRun> own, Consumer<Finding> out) {
    StepRun last = own.get(own.size() - 1);
    Geometry rest = drawn.gone(corner(last.feature()));
    for (Removed removed : checkup.run().end().removed()) {
      boolean sameWay =
          removed.from() == drawn.frame().face()
              || (removed.through() && removed.from() == drawn.frame().face().opposite());
      if (sameWay && !removed.depth().high().isLessThan(drawn.depth())) {
        rest = rest.difference(removed.region());
      }
    }
    Length allowed = allowed(checkup, drawn.spec());
    // Nothing is thicker than allowed if nothing is left when half of that is taken off all round;
    // measuring the thickness itself takes much longer.
    boolean isThin = Plane.grown(rest, -allowed.half().millimetres()).isEmpty();
    Length stays = isThin ? Length.ZERO : FeatureLines.thickness(rest);
    if (stays.isMoreThan(allowed)) {
      out.accept(
          finding(
              last.step().origin(),
              "after the last cut up to "
                  + stays
                  + " stays on at `"
                  + drawn.name()
                  + "`; the drawing allows "
                  + allowed,
              new Related(drawn.spec().origin(), "it is drawn here")));
    }
  }

  /** How thick what stays on may be. */
  static Length allowed(Checkup checkup, FeatureSpec spec) {
    Length untoleranced = checkup.limits().length(Limit.UNTOLERANCED);
    Length slack = FeatureSizes.slack(spec);
    return spec.formTolerance() != null ? slack : Length.max(untoleranced, slack);
  }

  /** Corners that the drawing leaves to the cutter are as round as that is. */
  private static double corner(@Nullable FeatureRun run) {
    return run == null || run.cutter() == null ? 0 : run.cutter().radius().millimetres();
  }
}
