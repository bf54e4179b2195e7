package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Action.Choice;
import org.handwheel.ide.actions.Action.Kind;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.TextEdit;

/** What can mend the findings on some lines. */
public final class Fixes {
  private static final Set<String> NOT_IGNORED =
      Set.of("syntax", "unused-ignore", "ignore-reason", "language-level");

  /** Rules of whose mendings none goes before the others: what was meant is not known. */
  private static final Set<String> UNCERTAIN =
      Set.of(
          "no-units",
          "ignore-reason",
          "unit-suspect",
          "repeated-line",
          "repeated-clause",
          "travel-direction");

  private final View view;
  private final FileText text;

  private Fixes(View view) {
    this.view = view;
    this.text = new FileText(view);
  }

  /** The mendings for the findings on the lines from one offset to another. */
  public static List<Action> at(View view, int start, int end) {
    if (LanguageLevel.isTooNew(view.tree())) {
      return List.of();
    }
    SourceText source = view.tree().source();
    int first = source.lineAt(start);
    int last = source.lineAt(Math.max(start, end));
    Fixes fixes = new Fixes(view);
    List<Action> actions = new ArrayList<>();
    List<Action> ignores = new ArrayList<>();
    for (Finding finding : view.checked().findings()) {
      if (!view.tree().contains(finding.origin())) {
        continue;
      }
      int from = view.tree().line(finding.origin());
      int to = source.lineAt(view.tree().end(finding.origin()));
      if (from <= last && to >= first) {
        actions.addAll(fixes.of(finding));
        fixes.ignore(finding).ifPresent(ignores::add);
      }
    }
    actions.addAll(ignores);
    return List.copyOf(actions);
  }

  /** The mendings for one finding, the best first; without the one that only silences it. */
  public static List<Action> of(View view, Finding finding) {
    return LanguageLevel.isTooNew(view.tree()) ? List.of() : new Fixes(view).of(finding);
  }

  private List<Action> of(Finding finding) {
    Map<String, List<TextEdit>> candidates = new LinkedHashMap<>();
    for (Fix fix : finding.fixes()) {
      text.of(fix).ifPresent(edits -> candidates.put(fix.title(), edits));
    }
    candidates.putAll(new RuleFixes(view, text).of(finding));
    List<Action> actions = new ArrayList<>();
    candidates.forEach(
        (title, edits) -> {
          if (Trial.mends(view, finding, edits)) {
            Choice choice =
                actions.isEmpty() && isCertain(finding) ? Choice.PREFERRED : Choice.POSSIBLE;
            actions.add(new Action(title, Kind.FIX, choice, finding, edits, ""));
          }
        });
    return actions;
  }

  /** Whether the first mending is the one to take; of two units neither is. */
  private static boolean isCertain(Finding finding) {
    return !UNCERTAIN.contains(finding.rule());
  }

  /** Silencing it with a comment, whose reason is to be written. */
  private Optional<Action> ignore(Finding finding) {
    if (NOT_IGNORED.contains(finding.rule())) {
      return Optional.empty();
    }
    SourceText source = text.source();
    int line = view.tree().line(finding.origin());
    String comment = "# ignore " + finding.rule() + ": reason";
    boolean commented = source.line(line).contains("#");
    boolean joined = source.line(line).stripTrailing().endsWith("\\");
    TextEdit edit =
        commented || joined
            ? text.lineBefore(finding.origin(), comment)
            : new TextEdit(source.lineEnd(line), source.lineEnd(line), "  " + comment);
    if (!Trial.mends(view, finding, List.of(edit))) {
      return Optional.empty();
    }
    return Optional.of(
        new Action(
            "Ignore `" + finding.rule() + "` here, and say why",
            Kind.FIX,
            Choice.POSSIBLE,
            finding,
            List.of(edit),
            ""));
  }

  /**
   * All slips of writing that have one certain mending, at once. Decisions about the work are left
   * to the one who does it.
   */
  public static List<TextEdit> all(View view) {
    if (LanguageLevel.isTooNew(view.tree())) {
      return List.of();
    }
    FileText text = new FileText(view);
    List<TextEdit> all = new ArrayList<>();
    Set<Integer> taken = new HashSet<>();
    for (Finding finding : view.checked().findings()) {
      if (finding.fixes().size() != 1 || !view.tree().contains(finding.origin())) {
        continue;
      }
      List<TextEdit> edits = text.of(finding.fixes().get(0)).orElse(List.of());
      boolean free = edits.stream().allMatch(edit -> taken.add(text.source().lineAt(edit.start())));
      if (free && !edits.isEmpty() && Trial.mends(view, finding, edits)) {
        all.addAll(edits);
      }
    }
    return List.copyOf(all);
  }
}
