package org.handwheel.lsp;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.TextDocumentPositionParams;
import org.eclipse.lsp4j.WorkDoneProgressCancelParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.services.JsonRequest;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageClientAware;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.handwheel.ide.ProjectSettings;
import org.jspecify.annotations.Nullable;

/** The server's life from the first greeting to the exit. */
final class HandwheelServer implements LanguageServer, LanguageClientAware {
  private static final int WORKERS = 2;
  private static final int FAREWELL_SECONDS = 2;

  private final String version;
  private final Runnable exit;
  private final Session session = new Session();
  private final ExecutorService workers =
      Executors.newFixedThreadPool(
          WORKERS,
          work -> {
            Thread thread = new Thread(work, "handwheel-worker");
            thread.setDaemon(true);
            return thread;
          });
  private final Publisher publisher = new Publisher(session, this::inBackground);
  private final PlanTexts texts = new PlanTexts(session, publisher, workers);
  private final PlanWorkspaces workspaces = new PlanWorkspaces(session, publisher, workers);
  private @Nullable LanguageClient client;
  private volatile boolean initialized;
  private volatile boolean shutDown;

  /**
   * A server for one editor.
   *
   * @param exit what to do when the editor says the connection is over
   */
  HandwheelServer(String version, Runnable exit) {
    this.version = version;
    this.exit = exit;
  }

  /** Work nobody waits for any more once the editor has said goodbye. */
  private void inBackground(Runnable work) {
    try {
      workers.execute(work);
    } catch (RejectedExecutionException e) {
      // The goodbye came between two states: there is no one to publish findings to.
    }
  }

  @Override
  public void connect(LanguageClient languageClient) {
    client = languageClient;
    publisher.connect(languageClient);
    workspaces.connect(languageClient);
  }

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    initialized = true;
    session.begin(params);
    watchParent(params.getProcessId());
    ServerCapabilities capabilities = Capabilities.of(session.client());
    return CompletableFuture.completedFuture(
        new InitializeResult(capabilities, new ServerInfo("handwheel", version)));
  }

  /** If the editor dies without a word, the server must not stay behind. */
  private void watchParent(@Nullable Integer processId) {
    if (processId == null) {
      return;
    }
    Optional<ProcessHandle> parent = ProcessHandle.of(processId);
    if (parent.isEmpty()) {
      exit.run();
      return;
    }
    var unused = parent.get().onExit().thenRun(exit);
  }

  @Override
  public void initialized(InitializedParams params) {
    LanguageClient target = client;
    if (target != null && session.client().registersWatchers()) {
      List<FileSystemWatcher> watchers =
          List.of(
              new FileSystemWatcher(Either.forLeft("**/*.shop")),
              new FileSystemWatcher(Either.forLeft("**/*.plan")),
              new FileSystemWatcher(Either.forLeft("**/" + ProjectSettings.FILE_NAME)));
      register(
          target,
          "workspace/didChangeWatchedFiles",
          new DidChangeWatchedFilesRegistrationOptions(watchers));
    }
    if (target != null && session.client().registersConfiguration()) {
      register(target, "workspace/didChangeConfiguration", Map.of("section", "handwheel"));
    }
    workspaces.pullConfiguration();
    publisher.changed();
  }

  private static void register(LanguageClient target, String method, Object options) {
    Registration registration = new Registration("handwheel " + method, method, options);
    var unused = target.registerCapability(new RegistrationParams(List.of(registration)));
  }

  @Override
  @SuppressWarnings("NullAway") // The protocol's answer is null.
  public CompletableFuture<Object> shutdown() {
    shutDown = true;
    workers.shutdown();
    try {
      // What was asked before is answered before the farewell.
      boolean unused = workers.awaitTermination(FAREWELL_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void exit() {
    exit.run();
  }

  /** Tells the editor that a message of so many bytes was not read. */
  void tellRefused(long bytes) {
    LanguageClient target = client;
    if (target != null) {
      target.showMessage(
          new MessageParams(
              MessageType.Error,
              "a message of "
                  + bytes
                  + " bytes was not read: the longest is "
                  + MessageLimit.MOST_BYTES / (1024 * 1024)
                  + " MB"));
    }
  }

  /** Whether the editor has introduced itself. */
  boolean isInitialized() {
    return initialized;
  }

  /** Whether the editor said goodbye before it left; the exit code tells. */
  boolean isShutDown() {
    return shutDown;
  }

  @Override
  public TextDocumentService getTextDocumentService() {
    return texts;
  }

  /** The setup at a place, drawn. */
  @JsonRequest("handwheel/picture")
  public CompletableFuture<PictureAnswer> picture(TextDocumentPositionParams params) {
    return texts.picture(params);
  }

  /** The setups of a plan that has none, or what is missing for them. */
  @JsonRequest("handwheel/draft")
  public CompletableFuture<DraftAnswer> draft(DraftParams params) {
    return texts.draft(params);
  }

  /** The sheet of a plan for the machine, as HTML. */
  @JsonRequest("handwheel/sheet")
  public CompletableFuture<SheetAnswer> sheet(SheetParams params) {
    return texts.sheet(params);
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return workspaces;
  }

  @Override
  public void setTrace(SetTraceParams params) {
    // Nothing is traced; the notification must still be taken.
  }

  @Override
  public void cancelProgress(WorkDoneProgressCancelParams params) {
    // No progress is shown that could be cancelled.
  }
}
