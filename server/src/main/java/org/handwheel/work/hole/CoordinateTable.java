package org.handwheel.work.hole;

import java.util.List;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Step.HoleCut;
import org.handwheel.units.Length;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/**
 * The holes of a setup that are cut from the same zeros, in the order in which their handles are
 * wound.
 *
 * @param cuts the lines it is for
 * @param operations what is done to the holes, tool by tool
 */
public record CoordinateTable(
    SetupRun setup, List<HoleCut> cuts, List<Operation> operations, Result result) {
  public CoordinateTable {
    cuts = List.copyOf(cuts);
    operations = List.copyOf(operations);
  }

  /** What came of it. */
  public sealed interface Result {
    /** Coordinates from a zero on each axis. */
    record Rows(AxisZero x, AxisZero y, List<Row> rows) implements Result {
      public Rows {
        rows = List.copyOf(rows);
      }

      /** How far a dial leaves a hole off its place at most, by rounding alone. */
      public Length worstRounding() {
        return rows.stream()
            .flatMap(row -> java.util.stream.Stream.of(row.x(), row.y()))
            .map(mark -> mark.stop().error().abs())
            .reduce(Length.ZERO, Length::max);
      }
    }

    /** No coordinates, and why; a sentence without its full stop. */
    record None(String reason) implements Result {}
  }

  /** One hole. */
  public record Row(DrawnHole hole, Mark x, Mark y) {
    /** The axes on which the hole lies behind the one before: past it, and come back. */
    public Set<Axis> turnsRound() {
      return x.isBehind() && y.isBehind()
          ? Set.of(Axis.X, Axis.Y)
          : x.isBehind() ? Set.of(Axis.X) : y.isBehind() ? Set.of(Axis.Y) : Set.of();
    }
  }

  /**
   * A place on one axis.
   *
   * @param at the exact coordinate from zero
   * @param stop where the dial stands there, rounded once from zero
   * @param step how far it is from the hole before, or from zero, exactly; negative going back
   * @param wind the turns and divisions of that step, the difference of the two rounded stops
   * @param isBehind whether the handle has to go back past the place and come up to it again
   */
  public record Mark(Length at, Stop stop, Length step, Stop wind, boolean isBehind) {}

  /**
   * One tool in some of the holes.
   *
   * @param holes their names, in the order of the table
   * @param depth how deep at full diameter; nothing if it is not known
   * @param tip how deep the tool's end goes
   * @param stop the Z dial for that depth, counted from where this tool touches the face
   */
  public record Operation(
      HoleCut cut,
      Bit bit,
      List<String> holes,
      @Nullable Length depth,
      @Nullable Length tip,
      boolean through,
      @Nullable Stop stop) {
    public Operation {
      holes = List.copyOf(holes);
    }
  }
}
