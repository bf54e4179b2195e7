package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step;
import org.handwheel.plan.sheet.Sheet.IfRead;
import org.handwheel.plan.sheet.Sheet.IfRead.Row;
import org.handwheel.plan.sheet.Sheet.IfRead.Verdict;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.CutRun;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Start;
import org.handwheel.work.DialMoves;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/**
 * What to wind for what is read before a finishing cut.
 *
 * <p>The rows span what the size may be by the engine, over all pieces, or by the readings of one.
 */
final class Readings {
  /** More rows than this are not read at the machine. */
  static final int MOST_ROWS = 24;

  private static final List<Length> MILLIMETRES =
      List.of(
          Length.mm("0.01"),
          Length.mm("0.02"),
          Length.mm("0.05"),
          Length.mm("0.1"),
          Length.mm("0.2"),
          Length.mm("0.5"));
  private static final List<Length> INCHES =
      List.of(
          Length.inches("0.0005"),
          Length.inches("0.001"),
          Length.inches("0.002"),
          Length.inches("0.005"),
          Length.inches("0.01"),
          Length.inches("0.02"));

  private Readings() {}

  /** The table of a cut; nothing for one that is no finishing cut after a measurement. */
  static Optional<IfRead> of(PlanRun run, SetupRun setup, int index) {
    CutRun cut = setup.steps().get(index).cut();
    if (cut == null || !(cut.cut().purpose() instanceof Step.Purpose.Finish)) {
      return Optional.empty();
    }
    Optional<DialMove> move = DialMoves.of(run, setup, index);
    if (move.isEmpty() || !(move.get().start() instanceof Start.LastCut)) {
      return Optional.empty();
    }
    PartDimension dimension = cut.face().dimension();
    Drawing.Demand demand = run.drawing().demand(dimension);
    LengthUnit unit = unit(setup, index, dimension);
    Length step = step(cut.before().range(), unit);
    if (step == null) {
      return Optional.empty();
    }
    long first = Math.floorDiv(cut.before().range().low().picometres(), step.picometres());
    long last = -Math.floorDiv(-cut.before().range().high().picometres(), step.picometres());
    List<Row> rows = new ArrayList<>();
    for (long i = first; i <= last; i++) {
      Length read = step.times(i);
      rows.add(row(run, setup, index, read, demand == null ? null : demand.limits()));
    }
    return Optional.of(new IfRead(dimension, unit, step, rows));
  }

  private static Row row(
      PlanRun run, SetupRun setup, int index, Length read, @Nullable LengthRange limits) {
    CutRun cut = setup.steps().get(index).cut();
    Length goal = cut == null ? null : cut.goal();
    if (limits != null && read.isLessThan(limits.low())) {
      return new Row(read, Verdict.UNDER_SIZE, null, null);
    }
    boolean inSize = limits != null && limits.contains(read);
    if (inSize || goal == null || !read.isMoreThan(goal)) {
      return new Row(read, Verdict.IN_SIZE, null, null);
    }
    return DialMoves.ifRead(run, setup, index, read)
        .map(move -> new Row(read, Verdict.CUT, move.wind(), stop(move)))
        .orElseGet(() -> new Row(read, Verdict.CUT, null, null));
  }

  private static DialMove.@Nullable Stop stop(DialMove move) {
    return move.start() instanceof Start.LastCut last && last.reading() != null
        ? move.last()
        : null;
  }

  /** The unit of the instrument that measured last: its least step is a round one in it. */
  private static LengthUnit unit(SetupRun setup, int index, PartDimension dimension) {
    Owned.Instrument instrument = null;
    for (StepRun step : setup.steps().subList(0, index)) {
      if (step.step() instanceof Step.Measure measure && measure.dimension() == dimension) {
        instrument = step.reading() == null ? measure.instrument() : step.reading().instrument();
      }
    }
    return instrument == null || isWhole(instrument.resolution(), Length.mm("0.001"))
        ? LengthUnit.MM
        : LengthUnit.IN;
  }

  private static boolean isWhole(Length length, Length of) {
    return length.picometres() % of.picometres() == 0;
  }

  private static @Nullable Length step(LengthRange span, LengthUnit unit) {
    List<Length> steps = unit == LengthUnit.MM ? MILLIMETRES : INCHES;
    return steps.stream()
        .filter(step -> span.width().stepsOf(step) + 1 < MOST_ROWS)
        .findFirst()
        .orElse(null);
  }
}
