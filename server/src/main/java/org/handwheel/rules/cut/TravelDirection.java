package org.handwheel.rules.cut;

import java.util.Locale;
import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Located;
import org.handwheel.model.Step;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.Engagement;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;

/** The stated travel is not possible, or not the stated kind of cut. */
public final class TravelDirection extends SimpleRule implements EachSetup {
  public TravelDirection() {
    super("travel-direction", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.run().knownSetups().toList()) {
      Orientation orientation = setup.orientation();
      if (orientation != null) {
        setup
            .steps()
            .forEach(
                step -> {
                  if (step.cut() != null) {
                    check(orientation, step.cut(), out);
                  }
                });
      }
    }
  }

  private void check(Orientation orientation, CutRun cut, Consumer<Finding> out) {
    Located<Step.Travel> travel = cut.cut().travel();
    if (travel != null && !isAlong(orientation, cut, travel.value())) {
      out.accept(
          finding(
              travel.origin(),
              "the cutter cannot travel this way over the "
                  + cut.face().word()
                  + ", which looks "
                  + cut.normal().words()
                  + " here; it travels from one side of the face to the opposite one",
              new Related(cut.cut().faceOrigin(), "the face is named here")));
      return;
    }
    checkOffset(orientation, cut, out);
    if (cut.mode() == CutRun.Mode.END) {
      checkFacing(cut, out);
    } else {
      checkWall(cut, out);
    }
  }

  private static boolean isAlong(Orientation orientation, CutRun cut, Step.Travel travel) {
    Direction from = orientation.resolve(travel.from());
    Direction to = orientation.resolve(travel.to());
    return from == to.opposite() && to.axis() != Axis.Z && to.axis() != cut.normal().axis();
  }

  /** An offset shifts the cutter across its travel; any other means nothing. */
  private void checkOffset(Orientation orientation, CutRun cut, Consumer<Finding> out) {
    Located<Step.Offset> offset = cut.cut().offset();
    if (offset == null) {
      return;
    }
    Axis axis = orientation.resolve(offset.value().toward()).axis();
    if (cut.mode() != CutRun.Mode.END || axis == cut.travel().axis() || axis == Axis.Z) {
      out.accept(
          finding(
              offset.origin(),
              cut.mode() == CutRun.Mode.END
                  ? "an offset shifts the cutter to one side of its travel; here the cutter travels "
                      + cut.travel().words()
                  : "an offset is for facing; at a wall the side of the cutter sets the size",
              new Related(cut.cut().origin(), "the cut is here")));
    }
  }

  private void checkWall(CutRun cut, Consumer<Finding> out) {
    Located<CutDirection> stated = cut.cut().direction();
    if (cut.cut().travel() == null || stated == null) {
      return;
    }
    CutDirection real = Engagement.alongWall(cut.normal(), cut.travel(), cut.cutter().hand());
    if (stated.value() != real) {
      Direction right = Engagement.travelFor(cut.normal(), stated.value(), cut.cutter().hand());
      out.accept(
          finding(
              cut.cut().travel().origin(),
              "with this travel the cut is "
                  + word(real)
                  + ", not "
                  + word(stated.value())
                  + "; for that the cutter travels "
                  + right.words(),
              new Related(stated.origin(), "the kind of cut is stated here")));
    }
  }

  /** Facing in one lane is what the cutter's place over the face makes it. */
  private void checkFacing(CutRun cut, Consumer<Finding> out) {
    Located<CutDirection> stated = cut.cut().direction();
    if (stated == null || cut.cut().stepOver() != null) {
      return;
    }
    boolean conventional = stated.value() == CutDirection.CONVENTIONAL;
    Engagement engagement = cut.engagement();
    if (conventional ? engagement.isConventional() : engagement.isClimb()) {
      return;
    }
    out.accept(
        finding(
            stated.origin(),
            "this cut is "
                + engagement.words()
                + ", not "
                + word(stated.value())
                + ": what it is follows from the side of the cutter the face lies on, by travel and"
                + " offset",
            new Related(cut.cut().origin(), "the cut is here")));
  }

  private static String word(CutDirection direction) {
    return direction.name().toLowerCase(Locale.ROOT);
  }
}
