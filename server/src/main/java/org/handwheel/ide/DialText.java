package org.handwheel.ide;

import java.math.BigDecimal;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Dial;
import org.handwheel.work.Dial.Setting;
import org.jspecify.annotations.Nullable;

/** A distance at the handle of an axis, in words. */
final class DialText {
  static final String FORMULA =
      "divisions = distance / travel of one turn x divisions in a turn, rounded once to a whole"
          + " division";

  private DialText() {}

  /** For example {@code 1 turn + 16 divisions}; whole turns are left out where there are none. */
  static String setting(Length distance, Owned.Screw screw) {
    Setting setting = Dial.setting(distance.abs(), screw, Dial.Rounding.NEAREST);
    String divisions = plain(setting) + (isOne(setting) ? " division" : " divisions");
    if (setting.turns() == 0) {
      return divisions;
    }
    String turns = setting.turns() == 1 ? "1 turn" : setting.turns() + " turns";
    return setting.reading().signum() == 0 ? turns : turns + " + " + divisions;
  }

  /** How far the whole divisions are off: "0.006 mm (0.2 thou) too far". */
  static String error(Length distance, Owned.Screw screw) {
    Length error = Dial.setting(distance.abs(), screw, Dial.Rounding.NEAREST).error();
    return off(error);
  }

  static String off(Length error) {
    if (error.isZero()) {
      return "exactly";
    }
    if (error.abs().isLessThan(Length.mm("0.0005"))) {
      return "off by less than " + Length.mm("0.0005").times(2);
    }
    return error.abs() + (error.isNegative() ? " short" : " too far");
  }

  /** Which handle to turn and how, for the cutter to go a way; the machine may not say. */
  static String handle(Direction cutter, Owned.Screw screw, Owned.Machine machine) {
    String crank = Dial.crank(screw, cutter, machine.zDrive());
    Direction moved = Dial.handleDirection(cutter, machine.zDrive());
    String what =
        cutter.axis() != Axis.Z
            ? "the table goes " + moved.words()
            : switch (machine.zDrive()) {
              case QUILL -> "the quill goes " + moved.words();
              case HEAD -> "the head goes " + moved.words();
              case KNEE -> "the knee goes " + moved.words();
            };
    String axis = screw.axis().name();
    return crank.isEmpty()
        ? what + "; the shop does not say which way the " + axis + " handle turns for that"
        : "turn the " + axis + " handle " + crank + ": " + what;
  }

  /** The screw and dial: "2.54 mm (0.100 in) a turn, 100 divisions of 0.0254 mm (1 thou)". */
  static String screw(Owned.Screw screw) {
    return screw.lead()
        + " a turn, "
        + number(screw)
        + " divisions of "
        + LengthText.number(screw.division(), LengthUnit.MM, 4, 2)
        + " mm ("
        + LengthText.number(screw.division(), LengthUnit.THOU, 2, 0)
        + " thou)";
  }

  private static String number(Owned.Screw screw) {
    double divisions = screw.divisions().doubleValue();
    return divisions == Math.rint(divisions)
        ? Long.toString(Math.round(divisions))
        : Double.toString(divisions);
  }

  /** Adds what a distance is at the dial, if the machine has a screw there. */
  static void add(
      HoverText.Builder text, Length distance, Direction cutter, Owned.@Nullable Machine machine) {
    Owned.Screw screw = machine == null ? null : machine.screw(cutter.axis());
    if (machine == null || screw == null || distance.isZero()) {
      return;
    }
    text.fact(
        "On the " + screw.axis().name() + " dial",
        setting(distance, screw) + ", " + error(distance, screw));
    text.fact("Handle", handle(cutter, screw, machine));
    text.formula(FORMULA + "; " + screw.axis().name() + ": " + screw(screw));
  }

  private static boolean isOne(Setting setting) {
    return setting.reading().compareTo(BigDecimal.ONE) == 0;
  }

  private static String plain(Setting setting) {
    return setting.reading().toPlainString();
  }
}
