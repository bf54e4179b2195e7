package org.handwheel.rules;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.syntax.Severity;

/** All rules, in the order their findings are made. */
public final class Rules {
  private Rules() {}

  public static List<Rule> all() {
    return List.of();
  }

  /** Every id that a finding can have, with its usual severity, in alphabetical order. */
  public static Map<String, Severity> severities() {
    Map<String, Severity> severities = new TreeMap<>(FindingRules.all());
    all().forEach(rule -> severities.put(rule.id(), rule.severity()));
    return severities;
  }
}
