package org.handwheel.lsp;

import java.util.concurrent.ExecutorService;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.WorkspaceService;
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
    // There are no settings yet.
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
