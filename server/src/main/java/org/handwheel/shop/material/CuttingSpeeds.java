package org.handwheel.shop.material;

import org.handwheel.shop.table.Provenance;

/**
 * The milling speeds of a material: starting points, the machine maker's manual comes first.
 *
 * @param highSpeedSteel for cutters of high-speed steel
 * @param carbide for carbide
 * @param provenance where they come from
 */
public record CuttingSpeeds(SpeedRange highSpeedSteel, SpeedRange carbide, Provenance provenance) {
  public SpeedRange with(CutterMaterial cutter) {
    return switch (cutter) {
      case HIGH_SPEED_STEEL -> highSpeedSteel;
      case CARBIDE -> carbide;
    };
  }
}
