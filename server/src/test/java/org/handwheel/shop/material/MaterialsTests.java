package org.handwheel.shop.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;
import org.handwheel.shop.table.HowKnown;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MaterialsTests {
  private static final Materials MATERIALS = Materials.load();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "aluminium-6082", "aluminium-cast", "brass-free-cutting", "brass-naval", "gunmetal-LG2",
        "bronze-phosphor", "copper", "steel-mild", "steel-free-machining", "steel-medium-carbon",
        "steel-tool-annealed", "stainless-303", "stainless-304", "stainless-316", "iron-grey",
        "titanium-6al4v", "acetal", "nylon", "phenolic-hardwood"
      })
  void hasTheMaterialsOfASmallShop(String name) {
    Material material = MATERIALS.find(name).orElseThrow();
    assertThat(material.name()).isEqualTo(name);
    assertThat(material.cuttingFluid()).isNotBlank();
    assertThat(material.caution()).isNotBlank();
  }

  @ParameterizedTest
  @CsvSource({
    "GUNMETAL-lg2, gunmetal-LG2",
    "Brass-C360, brass-free-cutting",
    "cast-iron, iron-grey",
    "aluminum-6061, aluminium-6061",
    "steel-en8, steel-medium-carbon",
  })
  void findsAliasesInAnyCase(String name, String expected) {
    assertThat(MATERIALS.find(name)).map(Material::name).contains(expected);
  }

  @Test
  void findsNothingForOtherNames() {
    assertThat(MATERIALS.find("cheese")).isEmpty();
    assertThat(MATERIALS.find("")).isEmpty();
  }

  @Test
  void namesAreLowerCaseHyphenatedButForGradesAndEachBelongsToOne() {
    assertThat(MATERIALS.all())
        .allSatisfy(
            material -> {
              assertThat(material.name()).matches("[a-z0-9]+(-[A-Za-z0-9]+)*");
              assertThat(MATERIALS.find(material.name().toUpperCase(Locale.ROOT)))
                  .containsSame(material);
              material
                  .aliases()
                  .forEach(alias -> assertThat(MATERIALS.find(alias)).containsSame(material));
            });
  }

  /** ISO 513, letters from memory. */
  @Test
  void classesBelongToTheirIsoGroups() {
    for (Material material : MATERIALS.all()) {
      IsoGroup expected =
          switch (material.kind()) {
            case ALUMINIUM, COPPER_ALLOY, PLASTIC -> IsoGroup.N;
            case STEEL -> IsoGroup.P;
            case STAINLESS -> IsoGroup.M;
            case IRON -> IsoGroup.K;
            case TITANIUM -> IsoGroup.S;
          };
      assertThat(material.isoGroup()).as(material.name()).isEqualTo(expected);
    }
  }

  @Provide
  Arbitrary<Material> anyMaterial() {
    return Arbitraries.of(MATERIALS.all());
  }

  @Property
  void feedsRiseWithTheCutterAndNeverFallBelowRubbing(
      @ForAll("anyMaterial") Material material,
      @ForAll @LongRange(min = 1, max = 60_000_000_000L) long pm) {
    Length diameter = new Length(pm);
    Length feed = material.feed().endMill(diameter);
    assertThat(feed).isGreaterThanOrEqualTo(FeedPerTooth.LEAST);
    assertThat(material.feed().endMill(diameter.plus(Length.mm("1")))).isGreaterThanOrEqualTo(feed);
  }

  @Property
  void thinnerChipsTakeMoreForce(@ForAll("anyMaterial") Material material) {
    assertThat(material.force().at(0.02)).isGreaterThan(material.force().at(0.2));
    assertThat(material.force().at(1)).isEqualTo(material.force().kc11());
  }

  @Test
  void feedsBetweenDiametersLieOnAStraightLine() {
    FeedPerTooth feed = MATERIALS.find("steel-mild").orElseThrow().feed();
    assertThat(feed.endMill(Length.mm("6"))).isEqualTo(Length.mm("0.03"));
    assertThat(feed.endMill(Length.mm("8"))).isEqualTo(Length.mm("0.04"));
    assertThat(feed.endMill(Length.mm("7"))).isEqualTo(Length.mm("0.035"));
    assertThat(feed.endMill(Length.mm("50"))).isEqualTo(feed.endMill(Length.mm("25")));
  }

  @Test
  void sourcesSaySoWhereThereIsNone() {
    for (Material material : MATERIALS.all()) {
      assertThat(material.speeds().provenance().how()).isEqualTo(HowKnown.COMMON_PRACTICE);
      assertThat(material.feed().provenance().how()).isEqualTo(HowKnown.COMMON_PRACTICE);
      assertThat(material.provenance().how()).isEqualTo(HowKnown.FROM_MEMORY);
    }
  }

  @Test
  void theShopsOwnMaterialComesFirst() {
    Material builtIn = MATERIALS.find("copper").orElseThrow();
    Material own =
        new Material(
            "Copper",
            List.of("old-pipe"),
            "copper from the yard",
            builtIn.kind(),
            builtIn.isoGroup(),
            8900,
            builtIn.speeds(),
            builtIn.drilling(),
            builtIn.force(),
            builtIn.feed(),
            118,
            "dry",
            "none",
            builtIn.provenance());
    Materials joined = MATERIALS.with(List.of(own));
    assertThat(joined.find("copper")).containsSame(own);
    assertThat(joined.find("old-pipe")).containsSame(own);
    assertThat(joined.all()).hasSameSizeAs(MATERIALS.all()).doesNotContain(builtIn);
    assertThat(MATERIALS.find("copper"))
        .as("the built-in table is unchanged")
        .containsSame(builtIn);
  }

  @Test
  void softMetalsAreThoseTheTradeCallsSo() {
    assertThat(MaterialClass.ALUMINIUM.isSoft()).isTrue();
    assertThat(MaterialClass.COPPER_ALLOY.isSoft()).isTrue();
    assertThat(MaterialClass.STEEL.isSoft()).isFalse();
    assertThat(MaterialClass.TITANIUM.isSoft()).isFalse();
  }

  /** Common practice, no source: rough 10 to 20 thou in aluminium, leave about 10 for finishing. */
  @Test
  void passesInAluminiumAreTheTradesOwn() {
    Passes passes = Passes.load();
    var rough = passes.of(MaterialClass.ALUMINIUM).rough();
    assertThat(rough.low()).isEqualTo(Length.inches("0.010"));
    assertThat(rough.high()).isEqualTo(Length.inches("0.020"));
    assertThat(Passes.FINISH_ALLOWANCE.minus(Length.inches("0.010")).abs())
        .isLessThan(Length.inches("0.0005"));
  }

  @Test
  void refusesImpossibleValues() {
    assertThatThrownBy(() -> new SpeedRange(30, 20)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SpeedRange(0, 20)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SpecificForce(1500, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SpecificForce(1500, 0.25).at(0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
