package org.handwheel.work.outline;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.Dial;
import org.handwheel.work.outline.StepTable.Station;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/**
 * Works out step tables.
 *
 * <p>Between two stations of a round of radius R, d theta apart, a cutter of radius r leaves a
 * ridge of about (R + r) R d theta^2 / (8 r); stations are spread so that this is the same
 * everywhere, and then the ridge that the dials' settings leave is computed, without that
 * approximation. A setting is the one of the neighbouring divisions that is least outside the
 * parallel curve and never inside (common practice, no source: rounding toward metal left on).
 */
public final class StepTables {
  /** More stops than this for a quarter nobody winds; common practice, no source. */
  public static final int MOST_PER_QUARTER = 250;

  private static final int SLICES = 2000;
  private static final Length MICROMETRE = Length.mm("0.001");

  private final RoundOutline outline;
  private final Length cutterRadius;
  private final Length left;
  private final double reach;
  private final double radius;
  private final Screw screwX;
  private final Screw screwY;

  private StepTables(
      RoundOutline outline, Length cutterRadius, Length left, Screw screwX, Screw screwY) {
    this.outline = outline;
    this.cutterRadius = cutterRadius;
    this.left = left;
    this.radius = cutterRadius.millimetres();
    this.reach = radius + left.millimetres();
    this.screwX = screwX;
    this.screwY = screwY;
  }

  /** A point that the dials can set, in divisions from the middle. */
  private record Stop(long x, long y) {}

  /**
   * The table for the outside of an outline whose first axis lies along the machine's X.
   *
   * @param left what is to stay on, zero or more
   * @param cusp the greatest ridge wanted, over zero
   * @return nothing if even {@link #MOST_PER_QUARTER} steps a quarter leave more, or if the dials
   *     are too coarse for so many steps
   */
  public static Optional<StepTable> of(
      RoundOutline outline,
      Length cutterRadius,
      Length left,
      Length cusp,
      CutDirection direction,
      Screw screwX,
      Screw screwY) {
    if (!cutterRadius.isPositive() || !cusp.isPositive() || left.isNegative()) {
      throw new IllegalArgumentException("a cutter, a ridge over zero and nothing less than left");
    }
    return new StepTables(outline, cutterRadius, left, screwX, screwY).table(cusp, direction);
  }

  private Optional<StepTable> table(Length cusp, CutDirection direction) {
    double allowed = cusp.millimetres();
    List<Double> weights = weights();
    double total = weights.get(SLICES);
    int fewest = Math.max(1, (int) Math.ceil(total / Math.sqrt(allowed)));
    List<Stop> best = null;
    double least = Double.POSITIVE_INFINITY;
    int most = Math.min(MOST_PER_QUARTER, 2 * fewest + 2);
    for (int n = fewest; n <= most && least > allowed; n++) {
      List<Stop> quarter = quarter(angles(weights, n));
      if (quarter != null) {
        double ridge = greatest(quarter) - left.millimetres();
        if (ridge < least) {
          least = ridge;
          best = quarter;
        }
      }
    }
    if (best == null) {
      return Optional.empty();
    }
    Length bound = MICROMETRE.times((long) Math.ceil((left.millimetres() + least) * 1000 - 1e-6));
    return Optional.of(
        new StepTable(
            outline,
            StepTable.Side.OUTSIDE,
            cutterRadius,
            direction,
            around(best, direction),
            cusp,
            left,
            bound));
  }

  // ---- Where to stop

  /** The sum of sqrt(ridge) over the quarter, up to each slice. */
  private List<Double> weights() {
    List<Double> sums = new ArrayList<>();
    double sum = 0;
    sums.add(sum);
    double slice = Math.PI / 2 / SLICES;
    for (int i = 0; i < SLICES; i++) {
      // The surface cut is that of the outline grown by what is left.
      double r = outline.radius((i + 0.5) * slice) + left.millimetres();
      sum += Math.sqrt((r + radius) * r / (8 * radius)) * slice;
      sums.add(sum);
    }
    return sums;
  }

  private static List<Double> angles(List<Double> weights, int n) {
    List<Double> angles = new ArrayList<>();
    double total = weights.get(SLICES);
    int at = 0;
    for (int i = 0; i <= n; i++) {
      double wanted = total * i / n;
      while (at < SLICES - 1 && weights.get(at + 1) < wanted) {
        at++;
      }
      double within = (wanted - weights.get(at)) / (weights.get(at + 1) - weights.get(at));
      angles.add(i == n ? Math.PI / 2 : (at + within) * Math.PI / 2 / SLICES);
    }
    return angles;
  }

  /** The settings of a quarter, from the first axis to the second; x falls and y rises. */
  private @Nullable List<Stop> quarter(List<Double> angles) {
    List<Stop> sets = new ArrayList<>();
    Coordinate start = outline.offset(0, reach);
    // On the axis itself, where a straight side has its middle.
    sets.add(new Stop(up(start.x, screwX), 0));
    for (double angle : angles) {
      Coordinate exact = outline.offset(angle, reach);
      Stop next = near(exact, angle, sets.get(sets.size() - 1));
      if (next == null) {
        return null;
      }
      if (!next.equals(sets.get(sets.size() - 1))) {
        sets.add(next);
      }
    }
    Stop last = sets.get(sets.size() - 1);
    if (last.x() != 0) {
      sets.add(new Stop(0, last.y()));
    }
    return sets;
  }

  private static long up(double length, Screw screw) {
    return (long) Math.ceil(length / screw.division().millimetres() - 1e-9);
  }

  private @Nullable Stop near(Coordinate exact, double angle, Stop before) {
    double divisionX = screwX.division().millimetres();
    double divisionY = screwY.division().millimetres();
    long x = (long) Math.floor(exact.x / divisionX + 1e-9);
    long y = (long) Math.floor(exact.y / divisionY + 1e-9);
    Stop best = null;
    double least = Double.POSITIVE_INFINITY;
    for (long i = x; i <= x + 1; i++) {
      for (long j = y; j <= y + 1; j++) {
        double off =
            (i * divisionX - exact.x) * Math.cos(angle)
                + (j * divisionY - exact.y) * Math.sin(angle);
        boolean onward = i <= before.x() && j >= before.y();
        if (onward && off > -1e-9 && off < least - 1e-12) {
          least = off;
          best = new Stop(i, j);
        }
      }
    }
    return best;
  }

  // ---- What it leaves

  /** How far what is left stands above the finished outline at most, over a quarter. */
  private double greatest(List<Stop> quarter) {
    double greatest = 0;
    for (int i = 1; i < quarter.size(); i++) {
      greatest = Math.max(greatest, tip(quarter.get(i - 1), quarter.get(i)));
    }
    return greatest;
  }

  /** The height of the ridge between two stations; for a straight move, of the side it cuts. */
  private double tip(Stop from, Stop to) {
    double ax = from.x() * screwX.division().millimetres();
    double ay = from.y() * screwY.division().millimetres();
    double bx = to.x() * screwX.division().millimetres();
    double by = to.y() * screwY.division().millimetres();
    if (from.x() == to.x()) {
      return Math.max(outline.distance(ax - radius, ay), outline.distance(ax - radius, by));
    }
    if (from.y() == to.y()) {
      return Math.max(outline.distance(ax, ay - radius), outline.distance(bx, ay - radius));
    }
    double half = Math.hypot(bx - ax, by - ay) / 2;
    if (half >= radius) {
      return Double.POSITIVE_INFINITY;
    }
    double back = Math.sqrt(radius * radius - half * half);
    double nx = (by - ay) / (2 * half);
    double ny = (ax - bx) / (2 * half);
    return outline.distance((ax + bx) / 2 - back * nx, (ay + by) / 2 - back * ny);
  }

  // ---- All round

  /** Conventional on an outside is counter-clockwise seen from above, right-hand cutter. */
  private List<Station> around(List<Stop> quarter, CutDirection direction) {
    List<Stop> ring = new ArrayList<>();
    for (int q = 0; q < 4; q++) {
      List<Stop> part = new ArrayList<>(quarter);
      if (q % 2 == 1) {
        Collections.reverse(part);
      }
      long signX = q == 0 || q == 3 ? 1 : -1;
      long signY = q < 2 ? 1 : -1;
      for (Stop set : part) {
        Stop here = new Stop(signX * set.x(), signY * set.y());
        if (ring.isEmpty() || !ring.get(ring.size() - 1).equals(here)) {
          ring.add(here);
        }
      }
    }
    if (direction == CutDirection.CLIMB) {
      Collections.reverse(ring);
    }
    List<Station> stations = new ArrayList<>();
    long wayX = 0;
    long wayY = 0;
    for (int i = 0; i < ring.size(); i++) {
      Stop here = ring.get(i);
      Stop before = i == 0 ? here : ring.get(i - 1);
      List<Axis> round = new ArrayList<>();
      if (i + 1 < ring.size()) {
        long nextX = Long.signum(ring.get(i + 1).x() - here.x());
        long nextY = Long.signum(ring.get(i + 1).y() - here.y());
        if (nextX * wayX < 0) {
          round.add(Axis.X);
        }
        if (nextY * wayY < 0) {
          round.add(Axis.Y);
        }
        wayX = nextX == 0 ? wayX : nextX;
        wayY = nextY == 0 ? wayY : nextY;
      }
      stations.add(station(here, before, round));
    }
    return stations;
  }

  private Station station(Stop here, Stop before, List<Axis> round) {
    Length x = length(here.x(), screwX);
    Length y = length(here.y(), screwY);
    // The handle that leads away from the middle goes first.
    Axis first = Math.abs(here.x()) > Math.abs(before.x()) ? Axis.X : Axis.Y;
    double beyond = outline.distance(x.millimetres(), y.millimetres()) - reach;
    return new Station(
        x,
        y,
        Dial.setting(x, screwX, Dial.Rounding.NEAREST),
        Dial.setting(y, screwY, Dial.Rounding.NEAREST),
        first,
        Length.ofMillimetres(Math.max(0, beyond)),
        round);
  }

  private static Length length(long divisions, Screw screw) {
    return screw.lead().times(BigFraction.of(divisions).divide(screw.divisions()));
  }
}
