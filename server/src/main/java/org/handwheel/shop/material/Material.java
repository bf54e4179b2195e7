package org.handwheel.shop.material;

import java.util.List;
import org.handwheel.shop.table.Provenance;

/**
 * A material of the workpiece and what is known of cutting it.
 *
 * @param name as a plan writes it: {@code gunmetal-LG2}
 * @param aliases other names it goes by
 * @param words its name in the trade
 * @param kind the class the rules treat alike
 * @param isoGroup the group of ISO 513
 * @param density kilograms per cubic metre
 * @param speeds milling speeds
 * @param drilling speeds of drills
 * @param force specific cutting force
 * @param feed feed per tooth
 * @param drillPointDegrees usual included angle of the drill point
 * @param cuttingFluid what to cut it with: {@code dry}, {@code soluble oil}
 * @param caution what to look out for
 * @param provenance where density and force come from; speeds and feeds carry their own
 */
public record Material(
    String name,
    List<String> aliases,
    String words,
    MaterialClass kind,
    IsoGroup isoGroup,
    double density,
    CuttingSpeeds speeds,
    DrillSpeeds drilling,
    SpecificForce force,
    FeedPerTooth feed,
    double drillPointDegrees,
    String cuttingFluid,
    String caution,
    Provenance provenance) {
  public Material {
    aliases = List.copyOf(aliases);
    if (!(density > 0)) {
      throw new IllegalArgumentException("a material has a density");
    }
  }
}
