package org.handwheel.rules;

import java.util.List;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;

/** A rule with an id and a severity, and the making of its findings. */
public abstract class SimpleRule implements Rule {
  private final String id;
  private final Severity severity;

  protected SimpleRule(String id, Severity severity) {
    this.id = id;
    this.severity = severity;
  }

  @Override
  public final String id() {
    return id;
  }

  @Override
  public final Severity severity() {
    return severity;
  }

  protected final Finding finding(Origin origin, String message, Related... related) {
    return finding(severity, origin, message, related);
  }

  /** A finding of another weight than usual, where a case is certain or merely doubtful. */
  protected final Finding finding(
      Severity weight, Origin origin, String message, Related... related) {
    return new Finding(id, weight, origin, message, List.of(related), List.of());
  }
}
