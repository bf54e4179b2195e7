package org.handwheel.lsp;

import com.google.gson.Gson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * Types in a plan of its own, in a session of its own that nobody sees, so that Java has compiled
 * what a key needs by the time the first one comes: the first keys of a session otherwise take
 * several times as long as the later ones.
 */
final class Rehearsal {
  /** After so many keys little gets quicker; some tenths of a second. */
  private static final int KEYS = 550;

  private static final String PLAN = "untitled:rehearsal.plan";
  private static final String SHOP = "untitled:rehearsal.shop";

  private final Gson gson;
  private final Session session = new Session();
  private final Publisher publisher = new Publisher(session, Runnable::run);

  Rehearsal(Gson gson) {
    this(gson, new Nobody(gson));
  }

  /** Before an audience, for tests. */
  Rehearsal(Gson gson, LanguageClient audience) {
    this.gson = gson;
    publisher.connect(audience);
  }

  void run() {
    InitializeParams params = new InitializeParams();
    // A folder that is not there: nothing is read from the disk.
    Path nowhere = Path.of("handwheel-rehearsal").toAbsolutePath();
    params.setWorkspaceFolders(
        List.of(new WorkspaceFolder(nowhere.toUri().toString(), "rehearsal")));
    session.begin(params);
    String plan = text("rehearsal.plan");
    session.open(SHOP, "handwheel", 1, text("rehearsal.shop"));
    session.open(PLAN, "handwheel", 1, plan);
    publisher.changed();
    type(plan);
  }

  /** Makes a pass far too deep and puts it right again. */
  private void type(String plan) {
    int at = plan.indexOf("pass 0.5") + "pass ".length();
    int line = (int) plan.substring(0, at).chars().filter(c -> c == '\n').count();
    int column = at - plan.lastIndexOf('\n', at) - 1;
    for (int key = 0; key < KEYS; key++) {
      boolean adds = key % 2 == 0;
      String json =
          "{\"textDocument\":{\"uri\":\""
              + PLAN
              + "\",\"version\":"
              + (key + 2)
              + "},\"contentChanges\":[{\"range\":{\"start\":"
              + place(line, column)
              + ",\"end\":"
              + place(line, adds ? column : column + 1)
              + "},\"text\":\""
              + (adds ? "9" : "")
              + "\"}]}";
      DidChangeTextDocumentParams change = gson.fromJson(json, DidChangeTextDocumentParams.class);
      session.change(
          change.getTextDocument().getUri(),
          change.getTextDocument().getVersion(),
          change.getContentChanges());
      publisher.changed();
    }
  }

  private static String place(int line, int column) {
    return "{\"line\":" + line + ",\"character\":" + column + "}";
  }

  private static String text(String name) {
    try (InputStream in = Rehearsal.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("no text " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name, e);
    }
  }

  /** An editor that writes down what it is told and throws it away. */
  private record Nobody(Gson gson) implements LanguageClient {
    @Override
    public void publishDiagnostics(PublishDiagnosticsParams params) {
      String unused = gson.toJson(params);
    }

    @Override
    public void telemetryEvent(Object object) {}

    @Override
    public void showMessage(MessageParams params) {}

    @Override
    public CompletableFuture<MessageActionItem> showMessageRequest(
        ShowMessageRequestParams params) {
      return new CompletableFuture<>();
    }

    @Override
    public void logMessage(MessageParams params) {}
  }
}
