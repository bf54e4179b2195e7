package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Plan;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/**
 * Mendings about what lies under and beside the work where it is drilled or cut through, and about
 * holes and features that the plan leaves out; each is tried out before it is given.
 */
final class OpeningFixes {
  /** How many mendings are tried for one finding: each is a check of the whole file. */
  private static final int MOST_TRIALS = 8;

  private final View view;
  private final FileText text;

  OpeningFixes(View view, FileText text) {
    this.view = view;
    this.text = text;
  }

  void of(Finding finding, Map<String, List<TextEdit>> fixes) {
    switch (finding.rule()) {
      case "drill-hits-parallel",
          "drill-hits-jaw",
          "drill-hits-table",
          "cutter-meets-parallel",
          "cutter-meets-jaw",
          "cutter-meets-table" ->
          otherSupport(finding, fixes);
      case "cutter-meets-stop" -> otherEnd(finding, fixes);
      case "feature-order" -> FeatureFixes.setupBefore(view, text, finding, fixes);
      case "outline-not-reached" -> cutAtLast(finding, fixes);
      case "hole-not-made" -> makeAtLast(finding, fixes);
      default -> {}
    }
  }

  /** The first of some mendings that does it and nothing else. */
  private void first(
      Finding finding, Map<String, List<TextEdit>> candidates, Map<String, List<TextEdit>> fixes) {
    candidates.entrySet().stream()
        .limit(MOST_TRIALS)
        .filter(entry -> Trial.addsNothing(view, finding, entry.getValue()))
        .findFirst()
        .ifPresent(entry -> fixes.put(entry.getKey(), entry.getValue()));
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

  // ---- What carries the work

  /** Other parallels: as high as those there, then the nearest in height. */
  private void otherSupport(Finding finding, Map<String, List<TextEdit>> fixes) {
    SetupRun setup = setup(finding.origin());
    Hold hold = setup == null ? null : setup.setup().hold();
    if (setup == null || hold == null) {
      return;
    }
    Located<Hold.Support> there = hold.support();
    Length height = Grip.seat(hold);
    boolean isOne = there != null && there.value() instanceof Hold.Support.One;
    Situation now = Situation.at(view, finding.origin().section(), finding.origin().start());
    Map<String, List<TextEdit>> candidates = new LinkedHashMap<>();
    now.shop().all(Owned.Parallels.class).stream()
        .filter(set -> set.count() >= (isOne ? 1 : 2))
        .sorted(
            Comparator.comparing((Owned.Parallels set) -> set.height().minus(height).abs())
                .thenComparing(Owned.Parallels::thickness)
                .thenComparing(Owned.Parallels::name))
        .forEach(
            set -> {
              String clause = "on " + (isOne ? "one " : "pair ") + set.name();
              candidates.put(
                  "Lay it on " + set.name(),
                  List.of(
                      there == null
                          ? text.append(hold.origin(), ", " + clause)
                          : text.replace(there.origin(), clause)));
            });
    first(finding, candidates, fixes);
  }

  private void otherEnd(Finding finding, Map<String, List<TextEdit>> fixes) {
    SetupRun setup = setup(finding.origin());
    Hold hold = setup == null ? null : setup.setup().hold();
    if (hold == null || hold.stop() == null) {
      return;
    }
    String end =
        hold.stop().value() == Direction.OPERATOR_LEFT ? "operator-right" : "operator-left";
    Origin clause = hold.stop().origin();
    String words = clause.text().startsWith("stop") ? "stop at " + end : end;
    first(
        finding,
        Map.of("Put the stop at the other end", List.of(text.replace(clause, words))),
        fixes);
  }

  // ---- What the plan leaves out

  /** A feature that is never cut, behind the last line on holes or features with its face up. */
  private void cutAtLast(Finding finding, Map<String, List<TextEdit>> fixes) {
    Part part = part();
    FeatureSpec spec =
        part == null
            ? null
            : part.features().stream()
                .filter(one -> one.origin().equals(finding.origin()))
                .findFirst()
                .orElse(null);
    StepRun last = spec == null || spec.face() == null ? null : last(spec.face());
    if (spec == null || spec.face() == null || last == null) {
      return;
    }
    Origin line = last.step().origin();
    Situation now = Situation.at(view, line.section(), line.start());
    boolean isChamfer = spec.featureKind() == FeatureKind.CHAMFER;
    Map<String, List<TextEdit>> candidates = new LinkedHashMap<>();
    now.shop().all(Owned.Cutter.class).stream()
        .filter(
            one ->
                isChamfer
                    ? one.cutterKind() == Owned.CutterKind.CHAMFER_MILL
                    : one.cutterKind() == Owned.CutterKind.END_MILL
                        || one.cutterKind() == Owned.CutterKind.SLOT_DRILL)
        .sorted(
            Comparator.comparing(Owned.Cutter::dia).reversed().thenComparing(Owned.Cutter::name))
        .forEach(
            cutter -> {
              String cut =
                  spec.featureKind().name().toLowerCase(Locale.ROOT)
                      + " "
                      + spec.name()
                      + " with "
                      + cutter.name();
              String pass = isChamfer ? "" : ", pass " + now.number(pass(cutter));
              candidates.put(
                  "Cut it with " + cutter.name(),
                  inserted(last, cutter, spec.face(), cut + pass, now));
            });
    first(finding, candidates, fixes);
  }

  /** A sixth of the diameter at a time, in round numbers; common practice, no source. */
  private static Length pass(Owned.Cutter cutter) {
    Length step = Length.mm("0.5");
    long steps = Math.max(1, (long) (cutter.dia().millimetres() / 6 / step.millimetres()));
    return step.times(steps);
  }

  private List<TextEdit> inserted(
      StepRun last, Owned.Cutter cutter, @Nullable Face up, String cut, Situation now) {
    Origin line = last.step().origin();
    List<TextEdit> edits = new ArrayList<>();
    boolean isIn =
        last.benchAfter().cutter() != null
            && last.benchAfter().cutter().cutter().name().equalsIgnoreCase(cutter.name());
    if (!isIn && up != null) {
      edits.add(text.lineAfter(line, "cutter " + cutter.name()));
      edits.add(
          text.lineAfter(
              line,
              "touch " + up.word() + " with paper " + now.number(Length.mm("0.05")) + ", zero z"));
    }
    edits.add(text.lineAfter(line, cut));
    return edits;
  }

  private @Nullable Part part() {
    Plan plan = view.plan();
    return plan == null ? null : plan.part();
  }

  /** The last line on holes or features in a setup with a face up. */
  private @Nullable StepRun last(Face up) {
    PlanRun run = view.run();
    StepRun last = null;
    for (SetupRun setup : run == null ? List.<SetupRun>of() : run.setups()) {
      boolean isUp = setup.orientation() != null && setup.orientation().up() == up;
      for (StepRun step : setup.steps()) {
        if (isUp && (step.holes() != null || step.feature() != null)) {
          last = step;
        }
      }
    }
    return last != null && view.tree().contains(last.step().origin()) ? last : null;
  }

  /** The line that a hole still wants, behind the last on holes with its face up. */
  private void makeAtLast(Finding finding, Map<String, List<TextEdit>> fixes) {
    Part part = part();
    HoleSpec hole =
        part == null
            ? null
            : part.holes().stream()
                .filter(
                    one ->
                        one.origin().equals(finding.origin())
                            || part.patterns().stream()
                                .anyMatch(
                                    pattern ->
                                        pattern.origin().equals(finding.origin())
                                            && pattern.hole().equalsIgnoreCase(one.name())))
                .findFirst()
                .orElse(null);
    StepRun last = hole == null ? null : last(hole.face());
    if (part == null || hole == null || last == null) {
      return;
    }
    String name =
        part.patterns().stream()
            .filter(pattern -> pattern.hole().equalsIgnoreCase(hole.name()))
            .map(Part.PatternSpec::name)
            .findFirst()
            .orElse(hole.name());
    Map<String, List<TextEdit>> candidates = new LinkedHashMap<>();
    for (String verb : List.of("drill", "ream", "tap", "counterbore", "countersink")) {
      candidates.put(
          Character.toUpperCase(verb.charAt(0)) + verb.substring(1) + " " + name,
          List.of(text.lineAfter(last.step().origin(), verb + " " + name)));
    }
    candidates.put(
        "Spot and drill " + name,
        List.of(
            text.lineAfter(last.step().origin(), "spot " + name),
            text.lineAfter(last.step().origin(), "drill " + name)));
    candidates.put(
        "Drill and tap " + name,
        List.of(
            text.lineAfter(last.step().origin(), "drill " + name),
            text.lineAfter(last.step().origin(), "tap " + name + ", by hand")));
    first(finding, candidates, fixes);
  }
}
