package org.handwheel.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.Amounts.Speeds;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.Shop;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.Passes.PassDepths;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.KnownMaterial;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A material and what is known of cutting it, or all of them. */
@Command(
    name = "material",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives what is known of cutting a material: speeds, feeds, force, usual passes.",
      "Without a name, lists all of them."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel material",
      "  handwheel material gunmetal-LG2",
      "  handwheel material liner-bronze --shop shop/launch.shop"
    })
final class MaterialCommand implements Callable<Integer> {
  private static final List<Length> DIAMETERS =
      List.of(Length.mm("3"), Length.mm("6"), Length.mm("10"), Length.mm("16"), Length.mm("20"));

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(arity = "0..1", paramLabel = "NAME", description = "Such as steel-mild.")
  private @Nullable String name;

  @Option(
      names = "--shop",
      paramLabel = "FILE",
      description = "A shop file whose own materials come first.")
  private @Nullable String shop;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  MaterialCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    List<Shop> shops =
        shop == null ? List.of() : ShopThings.load(shop, surroundings).orRefuse().shops();
    String asked = name;
    if (asked == null) {
      list(shops);
      return Handwheel.EXIT_CLEAN;
    }
    KnownMaterial material =
        SpeedsCommand.material(asked, shops).orElseThrow(() -> SpeedsCommand.unknown(asked));
    if (format == Format.JSON) {
      output.line(Json.of(json(material)));
    } else {
      facts(material).print(output);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private void list(List<Shop> shops) {
    List<KnownMaterial> materials = new ArrayList<>();
    StandardTables tables = StandardTables.builtIn();
    for (Shop own : shops) {
      own.all(Owned.Material.class)
          .forEach(
              found -> KnownMaterial.find(found.name(), own, tables).ifPresent(materials::add));
    }
    tables.materials().all().forEach(found -> materials.add(known(found)));
    if (format == Format.JSON) {
      output.line(Json.of(new JsonList(1, materials.stream().map(MaterialCommand::json).toList())));
      return;
    }
    int longest = materials.stream().mapToInt(found -> found.name().length()).max().orElse(0);
    for (KnownMaterial found : materials) {
      String start = found.name() + " ".repeat(longest + 2 - found.name().length());
      String words = found.own() == null ? found.words() : "the shop's own" + like(found);
      for (String line : Wrapping.wrap(start, " ".repeat(start.length()), words, output.width())) {
        output.line(output.glyphs().show(line));
      }
    }
  }

  private static KnownMaterial known(Material material) {
    return new KnownMaterial(material.name(), material, null);
  }

  private static String like(KnownMaterial material) {
    return material.standard() == null ? "" : ", like " + material.standard().words();
  }

  private static Facts facts(KnownMaterial material) {
    Material standard = material.standard();
    Facts facts =
        new Facts(
            material.own() == null
                ? material.name() + ": " + material.words()
                : material.name() + ": the shop's own" + like(material));
    if (standard != null) {
      if (!standard.aliases().isEmpty() && material.own() == null) {
        facts.add("also", String.join(", ", standard.aliases()));
      }
      facts.add("ISO 513 group", standard.isoGroup() + ", " + standard.isoGroup().words());
    }
    facts.add("density", material.density().map(Amounts::density));
    for (ToolMaterial cutter : ToolMaterial.values()) {
      facts.add(
          "with " + (cutter == ToolMaterial.HSS ? "HSS" : "carbide"),
          material.speeds(cutter).map(Amounts::surfaceSpeeds));
    }
    facts.add("drills", material.drillSpeeds().map(Amounts::surfaceSpeeds));
    facts.add("end mills", feeds(material));
    facts.add(
        "face mills",
        material
            .feedPerTooth(CutterKind.FACE_MILL, Length.mm("40"))
            .map(feed -> feed + " a tooth"));
    facts.add("force", material.force().map(MaterialCommand::force));
    if (standard != null) {
      PassDepths passes = StandardTables.builtIn().passes().of(standard.kind());
      facts.add("roughing", LengthText.range(passes.rough()) + " a pass on a small mill");
      facts.add("finishing", LengthText.range(passes.finish()));
      facts.add("cut it", standard.cuttingFluid());
      facts.add("mind", standard.caution());
    }
    sources(material).forEach(facts::note);
    return facts.note(SpeedsReport.CAUTION);
  }

  private static Optional<String> feeds(KnownMaterial material) {
    List<String> feeds = new ArrayList<>();
    for (Length diameter : DIAMETERS) {
      material
          .feedPerTooth(CutterKind.END_MILL, diameter)
          .ifPresent(feed -> feeds.add(LengthText.both(feed) + " at dia " + diameter));
    }
    if (material.own() != null && material.own().feedPerTooth() != null) {
      return Optional.of(material.own().feedPerTooth() + " a tooth");
    }
    return feeds.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", feeds));
  }

  private static String force(SpecificForce force) {
    return Amounts.figures(force.kc11())
        + " N/mm2 for a chip 1.00 mm (39.4 thou) thick, "
        + Amounts.figures(force.at(0.05))
        + " N/mm2 for one of "
        + Length.mm("0.05");
  }

  private static List<String> sources(KnownMaterial material) {
    List<String> sources = new ArrayList<>();
    if (material.speeds(ToolMaterial.HSS).isPresent()) {
      sources.add("Speeds: " + material.speedSource(ToolMaterial.HSS) + ".");
    }
    if (material.drillSpeeds().isPresent()) {
      sources.add("Drilling speeds: " + material.drillSource() + ".");
    }
    if (material.feedPerTooth(CutterKind.END_MILL, Length.mm("10")).isPresent()) {
      sources.add("Feeds: " + material.feedSource() + ".");
    }
    if (material.force().isPresent()) {
      sources.add("Material: " + material.forceSource() + ".");
    }
    return sources;
  }

  private static JsonMaterial json(KnownMaterial material) {
    Material standard = material.standard();
    Map<String, Size> feeds = new LinkedHashMap<>();
    for (Length diameter : DIAMETERS) {
      material
          .feedPerTooth(CutterKind.END_MILL, diameter)
          .ifPresent(
              feed -> feeds.put(LengthText.number(diameter, LengthUnit.MM, 3, 0), Size.of(feed)));
    }
    PassDepths passes =
        standard == null ? null : StandardTables.builtIn().passes().of(standard.kind());
    return new JsonMaterial(
        1,
        material.name(),
        material.words(),
        standard == null ? null : standard.name(),
        standard == null ? null : standard.isoGroup().name(),
        material.density().map(Amounts::round).orElse(null),
        material.speeds(ToolMaterial.HSS).map(Speeds::of).orElse(null),
        material.speeds(ToolMaterial.CARBIDE).map(Speeds::of).orElse(null),
        material.drillSpeeds().map(Speeds::of).orElse(null),
        feeds,
        material.force().map(force -> Amounts.round(force.kc11())).orElse(null),
        material.force().map(force -> Amounts.round(force.mc())).orElse(null),
        passes == null ? null : Range.of(passes.rough()),
        passes == null ? null : Range.of(passes.finish()),
        standard == null ? null : standard.cuttingFluid(),
        standard == null ? null : standard.caution(),
        sources(material));
  }

  private record JsonList(int version, List<JsonMaterial> materials) {}

  private record JsonMaterial(
      int version,
      String name,
      String words,
      @Nullable String standard,
      @Nullable String isoGroup,
      @Nullable BigDecimal densityKgPerM3,
      @Nullable Speeds hss,
      @Nullable Speeds carbide,
      @Nullable Speeds drills,
      Map<String, Size> endMillFeedByDiaMm,
      @Nullable BigDecimal kc11NPerMm2,
      @Nullable BigDecimal mc,
      @Nullable Range roughing,
      @Nullable Range finishing,
      @Nullable String cuttingFluid,
      @Nullable String caution,
      List<String> sources) {}
}
