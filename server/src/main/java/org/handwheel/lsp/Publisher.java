package org.handwheel.lsp;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.View;
import org.jspecify.annotations.Nullable;

/**
 * Sends findings to an editor that does not ask for them.
 *
 * <p>There is no fixed delay: the newest state is worked through as soon as a worker is free,
 * states that were passed meanwhile are skipped, and nothing is sent that has not changed, or for a
 * state older than one already sent.
 */
final class Publisher {
  private static final Logger LOG = Logger.getLogger(Publisher.class.getName());

  private final Session session;
  private final Executor worker;
  private final AtomicReference<@Nullable Snapshot> wanted = new AtomicReference<>();
  private final AtomicBoolean running = new AtomicBoolean();
  private final Map<String, PublishDiagnosticsParams> sent = new HashMap<>();

  /**
   * What was worked out of each file when it was last looked at: the same need not be told again.
   */
  private final Map<String, Told> told = new ConcurrentHashMap<>();

  private volatile @Nullable LanguageClient client;

  private record Told(int version, View view) {
    /** A view is worked out once, so that the same one tells enough. */
    @SuppressWarnings("ReferenceEquality")
    boolean isSame(@Nullable Told other) {
      return other != null && version == other.version && view == other.view;
    }
  }

  Publisher(Session session, Executor worker) {
    this.session = session;
    this.worker = worker;
  }

  void connect(LanguageClient languageClient) {
    client = languageClient;
  }

  /** The session has a new state. */
  void changed() {
    if (session.client().pullsDiagnostics()) {
      return;
    }
    wanted.set(session.snapshot());
    if (running.compareAndSet(false, true)) {
      worker.execute(this::work);
    }
  }

  /** A file is closed: its findings go with it. */
  void closed(String uri) {
    if (session.client().pullsDiagnostics()) {
      return;
    }
    synchronized (sent) {
      sent.remove(uri);
      told.remove(uri);
      LanguageClient target = client;
      if (target != null) {
        target.publishDiagnostics(new PublishDiagnosticsParams(uri, List.of()));
      }
    }
  }

  private void work() {
    try {
      for (Snapshot next = wanted.getAndSet(null); next != null; next = wanted.getAndSet(null)) {
        publish(next);
      }
    } finally {
      running.set(false);
      if (wanted.get() != null && running.compareAndSet(false, true)) {
        worker.execute(this::work);
      }
    }
  }

  private void publish(Snapshot snapshot) {
    List<OpenFile> files = new ArrayList<>(snapshot.files());
    for (OpenFile file : files) {
      if (wanted.get() != null) {
        return;
      }
      publish(snapshot, file);
    }
    for (WorkspaceRoot root : session.allRoots()) {
      List<Diagnostic> unread = session.settings().diagnostics(root, session.client().positions());
      sendSettings(SettingsFiles.file(root).toUri().toString(), unread);
    }
  }

  private void publish(Snapshot snapshot, OpenFile file) {
    try {
      View view = snapshot.view(file);
      Told now = new Told(file.version(), view);
      if (now.isSame(told.get(file.uri()))) {
        return;
      }
      if (send(file, new ToProtocol(session.client(), snapshot, file, view).diagnostics())) {
        told.put(file.uri(), now);
      }
    } catch (RuntimeException | StackOverflowError e) {
      // A fault of the program's own: the other files have their findings still, and nobody is to
      // take those of an earlier text for those of this one.
      LOG.log(Level.WARNING, e, () -> "cannot check " + file.path());
      send(file, List.of(notChecked(e)));
    }
  }

  private static Diagnostic notChecked(Throwable fault) {
    Diagnostic diagnostic = new Diagnostic();
    diagnostic.setRange(new Range(new Position(0, 0), new Position(0, 0)));
    diagnostic.setSeverity(DiagnosticSeverity.Error);
    diagnostic.setSource(ToProtocol.SOURCE);
    diagnostic.setMessage(
        Either.forLeft(
            "this text could not be checked: internal error ("
                + fault.getClass().getSimpleName()
                + ")"));
    return diagnostic;
  }

  /** Settings files are not open in the editor as such: their findings have no version. */
  private void sendSettings(String uri, List<Diagnostic> diagnostics) {
    synchronized (sent) {
      PublishDiagnosticsParams before = sent.get(uri);
      List<Diagnostic> known = before == null ? List.of() : before.getDiagnostics();
      LanguageClient target = client;
      if (target != null && !known.equals(diagnostics)) {
        PublishDiagnosticsParams params = new PublishDiagnosticsParams(uri, diagnostics);
        sent.put(uri, params);
        target.publishDiagnostics(params);
      }
    }
  }

  /** Sends findings unless the editor has them; says whether it has them now. */
  private boolean send(OpenFile file, List<Diagnostic> diagnostics) {
    synchronized (sent) {
      boolean current =
          session.snapshot().file(file.uri()).map(OpenFile::version).orElse(-1) == file.version();
      PublishDiagnosticsParams before = sent.get(file.uri());
      boolean same =
          before != null
              && before.getDiagnostics().equals(diagnostics)
              && before.getVersion() == file.version();
      LanguageClient target = client;
      if (!current || target == null) {
        return false;
      }
      if (same) {
        return true;
      }
      PublishDiagnosticsParams params =
          new PublishDiagnosticsParams(file.uri(), diagnostics, file.version());
      sent.put(file.uri(), params);
      target.publishDiagnostics(params);
      return true;
    }
  }
}
