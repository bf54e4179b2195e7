package org.handwheel.lsp;

import java.util.Optional;
import org.handwheel.ide.ProjectSettings;
import org.handwheel.ide.View;
import org.handwheel.lsp.PlanTexts.Question;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.SheetLook;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.units.UnitChoice;

/**
 * The answer to {@code handwheel/sheet}.
 *
 * @param html the whole file, without script and with nothing from outside
 * @param version the version of the text it is made of
 */
record SheetAnswer(String html, String title, int version) {
  /** Nothing for a shop and for a plan that cannot be worked through. */
  static Optional<SheetAnswer> of(Question question, View view, ProjectSettings settings) {
    if (view.run() == null) {
      return Optional.empty();
    }
    Projection projection = settings.projection().orElse(Projection.FIRST);
    Sheet sheet = new Sheets(view.tables(), projection).sheet(view.checked(), null);
    return Optional.of(
        new SheetAnswer(
            HtmlSheet.of(sheet, new SheetLook(settings.paper().orElse(null), UnitChoice.BOTH)),
            HtmlSheet.title(sheet),
            question.file().version()));
  }
}
