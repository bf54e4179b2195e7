package org.handwheel.shop.material;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;

/** The materials a plan may name, found by name or alias; upper and lower case are one. */
public final class Materials {
  private final List<Material> all;
  private final Map<String, Material> byName;

  private Materials(List<Material> all, Map<String, Material> byName) {
    this.all = List.copyOf(all);
    this.byName = Map.copyOf(byName);
  }

  /** Reads the tables kept beside this class. */
  public static Materials load() {
    Map<String, FeedPerTooth> feeds = new HashMap<>();
    Table.read(Materials.class, "feeds-per-tooth.csv")
        .rows()
        .forEach(row -> feeds.put(row.text("feed"), FeedPerTooth.read(row)));
    Map<String, Row> speeds = Table.read(Materials.class, "cutting-speeds.csv").by("name");
    Map<String, Row> drilling = Table.read(Materials.class, "drill-speeds.csv").by("name");
    List<Material> materials =
        Table.read(Materials.class, "materials.csv").map(row -> read(row, speeds, drilling, feeds));
    Map<String, Material> names = new HashMap<>();
    for (Material material : materials) {
      for (String name : names(material)) {
        if (names.put(name, material) != null) {
          throw new IllegalStateException("two materials " + name);
        }
      }
    }
    return new Materials(materials, names);
  }

  private static Material read(
      Row row,
      Map<String, Row> speeds,
      Map<String, Row> drilling,
      Map<String, FeedPerTooth> feeds) {
    return new Material(
        row.text("name"),
        row.list("aliases"),
        row.text("words"),
        row.parse("class", MaterialClass::valueOf),
        row.parse("group", IsoGroup::valueOf),
        row.number("density"),
        row.parse("name", name -> speeds(name, speeds)),
        row.parse("name", name -> drilling(name, drilling)),
        new SpecificForce(row.number("kc11"), row.number("mc")),
        row.parse("feed", name -> feed(name, feeds)),
        row.number("point"),
        row.text("fluid"),
        row.text("caution"),
        row.provenance());
  }

  private static CuttingSpeeds speeds(String name, Map<String, Row> speeds) {
    Row row = speeds.get(name);
    if (row == null) {
      throw new IllegalArgumentException("no cutting speeds for " + name);
    }
    return new CuttingSpeeds(
        new SpeedRange(row.number("hss low"), row.number("hss high")),
        new SpeedRange(row.number("carbide low"), row.number("carbide high")),
        row.provenance());
  }

  private static DrillSpeeds drilling(String name, Map<String, Row> drilling) {
    Row row = drilling.get(name);
    if (row == null) {
      throw new IllegalArgumentException("no drilling speeds for " + name);
    }
    return new DrillSpeeds(
        new SpeedRange(row.number("low"), row.number("high")),
        row.parse("feed", word -> DrillSpeeds.FeedShare.valueOf(word.toUpperCase(Locale.ROOT))),
        row.provenance());
  }

  private static FeedPerTooth feed(String name, Map<String, FeedPerTooth> feeds) {
    FeedPerTooth feed = feeds.get(name);
    if (feed == null) {
      throw new IllegalArgumentException("no feeds " + name);
    }
    return feed;
  }

  /** These materials and the shop's own, which come before built-in ones of the same name. */
  public Materials with(List<Material> own) {
    Map<String, Material> names = new HashMap<>(byName);
    Set<String> replaced = new HashSet<>();
    for (Material material : own) {
      replaced.add(key(material.name()));
      names(material).forEach(name -> names.put(name, material));
    }
    List<Material> joined = new ArrayList<>(own);
    all.stream().filter(builtIn -> !replaced.contains(key(builtIn.name()))).forEach(joined::add);
    return new Materials(joined, names);
  }

  private static List<String> names(Material material) {
    List<String> names = new ArrayList<>();
    names.add(key(material.name()));
    material.aliases().forEach(alias -> names.add(key(alias)));
    return names;
  }

  private static String key(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  /** The material of this name or alias. */
  public Optional<Material> find(String name) {
    return Optional.ofNullable(byName.get(key(name)));
  }

  /** Every material once, in the order of the table. */
  public List<Material> all() {
    return all;
  }
}
