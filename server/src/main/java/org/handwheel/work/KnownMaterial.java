package org.handwheel.work;

import java.util.Optional;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.SurfaceSpeeds;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.shop.material.DrillSpeeds.FeedShare;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What is known of cutting a material: what the shop says of it, else what the tables say of it or
 * of the material it is like. Parts may be missing: a shop may know a name and a density only.
 *
 * @param name its name in the shop or the tables, not an alias
 * @param standard the material of the tables it is, or is like
 * @param own the shop's own description
 */
public record KnownMaterial(
    String name, @Nullable Material standard, Owned.@Nullable Material own) {

  /** The exponent for a force given alone: in the middle of 0.20 to 0.28 (from memory). */
  private static final double USUAL_EXPONENT = 0.25;

  /** The material of a plan's part, if the part names one that is known. */
  public static Optional<KnownMaterial> of(Plan plan, StandardTables tables) {
    return plan.part() == null || plan.part().material() == null
        ? Optional.empty()
        : find(plan.part().material().value(), plan.shop(), tables);
  }

  /** The material of a name; the shop's own come before the tables'. */
  public static Optional<KnownMaterial> find(String name, Shop shop, StandardTables tables) {
    Owned.Material own = shop.find(Owned.Material.class, name).orElse(null);
    String known = own == null || own.like() == null ? name : own.like().value();
    Material standard = tables.materials().find(known).orElse(null);
    if (own != null) {
      return Optional.of(new KnownMaterial(own.name(), standard, own));
    }
    return Optional.ofNullable(standard).map(found -> new KnownMaterial(found.name(), found, null));
  }

  /** Its name in the trade, or the shop's name for it. */
  public String words() {
    if (own != null) {
      return own.name();
    }
    return standard == null ? name : standard.words();
  }

  /** The usual cutting speeds for a cutter of this stuff. */
  public Optional<SpeedRange> speeds(ToolMaterial cutter) {
    if (own != null) {
      SurfaceSpeeds said =
          switch (cutter) {
            case HSS -> own.speedHss();
            case CARBIDE -> own.speedCarbide();
          };
      if (said != null) {
        return Optional.of(new SpeedRange(said.low(), said.high()));
      }
    }
    return Optional.ofNullable(standard).map(known -> known.speeds().with(standard(cutter)));
  }

  /**
   * The usual cutting speeds for drills of high-speed steel: as the shop says, else its speeds for
   * such cutters, else the tables'.
   */
  public Optional<SpeedRange> drillSpeeds() {
    SurfaceSpeeds said =
        own == null ? null : own.speedDrill() != null ? own.speedDrill() : own.speedHss();
    if (said != null) {
      return Optional.of(new SpeedRange(said.low(), said.high()));
    }
    return Optional.ofNullable(standard).map(known -> known.drilling().speeds());
  }

  /** Which part of the usual feed of a drill it takes; the cautious end if that is not known. */
  public FeedShare drillFeed() {
    return standard == null ? FeedShare.LOW : standard.drilling().feed();
  }

  /** Where the speeds of drills come from and how they are known. */
  public String drillSource() {
    boolean said = own != null && (own.speedDrill() != null || own.speedHss() != null);
    return said || standard == null ? "the shop file" : standard.drilling().provenance().toString();
  }

  /** The tables' name for what a cutter is made of. */
  public static CutterMaterial standard(ToolMaterial cutter) {
    return switch (cutter) {
      case HSS -> CutterMaterial.HIGH_SPEED_STEEL;
      case CARBIDE -> CutterMaterial.CARBIDE;
    };
  }

  /** The usual feed per tooth for a cutter of this kind and diameter. */
  public Optional<Length> feedPerTooth(CutterKind kind, Length diameter) {
    if (own != null && own.feedPerTooth() != null) {
      return Optional.of(own.feedPerTooth());
    }
    return Optional.ofNullable(standard)
        .map(
            known ->
                switch (kind) {
                  case FACE_MILL, FLY_CUTTER, SHELL_MILL -> known.feed().faceMill();
                  case END_MILL, SLOT_DRILL, CHAMFER_MILL -> known.feed().endMill(diameter);
                });
  }

  /** The specific cutting force. */
  public Optional<SpecificForce> force() {
    SpecificForce tabled = standard == null ? null : standard.force();
    if (own == null || (own.force() == null && own.forceExponent() == null)) {
      return Optional.ofNullable(tabled);
    }
    Double force = own.force() != null ? own.force() : tabled == null ? null : tabled.kc11();
    double exponent =
        own.forceExponent() != null
            ? own.forceExponent()
            : tabled == null ? USUAL_EXPONENT : tabled.mc();
    return Optional.ofNullable(force).map(kc11 -> new SpecificForce(kc11, exponent));
  }

  /** Kilograms per cubic metre. */
  public Optional<Double> density() {
    if (own != null && own.density() != null) {
      return Optional.of(own.density());
    }
    return Optional.ofNullable(standard).map(Material::density);
  }

  /** Where the speeds come from and how they are known. */
  public String speedSource(ToolMaterial cutter) {
    boolean said =
        own != null
            && switch (cutter) {
              case HSS -> own.speedHss() != null;
              case CARBIDE -> own.speedCarbide() != null;
            };
    if (said || standard == null) {
      return "the shop file";
    }
    return standard.speeds().provenance().toString();
  }

  /** Where the feeds come from and how they are known. */
  public String feedSource() {
    return (own != null && own.feedPerTooth() != null) || standard == null
        ? "the shop file"
        : standard.feed().provenance().toString();
  }

  /** Where the cutting force comes from and how it is known. */
  public String forceSource() {
    return (own != null && own.force() != null) || standard == null
        ? "the shop file"
        : standard.provenance().toString();
  }
}
