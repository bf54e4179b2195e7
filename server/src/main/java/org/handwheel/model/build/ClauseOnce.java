package org.handwheel.model.build;

import java.util.HashMap;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.syntax.Section;

/** Reports a clause that its statement already has. */
final class ClauseOnce {
  private final FileBuilder file;
  private final Section section;
  private final Map<Class<?>, ParserRuleContext> seen = new HashMap<>();

  ClauseOnce(FileBuilder file, Section section) {
    this.file = file;
    this.section = section;
  }

  /** Whether this clause is the first of its kind; a repeated one is reported. */
  boolean check(ParserRuleContext clause) {
    ParserRuleContext before = seen.putIfAbsent(clause.getClass(), clause);
    if (before == null) {
      return true;
    }
    file.problems()
        .repeated(
            "repeated-clause",
            section.origin(clause),
            "`" + clause.getStart().getText() + "` is given twice",
            section.origin(before));
    return false;
  }
}
