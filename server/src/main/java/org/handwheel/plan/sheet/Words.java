package org.handwheel.plan.sheet;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Side;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Slope;
import org.handwheel.work.Dial;
import org.handwheel.work.DialMove.Stop;
import org.jspecify.annotations.Nullable;

/** Small pieces of the sheet's wording. */
final class Words {
  private static final Length SLOPE_RUN = Length.mm("100");

  private Words() {}

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** {@code X and Y}. */
  static String axes(Set<Axis> axes) {
    return and(axes.stream().sorted().map(Axis::name).toList());
  }

  static String faces(Collection<Face> faces) {
    return and(faces.stream().sorted().map(Face::word).toList());
  }

  static String and(List<String> words) {
    return words.size() < 2
        ? String.join("", words)
        : String.join(", ", words.subList(0, words.size() - 1))
            + " and "
            + words.get(words.size() - 1);
  }

  /** A length that may be a nominal, in both units. */
  static String both(Length length) {
    return LengthText.both(length);
  }

  static String slope(Slope slope) {
    return LengthText.both(slope.over(SLOPE_RUN)) + " over 100 mm";
  }

  static String side(Side side) {
    return side instanceof Side.OfPart part
        ? "the " + part.face().word()
        : place(((Side.AtMachine) side).direction());
  }

  /** A place as the operator sees it. */
  static String place(Direction direction) {
    return switch (direction) {
      case OPERATOR_LEFT -> "the left";
      case OPERATOR_RIGHT -> "the right";
      case OPERATOR_FRONT -> "your side";
      case OPERATOR_BACK -> "the far side";
      case UP -> "above";
      case DOWN -> "below";
    };
  }

  /** The mark at which to stop on a dial that counts up on the way. */
  static String mark(Stop stop) {
    return stop.reading().toPlainString();
  }

  /** Where a dial stands from zero: {@code 3 t + 15}, or below it {@code 3 t below 0, mark 85}. */
  static String counted(Stop stop) {
    if (stop.divisions().signum() >= 0) {
      return stop.countedTurns() + " t + " + mark(stop);
    }
    String turns = stop.countedTurns().substring(1);
    return (turns.equals("0") ? "below 0, mark " : turns + " t below 0, mark ") + mark(stop);
  }

  /** Turns and divisions to wind: {@code 1 turn + 18}. */
  static String winding(Stop stop) {
    boolean back = stop.divisions().signum() < 0;
    String count = back ? stop.countedTurns().substring(1) : stop.countedTurns();
    String marks = (back ? stop.readingDown() : stop.reading()).toPlainString();
    String words = count + (count.equals("1") ? " turn + " : " turns + ") + marks + " div.";
    return back ? words + " back" : words;
  }

  /** The same for a narrow column: {@code 1 t + 18}. */
  static String shortWinding(Stop stop) {
    return winding(stop).replaceFirst(" turns?", " t").replace(" div.", "");
  }

  /** What a handle has to move for the cutter to go a way, and how that handle is turned. */
  static String handle(Direction cutter, Owned.@Nullable Machine machine) {
    Owned.ZDrive drive = machine == null ? Owned.ZDrive.QUILL : machine.zDrive();
    Direction moved = Dial.handleDirection(cutter, drive);
    String what = cutter.axis() != Axis.Z ? "table" : drive.name().toLowerCase(Locale.ROOT);
    String words = what + " goes " + moved.words();
    Owned.Screw screw = machine == null ? null : machine.screw(cutter.axis());
    Dial.Turn turn = screw == null ? null : Dial.turn(screw, cutter, drive);
    if (screw == null || turn == null) {
      return words;
    }
    String at = screw.handle() == null ? "" : " at " + place(screw.handle());
    return words + ": " + cutter.axis().name() + " handle" + at + " " + turn.words();
  }

  /** A rate to two figures: more is not sure. */
  static String rough(double value) {
    if (value <= 0) {
      return "0";
    }
    double step = Math.pow(10, Math.floor(Math.log10(value)) - 1);
    double rounded = Math.round(value / step) * step;
    return rounded >= 10
        ? Long.toString(Math.round(rounded))
        : String.format(Locale.ROOT, "%.1f", rounded);
  }

  static String perTurn(@Nullable HandFeed hand, Axis axis) {
    return hand == null
        ? ""
        : "; one turn of the "
            + axis.name()
            + " handle in about "
            + rough(hand.secondsPerTurn())
            + " s";
  }

  static String rpm(double turns) {
    return Math.round(turns) + " rpm";
  }

  /** Inches a minute beside millimetres a minute. */
  static String feed(double millimetresPerMinute) {
    return "about "
        + rough(millimetresPerMinute)
        + " mm/min ("
        + rough(millimetresPerMinute / 25.4)
        + " in/min)";
  }

  /** A number in a unit, to a thousandth of a millimetre or a tenth of a thou. */
  static String number(Length length, LengthUnit unit) {
    return unit == LengthUnit.MM
        ? LengthText.number(length, LengthUnit.MM, 3, 2)
        : LengthText.number(length, LengthUnit.IN, 4, 3);
  }
}
