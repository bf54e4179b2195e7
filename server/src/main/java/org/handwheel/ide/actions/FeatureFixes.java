package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.CutSizes;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Axis;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Part;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Step;
import org.handwheel.rules.cut.HeavyPass;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;
import org.jspecify.annotations.Nullable;

/** Mendings of lines on slots, pockets and outlines; each is tried out before it is given. */
final class FeatureFixes {
  /** How many mendings are tried for one finding: each is a check of the whole file. */
  private static final int MOST_TRIALS = 8;

  private final View view;
  private final FileText text;
  private final SetupRun setup;
  private final StepRun step;
  private final FeatureRun feature;
  private final Situation now;

  FeatureFixes(View view, FileText text, SetupRun setup, StepRun step, FeatureRun feature) {
    this.view = view;
    this.text = text;
    this.setup = setup;
    this.step = step;
    this.feature = feature;
    this.now = Situation.at(view, line().section(), line().start());
  }

  private Origin line() {
    return step.step().origin();
  }

  void of(Finding finding, Map<String, List<TextEdit>> fixes) {
    Owned.Cutter cutter = feature.cutter();
    switch (finding.rule()) {
      case "no-way-down" -> {
        otherCutters(finding, Owned.Cutter::cutsAtItsMiddle, fixes);
        startingHole(finding, fixes);
      }
      case "pocket-corner" -> {
        otherCutters(finding, one -> isThinner(one, cutter), fixes);
        radiusOfTheCutter(finding, fixes);
      }
      case "outline-gouge" -> otherCutters(finding, one -> isThinner(one, cutter), fixes);
      case "depth-over-flutes" ->
          otherCutters(
              finding, one -> cutter != null && one.flute().isMoreThan(cutter.flute()), fixes);
      case "no-steps" -> otherCutters(finding, one -> true, fixes);
      case "outline-not-reached" -> oncemore(finding, fixes);
      case "heavy-pass" -> {
        if (cutter != null) {
          levels(finding, HeavyPass.slotPass(now.shop().limits(), cutter), fixes);
        }
      }
      case "power", "deflection" -> lighter(finding, fixes);
      default -> {}
    }
  }

  private static boolean isThinner(Owned.Cutter one, Owned.@Nullable Cutter than) {
    return than != null && one.dia().isLessThan(than.dia());
  }

  private boolean put(
      Finding finding, String title, List<TextEdit> edits, Map<String, List<TextEdit>> fixes) {
    boolean isGood = Trial.addsNothing(view, finding, edits);
    if (isGood) {
      fixes.put(title, edits);
    }
    return isGood;
  }

  // ---- Cutters

  /** The thickest cutter of the shop that does it, put into the spindle and touched off. */
  private void otherCutters(
      Finding finding, Predicate<Owned.Cutter> fits, Map<String, List<TextEdit>> fixes) {
    Owned.Cutter old = feature.cutter();
    if (old == null || setup.orientation() == null) {
      return;
    }
    boolean isChamfer = feature.spec().featureKind() == Part.FeatureKind.CHAMFER;
    List<Owned.Cutter> candidates =
        now.shop().all(Owned.Cutter.class).stream()
            .filter(one -> isChamfer == (one.cutterKind() == CutterKind.CHAMFER_MILL))
            .filter(
                one ->
                    isChamfer
                        || one.cutterKind() == CutterKind.END_MILL
                        || one.cutterKind() == CutterKind.SLOT_DRILL)
            .filter(one -> !one.name().equalsIgnoreCase(old.name()))
            .filter(fits)
            .sorted(
                Comparator.comparing(Owned.Cutter::dia)
                    .reversed()
                    .thenComparing(Owned.Cutter::name))
            .limit(MOST_TRIALS)
            .toList();
    for (Owned.Cutter cutter : candidates) {
      if (put(finding, "Take " + cutter.name(), change(old, cutter), fixes)) {
        return;
      }
    }
  }

  /** Another cutter for this line: in the lines that put the old one in, or before this line. */
  private List<TextEdit> change(Owned.Cutter old, Owned.Cutter other) {
    List<TextEdit> edits = new ArrayList<>();
    StepRun mounted = mounting(old);
    if (mounted != null && isForThisOnly(mounted, old)) {
      named(mounted.step().origin(), "cutter", old.name(), other.name(), edits);
      for (StepRun one : setup.steps()) {
        if (one.feature() != null && one.step() instanceof Step.FeatureCut) {
          named(one.step().origin(), "with", old.name(), other.name(), edits);
        }
      }
      return edits;
    }
    named(line(), "with", old.name(), other.name(), edits);
    edits.add(text.lineBefore(line(), "cutter " + other.name()));
    String up = setup.orientation() == null ? "top" : setup.orientation().up().word();
    String touch = "touch " + up + " with paper " + now.number(Length.mm("0.05")) + ", zero z";
    edits.add(text.lineBefore(line(), touch));
    return edits;
  }

  /** The line of this setup that puts the cutter of this line in. */
  private @Nullable StepRun mounting(Owned.Cutter cutter) {
    StepRun found = null;
    for (StepRun one : setup.steps()) {
      if (one.step().origin().equals(line())) {
        break;
      }
      if (one.step() instanceof Step.UseCutter use) {
        found = use.cutter().name().equalsIgnoreCase(cutter.name()) ? one : null;
      }
    }
    return found;
  }

  /** Whether nothing else is cut with it from there on, and no speed is given for it. */
  private boolean isForThisOnly(StepRun mounted, Owned.Cutter cutter) {
    if (mounted.step() instanceof Step.UseCutter use
        && (use.rpm() != null || use.feedPerTooth() != null)) {
      return false;
    }
    boolean after = false;
    for (StepRun one : setup.steps()) {
      after |= one.step().origin().equals(mounted.step().origin());
      boolean isOther =
          one.step() instanceof Step.Cut
              || (one.feature() != null
                  && !one.feature().spec().equals(feature.spec())
                  && one.feature().cutter() != null
                  && one.feature().cutter().name().equalsIgnoreCase(cutter.name()));
      if (after && isOther) {
        return false;
      }
    }
    return true;
  }

  /** Replaces a name behind a word within a line. */
  private void named(Origin line, String word, String old, String name, List<TextEdit> edits) {
    Matcher matcher =
        Pattern.compile("(?i)\\b" + word + "\\s+(" + Pattern.quote(old) + ")(?![\\w-])")
            .matcher(line.text());
    if (matcher.find()) {
      edits.add(
          text.replace(
              new Origin(
                  line.section(), line.start() + matcher.start(1), line.start() + matcher.end(1)),
              name));
    }
  }

  private void radiusOfTheCutter(Finding finding, Map<String, List<TextEdit>> fixes) {
    Owned.Cutter cutter = feature.cutter();
    Length drawn = feature.spec().radius();
    Origin line = feature.spec().origin();
    if (cutter == null || drawn == null || !view.tree().contains(line)) {
      return;
    }
    Matcher matcher =
        Pattern.compile("(?i)\\bradius\\s+([^,#\\r\\n]*[^,#\\s])").matcher(line.text());
    if (matcher.find()) {
      Origin clause =
          new Origin(
              line.section(), line.start() + matcher.start(1), line.start() + matcher.end(1));
      put(
          finding,
          "Draw the corners with " + LengthText.both(cutter.radius()),
          List.of(text.replace(clause, now.number(cutter.radius()))),
          fixes);
    }
  }

  // ---- Holes to go down in

  /** A hole of the drawing within the pocket, drilled before. */
  private void startingHole(Finding finding, Map<String, List<TextEdit>> fixes) {
    Part part = view.plan() == null ? null : view.plan().part();
    if (part == null) {
      return;
    }
    Owned.Cutter cutter = feature.cutter();
    StepRun mounted = cutter == null ? null : mounting(cutter);
    boolean knowsPlace =
        mounted != null
            && mounted.benchBefore().zeros().get(Axis.X) != null
            && mounted.benchBefore().zeros().get(Axis.Y) != null;
    Origin before = knowsPlace && mounted != null ? mounted.step().origin() : line();
    List<HoleSpec> holes =
        part.holes().stream()
            .filter(hole -> isSameWay(hole.face()))
            .filter(hole -> step.before().holes().get(hole.name()) == null)
            .limit(MOST_TRIALS)
            .toList();
    for (HoleSpec hole : holes) {
      List<TextEdit> edits = new ArrayList<>();
      for (StepRun later : setup.steps()) {
        boolean isOfIt =
            later.step() instanceof Step.HoleCut cut
                && later.step().origin().start() > line().start()
                && cut.holes().size() == 1
                && cut.holes().get(0).value().equalsIgnoreCase(hole.name());
        if (isOfIt) {
          edits.add(text.lineBefore(before, later.step().origin().text().strip()));
          edits.add(text.removeLines(later.step().origin()));
        }
      }
      if (edits.isEmpty()) {
        edits.add(text.lineBefore(before, "spot " + hole.name()));
        edits.add(text.lineBefore(before, "drill " + hole.name()));
      }
      if (put(finding, "Drill " + hole.name() + " first, to go down in", edits, fixes)) {
        return;
      }
    }
  }

  private boolean isSameWay(Face face) {
    return feature.spec().face() != null && feature.spec().face().dimension() == face.dimension();
  }

  // ---- Depth and what is left on

  /** The same line without what it leaves on. */
  private void oncemore(Finding finding, Map<String, List<TextEdit>> fixes) {
    if (feature.cut().way().leaving() == null) {
      return;
    }
    String verb = feature.cut().verb().name().toLowerCase(Locale.ROOT);
    StringBuilder line = new StringBuilder(verb).append(' ').append(feature.spec().name());
    if (feature.cut().way().cutter() != null) {
      line.append(" with ").append(feature.cut().way().cutter().name());
    }
    String way =
        clause(feature.cut().way().direction())
            + clause(feature.cut().way().rpm())
            + clause(feature.cut().way().feedPerTooth());
    String title = "Cut it once more and leave nothing";
    boolean isDone = put(finding, title, List.of(text.lineAfter(line(), line + way)), fixes);
    Located<Length> pass = feature.cut().way().pass();
    if (!isDone && pass != null) {
      String levels = ", pass " + now.number(pass.value());
      put(finding, title, List.of(text.lineAfter(line(), line + levels + way)), fixes);
    }
  }

  /** A clause as it is written, with a comma before it. */
  private static String clause(@Nullable Located<?> clause) {
    return clause == null ? "" : ", " + clause.origin().text().strip();
  }

  /** Goes down in even levels of at most a depth. */
  private boolean levels(Finding finding, Length most, Map<String, List<TextEdit>> fixes) {
    if (feature.drawn() == null || !most.isPositive()) {
      return false;
    }
    Length depth = feature.drawn().depth();
    Length even = new CutSizes(now).evenPass(depth, most);
    String clause = "pass " + now.number(even);
    Located<Length> pass = feature.cut().way().pass();
    TextEdit edit;
    if (pass == null) {
      edit = text.append(line(), ", " + clause);
    } else {
      boolean isWord = pass.origin().text().matches("(?is)pass\\b.*");
      edit = text.replace(pass.origin(), isWord ? clause : now.number(even));
    }
    return put(
        finding,
        "Go down in " + depth.stepsOf(even) + " levels of " + LengthText.both(even) + " at most",
        List.of(edit),
        fixes);
  }

  /** The depth that the motor's power, or the tolerance, bears; a little less if that is not it. */
  private void lighter(Finding finding, Map<String, List<TextEdit>> fixes) {
    CuttingConditions conditions =
        view.run() == null ? null : CuttingCalculator.of(view.run(), step).orElse(null);
    if (conditions == null || conditions.asked().bite() == null) {
      return;
    }
    double depth = conditions.asked().bite().depth().millimetres();
    CutSizes sizes = new CutSizes(now);
    for (double part : new double[] {0.75, 0.5, 0.35, 0.25, 0.15, 0.1}) {
      Length borne = sizes.roundedDown(Length.ofMillimetres(depth * part));
      if (borne.isPositive() && levels(finding, borne, fixes)) {
        return;
      }
    }
  }

  // ---- Order

  /** The setup of a finding before the one that takes its edges away. */
  static void setupBefore(
      View view, FileText text, Finding finding, Map<String, List<TextEdit>> fixes) {
    Section own = finding.origin().section();
    if (finding.related().isEmpty()) {
      return;
    }
    Section other = finding.related().get(0).origin().section();
    if (own == other || !view.tree().contains(finding.related().get(0).origin())) {
      return;
    }
    String source = view.tree().source().text();
    int start = text.source().lineStart(view.tree().line(own.header()));
    int end = source.length();
    for (Section section : view.tree().sections()) {
      int begins = text.source().lineStart(view.tree().line(section.header()));
      if (begins > start) {
        end = Math.min(end, begins);
      }
    }
    int to = text.source().lineStart(view.tree().line(other.header()));
    String moved = source.substring(start, end);
    String whole = moved.endsWith("\n") ? moved : moved + text.lineEnd();
    String apart = whole.endsWith(text.lineEnd() + text.lineEnd()) ? whole : whole + text.lineEnd();
    List<TextEdit> edits = List.of(new TextEdit(to, to, apart), new TextEdit(start, end, ""));
    if (Trial.addsNothing(view, finding, edits)) {
      fixes.put("Do this setup before the edge is cut away", edits);
    }
  }
}
