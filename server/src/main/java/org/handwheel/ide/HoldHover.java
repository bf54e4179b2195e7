package org.handwheel.ide;

import java.util.Locale;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.work.Bearing;
import org.handwheel.work.CutRun;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** How the work is held in a setup: jaws, grip, seat, and what rules how it lies. */
final class HoldHover {
  private HoldHover() {}

  static HoverText text(SetupRun setup) {
    HoverText.Builder text = HoverText.titled(title(setup));
    FaceHover.directions(text, setup);
    Grip grip = setup.grip();
    if (grip != null) {
      grip(text, grip);
    } else if (setup.setup().hold() == null) {
      text.note("It is not said how the work is held.");
    } else if (setup.setup().hold().rest() instanceof Hold.Rest.OnPlate plate) {
      text.fact("Held on", plate.plate().name().toLowerCase(Locale.ROOT) + ", clamped");
    } else {
      text.note("The grip cannot be worked out: sizes or faces are missing.");
    }
    setup.steps().stream()
        .filter(step -> step.bearing() != null)
        .findFirst()
        .ifPresent(step -> bearing(text, step));
    long cuts = setup.steps().stream().filter(step -> step.cut() != null).count();
    if (cuts > 0) {
      text.fact("Cuts", cuts(setup));
    }
    text.note(
        "Before the first cut: clamp firmly, take the chuck key and the vise handle away, wear eye"
            + " protection. The machine maker's manual and local rules come first.");
    return text.build();
  }

  private static String title(SetupRun setup) {
    String title = setup.setup().title();
    return setup.setup().words()
        + (title.isEmpty() || setup.setup().name() == null ? "" : ": " + title);
  }

  private static void grip(HoverText.Builder text, Grip grip) {
    Owned.Vise vise = grip.vise();
    text.fact(
        "Jaws open",
        grip.opening()
            + (grip.opening().isMoreThan(vise.opening()) ? ", more than the " : " of ")
            + vise.opening());
    text.fact(
        "Grip",
        range(grip.depth())
            + " deep, "
            + grip.gripLength()
            + " of the jaws' "
            + vise.jawWidth()
            + " long");
    text.fact("Stands above the jaws", range(grip.proud()));
    for (Direction end : new Direction[] {Direction.OPERATOR_LEFT, Direction.OPERATOR_RIGHT}) {
      Length overhang = grip.overhang(end);
      if (overhang.isPositive()) {
        text.fact("Stands out at the " + end.words(), overhang.toString());
      }
    }
    text.fact("Fixed jaw", "bears on the " + grip.fixedFace().word());
    text.fact(
        "Moving jaw",
        (grip.hold().bar() != null
                ? "bears through a bar " + grip.hold().bar().value().dia() + " on the "
                : "bears on the ")
            + grip.movingFace().word());
    text.fact("Sits", "on the " + grip.underFace().word() + ", " + grip.seat() + " above the bed");
    if (Holding.isLoose(grip)) {
      text.fact("Loose", "the jaws close on the parallels, not on the work");
    }
    if (Holding.isCocked(grip)) {
      text.fact("Moving jaw stands askew", "put a spacer as wide as the work at the other end");
    }
    text.formula("stands above the jaws = seat + height - depth of the jaws");
    text.formula("opening = widest size between the jaws + bar or packing beside it");
  }

  /** The ends of an interval that may reach below zero. */
  private static String range(LengthRange range) {
    return LengthText.range(range);
  }

  private static void bearing(HoverText.Builder text, StepRun step) {
    Bearing bearing = step.bearing();
    if (bearing == null) {
      return;
    }
    text.fact("Front to back ruled by", ruler(bearing.lean(), bearing));
    text.fact("Left to right ruled by", ruler(bearing.tilt(), bearing));
    text.fact(
        "Turn in plan ruled by",
        bearing.plan() == null ? "the fixed jaw" : "nothing: " + bearing.plan().why());
  }

  private static String ruler(Bearing.Ruler ruler, Bearing bearing) {
    return switch (ruler) {
      case JAW -> "the fixed jaw";
      case SEAT -> "the seat";
      case BOTH -> "the fixed jaw and the seat together";
      case SQUARE -> "the square it was set up with";
      case NONE ->
          "nothing"
              + (bearing.seat() != null
                  ? ": " + bearing.seat().why()
                  : bearing.jaw() != null ? ": " + bearing.jaw().why() : "");
    };
  }

  private static String cuts(SetupRun setup) {
    StringBuilder words = new StringBuilder();
    for (StepRun step : setup.steps()) {
      CutRun cut = step.cut();
      if (cut != null) {
        words.append(words.isEmpty() ? "" : "; ");
        words.append(cut.face().word()).append(" to ").append(CutHover.size(cut.after()));
      }
    }
    return words.toString();
  }
}
