package org.handwheel.syntax;

/** How much a finding weighs; OFF is only a setting, no finding carries it. */
public enum Severity {
  ERROR,
  WARNING,
  INFO,
  OFF
}
