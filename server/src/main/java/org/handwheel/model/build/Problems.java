package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;

/** Collects what the builder finds wrong; ids are those of the rule pages. */
final class Problems {
  private final List<Finding> findings = new ArrayList<>();

  void add(Finding finding) {
    findings.add(finding);
  }

  void error(String rule, Origin origin, String message) {
    add(new Finding(rule, Severity.ERROR, origin, message));
  }

  void warning(String rule, Origin origin, String message) {
    add(new Finding(rule, Severity.WARNING, origin, message));
  }

  /** Something given a second time; points to the first. */
  void repeated(String rule, Origin origin, String message, Origin first) {
    add(
        new Finding(
            rule,
            Severity.ERROR,
            origin,
            message,
            List.of(new Related(first, "first here")),
            List.of()));
  }

  int count() {
    return findings.size();
  }

  /** What was found after the first so many. */
  List<Finding> from(int first) {
    return List.copyOf(findings.subList(first, findings.size()));
  }

  void addAll(List<Finding> more) {
    findings.addAll(more);
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }
}
