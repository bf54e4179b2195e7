package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.Gson;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.services.LanguageClient;
import org.junit.jupiter.api.Test;

/** What is rehearsed is a real plan: it is sound, and a key in it makes and mends a finding. */
class RehearsalTests {
  private static final class Audience implements LanguageClient {
    private final List<PublishDiagnosticsParams> told = new ArrayList<>();

    @Override
    public void publishDiagnostics(PublishDiagnosticsParams params) {
      told.add(params);
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

  @Test
  void aKeyMakesAFindingAndTheNextMendsIt() {
    Audience audience = new Audience();
    Gson gson = new MessageJsonHandler(Map.of()).getGson();
    new Rehearsal(gson, audience).run();
    Map<Boolean, List<Diagnostic>> found = new HashMap<>();
    for (PublishDiagnosticsParams params : audience.told) {
      if (params.getUri().endsWith(".shop")) {
        assertThat(params.getDiagnostics()).isEmpty();
      } else {
        // Opened as 1, then each odd version is the sound text again.
        found.merge(params.getVersion() % 2 == 1, params.getDiagnostics(), (a, b) -> b);
      }
    }
    assertThat(found.get(true)).isEmpty();
    assertThat(found.get(false))
        .extracting(diagnostic -> diagnostic.getCode().getLeft())
        .contains("unit-suspect");
  }
}
