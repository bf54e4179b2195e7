package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.plan.diff.Change;
import org.handwheel.plan.diff.FindingChange;
import org.handwheel.plan.diff.PlanDiff;

/** Words that all ways to print a review share. */
final class DiffWords {
  private DiffWords() {}

  /** Which file, and what became of it. */
  static String file(PlanDiff diff) {
    String words =
        switch (diff.status()) {
          case ADDED -> diff.after() + " is new";
          case REMOVED -> diff.before() + " is gone";
          case BOTH ->
              diff.before().equals(diff.after())
                  ? diff.after()
                  : diff.after() + ", was " + diff.before();
        };
    return diff.title().isEmpty() ? words : words + ": " + diff.title();
  }

  /** The line a change is on, in brackets; empty if it is on none. */
  static String line(Change change) {
    if (change.lineAfter() > 0) {
      return " (line " + change.lineAfter() + ")";
    }
    return change.lineBefore() > 0 ? " (was line " + change.lineBefore() + ")" : "";
  }

  /** What is different, before and after. */
  static String detail(Change.Detail detail, String arrow) {
    String label = detail.label().isEmpty() ? "" : detail.label() + ": ";
    if (detail.before().isEmpty()) {
      return label.isEmpty()
          ? "now " + detail.after()
          : label + detail.after() + ", not said before";
    }
    if (detail.after().isEmpty()) {
      return label.isEmpty()
          ? "no longer " + detail.before()
          : label + "no longer said, was " + detail.before();
    }
    return label + detail.before() + " " + arrow + " " + detail.after();
  }

  static String finding(FindingChange change) {
    return TextReport.word(change.finding().severity()) + "[" + change.finding().rule() + "]";
  }

  /** What there is in all, in one line. */
  static String summary(Review review) {
    if (review.diffs().isEmpty()) {
      return "no change";
    }
    List<String> words = new ArrayList<>();
    words.add(count(review.diffs().size(), "file is different", "files are different"));
    long appeared = review.count(FindingChange.Kind.APPEARED);
    long vanished = review.count(FindingChange.Kind.VANISHED);
    if (appeared > 0) {
      words.add(count(appeared, "finding appeared", "findings appeared"));
    }
    if (vanished > 0) {
      words.add(count(vanished, "finding vanished", "findings vanished"));
    }
    return String.join(", ", words);
  }

  private static String count(long count, String one, String many) {
    return count + " " + (count == 1 ? one : many);
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
