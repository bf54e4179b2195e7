package org.handwheel.cli;

import java.util.List;
import org.handwheel.plan.diff.Change;
import org.handwheel.plan.diff.FindingChange;
import org.handwheel.plan.diff.PlanDiff;
import org.jspecify.annotations.Nullable;

/** A review for programs. The form is versioned: within a version keys are only added. */
final class JsonDiff implements DiffFormat {
  private static final int VERSION = 1;

  private final Output output;

  JsonDiff(Output output) {
    this.output = output;
  }

  @Override
  public void print(Review review) {
    output.line(
        Json.of(
            new Root(
                VERSION,
                review.compared(),
                review.unreadable().entrySet().stream()
                    .map(entry -> new Unreadable(entry.getKey(), entry.getValue()))
                    .toList(),
                review.diffs().stream().map(JsonDiff::file).toList())));
  }

  private static File file(PlanDiff diff) {
    return new File(
        DiffWords.word(diff.status()),
        orNull(diff.before()),
        orNull(diff.after()),
        orNull(diff.title()),
        diff.groups().stream()
            .map(
                group ->
                    new Group(
                        group.heading(), group.changes().stream().map(JsonDiff::change).toList()))
            .toList(),
        diff.findings().stream().map(JsonDiff::finding).toList());
  }

  private static JsonChange change(Change change) {
    return new JsonChange(
        DiffWords.word(change.verb()),
        DiffWords.word(change.area()),
        change.subject(),
        change.lineBefore() == 0 ? null : change.lineBefore(),
        change.lineAfter() == 0 ? null : change.lineAfter(),
        change.details().stream()
            .map(
                detail ->
                    new Detail(
                        orNull(detail.label()),
                        orNull(detail.before()),
                        orNull(detail.after()),
                        DiffWords.word(detail.from())))
            .toList());
  }

  private static Finding finding(FindingChange change) {
    return new Finding(
        DiffWords.word(change.kind()),
        change.finding().rule(),
        TextReport.word(change.finding().severity()),
        change.path(),
        change.line() == 0 ? null : change.line(),
        change.finding().message());
  }

  private static @Nullable String orNull(String text) {
    return text.isEmpty() ? null : text;
  }

  private record Root(int version, int compared, List<Unreadable> unreadable, List<File> files) {}

  private record Unreadable(String path, String reason) {}

  private record File(
      String status,
      @Nullable String before,
      @Nullable String after,
      @Nullable String title,
      List<Group> groups,
      List<Finding> findings) {}

  private record Group(String heading, List<JsonChange> changes) {}

  private record JsonChange(
      String verb,
      String area,
      String subject,
      @Nullable Integer lineBefore,
      @Nullable Integer lineAfter,
      List<Detail> details) {}

  private record Detail(
      @Nullable String label, @Nullable String before, @Nullable String after, String from) {}

  private record Finding(
      String change,
      String rule,
      String severity,
      String path,
      @Nullable Integer line,
      String message) {}
}
