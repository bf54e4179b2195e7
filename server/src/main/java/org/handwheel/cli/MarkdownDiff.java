package org.handwheel.cli;

import org.handwheel.plan.diff.Change;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.FindingChange;
import org.handwheel.plan.diff.PlanDiff;

/** A review as a comment on a code host: what appeared comes first, the rest setup by setup. */
final class MarkdownDiff implements DiffFormat {
  private final Output output;

  MarkdownDiff(Output output) {
    this.output = output;
  }

  @Override
  public void print(Review review) {
    output.line("## Plans: " + DiffWords.summary(review));
    for (PlanDiff diff : review.diffs()) {
      output.line("");
      output.line("### " + heading(diff));
      print(diff, FindingChange.Kind.APPEARED, "Findings that appeared");
      print(diff, FindingChange.Kind.VANISHED, "Findings that vanished");
      for (PlanDiff.Group group : diff.groups()) {
        output.line("");
        output.line("**" + MarkdownEscape.text(group.heading()) + "**");
        output.line("");
        group.changes().forEach(this::print);
      }
    }
  }

  private static String heading(PlanDiff diff) {
    String path = MarkdownEscape.code(diff.after().isEmpty() ? diff.before() : diff.after());
    String what =
        switch (diff.status()) {
          case ADDED -> " is new";
          case REMOVED -> " is gone";
          case BOTH ->
              diff.before().equals(diff.after())
                  ? ""
                  : ", was " + MarkdownEscape.code(diff.before());
        };
    String title = diff.title().isEmpty() ? "" : ": " + MarkdownEscape.text(diff.title());
    return path + what + title;
  }

  private void print(PlanDiff diff, FindingChange.Kind kind, String heading) {
    if (diff.findings().stream().noneMatch(finding -> finding.kind() == kind)) {
      return;
    }
    output.line("");
    output.line("**" + heading + "**");
    output.line("");
    for (FindingChange change : diff.findings()) {
      if (change.kind() == kind) {
        String place =
            change.line() > 0 ? "line " + change.line() : MarkdownEscape.code(change.path());
        output.line(
            "- "
                + TextReport.word(change.finding().severity())
                + " "
                + MarkdownEscape.code(change.finding().rule())
                + ", "
                + place
                + ": "
                + MarkdownEscape.text(change.finding().message()));
      }
    }
  }

  private void print(Change change) {
    boolean statement = change.lineAfter() > 0 || change.lineBefore() > 0;
    String subject =
        statement ? MarkdownEscape.code(change.subject()) : MarkdownEscape.text(change.subject());
    boolean sole =
        change.verb() == Change.Verb.CHANGED
            && change.details().size() == 1
            && change.details().get(0).label().isEmpty();
    String head = "- " + DiffWords.word(change.verb()) + ": " + subject + DiffWords.line(change);
    if (sole) {
      Change.Detail only = change.details().get(0);
      output.line(head + ": " + detail(only) + mark(only));
      return;
    }
    output.line(head);
    boolean whole = change.verb() == Change.Verb.ADDED || change.verb() == Change.Verb.REMOVED;
    for (Change.Detail detail : change.details()) {
      String text = whole ? MarkdownEscape.code(detail.before() + detail.after()) : detail(detail);
      output.line("  - " + text + mark(detail));
    }
  }

  private static String mark(Change.Detail detail) {
    return detail.from() == From.WORKED_OUT ? " *(follows)*" : "";
  }

  private String detail(Change.Detail detail) {
    return DiffWords.detail(
        new Change.Detail(
            MarkdownEscape.text(detail.label()),
            MarkdownEscape.text(detail.before()),
            MarkdownEscape.text(detail.after()),
            detail.from()),
        output.glyphs().show("→"));
  }
}
