package org.handwheel.work.hole;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step;
import org.handwheel.model.Step.HoleCut;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.Bench;
import org.handwheel.work.Dial.Rounding;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.DialMoves;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.CoordinateTable.Mark;
import org.handwheel.work.hole.CoordinateTable.Operation;
import org.handwheel.work.hole.CoordinateTable.Result;
import org.handwheel.work.hole.CoordinateTable.Row;
import org.handwheel.work.hole.HoleRun.Pass;
import org.jspecify.annotations.Nullable;

/**
 * Works out the coordinates of holes from the zeros in force.
 *
 * <p>Every coordinate is counted from zero and rounded once to what the dial can be read to;
 * rounded moves are never added up. Holes are ordered so that both screws keep bearing on the side
 * they bore on when the zero was taken for as many holes as can be: the fewest chains in which
 * neither axis goes back.
 */
public final class Coordinates {
  private final PlanRun run;
  private final SetupRun setup;

  private Coordinates(PlanRun run, SetupRun setup) {
    this.run = run;
    this.setup = setup;
  }

  /** The tables of the setups that could be read, in order. */
  public static List<CoordinateTable> all(PlanRun run) {
    return run.knownSetups().flatMap(setup -> of(run, setup).stream()).toList();
  }

  /** The tables of one setup: one for each pair of zeros that holes are cut from. */
  public static List<CoordinateTable> of(PlanRun run, SetupRun setup) {
    Coordinates work = new Coordinates(run, setup);
    List<List<StepRun>> groups = new ArrayList<>();
    for (StepRun step : setup.steps()) {
      if (step.holes() == null || step.holes().holes().isEmpty()) {
        continue;
      }
      boolean goesOn =
          !groups.isEmpty()
              && zeros(groups.get(groups.size() - 1).get(0).benchBefore())
                  .equals(zeros(step.benchBefore()));
      if (!goesOn) {
        groups.add(new ArrayList<>());
      }
      groups.get(groups.size() - 1).add(step);
    }
    return groups.stream().map(work::table).toList();
  }

  /** The table a line on holes belongs to. */
  public static Optional<CoordinateTable> of(PlanRun run, SetupRun setup, HoleCut cut) {
    return of(run, setup).stream().filter(table -> table.cuts().contains(cut)).findFirst();
  }

  private static List<Optional<Bench.Zero>> zeros(Bench bench) {
    return List.of(
        Optional.ofNullable(bench.zeros().get(Axis.X)),
        Optional.ofNullable(bench.zeros().get(Axis.Y)));
  }

  private CoordinateTable table(List<StepRun> steps) {
    Map<String, DrawnHole> holes = new LinkedHashMap<>();
    List<HoleCut> cuts = new ArrayList<>();
    for (StepRun step : steps) {
      HoleRun made = Objects.requireNonNull(step.holes());
      cuts.add(made.cut());
      made.holes().forEach(hole -> holes.putIfAbsent(hole.name(), hole));
    }
    Result result = result(List.copyOf(holes.values()), steps.get(0));
    List<String> order =
        result instanceof Result.Rows rows
            ? rows.rows().stream().map(row -> row.hole().name()).toList()
            : List.copyOf(holes.keySet());
    return new CoordinateTable(setup, cuts, operations(steps, order), result);
  }

  private Result result(List<DrawnHole> holes, StepRun step) {
    Orientation lies = setup.orientation();
    if (lies == null) {
      return new Result.None("how the work lies is not known");
    }
    if (run.plan().machine() == null) {
      return new Result.None("the shop does not describe the machine");
    }
    List<AxisZero> zeros = new ArrayList<>();
    for (Axis axis : List.of(Axis.X, Axis.Y)) {
      Optional<String> missing = whyNoZero(axis, step);
      if (missing.isPresent()) {
        return new Result.None(missing.get());
      }
      AxisZero zero = zero(axis, step, lies);
      if (zero == null) {
        return new Result.None(
            "where the zero of " + axis.word() + " lies cannot be told from its line");
      }
      zeros.add(zero);
    }
    return rows(zeros.get(0), zeros.get(1), holes, lies);
  }

  private Optional<String> whyNoZero(Axis axis, StepRun step) {
    Owned.Machine machine = run.plan().machine();
    Bench.Zero zero = step.benchBefore().zeros().get(axis);
    if (machine == null || machine.screw(axis) == null) {
      return Optional.of("the shop does not describe the machine's " + axis.word() + " dial");
    }
    if (zero == null) {
      return Optional.of("no edge or centre was found for " + axis.word() + " in this setup");
    }
    return zero.loss() != null
        ? Optional.of("the zero of " + axis.word() + " was lost")
        : Optional.empty();
  }

  // ---- Where the zero is
  // ---------------------------------------------------------------------------------------------

  /** The zero of an axis as it stands before a step; nothing if its line does not say where. */
  public static @Nullable AxisZero zero(PlanRun run, SetupRun setup, StepRun step, Axis axis) {
    Orientation lies = setup.orientation();
    Coordinates work = new Coordinates(run, setup);
    return lies == null || work.whyNoZero(axis, step).isPresent()
        ? null
        : work.zero(axis, step, lies);
  }

  private @Nullable AxisZero zero(Axis axis, StepRun at, Orientation lies) {
    Owned.Machine machine = run.plan().machine();
    Screw screw = machine == null ? null : machine.screw(axis);
    Bench.Zero zero = at.benchBefore().zeros().get(axis);
    if (machine == null || screw == null || zero == null) {
      return null;
    }
    StepRun source = source(zero.origin());
    if (source == null) {
      return null;
    }
    if (source.step() instanceof Step.Find find) {
      if (find.face() != null) {
        return lies.axisOf(find.face()) == axis ? edge(axis, machine, screw, find, lies) : null;
      }
      return centre(axis, machine, screw, find, at);
    }
    boolean touched =
        source.step() instanceof Step.Touch touch && lies.axisOf(touch.face()) == axis;
    return touched ? touch(axis, machine, screw, (Step.Touch) source.step(), source, lies) : null;
  }

  private @Nullable StepRun source(Origin origin) {
    return setup.steps().stream()
        .filter(step -> step.step().origin().equals(origin))
        .findFirst()
        .orElse(null);
  }

  private static AxisZero edge(
      Axis axis, Owned.Machine machine, Screw screw, Step.Find find, Orientation lies) {
    Face face = Objects.requireNonNull(find.face());
    Direction inward = lies.directionOf(face).opposite();
    Direction approach = find.from() == null ? inward : find.from().value().opposite();
    Length half = find.finder() == null ? Length.ZERO : find.finder().dia().half();
    boolean atTouch = find.place() == Step.ZeroPlace.TOUCH;
    // From outside, the finder stands half its tip before the edge; from inside (a jaw), behind it.
    Length lead = !atTouch ? Length.ZERO : approach == inward ? half : half.negated();
    String words =
        atTouch
            ? "where the finder touches the " + face.word() + ", half its tip, " + half + ", off"
            : "the " + face.word() + " edge";
    return new AxisZero(
        axis,
        screw,
        machine.zDrive(),
        find.origin(),
        words,
        face,
        null,
        lead,
        inward,
        approach.axis() == axis ? approach : inward);
  }

  private @Nullable AxisZero centre(
      Axis axis, Owned.Machine machine, Screw screw, Step.Find find, StepRun at) {
    DrawnHoles drawn =
        at.holes() != null
            ? at.holes().drawn()
            : at.feature() != null ? at.feature().holes() : null;
    if (drawn == null || find.centreOf() == null) {
      return null;
    }
    List<DrawnHole> named = drawn.named(find.centreOf());
    if (named.isEmpty()) {
      return null;
    }
    DrawnHole hole = named.get(0);
    Direction counts = Direction.of(axis, 1);
    return new AxisZero(
        axis,
        screw,
        machine.zDrive(),
        find.origin(),
        "the centre of " + hole.name(),
        null,
        hole.point(),
        Length.ZERO,
        counts,
        counts);
  }

  private static @Nullable AxisZero touch(
      Axis axis,
      Owned.Machine machine,
      Screw screw,
      Step.Touch touch,
      StepRun source,
      Orientation lies) {
    Bench.Tool tool = source.benchBefore().cutter();
    if (tool == null) {
      return null;
    }
    Direction inward = lies.directionOf(touch.face()).opposite();
    Length lead = tool.cutter().radius().plus(touch.paper());
    return new AxisZero(
        axis,
        screw,
        machine.zDrive(),
        touch.origin(),
        "where "
            + tool.cutter().name()
            + " touches the "
            + touch.face().word()
            + ", "
            + lead
            + " off",
        touch.face(),
        null,
        lead,
        inward,
        inward);
  }

  // ---- The order
  // -----------------------------------------------------------------------------------------------------

  private record At(DrawnHole hole, Length x, Length y) {}

  private static Result rows(AxisZero x, AxisZero y, List<DrawnHole> holes, Orientation lies) {
    List<At> places =
        holes.stream()
            .map(hole -> new At(hole, x.coordinate(hole, lies), y.coordinate(hole, lies)))
            .toList();
    List<Row> rows = new ArrayList<>();
    @Nullable Mark lastX = null;
    @Nullable Mark lastY = null;
    for (At at : ordered(places, x, y)) {
      lastX = mark(at.x(), lastX, x);
      lastY = mark(at.y(), lastY, y);
      rows.add(new Row(at.hole(), lastX, lastY));
    }
    return new Result.Rows(x, y, rows);
  }

  /**
   * The fewest chains along which neither axis goes back, one after the other. Taken in rising
   * order of one axis, each hole goes on the chain whose end is nearest below it on the other: that
   * needs as few chains as there can be (Dilworth's theorem in the plane). A chain begins below the
   * ends of all before it and never passes them, so the first that fits is the nearest.
   */
  private static List<At> ordered(List<At> places, AxisZero x, AxisZero y) {
    Comparator<At> rising =
        Comparator.<At, Length>comparing(at -> x.arriving(at.x()))
            .thenComparing(at -> y.arriving(at.y()));
    List<List<At>> chains = new ArrayList<>();
    for (At at : places.stream().sorted(rising).toList()) {
      Length height = y.arriving(at.y());
      chains.stream()
          .filter(chain -> !y.arriving(chain.get(chain.size() - 1).y()).isMoreThan(height))
          .findFirst()
          .orElseGet(
              () -> {
                List<At> begun = new ArrayList<>();
                chains.add(begun);
                return begun;
              })
          .add(at);
    }
    return chains.stream().flatMap(List::stream).toList();
  }

  private static Mark mark(Length at, @Nullable Mark before, AxisZero zero) {
    Stop stop = DialMoves.stop(at, zero.screw(), Rounding.NEAREST);
    Length from = before == null ? Length.ZERO : before.at();
    Length step = at.minus(from);
    Stop wind =
        DialMoves.place(
            step,
            before == null
                ? stop.divisions()
                : stop.divisions().subtract(before.stop().divisions()),
            zero.screw());
    return new Mark(at, stop, step, wind, zero.arriving(step).isNegative());
  }

  // ---- What is done to them
  // ------------------------------------------------------------------------------------------

  private record Work(
      HoleCut cut,
      int pass,
      Bit bit,
      Optional<Length> depth,
      Optional<Length> tip,
      boolean through) {}

  private List<Operation> operations(List<StepRun> steps, List<String> order) {
    Map<Work, List<String>> grouped = new LinkedHashMap<>();
    for (StepRun step : steps) {
      HoleRun made = Objects.requireNonNull(step.holes());
      int number = 0;
      for (Pass pass : made.passes()) {
        for (HoleRun.Result result : pass.results()) {
          Work work =
              new Work(
                  made.cut(),
                  number,
                  result.bit(),
                  Optional.ofNullable(result.depth()),
                  Optional.ofNullable(result.tip()),
                  result.through());
          grouped.computeIfAbsent(work, key -> new ArrayList<>()).add(result.hole().name());
        }
        number++;
      }
    }
    List<Operation> operations = new ArrayList<>();
    grouped.forEach(
        (work, names) ->
            operations.add(
                new Operation(
                    work.cut(),
                    work.bit(),
                    order.stream().filter(names::contains).toList(),
                    work.depth().orElse(null),
                    work.tip().orElse(null),
                    work.through(),
                    stop(work))));
    return operations;
  }

  private @Nullable Stop stop(Work work) {
    Owned.Machine machine = run.plan().machine();
    Screw screw = machine == null ? null : machine.screw(Axis.Z);
    return screw == null || work.tip().isEmpty() || work.cut().verb() == Step.HoleVerb.SPOT
        ? null
        : DialMoves.stop(work.tip().get(), screw, Rounding.NEAREST);
  }
}
