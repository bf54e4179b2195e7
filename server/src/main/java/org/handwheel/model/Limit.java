package org.handwheel.model;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;

/**
 * The thresholds of the rules, each a property of {@code own limits} in the shop.
 *
 * <p>The defaults are for a small bench mill. Source of all: common practice, no source, unless a
 * line says otherwise.
 */
public enum Limit {
  /** The deepest roughing pass of a flat cut: 20 thou, the upper end of 10 to 20 thou. */
  HEAVY_PASS("0.508"),
  /** The least to leave for a finishing pass; about 0.25 mm (10 thou) is usual. */
  FINISH_ALLOWANCE("0.1"),
  /** A size with a wider tolerance than this may be reached by a roughing pass. */
  ROUGH_TOLERANCE("0.4"),
  /** How deep the marks of a saw may go: 1/32 in for a square cut (1/16 in is usual to leave). */
  SAWN_SKIN("0.79375"),
  /** How deep a casting's skin may go. */
  CAST_SKIN("1"),
  /** How deep scale and decarburised skin may go on black bar. */
  ROLLED_SKIN("0.5"),
  /** How deep the drawn skin may go on bright bar. */
  DRAWN_SKIN("0.1"),
  /** How far bought stock may differ from its size (10 to 15 thou: open text, read). */
  STOCK_VARIATION("0.3"),
  /** How much work must stand above the jaws where the cutter passes. */
  JAW_CLEARANCE("0.5"),
  /** The least depth of grip (1/8 in, or a third of the height). */
  LEAST_GRIP("2"),
  /** The depth of grip from which the fixed jaw rules the work's lean. */
  RULING_GRIP("6"),
  /** How much narrower than the work a pair of parallels must be. */
  PARALLELS_MARGIN("1"),
  /** How near a parallel's thickness may come to the gripped size. */
  THICKNESS_MARGIN("0.2"),
  /** How flat a face comes from one full pass. */
  FLATNESS("0.005"),
  /** The head's tram if the plan does not say, over 150 mm. */
  TRAM("0.02"),
  /** The seat's error if both parallels are tight under the work. */
  SEAT("0.005"),
  /** The vise's error against the table after truing, over 100 mm, if the plan does not say. */
  TRUED("0.02"),
  /** The chip load taken for a tooth when the plan gives no feed. */
  FEED_PER_TOOTH("0.05"),
  /** How far the cutter's side may cut at once, as part of its diameter. */
  SIDE_PASS(Dimension.NUMBER, "0.12"),
  /**
   * How deep a cutter may go at once where it cuts with half its diameter or more, as part of its
   * diameter.
   */
  SLOT_PASS(Dimension.NUMBER, "0.5"),
  /** How wide a hole must be to start a cutter without teeth at its middle, as part of its dia. */
  START_HOLE(Dimension.NUMBER, "0.8"),
  /** How much wider than itself a cutter may cut with one line: run-out, and bending aside. */
  CUTTER_OVERSIZE("0.02"),
  /** Minutes of handling for each hole: to the place by the dials, down, out, chips off. */
  HOLE_HANDLING(Dimension.NUMBER, "1"),
  /** The drag of the table in newtons, gibs lightly set. */
  TABLE_DRAG(Dimension.NUMBER, "50"),
  /** The part of the motor's power that reaches the spindle; 0.7 to 0.8 by belts and gears. */
  EFFICIENCY(Dimension.NUMBER, "0.75"),
  /** How far above the usual cutting speed a stated speed may lie, as a factor. */
  SPEED_MARGIN(Dimension.NUMBER, "1.1"),
  /** The thinnest chip a cutter still cuts; fed less it rubs: half a thou. */
  LEAST_CHIP("0.0127"),
  /** How much further than its flutes an end mill stands out of the holder, if not said. */
  STICK_OUT("5"),
  /** The part of a tolerance's width by which an end mill may bend in a finishing cut. */
  DEFLECTION(Dimension.NUMBER, "0.25"),
  /** The thinnest wall left between holes and edges, or below a blind hole. */
  LEAST_WALL("1"),
  /** How far a size without a tolerance may be off. */
  UNTOLERANCED("0.1"),
  /** How far a touch may be off: how well the feel of paper or contact is repeated. */
  TOUCH("0.01");

  @SuppressWarnings("ImmutableEnumChecker") // a record over an immutable fraction
  private final Quantity fallback;

  Limit(String millimetres) {
    this.fallback = Quantity.of(Length.mm(millimetres));
  }

  Limit(Dimension dimension, String value) {
    BigDecimal exact = new BigDecimal(value);
    this.fallback =
        new Quantity(
            dimension, BigFraction.of(exact.unscaledValue(), BigInteger.TEN.pow(exact.scale())));
  }

  /** The value where the shop says nothing; its dimension is the one the property must have. */
  public Quantity fallback() {
    return fallback;
  }

  /** Whether it is a part of a whole: over 0 and at most 1. */
  public boolean isShare() {
    return this == EFFICIENCY;
  }

  /** The property's name in the shop file: {@code heavy-pass}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Limit> named(String word) {
    String wanted = word.toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(limit -> limit.word().equals(wanted)).findFirst();
  }
}
