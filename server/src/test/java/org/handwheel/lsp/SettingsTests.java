package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Settings: those of the project's file first, then the editor's, sent or asked for. */
@Timeout(300)
final class SettingsTests {
  /** Answers for its settings, watches files, and asks again when told to. */
  private static final String ASKED =
      """
      {"workspace": {
        "configuration": true,
        "didChangeConfiguration": {"dynamicRegistration": true},
        "didChangeWatchedFiles": {"dynamicRegistration": true},
        "inlayHint": {"refreshSupport": true},
        "codeLens": {"refreshSupport": true}}}
      """;

  @TempDir private Path folder;
  private String plan;
  private String text;

  @BeforeEach
  void copyExample() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(
        ExampleFolder.PATH.resolve("shop/inch-mill.shop"), folder.resolve("shop/inch-mill.shop"));
    text = Files.readString(ExampleFolder.PATH.resolve("bearing-block.plan"));
    plan = folder.resolve("block.plan").toUri().toString();
  }

  private LspClient client(String capabilities, String options) {
    LspClient client = LspClient.start();
    JsonObject params = new JsonObject();
    params.add("capabilities", JsonParser.parseString(capabilities));
    params.add("initializationOptions", JsonParser.parseString(options));
    params.add(
        "workspaceFolders",
        JsonParser.parseString("[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"launch\"}]"));
    client.call("initialize", params);
    return client;
  }

  private void begin(LspClient client) {
    client.notify("initialized", new JsonObject());
    client.open(plan, 1, text);
  }

  private int hints(LspClient client) {
    JsonObject params = LspClient.document(plan);
    params.add("range", LspClient.range(0, 0, 10_000, 0));
    return client.call("textDocument/inlayHint", params).getAsJsonArray().size();
  }

  private void project(String settings) throws IOException {
    Files.writeString(folder.resolve(".handwheel"), settings);
  }

  private void tellChanged(LspClient client) {
    client.notify(
        "workspace/didChangeWatchedFiles",
        JsonParser.parseString(
            "{\"changes\":[{\"uri\":\"" + folder.toUri() + ".handwheel\",\"type\":2}]}"));
  }

  private static final String NO_HINTS =
      "{\"hints\":{\"size\":false,\"dial\":false,\"direction\":false}}";

  @Test
  void theEditorsSettingsCountFromTheGreetingOn() {
    try (LspClient client = client(Clients.PUSH, "{\"handwheel\":" + NO_HINTS + "}")) {
      begin(client);
      assertThat(hints(client)).isZero();
      client.notify(
          "workspace/didChangeConfiguration",
          JsonParser.parseString("{\"settings\":{\"handwheel\":{\"hints\":{\"size\":true}}}}"));
      assertThat(hints(client)).isPositive();
    }
  }

  @Test
  void theProjectsFileGoesBeforeThem() throws IOException {
    project("hints: off\n");
    try (LspClient client = client(Clients.PUSH, "null")) {
      begin(client);
      assertThat(hints(client)).isZero();
      client.notify(
          "workspace/didChangeConfiguration",
          JsonParser.parseString("{\"settings\":{\"handwheel\":{\"hints\":{\"size\":true}}}}"));
      assertThat(hints(client)).isZero();
      project("hints.dial: off\n");
      tellChanged(client);
      assertThat(hints(client)).isPositive();
      client.awaitMessage("a refresh", m -> isMethod(m, "workspace/inlayHint/refresh"));
    }
  }

  @Test
  void anEditorThatCanIsAskedAtTheStartAndWhenTheyChange() {
    try (LspClient client = client(ASKED, "null")) {
      client.setConfiguration(NO_HINTS);
      begin(client);
      JsonObject asked =
          client.awaitMessage("a question", m -> isMethod(m, "workspace/configuration"));
      assertThat(asked.toString()).contains("\"section\":\"handwheel\"");
      client.awaitMessage("a refresh", m -> isMethod(m, "workspace/inlayHint/refresh"));
      client.awaitMessage("a refresh", m -> isMethod(m, "workspace/codeLens/refresh"));
      assertThat(hints(client)).isZero();
      client.setConfiguration("{\"hints\":{\"direction\":true}}");
      client.notify(
          "workspace/didChangeConfiguration", JsonParser.parseString("{\"settings\":null}"));
      await(client, "a second refresh", all -> all.size() == 2);
      assertThat(hints(client)).isPositive();
    }
  }

  private static void await(LspClient client, String what, Predicate<List<JsonObject>> wanted) {
    client.awaitMessage(
        what, message -> wanted.test(client.received("workspace/inlayHint/refresh")));
  }

  @Test
  void linesOverSetupsAreShownWhereTheyAreWanted() throws IOException {
    try (LspClient client = client(Clients.PUSH, "null")) {
      begin(client);
      assertThat(lenses(client)).isEmpty();
      project("lens: on\n");
      tellChanged(client);
      JsonArray lenses = lenses(client);
      assertThat(lenses).hasSize((int) text.lines().filter(l -> l.startsWith("setup ")).count());
      JsonObject first = lenses.get(0).getAsJsonObject();
      assertThat(first.getAsJsonObject("command").get("title").getAsString())
          .startsWith("about ")
          .contains(": V80, ");
      int line = first.getAsJsonObject("range").getAsJsonObject("start").get("line").getAsInt();
      assertThat(text.lines().toList().get(line)).startsWith("setup one");
    }
    project("");
    try (LspClient client = client(Clients.PLAIN, "{\"lens\":true}")) {
      begin(client);
      assertThat(lenses(client)).isNotEmpty();
    }
  }

  private JsonArray lenses(LspClient client) {
    return client.call("textDocument/codeLens", LspClient.document(plan)).getAsJsonArray();
  }

  @Test
  void changesOfSettingsAreRegisteredWhereTheEditorWantsThat() {
    try (LspClient client = client(ASKED, "null")) {
      begin(client);
      client.awaitMessage(
          "a registration of settings",
          m ->
              isMethod(m, "client/registerCapability")
                  && m.toString().contains("workspace/didChangeConfiguration"));
      client.awaitMessage(
          "a watcher of the file",
          m -> isMethod(m, "client/registerCapability") && m.toString().contains("**/.handwheel"));
    }
  }

  @Test
  void whatCannotBeReadIsFoundInTheFile() throws IOException {
    project("# launch\nhints.sise: off\n");
    String file = folder.resolve(".handwheel").toUri().toString();
    try (LspClient client = client(Clients.PUSH, "null")) {
      begin(client);
      JsonObject published =
          client.awaitMessage("a finding", m -> isPublish(m, file)).getAsJsonObject("params");
      JsonObject found = published.getAsJsonArray("diagnostics").get(0).getAsJsonObject();
      assertThat(found.get("message").getAsString()).contains("did you mean `hints.size`?");
      assertThat(found.get("range")).isEqualTo(LspClient.range(1, 0, 1, 10));
      project("# launch\nhints.size: off\n");
      tellChanged(client);
      client.awaitMessage(
          "its end",
          m ->
              isPublish(m, file)
                  && m.getAsJsonObject("params").getAsJsonArray("diagnostics").isEmpty());
    }
    project("lens\n");
    try (LspClient client = client(Clients.PULL, "null")) {
      begin(client);
      JsonElement all =
          client.call(
              "workspace/diagnostic", LspClient.object("previousResultIds", new JsonArray()));
      assertThat(all.toString()).contains(file).contains("`key: value`");
      assertThat(client.received("textDocument/publishDiagnostics")).isEmpty();
    }
  }

  private static boolean isMethod(JsonObject message, String method) {
    return message.has("method") && message.get("method").getAsString().equals(method);
  }

  private static boolean isPublish(JsonObject message, String uri) {
    return isMethod(message, "textDocument/publishDiagnostics")
        && message.getAsJsonObject("params").get("uri").getAsString().equals(uri);
  }
}
