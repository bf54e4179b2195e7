package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Findings of all files of a folder, for an editor that asks for them. */
@Timeout(300)
final class WorkspaceDiagnosticsTests {
  private static final String GOOD = "plan \"A\"\n  units mm\n";
  private static final String BAD = "rubbish\n";

  @TempDir private Path folder;

  @BeforeEach
  void files() throws IOException {
    write("good.plan", GOOD);
    write("deck/bad.plan", BAD);
    write("shop/mine.shop", "shop \"S\"\n  units mm\nrubbish\n");
    write("target/made.plan", BAD);
    write("notes.txt", BAD);
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private String uri(String name) {
    return folder.resolve(name).toUri().toString();
  }

  private LspClient client() {
    LspClient client = LspClient.start();
    JsonObject capabilities =
        client.initialize(
            Clients.PULL, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"launch\"}]");
    assertThat(
            capabilities
                .getAsJsonObject("diagnosticProvider")
                .get("workspaceDiagnostics")
                .getAsBoolean())
        .isTrue();
    client.notify("initialized", new JsonObject());
    return client;
  }

  private static JsonObject params(Map<String, JsonObject> before) {
    JsonArray previous = new JsonArray();
    before.forEach(
        (uri, report) -> {
          JsonObject id = LspClient.object("uri", new JsonPrimitive(uri));
          id.add("value", report.get("resultId"));
          previous.add(id);
        });
    return LspClient.object("previousResultIds", previous);
  }

  /** The reports by the addresses of their files. */
  private static Map<String, JsonObject> reports(JsonElement answer) {
    Map<String, JsonObject> reports = new TreeMap<>();
    for (JsonElement item : answer.getAsJsonObject().getAsJsonArray("items")) {
      JsonObject report = item.getAsJsonObject();
      assertThat(reports.put(report.get("uri").getAsString(), report)).isNull();
    }
    return reports;
  }

  private static Map<String, JsonObject> ask(LspClient client, Map<String, JsonObject> before) {
    return reports(client.call("workspace/diagnostic", params(before)));
  }

  private static String kind(JsonObject report) {
    return report.get("kind").getAsString();
  }

  private static List<String> rules(JsonObject report) {
    return LspClient.rules(report.getAsJsonArray("items"));
  }

  @Test
  void everyPlanAndShopBelowTheFolderIsReported() {
    try (LspClient client = client()) {
      Map<String, JsonObject> reports = ask(client, Map.of());
      assertThat(reports)
          .containsOnlyKeys(uri("good.plan"), uri("deck/bad.plan"), uri("shop/mine.shop"));
      assertThat(rules(reports.get(uri("good.plan")))).isEmpty();
      assertThat(rules(reports.get(uri("deck/bad.plan")))).containsExactly("syntax");
      assertThat(rules(reports.get(uri("shop/mine.shop")))).containsExactly("syntax");
      assertThat(client.received("textDocument/publishDiagnostics")).isEmpty();
    }
  }

  @Test
  void whatHasNotChangedIsNotSentAgain() throws IOException {
    try (LspClient client = client()) {
      Map<String, JsonObject> first = ask(client, Map.of());
      assertThat(ask(client, first).values())
          .extracting(WorkspaceDiagnosticsTests::kind)
          .containsOnly("unchanged");
      write("deck/bad.plan", GOOD);
      Map<String, JsonObject> second = ask(client, first);
      assertThat(kind(second.get(uri("deck/bad.plan")))).isEqualTo("full");
      assertThat(rules(second.get(uri("deck/bad.plan")))).isEmpty();
      assertThat(kind(second.get(uri("shop/mine.shop")))).isEqualTo("unchanged");
    }
  }

  @Test
  void aFileThatIsGoneIsReportedEmpty() throws IOException {
    try (LspClient client = client()) {
      Map<String, JsonObject> first = ask(client, Map.of());
      Files.delete(folder.resolve("deck/bad.plan"));
      Map<String, JsonObject> second = ask(client, first);
      assertThat(rules(second.get(uri("deck/bad.plan")))).isEmpty();
    }
  }

  @Test
  void theTextAsTypedCountsAndAgreesWithTheFileAskedAlone() {
    try (LspClient client = client()) {
      String good = uri("good.plan");
      client.open(good, 4, BAD);
      JsonObject report = ask(client, Map.of()).get(good);
      assertThat(rules(report)).containsExactly("syntax");
      assertThat(report.get("version").getAsInt()).isEqualTo(4);
      JsonObject alone =
          client.call("textDocument/diagnostic", LspClient.document(good)).getAsJsonObject();
      assertThat(alone.get("resultId")).isEqualTo(report.get("resultId"));
      assertThat(alone.get("items")).isEqualTo(report.get("items"));
      client.close(good);
      assertThat(rules(ask(client, Map.of()).get(good))).isEmpty();
    }
  }

  @Test
  void reportsComeInPartsWhereTheEditorTakesThem() throws IOException {
    for (int i = 0; i < 45; i++) {
      write("many/plan" + i + ".plan", BAD);
    }
    try (LspClient client = client()) {
      client.open(uri("good.plan"), 1, GOOD);
      JsonObject params = params(Map.of());
      params.addProperty("partialResultToken", "part 1");
      JsonElement answer = client.call("workspace/diagnostic", params);
      assertThat(answer.getAsJsonObject().getAsJsonArray("items")).isEmpty();
      List<JsonObject> parts = new ArrayList<>();
      JsonArray all = new JsonArray();
      for (JsonObject progress : client.received("$/progress")) {
        JsonObject said = progress.getAsJsonObject("params");
        assertThat(said.get("token").getAsString()).isEqualTo("part 1");
        JsonObject part = said.getAsJsonObject("value");
        parts.add(part);
        all.addAll(part.getAsJsonArray("items"));
        assertThat(client.violationsIn("workspace/diagnostic", part)).isEmpty();
      }
      assertThat(parts).hasSizeGreaterThan(2);
      Map<String, JsonObject> reports = reports(LspClient.object("items", all));
      assertThat(reports).hasSize(48).isEqualTo(ask(client, Map.of()));
      // The file that is open comes first.
      assertThat(all.get(0).getAsJsonObject().get("uri").getAsString()).isEqualTo(uri("good.plan"));
    }
  }

  @Test
  void aFolderThatIsAddedIsAskedFor() {
    try (LspClient client = LspClient.initialized(Clients.PULL)) {
      JsonObject added = new JsonObject();
      added.addProperty("uri", folder.toUri().toString());
      added.addProperty("name", "launch");
      JsonArray list = new JsonArray();
      list.add(added);
      JsonObject event = LspClient.object("added", list);
      event.add("removed", new JsonArray());
      client.notify("workspace/didChangeWorkspaceFolders", LspClient.object("event", event));
      client.awaitMessage(
          "a request to ask again",
          message ->
              message.has("method")
                  && message.get("method").getAsString().equals("workspace/diagnostic/refresh"));
      assertThat(ask(client, Map.of())).containsKey(uri("good.plan"));
    }
  }

  @Test
  void cancelledQuestionsEndAndTheServerGoesOn() throws IOException {
    for (int i = 0; i < 60; i++) {
      write("many/plan" + i + ".plan", GOOD + "stock\n  size 50 x 30 x 20\n".repeat(20));
    }
    try (LspClient client = client()) {
      List<CompletableFuture<JsonObject>> answers = new ArrayList<>();
      for (int i = 0; i < 20; i++) {
        answers.add(client.request("workspace/diagnostic", params(Map.of())));
        client.notify(
            "$/cancelRequest", LspClient.object("id", new JsonPrimitive(client.lastId())));
      }
      int cancelled = 0;
      for (CompletableFuture<JsonObject> answer : answers) {
        JsonObject response = LspClient.await(answer);
        if (response.has("error")) {
          assertThat(response.getAsJsonObject("error").get("code").getAsInt()).isEqualTo(-32800);
          cancelled++;
        }
      }
      assertThat(cancelled).isPositive();
      assertThat(ask(client, Map.of())).hasSize(63);
    }
  }
}
