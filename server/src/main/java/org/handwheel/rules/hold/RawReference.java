package org.handwheel.rules.hold;

import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.FaceState;
import org.handwheel.work.Grip;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/** A raw face on the fixed jaw although a clean one could be there: nothing becomes square. */
public final class RawReference extends SimpleRule {
  public RawReference() {
    super("raw-reference", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> check(setup, out));
  }

  private void check(SetupRun setup, Consumer<Finding> out) {
    if (setup.grip() == null || setup.steps().stream().noneMatch(step -> step.cut() != null)) {
      return;
    }
    Face fixed = setup.grip().fixedFace();
    FaceState state = setup.before().face(fixed);
    if (state.isMachined()) {
      return;
    }
    Optional<Face> better = better(setup, fixed);
    if (better.isEmpty()) {
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
   * A clean face that could lie on the fixed jaw: not the one being cut, not the one underneath.
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
        .findFirst();
  }

  /** Whether the vise opens wide enough to grip this size. */
  private static boolean fits(@Nullable Grip grip, @Nullable SizeState size) {
    return grip != null && size != null && !size.range().high().isMoreThan(grip.vise().opening());
  }
}
