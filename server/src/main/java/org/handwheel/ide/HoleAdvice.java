package org.handwheel.ide;

import java.util.List;
import java.util.Locale;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleCalculator;
import org.handwheel.work.hole.HoleCalculator.Group;
import org.handwheel.work.hole.HoleConditions;
import org.handwheel.work.hole.HoleConditions.TurnFeed;
import org.handwheel.work.hole.HoleConditions.TurnFrom;

/** Spindle speed and feed of the tools of a line on holes: the figures of `handwheel speeds`. */
final class HoleAdvice {
  private HoleAdvice() {}

  /** Adds speed and feed of each tool to a text. */
  static void add(HoverText.Builder text, PlanRun run, StepRun step) {
    List<Group> groups = HoleCalculator.of(run, step, StandardTables.builtIn());
    for (Group group : groups) {
      HoleConditions conditions = group.conditions();
      String label = conditions.asked().bit().name();
      text.fact(label + ", speed", speed(conditions));
      if (conditions.feed() != null) {
        text.fact(label + ", feed", feed(conditions, conditions.feed()));
      }
      String how = how(conditions);
      if (!how.isEmpty()) {
        text.fact(label + ", in all", how);
      }
    }
    if (groups.stream().anyMatch(group -> group.conditions().spindle() != null)) {
      text.note(CuttingAdvice.CAUTION);
      text.formula("speed in rpm = 1000 v / (pi D), v in m/min, D in mm");
      text.formula("seconds for one turn of the handle = 60 x travel of one turn / (feed x rpm)");
    }
  }

  private static String speed(HoleConditions conditions) {
    if (conditions.asked().byHand()) {
      return "turned by hand, spindle stopped";
    }
    Spindle spindle = conditions.spindle();
    if (spindle == null) {
      return "no cutting speed is known for the material";
    }
    KnownMaterial material = conditions.asked().material();
    String usual =
        conditions.usualSpeed() == null || material == null
            ? ""
            : " ("
                + QuantityText.surfaceSpeed(conditions.usualSpeed().low())
                + " to "
                + QuantityText.surfaceSpeed(conditions.usualSpeed().high())
                + " is usual for "
                + material.words()
                + ")";
    return words(spindle)
        + "; "
        + QuantityText.surfaceSpeed(spindle.metresPerMinute())
        + " at the edge"
        + usual;
  }

  private static String words(Spindle spindle) {
    String turns = rpm(spindle.turnsPerMinute());
    String wanted = spindle.wanted() == null ? "the speed" : rpm(spindle.wanted());
    return switch (spindle.from()) {
      case STATED -> "as planned " + turns;
      case WANTED -> "about " + turns;
      case TOP_SPEED -> turns + ", the top speed, below the " + wanted + " wanted";
      case STEP -> turns + ", the nearest step not above " + wanted;
      case SLOWEST_STEP -> turns + ", the slowest there is, though above " + wanted;
    };
  }

  private static String feed(HoleConditions conditions, TurnFeed feed) {
    StringBuilder words = new StringBuilder(feed.perTurn().toString()).append(" a turn");
    switch (feed.from()) {
      case STATED -> words.append(", as planned");
      case PITCH -> words.append(", its pitch");
      case BY_HAND -> words.append(" (as fast as a hand keeps up; usual is ").append(feed.usual());
      case MOTOR -> words.append(" (all that the motor gives; usual is ").append(feed.usual());
      case USUAL -> {}
    }
    if (feed.from() == TurnFrom.BY_HAND || feed.from() == TurnFrom.MOTOR) {
      words.append(")");
    }
    TableFeed down = conditions.down();
    if (down == null) {
      return words.toString();
    }
    words.append(", ").append(QuantityText.perMinute(down.millimetresPerMinute()));
    HandFeed hand = down.hand();
    Owned.Machine machine = conditions.asked().machine();
    if (hand != null && machine != null) {
      words
          .append("; one turn of the z handle in ")
          .append(QuantityText.number(hand.secondsPerTurn(), 1))
          .append(" s (it moves the ")
          .append(machine.zDrive().name().toLowerCase(Locale.ROOT))
          .append(")");
      if (hand.isTooFastToCrank()) {
        words.append(", too fast to keep up");
      }
    }
    return words.toString();
  }

  private static String how(HoleConditions conditions) {
    StringBuilder words = new StringBuilder();
    if (conditions.turns() != null) {
      words.append(QuantityText.number(conditions.turns(), 1)).append(" turns to depth");
    }
    if (conditions.pecks() > 1) {
      words.append(conditions.pecks()).append(" pecks, out for chips between");
    }
    if (conditions.seconds() != null) {
      words
          .append(words.isEmpty() ? "" : ", ")
          .append("about ")
          .append(QuantityText.number(conditions.seconds(), 0))
          .append(" s of cutting a hole");
    }
    if (conditions.asked().verb() == HoleVerb.TAP && !conditions.asked().byHand()) {
      words
          .append(words.isEmpty() ? "" : "; ")
          .append("under power only with a tapping attachment");
    }
    return words.toString();
  }

  private static String rpm(double turnsPerMinute) {
    return QuantityText.number(turnsPerMinute, 0) + " rpm";
  }
}
