package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drafting in an editor: the request, and the change that is offered. */
class DraftTests {
  private static final String RESOLVING =
      """
      {"workspace": {"workspaceEdit": {"documentChanges": true}},
       "textDocument": {"codeAction": {
         "dataSupport": true, "resolveSupport": {"properties": ["edit"]},
         "codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["refactor"]}}}}}
      """;

  @TempDir private Path folder;
  private String text = "";
  private String plan = "";

  @BeforeEach
  void copyExamples() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(
        ExampleFolder.PATH.resolve("shop/inch-mill.shop"), folder.resolve("shop/inch-mill.shop"));
    String whole = Files.readString(ExampleFolder.PATH.resolve("bearing-block.plan"));
    text = whole.substring(0, whole.indexOf("setup one"));
    plan = folder.resolve("block.plan").toUri().toString();
  }

  private LspClient started(JsonObject[] capabilities) {
    LspClient client = LspClient.start();
    capabilities[0] =
        client.initialize(RESOLVING, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
    client.notify("initialized", new JsonObject());
    return client;
  }

  private JsonObject document() {
    JsonObject document = new JsonObject();
    document.addProperty("uri", plan);
    JsonObject params = new JsonObject();
    params.add("textDocument", document);
    return params;
  }

  private static JsonObject onlyEdit(JsonObject edit) {
    JsonArray changes = edit.getAsJsonArray("documentChanges");
    assertThat(changes).hasSize(1);
    JsonArray edits = changes.get(0).getAsJsonObject().getAsJsonArray("edits");
    assertThat(edits).hasSize(1);
    return edits.get(0).getAsJsonObject();
  }

  @Test
  void theRequestGivesTheSetupsOrWhatIsMissing() {
    JsonObject[] capabilities = new JsonObject[1];
    try (LspClient client = started(capabilities)) {
      assertThat(
              capabilities[0]
                  .getAsJsonObject("experimental")
                  .getAsJsonObject("handwheel")
                  .get("draft")
                  .getAsBoolean())
          .isTrue();
      client.open(plan, 3, text);
      JsonObject answer = client.call("handwheel/draft", document()).getAsJsonObject();
      assertThat(answer.get("version").getAsInt()).isEqualTo(3);
      JsonObject edit = onlyEdit(answer.getAsJsonObject("edit"));
      assertThat(edit.get("newText").getAsString()).contains("setup one \"", "\ninspect\n");
      int line = edit.getAsJsonObject("range").getAsJsonObject("start").get("line").getAsInt();
      assertThat(line).isEqualTo((int) text.stripTrailing().chars().filter(c -> c == '\n').count());
      // Far too small for the part.
      client.notify("textDocument/didClose", document());
      client.open(plan, 4, text.replace("size 60 x", "size 50 x"));
      JsonObject none = client.call("handwheel/draft", document()).getAsJsonObject();
      assertThat(none.has("edit") && !none.get("edit").isJsonNull()).isFalse();
      assertThat(none.getAsJsonArray("missing").get(0).getAsString()).contains("50.00 mm");
    }
  }

  @Test
  void theChangeIsOfferedWhereThereAreNoSetupsAndWorkedOutWhenChosen() {
    JsonObject[] capabilities = new JsonObject[1];
    try (LspClient client = started(capabilities)) {
      client.open(plan, 1, text);
      JsonObject action = offered(client);
      assertThat(action).isNotNull();
      assertThat(action.get("kind").getAsString()).isEqualTo("refactor.rewrite");
      assertThat(action.has("edit") && !action.get("edit").isJsonNull()).isFalse();
      JsonObject resolved = client.call("codeAction/resolve", action).getAsJsonObject();
      assertThat(onlyEdit(resolved.getAsJsonObject("edit")).get("newText").getAsString())
          .contains("setup one \"", "hold in V80, up top");
      client.notify("textDocument/didClose", document());
      client.open(plan, 2, text + "setup one\n  deburr all edges\n");
      assertThat(offered(client)).isNull();
    }
  }

  private JsonObject offered(LspClient client) {
    JsonObject params = document();
    params.add(
        "range",
        JsonParser.parseString(
            "{\"start\":{\"line\":0,\"character\":0},\"end\":{\"line\":0,\"character\":0}}"));
    params.add("context", JsonParser.parseString("{\"diagnostics\":[]}"));
    for (JsonElement one : client.call("textDocument/codeAction", params).getAsJsonArray()) {
      if (one.getAsJsonObject().get("title").getAsString().startsWith("Draft the setups")) {
        return one.getAsJsonObject();
      }
    }
    return null;
  }
}
