package org.handwheel.ide.actions;

import java.util.List;
import org.handwheel.ide.View;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;

/**
 * A file in the one form that all files share that say the same: its usual layout, and a plan's
 * lengths as bare numbers of millimetres. It is for comparing, not for keeping.
 */
public final class PlainForm {
  private PlainForm() {}

  /** The form of a file, read without the files it uses. Lengths stay where they might change. */
  public static String of(SyntaxTree tree) {
    if (Checker.isShop(tree) || LanguageLevel.isTooNew(tree)) {
      return Formatter.format(tree);
    }
    Workspace workspace = Workspace.of(tree);
    StandardTables tables = StandardTables.builtIn();
    View view = new View(workspace, new Checker(tables).check(workspace, tree.path()), tables);
    List<TextEdit> edits = new UnitRewriting(view, new FileText(view)).allInMillimetres();
    return Formatter.format(
        Trial.keepsMeaning(view, edits)
            ? tree.update(TextEdit.apply(tree.source().text(), edits))
            : tree);
  }
}
