package org.handwheel.lsp;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentRangesFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RelatedFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextDocumentPositionParams;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.CancelChecker;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.handwheel.ide.Hovers;
import org.handwheel.ide.References.Listing;
import org.handwheel.ide.RulePages;
import org.handwheel.ide.View;

/** Texts: opening, changing and closing them, and what an editor asks about them. */
final class PlanTexts implements TextDocumentService {
  private static final RulePages PAGES = new PackedPages();
  private static final Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior> NOWHERE =
      Either3.forThird(new PrepareRenameDefaultBehavior(false));

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
    // The text of an open file counts, not what is on disk; yet settings may be saved, too.
    if (!session.client().registersWatchers()) {
      session.settings().forget();
    }
  }

  /** A question about an open file: the state it is asked of, and a way to give up. */
  record Question(Snapshot snapshot, OpenFile file, ClientFacts client, CancelChecker cancel) {
    View view() {
      cancel.checkCanceled();
      View view = snapshot.view(file);
      cancel.checkCanceled();
      return view;
    }

    /** The offset of a position in the file asked about. */
    int offset(Position position) {
      if (position == null) {
        throw new ResponseErrorException(
            new ResponseError(ResponseErrorCode.InvalidParams, "a position is missing", null));
      }
      return client.positions().offset(file.tree().source(), position);
    }

    /** The address of a file of the same folder, as the editor names it if it is open. */
    String uri(String path) {
      return snapshot.uri(file.root(), path);
    }

    /** All files of the folder of the file asked about. */
    Projects projects() {
      return Projects.load(client, snapshot, file.root(), cancel);
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
    return answerFromText(uri, none, question -> compute.apply(question, question.view()));
  }

  /** Answers what needs no checking of the file, from the state of now, on a worker. */
  private <T> CompletableFuture<T> answerFromText(
      String uri, T none, Function<Question, T> compute) {
    Snapshot snapshot = session.snapshot();
    ClientFacts client = session.client();
    Optional<OpenFile> file = snapshot.file(uri);
    if (file.isEmpty()) {
      return CompletableFuture.completedFuture(none);
    }
    return CompletableFutures.computeAsync(
        workers, cancel -> compute.apply(new Question(snapshot, file.get(), client, cancel)));
  }

  /** Answers from the state of now, on a worker; the protocol's word for no answer is null. */
  @SuppressWarnings("NullAway")
  private <T> CompletableFuture<T> answerIfAny(
      String uri, BiFunction<Question, View, Optional<T>> compute) {
    return answer(uri, null, (question, view) -> compute.apply(question, view).orElse(null));
  }

  @Override
  public CompletableFuture<DocumentDiagnosticReport> diagnostic(DocumentDiagnosticParams params) {
    String uri = params.getTextDocument().getUri();
    DocumentDiagnosticReport none =
        new DocumentDiagnosticReport(new RelatedFullDocumentDiagnosticReport(List.of()));
    return answer(
        uri,
        none,
        (question, view) ->
            DiagnosticReports.ofFile(
                question.toProtocol(view).diagnostics(), params.getPreviousResultId()));
  }

  @Override
  public CompletableFuture<Hover> hover(HoverParams params) {
    return answerIfAny(
        params.getTextDocument().getUri(),
        (question, view) ->
            Hovers.at(view, question.offset(params.getPosition()), PAGES)
                .map(hover -> hover(question, view, hover)));
  }

  private static Hover hover(Question question, View view, Hovers.Hover hover) {
    boolean markdown = question.client().hoverInMarkdown();
    MarkupContent content =
        new MarkupContent(
            markdown ? MarkupKind.MARKDOWN : MarkupKind.PLAINTEXT,
            markdown ? hover.text().markdown() : hover.text().plain());
    return new Hover(content, question.toProtocol(view).range(hover.start(), hover.end()));
  }

  // ---- Names and symbols
  // -------------------------------------------------------------------------

  @Override
  public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>>
      definition(DefinitionParams params) {
    return answer(
        params.getTextDocument().getUri(),
        Either.forLeft(List.of()),
        (question, view) ->
            Navigation.definition(question, view, question.offset(params.getPosition()))
                .orElse(Either.forLeft(List.of())));
  }

  @Override
  public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(
      DocumentHighlightParams params) {
    return answer(
        params.getTextDocument().getUri(),
        List.of(),
        (question, view) ->
            Navigation.highlights(question, view, question.offset(params.getPosition())));
  }

  @Override
  public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
    boolean withDeclaration =
        params.getContext() != null && params.getContext().isIncludeDeclaration();
    Listing listing = withDeclaration ? Listing.WITH_DECLARATION : Listing.USES_ONLY;
    return answerFromText(
        params.getTextDocument().getUri(),
        List.of(),
        question ->
            Navigation.references(question, question.offset(params.getPosition()), listing));
  }

  @Override
  public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>>
      prepareRename(PrepareRenameParams params) {
    return answerFromText(
        params.getTextDocument().getUri(),
        NOWHERE,
        question -> Navigation.prepareRename(question, question.offset(params.getPosition())));
  }

  @Override
  public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
    return answerFromText(
        params.getTextDocument().getUri(),
        new WorkspaceEdit(),
        question ->
            Navigation.rename(
                question, question.offset(params.getPosition()), params.getNewName()));
  }

  @Override
  public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(
      DocumentSymbolParams params) {
    return answerFromText(params.getTextDocument().getUri(), List.of(), Navigation::symbols);
  }

  // ---- Hints
  // ---------------------------------------------------------------------------------------

  @Override
  public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
    return answer(
        params.getTextDocument().getUri(),
        List.of(),
        (question, view) ->
            HintAnswers.hints(
                question,
                view,
                session.settings().of(question.file().root()).hints(),
                question.offset(params.getRange().getStart()),
                question.offset(params.getRange().getEnd())));
  }

  @Override
  public CompletableFuture<List<? extends CodeLens>> codeLens(CodeLensParams params) {
    return answer(
        params.getTextDocument().getUri(),
        List.of(),
        (question, view) ->
            LensAnswers.lenses(question, view, session.settings().of(question.file().root())));
  }

  // ---- How a text looks
  // ----------------------------------------------------------------------------

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
    return answer(
        params.getTextDocument().getUri(),
        new SemanticTokens(List.of()),
        (question, view) ->
            Shapes.tokens(question, view, 0, question.file().tree().source().length()));
  }

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensRange(SemanticTokensRangeParams params) {
    return answer(
        params.getTextDocument().getUri(),
        new SemanticTokens(List.of()),
        (question, view) ->
            Shapes.tokens(
                question,
                view,
                question.offset(params.getRange().getStart()),
                question.offset(params.getRange().getEnd())));
  }

  @Override
  public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
    return answerFromText(params.getTextDocument().getUri(), List.of(), Shapes::folds);
  }

  @Override
  public CompletableFuture<List<SelectionRange>> selectionRange(SelectionRangeParams params) {
    return answerFromText(
        params.getTextDocument().getUri(),
        List.of(),
        question ->
            params.getPositions().stream()
                .map(position -> Shapes.selection(question, question.offset(position)))
                .toList());
  }

  @Override
  public CompletableFuture<List<DocumentLink>> documentLink(DocumentLinkParams params) {
    return answerFromText(params.getTextDocument().getUri(), List.of(), Shapes::links);
  }

  @Override
  public CompletableFuture<SignatureHelp> signatureHelp(SignatureHelpParams params) {
    return answerIfAny(
        params.getTextDocument().getUri(),
        (question, view) -> Shapes.signature(question, question.offset(params.getPosition())));
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
  public CompletableFuture<List<? extends TextEdit>> rangesFormatting(
      DocumentRangesFormattingParams params) {
    return format(params.getTextDocument().getUri(), answers -> answers.ranges(params.getRanges()));
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
            Either.forRight(new CompletionAnswers(question, view).at(params.getPosition())));
  }

  @Override
  public CompletableFuture<CompletionItem> resolveCompletionItem(CompletionItem item) {
    return answer(
        CompletionAnswers.uri(item),
        item,
        (question, view) -> new CompletionAnswers(question, view).resolved(item));
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

  // ---- Pictures
  // ----------------------------------------------------------------------------------------

  /** The request {@code handwheel/picture}: the setup at a place, drawn. */
  CompletableFuture<PictureAnswer> picture(TextDocumentPositionParams params) {
    return answerIfAny(
        params.getTextDocument().getUri(),
        (question, view) ->
            PictureAnswer.at(
                question,
                view,
                question.offset(params.getPosition()),
                session.settings().project(question.file().root())));
  }

  /** The request {@code handwheel/draft}: the setups of a plan that has none. */
  CompletableFuture<DraftAnswer> draft(DraftParams params) {
    if (params.textDocument() == null) {
      throw new ResponseErrorException(
          new ResponseError(ResponseErrorCode.InvalidParams, "a text document is missing", null));
    }
    return answerIfAny(
        params.textDocument().getUri(),
        (question, view) -> Optional.of(DraftAnswer.of(question, view)));
  }

  /** The request {@code handwheel/sheet}: a plan as a sheet for the machine. */
  CompletableFuture<SheetAnswer> sheet(SheetParams params) {
    if (params.textDocument() == null) {
      throw new ResponseErrorException(
          new ResponseError(ResponseErrorCode.InvalidParams, "a text document is missing", null));
    }
    return answerIfAny(
        params.textDocument().getUri(),
        (question, view) ->
            SheetAnswer.of(question, view, session.settings().project(question.file().root())));
  }
}
