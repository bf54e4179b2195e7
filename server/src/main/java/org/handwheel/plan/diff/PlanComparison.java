package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Plan;
import org.handwheel.plan.diff.Change.Area;
import org.handwheel.plan.diff.Change.Detail;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.Change.Verb;
import org.handwheel.plan.diff.PlanDiff.Group;
import org.handwheel.plan.diff.PlanDiff.Status;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
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

  static Change simple(Area area, String subject, String before, String after) {
    return new Change(
        Verb.CHANGED, area, subject, List.of(new Detail("", before, after, From.WRITTEN)), 0, 0);
  }

  private void comparePlans() {
    PlanParts parts = new PlanParts(before, after, places, differences);
    group("Plan", parts.head());
    group("Drawing", parts.parts(Area.DRAWING, before.plan().part(), after.plan().part()));
    group("Stock", parts.parts(Area.STOCK, before.plan().stock(), after.plan().stock()));
    group("Order", parts.order());
    groups.addAll(SetupComparison.of(before, after, places, differences));
    group("Inspection", parts.inspections());
    group("Logs", parts.logs());
    group("Result", parts.results());
    group("Shop", parts.shop());
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
}
