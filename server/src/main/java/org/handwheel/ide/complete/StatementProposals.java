package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.plan.draft.NextHold;
import org.handwheel.syntax.SectionKind;
import org.handwheel.units.Length;
import org.handwheel.work.Bench;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/** Whole lines that come next in a setup, as far as the plan so far tells. */
final class StatementProposals {
  private static final int RANK = 0;

  private final Slot slot;
  private final Situation now;
  private final CutSizes sizes;
  private final List<Proposal> proposals = new ArrayList<>();

  StatementProposals(Slot slot, Situation now) {
    this.slot = slot;
    this.now = now;
    this.sizes = new CutSizes(now);
  }

  List<Proposal> all() {
    if (slot.section().kind() != SectionKind.SETUP || now.setup() == null) {
      return List.of();
    }
    SetupRun setup = now.setup();
    if (setup.setup().hold() == null) {
      nextHold();
      return List.copyOf(proposals);
    }
    Orientation orientation = setup.orientation();
    Workpiece work = now.work();
    if (orientation == null || work == null) {
      return List.of();
    }
    Step last = lastStep(setup);
    if (now.bench() == null || now.bench().cutter() == null) {
      cutter();
      return List.copyOf(proposals);
    }
    burrs(work);
    measure(last, work);
    seat(setup, orientation, work, last);
    touch(orientation.up());
    cut(orientation.up(), work, last);
    return List.copyOf(proposals);
  }

  /** As a draft would hold it; where it knows too little, by the usual order alone. */
  private void nextHold() {
    Workpiece work = now.work();
    Bench bench = now.bench();
    Optional<NextHold.Lines> drafted =
        work == null
            ? Optional.empty()
            : new NextHold(now.view().workspace(), now.view().checked(), now.view().tables())
                .lines(slot.lineStart(), work, bench);
    drafted.ifPresent(
        lines -> lines.before().forEach(line -> add(line, "the next hold relies on it")));
    drafted
        .map(NextHold.Lines::hold)
        .or(() -> new Holds(now).next())
        .ifPresent(line -> add(line, "the next face in the squaring order"));
  }

  private void add(String line, String why) {
    proposals.add(Proposal.plain(line, Proposal.Kind.STATEMENT, why, RANK + proposals.size()));
  }

  private @Nullable Step lastStep(SetupRun setup) {
    int line = slot.lineStart() - now.view().tree().base(slot.section());
    Step last = null;
    for (StepRun step : setup.steps()) {
      if (step.step().origin().start() < line) {
        last = step.step();
      }
    }
    return last;
  }

  private void cutter() {
    now.shop().all(Owned.Cutter.class).stream()
        .findFirst()
        .ifPresent(cutter -> add("cutter " + cutter.name(), "no cutter is in the spindle yet"));
  }

  private void burrs(Workpiece work) {
    List<String> faces =
        Face.all().stream().filter(face -> work.face(face).burr() != null).map(Face::word).toList();
    if (!faces.isEmpty()) {
      add("deburr edges of " + String.join(" ", faces), "their edges have burrs");
    }
  }

  private void measure(@Nullable Step last, Workpiece work) {
    boolean afterDeburr = last instanceof Step.Deburr || last instanceof Step.Cut;
    Optional<Face> cut = lastCutFace();
    if (!afterDeburr || cut.isEmpty()) {
      return;
    }
    SizeState size = work.size(cut.get().dimension());
    if (size == null || size.known() == null) {
      now.instrumentFor(cut.get())
          .ifPresent(
              instrument ->
                  add(
                      "measure " + cut.get().dimension().word() + " with " + instrument.name(),
                      "the finest that reaches it"));
    }
  }

  private Optional<Face> lastCutFace() {
    int line = slot.lineStart() - now.view().tree().base(slot.section());
    Face face = null;
    for (StepRun step : now.setup() == null ? List.<StepRun>of() : now.setup().steps()) {
      if (step.step() instanceof Step.Cut cut && step.step().origin().start() < line) {
        face = cut.face();
      }
    }
    return Optional.ofNullable(face);
  }

  private void seat(SetupRun setup, Orientation orientation, Workpiece work, @Nullable Step last) {
    Hold hold = setup.setup().hold();
    boolean onParallels =
        hold != null
            && hold.support() != null
            && (hold.support().value() instanceof Hold.Support.Pair);
    boolean clean = work.face(orientation.facing(Direction.DOWN)).isMachined();
    boolean seated = now.bench() != null && now.bench().seat() != null;
    if (onParallels && clean && !seated && !(last instanceof Step.Cut)) {
      add("seat tapped, both parallels tight", "proves that the work sits");
    }
  }

  private void touch(Face up) {
    Bench.Zero zero = now.bench() == null ? null : now.bench().zeros().get(Axis.Z);
    if (zero == null || zero.loss() != null) {
      add(
          "touch " + up.word() + " with paper " + now.number(Length.mm("0.05")) + ", zero z",
          zero == null ? "no depth without a zero" : "the zero was lost");
    }
  }

  private void cut(Face up, Workpiece work, @Nullable Step last) {
    Optional<Face> before = lastCutFace();
    boolean raw = !work.face(up).isMachined();
    boolean target = now.demand(up) != null;
    boolean opposite = work.face(up.opposite()).isMachined();
    if (before.isPresent() && before.get() == up && lastRough(up)) {
      add("finish " + up.word() + " to " + up.dimension().word(), "what was left for it");
      return;
    }
    if (!raw || last instanceof Step.Cut) {
      return;
    }
    if (opposite && target) {
      Length leaving = sizes.allowance();
      sizes
          .removal(up, leaving)
          .ifPresent(
              removal ->
                  add(
                      "rough "
                          + up.word()
                          + " to "
                          + up.dimension().word()
                          + " leaving "
                          + now.number(leaving)
                          + ", pass "
                          + now.number(sizes.evenPass(removal, sizes.passLimit(up))),
                      "to near its size"));
    } else {
      sizes
          .mostToClean(up)
          .ifPresent(
              most ->
                  add(
                      "clean "
                          + up.word()
                          + " at "
                          + now.number(
                              Length.min(most, Length.min(Length.mm("0.4"), sizes.passLimit(up))))
                          + ", at most "
                          + now.number(most),
                      "until its marks are gone"));
    }
  }

  private boolean lastRough(Face face) {
    int line = slot.lineStart() - now.view().tree().base(slot.section());
    boolean rough = false;
    for (StepRun step : now.setup() == null ? List.<StepRun>of() : now.setup().steps()) {
      if (step.step() instanceof Step.Cut cut
          && cut.face() == face
          && step.step().origin().start() < line) {
        rough = cut.purpose() instanceof Step.Purpose.Rough;
      }
    }
    return rough;
  }
}
