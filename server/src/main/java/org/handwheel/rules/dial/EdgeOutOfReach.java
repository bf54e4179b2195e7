package org.handwheel.rules.dial;

import java.util.Locale;
import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Located;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.rules.hole.HoleFaceHidden;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** An edge that is to be found from a side where it does not look: the work was turned over. */
public final class EdgeOutOfReach extends SimpleRule implements EachSetup {
  public EdgeOutOfReach() {
    super("edge-out-of-reach", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    // With the wrong face up the edges are the least of it; that is reported at the hole.
    checkup.wholeSetups().stream()
        .filter(setup -> !HoleFaceHidden.isAnyHidden(setup))
        .forEach(setup -> setup.steps().forEach(step -> check(setup, step, out)));
  }

  private void check(SetupRun setup, StepRun step, Consumer<Finding> out) {
    Orientation lies = setup.orientation();
    if (!(step.step() instanceof Step.Find find) || lies == null) {
      return;
    }
    Face face = find.face();
    Located<Direction> from = find.from();
    if (face == null || from == null || lies.directionOf(face) == from.value()) {
      return;
    }
    Direction looks = lies.directionOf(face);
    if (looks.axis() == from.value().axis() && isFoundFromInside(setup, face, looks)) {
      return;
    }
    String words =
        "the "
            + face.word()
            + " looks "
            + (looks.axis() == Axis.Z ? looks.words() : "to " + word(looks))
            + " here and cannot be found from "
            + word(from.value());
    Finding finding =
        finding(
            find.origin(), words, new Related(setup.setup().header(), "it lies so in this setup"));
    out.accept(
        looks.axis() == Axis.Z
            ? finding
            : finding.withFix(
                Fix.replace("Find it from " + word(looks), from.origin(), word(looks))));
  }

  /** A jaw, a plate or a stop stands where the face is, and beside the work it can be touched. */
  private static boolean isFoundFromInside(SetupRun setup, Face face, Direction looks) {
    Hold hold = setup.setup().hold();
    if (hold == null) {
      return false;
    }
    boolean atJaw =
        hold.fixed() != null
            && (hold.fixed().value() == face || hold.fixed().value().opposite() == face);
    return atJaw || (hold.stop() != null && hold.stop().value() == looks);
  }

  private static String word(Direction direction) {
    return direction.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
