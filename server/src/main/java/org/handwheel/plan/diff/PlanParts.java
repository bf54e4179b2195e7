package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.model.Inspection;
import org.handwheel.model.LogSection;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Use;
import org.handwheel.model.Part;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.plan.diff.Change.Area;
import org.handwheel.plan.diff.Change.Verb;
import org.handwheel.plan.diff.Differences.More;
import org.handwheel.units.LengthText;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;

/** What is different in two plans beside their setups. */
final class PlanParts {
  private final Side before;
  private final Side after;
  private final SamePlaces places;
  private final Differences differences;

  PlanParts(Side before, Side after, SamePlaces places, Differences differences) {
    this.before = before;
    this.after = after;
    this.places = places;
    this.differences = differences;
  }

  // ---- The plan's head, the drawing, the stock

  List<Change> head() {
    List<Change> changes = new ArrayList<>();
    String titleBefore = header(before.plan());
    String titleAfter = header(after.plan());
    if (!titleBefore.equals(titleAfter)) {
      changes.add(PlanComparison.simple(Area.PLAN, "title", titleBefore, titleAfter));
    }
    places.add(before.plan().header(), after.plan().header());
    String machineBefore = machine(before.plan());
    String machineAfter = machine(after.plan());
    if (!machineBefore.equalsIgnoreCase(machineAfter)) {
      changes.add(PlanComparison.simple(Area.TOOLS, "machine", machineBefore, machineAfter));
    }
    return changes;
  }

  /** The header without what means nothing: its title and its revision. */
  private static String header(Plan plan) {
    String line = PlanText.line(plan.header());
    return line.toLowerCase(Locale.ROOT).startsWith("plan ") ? line.substring(5) : plan.title();
  }

  private static String machine(Plan plan) {
    return plan.machine() == null ? "" : plan.machine().name();
  }

  List<Change> parts(Area area, @Nullable Record one, @Nullable Record other) {
    List<Item> left = one == null ? List.of() : Item.parts(one, before.units());
    List<Item> right = other == null ? List.of() : Item.parts(other, after.units());
    if (left.isEmpty() != right.isEmpty()) {
      boolean gone = right.isEmpty();
      return List.of(
          new Change(
              gone ? Verb.REMOVED : Verb.ADDED,
              area,
              area == Area.STOCK ? "stock" : "part",
              List.of(),
              0,
              0));
    }
    return differences.of(area, left, right, Pairing.anyOrder(left, right), More.NOTHING).stream()
        .flatMap(change -> apart(change, area).stream())
        .toList();
  }

  /** What is no statement of its own is told fact by fact. */
  private static List<Change> apart(Change change, Area area) {
    if (!change.subject().isEmpty()) {
      return List.of(change);
    }
    return change.details().stream()
        .map(detail -> PlanComparison.simple(area, detail.label(), detail.before(), detail.after()))
        .toList();
  }

  List<Change> order() {
    String one = faces(before.plan());
    String other = faces(after.plan());
    return one.equals(other)
        ? List.of()
        : List.of(PlanComparison.simple(Area.ORDER, "faces are cut in this order", one, other));
  }

  /** The faces in the order they are cut; a face that is cut twice on end counts once. */
  private static String faces(Plan plan) {
    List<String> faces = new ArrayList<>();
    for (Setup setup : plan.setups()) {
      for (Step step : setup.steps()) {
        if (step instanceof Step.Cut cut) {
          Face face = cut.face();
          if (faces.isEmpty() || !faces.get(faces.size() - 1).equals(face.word())) {
            faces.add(face.word());
          }
        }
      }
    }
    return String.join(", ", faces);
  }

  // ---- Inspection, logs, what comes out

  List<Change> inspections() {
    List<Item> left = Item.all(before.plan().inspections(), before.units());
    List<Item> right = Item.all(after.plan().inspections(), after.units());
    return differences.of(
        Area.INSPECTION, left, right, Pairing.anyOrder(left, right), More.NOTHING);
  }

  List<Change> logs() {
    List<Item> left = readings(before);
    List<Item> right = readings(after);
    return differences.of(Area.LOG, left, right, Pairing.inOrder(left, right), More.NOTHING);
  }

  private static List<Item> readings(Side side) {
    List<Item> items = new ArrayList<>();
    for (LogSection log : side.plan().logs()) {
      for (Item item : Item.all(log.readings(), side.units())) {
        Map<String, Fact> facts = new LinkedHashMap<>(item.facts());
        facts.put("log", Fact.of(log.title()));
        items.add(new Item(item.type(), item.name(), item.text(), facts, item.origin()));
      }
    }
    return items;
  }

  List<Change> results() {
    PlanRun left = before.run();
    PlanRun right = after.run();
    if (left == null || right == null || !isWhole(left) || !isWhole(right)) {
      return List.of();
    }
    List<Change> changes = new ArrayList<>();
    for (PartDimension dimension : PartDimension.values()) {
      Drawing.Demand was = left.drawing().demand(dimension);
      Drawing.Demand is = right.drawing().demand(dimension);
      if (was != null
          && is != null
          && was.nominal().equals(is.nominal())
          && isUntoleranced(left.plan(), dimension)
          && isUntoleranced(right.plan(), dimension)) {
        // Limits that a general tolerance or the places of a number bring in.
        changes.addAll(
            Differences.worked(
                Area.SIZE,
                dimension.word() + " by the drawing",
                Fact.of(LengthText.range(was.limits())),
                Fact.of(LengthText.range(is.limits()))));
      }
      SizeState one = left.end().size(dimension);
      SizeState other = right.end().size(dimension);
      if (one != null && other != null) {
        changes.addAll(
            Differences.worked(
                Area.SIZE,
                dimension.word() + " at the end",
                Fact.of(Figures.size(one)),
                Fact.of(Figures.size(other))));
      }
    }
    changes.addAll(
        Differences.worked(Area.TIME, "time in all", Figures.time(left), Figures.time(right)));
    return changes;
  }

  private static boolean isUntoleranced(Plan plan, PartDimension dimension) {
    Part.DimensionSpec spec = plan.part() == null ? null : plan.part().dimension(dimension);
    return spec != null && spec.limits() == null;
  }

  private static boolean isWhole(PlanRun run) {
    return run.knownSetups().count() == run.setups().size();
  }

  // ---- The shop, as far as the plan uses it

  List<Change> shop() {
    Set<String> used = new LinkedHashSet<>(used(before.plan()));
    used.addAll(used(after.plan()));
    return ShopComparison.ofShops(
        before.plan().shop(), before.units(), after.plan().shop(), after.units(), used, places);
  }

  private static Set<String> used(Plan plan) {
    Set<String> used = new LinkedHashSet<>();
    for (Use use : plan.names().uses()) {
      Names.Kind kind = use.declaration().kind();
      if (kind != Names.Kind.VALUE && kind != Names.Kind.SETUP) {
        used.add(use.declaration().name().toLowerCase(Locale.ROOT));
      }
    }
    if (plan.machine() != null) {
      used.add(plan.machine().name().toLowerCase(Locale.ROOT));
    }
    if (plan.part() != null && plan.part().material() != null) {
      used.add(plan.part().material().value().toLowerCase(Locale.ROOT));
    }
    for (Inspection inspection : plan.inspections()) {
      used.add(inspection.instrument().name().toLowerCase(Locale.ROOT));
    }
    return used;
  }
}
