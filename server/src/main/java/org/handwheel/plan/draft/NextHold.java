package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.handwheel.model.Face;
import org.handwheel.model.Workspace;
import org.handwheel.plan.draft.Holds.State;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.Bench;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * How the work would best be held next: one step of the search that drafts a whole plan. It takes
 * some tens of milliseconds at most.
 */
public final class NextHold {
  /** So many ways are checked; the first is usually sound. */
  private static final int MOST_CHECKS = 12;

  private final Workspace workspace;
  private final Checked checked;
  private final StandardTables tables;

  /** For a plan in a workspace that was checked with these tables. */
  public NextHold(Workspace workspace, Checked checked, StandardTables tables) {
    this.workspace = workspace;
    this.checked = checked;
    this.tables = tables;
  }

  /**
   * Lines for the beginning of a setup.
   *
   * @param before what comes before the work is held, such as setting the vise true
   * @param hold the {@code hold} line
   */
  public record Lines(List<String> before, String hold) {
    public Lines {
      before = List.copyOf(before);
    }
  }

  /**
   * The lines that hold the work for the next face. With the cuts that a draft would put behind
   * them they check clean.
   *
   * @param end where in the text of the setup the lines would be; what comes behind does not count
   * @param work the work as it is there
   * @param bench what is in the spindle and set true there; nothing in a first setup
   * @return nothing if no face is left to cut, or none can be held
   */
  public Optional<Lines> lines(int end, Workpiece work, @Nullable Bench bench) {
    Optional<Task> task = Task.of(checked, tables);
    if (task.isEmpty()) {
      return Optional.empty();
    }
    // Work that was sawn has burrs on its edges.
    List<String> first =
        Face.all().stream().anyMatch(face -> work.face(face).burr() != null)
            ? List.of("deburr all edges")
            : List.of();
    return candidates(task.get(), work, bench).stream()
        .limit(MOST_CHECKS)
        .filter(draft -> isSound(end, first, draft))
        .findFirst()
        .map(
            draft ->
                new Lines(
                    Stream.concat(first.stream(), draft.beforeHold().stream()).toList(),
                    hold(draft)));
  }

  /** One for each way to hold it, the cheapest first. */
  private static List<SetupDraft> candidates(Task task, Workpiece work, @Nullable Bench bench) {
    Set<Face> left = EnumSet.noneOf(Face.class);
    task.toCut().stream().filter(face -> !work.face(face).isMachined()).forEach(left::add);
    String cutter = bench == null || bench.cutter() == null ? null : bench.cutter().cutter().name();
    Set<String> trued =
        bench == null || bench.trued() == null ? Set.of() : Set.of(bench.trued().vise());
    State state = new State(work, left, cutter, trued);
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
    drafts.sort(Comparator.comparingInt(SetupDraft::cost));
    Set<String> seen = new HashSet<>();
    return drafts.stream().filter(draft -> seen.add(hold(draft))).toList();
  }

  private static String hold(SetupDraft draft) {
    return draft.lines().stream().filter(one -> one.startsWith("hold ")).findFirst().orElse("");
  }

  private boolean isSound(int end, List<String> first, SetupDraft draft) {
    SyntaxTree tree = checked.tree();
    StringBuilder text = new StringBuilder(tree.source().text().substring(0, end).stripTrailing());
    Stream.of(first, draft.beforeHold(), draft.lines())
        .flatMap(List::stream)
        .forEach(line -> text.append("\n  ").append(line));
    SyntaxTree next = tree.update(text.append('\n').toString());
    Map<String, SyntaxTree> files = new HashMap<>(workspace.files());
    files.put(tree.path(), next);
    Checked now =
        new Checker(tables)
            .check(new Workspace(files, workspace.unreadable()), tree.path(), checked);
    Section last = next.sections().get(next.sections().size() - 1);
    return now.findings().stream()
        .noneMatch(finding -> finding.origin().section() == last && Search.isAgainst(now, finding));
  }
}
