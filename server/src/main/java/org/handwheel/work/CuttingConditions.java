package org.handwheel.work;

import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * Speed, feed and load of a cut: starting points, the machine maker's manual and local rules come
 * first. What cannot be said because the material, the machine or the cut is not known is left out.
 *
 * <p>Formulas and their sources: {@link org.handwheel.shop.cutting}; worked out by {@link
 * CuttingCalculator}.
 *
 * @param usualSpeed the usual cutting speeds for material and cutter
 * @param spindle the spindle's speed, stated or proposed
 * @param feed the feed of a tooth and its chip
 * @param table the feed of the table and of the hand
 * @param load what the cut asks of machine and cutter
 */
public record CuttingConditions(
    Asked asked,
    @Nullable SpeedRange usualSpeed,
    @Nullable Spindle spindle,
    @Nullable ToothFeed feed,
    @Nullable TableFeed table,
    @Nullable Load load) {

  /**
   * What is to be cut, with what and where.
   *
   * @param material of the work, if it is known
   * @param machine that cuts, if it is known
   * @param bite how much the cutter takes, if it is known
   * @param travel the axis the table or the cutter goes along
   * @param rpm stated spindle speed, or nothing to have one proposed
   * @param feedPerTooth stated feed, or nothing to have one proposed
   */
  public record Asked(
      @Nullable KnownMaterial material,
      Owned.@Nullable Machine machine,
      Tool tool,
      @Nullable Bite bite,
      Axis travel,
      @Nullable Double rpm,
      @Nullable Length feedPerTooth) {}

  /**
   * A cutter.
   *
   * @param dia its diameter, over zero
   * @param teeth at least one
   * @param stickOut how far it stands out of its holder, if that is known
   */
  public record Tool(
      Owned.CutterKind kind,
      Length dia,
      int teeth,
      Owned.ToolMaterial madeOf,
      @Nullable Length stickOut) {
    public Tool {
      if (!dia.isPositive() || teeth < 1) {
        throw new IllegalArgumentException("a cutter has a diameter and at least one tooth");
      }
    }

    /** Whether it is slim enough to bend: an end mill or a slot drill. */
    public boolean bends() {
      return kind == Owned.CutterKind.END_MILL || kind == Owned.CutterKind.SLOT_DRILL;
    }
  }

  /**
   * How much a cutter takes.
   *
   * @param depth along its axis
   * @param engagement across its travel
   */
  public record Bite(Length depth, Engagement engagement) {
    /** A cut with the side of the cutter, conventionally; a width of its diameter is a slot. */
    public static Bite ofSide(Length depth, Length width, Length diameter) {
      double radii = Math.min(2, width.millimetres() / (diameter.millimetres() / 2));
      return new Bite(depth, Engagement.ofSide(radii, CutDirection.CONVENTIONAL));
    }

    /** A cut with the end of the cutter over the middle of a strip. */
    public static Bite ofStrip(Length depth, Length width, Length diameter) {
      double half = Math.min(1, width.millimetres() / diameter.millimetres());
      return new Bite(depth, Engagement.of(-half, half, Owned.Hand.RIGHT));
    }

    /** The width of cut across the travel. */
    public Length width(Length diameter) {
      return Length.ofMillimetres(engagement.width() * diameter.millimetres() / 2);
    }
  }

  /** Where a spindle speed comes from. */
  public enum SpeedFrom {
    /** The plan says it. */
    STATED,
    /** The machine's step next below the speed wanted. */
    STEP,
    /** The machine's slowest step, above the speed wanted. */
    SLOWEST_STEP,
    /** The speed wanted, on a machine that can be set to it. */
    WANTED,
    /** The machine's top speed, below the speed wanted. */
    TOP_SPEED
  }

  /**
   * The spindle.
   *
   * @param turnsPerMinute what it turns at
   * @param wanted the speed that the middle of the usual cutting speeds asks for, if they are known
   * @param metresPerMinute the cutting speed at the cutter's edge
   */
  public record Spindle(
      double turnsPerMinute, @Nullable Double wanted, SpeedFrom from, double metresPerMinute) {}

  /** Where a feed per tooth comes from. */
  public enum FeedFrom {
    /** The plan says it. */
    STATED,
    /** The usual one for material and cutter. */
    USUAL,
    /** Raised above the usual one, for a chip that is not too thin. */
    RAISED,
    /** Lowered to what a hand can wind. */
    BY_HAND
  }

  /**
   * The feed of a tooth.
   *
   * @param perTooth what the work goes on for each tooth
   * @param usual the usual one for material and cutter, if it is known
   * @param chip the chip it cuts, if the width of cut is known
   */
  public record ToothFeed(
      Length perTooth, FeedFrom from, @Nullable Length usual, @Nullable Chip chip) {}

  /**
   * A chip.
   *
   * @param factor its greatest thickness over the feed per tooth, at most 1
   * @param greatest its greatest thickness
   * @param mean its mean thickness
   */
  public record Chip(double factor, Length greatest, Length mean) {}

  /**
   * The feed of the table.
   *
   * @param millimetresPerMinute what it goes
   * @param hand how it is wound, if the dial of the axis is known
   */
  public record TableFeed(double millimetresPerMinute, @Nullable HandFeed hand) {}

  /**
   * What a cut asks of machine and cutter.
   *
   * @param cubicCentimetresPerMinute metal removed
   * @param specificForce cutting force per area of chip, N/mm2
   * @param cutterKilowatts power at the cutter
   * @param motorKilowatts power the motor must give
   * @param torque at the spindle, newton metres
   * @param greatestTorque what the motor can give at this speed, if its power is known
   * @param tangentialForce mean force at the cutter's edge over a turn, newtons
   * @param cuttingForce the same while a tooth cuts, newtons
   * @param deflection how far the cutter bends, if it is one that does
   */
  public record Load(
      double cubicCentimetresPerMinute,
      double specificForce,
      double cutterKilowatts,
      double motorKilowatts,
      double torque,
      @Nullable Double greatestTorque,
      double tangentialForce,
      double cuttingForce,
      @Nullable Length deflection) {}

  /** The motor's power over what the cut asks, or nothing if one of them is not known. */
  public @Nullable Double powerInHand() {
    Owned.Machine machine = asked.machine();
    return load == null || machine == null || machine.watts() <= 0 || load.motorKilowatts() <= 0
        ? null
        : machine.watts() / 1000 / load.motorKilowatts();
  }
}
