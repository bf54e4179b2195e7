package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.handwheel.ide.UsePaths;
import org.handwheel.ide.View;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.TextEdit;

/** Tidying what a file declares, without changing what it means. */
public final class Organizing {
  private Organizing() {}

  /**
   * Takes away the lines that use a file a second time and those of values that nothing uses. The
   * order of {@code use} lines stays, for the first to own a name wins. Empty if there is nothing
   * to tidy, or if the plan would not mean the same afterwards.
   */
  public static List<TextEdit> edits(View view) {
    if (LanguageLevel.isTooNew(view.tree())) {
      return List.of();
    }
    FileText text = new FileText(view);
    List<Origin> surplus = new ArrayList<>(repeatedUses(view));
    view.checked().findings().stream()
        .filter(finding -> finding.rule().equals("unused-name"))
        .map(Finding::origin)
        .filter(view.tree()::contains)
        .forEach(surplus::add);
    Set<Integer> lines = new TreeSet<>();
    List<TextEdit> edits =
        surplus.stream()
            .filter(origin -> lines.add(view.tree().line(origin)))
            .map(text::removeLines)
            .toList();
    return !edits.isEmpty() && Trial.keepsMeaning(view, edits) ? edits : List.of();
  }

  private static List<Origin> repeatedUses(View view) {
    Set<String> seen = new HashSet<>();
    return UsePaths.of(view.tree()).stream()
        .filter(used -> used.path() != null && !seen.add(used.path()))
        .map(UsePaths.Used::origin)
        .toList();
  }
}
