package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.ExprContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.grammar.HandwheelParser.NameContext;
import org.handwheel.grammar.HandwheelParser.NominalContext;
import org.handwheel.grammar.HandwheelParser.QuantityContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.grammar.HandwheelParser.UseLineContext;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Action.Kind;
import org.handwheel.ide.complete.CutSizes;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Step;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.CutRun;
import org.jspecify.annotations.Nullable;

/** Changes of a plan's text that keep its meaning. */
public final class Rewritings {
  private static final String NOT_KNOWN =
      "how much comes off is not known well enough for a fixed number of passes";
  private static final String CHANGES = "the plan would no longer mean the same";

  private final View view;
  private final FileText text;
  private final int start;
  private final int end;
  private final List<Action> actions = new ArrayList<>();

  private Rewritings(View view, int start, int end) {
    this.view = view;
    this.text = new FileText(view);
    this.start = start;
    this.end = end;
  }

  /** The rewritings of what is selected, or of what the cursor is on. */
  public static List<Action> at(View view, int start, int end) {
    if (view.plan() == null || LanguageLevel.isTooNew(view.tree())) {
      return List.of();
    }
    Rewritings rewritings = new Rewritings(view, Math.min(start, end), Math.max(start, end));
    rewritings.collect();
    return List.copyOf(rewritings.actions);
  }

  private void collect() {
    for (Section section : view.tree().sections()) {
      for (ContentContext line : section.lines()) {
        Origin origin = section.origin(line);
        boolean here =
            view.tree().start(origin) <= start
                && end <= view.tree().end(origin)
                && !section.isBroken(line);
        if (here && line.statement() != null) {
          extract(section, line);
          inline();
          passes(origin);
          new UnitRewriting(view, text).line(section, line).ifPresent(actions::addAll);
        }
        if (here && line.statement() instanceof UnitsLineContext units) {
          actions.addAll(new UnitRewriting(view, text).file(section, units));
        }
      }
    }
  }

  private void offer(String title, Kind kind, List<TextEdit> edits) {
    if (Trial.keepsMeaning(view, edits)) {
      actions.add(Action.rewriting(title, kind, edits));
    } else {
      actions.add(Action.impossible(title, kind, CHANGES));
    }
  }

  // ---- Named values
  // ----------------------------------------------------------------------------------

  private void extract(Section section, ContentContext line) {
    if (line.statement() instanceof LetLineContext
        || line.statement() instanceof UnitsLineContext) {
      return;
    }
    ParseTree found = smallest(section, line);
    if (found == null || found.getText().isEmpty()) {
      return;
    }
    Origin origin = section.origin(found);
    boolean named = hasName(found);
    if (named && found.getChildCount() == 1 && end == start) {
      return; // a name alone is named already
    }
    String name = freeName();
    String declaration = "let " + name + " = " + unbracketed(found, origin.text());
    Optional<Origin> place = named ? Optional.empty() : lastOfHead(section);
    TextEdit let =
        place
            .map(before -> text.lineAfter(before, declaration))
            .orElseGet(() -> text.lineBefore(section.origin(line), declaration));
    offer(
        "Give " + origin.text() + " a name",
        Kind.EXTRACT,
        List.of(let, text.replace(origin, name)));
  }

  private static String unbracketed(ParseTree node, String written) {
    boolean bracketed =
        node instanceof NominalContext && written.startsWith("(") && written.endsWith(")");
    return bracketed ? written.substring(1, written.length() - 1) : written;
  }

  /** The smallest value that holds the selection and that a name may stand for. */
  private @Nullable ParseTree smallest(Section section, ParseTree node) {
    Origin origin = section.origin(node);
    boolean holds =
        view.tree().start(origin) <= start
            && end <= view.tree().end(origin)
            && origin.end() > origin.start();
    if (!holds) {
      return null;
    }
    for (int i = 0; i < node.getChildCount(); i++) {
      ParseTree found = smallest(section, node.getChild(i));
      if (found != null) {
        return found;
      }
    }
    return node instanceof ExprContext || node instanceof NominalContext ? node : null;
  }

  private static boolean hasName(ParseTree node) {
    if (node instanceof NameContext) {
      return true;
    }
    for (int i = 0; i < node.getChildCount(); i++) {
      if (hasName(node.getChild(i))) {
        return true;
      }
    }
    return false;
  }

  /** The last line of the plan's head that values may follow, if that comes before the section. */
  private Optional<Origin> lastOfHead(Section before) {
    Origin last = null;
    for (Section section : view.tree().sections()) {
      if (section == before || section.kind() != SectionKind.PLAN) {
        continue;
      }
      if (view.tree().base(section) > view.tree().base(before)) {
        break;
      }
      for (ContentContext line : section.lines()) {
        boolean head =
            line.statement() instanceof UnitsLineContext
                || line.statement() instanceof UseLineContext
                || line.statement() instanceof LetLineContext;
        if (head) {
          last = section.origin(line);
        }
      }
    }
    return Optional.ofNullable(last);
  }

  private String freeName() {
    Set<String> taken = new HashSet<>();
    for (Declaration declaration : names().declarations()) {
      taken.add(declaration.name().toLowerCase(Locale.ROOT));
    }
    String name = "value";
    for (int i = 2; taken.contains(name); i++) {
      name = "value" + i;
    }
    return name;
  }

  private Names names() {
    return view.plan() == null ? new Names(List.of(), List.of()) : view.plan().names();
  }

  private void inline() {
    for (Declaration declaration : names().declarations()) {
      if (declaration.kind() != Names.Kind.VALUE || !view.tree().contains(declaration.origin())) {
        continue;
      }
      List<Origin> uses =
          names().uses().stream()
              .filter(use -> use.declaration().equals(declaration))
              .map(Names.Use::origin)
              .filter(view.tree()::contains)
              .toList();
      boolean here = covers(declaration.origin()) || uses.stream().anyMatch(this::covers);
      if (here && !uses.isEmpty()) {
        inline(declaration, uses);
      }
    }
  }

  private boolean covers(Origin origin) {
    return view.tree().start(origin) <= start && end <= view.tree().end(origin);
  }

  private void inline(Declaration declaration, List<Origin> uses) {
    Section section = declaration.origin().section();
    for (ContentContext line : section.lines()) {
      if (!(line.statement() instanceof LetLineContext let)
          || let.name() == null
          || !section.origin(let.name()).equals(declaration.origin())) {
        continue;
      }
      String value = section.origin(let.expr()).text();
      List<TextEdit> edits = new ArrayList<>();
      edits.add(text.removeLines(section.origin(line)));
      for (Origin use : uses) {
        boolean divides = isDivisor(use);
        boolean plain = isOneNumber(let.expr()) && !divides;
        edits.add(text.replace(use, plain ? value : "(" + value + ")"));
      }
      offer("Write the value of " + declaration.name() + " where it is used", Kind.INLINE, edits);
    }
  }

  private boolean isDivisor(Origin use) {
    int at = view.tree().start(use) - 1;
    String all = text.source().text();
    while (at >= 0 && all.charAt(at) == ' ') {
      at--;
    }
    return at >= 0 && all.charAt(at) == '/';
  }

  private static boolean isOneNumber(ExprContext expr) {
    ParseTree at = expr;
    while (at.getChildCount() == 1) {
      at = at.getChild(0);
      if (at instanceof QuantityContext) {
        return true;
      }
    }
    return at instanceof QuantityContext;
  }

  // ---- Passes
  // ----------------------------------------------------------------------------------------

  /** {@code pass 0.5} as so many passes of a depth, and back. */
  private void passes(Origin line) {
    Optional<CutRun> found =
        view.run() == null
            ? Optional.empty()
            : view.run().cuts().filter(cut -> cut.cut().origin().equals(line)).findFirst();
    if (found.isEmpty()) {
      return;
    }
    CutRun cut = found.get();
    Situation now = Situation.at(view, line.section(), line.start());
    CutSizes sizes = new CutSizes(now);
    Length removal = cut.removal().high();
    Passes passes = passes(cut.cut().purpose());
    if (!removal.isPositive() || passes == null) {
      return;
    }
    if (passes instanceof Passes.EachAtMost each && each.depth().isPositive()) {
      Length usual = cut.removal().middle();
      long count = CutSizes.passes(usual, each.depth());
      String depth = now.number(sizes.evenPass(usual, each.depth()));
      String clause = count == 1 ? "one pass" : "by " + count + " passes of " + depth;
      add("Count the passes: " + clause, clause, passes);
    } else if (passes instanceof Passes.Counted counted) {
      String clause = "pass " + now.number(counted.depth());
      add("Give only the depth: " + clause, clause, passes);
    }
  }

  private static @Nullable Passes passes(Purpose purpose) {
    if (purpose instanceof Step.Purpose.Rough rough) {
      return rough.passes();
    }
    return purpose instanceof Step.Purpose.Finish finish ? finish.passes() : null;
  }

  /** Offered only if nothing more is found afterwards. */
  private void add(String title, String clause, Passes passes) {
    List<TextEdit> edits = List.of(text.replace(passes.origin(), clause));
    boolean sound =
        Trial.after(view, edits).findings().size() <= view.checked().findings().size()
            && passes.origin().text().matches("(?is)(pass|by|one)\\b.*");
    actions.add(
        sound
            ? Action.rewriting(title, Kind.REWRITE, edits)
            : Action.impossible(title, Kind.REWRITE, NOT_KNOWN));
  }

  static String unitWords(LengthUnit unit) {
    return unit == LengthUnit.MM ? "millimetres" : "inches";
  }
}
