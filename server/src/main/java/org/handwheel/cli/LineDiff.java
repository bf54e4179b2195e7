package org.handwheel.cli;

import com.github.difflib.DiffUtils;
import com.github.difflib.UnifiedDiffUtils;
import java.util.List;

/** What changes between two texts, as a unified diff (POSIX {@code diff -u}). */
final class LineDiff {
  private static final int CONTEXT = 3;

  private LineDiff() {}

  /** The diff of a file before and after; only changed line ends do not show in it. */
  static List<String> of(String name, String before, String after) {
    List<String> old = before.lines().toList();
    List<String> lines =
        UnifiedDiffUtils.generateUnifiedDiff(
            name, name, old, DiffUtils.diff(old, after.lines().toList()), CONTEXT);
    return lines.isEmpty() ? List.of(name + ": only line ends change") : lines;
  }
}
