package org.handwheel.cli;

import java.math.BigInteger;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.handwheel.work.hole.Bit;
import org.jspecify.annotations.Nullable;

/**
 * A tool for holes as one asks for it: a length, a drill of the tables, or a thread for a tap.
 *
 * @param pitch of a tap
 */
record HoleTool(Bit bit, Length dia, @Nullable Length pitch) {
  private static final Length SMALLEST = Length.mm("0.1");
  private static final Length LARGEST = Length.mm("100");

  static HoleTool of(HoleVerb verb, String text) {
    StandardTables tables = StandardTables.builtIn();
    if (verb == HoleVerb.TAP) {
      ScrewThread thread =
          tables
              .threads()
              .find(text)
              .orElseThrow(() -> new UserException("--dia: no thread '" + text + "' is known"));
      Bit tap = new Bit("tap " + thread.designation(), thread.major(), null, null, true);
      return new HoleTool(tap, thread.major(), thread.pitch());
    }
    Length dia =
        tables
            .drills()
            .find(text)
            .map(Drill::diameter)
            .orElseGet(() -> LengthArguments.ofOption("--dia", text));
    if (dia.isLessThan(SMALLEST) || dia.isMoreThan(LARGEST)) {
      throw new UserException("--dia: give between " + SMALLEST + " and " + LARGEST);
    }
    boolean pointed = verb == HoleVerb.DRILL || verb == HoleVerb.SPOT;
    return new HoleTool(
        new Bit(text, dia, pointed ? DrillPoint.GENERAL : null, null, true), dia, null);
  }

  /** A feed for one turn of the spindle. */
  static Quantity perTurn(Length length) {
    return new Quantity(
        Dimension.FEED_PER_REV,
        BigFraction.of(
            BigInteger.valueOf(length.picometres()),
            BigInteger.valueOf(LengthUnit.MM.picometres())));
  }
}
