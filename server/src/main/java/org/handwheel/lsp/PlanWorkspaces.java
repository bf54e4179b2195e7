package org.handwheel.lsp;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.function.Consumer;
import org.eclipse.lsp4j.ConfigurationItem;
import org.eclipse.lsp4j.ConfigurationParams;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.FileRename;
import org.eclipse.lsp4j.PreviousResultId;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.RenameFilesParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceDiagnosticParams;
import org.eclipse.lsp4j.WorkspaceDiagnosticReport;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.UsePaths;
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
    if (session.client().readsConfiguration()) {
      pullConfiguration();
    } else {
      session.settings().configure(params.getSettings());
      refreshShown();
    }
  }

  /** Asks the editor for its settings; the answer is taken on the thread that reads messages. */
  void pullConfiguration() {
    LanguageClient target = client;
    if (target == null || !session.client().readsConfiguration()) {
      return;
    }
    ConfigurationItem item = new ConfigurationItem();
    item.setSection("handwheel");
    var unused =
        target
            .configuration(new ConfigurationParams(List.of(item)))
            .thenAccept(
                answers -> {
                  if (answers != null && !answers.isEmpty()) {
                    session.settings().configure(answers.get(0));
                    refreshShown();
                  }
                });
  }

  /** Has the editor ask again for what settings change. */
  private void refreshShown() {
    LanguageClient target = client;
    if (target == null) {
      return;
    }
    ClientFacts facts = session.client();
    // Asking back must not hold up the thread that reads the answer.
    workers.execute(
        () -> {
          if (facts.refreshesHints()) {
            var unused = target.refreshInlayHints();
          }
          if (facts.refreshesLenses()) {
            var unused = target.refreshCodeLenses();
          }
        });
  }

  @Override
  public CompletableFuture<
          Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
      symbol(WorkspaceSymbolParams params) {
    Snapshot snapshot = session.snapshot();
    ClientFacts facts = session.client();
    Set<WorkspaceRoot> roots = session.allRoots();
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
  public CompletableFuture<WorkspaceDiagnosticReport> diagnostic(WorkspaceDiagnosticParams params) {
    Snapshot snapshot = session.snapshot();
    ClientFacts facts = session.client();
    List<WorkspaceRoot> roots = session.roots();
    List<PreviousResultId> previous =
        Optional.ofNullable(params.getPreviousResultIds()).orElseGet(List::of);
    Consumer<WorkspaceDiagnosticReport> parts = parts(params.getPartialResultToken());
    return CompletableFutures.computeAsync(
        workers,
        cancel ->
            DiagnosticReports.ofFolders(
                facts, snapshot, roots, session.settings(), previous, parts, cancel));
  }

  /** Sends parts of an answer to an editor that gave a token to send them under. */
  private @Nullable Consumer<WorkspaceDiagnosticReport> parts(
      @Nullable Either<String, Integer> token) {
    LanguageClient target = client;
    return token == null || target == null
        ? null
        : part -> target.notifyProgress(new ProgressParams(token, Either.forRight(part)));
  }

  @Override
  public CompletableFuture<WorkspaceEdit> willRenameFiles(RenameFilesParams params) {
    Snapshot snapshot = session.snapshot();
    ClientFacts facts = session.client();
    Set<WorkspaceRoot> roots = session.allRoots();
    return CompletableFutures.computeAsync(
        workers,
        cancel -> {
          Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
          for (WorkspaceRoot root : roots) {
            Map<String, String> moves = moves(root, params);
            if (!moves.isEmpty()) {
              Projects projects = Projects.load(facts, snapshot, root, cancel);
              // A folder within another one: its files are asked of the first.
              projects
                  .byUri(UsePaths.afterMove(projects.project(), moves))
                  .forEach(changes::putIfAbsent);
            }
          }
          return new WorkspaceEdits(facts, snapshot).of(changes);
        });
  }

  /** The files and folders that move within a folder: old and new workspace paths. */
  private static Map<String, String> moves(WorkspaceRoot root, RenameFilesParams params) {
    Map<String, String> moves = new LinkedHashMap<>();
    for (FileRename rename : params.getFiles()) {
      Optional<String> from = pathIn(root, rename.getOldUri());
      Optional<String> to = pathIn(root, rename.getNewUri());
      if (from.isPresent() && to.isPresent()) {
        moves.put(from.get(), to.get());
      }
    }
    return moves;
  }

  private static Optional<String> pathIn(WorkspaceRoot root, String uri) {
    return Session.path(uri).filter(root::holds).map(root::workspacePath);
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    session.refresh();
    publisher.changed();
    refreshShown();
    refreshFindings();
  }

  /** Has an editor that asks for findings ask again. */
  private void refreshFindings() {
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
    refreshFindings();
  }
}
