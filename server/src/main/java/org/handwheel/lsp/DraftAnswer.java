package org.handwheel.lsp;

import java.util.List;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Drafting;
import org.handwheel.lsp.PlanTexts.Question;
import org.handwheel.plan.draft.Drafted;
import org.jspecify.annotations.Nullable;

/**
 * The answer to {@code handwheel/draft}: a change that puts the setups behind the text, or what is
 * missing for them.
 *
 * @param leftOut what of the drawing the setups do not make
 * @param version the version of the text that was drafted
 */
record DraftAnswer(
    @Nullable WorkspaceEdit edit,
    @Nullable List<String> missing,
    List<String> leftOut,
    int version) {

  static DraftAnswer of(Question question, View view) {
    Drafted drafted = Drafting.draft(view, tried -> question.cancel().checkCanceled());
    int version = question.file().version();
    if (drafted instanceof Drafted.Missing none) {
      return new DraftAnswer(null, none.missing(), List.of(), version);
    }
    Drafted.Draft draft = ((Drafted.Plans) drafted).drafts().get(0);
    WorkspaceEdit edit = new ActionAnswers(question, view).edit(Drafting.edits(view, draft));
    return new DraftAnswer(edit, null, draft.leftOut(), version);
  }
}
