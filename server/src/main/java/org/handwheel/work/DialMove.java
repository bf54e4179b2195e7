package org.handwheel.work;

import java.math.BigDecimal;
import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.Dial.Turn;
import org.jspecify.annotations.Nullable;

/**
 * How the dial of one cut's depth is set: which handle, which way, how far and where to stop.
 *
 * @param cut the cut it is for
 * @param axis the axis that sets the depth
 * @param cutter the way the cutter goes into the metal, relative to the work
 * @param moved the way the part goes that the handle moves: the table, the knee, or on Z the quill
 *     or head
 * @param handle where the handle is, if the shop says
 * @param turn how that handle is turned to go in, if the shop says; there is no default
 * @param start where the distance begins
 * @param distance how far the cutter goes from there for the last pass, a feeler's thickness or the
 *     cutter's radius included; negative if the last stop lies on the other side of the zero
 * @param stops where the dial stands for each pass, the last one last: counted from the dial's
 *     zero, or from the reading of the last cut where the plan cannot know that reading
 * @param wind the turns and divisions of the whole distance from the start to the last stop
 * @param loading whether the screw bears on the side it has to
 * @param takeUp how far to run past and come back so that the screw bears: the backlash and a
 *     quarter of a turn (common practice, no source)
 * @param doubt how far the dial may leave the size off: the rounding of the last stop, the reading
 *     of the dial, and the touch where the distance begins there
 */
public record DialMove(
    CutRun cut,
    Axis axis,
    Direction cutter,
    Direction moved,
    @Nullable Direction handle,
    @Nullable Turn turn,
    Start start,
    Length distance,
    List<Stop> stops,
    Stop wind,
    Loading loading,
    Length takeUp,
    Length doubt) {
  public DialMove {
    stops = List.copyOf(stops);
  }

  /** Where the dial stands at the end of the cut. */
  public Stop last() {
    return stops.get(stops.size() - 1);
  }

  /** Where the distance of a move begins. */
  public sealed interface Start {
    /** The line that made it so. */
    Origin origin();

    /** The size that was there when the dial stood there. */
    Length size();

    /**
     * At the touch, where the dial reads zero.
     *
     * @param face the face that was touched
     * @param paper the thickness of the feeler between
     */
    record Touch(Origin origin, Length size, Face face, Length paper) implements Start {}

    /**
     * Where the dial was set to zero after an edge was found with the spindle's axis.
     *
     * @param face the edge's face: the one that is cut or the one opposite
     * @param ahead how far the axis is past the edge when the dial reads zero, counted the way the
     *     cutter goes in; negative if it stands before it
     */
    record Edge(Origin origin, Length size, Face face, Length ahead) implements Start {}

    /**
     * At the reading at which the size was cut, which has been measured since.
     *
     * @param reading where the dial stands there, counted from its zero; nothing after a skim,
     *     whose count of passes only the operator knows
     */
    record LastCut(Origin origin, Length size, @Nullable Stop reading) implements Start {}
  }

  /** On which side of its thread the screw bears when the depth is set. */
  public enum Loading {
    /** The zero was taken going in, as the cut goes: wind on, or come in again from clear. */
    SAME_SIDE,
    /**
     * The zero was taken from the other side: run past by the take-up, clear of the work, and come
     * back; without that the size is off by the backlash.
     */
    OTHER_SIDE,
    /** Nothing says how the zero was reached: back off by the take-up and come in. */
    UNKNOWN
  }

  /**
   * A place of a dial, counted in the way the cutter goes in.
   *
   * @param asked the exact distance
   * @param divisions the divisions counted, a whole number of those parts the dial can be read to
   * @param turns whole turns in them, rounded down
   * @param reading what the dial shows if it counts up on the way, below one turn
   * @param readingDown what it shows if it counts down on the way
   * @param error how far it goes beyond what was asked; negative if it leaves metal on
   */
  public record Stop(
      Length asked,
      BigFraction divisions,
      long turns,
      BigDecimal reading,
      BigDecimal readingDown,
      Length error) {
    /** The whole turns as they are counted from zero: below it the count runs down. */
    public String countedTurns() {
      return Dial.counted(divisions.signum(), turns, reading);
    }

    /** The distance the dial is really set to. */
    public Length reached() {
      return asked.plus(error);
    }
  }
}
