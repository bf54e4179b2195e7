package org.handwheel.work;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Dial.Rounding;
import org.handwheel.work.DialMove.Loading;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/**
 * Works out how the dials are set for the cuts of a plan.
 *
 * <p>Every stop is counted from the dial's zero and rounded once; rounded moves are never added up.
 * After a measurement the way left is counted from the reading at which the size was cut, not from
 * the touch. Skims, roughing and all passes but the last stop short, toward metal left on; a
 * finishing cut takes the nearest setting if the size then lies within the drawing's limits, and
 * stops short if not. Source: common practice, no source.
 */
public final class DialMoves {
  /** A cut with more passes than this gives its last stop alone. */
  static final int MOST_STOPS = 100;

  private static final BigFraction QUARTER = BigFraction.of(1, 4);

  private final PlanRun run;
  private final SetupRun setup;

  private DialMoves(PlanRun run, SetupRun setup) {
    this.run = run;
    this.setup = setup;
  }

  /** The moves of all cuts that can be counted, in the plan's order. */
  public static List<DialMove> of(PlanRun run) {
    List<DialMove> moves = new ArrayList<>();
    for (SetupRun setup : run.setups()) {
      DialMoves work = new DialMoves(run, setup);
      for (int i = 0; i < setup.steps().size(); i++) {
        work.at(i).ifPresent(moves::add);
      }
    }
    return List.copyOf(moves);
  }

  /**
   * The move of one step.
   *
   * @param index the step's place in the setup
   * @return nothing if it is no cut, the machine's dial is not described, or there is no zero to
   *     count from
   */
  public static Optional<DialMove> of(PlanRun run, SetupRun setup, int index) {
    return new DialMoves(run, setup).at(index);
  }

  /**
   * The move of a cut if the size before it were read as this: what {@link #of(PlanRun, SetupRun,
   * int)} says once a log has that reading.
   *
   * @param size as read; it counts as exact
   * @return nothing where the cut is not counted from a measured size
   */
  public static Optional<DialMove> ifRead(PlanRun run, SetupRun setup, int index, Length size) {
    CutRun cut = setup.steps().get(index).cut();
    if (cut == null) {
      return Optional.empty();
    }
    SizeState read =
        new SizeState(LengthRange.exactly(size), Length.ZERO, null, cut.before().since());
    List<StepRun> steps = new ArrayList<>(setup.steps());
    steps.set(index, steps.get(index).withCut(cut.from(read)));
    SetupRun asRead =
        new SetupRun(
            setup.setup(),
            setup.orientation(),
            setup.grip(),
            setup.before(),
            setup.benchBefore(),
            steps,
            setup.after());
    return new DialMoves(run, asRead)
        .at(index)
        .filter(move -> move.start() instanceof Start.LastCut);
  }

  private Optional<DialMove> at(int index) {
    StepRun step = setup.steps().get(index);
    CutRun cut = step.cut();
    Owned.Machine machine = run.plan().machine();
    if (cut == null || cut.screw() == null || machine == null) {
      return Optional.empty();
    }
    Screw screw = cut.screw();
    Start start = start(index, step, cut);
    if (start == null) {
      return Optional.empty();
    }
    Direction cutter = cut.normal().opposite();
    Length lead = lead(start, cut);
    Stop reading = start instanceof Start.LastCut last ? last.reading() : null;
    Length base = reading == null ? lead : lead.plus(reading.reached());
    List<Length> depths = depths(cut, start.size());
    Length distance = lead.plus(depths.get(depths.size() - 1));
    List<Stop> stops = new ArrayList<>();
    for (int i = 0; i < depths.size(); i++) {
      Length depth = base.plus(depths.get(i));
      stops.add(i < depths.size() - 1 ? stop(depth, screw, Rounding.SHORT) : last(depth, cut));
    }
    Stop last = stops.get(stops.size() - 1);
    BigFraction counted =
        reading == null ? last.divisions() : last.divisions().subtract(reading.divisions());
    Length doubt = last.error().abs().plus(screw.readingError());
    if (!(start instanceof Start.LastCut)) {
      doubt = doubt.plus(run.plan().shop().limits().length(Limit.TOUCH));
    }
    return Optional.of(
        new DialMove(
            cut,
            cut.depthAxis(),
            cutter,
            Dial.handleDirection(cutter, machine.zDrive()),
            screw.handle(),
            Dial.turn(screw, cutter, machine.zDrive()),
            start,
            distance,
            stops,
            place(distance, counted, screw),
            loading(start, step, cut, cutter),
            screw.backlash().plus(screw.lead().times(QUARTER)),
            doubt));
  }

  // ---- Where it starts
  // ---------------------------------------------------------------------------------------------

  private @Nullable Start start(int index, StepRun step, CutRun cut) {
    Bench.Zero zero = step.benchBefore().zeros().get(cut.depthAxis());
    if (zero == null || zero.loss() != null) {
      return null;
    }
    PartDimension dimension = cut.face().dimension();
    int zeroed = before(index, other -> other.step().origin().equals(zero.origin()));
    int earlier = before(index, other -> other.cut() != null && other.cut().face() == cut.face());
    Step source = zeroed < 0 ? null : setup.steps().get(zeroed).step();
    boolean isSizeKnown = step.benchBefore().calibrated().contains(dimension);
    if (earlier >= 0 && isSizeKnown && (zeroed < earlier || source instanceof Step.Zero)) {
      return lastCut(earlier, zeroed, cut);
    }
    SizeState size = sizeAtZero(zeroed, index, dimension);
    if (size == null) {
      return null;
    }
    Length middle = size.range().middle();
    if (source instanceof Step.Touch touch && touch.face() == cut.face()) {
      return new Start.Touch(touch.origin(), middle, touch.face(), touch.paper());
    }
    if (source instanceof Step.Find find
        && find.face() != null
        && find.face().dimension() == dimension) {
      return edge(find, find.face(), cut, middle);
    }
    return null;
  }

  private static Start edge(Step.Find find, Face edge, CutRun cut, Length size) {
    Length tip =
        find.place() == Step.ZeroPlace.TOUCH && find.finder() != null
            ? find.finder().dia().half()
            : Length.ZERO;
    // The finder stands outside the edge; going in leads toward it from there, or away from it.
    Length ahead = edge == cut.face() ? tip.negated() : tip;
    return new Start.Edge(find.origin(), size, edge, ahead);
  }

  /** How far the cutter's axis or end goes from the start until it meets the surface there. */
  private static Length lead(Start start, CutRun cut) {
    if (start instanceof Start.Touch touch) {
      return touch.paper();
    }
    if (start instanceof Start.Edge edge) {
      Length surface = edge.face() == cut.face() ? Length.ZERO : edge.size().negated();
      return surface.minus(edge.ahead()).minus(cut.cutter().radius());
    }
    return Length.ZERO;
  }

  /** The size that was there, by the last measurement before anything came off. */
  private @Nullable SizeState sizeAtZero(int zeroed, int index, PartDimension dimension) {
    for (int i = Math.max(0, zeroed); i < index; i++) {
      CutRun cut = setup.steps().get(i).cut();
      if (cut != null && cut.face().dimension() == dimension) {
        return cut.before();
      }
    }
    return setup.steps().get(index).before().size(dimension);
  }

  /** The start of a cut that goes on from an earlier one in the same grip. */
  private Start lastCut(int earlier, int zeroed, CutRun cut) {
    StepRun source = setup.steps().get(earlier);
    Length size = cut.before().range().middle();
    Stop reading = null;
    if (zeroed > earlier && cut.screw() != null) {
      // The dial was set to zero where the last cut had left it.
      reading = stop(Length.ZERO, cut.screw(), Rounding.NEAREST);
    } else if (!(source.cut() != null && source.cut().cut().purpose() instanceof Purpose.Clean)) {
      reading =
          at(earlier)
              .filter(move -> isCountedFromZero(move.start()))
              .map(DialMove::last)
              .orElse(null);
    }
    return new Start.LastCut(source.step().origin(), size, reading);
  }

  private static boolean isCountedFromZero(Start start) {
    return !(start instanceof Start.LastCut last) || last.reading() != null;
  }

  private int before(int index, Predicate<StepRun> wanted) {
    for (int i = index - 1; i >= 0; i--) {
      if (wanted.test(setup.steps().get(i))) {
        return i;
      }
    }
    return -1;
  }

  private static Loading loading(Start start, StepRun step, CutRun cut, Direction cutter) {
    if (start instanceof Start.LastCut) {
      return Loading.SAME_SIDE;
    }
    Bench.Zero zero = step.benchBefore().zeros().get(cut.depthAxis());
    if (zero == null || zero.approach() == null) {
      return Loading.UNKNOWN;
    }
    return zero.approach() == cutter ? Loading.SAME_SIDE : Loading.OTHER_SIDE;
  }

  // ---- How deep each pass goes
  // -------------------------------------------------------------------------------------

  /** How much is off after each pass, seen from the size at the start; at least one entry. */
  private static List<Length> depths(CutRun cut, Length size) {
    Purpose purpose = cut.cut().purpose();
    if (purpose instanceof Purpose.Clean clean) {
      return inSteps(clean.at().value(), clean.atMost().value());
    }
    Length whole = cut.goal() == null ? Length.ZERO : size.minus(cut.goal());
    Passes passes = passesOf(purpose);
    if (passes instanceof Passes.EachAtMost each) {
      return inSteps(each.depth(), whole);
    }
    if (passes instanceof Passes.Counted counted) {
      return inSteps(counted.depth(), Length.min(whole, counted.depth().times(counted.count())));
    }
    return List.of(whole);
  }

  private static @Nullable Passes passesOf(Purpose purpose) {
    if (purpose instanceof Purpose.Rough rough) {
      return rough.passes();
    }
    return purpose instanceof Purpose.Finish finish ? finish.passes() : null;
  }

  private static List<Length> inSteps(Length step, Length whole) {
    if (!step.isPositive() || whole.stepsOf(step) > MOST_STOPS) {
      return List.of(whole);
    }
    List<Length> depths = new ArrayList<>();
    for (int i = 1; i < whole.stepsOf(step); i++) {
      depths.add(step.times(i));
    }
    depths.add(whole);
    return depths;
  }

  // ---- Where the dial stands
  // ---------------------------------------------------------------------------------------

  private Stop last(Length depth, CutRun cut) {
    Screw screw = cut.screw();
    if (screw == null) {
      throw new IllegalStateException("a counted cut has a dial");
    }
    Drawing.Demand demand = run.drawing().demand(cut.face().dimension());
    if (cut.cut().purpose() instanceof Purpose.Finish && cut.goal() != null) {
      Stop nearest = stop(depth, screw, Rounding.NEAREST);
      if (demand == null || demand.limits().contains(cut.goal().minus(nearest.error()))) {
        return nearest;
      }
    }
    return stop(depth, screw, Rounding.SHORT);
  }

  /**
   * The stop for a distance from zero: divisions rounded once, to the part that can be read.
   *
   * @param rounding to the nearest, or never beyond the distance, forward or back
   */
  public static Stop stop(Length distance, Screw screw, Rounding rounding) {
    BigFraction grain = screw.readable().signum() > 0 ? screw.readable() : BigFraction.ONE;
    BigFraction exact = distance.over(screw.lead()).multiply(screw.divisions());
    RoundingMode mode = rounding == Rounding.NEAREST ? RoundingMode.HALF_EVEN : RoundingMode.FLOOR;
    BigFraction counted = BigFraction.of(whole(exact.divide(grain), mode)).multiply(grain);
    return place(distance, counted, screw);
  }

  /** A stop of a known count of divisions, for a distance it was meant to be. */
  public static Stop place(Length asked, BigFraction divisions, Screw screw) {
    BigFraction perTurn = screw.divisions();
    BigInteger turns = whole(divisions.divide(perTurn), RoundingMode.FLOOR);
    BigFraction up = divisions.subtract(BigFraction.of(turns).multiply(perTurn));
    BigFraction down = up.signum() == 0 ? up : perTurn.subtract(up);
    Length reached = screw.lead().times(divisions.divide(perTurn));
    return new Stop(
        asked, divisions, turns.longValueExact(), decimal(up), decimal(down), reached.minus(asked));
  }

  private static BigInteger whole(BigFraction value, RoundingMode mode) {
    return new BigDecimal(value.getNumerator())
        .divide(new BigDecimal(value.getDenominator()), 0, mode)
        .toBigInteger();
  }

  /** Two decimals: finer than any dial is read. */
  private static BigDecimal decimal(BigFraction value) {
    BigDecimal decimal =
        new BigDecimal(value.getNumerator())
            .divide(new BigDecimal(value.getDenominator()), 2, RoundingMode.HALF_EVEN)
            .stripTrailingZeros();
    return decimal.scale() < 0 ? decimal.setScale(0) : decimal;
  }
}
