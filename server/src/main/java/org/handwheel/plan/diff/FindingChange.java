package org.handwheel.plan.diff;

import org.handwheel.syntax.Finding;

/**
 * A finding that is on one side only.
 *
 * @param kind whether it appeared or vanished
 * @param path the file it is in, as the side that has it calls it
 * @param line the line it is on there, from 1; 0 if it is not known
 */
public record FindingChange(Kind kind, Finding finding, String path, int line) {
  /** On which side it is. */
  public enum Kind {
    APPEARED,
    VANISHED
  }
}
