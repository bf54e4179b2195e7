package org.handwheel.rules.dial;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.handwheel.model.Axis;
import org.handwheel.model.Located;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** A move along an axis that is locked. */
public final class LockConflict extends SimpleRule implements EachSetup {
  public LockConflict() {
    super("lock-conflict", Severity.WARNING);
  }

  @Override
  public Reach reach() {
    return Reach.ALL;
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    // Locks begin anew with each setup; a line that could not be read may unlock.
    checkup.run().setups().stream()
        .filter(setup -> setup.setup().damage() == Setup.Damage.NONE)
        .forEach(setup -> setup.steps().forEach(step -> check(setup, step, out)));
  }

  private void check(SetupRun setup, StepRun step, Consumer<Finding> out) {
    moves(setup, step)
        .forEach(
            (axis, why) -> {
              Origin lock = step.benchBefore().locks().get(axis);
              if (lock != null) {
                out.accept(
                    finding(
                        step.step().origin(),
                        why + " moves " + axis.word() + ", which is locked",
                        new Related(lock, axis.word() + " is locked here")));
              }
            });
  }

  /** The axes a step has to move, with what moves them; setting a depth between passes is none. */
  private static Map<Axis, String> moves(SetupRun setup, StepRun step) {
    Map<Axis, String> moves = new LinkedHashMap<>();
    Orientation orientation = setup.orientation();
    if (step.cut() != null) {
      moves.put(step.cut().travel().axis(), "the travel of this cut");
    } else if (step.step() instanceof Step.Touch touch && orientation != null) {
      moves.put(orientation.axisOf(touch.face()), "touching the " + touch.face().word());
    } else if (step.step() instanceof Step.Find find && find.from() != null) {
      moves.put(find.from().value().axis(), "finding the edge");
    } else if (step.step() instanceof Step.SetDepth set) {
      moves.put(set.axis(), "setting the depth");
    } else if (step.step() instanceof Step.HoleCut holes) {
      Set<String> names = holes.holes().stream().map(Located::value).collect(Collectors.toSet());
      // The spindle may stay locked over a single hole it already stands over.
      boolean stays = names.size() == 1 && names.equals(step.benchBefore().lastHoles());
      if (!stays) {
        moves.put(Axis.X, "going to the hole");
        moves.put(Axis.Y, "going to the hole");
      }
      moves.put(Axis.Z, "the quill");
    }
    return moves;
  }
}
