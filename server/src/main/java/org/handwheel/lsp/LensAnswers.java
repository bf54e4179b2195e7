package org.handwheel.lsp;

import java.util.List;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.Command;
import org.handwheel.ide.Settings;
import org.handwheel.ide.SetupSummary;
import org.handwheel.ide.View;
import org.handwheel.lsp.PlanTexts.Question;

/** Lines over setups in the words of the protocol. */
final class LensAnswers {
  private LensAnswers() {}

  static List<CodeLens> lenses(Question question, View view, Settings settings) {
    if (settings.lens() == Settings.Lens.HIDDEN) {
      return List.of();
    }
    ToProtocol toProtocol = question.toProtocol(view);
    // A command without a name is a text that does nothing when it is clicked.
    return SetupSummary.lenses(view).stream()
        .map(
            lens ->
                new CodeLens(
                    toProtocol.range(lens.start(), lens.end()),
                    new Command(lens.label(), ""),
                    null))
        .toList();
  }
}
