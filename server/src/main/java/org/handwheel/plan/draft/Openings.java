package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.plan.draft.HoleTools.Stay;
import org.handwheel.plan.draft.Search.Reached;
import org.handwheel.rules.Checked;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.syntax.Finding;
import org.handwheel.units.Length;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * Holes, slots and pockets of a squared block, one setup for each face they are in: those that are
 * reamed last, so that the reamer cuts away the burrs of those that run into them.
 */
final class Openings {
  private final Task task;
  private final PlanText text;
  private final HoleTools tools;
  private final OpeningSetups holding;
  private final Continued continued;
  private final Outlines outlines;
  private final Corners corners;
  private final Features features;
  private final Set<String> missing = new LinkedHashSet<>();

  Openings(Task task, PlanText text) {
    this.task = task;
    this.text = text;
    this.tools = new HoleTools(task);
    this.holding = new OpeningSetups(task);
    this.continued = new Continued(task);
    this.outlines = new Outlines(task);
    this.corners = new Corners(task);
    this.features = new Features(task);
  }

  /**
   * What came of it.
   *
   * @param setups all of the plan, those that cut the faces too
   * @param leftOut a sentence for each feature of the drawing that they do not make, by its name
   */
  record Made(List<SetupDraft> setups, Map<String, String> leftOut, Checked checked) {}

  /** Whether openings may be made in the setup that cut the last face. */
  enum Holding {
    WHERE_IT_IS,
    ANEW
  }

  /**
   * The setups for all holes and slots, the face setups before them; or nothing, and then what is
   * missing is known.
   */
  Optional<Made> make(Reached reached, Holding holding, Why why) {
    Workpiece work = reached.work();
    Map<Face, List<Opening>> byFace = new LinkedHashMap<>();
    Map<String, String> leftOut = new LinkedHashMap<>();
    collect(work, byFace, leftOut);
    if (!missing.isEmpty()) {
      missing.forEach(why::add);
      return Optional.empty();
    }
    List<Face> order =
        new ArrayList<>(
            byFace.keySet().stream()
                .sorted(
                    Comparator.<Face, Integer>comparing(face -> hasReamed(byFace.get(face)) ? 1 : 0)
                        .thenComparing(face -> task.byRank().indexOf(face)))
                .toList());
    State state = new State(reached.setups(), reached.checked(), reached.cutter());
    if (holding == Holding.WHERE_IT_IS) {
      Optional<State> further = continued(reached, state, order, byFace);
      if (further.isEmpty()) {
        return Optional.empty();
      }
      state = further.get();
    }
    for (Face face : order) {
      Why faceWhy = Why.of("holes and slots in the " + face.word());
      List<Opening> openings = byFace.getOrDefault(face, List.of());
      Optional<State> next =
          firstSound(
              state,
              this.holding.candidates(work, face, openings, state.cutter(), faceWhy),
              faceWhy);
      if (next.isEmpty()) {
        if (holding == Holding.ANEW) {
          missing.addAll(faceWhy.sentences());
          missing.forEach(why::add);
        }
        return Optional.empty();
      }
      state = next.get();
    }
    List<SetupDraft> setups = new ArrayList<>(state.setups());
    for (FeatureSpec outline : outlines()) {
      boolean corner = outline.featureKind() == FeatureKind.CORNER;
      Why outlineWhy =
          Why.of(
              "the "
                  + outline.featureKind().name().toLowerCase(Locale.ROOT)
                  + " "
                  + outline.name()
                  + " is left to you");
      Optional<SetupDraft> setup =
          corner
              ? corners.setup(outline, work, outlineWhy)
              : this.outlines.setup(outline, work, outlineWhy);
      setup.ifPresent(setups::add);
      if (setup.isEmpty()) {
        leftOut.put(outline.name(), String.join("; ", outlineWhy.sentences()));
      }
    }
    return Optional.of(new Made(setups, leftOut, state.checked()));
  }

  /** The setups so far, their check, and the cutter in the spindle. */
  private record State(List<SetupDraft> setups, Checked checked, @Nullable String cutter) {}

  /** The first face whose openings can follow in the last setup as it is; it leaves the order. */
  private Optional<State> continued(
      Reached reached, State state, List<Face> order, Map<Face, List<Opening>> byFace) {
    if (state.setups().isEmpty()) {
      return Optional.empty();
    }
    int index = state.setups().size() - 1;
    SetupDraft last = state.setups().get(index);
    State before = new State(state.setups().subList(0, index), state.checked(), state.cutter());
    for (Face face : order) {
      List<Opening> openings = byFace.getOrDefault(face, List.of());
      Optional<State> next =
          continued
              .with(reached.checked(), last, face, openings)
              .flatMap(setup -> firstSound(before, List.of(setup), Why.of(face)));
      if (next.isPresent()) {
        order.remove(face);
        return next;
      }
    }
    return Optional.empty();
  }

  private Optional<State> firstSound(State state, List<SetupDraft> candidates, Why why) {
    for (SetupDraft candidate : candidates) {
      List<SetupDraft> all = new ArrayList<>(state.setups());
      all.add(candidate);
      Checked now = text.check(all, state.checked());
      List<Finding> against =
          now.findings().stream().filter(finding -> Search.isAgainst(now, finding)).toList();
      if (against.isEmpty()) {
        String cutter = candidate.cutter() == null ? state.cutter() : candidate.cutter();
        return Optional.of(new State(List.copyOf(all), now, cutter));
      }
      against.forEach(finding -> why.add(finding.message()));
    }
    return Optional.empty();
  }

  /** The tools that holes and slots want and the shop does not have. */
  List<String> lackingTools() {
    collect(task.start().start(), new LinkedHashMap<>(), new LinkedHashMap<>());
    List<String> lacking = List.copyOf(missing);
    missing.clear();
    return lacking;
  }

  private List<FeatureSpec> outlines() {
    return task.part().features().stream()
        .filter(Openings::isAround)
        // A window first, while the edges are still there.
        .sorted(Comparator.comparing(feature -> feature.featureKind() != FeatureKind.WINDOW))
        .toList();
  }

  /** What the cutter goes all the way round, or along its inside. */
  private static boolean isAround(FeatureSpec feature) {
    return feature.featureKind() == FeatureKind.OUTLINE
        || feature.featureKind() == FeatureKind.WINDOW
        || feature.featureKind() == FeatureKind.CORNER;
  }

  List<String> missing() {
    return List.copyOf(missing);
  }

  private static boolean hasReamed(@Nullable List<Opening> openings) {
    return openings != null
        && openings.stream()
            .anyMatch(one -> one.work() != null && one.work().stay() == Stay.OVER_THE_HOLE);
  }

  // ---- What there is to make
  // ---------------------------------------------------------------------

  private void collect(
      Workpiece work, Map<Face, List<Opening>> byFace, Map<String, String> leftOut) {
    Set<String> inPatterns = new HashSet<>();
    for (FeatureSpec feature : task.part().features()) {
      if (isAround(feature)) {
        continue;
      }
      Optional<Opening> opening = features.opening(feature, work, leftOut, missing);
      if (opening.isPresent() && feature.face() != null) {
        byFace.computeIfAbsent(feature.face(), face -> new ArrayList<>()).add(opening.get());
      }
    }
    for (PatternSpec pattern : task.part().patterns()) {
      inPatterns.add(pattern.hole().toLowerCase(Locale.ROOT));
      task.part().holes().stream()
          .filter(hole -> hole.name().equalsIgnoreCase(pattern.hole()))
          .findFirst()
          .ifPresent(
              hole ->
                  hole(hole, pattern.name(), Extent.of(pattern, hole.face(), work), true, work)
                      .ifPresent(
                          one ->
                              byFace
                                  .computeIfAbsent(hole.face(), face -> new ArrayList<>())
                                  .add(one)));
    }
    for (HoleSpec hole : task.part().holes()) {
      if (hole.position() != null || !inPatterns.contains(hole.name().toLowerCase(Locale.ROOT))) {
        hole(hole, hole.name(), Extent.of(hole, work), false, work)
            .ifPresent(
                one -> byFace.computeIfAbsent(hole.face(), face -> new ArrayList<>()).add(one));
      }
    }
  }

  private Optional<Opening> hole(
      HoleSpec hole, String name, Optional<Extent> extent, boolean several, Workpiece work) {
    Why why = Why.of("");
    Optional<HoleTools.Work> made = tools.work(hole, why);
    if (made.isEmpty()) {
      missing.addAll(why.reasons());
      return Optional.empty();
    }
    if (extent.isEmpty()) {
      missing.add("it is not said where the hole " + name + " is");
      return Optional.empty();
    }
    Length largest = made.get().largest();
    SizeState through = work.size(hole.face().dimension());
    Length depth =
        hole.depth() != null
            ? hole.depth()
            : hole.drillDepth() != null
                ? hole.drillDepth().value()
                : through == null ? Length.ZERO : through.range().high();
    Length below =
        hole.through()
            ? DrillPoint.GENERAL.length(largest).plus(task.numbers().usual("1", "0.040"))
            : Length.ZERO;
    Length widest = hole.dia() == null ? largest : Length.max(largest, hole.dia());
    return Optional.of(
        new Opening(
            name,
            extent.get(),
            made.get(),
            null,
            null,
            widest.half(),
            below,
            Length.ZERO,
            depth,
            several));
  }
}
