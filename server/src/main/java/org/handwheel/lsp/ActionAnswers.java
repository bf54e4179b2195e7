package org.handwheel.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionDisabled;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SnippetTextEdit;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Action;
import org.handwheel.ide.actions.Drafting;
import org.handwheel.ide.actions.Fixes;
import org.handwheel.ide.actions.Organizing;
import org.handwheel.ide.actions.Rewritings;
import org.handwheel.syntax.SourceText;
import org.jspecify.annotations.Nullable;

/** Changes an editor can offer, in the words of the protocol. */
final class ActionAnswers {
  /** The kind of the action that mends all slips of writing at once. */
  static final String FIX_ALL = CodeActionKind.SourceFixAll + ".handwheel";

  /** The kind of the action that tidies what the file declares. */
  static final String ORGANIZE = CodeActionKind.SourceOrganizeImports + ".handwheel";

  private final PlanTexts.Question question;
  private final View view;

  ActionAnswers(PlanTexts.Question question, View view) {
    this.question = question;
    this.view = view;
  }

  List<Either<Command, CodeAction>> at(CodeActionParams params) {
    List<CodeAction> actions = new ArrayList<>();
    Range range = params.getRange();
    List<String> only = params.getContext() == null ? null : params.getContext().getOnly();
    if (wants(only, CodeActionKind.QuickFix)) {
      for (Action action : Fixes.at(view, offset(range.getStart()), offset(range.getEnd()))) {
        question.cancel().checkCanceled();
        actions.add(action(action, range));
      }
    }
    if (wants(only, CodeActionKind.Refactor)) {
      question.cancel().checkCanceled();
      for (Action action : Rewritings.at(view, offset(range.getStart()), offset(range.getEnd()))) {
        boolean shown = action.obstacle().isEmpty() || question.client().disabledActions();
        if (shown && wants(only, kind(action.kind()))) {
          actions.add(action(action, range));
        }
      }
    }
    // An editor that wants the change at once would wait for it at every move of the cursor.
    boolean atLeisure = question.client().resolvesCodeActions() || only != null;
    if (atLeisure && wants(only, CodeActionKind.RefactorRewrite) && Drafting.isOffered(view)) {
      actions.add(drafting(range));
    }
    // On its own demand only: an editor that lists everything would show it on every line.
    if (only != null && wants(only, FIX_ALL)) {
      source("Mend all slips of writing", FIX_ALL, Fixes.all(view)).ifPresent(actions::add);
    }
    if (only != null && wants(only, ORGANIZE)) {
      source("Remove what is declared but not used", ORGANIZE, Organizing.edits(view))
          .ifPresent(actions::add);
    }
    return actions.stream().map(Either::<Command, CodeAction>forRight).toList();
  }

  /** Whether a kind is one of those asked for; a kind stands for all that begin with it. */
  private static boolean wants(@Nullable List<String> only, String kind) {
    return only == null
        || only.stream()
            .anyMatch(
                asked ->
                    asked.isEmpty()
                        || kind.equals(asked)
                        || kind.startsWith(asked + ".")
                        || (asked.startsWith(kind + ".") && kind.equals(CodeActionKind.Refactor)));
  }

  private int offset(Position position) {
    return question.client().positions().offset(view.tree().source(), position);
  }

  private JsonObject data(Range range) {
    JsonObject data = new JsonObject();
    data.addProperty("uri", question.file().uri());
    data.addProperty("version", question.file().version());
    data.addProperty("start", offset(range.getStart()));
    data.addProperty("end", offset(range.getEnd()));
    return data;
  }

  private CodeAction action(Action action, Range range) {
    CodeAction answer = new CodeAction(action.title());
    answer.setKind(kind(action.kind()));
    if (action.choice() == Action.Choice.PREFERRED) {
      answer.setIsPreferred(true);
    }
    if (action.finding() != null) {
      answer.setDiagnostics(List.of(question.toProtocol(view).diagnostic(action.finding())));
    }
    if (!action.obstacle().isEmpty()) {
      answer.setDisabled(new CodeActionDisabled(action.obstacle()));
    } else if (question.client().resolvesCodeActions()) {
      answer.setData(data(range));
    } else {
      answer.setEdit(edit(action.edits()));
    }
    return answer;
  }

  /** Worked out only when it is chosen, if the editor can wait so long. */
  private CodeAction drafting(Range range) {
    CodeAction answer = new CodeAction(Drafting.TITLE);
    answer.setKind(CodeActionKind.RefactorRewrite);
    if (question.client().resolvesCodeActions()) {
      answer.setData(data(range));
    } else {
      answer.setEdit(edit(draftEdits()));
    }
    return answer;
  }

  private List<org.handwheel.syntax.TextEdit> draftEdits() {
    return Drafting.editsOrReasons(
        view, Drafting.draft(view, tried -> question.cancel().checkCanceled()));
  }

  private static String kind(Action.Kind kind) {
    return switch (kind) {
      case FIX -> CodeActionKind.QuickFix;
      case EXTRACT -> CodeActionKind.RefactorExtract;
      case INLINE -> CodeActionKind.RefactorInline;
      case REWRITE -> CodeActionKind.RefactorRewrite;
    };
  }

  /** A change of the whole file, if there is something to change. */
  private Optional<CodeAction> source(
      String title, String kind, List<org.handwheel.syntax.TextEdit> edits) {
    if (edits.isEmpty()) {
      return Optional.empty();
    }
    CodeAction answer = new CodeAction(title);
    answer.setKind(kind);
    answer.setEdit(edit(edits));
    return Optional.of(answer);
  }

  /**
   * The action with its edit; without one if the text has changed since, so that nothing is changed
   * in the wrong place.
   */
  CodeAction resolved(CodeAction action) {
    boolean same = number(action, "version") == question.file().version();
    if (action.getEdit() != null || !same) {
      return action;
    }
    if (Drafting.TITLE.equals(action.getTitle()) && Drafting.isOffered(view)) {
      action.setEdit(edit(draftEdits()));
      return action;
    }
    int start = number(action, "start");
    int end = number(action, "end");
    List<Action> all = new ArrayList<>(Fixes.at(view, start, end));
    all.addAll(Rewritings.at(view, start, end));
    all.stream()
        .filter(one -> one.title().equals(action.getTitle()) && one.obstacle().isEmpty())
        .findFirst()
        .ifPresent(one -> action.setEdit(edit(one.edits())));
    return action;
  }

  WorkspaceEdit edit(List<org.handwheel.syntax.TextEdit> edits) {
    SourceText source = view.tree().source();
    Positions positions = question.client().positions();
    List<TextEdit> changes =
        edits.stream()
            .map(
                edit ->
                    new TextEdit(positions.range(source, edit.start(), edit.end()), edit.text()))
            .toList();
    String uri = question.file().uri();
    if (!question.client().documentChanges()) {
      return new WorkspaceEdit(Map.of(uri, changes));
    }
    VersionedTextDocumentIdentifier file =
        new VersionedTextDocumentIdentifier(uri, question.file().version());
    TextDocumentEdit document =
        new TextDocumentEdit(
            file, changes.stream().map(Either::<TextEdit, SnippetTextEdit>forLeft).toList());
    return new WorkspaceEdit(List.of(Either.forLeft(document)));
  }

  /** The file an action was offered for; empty if it does not say. */
  static String uri(CodeAction action) {
    return data(action, "uri").map(JsonPrimitive::getAsString).orElse("");
  }

  private static int number(CodeAction action, String name) {
    return data(action, name)
        .filter(JsonPrimitive::isNumber)
        .map(JsonPrimitive::getAsInt)
        .orElse(-1);
  }

  private static Optional<JsonPrimitive> data(CodeAction action, String name) {
    if (!(action.getData() instanceof JsonObject data)) {
      return Optional.empty();
    }
    JsonElement value = data.get(name);
    return value instanceof JsonPrimitive plain ? Optional.of(plain) : Optional.empty();
  }
}
