package org.handwheel.ide;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.units.LengthText;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.DialMoves;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** How the dial of a cut is set, in words. */
final class MoveText {
  private static final int MOST_STOPS = 8;

  private MoveText() {}

  /** The move of a step, if it is a cut whose dial can be told. */
  static Optional<DialMove> of(PlanRun run, StepRun step) {
    for (SetupRun setup : run.setups()) {
      for (int i = 0; i < setup.steps().size(); i++) {
        if (setup.steps().get(i).step().origin().equals(step.step().origin())) {
          return DialMoves.of(run, setup, i);
        }
      }
    }
    return Optional.empty();
  }

  /** Turns and the reading after them: {@code 1 turn + 18}. */
  static String stop(Stop stop) {
    String reading = stop.reading().toPlainString();
    if (stop.turns() == 0) {
      return reading;
    }
    String turns = stop.turns() == 1 ? "1 turn" : stop.turns() + " turns";
    return stop.reading().signum() == 0 ? turns : turns + " + " + reading;
  }

  /** The last stop in few words: {@code Z 1 turn + 18}. */
  static String brief(DialMove move) {
    String sign = isCountedFromZero(move) ? "" : "+";
    return move.axis().name() + " " + sign + stop(move.last());
  }

  private static boolean isCountedFromZero(DialMove move) {
    return move.start() instanceof Start.Touch
        || (move.start() instanceof Start.LastCut last && last.reading() != null);
  }

  static void add(HoverText.Builder text, DialMove move, Owned.@Nullable Machine machine) {
    String axis = move.axis().name();
    text.fact("The " + axis + " dial counts", counted(move));
    List<Stop> stops = move.stops();
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < stops.size(); i++) {
      if (stops.size() > MOST_STOPS && i == MOST_STOPS - 1) {
        all.append(", ... ").append(stop(move.last()));
        break;
      }
      all.append(i == 0 ? "" : ", ").append(stop(stops.get(i)));
    }
    text.fact(
        stops.size() == 1 ? "Stop at" : "Stop for each pass at",
        all
            + " (a dial that counts down shows "
            + move.last().readingDown().toPlainString()
            + " at the end)");
    text.fact(
        "Wind in",
        stop(move.wind()) + (move.wind().turns() == 0 ? " divisions" : "") + handle(move, machine));
    text.fact(
        "The last stop goes",
        DialText.off(move.last().error())
            + "; with reading and touch off by at most "
            + move.doubt());
    text.fact("Backlash", backlash(move));
    text.formula(DialText.FORMULA + "; every stop counts from the dial's zero");
  }

  private static String counted(DialMove move) {
    if (move.start() instanceof Start.Touch touch) {
      return "from zero at the touch of the "
          + touch.face().word()
          + (touch.paper().isPositive() ? ", " + touch.paper() + " of paper between" : "");
    }
    return isCountedFromZero(move)
        ? "from its zero; the size was measured since the last cut"
        : "from where it stood at the last cut, whose size was measured since";
  }

  private static String handle(DialMove move, Owned.@Nullable Machine machine) {
    Owned.Screw screw = machine == null ? null : machine.screw(move.axis());
    return machine == null || screw == null
        ? ""
        : "; " + DialText.handle(move.cutter(), screw, machine);
  }

  private static String backlash(DialMove move) {
    return switch (move.loading()) {
      case SAME_SIDE ->
          "the screw bears already; if you wound past, back off "
              + LengthText.both(move.takeUp())
              + " and come in again";
      case OTHER_SIDE ->
          "the zero was taken from the other side: clear of the work, run past by "
              + move.takeUp()
              + " and come back";
      case UNKNOWN -> "back off " + move.takeUp() + " and come in, so that the screw bears";
    };
  }
}
