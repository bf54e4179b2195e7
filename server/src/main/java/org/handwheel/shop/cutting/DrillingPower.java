package org.handwheel.shop.cutting;

import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.units.Length;

/**
 * The torque of a twist drill.
 *
 * <p>Two lips each cut a chip half the feed wide along the axis; each pushes back with kc times the
 * area of its chip at the middle of the ring it cuts. That gives M = kc f (D^2 - d^2)/8 (tool
 * makers' handbooks, from memory; the geometry is elementary). The chip is f/2 sin(angle/2) thick.
 * Friction on the margin and of packed chips comes on top: a worn drill takes half as much again.
 */
public final class DrillingPower {
  private DrillingPower() {}

  /**
   * The torque in newton metres.
   *
   * @param force specific cutting force of the material
   * @param perTurn feed for one turn, over zero
   * @param dia of the drill, over zero
   * @param bore already there, zero for none; not above {@code dia}
   */
  public static double torque(
      SpecificForce force, Length perTurn, Length dia, Length bore, DrillPoint point) {
    if (!perTurn.isPositive() || !dia.isPositive() || bore.isMoreThan(dia) || bore.isNegative()) {
      throw new IllegalArgumentException("a drill has a feed, and is larger than the bore");
    }
    double feed = perTurn.millimetres();
    double chip = feed / 2 * Math.sin(Math.toRadians(point.includedDegrees() / 2));
    double squares = Math.pow(dia.millimetres(), 2) - Math.pow(bore.millimetres(), 2);
    return force.at(chip) * feed * squares / 8 / 1000;
  }
}
