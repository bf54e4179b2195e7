package org.handwheel.work;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.handwheel.model.Owned;
import org.handwheel.model.Plan;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * Spindle speed and table feed to start a cut with: what the plan says, else from the material's
 * usual cutting speed, the cutter and the speeds the machine has.
 *
 * @param material the part's material, the shop's own before the tables'
 * @param machine the plan's machine, if it names one
 */
public record CuttingRates(
    Owned.Cutter cutter, @Nullable KnownMaterial material, Owned.@Nullable Machine machine) {
  public static CuttingRates of(Plan plan, Owned.Cutter cutter, StandardTables tables) {
    return new CuttingRates(cutter, KnownMaterial.of(plan, tables).orElse(null), plan.machine());
  }

  /**
   * A spindle speed.
   *
   * @param turnsPerMinute what to set
   * @param wanted what the cut would like; the same if the plan says it
   */
  public record Speed(Source source, double turnsPerMinute, double wanted) {
    /** Whether even the slowest speed of the machine is above what the cut would like. */
    public boolean isTooFast() {
      return turnsPerMinute > wanted;
    }
  }

  /** Where a speed comes from. */
  public enum Source {
    /** The plan says it. */
    PLAN,
    /** One of the machine's steps. */
    STEP,
    /** The tables, up to the machine's top speed. */
    TABLES
  }

  /** The speed of a cut; nothing if neither plan nor tables have one. */
  public Optional<Speed> speed(CutRun cut, Bench bench) {
    Double planned = cut.cut().rpm() == null ? null : cut.cut().rpm().value();
    if (planned == null && bench.cutter() != null) {
      planned = bench.cutter().rpm();
    }
    if (planned != null) {
      return Optional.of(new Speed(Source.PLAN, planned, planned));
    }
    Optional<SpeedRange> usual = usual();
    if (usual.isEmpty()) {
      return Optional.empty();
    }
    double wanted = SpindleSpeed.turnsPerMinute(usual.get().middle(), cutter.dia());
    List<Double> steps = machine == null ? List.of() : machine.speeds();
    if (steps.isEmpty()) {
      double top = machine == null || machine.topSpeed() <= 0 ? wanted : machine.topSpeed();
      return Optional.of(new Speed(Source.TABLES, Math.min(top, wanted), wanted));
    }
    double chosen = SpindleSpeed.choose(steps, wanted).turnsPerMinute();
    return Optional.of(new Speed(Source.STEP, chosen, wanted));
  }

  /** The usual cutting speeds for the material and what the cutter is made of. */
  public Optional<SpeedRange> usual() {
    return Optional.ofNullable(material).flatMap(known -> known.speeds(cutter.madeOf()));
  }

  /** The feed per tooth of a cut; nothing if neither plan nor tables have one. */
  public Optional<Length> feedPerTooth(CutRun cut, Bench bench) {
    if (cut.cut().feedPerTooth() != null) {
      return Optional.of(cut.cut().feedPerTooth().value());
    }
    if (bench.cutter() != null && bench.cutter().feedPerTooth() != null) {
      return Optional.of(bench.cutter().feedPerTooth());
    }
    return Optional.ofNullable(material)
        .flatMap(known -> known.feedPerTooth(cutter.cutterKind(), cutter.dia()));
  }

  /** The table feed in millimetres per minute, over zero; nothing if it is not known. */
  public OptionalDouble tableFeed(CutRun cut, Bench bench) {
    Optional<Speed> speed = speed(cut, bench);
    Optional<Length> perTooth = feedPerTooth(cut, bench);
    if (speed.isEmpty() || perTooth.isEmpty()) {
      return OptionalDouble.empty();
    }
    double feed = Feed.table(perTooth.get(), cutter.teeth(), speed.get().turnsPerMinute());
    return feed > 0 ? OptionalDouble.of(feed) : OptionalDouble.empty();
  }
}
