package org.handwheel.ide;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Plan;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.handwheel.work.Bench;
import org.handwheel.work.CutRun;
import org.jspecify.annotations.Nullable;

/**
 * Spindle speed and feeds to start a cut with: from the material's usual cutting speed, the cutter
 * and the speeds the machine has.
 */
final class CuttingAdvice {
  static final String CAUTION =
      "These are starting points: the machine maker's manual and local rules come first.";

  private final Owned.Cutter cutter;
  private final @Nullable Material material;
  private final Owned.@Nullable Machine machine;

  private CuttingAdvice(
      Owned.Cutter cutter, @Nullable Material material, Owned.@Nullable Machine machine) {
    this.cutter = cutter;
    this.material = material;
    this.machine = machine;
  }

  static CuttingAdvice of(Plan plan, Owned.Cutter cutter, StandardTables tables) {
    return new CuttingAdvice(cutter, material(plan, tables).orElse(null), plan.machine());
  }

  static Optional<Material> material(Plan plan, StandardTables tables) {
    return plan.part() == null || plan.part().material() == null
        ? Optional.empty()
        : tables.materials().find(plan.part().material().value());
  }

  /** A speed with what it comes from. */
  private record Speed(double turnsPerMinute, String words) {}

  /** Adds speed and feeds of a cut to a text. */
  void add(HoverText.Builder text, CutRun cut, Bench bench) {
    Optional<Speed> speed = speed(cut, bench);
    if (speed.isEmpty()) {
      text.fact(
          "Spindle speed",
          material == null
              ? "the tables know no cutting speed for the material"
              : "the machine's speeds are not known");
      return;
    }
    double rpm = speed.get().turnsPerMinute();
    text.fact("Spindle speed", speed.get().words());
    Optional<Length> perTooth = feedPerTooth(cut, bench);
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

  private Optional<Speed> speed(CutRun cut, Bench bench) {
    Double planned = cut.cut().rpm() == null ? null : cut.cut().rpm().value();
    if (planned == null && bench.cutter() != null) {
      planned = bench.cutter().rpm();
    }
    if (planned != null) {
      return Optional.of(new Speed(planned, "as planned " + rpm(planned) + ", " + atEdge(planned)));
    }
    if (material == null) {
      return Optional.empty();
    }
    SpeedRange usual = usual(material);
    double wanted = SpindleSpeed.turnsPerMinute(usual.middle(), cutter.dia());
    List<Double> steps = machine == null ? List.of() : machine.speeds();
    if (steps.isEmpty()) {
      double top = machine == null || machine.topSpeed() <= 0 ? wanted : machine.topSpeed();
      double turns = Math.min(top, wanted);
      return Optional.of(new Speed(turns, "about " + rpm(turns) + ", " + atEdge(turns)));
    }
    SpindleSpeed.Choice choice = SpindleSpeed.choose(steps, wanted);
    String words =
        rpm(choice.turnsPerMinute())
            + ", "
            + (choice.isTooFast()
                ? "the slowest the machine has, though above the " + rpm(wanted) + " wanted"
                : "the nearest step not above " + rpm(wanted))
            + "; "
            + atEdge(choice.turnsPerMinute());
    return Optional.of(new Speed(choice.turnsPerMinute(), words));
  }

  private String atEdge(double turnsPerMinute) {
    String words =
        QuantityText.surfaceSpeed(SpindleSpeed.metresPerMinute(turnsPerMinute, cutter.dia()));
    if (material == null) {
      return words + " at the edge";
    }
    SpeedRange usual = usual(material);
    return words
        + " at the edge ("
        + QuantityText.surfaceSpeed(usual.low())
        + " to "
        + QuantityText.surfaceSpeed(usual.high())
        + " is usual for "
        + material.words()
        + ")";
  }

  private SpeedRange usual(Material known) {
    return known
        .speeds()
        .with(
            cutter.madeOf() == Owned.ToolMaterial.CARBIDE
                ? CutterMaterial.CARBIDE
                : CutterMaterial.HIGH_SPEED_STEEL);
  }

  private Optional<Length> feedPerTooth(CutRun cut, Bench bench) {
    if (cut.cut().feedPerTooth() != null) {
      return Optional.of(cut.cut().feedPerTooth().value());
    }
    if (bench.cutter() != null && bench.cutter().feedPerTooth() != null) {
      return Optional.of(bench.cutter().feedPerTooth());
    }
    if (material == null) {
      return Optional.empty();
    }
    CutterKind kind = cutter.cutterKind();
    boolean faces =
        kind == CutterKind.FACE_MILL
            || kind == CutterKind.FLY_CUTTER
            || kind == CutterKind.SHELL_MILL;
    return Optional.of(faces ? material.feed().faceMill() : material.feed().endMill(cutter.dia()));
  }

  private void addHandFeed(HoverText.Builder text, double feed, double rpm, Axis axis) {
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
              + Feed.perTooth(slower, cutter.teeth(), rpm)
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
