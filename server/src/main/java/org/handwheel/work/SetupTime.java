package org.handwheel.work;

import java.util.OptionalDouble;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.Plan;
import org.handwheel.model.Step;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.work.CutRun.Mode;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.hole.HoleCalculator;
import org.handwheel.work.hole.HoleConditions;
import org.handwheel.work.hole.HoleRun;
import org.jspecify.annotations.Nullable;

/**
 * About how long a setup takes.
 *
 * <p>Cutting: passes x lanes x way / table feed. The way is what the cutter's axis travels: the
 * work's length along the travel and, at either end, the cutter's radius and 2 mm (geometry). The
 * feed is that of {@link CuttingCalculator}, though never faster than a handle can be turned,
 * {@link Feed#FASTEST_CRANKING}. Where a cut may take a pass more or less the most are counted.
 * Handling is a sum of {@link Allowance}s.
 *
 * <p>Holes: the seconds of {@link HoleCalculator} for each hole and tool, and for each the shop's
 * {@link Limit#HOLE_HANDLING}. Slots and the rest: the way of the cutter's axis, once for each
 * level, at the feed of the heaviest cut.
 *
 * @param cutting minutes of cutting
 * @param handling minutes of all else
 * @param untimed how many cuts are in neither, as their feed is not known
 */
public record SetupTime(double cutting, double handling, int untimed) {
  /** Minutes that handling takes, with care and by hand: common practice, no source. */
  public enum Allowance {
    /** Wiping, laying in, closing the jaws; or clamping to a plate. */
    HOLD(5),
    /** Tapping the work down and trying the parallels. */
    SEAT(1),
    /** Setting the vise true. */
    TRUE_VISE(10),
    /** Setting the head square. */
    TRAM(15),
    /** Another cutter into the spindle. */
    CHANGE_CUTTER(3),
    /** Touching off. */
    TOUCH(2),
    /** An edge or a centre found. */
    FIND(3),
    /** An axis set to a depth. */
    SET_DEPTH(0.5),
    /** Head moved on its column. */
    MOVE_HEAD(5),
    /** Winding back after a pass and in for the next. */
    PASS(0.5),
    /** Another drill, tap or other tool for holes into the chuck. */
    CHANGE_DRILL(1),
    /** A drill drawn out for chips and brought back. */
    PECK(0.05),
    /** A turn of a tap by hand, the turns back to break the chip included. */
    TAP_TURN(0.07),
    /** A stop by two dials on the way round an outline. */
    STOP(0.05),
    /** Burrs off. */
    DEBURR(2),
    WIPE(0.5),
    /** Measuring, with the spindle stopped and the work wiped. */
    MEASURE(2);

    private final double minutes;

    Allowance(double minutes) {
      this.minutes = minutes;
    }

    public double minutes() {
      return minutes;
    }
  }

  /** The time of a setup worked through. */
  public static SetupTime of(PlanRun run, SetupRun setup) {
    double cutting = 0;
    double handling = Allowance.HOLD.minutes();
    int untimed = 0;
    for (StepRun step : setup.steps()) {
      handling += allowance(step);
      if (step.step() instanceof Step.HoleCut) {
        Holes holes = holes(run, step);
        cutting += holes.cutting();
        handling += holes.handling();
        untimed += holes.untimed();
      }
      if (step.step() instanceof Step.Cut || step.step() instanceof Step.FeatureCut) {
        OptionalDouble minutes =
            step.step() instanceof Step.Cut ? cutting(run, setup, step) : alongFeature(run, step);
        cutting += minutes.orElse(0);
        untimed += minutes.isEmpty() ? 1 : 0;
      }
    }
    return new SetupTime(cutting, handling, untimed);
  }

  public double minutes() {
    return cutting + handling;
  }

  private static double allowance(StepRun run) {
    Step step = run.step();
    if (step instanceof Step.Cut) {
      CutRun cut = run.cut();
      return cut == null ? 0 : passes(cut) * Allowance.PASS.minutes();
    }
    if (run.feature() != null) {
      return feature(run, run.feature());
    }
    if (step instanceof Step.UseCutter use) {
      Bench.Tool before = run.benchBefore().cutter();
      boolean stays =
          before != null && before.cutter().name().equalsIgnoreCase(use.cutter().name());
      return stays ? 0 : Allowance.CHANGE_CUTTER.minutes();
    }
    @Nullable Allowance allowance = simple(step);
    return allowance == null ? 0 : allowance.minutes();
  }

  /**
   * What a step takes whatever it is done with; locks, dials set to zero and notes take nothing.
   */
  private static @Nullable Allowance simple(Step step) {
    if (step instanceof Step.Seat) {
      return Allowance.SEAT;
    }
    if (step instanceof Step.TrueVise) {
      return Allowance.TRUE_VISE;
    }
    if (step instanceof Step.Tram) {
      return Allowance.TRAM;
    }
    if (step instanceof Step.Touch) {
      return Allowance.TOUCH;
    }
    if (step instanceof Step.Find) {
      return Allowance.FIND;
    }
    if (step instanceof Step.SetDepth) {
      return Allowance.SET_DEPTH;
    }
    if (step instanceof Step.MoveHead) {
      return Allowance.MOVE_HEAD;
    }
    if (step instanceof Step.Deburr) {
      return Allowance.DEBURR;
    }
    if (step instanceof Step.Wipe) {
      return Allowance.WIPE;
    }
    return step instanceof Step.Measure ? Allowance.MEASURE : null;
  }

  /** Minutes of a line on holes. */
  private record Holes(double cutting, double handling, int untimed) {}

  private static Holes holes(PlanRun run, StepRun step) {
    HoleRun made = step.holes();
    if (made == null) {
      return new Holes(0, 0, 1);
    }
    double each = run.plan().shop().limits().number(Limit.HOLE_HANDLING);
    double handling =
        made.passes().stream()
            .mapToDouble(pass -> pass.results().size() * each + Allowance.CHANGE_DRILL.minutes())
            .sum();
    double cutting = 0;
    int untimed = 0;
    for (HoleCalculator.Group group : HoleCalculator.of(run, step, StandardTables.builtIn())) {
      HoleConditions conditions = group.conditions();
      int count = group.holes().size();
      if (conditions.turns() != null && conditions.asked().byHand()) {
        cutting += count * conditions.turns() * Allowance.TAP_TURN.minutes();
      } else if (conditions.seconds() != null) {
        cutting += count * conditions.seconds() / 60;
        handling += count * (conditions.pecks() - 1) * Allowance.PECK.minutes();
      } else {
        untimed = 1;
      }
    }
    return new Holes(cutting, handling, untimed);
  }

  /** Winding back and in for each level, and the stops of a step table. */
  private static double feature(StepRun step, FeatureRun feature) {
    double handling = feature.levels() * Allowance.PASS.minutes();
    if (feature.result() instanceof FeatureRun.Result.Steps steps) {
      handling += feature.levels() * steps.table().steps() * Allowance.STOP.minutes();
    } else if (feature.result() instanceof FeatureRun.Result.Lines lines) {
      handling += feature.levels() * lines.path().moves() * Allowance.STOP.minutes();
    }
    Bench.Tool mounted = step.benchBefore().cutter();
    boolean isChanged =
        feature.cutter() != null
            && (mounted == null
                || !mounted.cutter().name().equalsIgnoreCase(feature.cutter().name()));
    return isChanged ? handling + Allowance.CHANGE_CUTTER.minutes() : handling;
  }

  private static OptionalDouble alongFeature(PlanRun run, StepRun step) {
    FeatureRun feature = step.feature();
    CuttingConditions conditions = CuttingCalculator.of(run, step).orElse(null);
    if (feature == null || conditions == null || conditions.table() == null) {
      return OptionalDouble.empty();
    }
    double way;
    if (feature.result() instanceof FeatureRun.Result.Steps steps) {
      way = steps.table().path().getLength();
    } else if (feature.result() instanceof FeatureRun.Result.Lines lines) {
      way = lines.path().line().getLength();
    } else if (feature.drawn() != null) {
      way = feature.drawn().faceRegion().getLength();
    } else {
      return OptionalDouble.empty();
    }
    double byHand =
        Math.min(
            conditions.table().millimetresPerMinute(),
            fastest(run.plan(), conditions.asked().travel()));
    return OptionalDouble.of(feature.levels() * way / byHand);
  }

  private static long passes(CutRun cut) {
    return cut.passes() + cut.cut().springPasses();
  }

  private static OptionalDouble cutting(PlanRun run, SetupRun setup, StepRun step) {
    CutRun cut = step.cut();
    Orientation lies = setup.orientation();
    if (cut == null || lies == null) {
      return OptionalDouble.empty();
    }
    TableFeed feed = CuttingCalculator.of(run, step).map(CuttingConditions::table).orElse(null);
    Axis travel = cut.travel().axis();
    SizeState along = step.before().size(lies.along(travel));
    if (feed == null || along == null) {
      return OptionalDouble.empty();
    }
    double radius = cut.cutter().radius().millimetres();
    double way = along.range().high().millimetres() + 2 * (radius + CutCalculator.RUN_OUT);
    double byHand = Math.min(feed.millimetresPerMinute(), fastest(run.plan(), travel));
    return OptionalDouble.of(passes(cut) * lanes(cut, lies, step.before()) * way / byHand);
  }

  /** The fastest feed a handle gives that is turned by hand, in mm/min. */
  private static double fastest(Plan plan, Axis travel) {
    Owned.Machine machine = plan.machine();
    Owned.Screw screw = machine == null ? null : machine.screw(travel);
    return screw == null
        ? Double.MAX_VALUE
        : 60 * screw.lead().millimetres() / Feed.FASTEST_CRANKING;
  }

  /** How many lanes side by side a pass over the face takes. */
  private static int lanes(CutRun cut, Orientation lies, Workpiece before) {
    Axis across = cut.travel().axis() == Axis.X ? Axis.Y : Axis.X;
    SizeState width = before.size(lies.along(across));
    if (cut.mode() != Mode.END || cut.cut().stepOver() == null || width == null) {
      return 1;
    }
    double flat =
        Math.max(0, cut.cutter().radius().millimetres() - cut.cutter().corner().millimetres());
    return Scene.laneCount(
        width.range().high().millimetres(), flat, cut.cut().stepOver().value().millimetres());
  }
}
