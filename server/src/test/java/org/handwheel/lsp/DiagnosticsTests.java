package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Findings: pushed or pulled, never stale, never both. */
@Timeout(300)
final class DiagnosticsTests {
  private static final String SHOP =
      "shop \"S\"\n  units mm\nown vise V\n  jaw-width: 80\n  jaw-depth: 25\n  opening: 70\n";
  private static final String PLAN =
      """
      language 1
      plan "Bearing"
        units mm
        use "my.shop"
      stock
        size 50 x 30 x 20
      setup one
        hold in V, up top, fixed back
      """;

  private static String uri(Path folder, String name) {
    return folder.resolve(name).toUri().toString();
  }

  @Test
  void everyPublishNamesItsVersionAndClosingClears(@TempDir Path folder) {
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      String uri = uri(folder, "a.plan");
      client.open(uri, 7, "rubbish\n");
      assertThat(LspClient.rules(client.diagnostics(uri, 7))).containsExactly("syntax");
      client.change(uri, 8, "plan \"A\"\n  units mm\n");
      assertThat(client.diagnostics(uri, 8)).isEmpty();
      client.change(uri, 9, "rubbish\n");
      client.diagnostics(uri, 9);
      client.close(uri);
      client.awaitMessage(
          "an empty list",
          message ->
              message.has("method")
                  && message.toString().contains("publishDiagnostics")
                  && !message.getAsJsonObject("params").has("version")
                  && message.getAsJsonObject("params").getAsJsonArray("diagnostics").isEmpty());
      List<JsonObject> published = client.received("textDocument/publishDiagnostics");
      assertThat(published.subList(0, published.size() - 1))
          .allMatch(message -> message.getAsJsonObject("params").has("version"));
    }
  }

  @Test
  void theShopAsTypedCountsForThePlan(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("my.shop"), SHOP);
    try (LspClient client = LspClient.start()) {
      client.initialize(Clients.PUSH, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      String plan = uri(folder, "a.plan");
      String shop = uri(folder, "my.shop");
      client.open(plan, 1, PLAN);
      assertThat(LspClient.rules(client.diagnostics(plan, 1))).doesNotContain("undefined-name");
      client.open(shop, 1, SHOP);
      client.change(shop, 2, SHOP.replace("own vise V", "own vise W"));
      awaitRule(client, plan, "undefined-name");
      client.close(shop);
      awaitNoRule(client, plan, "undefined-name");
    }
  }

  private static void awaitRule(LspClient client, String uri, String rule) {
    client.awaitMessage(
        rule,
        message -> isPublish(message, uri) && message.toString().contains("\"" + rule + "\""));
  }

  /** The last publish for the file says nothing of the rule. */
  private static void awaitNoRule(LspClient client, String uri, String rule) {
    client.awaitMessage(
        "end of " + rule,
        message -> {
          List<JsonObject> all =
              client.received("textDocument/publishDiagnostics").stream()
                  .filter(m -> isPublish(m, uri))
                  .toList();
          return !all.isEmpty() && !all.get(all.size() - 1).toString().contains("\"" + rule + "\"");
        });
  }

  private static boolean isPublish(JsonObject message, String uri) {
    return message.has("method")
        && message.get("method").getAsString().equals("textDocument/publishDiagnostics")
        && message.getAsJsonObject("params").get("uri").getAsString().equals(uri);
  }

  @Test
  void aFileThatChangesOnDiskCounts(@TempDir Path folder) throws IOException {
    try (LspClient client = LspClient.start()) {
      client.initialize(Clients.PUSH, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      client.notify("initialized", new JsonObject());
      JsonObject registration =
          client.awaitMessage(
              "a registration", m -> m.toString().contains("client/registerCapability"));
      assertThat(registration.toString()).contains("**/*.shop").contains("**/*.plan");
      String plan = uri(folder, "a.plan");
      client.open(plan, 1, PLAN);
      awaitRule(client, plan, "use-path");
      Files.writeString(folder.resolve("my.shop"), SHOP);
      client.notify(
          "workspace/didChangeWatchedFiles",
          JsonParser.parseString(
              "{\"changes\":[{\"uri\":\"" + uri(folder, "my.shop") + "\",\"type\":1}]}"));
      awaitNoRule(client, plan, "use-path");
    }
  }

  @Test
  void anEditorThatPullsIsNotPushed(@TempDir Path folder) {
    try (LspClient client = LspClient.start()) {
      JsonObject capabilities = client.initialize(Clients.PULL, "null");
      assertThat(capabilities.has("diagnosticProvider")).isTrue();
      String uri = uri(folder, "a.plan");
      client.open(uri, 1, "rubbish\n");
      JsonObject report =
          client.call("textDocument/diagnostic", LspClient.document(uri)).getAsJsonObject();
      assertThat(report.get("kind").getAsString()).isEqualTo("full");
      assertThat(LspClient.rules(report.getAsJsonArray("items"))).containsExactly("syntax");
      JsonObject again = LspClient.document(uri);
      again.add("previousResultId", report.get("resultId"));
      assertThat(
              client
                  .call("textDocument/diagnostic", again)
                  .getAsJsonObject()
                  .get("kind")
                  .getAsString())
          .isEqualTo("unchanged");
      client.change(uri, 2, "plan \"A\"\n  units mm\n");
      JsonObject clean = client.call("textDocument/diagnostic", again).getAsJsonObject();
      assertThat(clean.getAsJsonArray("items")).isEmpty();
      client.close(uri);
      assertThat(client.received("textDocument/publishDiagnostics")).isEmpty();
    }
  }

  @Test
  void anEditorThatIsPushedIsOfferedNoPull() {
    try (LspClient client = LspClient.start()) {
      assertThat(client.initialize(Clients.PUSH, "null").has("diagnosticProvider")).isFalse();
    }
  }

  @Test
  void typingSlowlyEndsClean(@TempDir Path folder) {
    String text =
        "plan \"A\"\n  units mm\npart\n  length 48.00 +-0.10\nstock\n  size 50 x 30 x 20\n";
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      String uri = uri(folder, "a.plan");
      client.open(uri, 0, "");
      int line = 0;
      int column = 0;
      for (int i = 0; i < text.length(); i++) {
        String letter = text.substring(i, i + 1);
        client.change(uri, i + 1, LspClient.edit(line, column, line, column, letter));
        line += letter.equals("\n") ? 1 : 0;
        column = letter.equals("\n") ? 0 : column + 1;
        if (i % 9 == 0) {
          client.diagnostics(uri, i + 1);
        }
      }
      assertThat(client.diagnostics(uri, text.length())).isEmpty();
      List<Integer> versions =
          client.received("textDocument/publishDiagnostics").stream()
              .map(message -> message.getAsJsonObject("params").get("version").getAsInt())
              .toList();
      assertThat(versions).isSorted();
    }
  }

  @Test
  void aChangeThatCannotBeAppliedDropsTheFile(@TempDir Path folder) {
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      String uri = uri(folder, "a.plan");
      client.open(uri, 1, "rubbish\n");
      client.diagnostics(uri, 1);
      client.change(uri, 2, LspClient.object("range", LspClient.range(0, 0, 0, 1)));
      client.awaitMessage(
          "an empty list", m -> isPublish(m, uri) && m.toString().contains("\"diagnostics\":[]"));
      client.open(uri, 3, "rubbish\n");
      assertThat(LspClient.rules(client.diagnostics(uri, 3))).containsExactly("syntax");
    }
  }

  @Test
  void aStormOfCancelledQuestionsLeavesTheServerWell(@TempDir Path folder) throws IOException {
    String text = Files.readString(examples().resolve("bearing-block.plan"));
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      String uri = uri(folder, "a.plan");
      client.open(uri, 0, text);
      List<CompletableFuture<JsonObject>> answers = new ArrayList<>();
      for (int i = 1; i <= 150; i++) {
        client.change(uri, i, LspClient.edit(1, 0, 1, 0, "#"));
        answers.add(client.request("textDocument/hover", LspClient.at(uri, 40, 5)));
        int id = client.lastId();
        client.notify("$/cancelRequest", LspClient.object("id", new JsonPrimitive(id)));
      }
      for (CompletableFuture<JsonObject> answer : answers) {
        JsonObject response = LspClient.await(answer);
        if (response.has("error")) {
          assertThat(response.getAsJsonObject("error").get("code").getAsInt()).isEqualTo(-32800);
        }
      }
      client.call("textDocument/hover", LspClient.at(uri, 40, 5));
      JsonArray last = client.diagnostics(uri, 150);
      assertThat(LspClient.rules(last)).isNotNull();
    }
  }

  private static Path examples() {
    Path beside = Path.of("..", "examples");
    return Files.isDirectory(beside) ? beside : Path.of("examples");
  }
}
