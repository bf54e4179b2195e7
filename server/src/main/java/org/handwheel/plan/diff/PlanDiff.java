package org.handwheel.plan.diff;

import java.util.List;

/**
 * The difference of one file before and after.
 *
 * @param status whether the file is on both sides
 * @param before its path before; empty if it is new
 * @param after its path after; empty if it is gone
 * @param title what the plan calls itself, empty for a shop file
 * @param groups changes that belong together, in the order of the plan; none is empty
 * @param findings those that appeared, then those that vanished, the worst first
 */
public record PlanDiff(
    Status status,
    String before,
    String after,
    String title,
    List<Group> groups,
    List<FindingChange> findings) {
  public PlanDiff {
    groups = List.copyOf(groups);
    findings = List.copyOf(findings);
  }

  /** Whether a file is on both sides. */
  public enum Status {
    ADDED,
    REMOVED,
    BOTH
  }

  /** Changes under one heading, such as a setup. */
  public record Group(String heading, List<Change> changes) {
    public Group {
      changes = List.copyOf(changes);
    }
  }

  /** The same under other names of the file. */
  public PlanDiff named(String nameBefore, String nameAfter) {
    return new PlanDiff(status, nameBefore, nameAfter, title, groups, findings);
  }

  /** Whether nothing is different for a machinist; a file that only moved is not different. */
  public boolean isEmpty() {
    return status == Status.BOTH && groups.isEmpty() && findings.isEmpty();
  }
}
