package org.handwheel.syntax;

import java.util.List;

/**
 * Something found in a plan or shop: the rule, how much it weighs, where, and in what words.
 *
 * @param rule the rule's id in words, such as {@code overcut}
 * @param message one sentence or two with the figures in both units, without a full stop at the end
 * @param related the lines that caused it
 * @param fixes changes that are certain to be right, best first
 */
public record Finding(
    String rule,
    Severity severity,
    Origin origin,
    String message,
    List<Related> related,
    List<Fix> fixes) {
  public Finding {
    related = List.copyOf(related);
    fixes = List.copyOf(fixes);
  }

  public Finding(String rule, Severity severity, Origin origin, String message) {
    this(rule, severity, origin, message, List.of(), List.of());
  }

  /** A line that has to do with it, and how. */
  public record Related(Origin origin, String message) {}

  /** A change of text that mends it. */
  public record Fix(String title, List<Edit> edits) {
    public Fix {
      edits = List.copyOf(edits);
    }

    public static Fix replace(String title, Origin origin, String text) {
      return new Fix(title, List.of(new Edit(origin, text)));
    }
  }

  /** Replaces the text at a place. */
  public record Edit(Origin origin, String text) {}

  public Finding withSeverity(Severity other) {
    return new Finding(rule, other, origin, message, related, fixes);
  }

  public Finding withFix(Fix fix) {
    return new Finding(rule, severity, origin, message, related, List.of(fix));
  }
}
