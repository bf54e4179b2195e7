package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Plan;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.handwheel.work.Bench;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingRates;
import org.handwheel.work.CuttingRates.Speed;
import org.handwheel.work.KnownMaterial;

/**
 * Spindle speed and feeds to start a cut with: from the material's usual cutting speed, the cutter
 * and the speeds the machine has.
 */
final class CuttingAdvice {
  static final String CAUTION =
      "These are starting points: the machine maker's manual and local rules come first.";

  private final CuttingRates rates;

  private CuttingAdvice(CuttingRates rates) {
    this.rates = rates;
  }

  static CuttingAdvice of(Plan plan, Owned.Cutter cutter, StandardTables tables) {
    return new CuttingAdvice(CuttingRates.of(plan, cutter, tables));
  }

  /** Adds speed and feeds of a cut to a text. */
  void add(HoverText.Builder text, CutRun cut, Bench bench) {
    Owned.Cutter cutter = rates.cutter();
    Optional<Speed> speed = rates.speed(cut, bench);
    if (speed.isEmpty()) {
      text.fact(
          "Spindle speed",
          rates.material() == null
              ? "no cutting speed is known for the material"
              : "the machine's speeds are not known");
      return;
    }
    double rpm = speed.get().turnsPerMinute();
    text.fact("Spindle speed", words(speed.get()));
    Optional<Length> perTooth = rates.feedPerTooth(cut, bench);
    if (perTooth.isPresent() && rpm > 0) {
      double feed = Feed.table(perTooth.get(), cutter.teeth(), rpm);
      text.fact(
          "Table feed",
          QuantityText.perMinute(feed)
              + " for "
              + perTooth.get()
              + " a tooth, "
              + cutter.teeth()
              + (cutter.teeth() == 1 ? " tooth" : " teeth"));
      addHandFeed(text, feed, rpm, cut.travel().axis());
    }
    text.note(CAUTION);
    text.formula(
        "speed in rpm = 1000 v / (pi D), v in m/min, D in mm (12 V / (pi D) in feet, inches)");
    text.formula("table feed = feed a tooth x teeth x rpm");
  }

  private String words(Speed speed) {
    double turns = speed.turnsPerMinute();
    return switch (speed.source()) {
      case PLAN -> "as planned " + rpm(turns) + ", " + atEdge(turns);
      case TABLES -> "about " + rpm(turns) + ", " + atEdge(turns);
      case STEP ->
          rpm(turns)
              + ", "
              + (speed.isTooFast()
                  ? "the slowest the machine has, though above the "
                      + rpm(speed.wanted())
                      + " wanted"
                  : "the nearest step not above " + rpm(speed.wanted()))
              + "; "
              + atEdge(turns);
    };
  }

  private String atEdge(double turnsPerMinute) {
    String words =
        QuantityText.surfaceSpeed(
            SpindleSpeed.metresPerMinute(turnsPerMinute, rates.cutter().dia()));
    KnownMaterial material = rates.material();
    Optional<SpeedRange> usual = rates.usual();
    if (material == null || usual.isEmpty()) {
      return words + " at the edge";
    }
    return words
        + " at the edge ("
        + QuantityText.surfaceSpeed(usual.get().low())
        + " to "
        + QuantityText.surfaceSpeed(usual.get().high())
        + " is usual for "
        + material.words()
        + ")";
  }

  private void addHandFeed(HoverText.Builder text, double feed, double rpm, Axis axis) {
    Owned.Machine machine = rates.machine();
    Owned.Screw screw = machine == null ? null : machine.screw(axis);
    if (screw == null || !(feed > 0)) {
      return;
    }
    Feed.HandFeed hand = Feed.byHand(feed, screw.lead(), screw.divisions());
    String words =
        "one turn of the "
            + axis.name()
            + " handle in "
            + QuantityText.number(hand.secondsPerTurn(), 1)
            + " s";
    if (hand.isTooFastToCrank()) {
      double slower = 60 * screw.lead().millimetres() / Feed.FASTEST_CRANKING;
      words +=
          ", too fast to keep up; a turn in "
              + QuantityText.number(Feed.FASTEST_CRANKING, 1)
              + " s is "
              + QuantityText.perMinute(slower)
              + ", "
              + Feed.perTooth(slower, rates.cutter().teeth(), rpm)
              + " a tooth";
    } else if (hand.isTooSlowToKeepSteady()) {
      words += "; too slow to keep steady by hand";
    }
    text.fact("By hand", words);
    text.formula("seconds for one turn = 60 x travel of one turn / table feed");
  }

  private static String rpm(double turnsPerMinute) {
    return QuantityText.number(turnsPerMinute, 0) + " rpm";
  }
}
