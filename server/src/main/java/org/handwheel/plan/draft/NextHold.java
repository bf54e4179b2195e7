package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.plan.draft.Holds.State;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.Workpiece;

/**
 * How the work would best be held next: one step of the search that drafts a whole plan, without
 * the check. It takes some milliseconds.
 */
public final class NextHold {
  private NextHold() {}

  /**
   * The {@code hold} line for the next face.
   *
   * @param checked the plan as far as it goes
   * @param work the work as it is before the setup
   * @return nothing if no face is left to cut, or none can be held
   */
  public static Optional<String> line(Checked checked, Workpiece work, StandardTables tables) {
    Optional<Task> found = Task.of(checked, tables);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Task task = found.get();
    Set<Face> left = EnumSet.noneOf(Face.class);
    task.toCut().stream().filter(face -> !work.face(face).isMachined()).forEach(left::add);
    State state = new State(work, left, null, Set.of());
    Holds holds = new Holds(task);
    Ends ends = new Ends(task);
    List<SetupDraft> drafts = new ArrayList<>();
    for (Face face : left) {
      Why why = Why.of(face);
      drafts.addAll(holds.endCuts(state, face, why));
      holds
          .cut(state, face, why)
          .ifPresent(cut -> drafts.addAll(ends.sideCuts(state, face, cut, why)));
    }
    return drafts.stream()
        .min(Comparator.comparingInt(SetupDraft::cost))
        .flatMap(
            draft -> draft.lines().stream().filter(one -> one.startsWith("hold ")).findFirst());
  }
}
