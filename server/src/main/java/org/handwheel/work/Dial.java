package org.handwheel.work;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Screw;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * Turns and divisions on a dial. A position is counted from zero and rounded once; rounded moves
 * are never added up.
 */
public final class Dial {
  private Dial() {}

  /** Which way a rounded setting may be off. */
  public enum Rounding {
    /** To the nearest division, half to even. */
    NEAREST,
    /** Never further than asked for: toward metal left on when winding in. */
    SHORT
  }

  /** Which way a handle turns, seen from where the operator stands to turn it. */
  public enum Turn {
    CLOCKWISE("clockwise"),
    COUNTER_CLOCKWISE("counter-clockwise");

    private final String words;

    Turn(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A setting of a dial.
   *
   * @param divisions whole divisions from zero, negative when counting down
   * @param turns whole turns in them, rounded down
   * @param reading where the collar stands after them; a fraction only where a turn is not a whole
   *     number of divisions
   * @param error what the setting reaches beyond what was asked for; negative if it stops short
   */
  public record Setting(long divisions, long turns, BigDecimal reading, Length error) {
    /** The whole turns as they are counted from zero: see {@link Dial#counted}. */
    public String countedTurns() {
      return counted(Long.signum(divisions), turns, reading);
    }
  }

  /**
   * Whole turns as a person counts them from zero. Below zero the count runs down, so that one turn
   * and some marks below it is {@code -1}, and less than a turn {@code <0}.
   *
   * @param sign of the divisions
   * @param turns whole turns, rounded down
   * @param reading where the collar stands after them
   */
  static String counted(int sign, long turns, BigDecimal reading) {
    long below = -turns - (reading.signum() == 0 ? 0 : 1);
    return sign >= 0 ? Long.toString(turns) : below == 0 ? "<0" : "-" + below;
  }

  /** The setting for a distance from zero. */
  public static Setting setting(Length distance, Screw screw, Rounding rounding) {
    BigFraction exact = distance.over(screw.lead()).multiply(screw.divisions());
    BigInteger divisions = round(exact, rounding);
    BigFraction perTurn = screw.divisions();
    BigFraction turnsExact = BigFraction.of(divisions).divide(perTurn);
    BigInteger turns = floor(turnsExact);
    BigFraction reading =
        BigFraction.of(divisions).subtract(BigFraction.of(turns).multiply(perTurn));
    Length reached = screw.lead().times(BigFraction.of(divisions).divide(perTurn));
    return new Setting(
        divisions.longValueExact(),
        turns.longValueExact(),
        new BigDecimal(reading.getNumerator())
            .divide(new BigDecimal(reading.getDenominator()), 2, RoundingMode.HALF_EVEN)
            .stripTrailingZeros(),
        reached.minus(distance));
  }

  private static BigInteger round(BigFraction value, Rounding rounding) {
    RoundingMode mode = rounding == Rounding.NEAREST ? RoundingMode.HALF_EVEN : RoundingMode.DOWN;
    return new BigDecimal(value.getNumerator())
        .divide(new BigDecimal(value.getDenominator()), 0, mode)
        .toBigInteger();
  }

  private static BigInteger floor(BigFraction value) {
    return new BigDecimal(value.getNumerator())
        .divide(new BigDecimal(value.getDenominator()), 0, RoundingMode.FLOOR)
        .toBigInteger();
  }

  /** How far the nearest division can be from what is wanted: half a division. */
  public static Length worstRounding(Screw screw) {
    return screw.division().half();
  }

  /**
   * Which way the part that the handle moves has to go for the cutter to move in a direction
   * relative to the work: the table goes the other way, a quill or head goes with it, a knee
   * against it.
   */
  public static Direction handleDirection(Direction cutter, Owned.ZDrive zDrive) {
    boolean along = cutter.axis() == Axis.Z && zDrive != Owned.ZDrive.KNEE;
    return along ? cutter : cutter.opposite();
  }

  /**
   * How the handle is turned for the cutter to move in a direction, or "" if the shop does not say
   * which way clockwise goes.
   */
  public static String crank(Screw screw, Direction cutter, Owned.ZDrive zDrive) {
    Turn turn = turn(screw, cutter, zDrive);
    return turn == null ? "" : turn.words();
  }

  /** How the handle is turned for the cutter to move in a direction, if the shop says. */
  public static @Nullable Turn turn(Screw screw, Direction cutter, Owned.ZDrive zDrive) {
    Direction clockwise = screw.clockwise();
    if (clockwise == null) {
      return null;
    }
    return clockwise == handleDirection(cutter, zDrive) ? Turn.CLOCKWISE : Turn.COUNTER_CLOCKWISE;
  }

  /** For example {@code 2 turns + 45 divisions}; a count below zero is a reading to stop at. */
  public static String words(Setting setting) {
    String reading = setting.reading().toPlainString();
    if (setting.divisions() < 0) {
      return "back to reading " + reading + ", " + -setting.turns() + " turns down";
    }
    String turns = setting.turns() == 1 ? "1 turn" : setting.turns() + " turns";
    return turns + " + " + reading + " divisions";
  }
}
