package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.model.Names.Use;
import org.handwheel.model.Setup;
import org.handwheel.plan.diff.Change.Area;
import org.handwheel.plan.diff.Change.Detail;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.Change.Verb;
import org.handwheel.plan.diff.Differences.More;
import org.handwheel.plan.diff.PlanDiff.Group;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** What is different in the setups of two plans. */
final class SetupComparison {
  private final Side before;
  private final Side after;
  private final SamePlaces places;
  private final Differences differences;
  private final List<Group> groups = new ArrayList<>();

  private SetupComparison(Side before, Side after, SamePlaces places, Differences differences) {
    this.before = before;
    this.after = after;
    this.places = places;
    this.differences = differences;
  }

  /** A group for each setup that is different, in the order after. */
  static List<Group> of(Side before, Side after, SamePlaces places, Differences differences) {
    SetupComparison comparison = new SetupComparison(before, after, places, differences);
    comparison.setups();
    return comparison.groups;
  }

  private void group(String heading, List<Change> changes) {
    if (!changes.isEmpty()) {
      groups.add(new Group(heading, changes));
    }
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
      details.add(line(setup.hold().origin(), verb));
    }
    setup.steps().forEach(step -> details.add(line(step.origin(), verb)));
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

  private static Detail line(Origin origin, Verb verb) {
    String line = PlanText.line(origin);
    return verb == Verb.ADDED
        ? new Detail("", "", line, From.WRITTEN)
        : new Detail("", line, "", From.WRITTEN);
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
    return Item.all(setup.steps(), side.units()).stream().map(Item::key).toList();
  }

  private List<Change> steps(Setup one, Setup other) {
    List<Item> left = Item.all(one.steps(), before.units());
    List<Item> right = Item.all(other.steps(), after.units());
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
    return Differences.worked(
        Area.TIME, "time", Figures.time(left, runBefore), Figures.time(right, runAfter));
  }
}
