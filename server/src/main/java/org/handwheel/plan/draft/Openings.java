package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.plan.draft.HoleTools.Stay;
import org.handwheel.plan.draft.Search.Reached;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.rules.Checked;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Orientation;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * Holes, slots and pockets of a squared block, one setup for each face they are in: those that are
 * reamed last, so that the reamer cuts away the burrs of those that run into them.
 */
final class Openings {
  private static final Length TENTH = Length.mm("0.1");

  private final Task task;
  private final PlanText text;
  private final DraftProgress progress;
  private final HoleTools tools;
  private final Seats seats;
  private final Cutters cutters;
  private final Set<String> missing = new LinkedHashSet<>();

  Openings(Task task, PlanText text, DraftProgress progress) {
    this.task = task;
    this.text = text;
    this.progress = progress;
    this.tools = new HoleTools(task);
    this.seats = new Seats(task);
    this.cutters = new Cutters(task);
  }

  /** What came of it. */
  record Made(List<SetupDraft> setups, List<String> leftOut, Checked checked) {}

  /**
   * A hole, a pattern of holes, or a slot or pocket.
   *
   * @param half how far it reaches to each side of its middle, or of the middles of a pattern
   * @param below how far a tool comes out below the work; zero if it does not go through
   */
  private record Opening(
      String name,
      Extent extent,
      HoleTools.@Nullable Work work,
      @Nullable String cut,
      Owned.@Nullable Cutter cutter,
      Length half,
      Length below,
      Length depth,
      boolean several) {}

  /** The setups for all holes and slots, or nothing; then what is missing is known. */
  Optional<Made> make(Reached reached, Why why) {
    Workpiece work = reached.work();
    Map<Face, List<Opening>> byFace = new LinkedHashMap<>();
    List<String> leftOut = new ArrayList<>();
    collect(work, byFace, leftOut);
    if (!missing.isEmpty()) {
      missing.forEach(why::add);
      return Optional.empty();
    }
    List<Face> order =
        byFace.keySet().stream()
            .sorted(
                Comparator.<Face, Integer>comparing(face -> hasReamed(byFace.get(face)) ? 1 : 0)
                    .thenComparing(face -> task.byRank().indexOf(face)))
            .toList();
    List<SetupDraft> setups = new ArrayList<>();
    Checked checked = reached.checked();
    String cutter = reached.cutter();
    for (Face face : order) {
      Optional<SetupDraft> setup = Optional.empty();
      List<Opening> openings = byFace.getOrDefault(face, List.of());
      Why faceWhy = Why.of("holes and slots in the " + face.word());
      for (SetupDraft candidate : candidates(work, face, openings, cutter, faceWhy)) {
        List<SetupDraft> all = new ArrayList<>(reached.setups());
        all.addAll(setups);
        all.add(candidate);
        progress.tried(1);
        Checked now = text.check(all, checked);
        if (now.findings().stream().noneMatch(finding -> Search.isAgainst(now, finding))) {
          setup = Optional.of(candidate);
          checked = now;
          break;
        }
        now.findings().stream()
            .filter(finding -> Search.isAgainst(now, finding))
            .forEach(finding -> faceWhy.add(finding.message()));
      }
      if (setup.isEmpty()) {
        missing.addAll(faceWhy.sentences());
        missing.forEach(why::add);
        return Optional.empty();
      }
      setups.add(setup.get());
      cutter = setup.get().cutter() == null ? cutter : setup.get().cutter();
    }
    return Optional.of(new Made(List.copyOf(setups), leftOut, checked));
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

  private void collect(Workpiece work, Map<Face, List<Opening>> byFace, List<String> leftOut) {
    Set<String> inPatterns = new HashSet<>();
    for (FeatureSpec feature : task.part().features()) {
      Optional<Opening> opening = feature(feature, work, leftOut);
      if (opening.isPresent() && feature.face() != null) {
        byFace.computeIfAbsent(feature.face(), face -> new ArrayList<>()).add(opening.get());
      }
    }
    for (PatternSpec pattern : task.part().patterns()) {
      inPatterns.add(pattern.hole().toLowerCase(java.util.Locale.ROOT));
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
      if (hole.position() != null
          || !inPatterns.contains(hole.name().toLowerCase(java.util.Locale.ROOT))) {
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
                ? hole.drillDepth()
                : through == null ? Length.ZERO : through.range().high();
    Length below =
        hole.through()
            ? DrillPoint.GENERAL.length(largest).plus(task.numbers().usual("1", "0.040"))
            : Length.ZERO;
    Length widest = hole.dia() == null ? largest : Length.max(largest, hole.dia());
    return Optional.of(
        new Opening(
            name, extent.get(), made.get(), null, null, widest.half(), below, depth, several));
  }

  private Optional<Opening> feature(FeatureSpec feature, Workpiece work, List<String> leftOut) {
    boolean cuttable =
        (feature.featureKind() == FeatureKind.SLOT || feature.featureKind() == FeatureKind.POCKET)
            && feature.face() != null;
    String word = feature.featureKind().name().toLowerCase(java.util.Locale.ROOT);
    if (!cuttable) {
      leftOut.add(
          "the "
              + word
              + " "
              + feature.name()
              + " is left to you: a draft squares the block and makes holes, slots and pockets");
      return Optional.empty();
    }
    Optional<Extent> extent = Extent.of(feature, work);
    SizeState size = feature.face() == null ? null : work.size(feature.face().dimension());
    if (extent.isEmpty() || feature.width() == null || size == null) {
      missing.add("it is not said where the " + word + " " + feature.name() + " is, or how wide");
      return Optional.empty();
    }
    Length narrow =
        feature.length() == null ? feature.width() : Length.min(feature.width(), feature.length());
    Length whole = size.range().middle();
    boolean through =
        feature.through()
            || (feature.depth() != null && !feature.depth().isLessThan(whole.minus(TENTH)));
    Length depth = feature.depth() == null ? whole : feature.depth();
    List<Owned.Cutter> choices = cutters.between(narrow, depth);
    if (choices.isEmpty()) {
      missing.add(
          "no slot drill or end mill for the "
              + word
              + " "
              + feature.name()
              + ": it may be "
              + narrow
              + " thick at most, with flutes of at least "
              + depth);
      return Optional.empty();
    }
    Owned.Cutter cutter = choices.get(0);
    Length pass = task.numbers().usual("0.5", "0.020");
    String line =
        word
            + " "
            + feature.name()
            + " with "
            + cutter.name()
            + ", pass "
            + task.numbers().write(pass);
    Length below = through ? task.numbers().usual("0.5", "0.020") : Length.ZERO;
    return Optional.of(
        new Opening(
            feature.name(), extent.get(), null, line, cutter, Length.ZERO, below, depth, true));
  }

  // ---- How the work is held for it
  // ---------------------------------------------------------------------

  private List<SetupDraft> candidates(
      Workpiece work, Face face, List<Opening> openings, @Nullable String cutter, Why why) {
    Optional<Owned.Finder> finder =
        task.shop().all(Owned.Finder.class).stream()
            .min(Comparator.comparing(Owned.Finder::dia).thenComparing(Owned.Finder::name));
    if (finder.isEmpty()) {
      why.add("the shop has no edge finder (`own finder`)");
      return List.of();
    }
    List<SetupDraft> drafts = new ArrayList<>();
    for (Owned.Vise vise : task.shop().all(Owned.Vise.class)) {
      for (Face fixed : task.byRank()) {
        if (fixed.adjoins(face)) {
          hold(work, face, openings, vise, fixed, finder.get(), cutter, why, drafts);
        }
      }
    }
    drafts.sort(Comparator.comparingInt(SetupDraft::cost));
    return Holds.first(drafts, 8);
  }

  private void hold(
      Workpiece work,
      Face face,
      List<Opening> openings,
      Owned.Vise vise,
      Face fixed,
      Owned.Finder finder,
      @Nullable String cutter,
      Why why,
      List<SetupDraft> drafts) {
    SizeState up = work.size(face.dimension());
    SizeState across = work.size(fixed.dimension());
    if (up == null || across == null) {
      return;
    }
    if (across.range().high().isMoreThan(vise.opening())) {
      why.add(Holds.opens(vise, fixed.dimension(), across.range().high()));
      return;
    }
    Length below = openings.stream().map(Opening::below).reduce(Length.ZERO, Length::max);
    // The finder has to reach the edge above the jaws.
    Length reach = task.numbers().usual("2", "0.080");
    Asked asked =
        new Asked(
            vise,
            up.range(),
            across.range(),
            Length.ZERO,
            Length.max(task.numbers().usual("0.1", "0.004"), up.range().low().minus(reach)),
            below);
    List<Seat> choices = new ArrayList<>(seats.pairs(asked));
    boolean fits = !choices.isEmpty();
    choices.removeIf(seat -> !isClear(seat, openings, work, fixed));
    if (below.isZero() && choices.isEmpty()) {
      choices.addAll(seats.bed(asked));
    }
    if (choices.isEmpty()) {
      why.add(fits ? notClear(openings, work, fixed) : seats.whyNone(asked));
    }
    for (Seat seat : Holds.first(choices, 2)) {
      drafts.add(setup(work, face, openings, vise, fixed, seat, asked, finder, cutter));
    }
  }

  /** Whether no tool that goes through meets a parallel. */
  private boolean isClear(Seat seat, List<Opening> openings, Workpiece work, Face fixed) {
    return openings.stream()
        .filter(one -> one.below().isPositive())
        .allMatch(
            one ->
                room(one, work, fixed)
                    .map(room -> !room.isLessThan(seat.thickness()))
                    .orElse(false));
  }

  private Optional<Length> room(Opening opening, Workpiece work, Face fixed) {
    return opening
        .extent()
        .beside(fixed.dimension(), opening.half(), work)
        .map(room -> room.minus(task.numbers().usual("0.5", "0.020")));
  }

  private String notClear(List<Opening> openings, Workpiece work, Face fixed) {
    Length least =
        openings.stream()
            .filter(one -> one.below().isPositive())
            .flatMap(one -> room(one, work, fixed).stream())
            .min(Comparator.naturalOrder())
            .orElse(Length.ZERO);
    return "no parallels are thin enough to stay clear of what goes through, with the "
        + fixed.word()
        + " on the fixed jaw: they may be "
        + Length.max(least, Length.ZERO)
        + " thick at most";
  }

  // ---- The setup's text
  // ---------------------------------------------------------------------

  private SetupDraft setup(
      Workpiece work,
      Face face,
      List<Opening> openings,
      Owned.Vise vise,
      Face fixed,
      Seat seat,
      Asked asked,
      Owned.Finder finder,
      @Nullable String inSpindle) {
    Orientation orientation = Holds.orientation(vise, face, fixed);
    List<String> lines = new ArrayList<>();
    lines.add(
        "hold in "
            + vise.name()
            + ", up "
            + face.word()
            + ", fixed "
            + fixed.word()
            + ", "
            + seat.clause());
    lines.add("seat tapped" + (seat.isPair() ? ", both parallels tight" : ""));
    int cost = Holds.SETUP + seat.cost() + task.byRank().indexOf(fixed);
    cost += work.face(fixed).isMachined() ? 0 : 20;
    cost += work.relation(fixed, fixed.opposite()) == null ? 10 : 0;
    for (Face edge : edges(openings, orientation)) {
      Direction from = orientation.directionOf(edge);
      // An edge at the fixed jaw is hard to reach with the finder.
      cost += from == vise.fixedJaw() ? 15 : 0;
      lines.add(
          "find "
              + edge.word()
              + " from "
              + from.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')
              + " with finder "
              + finder.name()
              + ", zero "
              + from.axis().word()
              + " at edge");
    }
    String cutter = slots(face, openings, inSpindle, lines);
    holes(openings, lines);
    lines.add("deburr all edges");
    boolean slots = openings.stream().anyMatch(one -> one.cut() != null);
    boolean holes = openings.stream().anyMatch(one -> one.work() != null);
    String what = slots && holes ? "Slots and holes" : slots ? "Slots and pockets" : "Holes";
    return new SetupDraft(
        "openings " + face.word(),
        what + " from the " + face.word(),
        why(work, openings, face, fixed, seat, asked),
        List.of(),
        lines,
        null,
        cutter,
        null,
        cost);
  }

  /** The two edges that the first opening is measured from. */
  private static List<Face> edges(List<Opening> openings, Orientation orientation) {
    List<Face> edges = new ArrayList<>();
    List<Face> corner =
        openings.stream()
            .map(one -> one.extent().corner())
            .filter(faces -> faces.size() == 2)
            .findFirst()
            .orElse(List.of());
    for (Axis axis : new Axis[] {Axis.X, Axis.Y}) {
      Face negative = Face.of(orientation.along(axis), -1);
      edges.add(
          corner.stream()
              .filter(face -> face.dimension() == orientation.along(axis))
              .findFirst()
              .orElse(negative));
    }
    return edges;
  }

  private @Nullable String slots(
      Face face, List<Opening> openings, @Nullable String inSpindle, List<String> lines) {
    String cutter = inSpindle;
    for (Opening one : openings) {
      if (one.cut() == null || one.cutter() == null) {
        continue;
      }
      if (!one.cutter().name().equals(cutter)) {
        cutter = one.cutter().name();
        lines.add("cutter " + cutter);
      }
      lines.add(
          "touch "
              + face.word()
              + " with paper "
              + task.numbers().write(task.numbers().usual("0.05", "0.002"))
              + ", zero z");
      lines.add(one.cut());
    }
    return cutter;
  }

  private void holes(List<Opening> openings, List<String> lines) {
    List<Opening> holes = openings.stream().filter(one -> one.work() != null).toList();
    if (holes.isEmpty()) {
      return;
    }
    lines.add("spot " + String.join(", ", holes.stream().map(Opening::name).toList()));
    // Free holes of one drill together; then each that the spindle has to stay over.
    Map<String, List<String>> together = new LinkedHashMap<>();
    for (Opening hole : holes) {
      if (hole.work() != null && hole.work().stay() == Stay.FREE) {
        together.computeIfAbsent(drillWords(hole), words -> new ArrayList<>()).add(hole.name());
      }
    }
    together.forEach((words, names) -> lines.add("drill " + String.join(", ", names) + words));
    for (Opening hole : holes) {
      HoleTools.Work work = hole.work();
      if (work == null) {
        continue;
      }
      boolean stays = work.stay() == Stay.OVER_THE_HOLE;
      if (stays) {
        lines.add("drill " + hole.name() + drillWords(hole));
      }
      boolean lock = stays && !hole.several();
      if (lock) {
        lines.add("lock x y");
      }
      work.further().forEach(next -> lines.add(next[0] + " " + hole.name() + next[1]));
      if (lock) {
        lines.add("unlock x y");
      }
    }
    if (lines.get(lines.size() - 1).equals("unlock x y")) {
      lines.remove(lines.size() - 1);
    }
  }

  /** Sizes of the drills, and pecking where the hole is deeper than three times the drill. */
  private String drillWords(Opening hole) {
    HoleTools.Work work = hole.work();
    if (work == null) {
      return "";
    }
    Numbers numbers = task.numbers();
    List<String> sizes = work.sizes().stream().map(numbers::write).toList();
    boolean deep = hole.depth().isMoreThan(work.sizes().get(0).times(3));
    String peck =
        deep
            ? ", peck "
                + numbers.write(
                    Length.max(
                        numbers.down(work.sizes().get(0), "1", "0.05"), numbers.usual("1", "0.05")))
            : "";
    return " " + String.join(" then ", sizes) + peck;
  }

  private List<String> why(
      Workpiece work, List<Opening> openings, Face face, Face fixed, Seat seat, Asked asked) {
    List<String> why = new ArrayList<>();
    List<Face> found = openings.get(0).extent().corner();
    why.add(
        found.size() == 2
            ? "Measured from the "
                + found.get(0).word()
                + " and the "
                + found.get(1).word()
                + ", as on the drawing."
            : "Found by two edges; the drawing measures from the middle.");
    boolean through = openings.stream().anyMatch(one -> one.below().isPositive());
    if (through && seat.isPair()) {
      why.add(
          "The parallels, "
              + task.numbers().inWords(seat.thickness())
              + " thick, stay clear of what goes through.");
    }
    if (work.relation(fixed, fixed.opposite()) != null) {
      why.add("The jaws close on parallel faces.");
    }
    if (openings.stream()
        .anyMatch(
            one ->
                one.work() != null && one.work().stay() == Stay.OVER_THE_HOLE && !one.several())) {
      why.add("The table stays locked from the drill to the reamer.");
    }
    LengthRange height = asked.up();
    why.add(
        "The jaws grip "
            + task.numbers().inWords(asked.grip(seat.height()))
            + " of "
            + task.numbers().inWords(height.middle())
            + " under the "
            + face.word()
            + ".");
    return Words.filled(why);
  }
}
