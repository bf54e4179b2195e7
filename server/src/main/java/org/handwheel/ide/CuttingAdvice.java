package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.CuttingConditions.ToothFeed;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;

/**
 * Spindle speed and feeds to start a cut with, as {@link CuttingCalculator} works them out: the
 * same figures as the rules and the command line have.
 */
final class CuttingAdvice {
  static final String CAUTION =
      "These are starting points: the machine maker's manual and local rules come first.";

  private final CuttingConditions conditions;

  private CuttingAdvice(CuttingConditions conditions) {
    this.conditions = conditions;
  }

  /** Advice for a cut of a plan; nothing for a step that is no cut. */
  static Optional<CuttingAdvice> of(PlanRun run, StepRun step) {
    return CuttingCalculator.of(run, step).map(CuttingAdvice::new);
  }

  /** Adds speed and feeds of the cut to a text. */
  void add(HoverText.Builder text) {
    Spindle spindle = conditions.spindle();
    if (spindle == null) {
      text.fact("Spindle speed", "no cutting speed is known for the material");
      return;
    }
    text.fact("Spindle speed", words(spindle));
    ToothFeed feed = conditions.feed();
    TableFeed table = conditions.table();
    if (feed != null && table != null) {
      int teeth = conditions.asked().tool().teeth();
      text.fact(
          "Table feed",
          QuantityText.perMinute(table.millimetresPerMinute())
              + " for "
              + words(feed)
              + ", "
              + teeth
              + (teeth == 1 ? " tooth" : " teeth"));
      addHandFeed(text, table, spindle);
    }
    text.note(CAUTION);
    text.formula(
        "speed in rpm = 1000 v / (pi D), v in m/min, D in mm (12 V / (pi D) in feet, inches)");
    text.formula("table feed = feed a tooth x teeth x rpm");
  }

  private String words(Spindle spindle) {
    double turns = spindle.turnsPerMinute();
    String wanted = spindle.wanted() == null ? "the speed" : rpm(spindle.wanted());
    return switch (spindle.from()) {
      case STATED -> "as planned " + rpm(turns) + ", " + atEdge(spindle);
      case WANTED -> "about " + rpm(turns) + ", " + atEdge(spindle);
      case TOP_SPEED ->
          rpm(turns)
              + ", the top speed of the machine, below the "
              + wanted
              + " wanted; "
              + atEdge(spindle);
      case STEP -> rpm(turns) + ", the nearest step not above " + wanted + "; " + atEdge(spindle);
      case SLOWEST_STEP ->
          rpm(turns)
              + ", the slowest the machine has, though above the "
              + wanted
              + " wanted; "
              + atEdge(spindle);
    };
  }

  private static String words(ToothFeed feed) {
    String words = feed.perTooth() + " a tooth";
    return switch (feed.from()) {
      case STATED, USUAL -> words;
      case RAISED -> words + " (more than the usual " + feed.usual() + ", for a chip that cuts)";
      case BY_HAND -> words + " (as fast as a hand keeps up; usual is " + feed.usual() + ")";
    };
  }

  private String atEdge(Spindle spindle) {
    String words = QuantityText.surfaceSpeed(spindle.metresPerMinute());
    KnownMaterial material = conditions.asked().material();
    if (material == null || conditions.usualSpeed() == null) {
      return words + " at the edge";
    }
    return words
        + " at the edge ("
        + QuantityText.surfaceSpeed(conditions.usualSpeed().low())
        + " to "
        + QuantityText.surfaceSpeed(conditions.usualSpeed().high())
        + " is usual for "
        + material.words()
        + ")";
  }

  private void addHandFeed(HoverText.Builder text, TableFeed table, Spindle spindle) {
    HandFeed hand = table.hand();
    if (hand == null) {
      return;
    }
    String words =
        "one turn of the "
            + conditions.asked().travel().name()
            + " handle in "
            + QuantityText.number(hand.secondsPerTurn(), 1)
            + " s, "
            + QuantityText.number(hand.divisionsPerSecond(), 1)
            + " divisions a second";
    if (hand.isTooFastToCrank()) {
      words += ", too fast to keep up" + slower(spindle);
    } else if (hand.isTooSlowToKeepSteady()) {
      words += "; too slow to keep steady by hand";
    }
    text.fact("By hand", words);
    text.formula("seconds for one turn = 60 x travel of one turn / table feed");
  }

  private String slower(Spindle spindle) {
    Owned.Machine machine = conditions.asked().machine();
    Owned.Screw screw = machine == null ? null : machine.screw(conditions.asked().travel());
    if (screw == null) {
      return "";
    }
    double slower = 60 * screw.lead().millimetres() / Feed.FASTEST_CRANKING;
    return "; a turn in "
        + QuantityText.number(Feed.FASTEST_CRANKING, 1)
        + " s is "
        + QuantityText.perMinute(slower)
        + ", "
        + Feed.perTooth(slower, conditions.asked().tool().teeth(), spindle.turnsPerMinute())
        + " a tooth";
  }

  private static String rpm(double turnsPerMinute) {
    return QuantityText.number(turnsPerMinute, 0) + " rpm";
  }
}
