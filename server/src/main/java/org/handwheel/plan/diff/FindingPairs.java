package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.BiPredicate;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.jspecify.annotations.Nullable;

/**
 * Which findings are on one side only. A finding stays the same as long as its rule finds it on the
 * same statement, though that may have been changed or moved.
 */
final class FindingPairs {
  private static final Comparator<FindingChange> WORST_FIRST =
      Comparator.comparing(FindingChange::kind)
          .thenComparing(change -> change.finding().severity())
          .thenComparing(FindingChange::path)
          .thenComparing(FindingChange::line)
          .thenComparing(change -> change.finding().rule())
          .thenComparing(change -> change.finding().message());

  private final List<Finding> before;
  private final List<Finding> after;

  private FindingPairs(List<Finding> before, List<Finding> after) {
    this.before = new ArrayList<>(before);
    this.after = new ArrayList<>(after);
  }

  static List<FindingChange> of(
      @Nullable Checked before, @Nullable Checked after, SamePlaces places) {
    FindingPairs pairs =
        new FindingPairs(
            before == null ? List.of() : before.findings(),
            after == null ? List.of() : after.findings());
    pairs.drop(
        (one, other) -> SamePlaces.Line.of(other.origin()).equals(places.after(one.origin())));
    pairs.drop(
        (one, other) ->
            places.section(one.origin().section()) == other.origin().section()
                && sameWords(one, other));
    pairs.drop(FindingPairs::sameWords);
    List<FindingChange> changes = new ArrayList<>();
    pairs.after.forEach(
        finding -> changes.add(change(FindingChange.Kind.APPEARED, finding, after)));
    pairs.before.forEach(
        finding -> changes.add(change(FindingChange.Kind.VANISHED, finding, before)));
    changes.sort(WORST_FIRST);
    return changes;
  }

  private static FindingChange change(
      FindingChange.Kind kind, Finding finding, @Nullable Checked checked) {
    int line =
        checked != null && checked.tree().contains(finding.origin())
            ? checked.tree().line(finding.origin()) + 1
            : 0;
    return new FindingChange(kind, finding, finding.origin().section().path(), line);
  }

  /** Takes out pairs of one rule that are the same. */
  private void drop(BiPredicate<Finding, Finding> same) {
    for (Finding one : List.copyOf(before)) {
      for (Finding other : List.copyOf(after)) {
        if (one.rule().equals(other.rule()) && same.test(one, other)) {
          before.remove(one);
          after.remove(other);
          break;
        }
      }
    }
  }

  private static boolean sameWords(Finding one, Finding other) {
    return words(one.origin()).equals(words(other.origin()));
  }

  private static String words(Origin origin) {
    return PlanText.lineAround(origin).toLowerCase(Locale.ROOT);
  }
}
