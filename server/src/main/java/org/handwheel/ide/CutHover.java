package org.handwheel.ide;

import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.handwheel.model.Owned;
import org.handwheel.model.Plan;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.CutRun;
import org.handwheel.work.Dial;
import org.handwheel.work.DialMove;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;

/** What a cut does: sizes, passes, ways, locks, speed and feed. */
final class CutHover {
  private CutHover() {}

  static HoverText text(View view, Plan plan, StepRun step, CutRun cut) {
    HoverText.Builder text = HoverText.titled(title(cut));
    String dimension = cut.face().dimension().word();
    text.fact("The " + dimension + " before", size(cut.before()));
    text.fact("Comes off", removal(cut));
    text.fact("The " + dimension + " after", size(cut.after()));
    Drawing.Demand demand =
        view.run() == null ? null : view.run().drawing().demand(cut.face().dimension());
    if (demand != null) {
      text.fact("Left to the drawing", left(cut.after(), demand));
    }
    text.fact("Passes", passes(cut));
    Owned.Machine machine = plan.machine();
    text.fact("The cutter goes", cut.travel().words() + " along the work");
    String table = Dial.handleDirection(cut.travel(), zDrive(plan)).words();
    Owned.Screw travelScrew = machine == null ? null : machine.screw(cut.travel().axis());
    text.fact(
        "At the machine",
        machine == null || travelScrew == null
            ? "the table goes " + table
            : DialText.handle(cut.travel(), travelScrew, machine));
    text.fact("The teeth cut", engagement(cut));
    text.fact(
        "Lock",
        cut.locks().stream()
            .sorted()
            .map(axis -> axis.name())
            .collect(Collectors.joining(" and ")));
    if (cut.uncovered().isPositive()) {
      text.fact("Not covered", "a strip " + cut.uncovered() + " wide");
    }
    cut.hits().stream()
        .min(Comparator.comparing(CutRun.Hit::clearance))
        .ifPresent(
            hit ->
                text.fact(
                    "Nearest below",
                    hit.name()
                        + (hit.clearance().isPositive()
                            ? ", clear by " + hit.clearance()
                            : ": it cuts " + hit.clearance().abs() + " into it")));
    Optional<DialMove> move = view.run() == null ? Optional.empty() : MoveText.of(view.run(), step);
    if (move.isPresent()) {
      MoveText.add(text, move.get(), machine);
    } else {
      DialText.add(text, cut.passDepth(), cut.normal().opposite(), machine);
    }
    if (view.run() != null) {
      CuttingAdvice.of(view.run(), step).ifPresent(advice -> advice.add(text));
    }
    text.formula(
        "size after = size aimed at, give or take what is not known of the size before, the touch"
            + " and half a division of the dial");
    return text.build();
  }

  private static Owned.ZDrive zDrive(Plan plan) {
    return plan.machine() == null ? Owned.ZDrive.QUILL : plan.machine().zDrive();
  }

  private static String title(CutRun cut) {
    String part =
        switch (cut.mode()) {
          case END -> "the flat end";
          case SIDE, WALL -> "the side";
        };
    return cut.face().word() + ", cut with " + part + " of " + cut.cutter().name();
  }

  /** A size with how far it may be off. */
  static String size(SizeState state) {
    LengthRange range = state.range();
    if (range.width().isZero()) {
      return range.low().toString();
    }
    return range.middle() + ", give or take " + range.spread();
  }

  private static String removal(CutRun cut) {
    LengthRange removal = cut.removal();
    return !removal.high().isPositive() ? "nothing: it is already below" : removal.toString();
  }

  /** What is left to the middle of the limits, and whether they are met. */
  static String left(SizeState after, Drawing.Demand demand) {
    Length left = after.range().middle().minus(demand.aim());
    String words =
        left.isZero()
            ? "nothing"
            : left.isPositive() ? left.toString() : left.abs() + " too much came off";
    words += "; aim " + demand.aim() + ", limits " + demand.limits();
    if (demand.limits().contains(after.range())) {
      words += ": within them";
    }
    return words;
  }

  private static String passes(CutRun cut) {
    String count = cut.passes() == 1 ? "one pass" : cut.passes() + " passes";
    String depth =
        cut.passes() == 1 && !cut.passDepth().isMoreThan(cut.removal().high())
            ? " of "
            : " of at most ";
    String spring = cut.cut().springPasses() > 0 ? ", the last repeated without a new depth" : "";
    return count + depth + cut.passDepth() + spring;
  }

  private static String engagement(CutRun cut) {
    String words = cut.engagement().words().toLowerCase(Locale.ROOT);
    if (cut.engagement().isClimb()) {
      return words + ": they can pull the table along by its backlash; keep cuts light, drag on";
    }
    return cut.engagement().isConventional()
        ? words
        : words + " (teeth on both sides of the middle)";
  }
}
