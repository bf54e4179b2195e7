package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.Shop;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.material.DrillSpeeds.FeedShare;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;

/**
 * What the shop says of a material comes first, then the tables, then nothing. The values of the
 * tables are their rows for mild steel: 7850 kg a cubic metre, kc1.1 1600, mc 0.22, 21 to 34 m/min
 * in high-speed steel and 90 to 180 in carbide, drills 24 to 33 at the middle feed, 0.05 mm a tooth
 * for an end mill of 10 and 0.15 for a face mill (from memory, and common practice).
 */
class KnownMaterialTests {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private static final Length TEN = Length.mm("10");

  private static final Shop SHOP =
      ShopFiles.build(
              SyntaxTree.parse(
                  "s.shop",
                  """
                  language 1
                  shop "Metals"
                    units mm
                  own material rail
                    like: steel-mild
                  own material rail-hard
                    like: steel-mild
                    speed-hss: 10, 12 m/min
                    speed-carbide: 50, 60 m/min
                    feed-per-tooth: 0.02 mm/tooth
                    force: 2100
                    density: 7800
                  own material rail-odd
                    like: steel-mild
                    force-exponent: 0.3
                    speed-drill: 8, 9 m/min
                  own material lump
                    force: 900
                  own material mystery
                    force-exponent: 0.2
                  """))
          .shop();

  private static KnownMaterial known(String name) {
    return KnownMaterial.find(name, SHOP, TABLES).orElseThrow();
  }

  @Test
  void aNameIsTheShopsOrTheTablesOrNone() {
    assertThat(known("mild-steel").name()).isEqualTo("steel-mild");
    assertThat(known("mild-steel").words()).isEqualTo("mild steel");
    assertThat(known("rail").name()).isEqualTo("rail");
    assertThat(known("rail").words()).isEqualTo("rail");
    assertThat(known("rail").standard()).isNotNull();
    assertThat(known("lump").standard()).isNull();
    assertThat(KnownMaterial.find("cheese", SHOP, TABLES)).isEmpty();
    assertThat(new KnownMaterial("cheese", null, null).words()).isEqualTo("cheese");
  }

  @Test
  void speedsOfTheShopThenOfTheTables() {
    assertThat(known("rail-hard").speeds(ToolMaterial.HSS)).contains(new SpeedRange(10, 12));
    assertThat(known("rail-hard").speeds(ToolMaterial.CARBIDE)).contains(new SpeedRange(50, 60));
    assertThat(known("rail").speeds(ToolMaterial.HSS)).contains(new SpeedRange(21, 34));
    assertThat(known("steel-mild").speeds(ToolMaterial.CARBIDE)).contains(new SpeedRange(90, 180));
    assertThat(known("lump").speeds(ToolMaterial.HSS)).isEmpty();
    assertThat(known("rail-hard").speedSource(ToolMaterial.HSS)).isEqualTo("the shop file");
    assertThat(known("rail-hard").speedSource(ToolMaterial.CARBIDE)).isEqualTo("the shop file");
    assertThat(known("lump").speedSource(ToolMaterial.HSS)).isEqualTo("the shop file");
    assertThat(known("rail").speedSource(ToolMaterial.HSS)).contains("common practice");
    assertThat(known("steel-mild").speedSource(ToolMaterial.CARBIDE)).contains("common practice");
  }

  /** A drill's speed is said, or is that of other cutters of high-speed steel, or the tables'. */
  @Test
  void speedsOfDrills() {
    assertThat(known("rail-odd").drillSpeeds()).contains(new SpeedRange(8, 9));
    assertThat(known("rail-hard").drillSpeeds()).contains(new SpeedRange(10, 12));
    assertThat(known("rail").drillSpeeds()).contains(new SpeedRange(24, 33));
    assertThat(known("steel-mild").drillSpeeds()).contains(new SpeedRange(24, 33));
    assertThat(known("lump").drillSpeeds()).isEmpty();
    assertThat(known("rail-odd").drillSource()).isEqualTo("the shop file");
    assertThat(known("rail-hard").drillSource()).isEqualTo("the shop file");
    assertThat(known("lump").drillSource()).isEqualTo("the shop file");
    assertThat(known("rail").drillSource()).contains("from memory");
    assertThat(known("steel-mild").drillSource()).contains("from memory");
    assertThat(known("steel-mild").drillFeed()).isEqualTo(FeedShare.MIDDLE);
    assertThat(known("lump").drillFeed()).isEqualTo(FeedShare.LOW);
  }

  @Test
  void feedsByTheKindOfCutter() {
    for (CutterKind side :
        new CutterKind[] {CutterKind.END_MILL, CutterKind.SLOT_DRILL, CutterKind.CHAMFER_MILL}) {
      assertThat(known("rail").feedPerTooth(side, TEN)).contains(Length.mm("0.05"));
    }
    for (CutterKind face :
        new CutterKind[] {CutterKind.FACE_MILL, CutterKind.FLY_CUTTER, CutterKind.SHELL_MILL}) {
      assertThat(known("steel-mild").feedPerTooth(face, TEN)).contains(Length.mm("0.15"));
    }
    assertThat(known("rail-hard").feedPerTooth(CutterKind.FACE_MILL, TEN))
        .contains(Length.mm("0.02"));
    assertThat(known("lump").feedPerTooth(CutterKind.END_MILL, TEN)).isEmpty();
    assertThat(known("rail-hard").feedSource()).isEqualTo("the shop file");
    assertThat(known("lump").feedSource()).isEqualTo("the shop file");
    assertThat(known("rail").feedSource()).contains("common practice");
    assertThat(known("steel-mild").feedSource()).contains("common practice");
  }

  /** What is not said of the force is the tables'; the exponent of an unknown metal is 0.25. */
  @Test
  void theForceIsPutTogether() {
    assertThat(known("steel-mild").force()).contains(new SpecificForce(1600, 0.22));
    assertThat(known("rail").force()).contains(new SpecificForce(1600, 0.22));
    assertThat(known("rail-hard").force()).contains(new SpecificForce(2100, 0.22));
    assertThat(known("rail-odd").force()).contains(new SpecificForce(1600, 0.3));
    assertThat(known("lump").force()).contains(new SpecificForce(900, 0.25));
    assertThat(known("mystery").force()).isEmpty();
    assertThat(known("rail-hard").forceSource()).isEqualTo("the shop file");
    assertThat(known("mystery").forceSource()).isEqualTo("the shop file");
    assertThat(known("rail-odd").forceSource()).contains("from memory");
    assertThat(known("steel-mild").forceSource()).contains("from memory");
  }

  @Test
  void densities() {
    assertThat(known("rail-hard").density()).contains(7800.0);
    assertThat(known("rail").density()).contains(7850.0);
    assertThat(known("steel-mild").density()).contains(7850.0);
    assertThat(known("lump").density()).isEmpty();
  }

  @Test
  void aPlansMaterialIsThatOfItsPart() {
    assertThat(KnownMaterial.of(Worked.block().plan(), TABLES).map(KnownMaterial::name))
        .contains("gunmetal-LG2");
    assertThat(KnownMaterial.of(Worked.block().toward("length 60").plan(), TABLES))
        .isEqualTo(Optional.empty());
  }
}
