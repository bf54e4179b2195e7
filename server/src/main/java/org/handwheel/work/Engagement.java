package org.handwheel.work;

import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned.Hand;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.units.Length;

/**
 * How the teeth meet the work.
 *
 * <p>Rule (geometry): with n the outward normal of the wall, t the travel of the cutter relative to
 * the work and S = +1 for a right-hand cutter turning clockwise seen from above, the cut is
 * conventional if t . (Z x n) S is positive, climb if negative. On the right-hand wall conventional
 * is therefore front to back (common practice).
 *
 * <p>Net feed force (statics): at the angle th from the travel a tooth cuts a chip of fz cos th;
 * its tangential force has the part sin th along the travel, its radial force the part cos th.
 * Integrated over the engagement, with u = sin th: (u2^2 - u1^2)/2 + kr [(th2 - th1)/2 + (sin 2 th2
 * - sin 2 th1)/4].
 *
 * <p>For a left-hand cutter left and right are exchanged, so that left always is the conventional
 * side.
 *
 * @param left how far the work reaches to the left of the cutter's axis, looking along the travel,
 *     as a part of the radius, -1 to 1
 * @param right how far it reaches to the right, as the lateral coordinate of its right edge
 * @param netForce feed force on the work against the table, as a part of the tangential force;
 *     negative if the cutter pulls the table along
 */
public record Engagement(double left, double right, double netForce) {
  /** Ratio of radial to tangential force, range 0.2 to 0.5 (common practice, no source). */
  private static final double RADIAL = 0.3;

  /**
   * The engagement of a cutter over a strip of work.
   *
   * @param right lateral coordinate of the strip's right edge over the radius, left counts positive
   * @param left the same of its left edge
   */
  public static Engagement of(double right, double left, Hand hand) {
    double from = clip(hand == Hand.RIGHT ? right : -left);
    double to = clip(hand == Hand.RIGHT ? left : -right);
    double angleFrom = Math.asin(from);
    double angleTo = Math.asin(to);
    double tangential = (to * to - from * from) / 2;
    double radial =
        RADIAL
            * ((angleTo - angleFrom) / 2 + (Math.sin(2 * angleTo) - Math.sin(2 * angleFrom)) / 4);
    return new Engagement(to, from, tangential + radial);
  }

  private static double clip(double value) {
    return Math.max(-1, Math.min(1, value));
  }

  /**
   * The engagement of the cutter's side taking a depth off a wall.
   *
   * @param depthOverRadius the depth over the cutter's radius, over 0 to 2, where it is a full slot
   */
  public static Engagement ofSide(double depthOverRadius, CutDirection direction) {
    double inner = 1 - depthOverRadius;
    return direction == CutDirection.CONVENTIONAL
        ? of(inner, 1, Hand.RIGHT)
        : of(-1, -inner, Hand.RIGHT);
  }

  /**
   * The engagement as the cutter's side comes into an inside corner as round as itself: besides the
   * wall it takes as much off the next one, which stands across its travel. Geometry: a wall alone
   * takes the angle phi with cos phi = 1 - depth/radius; at the corner it is phi and a right angle.
   *
   * @param depthOverRadius what comes off both walls over the radius, 0 to 2
   */
  public static Engagement ofCorner(double depthOverRadius, CutDirection direction) {
    double cos = 1 - Math.max(0, Math.min(1, depthOverRadius));
    double ahead = -Math.sqrt(1 - cos * cos);
    return direction == CutDirection.CONVENTIONAL
        ? of(ahead, 1, Hand.RIGHT)
        : of(-1, -ahead, Hand.RIGHT);
  }

  public boolean isConventional() {
    return right >= 0;
  }

  public boolean isClimb() {
    return left <= 0;
  }

  /** How much of the radius is in the work, across the travel: 2 for a full slot. */
  public double width() {
    return Math.max(0, left - right);
  }

  /** The angle the cutter is in the work, in radians: pi for a full slot. */
  public double angle() {
    return Math.max(0, Math.asin(left) - Math.asin(right));
  }

  /**
   * The greatest chip thickness over the feed per tooth: the chip is fz cos th, so 1 where the work
   * lies before the cutter's axis, less where only its side cuts: with a = ae/D, the width of cut
   * over the cutter's diameter, 2 sqrt(a(1 - a)) up to half the cutter (Fundamentals of Machining
   * Processes 6.3.1.4, form read).
   */
  public double greatestChip() {
    if (width() <= 0) {
      return 0;
    }
    double nearest = isConventional() ? right : isClimb() ? -left : 0;
    return Math.sqrt(1 - nearest * nearest);
  }

  /**
   * The mean chip thickness over the feed per tooth: of fz cos th over the engagement. Exact, where
   * makers' sheets print sqrt(ae/D), 1.7 per cent high at a tenth of the cutter.
   */
  public double meanChip() {
    return width() <= 0 ? 0 : width() / angle();
  }

  /**
   * The feed per tooth at which the greatest chip is as thick as wanted.
   *
   * @throws ArithmeticException if nothing is cut
   */
  public Length feedFor(Length chip) {
    double factor = greatestChip();
    if (factor <= 0) {
      throw new ArithmeticException("a cutter that meets no work makes no chip");
    }
    return Length.ofMillimetres(chip.millimetres() / factor);
  }

  /** In words: "conventional", "climb" or "mixed, mostly conventional". */
  public String words() {
    if (isConventional()) {
      return "conventional";
    }
    if (isClimb()) {
      return "climb";
    }
    return netForce >= 0 ? "mixed, mostly conventional" : "mixed, mostly climb";
  }

  /** What a travel along a wall is. */
  public static CutDirection alongWall(Direction wall, Direction travel, Hand hand) {
    int turn = crossZ(wall, travel) * (hand == Hand.RIGHT ? 1 : -1);
    return turn > 0 ? CutDirection.CONVENTIONAL : CutDirection.CLIMB;
  }

  /** The travel along a wall that gives the wanted cut. */
  public static Direction travelFor(Direction wall, CutDirection wanted, Hand hand) {
    Axis axis = wall.axis() == Axis.X ? Axis.Y : Axis.X;
    Direction plus = Direction.of(axis, 1);
    return alongWall(wall, plus, hand) == wanted ? plus : plus.opposite();
  }

  /** t . (Z x n) for two horizontal directions at right angles: +1 or -1. */
  private static int crossZ(Direction normal, Direction travel) {
    if (normal.axis() == Axis.Z || travel.axis() == Axis.Z || normal.axis() == travel.axis()) {
      throw new IllegalArgumentException("a wall and a travel along it are horizontal");
    }
    // Z x X = Y and Z x Y = -X.
    return normal.axis() == Axis.X ? normal.sign() * travel.sign() : -normal.sign() * travel.sign();
  }
}
