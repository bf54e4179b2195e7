package org.handwheel.rules.feature;

import java.util.function.Consumer;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.PlateKind;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Removed;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.Standing;

/** An outline that is cut through while what it leaves standing is held by the waste alone. */
public final class HoldingLost extends SimpleRule implements EachSetup {
  public HoldingLost() {
    super("holding-lost", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.wholeSetups()) {
      Hold hold = setup.setup().hold();
      if (hold == null) {
        continue;
      }
      for (StepRun step : setup.steps()) {
        if (step.feature() != null && check(setup, step, step.feature(), hold, out)) {
          break;
        }
      }
    }
  }

  private boolean check(
      SetupRun setup, StepRun step, FeatureRun run, Hold hold, Consumer<Finding> out) {
    DrawnFeature drawn = run.drawn();
    if (drawn == null
        || run.refusal().isPresent()
        || !(drawn.form() instanceof Form.Round round)
        || !drawn.isThrough()) {
      return false;
    }
    String lost =
        setup.grip() != null
            ? inVise(setup.grip(), drawn)
            : onPlate(setup, step, drawn, round, hold);
    if (lost.isEmpty()) {
      return false;
    }
    out.accept(
        finding(
            step.step().origin(),
            lost,
            new Related(hold.origin(), "it is held here"),
            FeatureLines.drawing(run)));
    return true;
  }

  /** In a vise the jaws hold what lies outside the outline, as deep as they grip. */
  private static String inVise(Grip grip, DrawnFeature drawn) {
    Length above = grip.proud().low();
    return drawn.depth().isMoreThan(above)
        ? "`"
            + drawn.name()
            + "` is cut "
            + drawn.depth()
            + " deep, but only "
            + Length.max(Length.ZERO, above)
            + " stands above the jaws: "
            + (drawn.spec().featureKind() == FeatureKind.OUTLINE
                ? "the cutter frees it from the metal they hold"
                : "the cutter runs into the jaws that hold it")
        : "";
  }

  private static String onPlate(
      SetupRun setup, StepRun step, DrawnFeature drawn, Form.Round round, Hold hold) {
    if (!(hold.rest() instanceof Hold.Rest.OnPlate plate)) {
      return "";
    }
    if (!hold.clamps().isEmpty()) {
      return Standing.isClamped(setup, drawn, round, hold)
          ? ""
          : "no clamp holds `" + drawn.name() + "` itself: it comes loose when it is cut through";
    }
    if (plate.plate() != PlateKind.SUBPLATE) {
      return "";
    }
    long screws =
        step.before().removed().stream()
            .filter(removed -> removed.kind() == Removed.Kind.HOLE && removed.through())
            .filter(removed -> drawn.finished(round).contains(removed.region()))
            .map(Removed::feature)
            .distinct()
            .count();
    return screws >= 2
        ? ""
        : screws == 1
            ? "one screw lets `"
                + drawn.name()
                + "` turn under the cutter; two through holes of"
                + " its own hold it"
            : "`"
                + drawn.name()
                + "` has no through hole yet that a screw into the subplate could hold it by";
  }
}
