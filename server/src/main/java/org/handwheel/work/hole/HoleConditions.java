package org.handwheel.work.hole;

import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Quantity;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.KnownMaterial;
import org.jspecify.annotations.Nullable;

/**
 * Speed and feed of a tool that goes into a hole: starting points, the machine maker's manual and
 * local rules come first. What cannot be said is left out.
 *
 * @param usualSpeed the usual cutting speeds at the outside of the tool, before deep holes slow it
 * @param spindle the spindle's speed, stated or proposed; nothing for a tool turned by hand
 * @param feed the way for one turn
 * @param down the feed of the quill or the knee, and at its handle
 * @param seconds of cutting for one hole, without lifting out for chips
 * @param pecks how often the tool goes in; 1 where it does not come out for chips
 * @param turns how often a tap turns to depth
 * @param load what it asks of the spindle
 */
public record HoleConditions(
    Asked asked,
    @Nullable SpeedRange usualSpeed,
    @Nullable Spindle spindle,
    @Nullable TurnFeed feed,
    @Nullable TableFeed down,
    @Nullable Double seconds,
    long pecks,
    @Nullable Double turns,
    @Nullable Load load) {

  /**
   * What is to be done.
   *
   * @param material of the work, if it is known
   * @param machine that does it, if it is known
   * @param bit the tool
   * @param dia its diameter where it cuts, over zero
   * @param bore what is there already, zero for none
   * @param depth at full diameter, if it is known
   * @param travel how far its end goes into the work, if it is known
   * @param pitch of a tap
   * @param madeOf what a boring cutter's edge is
   * @param byHand whether it is turned by hand
   * @param peck how far it goes in at once, if the plan says it
   * @param rpm stated spindle speed, or nothing to have one proposed
   * @param feed stated feed, by the turn or as a rate, or nothing
   */
  public record Asked(
      HoleVerb verb,
      @Nullable KnownMaterial material,
      Owned.@Nullable Machine machine,
      Bit bit,
      Length dia,
      Length bore,
      @Nullable Length depth,
      @Nullable Length travel,
      @Nullable Length pitch,
      Owned.ToolMaterial madeOf,
      boolean byHand,
      @Nullable Length peck,
      @Nullable Double rpm,
      @Nullable Quantity feed) {
    public Asked {
      if (!dia.isPositive()) {
        throw new IllegalArgumentException("a tool has a diameter over zero");
      }
    }

    /** How many of its diameters the hole is deep, whole ones; 0 if that is not known. */
    public int diametersDeep() {
      BigFraction deep = depth == null || depth.isNegative() ? BigFraction.ZERO : depth.over(dia);
      return deep.intValue();
    }
  }

  /** Where a feed for one turn comes from. */
  public enum TurnFrom {
    /** The plan says it. */
    STATED,
    /** The usual one for the tool. */
    USUAL,
    /** Lowered to what a hand can wind. */
    BY_HAND,
    /** Lowered to what the motor gives. */
    MOTOR,
    /** A tap draws itself in by its pitch. */
    PITCH
  }

  /**
   * The way for one turn of the spindle.
   *
   * @param perTurn what the tool goes on
   * @param usual what is usual, if it is known
   */
  public record TurnFeed(Length perTurn, TurnFrom from, @Nullable LengthRange usual) {}

  /**
   * What a drill asks of the machine.
   *
   * @param torque at the spindle, newton metres
   * @param motorKilowatts power the motor must give
   */
  public record Load(double torque, double motorKilowatts) {}
}
