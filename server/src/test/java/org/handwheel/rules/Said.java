package org.handwheel.rules;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Edit;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;

/**
 * Findings in full, for tests that compare them one to one with a text: the weight, the rule, the
 * text it is found at and the message, then the lines it refers to and the changes it offers.
 *
 * <pre>
 * error overcut at `finish top to 20.90`: the message
 *   see `height 21.00`: how that line has to do with it
 *   change: its title: `new text` for `old text`
 * </pre>
 */
final class Said {
  private Said() {}

  /** Findings of the rule. */
  static String of(Checked checked, String rule) {
    return of(checked.findings().stream().filter(finding -> finding.rule().equals(rule)).toList());
  }

  static String of(List<Finding> findings) {
    return findings.stream().map(Said::of).collect(Collectors.joining());
  }

  private static String of(Finding finding) {
    StringBuilder words = new StringBuilder();
    words
        .append(finding.severity().name().toLowerCase(Locale.ROOT))
        .append(' ')
        .append(finding.rule())
        .append(" at `")
        .append(finding.origin().text())
        .append("`: ")
        .append(finding.message())
        .append('\n');
    for (Related related : finding.related()) {
      words.append("  see `").append(firstLine(related)).append("`: ");
      words.append(related.message()).append('\n');
    }
    for (Fix fix : finding.fixes()) {
      words.append("  change: ").append(fix.title()).append(": ");
      words.append(fix.edits().stream().map(Said::of).collect(Collectors.joining(", ")));
      words.append('\n');
    }
    return words.toString();
  }

  /** A thing of the shop is named by its first line. */
  private static String firstLine(Related related) {
    return related.origin().text().lines().findFirst().orElse("").strip();
  }

  private static String of(Edit edit) {
    return "`" + edit.text() + "` for `" + edit.origin().text() + "`";
  }
}
