package org.handwheel.work;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.shop.cutting.CuttingPower;
import org.handwheel.shop.cutting.Deflection;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.handwheel.work.CuttingConditions.Asked;
import org.handwheel.work.CuttingConditions.Bite;
import org.handwheel.work.CuttingConditions.Chip;
import org.handwheel.work.CuttingConditions.FeedFrom;
import org.handwheel.work.CuttingConditions.Load;
import org.handwheel.work.CuttingConditions.SpeedFrom;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.CuttingConditions.Tool;
import org.handwheel.work.CuttingConditions.ToothFeed;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureBite;
import org.handwheel.work.feature.FeatureRun;
import org.jspecify.annotations.Nullable;

/**
 * Works out {@link CuttingConditions}; pure functions.
 *
 * <p>The order: the usual cutting speed gives the spindle speed, taken down to a speed the machine
 * has; the usual feed per tooth is raised where the chip would be too thin to cut, and lowered to
 * what a hand can wind; feed and bite give power, force and deflection.
 */
public final class CuttingCalculator {
  /** The helix of an end mill's flutes, degrees: what is usual (common practice, no source). */
  private static final double HELIX = 30;

  private final Limits limits;

  public CuttingCalculator(Limits limits) {
    this.limits = limits;
  }

  /**
   * The conditions of a cut of a plan, or of a line on a feature where it takes the most; nothing
   * for a step that is neither.
   */
  public static Optional<CuttingConditions> of(PlanRun run, StepRun step) {
    if (step.feature() != null) {
      return ofFeature(run, step, step.feature());
    }
    CutRun cut = step.cut();
    Bench.Tool mounted = step.benchBefore().cutter();
    if (cut == null || !cut.cutter().dia().isPositive()) {
      return Optional.empty();
    }
    Limits limits = run.plan().shop().limits();
    Double rpm = mounted == null ? null : mounted.rpm();
    Length feed = mounted == null ? null : mounted.feedPerTooth();
    Bite bite = new Bite(cut.axialDepth(), cut.engagement());
    return Optional.of(
        new CuttingCalculator(limits)
            .work(
                new Asked(
                    run.material(),
                    run.plan().machine(),
                    tool(cut.cutter(), limits),
                    bite,
                    cut.travel().axis(),
                    cut.cut().rpm() != null ? cut.cut().rpm().value() : rpm,
                    cut.cut().feedPerTooth() != null ? cut.cut().feedPerTooth().value() : feed)));
  }

  private static Optional<CuttingConditions> ofFeature(
      PlanRun run, StepRun step, FeatureRun feature) {
    FeatureBite bite = feature.bite().orElse(null);
    Owned.Cutter cutter = feature.cutter();
    if (bite == null || cutter == null) {
      return Optional.empty();
    }
    Limits limits = run.plan().shop().limits();
    Step.FeatureWay way = feature.cut().way();
    Bench.Tool spindle = step.benchBefore().cutter();
    Bench.Tool mounted =
        spindle != null && spindle.cutter().name().equalsIgnoreCase(cutter.name()) ? spindle : null;
    Double rpm = mounted == null ? null : mounted.rpm();
    Length feed = mounted == null ? null : mounted.feedPerTooth();
    return Optional.of(
        new CuttingCalculator(limits)
            .work(
                new Asked(
                    run.material(),
                    run.plan().machine(),
                    tool(cutter, limits),
                    new Bite(bite.depth(), bite.engagement()),
                    bite.travel(),
                    way.rpm() != null ? way.rpm().value() : rpm,
                    way.feedPerTooth() != null ? way.feedPerTooth().value() : feed)));
  }

  /** A cutter of the shop; it stands out by its reach, or by its flutes and a little. */
  public static Tool tool(Owned.Cutter cutter, Limits limits) {
    Length stickOut =
        cutter.reach() != null
            ? cutter.reach()
            : cutter.flute().plus(limits.length(Limit.STICK_OUT));
    return new Tool(cutter.cutterKind(), cutter.dia(), cutter.teeth(), cutter.madeOf(), stickOut);
  }

  /** Works out what can be said. */
  public CuttingConditions work(Asked asked) {
    KnownMaterial material = asked.material();
    SpeedRange usual =
        material == null ? null : material.speeds(asked.tool().madeOf()).orElse(null);
    Spindle spindle = spindle(asked, usual);
    ToothFeed feed = feed(asked, spindle);
    TableFeed table = spindle == null || feed == null ? null : table(asked, spindle, feed);
    Load load = table == null || feed == null ? null : load(asked, spindle, feed, table);
    return new CuttingConditions(asked, usual, spindle, feed, table, load);
  }

  // ---- Speed

  private static @Nullable Spindle spindle(Asked asked, @Nullable SpeedRange usual) {
    Length dia = asked.tool().dia();
    Double wanted =
        usual == null ? null : Double.valueOf(SpindleSpeed.turnsPerMinute(usual.middle(), dia));
    if (asked.rpm() != null) {
      return turning(asked.rpm(), wanted, SpeedFrom.STATED, dia);
    }
    if (wanted == null) {
      return null;
    }
    return fitting(asked.machine(), wanted, dia);
  }

  /** The speed of a machine for a speed wanted. */
  public static Spindle fitting(Owned.@Nullable Machine machine, double wanted, Length dia) {
    double top = machine == null || machine.topSpeed() <= 0 ? wanted : machine.topSpeed();
    List<Double> steps = machine == null ? List.of() : steps(machine);
    if (steps.isEmpty()) {
      SpindleSpeed.Choice choice = SpindleSpeed.choose(0, top, wanted);
      boolean held = choice.turnsPerMinute() < wanted;
      return turning(
          choice.turnsPerMinute(), wanted, held ? SpeedFrom.TOP_SPEED : SpeedFrom.WANTED, dia);
    }
    SpindleSpeed.Choice choice = SpindleSpeed.choose(steps, wanted);
    return turning(
        choice.turnsPerMinute(),
        wanted,
        choice.isTooFast() ? SpeedFrom.SLOWEST_STEP : SpeedFrom.STEP,
        dia);
  }

  /** The machine's steps up to its top speed; all of them if that would leave none. */
  private static List<Double> steps(Owned.Machine machine) {
    List<Double> allowed =
        machine.topSpeed() <= 0
            ? machine.speeds()
            : machine.speeds().stream().filter(step -> step <= machine.topSpeed()).toList();
    return allowed.isEmpty() ? machine.speeds() : allowed;
  }

  private static Spindle turning(
      double turnsPerMinute, @Nullable Double wanted, SpeedFrom from, Length dia) {
    return new Spindle(
        turnsPerMinute, wanted, from, SpindleSpeed.metresPerMinute(turnsPerMinute, dia));
  }

  // ---- Feed

  private @Nullable ToothFeed feed(Asked asked, @Nullable Spindle spindle) {
    Tool tool = asked.tool();
    KnownMaterial material = asked.material();
    Length usual =
        material == null ? null : material.feedPerTooth(tool.kind(), tool.dia()).orElse(null);
    if (asked.feedPerTooth() != null) {
      return new ToothFeed(
          asked.feedPerTooth(), FeedFrom.STATED, usual, chip(asked, asked.feedPerTooth()));
    }
    if (usual == null) {
      return null;
    }
    Length feed = usual;
    FeedFrom from = FeedFrom.USUAL;
    Length least = leastFeed(asked.bite());
    if (least != null && feed.isLessThan(least)) {
      feed = least;
      from = FeedFrom.RAISED;
    }
    Length most = windable(asked, spindle);
    if (most != null && feed.isMoreThan(most)) {
      feed = most;
      from = FeedFrom.BY_HAND;
    }
    return new ToothFeed(feed, from, usual, chip(asked, feed));
  }

  /** The feed per tooth at which the chip is just thick enough to cut. */
  private @Nullable Length leastFeed(@Nullable Bite bite) {
    // The thinnest skims take no feed that would restore the chip: that would leave a rough face.
    return bite == null || bite.engagement().greatestChip() < LEAST_FACTOR
        ? null
        : bite.engagement().feedFor(limits.length(Limit.LEAST_CHIP));
  }

  /** About a fortieth of the diameter wide: beyond that a chip is not restored by feeding. */
  public static final double LEAST_FACTOR = 0.3;

  /** The feed per tooth that keeps the handle at the fastest a hand keeps up with. */
  private static @Nullable Length windable(Asked asked, @Nullable Spindle spindle) {
    Owned.Screw screw = screw(asked);
    if (screw == null || spindle == null || spindle.turnsPerMinute() <= 0) {
      return null;
    }
    double fastest = 60 * screw.lead().millimetres() / Feed.FASTEST_CRANKING;
    return Feed.perTooth(fastest, asked.tool().teeth(), spindle.turnsPerMinute());
  }

  private static Owned.@Nullable Screw screw(Asked asked) {
    Owned.Screw screw = asked.machine() == null ? null : asked.machine().screw(asked.travel());
    return screw == null || !screw.lead().isPositive() ? null : screw;
  }

  private static @Nullable Chip chip(Asked asked, Length feed) {
    if (asked.bite() == null || asked.bite().engagement().width() <= 0) {
      return null;
    }
    Engagement engagement = asked.bite().engagement();
    return new Chip(
        engagement.greatestChip(),
        Length.ofMillimetres(feed.millimetres() * engagement.greatestChip()),
        Length.ofMillimetres(feed.millimetres() * engagement.meanChip()));
  }

  private static @Nullable TableFeed table(Asked asked, Spindle spindle, ToothFeed feed) {
    double perMinute = Feed.table(feed.perTooth(), asked.tool().teeth(), spindle.turnsPerMinute());
    if (!(perMinute > 0)) {
      return null;
    }
    Owned.Screw screw = screw(asked);
    HandFeed hand = screw == null ? null : Feed.byHand(perMinute, screw.lead(), screw.divisions());
    return new TableFeed(perMinute, hand);
  }

  // ---- Load

  private @Nullable Load load(
      Asked asked, @Nullable Spindle spindle, ToothFeed feed, TableFeed table) {
    Bite bite = asked.bite();
    Chip chip = feed.chip();
    SpecificForce force = asked.material() == null ? null : asked.material().force().orElse(null);
    if (bite == null
        || chip == null
        || force == null
        || spindle == null
        || !chip.mean().isPositive()
        || !bite.depth().isPositive()) {
      return null;
    }
    double specific = force.at(chip.mean().millimetres());
    double removal =
        CuttingPower.removalRate(
            bite.depth(), bite.width(asked.tool().dia()), table.millimetresPerMinute());
    double atCutter = CuttingPower.atCutter(specific, removal);
    double efficiency = limits.number(Limit.EFFICIENCY);
    double tangential = CuttingPower.tangentialForce(atCutter, spindle.metresPerMinute());
    double cutting = tangential / Math.min(1, teethInCut(asked.tool(), bite));
    Double greatestTorque =
        asked.machine() == null || asked.machine().watts() <= 0
            ? null
            : Double.valueOf(
                CuttingPower.torque(
                    asked.machine().watts() / 1000 * efficiency, spindle.turnsPerMinute()));
    return new Load(
        removal,
        specific,
        atCutter,
        CuttingPower.atMotor(atCutter, efficiency),
        CuttingPower.torque(atCutter, spindle.turnsPerMinute()),
        greatestTorque,
        tangential,
        cutting,
        deflection(asked.tool(), cutting));
  }

  /**
   * How many teeth cut at once on the average. Geometry: a tooth is in the work while it turns
   * through the engagement, and longer by as much as its helix lags over the depth.
   */
  private static double teethInCut(Tool tool, Bite bite) {
    double lag =
        tool.bends()
            ? 2
                * bite.depth().millimetres()
                * Math.tan(Math.toRadians(HELIX))
                / tool.dia().millimetres()
            : 0;
    return tool.teeth() * (bite.engagement().angle() + lag) / (2 * Math.PI);
  }

  /** As if the whole force pushed the tip aside: the most it can be. */
  private static @Nullable Length deflection(Tool tool, double newtons) {
    return !tool.bends() || tool.stickOut() == null
        ? null
        : Deflection.endMill(
            newtons, tool.stickOut(), tool.dia(), KnownMaterial.standard(tool.madeOf()));
  }
}
