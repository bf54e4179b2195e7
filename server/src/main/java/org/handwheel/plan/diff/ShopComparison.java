package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.Shop;
import org.handwheel.model.build.FileUnits;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.plan.diff.Change.Area;
import org.handwheel.plan.diff.Change.Detail;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.Change.Verb;
import org.handwheel.plan.diff.Differences.More;
import org.handwheel.plan.diff.PlanDiff.Group;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.LengthUnit;

/** Differences of what a shop owns, of its limits and of its severities. */
final class ShopComparison {
  private ShopComparison() {}

  /** All that is different in a shop file. */
  static List<Group> of(SyntaxTree before, SyntaxTree after, SamePlaces places) {
    Shop one = ShopFiles.build(before).shop();
    Shop other = ShopFiles.build(after).shop();
    Differences differences =
        new Differences(
            origin -> origin == null || !before.contains(origin) ? 0 : before.line(origin) + 1,
            origin -> origin == null || !after.contains(origin) ? 0 : after.line(origin) + 1,
            places);
    List<Change> changes =
        new ArrayList<>(
            things(
                differences, items(one, FileUnits.of(before)), items(other, FileUnits.of(after))));
    changes.addAll(settings(one, other));
    return changes.isEmpty() ? List.of() : List.of(new Group("Shop", changes));
  }

  /**
   * What is different for a plan.
   *
   * @param used names of things in lower case; others make no difference
   */
  static List<Change> ofShops(
      Shop before,
      LengthUnit unitsBefore,
      Shop after,
      LengthUnit unitsAfter,
      Set<String> used,
      SamePlaces places) {
    Differences differences = new Differences(origin -> 0, origin -> 0, places);
    List<Item> left = items(before, unitsBefore);
    List<Item> right = items(after, unitsAfter);
    // A thing that the plan uses and did not use before is told where it is used.
    List<Change> changes =
        new ArrayList<>(things(differences, common(left, right, used), common(right, left, used)));
    changes.addAll(settings(before, after));
    return changes;
  }

  private static List<Item> common(List<Item> these, List<Item> those, Set<String> used) {
    return these.stream()
        .filter(item -> used.contains(item.name().substring(item.name().indexOf(' ') + 1)))
        .filter(item -> those.stream().anyMatch(other -> other.name().equals(item.name())))
        .toList();
  }

  private static List<Item> items(Shop shop, LengthUnit units) {
    List<Item> items = new ArrayList<>();
    for (Owned thing : shop.things()) {
      Record said = (Record) thing;
      Item item = Item.of(said, units);
      Map<String, Fact> facts = new LinkedHashMap<>(item.facts());
      facts.put("name", new Fact(thing.name().toLowerCase(Locale.ROOT), thing.name()));
      items.add(
          new Item(
              said.getClass(),
              item.name(),
              thing.kind().word() + " " + thing.name(),
              facts,
              thing.origin()));
    }
    return items;
  }

  private static List<Change> things(Differences differences, List<Item> one, List<Item> other) {
    return differences.of(Area.SHOP, one, other, Pairing.anyOrder(one, other), More.NOTHING);
  }

  private static List<Change> settings(Shop before, Shop after) {
    List<Change> changes = new ArrayList<>();
    for (Limit limit : Limit.values()) {
      Map<String, Fact> one = Facts.of("", value(before, limit), LengthUnit.MM);
      Map<String, Fact> other = Facts.of("", value(after, limit), LengthUnit.MM);
      List<Detail> details = Differences.details(one, other, From.WRITTEN);
      if (!details.isEmpty()) {
        changes.add(new Change(Verb.CHANGED, Area.SHOP, "limit " + limit.word(), details, 0, 0));
      }
    }
    Map<String, Fact> one = severities(before);
    Map<String, Fact> other = severities(after);
    for (Detail detail : Differences.details(one, other, From.WRITTEN)) {
      changes.add(
          new Change(
              Verb.CHANGED,
              Area.SHOP,
              "severity of " + detail.label(),
              List.of(new Detail("", detail.before(), detail.after(), From.WRITTEN)),
              0,
              0));
    }
    return changes;
  }

  private static Object value(Shop shop, Limit limit) {
    Object set = shop.limits().set().get(limit);
    return set == null ? limit.fallback() : set;
  }

  private static Map<String, Fact> severities(Shop shop) {
    Map<String, Fact> facts = new TreeMap<>();
    shop.severities()
        .forEach(
            (rule, severity) ->
                facts.put(rule, Fact.of(severity.value().name().toLowerCase(Locale.ROOT))));
    return facts;
  }
}
