package org.handwheel.lsp;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionCapabilities;
import org.eclipse.lsp4j.GeneralClientCapabilities;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.PositionEncodingKind;
import org.eclipse.lsp4j.PublishDiagnosticsCapabilities;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.jspecify.annotations.Nullable;

/** What the editor can do, as far as it matters here; read once, when it introduces itself. */
record ClientFacts(
    Positions positions,
    boolean pullsDiagnostics,
    boolean showsRelated,
    boolean showsCodeLinks,
    boolean showsTags,
    boolean keepsData,
    boolean hoverInMarkdown,
    boolean completionInMarkdown,
    boolean snippets,
    boolean resolvesCodeActions,
    boolean documentChanges,
    boolean symbolTrees,
    boolean definitionLinks,
    boolean preparesRename,
    boolean watchesFiles,
    boolean refreshesDiagnostics,
    boolean refreshesHints,
    boolean readsConfiguration,
    boolean registersWatchers,
    boolean lineFoldingOnly,
    boolean completionDetails,
    boolean disabledActions,
    boolean registersConfiguration,
    boolean refreshesLenses,
    boolean collapsedText,
    boolean annotatesChanges,
    boolean insertsOrReplaces,
    boolean adjustsIndentation,
    boolean formatsRanges,
    Set<String> completionDefaults) {

  /** An editor that announces nothing. */
  static final ClientFacts PLAIN = of(new InitializeParams());

  static ClientFacts of(InitializeParams params) {
    ClientCapabilities all =
        Optional.ofNullable(params.getCapabilities()).orElseGet(ClientCapabilities::new);
    TextDocumentClientCapabilities text =
        Optional.ofNullable(all.getTextDocument()).orElseGet(TextDocumentClientCapabilities::new);
    WorkspaceClientCapabilities workspace =
        Optional.ofNullable(all.getWorkspace()).orElseGet(WorkspaceClientCapabilities::new);
    PublishDiagnosticsCapabilities publish =
        Optional.ofNullable(text.getPublishDiagnostics())
            .orElseGet(PublishDiagnosticsCapabilities::new);
    return new ClientFacts(
        positions(all.getGeneral()),
        text.getDiagnostic() != null,
        yes(publish.getRelatedInformation()),
        yes(publish.getCodeDescriptionSupport()),
        publish.getTagSupport() != null,
        yes(publish.getDataSupport()),
        text.getHover() != null && prefersMarkdown(text.getHover().getContentFormat()),
        text.getCompletion() != null
            && text.getCompletion().getCompletionItem() != null
            && prefersMarkdown(text.getCompletion().getCompletionItem().getDocumentationFormat()),
        text.getCompletion() != null
            && text.getCompletion().getCompletionItem() != null
            && yes(text.getCompletion().getCompletionItem().getSnippetSupport()),
        text.getCodeAction() != null
            && text.getCodeAction().getResolveSupport() != null
            && text.getCodeAction().getResolveSupport().getProperties() != null
            && text.getCodeAction().getResolveSupport().getProperties().contains("edit"),
        workspace.getWorkspaceEdit() != null
            && yes(workspace.getWorkspaceEdit().getDocumentChanges()),
        text.getDocumentSymbol() != null
            && yes(text.getDocumentSymbol().getHierarchicalDocumentSymbolSupport()),
        text.getDefinition() != null && yes(text.getDefinition().getLinkSupport()),
        text.getRename() != null && yes(text.getRename().getPrepareSupport()),
        workspace.getDidChangeWatchedFiles() != null,
        workspace.getDiagnostics() != null && yes(workspace.getDiagnostics().getRefreshSupport()),
        workspace.getInlayHint() != null && yes(workspace.getInlayHint().getRefreshSupport()),
        yes(workspace.getConfiguration()),
        workspace.getDidChangeWatchedFiles() != null
            && yes(workspace.getDidChangeWatchedFiles().getDynamicRegistration()),
        text.getFoldingRange() != null && yes(text.getFoldingRange().getLineFoldingOnly()),
        text.getCompletion() != null
            && text.getCompletion().getCompletionItem() != null
            && yes(text.getCompletion().getCompletionItem().getLabelDetailsSupport()),
        text.getCodeAction() != null && yes(text.getCodeAction().getDisabledSupport()),
        workspace.getDidChangeConfiguration() != null
            && yes(workspace.getDidChangeConfiguration().getDynamicRegistration()),
        workspace.getCodeLens() != null && yes(workspace.getCodeLens().getRefreshSupport()),
        text.getFoldingRange() != null
            && text.getFoldingRange().getFoldingRange() != null
            && yes(text.getFoldingRange().getFoldingRange().getCollapsedText()),
        workspace.getWorkspaceEdit() != null
            && yes(workspace.getWorkspaceEdit().getDocumentChanges())
            && workspace.getWorkspaceEdit().getChangeAnnotationSupport() != null,
        text.getCompletion() != null
            && text.getCompletion().getCompletionItem() != null
            && yes(text.getCompletion().getCompletionItem().getInsertReplaceSupport()),
        text.getCompletion() != null
            && text.getCompletion().getCompletionItem() != null
            && text.getCompletion().getCompletionItem().getInsertTextModeSupport() != null
            && text.getCompletion()
                .getCompletionItem()
                .getInsertTextModeSupport()
                .getValueSet()
                .contains(InsertTextMode.AdjustIndentation),
        text.getRangeFormatting() != null && yes(text.getRangeFormatting().getRangesSupport()),
        completionDefaults(text.getCompletion()));
  }

  private static Positions positions(@Nullable GeneralClientCapabilities general) {
    List<String> offered =
        general == null || general.getPositionEncodings() == null
            ? List.of()
            : general.getPositionEncodings();
    // UTF-16 is what the texts are kept in; UTF-8 only for an editor that has nothing else first.
    for (String encoding : offered) {
      if (encoding.equals(PositionEncodingKind.UTF16)) {
        return Positions.UTF16;
      }
      if (encoding.equals(PositionEncodingKind.UTF8)) {
        return Positions.UTF8;
      }
    }
    return Positions.UTF16;
  }

  private static Set<String> completionDefaults(@Nullable CompletionCapabilities completion) {
    return completion == null
            || completion.getCompletionList() == null
            || completion.getCompletionList().getItemDefaults() == null
        ? Set.of()
        : Set.copyOf(completion.getCompletionList().getItemDefaults());
  }

  private static boolean prefersMarkdown(@Nullable List<String> formats) {
    return formats != null && formats.contains(MarkupKind.MARKDOWN);
  }

  private static boolean yes(@Nullable Boolean value) {
    return Boolean.TRUE.equals(value);
  }
}
