package org.handwheel.rules.hold;

import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.Stock.Skin;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.FaceState;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/** A raw face on the fixed jaw although a clean one could be there: nothing becomes square. */
public final class RawReference extends SimpleRule implements EachSetup {
  public RawReference() {
    super("raw-reference", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(checkup, setup, out));
  }

  private void check(Checkup checkup, SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null || setup.steps().stream().noneMatch(step -> step.cut() != null)) {
      return;
    }
    Face fixed = setup.grip().fixedFace();
    FaceState state = setup.before().face(fixed);
    if (state.isMachined()) {
      return;
    }
    Optional<Face> better = better(setup, fixed);
    if (better.isEmpty() || isDrawnWellEnough(checkup, setup, state)) {
      return;
    }
    Origin origin =
        setup.grip().hold().fixed() == null
            ? setup.grip().hold().origin()
            : setup.grip().hold().fixed().origin();
    out.accept(
        finding(
            origin,
            "the "
                + fixed.word()
                + " on the fixed jaw is "
                + state.words()
                + ", so what is cut here becomes square to nothing; the "
                + better.get().word()
                + " is clean and could be there",
            new Related(
                state.since(), "the " + fixed.word() + " is left " + state.words() + " here"),
            new Related(
                setup.before().face(better.get()).since(),
                "the " + better.get().word() + " becomes clean here")));
  }

  /**
   * Bright bar may be gripped by its drawn faces where the drawing asks nothing of how the face
   * that is cut lies to others (common practice, no source).
   */
  private static boolean isDrawnWellEnough(Checkup checkup, SetupRun setup, FaceState fixed) {
    Part part = checkup.plan().part();
    if (fixed.skin() != Skin.DRAWN || part == null) {
      return false;
    }
    return part.callouts().stream()
        .noneMatch(callout -> setup.steps().stream().anyMatch(step -> isAsked(callout, step)));
  }

  private static boolean isAsked(Callout callout, StepRun step) {
    if (step.cut() == null) {
      return false;
    }
    return callout instanceof Callout.SquareAll
        || (callout instanceof Callout.Square square
            && (square.face() == step.cut().face() || square.reference() == step.cut().face()));
  }

  /**
   * A clean face that could lie on the fixed jaw: not underneath, not one that is cut here and not
   * its opposite, which would then face the moving jaw.
   */
  private static Optional<Face> better(SetupRun setup, Face fixed) {
    Workpiece work = setup.before();
    if (setup.orientation() == null) {
      return Optional.empty();
    }
    Face up = setup.orientation().up();
    return Face.all().stream()
        .filter(face -> face != fixed && face.adjoins(up))
        .filter(face -> work.face(face).isMachined())
        .filter(face -> fits(setup.grip(), work.size(face.dimension())))
        .filter(face -> setup.steps().stream().noneMatch(step -> isCutAlong(step, face)))
        .findFirst();
  }

  /** Whether the vise opens wide enough to grip this size. */
  private static boolean fits(@Nullable Grip grip, @Nullable SizeState size) {
    return grip != null && size != null && !size.range().high().isMoreThan(grip.vise().opening());
  }

  private static boolean isCutAlong(StepRun step, Face face) {
    return step.cut() != null && step.cut().face().dimension() == face.dimension();
  }
}
