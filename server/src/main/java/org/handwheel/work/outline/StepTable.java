package org.handwheel.work.outline;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;
import org.handwheel.work.Dial;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Where the cutter's axis stands, one after another, to cut an outline with two handles.
 *
 * <p>Between two stations one handle is turned after the other, the one that leads away from the
 * finished outline first. The cutter's axis then never comes nearer to the outline than the
 * cutter's radius and what is left on: each station lies outside the tangent of the parallel curve,
 * and both moves stay on the outer side of the tangent at their station.
 *
 * @param outline the finished form
 * @param side where the metal is that the cut takes away
 * @param stations in the order they are cut, the first one again at the end
 * @param wanted the ridge asked for, at most
 * @param left what is left on purpose
 * @param bound the outline's surface is nowhere further than this above the finished outline,
 *     {@code left} included, rounded up to a micrometre
 */
public record StepTable(
    Outline outline,
    Side side,
    Length cutterRadius,
    CutDirection direction,
    List<Station> stations,
    Length wanted,
    Length left,
    Length bound) {
  public StepTable {
    stations = List.copyOf(stations);
  }

  /** Which side of the outline the cutter is on. */
  public enum Side {
    OUTSIDE,
    INSIDE
  }

  /**
   * A place to stop, counted from the outline's middle.
   *
   * @param first the handle turned first to come here; nothing moves before the first station
   * @param tightness how far beyond the parallel curve the dials set the cutter: zero or more
   * @param turnsRound the axes whose handle is turned the other way from here on
   */
  public record Station(
      Length x,
      Length y,
      Dial.Setting dialX,
      Dial.Setting dialY,
      Axis first,
      Length tightness,
      List<Axis> turnsRound) {
    public Station {
      turnsRound = List.copyOf(turnsRound);
    }
  }

  /** How many moves from station to station there are. */
  public int steps() {
    return stations.size() - 1;
  }

  /** What stands out above the size this cut aims at: to be filed away after the last cut. */
  public Length ridge() {
    return bound.minus(left);
  }

  /**
   * The part of it round one corner.
   *
   * @param toX +1 for the stations on the right of the middle, -1 for those on the left
   * @param toY +1 for those behind the middle as the operator stands, -1 for those before it
   */
  public StepTable quarter(int toX, int toY) {
    List<Station> kept = new ArrayList<>();
    for (Station station : stations) {
      boolean isHere =
          station.x().compareTo(Length.ZERO) * toX >= 0
              && station.y().compareTo(Length.ZERO) * toY >= 0;
      boolean isBetween = !station.x().isZero() && !station.y().isZero();
      if (isHere) {
        kept.add(station);
      } else if (kept.stream().anyMatch(one -> !one.x().isZero() && !one.y().isZero())) {
        break;
      } else if (isBetween) {
        kept.clear();
      }
    }
    // The round begins and ends on an axis, so one end of another quarter may stand before this.
    while (kept.size() > 1 && isOnAxis(kept.get(0)) && isOnAxis(kept.get(1))) {
      kept.remove(0);
    }
    while (kept.size() > 1
        && isOnAxis(kept.get(kept.size() - 1))
        && isOnAxis(kept.get(kept.size() - 2))) {
      kept.remove(kept.size() - 1);
    }
    List<Station> plain =
        kept.stream()
            .map(
                one ->
                    new Station(
                        one.x(),
                        one.y(),
                        one.dialX(),
                        one.dialY(),
                        one.first(),
                        one.tightness(),
                        List.of()))
            .toList();
    return new StepTable(outline, side, cutterRadius, direction, plain, wanted, left, bound);
  }

  private static boolean isOnAxis(Station station) {
    return station.x().isZero() || station.y().isZero();
  }

  /** The way of the cutter's axis in millimetres about the outline's middle. */
  public LineString path() {
    List<Coordinate> way = new ArrayList<>();
    Coordinate before = null;
    for (Station station : stations) {
      Coordinate here = new Coordinate(station.x().millimetres(), station.y().millimetres());
      if (before != null) {
        way.add(
            station.first() == Axis.X
                ? new Coordinate(here.x, before.y)
                : new Coordinate(before.x, here.y));
      }
      way.add(here);
      before = here;
    }
    return new GeometryFactory().createLineString(way.toArray(Coordinate[]::new));
  }
}
