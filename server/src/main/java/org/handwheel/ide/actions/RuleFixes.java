package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.CutSizes;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Bench;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;
import org.jspecify.annotations.Nullable;

/** Mendings worked out from the plan, by the rule that found something. */
final class RuleFixes {
  private final View view;
  private final FileText text;
  private final Map<String, List<TextEdit>> fixes = new LinkedHashMap<>();

  RuleFixes(View view, FileText text) {
    this.view = view;
    this.text = text;
  }

  /** Titles and edits, the best first; none are tried out yet. */
  Map<String, List<TextEdit>> of(Finding finding) {
    SetupRun setup = setup(finding.origin());
    StepRun step = setup == null ? null : step(setup, finding.origin());
    switch (finding.rule()) {
      case "no-units" -> units();
      case "unused-name" -> add("Remove the line", text.removeLines(finding.origin()));
      case "ignore-reason" ->
          add("Add a reason, to be written", text.append(finding.origin(), ": reason"));
      default -> {
        new SlipFixes(view, text, fixes).of(finding);
        if (setup != null) {
          new HoldFixes(text, setup, situation(setup.setup().header())).of(finding, fixes);
        }
        if (setup != null && step != null) {
          inStep(finding, setup, step);
        }
        if (setup != null && step != null && step.feature() != null) {
          new FeatureFixes(view, text, setup, step, step.feature()).of(finding, fixes);
        }
        new OpeningFixes(view, text).of(finding, fixes);
      }
    }
    return fixes;
  }

  private void add(String title, TextEdit... edits) {
    fixes.put(title, List.of(edits));
  }

  private @Nullable SetupRun setup(Origin origin) {
    PlanRun run = view.run();
    return run == null
        ? null
        : run.setups().stream()
            .filter(setup -> setup.setup().header().section() == origin.section())
            .findFirst()
            .orElse(null);
  }

  private static @Nullable StepRun step(SetupRun setup, Origin origin) {
    return setup.steps().stream()
        .filter(step -> step.step().origin().start() <= origin.start())
        .filter(step -> step.step().origin().end() >= origin.end())
        .findFirst()
        .orElse(null);
  }

  private Situation situation(Origin line) {
    return Situation.at(view, line.section(), line.start());
  }

  private void units() {
    Section section = view.tree().sections().get(0);
    for (Section candidate : view.tree().sections()) {
      if (candidate.kind() == SectionKind.PLAN || candidate.kind() == SectionKind.SHOP) {
        section = candidate;
        break;
      }
    }
    Origin header = section.header();
    boolean behind = section.kind() != SectionKind.PREAMBLE;
    boolean level = header.text().strip().startsWith("language");
    for (String unit : List.of("mm", "in")) {
      String line = "units " + unit;
      add(
          "Say `" + line + "`",
          behind || level ? text.lineAfter(header, line) : text.lineBefore(header, line));
    }
  }

  private void inStep(Finding finding, SetupRun setup, StepRun step) {
    Origin line = step.step().origin();
    CutRun cut = step.cut();
    if (cut != null) {
      new WayFixes(text, situation(line), fixes).of(finding, cut);
    }
    switch (finding.rule()) {
      case "heavy-pass" -> {
        if (cut != null) {
          heavyPass(cut);
        }
      }
      case "power" -> power(setup, step);
      case "rubbing" -> feedFaster(step);
      case "no-finish-allowance" -> {
        if (step.step() instanceof Step.Cut rough) {
          allowance(rough, line);
        }
      }
      case "measure-before-deburr" -> {
        if (step.step() instanceof Step.Measure measure) {
          deburrBefore(measure, step);
        }
      }
      case "measure-before-finish" -> measure(step);
      case "touch-missing" -> touch(setup, step);
      case "zero-lost" -> touch(setup, step);
      case "hole-without-zero" -> findEdges(setup, step);
      case "lock-conflict" -> unlock(finding, line);
      case "vise-not-trued" -> trueVise(setup, line);
      default -> {}
    }
  }

  // ---- Cuts
  // ------------------------------------------------------------------------------------------

  private void heavyPass(CutRun cut) {
    Situation now = situation(cut.cut().origin());
    CutSizes sizes = new CutSizes(now);
    shallower(
        cut,
        cut.mode() == CutRun.Mode.END
            ? now.shop().limits().length(Limit.HEAVY_PASS)
            : sizes.passLimit(cut.face()));
  }

  /** Takes what comes off in passes of at most a depth. */
  private void shallower(CutRun cut, Length limit) {
    Situation now = situation(cut.cut().origin());
    CutSizes sizes = new CutSizes(now);
    Step.Purpose purpose = cut.cut().purpose();
    if (purpose instanceof Step.Purpose.Clean clean) {
      String depth = now.number(sizes.roundedDown(Length.min(limit, clean.atMost().value())));
      boolean only = clean.atMost().equals(clean.at());
      String old = clean.at().origin().text();
      String word = old.startsWith("at") ? "at " : "";
      String all = only ? ", at most " + now.number(clean.at().value()) : "";
      add(
          "Skim " + both(sizes.roundedDown(limit)) + " at a time",
          text.replace(clean.at().origin(), word + depth + all));
      return;
    }
    Length removal = cut.removal().high();
    if (!removal.isPositive()) {
      return;
    }
    Length even = sizes.evenPass(removal, limit);
    String clause = "pass " + now.number(even);
    Step.Passes passes =
        purpose instanceof Step.Purpose.Rough rough
            ? rough.passes()
            : ((Step.Purpose.Finish) purpose).passes();
    String title =
        "Take it in " + CutSizes.passes(removal, limit) + " passes of " + both(even) + " at most";
    if (passes == null) {
      add(title, text.append(cut.cut().origin(), ", " + clause));
    } else {
      boolean word = passes.origin().text().matches("(?is)(pass|by|one)\\b.*");
      add(title, text.replace(passes.origin(), word ? clause : now.number(even)));
    }
  }

  private static String both(Length length) {
    return LengthText.both(length);
  }

  /**
   * The depth that the motor's power bears. The power goes about as the depth; where the side of
   * the cutter takes a thinner chip it falls more slowly, so half of that is tried as well.
   */
  private void power(SetupRun setup, StepRun step) {
    CutRun cut = step.cut();
    Double inHand =
        view.run() == null
            ? null
            : CuttingCalculator.of(view.run(), step)
                .map(CuttingConditions::powerInHand)
                .orElse(null);
    if (cut == null || inHand == null || inHand >= 1) {
      return;
    }
    CutSizes sizes = new CutSizes(situation(setup.setup().header()));
    for (double part : new double[] {1, 0.5}) {
      Length borne = Length.ofMillimetres(cut.passDepth().millimetres() * inHand * part);
      if (sizes.roundedDown(borne).isPositive()) {
        shallower(cut, sizes.roundedDown(borne));
      }
    }
  }

  /** The feed at which the chip of a narrow cut is thick enough, rounded up to a micrometre. */
  private void feedFaster(StepRun step) {
    if (view.run() == null || !(step.step() instanceof Step.Cut cut)) {
      return;
    }
    CuttingConditions conditions = CuttingCalculator.of(view.run(), step).orElse(null);
    if (conditions == null || conditions.feed() == null || conditions.feed().chip() == null) {
      return;
    }
    double factor = conditions.feed().chip().factor();
    Length least = situation(cut.origin()).shop().limits().length(Limit.LEAST_CHIP);
    Length usual = conditions.feed().usual();
    if (!(factor >= CuttingCalculator.LEAST_FACTOR)) {
      return;
    }
    double wanted = Math.ceil(1000 * least.millimetres() / factor) / 1000;
    Length feed = Length.ofMillimetres(wanted);
    if (usual != null && usual.isMoreThan(feed)) {
      feed = usual;
    }
    String words = "feed " + LengthText.number(feed, LengthUnit.MM, 3, 2) + " mm/tooth";
    add(
        "Write `" + words + "`",
        cut.feedPerTooth() == null
            ? text.append(cut.origin(), ", " + words)
            : text.replace(cut.feedPerTooth().origin(), words));
  }

  /** Leaves the usual allowance, and adds the finishing cut if none follows. */
  private void allowance(Step.Cut rough, Origin line) {
    if (!(rough.purpose() instanceof Step.Purpose.Rough purpose)) {
      return;
    }
    Situation now = situation(line);
    CutSizes sizes = new CutSizes(now);
    String leaving = "leaving " + now.number(sizes.allowance());
    TextEdit leave =
        purpose.leaving() == null
            ? text.append(purpose.target().origin(), " " + leaving)
            : text.replace(
                purpose.leaving().origin(),
                purpose.leaving().origin().text().startsWith("leaving")
                    ? leaving
                    : now.number(sizes.allowance()));
    String title = "Leave " + both(sizes.allowance()) + " for the finishing pass";
    if (isFinished(rough)) {
      add(title, leave);
    } else {
      String face = rough.face().word();
      String finish = "finish " + face + " to " + purpose.target().origin().text();
      add(title + " and add it", leave, text.lineAfter(line, finish));
    }
  }

  private boolean isFinished(Step.Cut rough) {
    boolean after = false;
    for (StepRun step : view.run() == null ? List.<StepRun>of() : view.run().steps().toList()) {
      if (step.step() == rough) {
        after = true;
      } else if (after
          && step.step() instanceof Step.Cut cut
          && cut.face() == rough.face()
          && cut.purpose() instanceof Step.Purpose.Finish) {
        return true;
      }
    }
    return false;
  }

  private void deburrBefore(Step.Measure measure, StepRun step) {
    List<String> faces =
        Face.all().stream()
            .filter(face -> face.dimension() == measure.dimension())
            .filter(face -> step.before().face(face).burr() != null)
            .map(Face::word)
            .toList();
    for (String face : faces) {
      add(
          "Deburr the " + face + " first",
          text.lineBefore(measure.origin(), "deburr edges of " + face));
    }
  }

  /** Measures with the finest instrument, over edges without burrs. */
  private void measure(StepRun step) {
    if (!(step.step() instanceof Step.Cut cut)) {
      return;
    }
    Situation now = situation(cut.origin());
    Optional<Owned.Instrument> instrument = now.instrumentFor(cut.face());
    if (instrument.isEmpty()) {
      return;
    }
    String line = "measure " + cut.face().dimension().word() + " with " + instrument.get().name();
    List<String> burrs =
        Face.all().stream()
            .filter(face -> face.dimension() == cut.face().dimension())
            .filter(face -> step.before().face(face).burr() != null)
            .map(Face::word)
            .toList();
    TextEdit measure = text.lineBefore(cut.origin(), line);
    if (burrs.isEmpty()) {
      add("Measure first with " + instrument.get().name(), measure);
    } else {
      add(
          "Deburr and measure first with " + instrument.get().name(),
          text.lineBefore(cut.origin(), "deburr edges of " + String.join(" ", burrs)),
          measure);
    }
  }

  /** Before a slot or an outline: the cutter that cuts it, if another is in, and a touch. */
  private void touch(StepRun step, FeatureRun feature) {
    Owned.Cutter cutter = feature.cutter();
    if (cutter == null || feature.drawn() == null) {
      return;
    }
    Origin line = step.step().origin();
    Bench.Tool mounted = step.benchBefore().cutter();
    String face = feature.drawn().frame().face().word();
    String paper = situation(line).number(Length.mm("0.05"));
    List<TextEdit> edits = new ArrayList<>();
    if (mounted == null || !mounted.cutter().name().equalsIgnoreCase(cutter.name())) {
      edits.add(text.lineBefore(line, "cutter " + cutter.name()));
    }
    edits.add(text.lineBefore(line, "touch " + face + " with paper " + paper + ", zero z"));
    add("Touch the " + face + " first", edits.toArray(TextEdit[]::new));
  }

  // ---- Dials
  // -----------------------------------------------------------------------------------------

  private void touch(SetupRun setup, StepRun step) {
    if (step.feature() != null) {
      touch(step, step.feature());
      return;
    }
    if (!(step.step() instanceof Step.Cut cut) || setup.orientation() == null) {
      return;
    }
    Situation now = situation(cut.origin());
    if (step.benchBefore().cutter() == null) {
      for (Owned.Cutter cutter : now.shop().all(Owned.Cutter.class)) {
        add(
            "Put " + cutter.name() + " in the spindle first",
            text.lineBefore(cut.origin(), "cutter " + cutter.name()));
      }
      return;
    }
    Axis axis = setup.orientation().axisOf(cut.face());
    String touch =
        "touch "
            + cut.face().word()
            + " with paper "
            + now.number(Length.mm("0.05"))
            + ", zero "
            + axis.word();
    String title = "Touch the " + cut.face().word() + " first";
    if (step.benchBefore().locks().containsKey(axis)) {
      add(
          title,
          text.lineBefore(cut.origin(), "unlock " + axis.word()),
          text.lineBefore(cut.origin(), touch),
          text.lineBefore(cut.origin(), "lock " + axis.word()));
    } else {
      add(title, text.lineBefore(cut.origin(), touch));
    }
  }

  /** Finds the edges at the operator's left and front, with the first edge finder there is. */
  private void findEdges(SetupRun setup, StepRun step) {
    Orientation lies = setup.orientation();
    Origin line = step.step().origin();
    Optional<Owned.Finder> finder =
        situation(line).shop().all(Owned.Finder.class).stream().findFirst();
    if (lies == null || finder.isEmpty()) {
      return;
    }
    List<TextEdit> edits = new ArrayList<>();
    for (Axis axis : List.of(Axis.X, Axis.Y)) {
      if (step.benchBefore().zeros().get(axis) == null) {
        Direction side = Direction.of(axis, -1);
        edits.add(
            text.lineBefore(
                line,
                "find "
                    + lies.facing(side).word()
                    + " from "
                    + side.name().toLowerCase(Locale.ROOT).replace('_', '-')
                    + " with finder "
                    + finder.get().name()
                    + ", zero "
                    + axis.word()
                    + " at edge"));
      }
    }
    fixes.put("Find the edges first", edits);
  }

  /** The axis is the first word of what the finding says of the lock. */
  private void unlock(Finding finding, Origin line) {
    for (Axis axis : Axis.values()) {
      if (finding.message().contains(" moves " + axis.word() + ",")) {
        add("Unlock " + axis.word() + " first", text.lineBefore(line, "unlock " + axis.word()));
      }
    }
  }

  private void trueVise(SetupRun setup, Origin line) {
    Hold hold = setup.setup().hold();
    if (hold == null || !(hold.rest() instanceof Hold.Rest.InVise inVise)) {
      return;
    }
    situation(line).shop().all(Owned.Instrument.class).stream()
        .filter(instrument -> instrument.instrumentKind() == Owned.InstrumentKind.INDICATOR)
        .findFirst()
        .ifPresent(
            indicator ->
                add(
                    "True the vise first",
                    text.lineBefore(
                        hold.origin(),
                        "true " + inVise.vise().name() + " with " + indicator.name())));
  }
}
