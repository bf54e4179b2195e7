package org.handwheel.cli;

import java.nio.file.Path;
import java.util.List;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;

/** Picks the findings of a file that are to be reported. */
@FunctionalInterface
interface NewFindings {
  /** All of them. */
  NewFindings ALL = (file, checked) -> checked.findings();

  List<Finding> of(Path file, Checked checked);
}
