package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Screw;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Dial.Rounding;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.DialMoves;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.CrankPath.Point;
import org.handwheel.work.feature.CrankPath.Purpose;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.hole.Coordinates;
import org.jspecify.annotations.Nullable;

/**
 * A line that cuts a feature, with its places on the dials.
 *
 * @param middle where the feature's middle lies from the zeros in force; nothing if there are none
 * @param rows the stops of straight lines, counted from the zeros in force or else from the middle;
 *     empty for step tables, which carry their own
 * @param down how the cutter gets down, if that can be said
 */
public record FeatureTable(
    SetupRun setup,
    StepRun step,
    FeatureRun run,
    @Nullable Middle middle,
    List<Row> rows,
    Optional<WayDown> down) {
  public FeatureTable {
    rows = List.copyOf(rows);
  }

  /** The feature's middle on the dials. */
  public record Middle(AxisZero x, AxisZero y, Stop atX, Stop atY) {}

  /**
   * A stop.
   *
   * @param first the handle turned first to come here, where both have to be turned
   * @param turnsRound the axes whose handle is turned the other way from here on
   */
  public record Row(Purpose purpose, Stop x, Stop y, @Nullable Axis first, List<Axis> turnsRound) {
    public Row {
      turnsRound = List.copyOf(turnsRound);
    }
  }

  /** The lines on features in the setups that could be read, in order. */
  public static List<FeatureTable> all(PlanRun run) {
    return run.knownSetups()
        .flatMap(setup -> setup.steps().stream().flatMap(step -> of(run, setup, step).stream()))
        .toList();
  }

  /** The table of a line, if it is one on a feature. */
  public static Optional<FeatureTable> of(PlanRun run, SetupRun setup, StepRun step) {
    FeatureRun feature = step.feature();
    if (feature == null) {
      return Optional.empty();
    }
    Middle middle = middle(run, setup, step, feature);
    List<Row> rows =
        feature.result() instanceof Result.Lines lines
            ? rows(run, feature, lines.path(), middle, setup.orientation())
            : List.of();
    return Optional.of(
        new FeatureTable(
            setup, step, feature, middle, rows, WayDown.of(step, run.plan().shop().limits())));
  }

  private static @Nullable Middle middle(
      PlanRun run, SetupRun setup, StepRun step, FeatureRun feature) {
    Orientation lies = setup.orientation();
    DrawnFeature drawn = feature.drawn();
    Place place =
        feature.result() instanceof Result.Steps steps
            ? steps.middle()
            : feature.result() instanceof Result.Lines lines ? lines.middle() : null;
    AxisZero x = Coordinates.zero(run, setup, step, Axis.X);
    AxisZero y = Coordinates.zero(run, setup, step, Axis.Y);
    if (lies == null || drawn == null || place == null || x == null || y == null) {
      return null;
    }
    PartBox.Point point = drawn.frame().point(place, Length.ZERO);
    PartBox box = drawn.frame().box();
    return new Middle(
        x,
        y,
        DialMoves.stop(x.coordinate(box, point, lies), x.screw(), Rounding.NEAREST),
        DialMoves.stop(y.coordinate(box, point, lies), y.screw(), Rounding.NEAREST));
  }

  private static List<Row> rows(
      PlanRun run,
      FeatureRun feature,
      CrankPath path,
      @Nullable Middle middle,
      @Nullable Orientation lies) {
    var machine = run.plan().machine();
    Screw x = machine == null ? null : machine.screw(Axis.X);
    Screw y = machine == null ? null : machine.screw(Axis.Y);
    if (x == null || y == null) {
      return List.of();
    }
    Length middleX = middle == null ? Length.ZERO : middle.atX().asked();
    Length middleY = middle == null ? Length.ZERO : middle.atY().asked();
    boolean upX = middle == null || middle.x().counts().sign() > 0;
    boolean upY = middle == null || middle.y().counts().sign() > 0;
    List<Point> points = path.points();
    Length dia = feature.cutter() == null ? Length.ZERO : feature.cutter().dia();
    List<Stop> stopsX =
        stops(points.stream().map(Point::x).toList(), middleX, upX, x)
            .within(OpeningSize.limits(feature, lies, Axis.X), dia);
    List<Stop> stopsY =
        stops(points.stream().map(Point::y).toList(), middleY, upY, y)
            .within(OpeningSize.limits(feature, lies, Axis.Y), dia);
    List<Row> rows = new ArrayList<>();
    int wayX = 0;
    int wayY = 0;
    for (int i = 0; i < points.size(); i++) {
      Point here = points.get(i);
      List<Axis> round = new ArrayList<>();
      if (i + 1 < points.size()) {
        int nextX = points.get(i + 1).x().compareTo(here.x());
        int nextY = points.get(i + 1).y().compareTo(here.y());
        if (nextX * wayX < 0) {
          round.add(Axis.X);
        }
        if (nextY * wayY < 0) {
          round.add(Axis.Y);
        }
        wayX = nextX == 0 ? wayX : nextX;
        wayY = nextY == 0 ? wayY : nextY;
      }
      rows.add(
          new Row(
              here.purpose(),
              stopsX.get(i),
              stopsY.get(i),
              i == 0 ? null : CrankPath.first(points.get(i - 1), here),
              round));
    }
    return rows;
  }

  /**
   * The stops of one axis, rounded in two ways.
   *
   * @param inward metal is left on, never too much taken
   */
  private record Stops(List<Stop> inward, List<Stop> nearest) {
    /**
     * Rounded inward, unless that leaves the opening under its least size and the nearest stops
     * bring it within its limits.
     *
     * @param limits what the opening may be along this axis, if the drawing writes that
     */
    List<Stop> within(@Nullable LengthRange limits, Length dia) {
      return limits != null
              && size(inward, dia).isLessThan(limits.low())
              && limits.contains(size(nearest, dia))
          ? nearest
          : inward;
    }

    private static Length size(List<Stop> stops, Length dia) {
      return OpeningSize.across(stops).plus(dia);
    }
  }

  private static Stops stops(
      List<Length> offsets, Length middle, boolean growsWithAxis, Screw screw) {
    return new Stops(
        offsets.stream().map(one -> inward(one, middle, growsWithAxis, screw)).toList(),
        offsets.stream()
            .map(one -> middle.plus(growsWithAxis ? one : one.negated()))
            .map(at -> DialMoves.stop(at, screw, Rounding.NEAREST))
            .toList());
  }

  /** A place rounded toward the middle: metal is left on, never too much taken. */
  private static Stop inward(Length offset, Length middle, boolean growsWithAxis, Screw screw) {
    Length step = growsWithAxis ? offset : offset.negated();
    Length at = middle.plus(step);
    if (step.isZero()) {
      return DialMoves.stop(at, screw, Rounding.NEAREST);
    }
    if (step.isPositive()) {
      return DialMoves.stop(at, screw, Rounding.SHORT);
    }
    Stop mirrored = DialMoves.stop(at.negated(), screw, Rounding.SHORT);
    return DialMoves.place(at, mirrored.divisions().negate(), screw);
  }

  /** How far a wall of straight lines may stay off its place at most, what is left on included. */
  public Length bound() {
    if (!(run.result() instanceof Result.Lines lines)) {
      return run.result() instanceof Result.Steps steps ? steps.table().bound() : Length.ZERO;
    }
    Length rounding =
        rows.stream()
            .filter(row -> row.purpose() == Purpose.WALL)
            .flatMap(row -> Stream.of(row.x(), row.y()))
            .map(stop -> stop.error().abs())
            .reduce(Length.ZERO, Length::max);
    // Where both axes are rounded, the cutter keeps off a round by up to both together.
    Length both = lines.path().ridge().isZero() ? rounding : rounding.plus(rounding);
    return lines.path().left().plus(lines.path().ridge()).plus(both);
  }
}
