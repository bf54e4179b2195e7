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
 * @param stations in the order they are cut, the first one again at the end
 * @param wanted the ridge asked for, at most
 * @param left what is left on purpose
 * @param bound the outline's surface is nowhere further than this above the finished outline,
 *     {@code left} included, rounded up to a micrometre
 */
public record StepTable(
    RoundOutline outline,
    Length cutterRadius,
    CutDirection direction,
    List<Station> stations,
    Length wanted,
    Length left,
    Length bound) {
  public StepTable {
    stations = List.copyOf(stations);
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
