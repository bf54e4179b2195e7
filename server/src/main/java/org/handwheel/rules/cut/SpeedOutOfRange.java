package org.handwheel.rules.cut;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bench;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions.SpeedFrom;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleCalculator;
import org.handwheel.work.hole.HoleConditions;
import org.jspecify.annotations.Nullable;

/** A spindle speed that the machine does not have, or that is too fast for material and cutter. */
public final class SpeedOutOfRange extends SimpleRule implements EachSetup {
  /** Steps are stated as on the machine's plate; nobody means another one by so little. */
  private static final double SAME = 0.01;

  public SpeedOutOfRange() {
    super("speed-out-of-range", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().knownSteps().forEach(step -> check(checkup, step, out));
  }

  private void check(Checkup checkup, StepRun step, Consumer<Finding> out) {
    if (step.step() instanceof Step.UseCutter use) {
      if (use.rpm() != null) {
        stated(checkup, use.cutter(), use.rpm()).ifPresent(out);
      } else {
        slowest(checkup, use.cutter(), use.origin()).ifPresent(out);
      }
    } else if (step.step() instanceof Step.FeatureCut feature
        && feature.way().rpm() != null
        && step.feature() != null
        && step.feature().cutter() != null) {
      stated(checkup, step.feature().cutter(), feature.way().rpm()).ifPresent(out);
    } else if (step.step() instanceof Step.FeatureCut feature
        && feature.way().cutter() != null
        && !isMounted(step, feature.way().cutter())) {
      slowest(checkup, feature.way().cutter(), feature.origin()).ifPresent(out);
    } else if (step.step() instanceof Step.HoleCut cut
        && cut.way().rpm() != null
        && !cut.way().byHand()) {
      inHoles(checkup, step, cut.way().rpm()).ifPresent(out);
    } else if (step.step() instanceof Step.Cut cut
        && cut.rpm() != null
        && step.benchBefore().cutter() != null) {
      stated(checkup, step.benchBefore().cutter().cutter(), cut.rpm()).ifPresent(out);
    }
  }

  /** A stated speed for drills and the like, against the one of its tools that it suits least. */
  private Optional<Finding> inHoles(Checkup checkup, StepRun step, Located<Double> rpm) {
    Owned.Machine machine = checkup.plan().machine();
    double turns = rpm.value();
    Optional<String> wrong = ofMachine(machine, turns);
    if (wrong.isEmpty()) {
      double margin = checkup.limits().number(Limit.SPEED_MARGIN);
      wrong =
          HoleCalculator.of(checkup.run(), step, checkup.tables()).stream()
              .map(HoleCalculator.Group::conditions)
              .sorted(
                  Comparator.comparing((HoleConditions found) -> found.asked().dia()).reversed())
              .flatMap(found -> tooFast(found, turns, margin).stream())
              .findFirst();
    }
    if (wrong.isEmpty() && machine != null && isBetweenSteps(machine, turns)) {
      wrong = Optional.of(noStep(machine, turns));
    }
    return wrong.map(
        message ->
            machine == null
                ? finding(rpm.origin(), message)
                : finding(
                    rpm.origin(),
                    message,
                    new Related(machine.origin(), "the machine's speeds are given here")));
  }

  private static Optional<String> tooFast(HoleConditions found, double turns, double margin) {
    SpeedRange usual = found.usualSpeed();
    double edge = SpindleSpeed.metresPerMinute(turns, found.asked().dia());
    return usual == null || edge <= usual.high() * margin
        ? Optional.empty()
        : Optional.of(
            RateText.rpm(turns)
                + " is "
                + RateText.surfaceSpeed(edge)
                + " at the edge of `"
                + found.asked().bit().name()
                + "`; usual for it are up to "
                + RateText.surfaceSpeed(usual.high()));
  }

  private static Optional<String> ofMachine(Owned.@Nullable Machine machine, double turns) {
    return machine != null && machine.topSpeed() > 0 && turns > machine.topSpeed() * (1 + SAME)
        ? Optional.of(
            RateText.rpm(turns)
                + " is above the top speed of `"
                + machine.name()
                + "`, "
                + RateText.rpm(machine.topSpeed()))
        : Optional.empty();
  }

  private static boolean isBetweenSteps(Owned.Machine machine, double turns) {
    return !machine.speeds().isEmpty() && !isStep(machine, turns);
  }

  private static String noStep(Owned.Machine machine, double turns) {
    return "`"
        + machine.name()
        + "` has no step of "
        + RateText.rpm(turns)
        + "; it has "
        + neighbours(machine.speeds(), turns);
  }

  private static boolean isMounted(StepRun step, Owned.Cutter cutter) {
    Bench.Tool mounted = step.benchBefore().cutter();
    return mounted != null && mounted.cutter().name().equalsIgnoreCase(cutter.name());
  }

  private static @Nullable SpeedRange usual(Checkup checkup, Owned.Cutter cutter) {
    KnownMaterial material = checkup.run().material();
    // A shop that is being written may have a cutter without a diameter: it has no edge to speak
    // of.
    return material == null || !cutter.dia().isPositive()
        ? null
        : material.speeds(cutter.madeOf()).orElse(null);
  }

  /** What is wrong with a speed that the plan says. */
  private Optional<Finding> stated(Checkup checkup, Owned.Cutter cutter, Located<Double> rpm) {
    Owned.Machine machine = checkup.plan().machine();
    double turns = rpm.value();
    Optional<String> ofMachine = ofMachine(machine, turns);
    if (ofMachine.isPresent()) {
      return Optional.of(about(checkup, cutter, rpm.origin(), ofMachine.get()));
    }
    SpeedRange usual = usual(checkup, cutter);
    double edge = usual == null ? 0 : SpindleSpeed.metresPerMinute(turns, cutter.dia());
    if (usual != null && edge > usual.high() * checkup.limits().number(Limit.SPEED_MARGIN)) {
      String message =
          RateText.rpm(turns)
              + " is "
              + RateText.surfaceSpeed(edge)
              + " at the edge of `"
              + cutter.name()
              + "`; "
              + usualWords(checkup, cutter, usual);
      return Optional.of(about(checkup, cutter, rpm.origin(), message));
    }
    if (machine != null && isBetweenSteps(machine, turns)) {
      return Optional.of(about(checkup, cutter, rpm.origin(), noStep(machine, turns)));
    }
    return Optional.empty();
  }

  /** A machine that cannot turn slowly enough for a cutter, when no speed is said. */
  private Optional<Finding> slowest(Checkup checkup, Owned.Cutter cutter, Origin line) {
    Owned.Machine machine = checkup.plan().machine();
    SpeedRange usual = usual(checkup, cutter);
    if (machine == null || usual == null || !cutter.dia().isPositive()) {
      return Optional.empty();
    }
    Spindle spindle = fitting(machine, usual, cutter);
    double margin = checkup.limits().number(Limit.SPEED_MARGIN);
    if (spindle.from() != SpeedFrom.SLOWEST_STEP
        || spindle.metresPerMinute() <= usual.high() * margin) {
      return Optional.empty();
    }
    return Optional.of(
        finding(
            line,
            "the slowest speed of `"
                + machine.name()
                + "`, "
                + RateText.rpm(spindle.turnsPerMinute())
                + ", is "
                + RateText.surfaceSpeed(spindle.metresPerMinute())
                + " at the edge of `"
                + cutter.name()
                + "`; "
                + usualWords(checkup, cutter, usual)
                + "; take a smaller cutter",
            related(machine, cutter)));
  }

  private static String usualWords(Checkup checkup, Owned.Cutter cutter, SpeedRange usual) {
    KnownMaterial material = checkup.run().material();
    return "usual for "
        + (material == null ? "it" : material.words())
        + " and "
        + KnownMaterial.standard(cutter.madeOf()).words()
        + " are up to "
        + RateText.surfaceSpeed(usual.high());
  }

  private Finding about(Checkup checkup, Owned.Cutter cutter, Origin speed, String message) {
    Owned.Machine machine = checkup.plan().machine();
    SpeedRange usual = usual(checkup, cutter);
    Finding finding = finding(speed, message, related(machine, cutter));
    if (machine == null || machine.speeds().isEmpty() || usual == null) {
      return finding;
    }
    Spindle fitting = fitting(machine, usual, cutter);
    if (fitting.from() != SpeedFrom.STEP) {
      return finding;
    }
    String words = "speed " + RateText.rpm(fitting.turnsPerMinute());
    return finding.withFix(Fix.replace("Write `" + words + "`", speed, words));
  }

  private static Spindle fitting(Owned.Machine machine, SpeedRange usual, Owned.Cutter cutter) {
    double wanted = SpindleSpeed.turnsPerMinute(usual.middle(), cutter.dia());
    return CuttingCalculator.fitting(machine, wanted, cutter.dia());
  }

  private static Related[] related(Owned.@Nullable Machine machine, Owned.Cutter cutter) {
    List<Related> related = new ArrayList<>();
    if (machine != null) {
      related.add(new Related(machine.origin(), "the machine's speeds are given here"));
    }
    related.add(new Related(cutter.origin(), "the cutter is described here"));
    return related.toArray(Related[]::new);
  }

  private static boolean isStep(Owned.Machine machine, double turns) {
    return machine.speeds().stream().anyMatch(step -> Math.abs(step - turns) <= step * SAME);
  }

  private static String neighbours(List<Double> steps, double turns) {
    Optional<Double> below =
        steps.stream().filter(step -> step < turns).max(Comparator.naturalOrder());
    Optional<Double> above =
        steps.stream().filter(step -> step > turns).min(Comparator.naturalOrder());
    if (below.isPresent() && above.isPresent()) {
      return RateText.rpm(below.get()) + " and " + RateText.rpm(above.get());
    }
    return below.or(() -> above).map(RateText::rpm).orElse("none");
  }
}
