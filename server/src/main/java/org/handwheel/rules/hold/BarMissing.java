package org.handwheel.rules.hold;

import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Bearing;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.Obstacle;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** No bar at the moving jaw although the face there is not parallel to the fixed one. */
public final class BarMissing extends SimpleRule {
  public BarMissing() {
    super("bar-missing", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    List<SetupRun> setups = checkup.wholeSetups();
    List<Missed> missed = checkup.gathered(Missed.class, Missed::in);
    for (int i = 0; i < setups.size(); i++) {
      Grip grip = setups.get(i).grip();
      Obstacle jaw = missed.get(i).jaw();
      if (grip != null && jaw != null && !isWantedParallel(checkup, setups.get(i), grip)) {
        out.accept(missing(setups.get(i), grip, jaw));
      }
    }
  }

  /** What keeps the work from lying flat at the fixed jaw for want of a bar, in one setup. */
  private record Missed(@Nullable Obstacle jaw) {
    static Missed in(SetupRun setup) {
      Grip grip = setup.grip();
      for (StepRun step : grip == null ? List.<StepRun>of() : setup.steps()) {
        Bearing bearing = step.bearing();
        if (grip == null || bearing == null || step.cut() == null) {
          continue;
        }
        Obstacle jaw = bearing.jaw();
        boolean flat = bearing.lean() == Bearing.Ruler.SEAT && Holding.baseRules(grip);
        return new Missed(jaw != null && isHere(grip, jaw) && !flat ? jaw : null);
      }
      return new Missed(null);
    }
  }

  private Finding missing(SetupRun setup, Grip grip, Obstacle jaw) {
    Face moving = grip.movingFace();
    Related related =
        new Related(
            setup.before().face(moving).since(),
            "the " + moving.word() + " becomes what it is here");
    if (grip.hold().bar() != null) {
      return finding(
          grip.hold().bar().origin(),
          jaw.why() + ", where it presses the work flat against the fixed jaw: `at mid-grip`",
          related);
    }
    return finding(
        grip.hold().origin(),
        jaw.why()
            + "; the moving jaw can pull the work away from the fixed one: put a round bar between"
            + " it and the work, `bar DIA at mid-grip`",
        related);
  }

  /** Whether the bar misses in this setup, and not in the one that made a face of this one. */
  private static boolean isHere(Grip grip, Obstacle jaw) {
    return jaw.kind() == Obstacle.Kind.NO_BAR
        && (jaw.origin().equals(grip.hold().origin())
            || (grip.hold().bar() != null && jaw.origin().equals(grip.hold().bar().origin())));
  }

  /**
   * Whether the drawing wants the faces at the two jaws parallel and the plan never makes them so:
   * then that is the mistake, and it is reported by its own rule.
   */
  private static boolean isWantedParallel(Checkup checkup, SetupRun setup, Grip grip) {
    Part part = checkup.plan().part();
    if (part == null
        || !setup.before().face(grip.movingFace()).isMachined()
        || checkup.run().end().relation(grip.fixedFace(), grip.movingFace()) != null) {
      return false;
    }
    return part.callouts().stream()
        .anyMatch(
            callout ->
                callout instanceof Callout.SquareAll
                    || (callout instanceof Callout.Parallel parallel
                        && parallel.face().dimension() == grip.fixedFace().dimension()));
  }
}
