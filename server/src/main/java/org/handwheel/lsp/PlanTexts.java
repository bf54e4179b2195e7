package org.handwheel.lsp;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.RelatedFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.RelatedUnchangedDocumentDiagnosticReport;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.CancelChecker;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.handwheel.ide.View;

/** Texts: opening, changing and closing them, and what an editor asks about them. */
final class PlanTexts implements TextDocumentService {
  private final Session session;
  private final Publisher publisher;
  private final ExecutorService workers;

  PlanTexts(Session session, Publisher publisher, ExecutorService workers) {
    this.session = session;
    this.publisher = publisher;
    this.workers = workers;
  }

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    TextDocumentItem item = params.getTextDocument();
    session.open(item.getUri(), item.getLanguageId(), item.getVersion(), item.getText());
    publisher.changed();
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    try {
      session.change(uri, params.getTextDocument().getVersion(), params.getContentChanges());
    } catch (RuntimeException e) {
      // A change that could not be applied leaves a text that is not the editor's: drop it.
      session.close(uri);
      publisher.closed(uri);
      throw e;
    }
    publisher.changed();
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    if (session.close(uri).isPresent()) {
      publisher.closed(uri);
      publisher.changed();
    }
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    // The text of an open file counts, not what is on disk.
  }

  /** A question about an open file: the state it is asked of, and a way to give up. */
  record Question(Snapshot snapshot, OpenFile file, ClientFacts client, CancelChecker cancel) {
    View view() {
      cancel.checkCanceled();
      View view = snapshot.view(file);
      cancel.checkCanceled();
      return view;
    }

    ToProtocol toProtocol(View view) {
      return new ToProtocol(client, snapshot, file, view);
    }
  }

  /**
   * Answers from the state of now, on a worker.
   *
   * @param none the answer for a file that is not open
   */
  private <T> CompletableFuture<T> answer(
      String uri, T none, BiFunction<Question, View, T> compute) {
    Snapshot snapshot = session.snapshot();
    ClientFacts client = session.client();
    Optional<OpenFile> file = snapshot.file(uri);
    if (file.isEmpty()) {
      return CompletableFuture.completedFuture(none);
    }
    return CompletableFutures.computeAsync(
        workers,
        cancel -> {
          Question question = new Question(snapshot, file.get(), client, cancel);
          return compute.apply(question, question.view());
        });
  }

  @Override
  public CompletableFuture<DocumentDiagnosticReport> diagnostic(DocumentDiagnosticParams params) {
    String uri = params.getTextDocument().getUri();
    DocumentDiagnosticReport none =
        new DocumentDiagnosticReport(new RelatedFullDocumentDiagnosticReport(List.of()));
    return answer(
        uri,
        none,
        (question, view) -> {
          List<Diagnostic> diagnostics = question.toProtocol(view).diagnostics();
          String result = Integer.toHexString(diagnostics.hashCode());
          if (result.equals(params.getPreviousResultId())) {
            return new DocumentDiagnosticReport(
                new RelatedUnchangedDocumentDiagnosticReport(result));
          }
          RelatedFullDocumentDiagnosticReport report =
              new RelatedFullDocumentDiagnosticReport(diagnostics);
          report.setResultId(result);
          return new DocumentDiagnosticReport(report);
        });
  }

  // ---- Formatting and proposals
  // ------------------------------------------------------------------------

  @Override
  public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
    return format(params.getTextDocument().getUri(), FormatAnswers::whole);
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> rangeFormatting(
      DocumentRangeFormattingParams params) {
    return format(params.getTextDocument().getUri(), answers -> answers.range(params.getRange()));
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> onTypeFormatting(
      DocumentOnTypeFormattingParams params) {
    return format(
        params.getTextDocument().getUri(), answers -> answers.onNewLine(params.getPosition()));
  }

  /** Formatting needs the text alone, not the plan worked through. */
  private CompletableFuture<List<? extends TextEdit>> format(
      String uri, Function<FormatAnswers, List<TextEdit>> compute) {
    Optional<OpenFile> file = session.snapshot().file(uri);
    Positions positions = session.client().positions();
    if (file.isEmpty()) {
      return CompletableFuture.completedFuture(List.of());
    }
    return CompletableFutures.computeAsync(
        workers, cancel -> compute.apply(new FormatAnswers(positions, file.get().tree())));
  }

  @Override
  public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(
      CompletionParams params) {
    String uri = params.getTextDocument().getUri();
    return answer(
        uri,
        Either.forLeft(List.of()),
        (question, view) ->
            Either.forRight(
                new CompletionAnswers(question.client(), view, uri).at(params.getPosition())));
  }

  @Override
  public CompletableFuture<CompletionItem> resolveCompletionItem(CompletionItem item) {
    return answer(
        CompletionAnswers.uri(item),
        item,
        (question, view) ->
            new CompletionAnswers(question.client(), view, CompletionAnswers.uri(item))
                .resolved(item));
  }

  // ---- Changes to offer
  // --------------------------------------------------------------------------------

  @Override
  public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
    return answer(
        params.getTextDocument().getUri(),
        List.of(),
        (question, view) -> new ActionAnswers(question, view).at(params));
  }

  @Override
  public CompletableFuture<CodeAction> resolveCodeAction(CodeAction action) {
    return answer(
        ActionAnswers.uri(action),
        action,
        (question, view) -> new ActionAnswers(question, view).resolved(action));
  }
}
