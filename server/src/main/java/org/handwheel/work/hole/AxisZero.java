package org.handwheel.work.hole;

import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Owned.ZDrive;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.Dial;
import org.handwheel.work.Dial.Turn;
import org.handwheel.work.Orientation;
import org.handwheel.work.PartBox;
import org.jspecify.annotations.Nullable;

/**
 * Where the coordinates of one axis begin and which way they count.
 *
 * @param screw the axis' screw and dial
 * @param zDrive what the machine's Z handle moves
 * @param origin the line that set the dial to zero
 * @param words what the zero is at, for a person
 * @param edge the edge that was found; nothing if it is the centre of a hole
 * @param centre the place of that hole, if it is one
 * @param lead how far the spindle's axis still goes from the zero until it stands over the edge:
 *     half a finder's tip where the dial was set to zero at the touch, else zero
 * @param counts the way the cutter goes, relative to the work, as coordinates grow
 * @param arrives the way it went when the zero was taken, so that the screw bore; the last move to
 *     every hole goes this way
 */
public record AxisZero(
    Axis axis,
    Screw screw,
    ZDrive zDrive,
    Origin origin,
    String words,
    @Nullable Face edge,
    PartBox.@Nullable Point centre,
    Length lead,
    Direction counts,
    Direction arrives) {
  /** Where the zero is, and which way the table goes and the handle turns as the count grows. */
  public String counting() {
    return words
        + "; grows as the cutter goes "
        + counts.words()
        + ": table "
        + table().words()
        + (turn() == null ? "" : ", " + turn().words());
  }

  /** A hole's coordinate, counted from the zero; negative behind it. */
  public Length coordinate(DrawnHole hole, Orientation lies) {
    return coordinate(hole.frame().box(), hole.point(), lies);
  }

  /** The coordinate of a point of the part, counted from the zero; negative behind it. */
  public Length coordinate(PartBox box, PartBox.Point point, Orientation lies) {
    if (edge != null) {
      return box.from(edge, point).plus(lead);
    }
    Length from = centre == null ? Length.ZERO : box.at(axis, lies, centre);
    return box.at(axis, lies, point).minus(from);
  }

  /** How far along the way of arrival a coordinate lies. */
  Length arriving(Length coordinate) {
    return arrives == counts ? coordinate : coordinate.negated();
  }

  /** Which way the table goes as coordinates grow. */
  public Direction table() {
    return Dial.handleDirection(counts, zDrive);
  }

  /** How the handle is turned as coordinates grow, if the shop says. */
  public @Nullable Turn turn() {
    return Dial.turn(screw, counts, zDrive);
  }

  /**
   * How far to run past a place and come back, so that the screw bears: the backlash and a quarter
   * of a turn. Source: common practice, no source.
   */
  public Length takeUp() {
    return screw.backlash().plus(screw.lead().half().half());
  }

  /** Whether the dial is marked in inches: a division is a whole number of ten-thousandths. */
  public boolean isInInches() {
    return screw.division().picometres() % Length.inches("0.0001").picometres() == 0;
  }
}
