package org.handwheel.lsp;

import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CodeLensOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DiagnosticRegistrationOptions;
import org.eclipse.lsp4j.DocumentLinkOptions;
import org.eclipse.lsp4j.DocumentOnTypeFormattingOptions;
import org.eclipse.lsp4j.DocumentRangeFormattingOptions;
import org.eclipse.lsp4j.FileOperationFilter;
import org.eclipse.lsp4j.FileOperationOptions;
import org.eclipse.lsp4j.FileOperationPattern;
import org.eclipse.lsp4j.FileOperationPatternKind;
import org.eclipse.lsp4j.FileOperationsServerCapabilities;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SaveOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.SignatureHelpOptions;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextDocumentSyncOptions;
import org.eclipse.lsp4j.WorkspaceFoldersOptions;
import org.eclipse.lsp4j.WorkspaceServerCapabilities;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** What the server announces to an editor. */
final class Capabilities {
  private Capabilities() {}

  static ServerCapabilities of(ClientFacts client) {
    ServerCapabilities capabilities = new ServerCapabilities();
    capabilities.setPositionEncoding(client.positions().kind());
    TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
    sync.setOpenClose(true);
    sync.setChange(TextDocumentSyncKind.Incremental);
    sync.setSave(Either.forRight(new SaveOptions(false)));
    capabilities.setTextDocumentSync(Either.forRight(sync));
    WorkspaceFoldersOptions folders = new WorkspaceFoldersOptions();
    folders.setSupported(true);
    folders.setChangeNotifications(Either.forRight(true));
    WorkspaceServerCapabilities workspace = new WorkspaceServerCapabilities(folders);
    FileOperationsServerCapabilities files = new FileOperationsServerCapabilities();
    files.setWillRename(
        new FileOperationOptions(
            List.of(
                moved("**/*.{plan,shop}", FileOperationPatternKind.File),
                moved("**", FileOperationPatternKind.Folder))));
    workspace.setFileOperations(files);
    capabilities.setWorkspace(workspace);
    capabilities.setHoverProvider(true);
    capabilities.setDefinitionProvider(true);
    capabilities.setReferencesProvider(true);
    capabilities.setDocumentHighlightProvider(true);
    // Only an editor that asks first may be told that it can.
    capabilities.setRenameProvider(
        client.preparesRename() ? Either.forRight(new RenameOptions(true)) : Either.forLeft(true));
    capabilities.setDocumentSymbolProvider(true);
    capabilities.setWorkspaceSymbolProvider(true);
    capabilities.setInlayHintProvider(true);
    capabilities.setCodeLensProvider(new CodeLensOptions(false));
    capabilities.setSemanticTokensProvider(
        new SemanticTokensWithRegistrationOptions(Shapes.legend(), true, true));
    capabilities.setFoldingRangeProvider(true);
    capabilities.setSelectionRangeProvider(true);
    capabilities.setDocumentLinkProvider(new DocumentLinkOptions(false));
    capabilities.setSignatureHelpProvider(new SignatureHelpOptions(List.of(" ", ",")));
    editing(capabilities, client);
    if (client.pullsDiagnostics()) {
      DiagnosticRegistrationOptions diagnostics = new DiagnosticRegistrationOptions();
      diagnostics.setIdentifier(ToProtocol.SOURCE);
      diagnostics.setInterFileDependencies(true);
      diagnostics.setWorkspaceDiagnostics(true);
      capabilities.setDiagnosticProvider(diagnostics);
    }
    capabilities.setExperimental(
        Map.of("handwheel", Map.of("picture", true, "draft", true, "sheet", true)));
    return capabilities;
  }

  private static FileOperationFilter moved(String glob, String kind) {
    FileOperationPattern pattern = new FileOperationPattern(glob);
    pattern.setMatches(kind);
    return new FileOperationFilter(pattern, "file");
  }

  /** Formatting, proposals and changes to offer. */
  private static void editing(ServerCapabilities capabilities, ClientFacts client) {
    capabilities.setDocumentFormattingProvider(true);
    DocumentRangeFormattingOptions ranges = new DocumentRangeFormattingOptions();
    ranges.setRangesSupport(true);
    // Version 3.18, so only to an editor that knows it.
    capabilities.setDocumentRangeFormattingProvider(
        client.formatsRanges() ? Either.forRight(ranges) : Either.forLeft(true));
    capabilities.setDocumentOnTypeFormattingProvider(new DocumentOnTypeFormattingOptions("\n"));
    CompletionOptions completion = new CompletionOptions(true, List.of(" ", "\"", "#"));
    capabilities.setCompletionProvider(completion);
    CodeActionOptions actions =
        new CodeActionOptions(
            List.of(
                CodeActionKind.QuickFix,
                CodeActionKind.RefactorExtract,
                CodeActionKind.RefactorInline,
                CodeActionKind.RefactorRewrite,
                ActionAnswers.FIX_ALL,
                ActionAnswers.ORGANIZE));
    actions.setResolveProvider(true);
    capabilities.setCodeActionProvider(actions);
  }
}
