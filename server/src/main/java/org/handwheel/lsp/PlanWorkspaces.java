package org.handwheel.lsp;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.handwheel.files.WorkspaceRoot;
import org.jspecify.annotations.Nullable;

/** Folders, files on disk and settings. */
final class PlanWorkspaces implements WorkspaceService {
  private final Session session;
  private final Publisher publisher;
  private final ExecutorService workers;
  private @Nullable LanguageClient client;

  PlanWorkspaces(Session session, Publisher publisher, ExecutorService workers) {
    this.session = session;
    this.publisher = publisher;
    this.workers = workers;
  }

  void connect(LanguageClient languageClient) {
    client = languageClient;
  }

  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {
    session.configure(params.getSettings());
    LanguageClient target = client;
    if (target != null && session.client().refreshesHints()) {
      workers.execute(
          () -> {
            var unused = target.refreshInlayHints();
          });
    }
  }

  @Override
  public CompletableFuture<
          Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
      symbol(WorkspaceSymbolParams params) {
    Snapshot snapshot = session.snapshot();
    ClientFacts facts = session.client();
    Set<WorkspaceRoot> roots = new LinkedHashSet<>(session.roots());
    snapshot.files().forEach(file -> roots.add(file.root()));
    return CompletableFutures.computeAsync(
        workers,
        cancel -> {
          List<WorkspaceSymbol> found = new ArrayList<>();
          for (WorkspaceRoot root : roots) {
            Projects projects = Projects.load(facts, snapshot, root, cancel);
            found.addAll(Navigation.search(projects, params.getQuery()));
          }
          return Either.forRight(found);
        });
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    session.refresh();
    publisher.changed();
    LanguageClient target = client;
    if (target != null && session.client().refreshesDiagnostics()) {
      // Asking back must not hold up the thread that reads the answer.
      workers.execute(
          () -> {
            var unused = target.refreshDiagnostics();
          });
    }
  }

  @Override
  public void didChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams params) {
    params.getEvent().getRemoved().forEach(session::removeFolder);
    params.getEvent().getAdded().forEach(session::addFolder);
    session.refresh();
    publisher.changed();
  }
}
