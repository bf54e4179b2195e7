package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Plan;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.Drills;
import org.handwheel.shop.drill.Reaming;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Drills by name for a line that cuts holes: what the drawing asks for first, then the shop's own,
 * then all that are sold, those nearest to the hole first.
 */
final class DrillProposals {
  private static final int RANK = 20;
  private static final int OWNED = 60;
  private static final int SOLD = 100;

  private final Slot slot;
  private final Situation now;
  private final Drills drills;
  private final Map<String, Proposal> proposals = new LinkedHashMap<>();

  DrillProposals(Slot slot, Situation now) {
    this.slot = slot;
    this.now = now;
    this.drills = now.view().tables().drills();
  }

  List<Proposal> all() {
    List<HoleSpec> holes = holes();
    holes.forEach(this::asked);
    owned();
    sold(wanted(holes).orElse(null));
    return List.copyOf(proposals.values());
  }

  /** The holes that the line names. */
  private List<HoleSpec> holes() {
    Plan plan = now.view().plan();
    if (plan == null || plan.part() == null) {
      return List.of();
    }
    List<String> names = new ArrayList<>();
    for (Token token : slot.before().subList(1, slot.before().size())) {
      names.add(token.getText().toLowerCase(Locale.ROOT));
    }
    plan.part()
        .patterns()
        .forEach(
            pattern -> {
              if (names.contains(pattern.name().toLowerCase(Locale.ROOT))) {
                names.add(pattern.hole().toLowerCase(Locale.ROOT));
              }
            });
    return plan.part().holes().stream()
        .filter(hole -> names.contains(hole.name().toLowerCase(Locale.ROOT)))
        .toList();
  }

  private static @Nullable ScrewThread thread(Situation now, HoleSpec hole) {
    return hole.thread() == null
        ? null
        : now.view().tables().threads().find(hole.thread()).orElse(null);
  }

  /** What the drawing of a hole asks for. */
  private void asked(HoleSpec hole) {
    ScrewThread thread = thread(now, hole);
    if (thread != null) {
      Drill tap = thread.tapDrill();
      add(tap, "tapping drill of " + thread.designation() + percent(thread, tap), RANK);
      return;
    }
    Length dia = hole.dia();
    if (dia == null) {
      return;
    }
    boolean drilled = slot.firstType() == HandwheelLexer.DRILL;
    if (drilled && hole.fit() != null) {
      LengthRange range = Reaming.drilledForMachine(dia);
      drills.all().stream()
          .filter(drill -> range.contains(drill.diameter()))
          .sorted(Comparator.comparing(Drill::diameter).reversed())
          .forEach(drill -> add(drill, "for the reamer of " + hole.name(), RANK + 1));
    }
    String words = hole.name() + " as drawn";
    Drill own = drills.nearest(dia);
    if (own.diameter().equals(dia)) {
      add(own, words, drilled && hole.fit() != null ? RANK + 10 : RANK);
    } else {
      add(now.number(dia), LengthText.both(dia) + ", " + words, "", RANK + 10);
    }
  }

  private static String percent(ScrewThread thread, Drill drill) {
    return ", " + Math.round(thread.percentOfThread(drill.diameter())) + " % of thread";
  }

  /** The diameter that the first hole asks for. */
  private Optional<Length> wanted(List<HoleSpec> holes) {
    return holes.stream()
        .flatMap(
            hole -> {
              ScrewThread thread = thread(now, hole);
              return Optional.ofNullable(thread == null ? hole.dia() : thread.tapDrill().diameter())
                  .stream();
            })
        .findFirst();
  }

  private void owned() {
    for (Owned.Piece piece : now.shop().all(Owned.Piece.class)) {
      Length dia = piece.size("dia");
      if (piece.isTwistDrill() && dia != null) {
        drills.all().stream()
            .filter(drill -> drill.diameter().equals(dia))
            .findFirst()
            .ifPresent(drill -> add(drill, "owned: " + piece.name(), OWNED));
      }
    }
  }

  private void sold(@Nullable Length near) {
    Comparator<Drill> order =
        near == null
            ? Comparator.comparing(Drill::diameter)
            : Comparator.comparing(drill -> drill.diameter().minus(near).abs());
    List<Drill> all = drills.all().stream().sorted(order).toList();
    for (int i = 0; i < all.size(); i++) {
      add(all.get(i), all.get(i).series().words(), SOLD + i);
    }
  }

  private void add(Drill drill, String detail, int rank) {
    add(
        written(drill),
        LengthText.both(drill.diameter()) + ", " + detail,
        "drill " + drill.words(),
        rank);
  }

  /** As the plan writes it: bare where the file has the drill's unit. */
  private String written(Drill drill) {
    boolean inches = now.units() == LengthUnit.IN;
    return switch (drill.series()) {
      case NUMBER, LETTER -> drill.designation();
      case METRIC -> now.units() == LengthUnit.MM ? drill.designation() : drill.words();
      case FRACTIONAL -> inches ? drill.designation().replace(" in", "") : drill.designation();
    };
  }

  private void add(String label, String detail, String topic, int rank) {
    proposals.putIfAbsent(label, Proposal.plain(label, Proposal.Kind.VALUE, detail, topic, rank));
  }
}
