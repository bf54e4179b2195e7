package org.handwheel.plan.diff;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.model.Inspection;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Step;
import org.handwheel.syntax.Origin;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * One statement, or one thing of the drawing or the shop.
 *
 * @param type what kind of thing
 * @param name what it is found again by, lower case; empty if it has no name
 * @param text how it is written, for people
 * @param facts what it says
 * @param origin where it stands, if it stands on a line of its own
 */
record Item(
    Class<?> type, String name, String text, Map<String, Fact> facts, @Nullable Origin origin) {

  /** A record of the model. */
  static Item of(Record said, LengthUnit units) {
    Origin origin = origin(said);
    String text = origin == null ? "" : PlanText.line(origin);
    return new Item(said.getClass(), name(said), text, Facts.of(said, units), origin);
  }

  /** Each of several records. */
  static List<Item> all(Collection<?> records, LengthUnit units) {
    return records.stream().map(each -> of((Record) each, units)).toList();
  }

  /**
   * A record's parts: each record in one of its collections is an item, the rest is one item of its
   * own, the first.
   */
  static List<Item> parts(Record whole, LengthUnit units) {
    List<Item> items = new ArrayList<>();
    Map<String, Fact> rest = new LinkedHashMap<>();
    for (RecordComponent component : whole.getClass().getRecordComponents()) {
      Object value = Facts.value(component, whole);
      Collection<?> many =
          value instanceof Map<?, ?> map
              ? map.values()
              : value instanceof Collection<?> collection ? collection : List.of();
      boolean records = !many.isEmpty() && many.stream().allMatch(Item::isStatement);
      if (records) {
        many.forEach(each -> items.add(of((Record) each, units)));
      } else if (value != null) {
        rest.putAll(Facts.of(Facts.words(component.getName()), value, units));
      }
    }
    items.sort((a, b) -> Integer.compare(start(a), start(b)));
    items.add(0, new Item(whole.getClass(), "", "", rest, null));
    return items;
  }

  private static int start(Item item) {
    return item.origin == null ? 0 : item.origin.start();
  }

  /** A record that has a place of its own; a value with a place ({@code Located}) is a fact. */
  private static boolean isStatement(Object value) {
    return value instanceof Record said && !(value instanceof Located<?>) && origin(said) != null;
  }

  private static @Nullable Origin origin(Record said) {
    for (RecordComponent component : said.getClass().getRecordComponents()) {
      if (component.getType() == Origin.class && component.getName().equals("origin")) {
        return (Origin) Facts.value(component, said);
      }
    }
    return null;
  }

  /** Names of the drawing and the shop; a step is not found again by what it is done to. */
  private static String name(Record said) {
    if (said instanceof Part.DimensionSpec spec) {
      return spec.dimension().word();
    }
    if (said instanceof Owned owned) {
      return owned.kind().word() + " " + owned.name().toLowerCase(Locale.ROOT);
    }
    for (RecordComponent component : said.getClass().getRecordComponents()) {
      if (component.getName().equals("name")
          && !(said instanceof Step)
          && !(said instanceof Inspection)
          && Facts.value(component, said) instanceof String name) {
        return name.toLowerCase(Locale.ROOT);
      }
    }
    return "";
  }

  /** Equal for two items that say the same. */
  String key() {
    StringBuilder key = new StringBuilder(type.getName()).append('|').append(name);
    facts.forEach((label, fact) -> key.append('|').append(label).append('=').append(fact.key()));
    return key.toString();
  }

  /** How much of what the two say is the same: 0 nothing, 1 all. */
  double likeness(Item other) {
    if (type != other.type) {
      return 0;
    }
    long same =
        facts.entrySet().stream()
            .filter(
                entry -> {
                  Fact there = other.facts.get(entry.getKey());
                  return there != null && there.key().equals(entry.getValue().key());
                })
            .count();
    long all = facts.size() + other.facts.size() - same;
    return all == 0 ? 1 : (double) same / all;
  }
}
