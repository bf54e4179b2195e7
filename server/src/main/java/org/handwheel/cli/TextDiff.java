package org.handwheel.cli;

import org.handwheel.plan.diff.Change;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.FindingChange;
import org.handwheel.plan.diff.PlanDiff;
import org.handwheel.plan.diff.PlanDiff.Group;

/** A review for people at a terminal. */
final class TextDiff implements DiffFormat {
  private final Output output;
  private final Palette palette;

  TextDiff(Output output, Palette palette) {
    this.output = output;
    this.palette = palette;
  }

  @Override
  public void print(Review review) {
    printFiles(review);
    output.lines(wrap("", "", DiffWords.summary(review)));
  }

  /** The files without what they come to. */
  void printFiles(Review review) {
    for (PlanDiff diff : review.diffs()) {
      wrap("", "    ", DiffWords.file(diff)).forEach(line -> output.line(palette.strong(line)));
      diff.groups().forEach(this::print);
      if (!diff.findings().isEmpty()) {
        output.line("  Findings");
        diff.findings().forEach(this::print);
      }
      output.line("");
    }
  }

  private void print(Group group) {
    output.lines(wrap("  ", "    ", group.heading()));
    group.changes().forEach(this::print);
  }

  private void print(Change change) {
    boolean sole =
        change.details().size() == 1
            && change.details().get(0).label().isEmpty()
            && change.verb() == Change.Verb.CHANGED;
    String words = change.subject() + DiffWords.line(change);
    if (sole) {
      Change.Detail only = change.details().get(0);
      String detail = DiffWords.detail(only, "->") + worked(only);
      output.lines(wrap("    " + mark(change) + " ", "        ", words + ": " + detail));
      return;
    }
    output.lines(wrap("    " + mark(change) + " ", "        ", words));
    for (Change.Detail detail : change.details()) {
      boolean whole = change.verb() == Change.Verb.ADDED || change.verb() == Change.Verb.REMOVED;
      String text = whole ? detail.before() + detail.after() : DiffWords.detail(detail, "->");
      output.lines(wrap("        ", "          ", text + worked(detail)));
    }
  }

  private static String worked(Change.Detail detail) {
    return detail.from() == From.WORKED_OUT ? " (follows)" : "";
  }

  private static String mark(Change change) {
    return switch (change.verb()) {
      case ADDED -> "+";
      case REMOVED -> "-";
      case CHANGED -> "~";
      case MOVED -> ">";
    };
  }

  private void print(FindingChange change) {
    String sign = change.kind() == FindingChange.Kind.APPEARED ? "+ " : "- ";
    String place = change.line() > 0 ? " line " + change.line() : " " + change.path();
    output.lines(
        wrap(
            "    " + sign,
            "        ",
            DiffWords.finding(change) + place + ": " + change.finding().message()));
  }

  private java.util.List<String> wrap(String first, String next, String text) {
    return Wrapping.wrap(first, next, output.glyphs().show(text), output.width());
  }
}
