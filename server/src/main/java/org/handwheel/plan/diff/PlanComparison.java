package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.handwheel.model.Face;
import org.handwheel.model.Inspection;
import org.handwheel.model.LogSection;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Use;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.plan.diff.Change.Area;
import org.handwheel.plan.diff.Change.Detail;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.Change.Verb;
import org.handwheel.plan.diff.Differences.More;
import org.handwheel.plan.diff.PlanDiff.Group;
import org.handwheel.plan.diff.PlanDiff.Status;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;

/** Compares files that were checked; a pure function. */
public final class PlanComparison {
  private final Side before;
  private final Side after;
  private final SamePlaces places = new SamePlaces();
  private final Differences differences;
  private final List<Group> groups = new ArrayList<>();

  private PlanComparison(Side before, Side after) {
    this.before = before;
    this.after = after;
    this.differences = new Differences(before::line, after::line, places);
  }

  /**
   * The difference of a file.
   *
   * @param before the file before, or nothing if it is new
   * @param after the file after, or nothing if it is gone
   * @throws IllegalArgumentException if it is on neither side
   */
  public static PlanDiff of(@Nullable Checked before, @Nullable Checked after) {
    if (before != null && after != null) {
      return both(before, after);
    }
    Checked sole = after == null ? before : after;
    if (sole == null) {
      throw new IllegalArgumentException("a file is on one side at least");
    }
    Status status = after == null ? Status.REMOVED : Status.ADDED;
    return new PlanDiff(
        status,
        after == null ? sole.tree().path() : "",
        after == null ? "" : sole.tree().path(),
        title(sole),
        List.of(),
        FindingPairs.of(before, after, new SamePlaces()));
  }

  private static PlanDiff both(Checked before, Checked after) {
    Plan planBefore = before.plan();
    Plan planAfter = after.plan();
    SamePlaces places = new SamePlaces();
    List<Group> groups;
    if (planBefore != null && planAfter != null) {
      PlanComparison comparison =
          new PlanComparison(new Side(before, planBefore), new Side(after, planAfter));
      comparison.comparePlans();
      comparison.pairSections(before.tree(), after.tree());
      places = comparison.places;
      groups = comparison.groups;
    } else if (planBefore == null && planAfter == null) {
      groups = ShopComparison.of(before.tree(), after.tree(), places);
    } else {
      groups =
          List.of(
              new Group(
                  "File",
                  List.of(
                      simple(
                          Area.PLAN,
                          "kind of file",
                          planBefore == null ? "shop" : "plan",
                          planAfter == null ? "shop" : "plan"))));
    }
    return new PlanDiff(
        Status.BOTH,
        before.tree().path(),
        after.tree().path(),
        title(after),
        groups,
        FindingPairs.of(before, after, places));
  }

  private static String title(Checked checked) {
    return checked.plan() == null ? "" : checked.plan().title();
  }

  private static Change simple(Area area, String subject, String before, String after) {
    return new Change(
        Verb.CHANGED, area, subject, List.of(new Detail("", before, after, From.WRITTEN)), 0, 0);
  }

  private void comparePlans() {
    group("Plan", head());
    group("Drawing", parts(Area.DRAWING, before.plan().part(), after.plan().part()));
    group("Stock", parts(Area.STOCK, before.plan().stock(), after.plan().stock()));
    group("Order", order());
    setups();
    group("Inspection", inspections());
    group("Logs", logs());
    group("Result", results());
    group("Shop", shop());
  }

  private void group(String heading, List<Change> changes) {
    if (!changes.isEmpty()) {
      groups.add(new Group(heading, changes));
    }
  }

  private void pairSections(SyntaxTree one, SyntaxTree other) {
    for (Section section : one.sections()) {
      other.sections().stream()
          .filter(candidate -> candidate.kind() == section.kind())
          .filter(candidate -> places.section(section) == null)
          .filter(
              candidate ->
                  !section.kind().equals(org.handwheel.syntax.SectionKind.SETUP)
                      && !section.kind().equals(org.handwheel.syntax.SectionKind.LOG))
          .findFirst()
          .ifPresent(candidate -> places.addSections(section, candidate));
    }
  }

  // ---- The plan's head, the drawing, the stock

  private List<Change> head() {
    List<Change> changes = new ArrayList<>();
    String titleBefore = header(before.plan());
    String titleAfter = header(after.plan());
    if (!titleBefore.equals(titleAfter)) {
      changes.add(simple(Area.PLAN, "title", titleBefore, titleAfter));
    }
    places.add(before.plan().header(), after.plan().header());
    String machineBefore = machine(before.plan());
    String machineAfter = machine(after.plan());
    if (!machineBefore.equalsIgnoreCase(machineAfter)) {
      changes.add(simple(Area.TOOLS, "machine", machineBefore, machineAfter));
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

  private List<Change> parts(Area area, @Nullable Record one, @Nullable Record other) {
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
        .map(detail -> simple(area, detail.label(), detail.before(), detail.after()))
        .toList();
  }

  // ---- Setups

  private List<Change> order() {
    String one = faces(before.plan());
    String other = faces(after.plan());
    return one.equals(other)
        ? List.of()
        : List.of(simple(Area.ORDER, "faces are cut in this order", one, other));
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

  private void setups() {
    List<Setup> left = before.plan().setups();
    List<Setup> right = after.plan().setups();
    SetupPairs pairs = SetupPairs.of(before.plan(), before.units(), after.plan(), after.units());
    int shown = 0;
    for (int j = 0; j < right.size(); j++) {
      Integer i = pairs.before().get(j);
      if (i == null) {
        group(heading(right.get(j)), List.of(whole(Verb.ADDED, right.get(j))));
        continue;
      }
      while (shown < left.size() && shown < i) {
        removed(pairs, left, shown++);
      }
      String where =
          pairs.moved().contains(j) ? "from place " + (i + 1) + " to place " + (j + 1) : "";
      group(heading(right.get(j)), setup(left.get(i), right.get(j), where));
    }
    while (shown < left.size()) {
      removed(pairs, left, shown++);
    }
  }

  private void removed(SetupPairs pairs, List<Setup> left, int index) {
    if (!pairs.isPairedBefore(index)) {
      group(heading(left.get(index)), List.of(whole(Verb.REMOVED, left.get(index))));
    }
  }

  private static String heading(Setup setup) {
    String words = setup.words();
    String name = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    return setup.name() == null || setup.title().isEmpty()
        ? name
        : name + " \"" + setup.title() + "\"";
  }

  /** A setup that is on one side only, with all that it says. */
  private Change whole(Verb verb, Setup setup) {
    boolean added = verb == Verb.ADDED;
    List<Detail> details = new ArrayList<>();
    if (setup.hold() != null) {
      details.add(line(setup.hold().origin(), added));
    }
    setup.steps().forEach(step -> details.add(line(step.origin(), added)));
    Side side = added ? after : before;
    int line = side.line(setup.header());
    return new Change(
        verb,
        Area.SETUP,
        PlanText.line(setup.header()),
        details,
        added ? 0 : line,
        added ? line : 0);
  }

  private static Detail line(Origin origin, boolean added) {
    String line = PlanText.line(origin);
    return new Detail("", added ? "" : line, added ? line : "", From.WRITTEN);
  }

  private List<Change> setup(Setup one, Setup other, String where) {
    places.add(one.header(), other.header());
    List<Change> changes = new ArrayList<>();
    List<Detail> header = new ArrayList<>();
    name(header, "name", nameOf(one), nameOf(other));
    name(header, "title", one.title(), other.title());
    if (!where.isEmpty()) {
      header.add(new Detail("moved", "", where, From.WRITTEN));
    }
    if (!header.isEmpty()) {
      changes.add(
          new Change(
              header.size() == 1 && !where.isEmpty() ? Verb.MOVED : Verb.CHANGED,
              Area.SETUP,
              PlanText.line(other.header()),
              header,
              before.line(one.header()),
              after.line(other.header())));
    }
    changes.addAll(hold(one, other));
    changes.addAll(steps(one, other));
    changes.addAll(tools(one, other));
    changes.addAll(time(one, other));
    return changes;
  }

  private static String nameOf(Setup setup) {
    return setup.name() == null ? "" : setup.name().value();
  }

  private static void name(List<Detail> details, String label, String one, String other) {
    if (!one.equals(other)) {
      details.add(new Detail(label, one, other, From.WRITTEN));
    }
  }

  private List<Change> hold(Setup one, Setup other) {
    List<Item> left = holds(one, before);
    List<Item> right = holds(other, after);
    List<Change> changes =
        new ArrayList<>(
            differences.of(Area.HOLD, left, right, Pairing.inOrder(left, right), More.NOTHING));
    boolean both = one.hold() != null && other.hold() != null;
    if (both && one.stepsBeforeHold() != other.stepsBeforeHold() && changes.isEmpty()) {
      boolean steps = keys(one, before).equals(keys(other, after));
      if (steps) {
        changes.add(
            new Change(
                Verb.MOVED,
                Area.HOLD,
                right.get(0).text(),
                List.of(),
                before.line(left.get(0).origin()),
                after.line(right.get(0).origin())));
      }
    }
    return changes;
  }

  private static List<Item> holds(Setup setup, Side side) {
    return setup.hold() == null ? List.of() : List.of(Item.of(setup.hold(), side.units()));
  }

  private static List<String> keys(Setup setup, Side side) {
    return items(setup.steps(), side).stream().map(Item::key).toList();
  }

  private static List<Item> items(Collection<?> records, Side side) {
    return records.stream().map(each -> Item.of((Record) each, side.units())).toList();
  }

  private List<Change> steps(Setup one, Setup other) {
    List<Item> left = items(one.steps(), before);
    List<Item> right = items(other.steps(), after);
    SetupRun runBefore = before.run(one.header().section());
    SetupRun runAfter = after.run(other.header().section());
    More figures =
        runBefore == null || runAfter == null
            ? More.NOTHING
            : (i, j) -> figures(runBefore.steps().get(i), runAfter.steps().get(j));
    return differences.of(Area.STEP, left, right, Pairing.inOrder(left, right), figures);
  }

  private List<Detail> figures(StepRun one, StepRun other) {
    PlanRun left = before.run();
    PlanRun right = after.run();
    if (left == null || right == null) {
      return List.of();
    }
    return Differences.details(Figures.of(left, one), Figures.of(right, other), From.WORKED_OUT);
  }

  private List<Change> tools(Setup one, Setup other) {
    Map<String, String> left = tools(one, before);
    Map<String, String> right = tools(other, after);
    List<Detail> details = new ArrayList<>();
    right.forEach(
        (key, name) -> {
          if (!left.containsKey(key)) {
            details.add(new Detail("", "", name, From.WORKED_OUT));
          }
        });
    left.forEach(
        (key, name) -> {
          if (!right.containsKey(key)) {
            details.add(new Detail("", name, "", From.WORKED_OUT));
          }
        });
    return details.isEmpty()
        ? List.of()
        : List.of(new Change(Verb.CHANGED, Area.TOOLS, "to lay out", details, 0, 0));
  }

  /** What a setup's lines name of the shop, and the cutters of its cuts, by kind and name. */
  private static Map<String, String> tools(Setup setup, Side side) {
    Map<String, String> tools = new TreeMap<>();
    Section section = setup.header().section();
    for (Use use : side.plan().names().uses()) {
      boolean tool =
          switch (use.declaration().kind()) {
            case VISE, PARALLELS, CUTTER, INSTRUMENT, FINDER, PIECE -> true;
            default -> false;
          };
      if (use.origin().section() == section && tool) {
        add(tools, use.declaration().name());
      }
    }
    SetupRun run = side.run(section);
    if (run != null) {
      for (StepRun step : run.steps()) {
        if (step.cut() != null) {
          add(tools, step.cut().cutter().name());
        }
      }
    }
    return tools;
  }

  private static void add(Map<String, String> tools, String name) {
    tools.put(name.toLowerCase(Locale.ROOT), name);
  }

  private List<Change> time(Setup one, Setup other) {
    SetupRun runBefore = before.run(one.header().section());
    SetupRun runAfter = after.run(other.header().section());
    PlanRun left = before.run();
    PlanRun right = after.run();
    if (runBefore == null || runAfter == null || left == null || right == null) {
      return List.of();
    }
    return worked(Area.TIME, "time", Figures.time(left, runBefore), Figures.time(right, runAfter));
  }

  private static List<Change> worked(Area area, String subject, Fact one, Fact other) {
    return one.key().equals(other.key())
        ? List.of()
        : List.of(
            new Change(
                Verb.CHANGED,
                area,
                subject,
                List.of(new Detail("", one.shown(), other.shown(), From.WORKED_OUT)),
                0,
                0));
  }

  // ---- Inspection, logs, what comes out

  private List<Change> inspections() {
    List<Item> left = items(before.plan().inspections(), before);
    List<Item> right = items(after.plan().inspections(), after);
    return differences.of(
        Area.INSPECTION, left, right, Pairing.anyOrder(left, right), More.NOTHING);
  }

  private List<Change> logs() {
    List<Item> left = readings(before);
    List<Item> right = readings(after);
    return differences.of(Area.LOG, left, right, Pairing.inOrder(left, right), More.NOTHING);
  }

  private static List<Item> readings(Side side) {
    List<Item> items = new ArrayList<>();
    for (LogSection log : side.plan().logs()) {
      for (Item item : items(log.readings(), side)) {
        Map<String, Fact> facts = new LinkedHashMap<>(item.facts());
        facts.put("log", Fact.of(log.title()));
        items.add(new Item(item.type(), item.name(), item.text(), facts, item.origin()));
      }
    }
    return items;
  }

  private List<Change> results() {
    PlanRun left = before.run();
    PlanRun right = after.run();
    if (left == null || right == null || !isWhole(left) || !isWhole(right)) {
      return List.of();
    }
    List<Change> changes = new ArrayList<>();
    for (PartDimension dimension : PartDimension.values()) {
      SizeState one = left.end().size(dimension);
      SizeState other = right.end().size(dimension);
      if (one != null && other != null) {
        changes.addAll(
            worked(
                Area.SIZE,
                dimension.word() + " at the end",
                Fact.of(Figures.size(one)),
                Fact.of(Figures.size(other))));
      }
    }
    changes.addAll(worked(Area.TIME, "time in all", Figures.time(left), Figures.time(right)));
    return changes;
  }

  private static boolean isWhole(PlanRun run) {
    return run.knownSetups().count() == run.setups().size();
  }

  // ---- The shop, as far as the plan uses it

  private List<Change> shop() {
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
