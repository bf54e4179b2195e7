package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.handwheel.plan.draft.Openings.Holding;
import org.handwheel.plan.draft.Search.Reached;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;

/** Completes a squared block: holes and slots, the inspection, and the check of the whole. */
final class Completion {
  private final Task task;
  private final PlanText text;
  private final Openings openings;
  private final String inspection;
  private final List<String> unchecked;
  private final Set<String> before = new HashSet<>();

  Completion(Task task, PlanText text, Checked bare) {
    this.task = task;
    this.text = text;
    this.openings = new Openings(task, text);
    Inspection inspect = Inspection.of(task);
    this.inspection = inspect.text();
    this.unchecked = inspect.leftOut();
    bare.findings().forEach(finding -> before.add(finding.rule() + finding.message()));
  }

  /** The whole plan, if its check has nothing to say; what is missing goes to why. */
  Optional<Drafted.Draft> finish(Reached reached, Why why) {
    for (Holding holding : Holding.values()) {
      Optional<Drafted.Draft> draft =
          openings.make(reached, holding, why).flatMap(made -> whole(reached, made, why));
      if (draft.isPresent()) {
        return draft;
      }
    }
    return Optional.empty();
  }

  private Optional<Drafted.Draft> whole(Reached reached, Openings.Made made, Why why) {
    List<SetupDraft> setups = new ArrayList<>(made.setups());
    endWithAllEdges(setups);
    Checked checked = text.check(setups, inspection, made.checked());
    Set<String> against = new LinkedHashSet<>();
    for (Finding finding : checked.findings()) {
      boolean counts =
          finding.severity() == Severity.ERROR || finding.severity() == Severity.WARNING;
      if (counts
          && !isLeftOut(finding, made.leftOut().keySet())
          && !before.contains(finding.rule() + finding.message())) {
        against.add(finding.message());
      }
    }
    if (!against.isEmpty()) {
      against.forEach(why::add);
      return Optional.empty();
    }
    return Optional.of(
        new Drafted.Draft(
            text.whole(setups, inspection),
            text.added(setups, inspection),
            setups.stream().map(Completion::summary).toList(),
            reached.cost() + cost(setups) - cost(reached.setups()),
            Stream.concat(made.leftOut().values().stream(), unchecked.stream()).toList()));
  }

  /** That a feature is never cut is known where it is left to the person; it is said there. */
  private boolean isLeftOut(Finding finding, Set<String> names) {
    return finding.rule().equals("outline-not-reached")
        && task.part().features().stream()
            .filter(feature -> names.contains(feature.name()))
            .anyMatch(feature -> finding.origin().text().equals(feature.origin().text()));
  }

  private static int cost(List<SetupDraft> setups) {
    return setups.stream().mapToInt(SetupDraft::cost).sum();
  }

  private static String summary(SetupDraft setup) {
    String hold =
        setup.lines().stream()
            .filter(line -> line.startsWith("hold "))
            .findFirst()
            .map(line -> line.substring("hold ".length()))
            .orElse("");
    return setup.title() + " (" + hold + ")";
  }

  /** Whatever the last setup cut, no edge leaves the bench sharp. */
  private static void endWithAllEdges(List<SetupDraft> setups) {
    if (setups.isEmpty()) {
      return;
    }
    int index = setups.size() - 1;
    SetupDraft last = setups.get(index);
    List<String> lines = new ArrayList<>(last.lines());
    for (int i = lines.size() - 1; i >= 0; i--) {
      if (lines.get(i).startsWith("deburr ")) {
        lines.set(i, "deburr all edges");
        break;
      }
    }
    setups.set(
        index,
        new SetupDraft(
            last.way(),
            last.title(),
            last.why(),
            last.beforeHold(),
            lines,
            last.face(),
            last.cutter(),
            last.trued(),
            last.cost()));
  }

  List<String> lackingTools() {
    return openings.lackingTools();
  }

  /** Whether the holes and slots cannot be made, whatever the order of the faces. */
  boolean isHopeless() {
    return !openings.missing().isEmpty();
  }

  List<String> missing(Why why) {
    return openings.missing().isEmpty() ? why.sentences() : openings.missing();
  }
}
