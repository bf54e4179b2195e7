package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Editor features through the protocol: that they are bound, and as the editor can take them. */
@Timeout(300)
final class FeatureTests {
  @TempDir private Path folder;
  private String plan;
  private String shop;
  private String text;

  @BeforeEach
  void copyExamples() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(
        ExampleFolder.PATH.resolve("shop/inch-mill.shop"), folder.resolve("shop/inch-mill.shop"));
    Files.copy(ExampleFolder.PATH.resolve("bearing-block.plan"), folder.resolve("block.plan"));
    text = Files.readString(folder.resolve("block.plan"));
    plan = folder.resolve("block.plan").toUri().toString();
    shop = folder.resolve("shop/inch-mill.shop").toUri().toString();
  }

  private LspClient client(String capabilities) {
    LspClient client = LspClient.start();
    client.initialize(capabilities, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
    client.notify("initialized", new JsonObject());
    client.open(plan, 1, text);
    return client;
  }

  private JsonObject at(String words, int into) {
    int offset = text.indexOf(words) + into;
    int line = (int) text.substring(0, offset).chars().filter(c -> c == '\n').count();
    return LspClient.at(plan, line, offset - text.lastIndexOf('\n', offset - 1) - 1);
  }

  private JsonObject whole() {
    JsonObject params = LspClient.document(plan);
    params.add("range", LspClient.range(0, 0, 10_000, 0));
    return params;
  }

  private int sections() {
    return (int)
        text.lines()
            .filter(line -> line.matches("(plan|part|stock|setup|log|inspect)\\b.*"))
            .count();
  }

  @Test
  void hoverComesAsTheEditorCanShowIt() {
    try (LspClient client = client(Clients.PUSH)) {
      JsonObject hover = client.call("textDocument/hover", at("clean top", 1)).getAsJsonObject();
      assertThat(hover.getAsJsonObject("contents").get("kind").getAsString()).isEqualTo("markdown");
      assertThat(hover.toString()).contains("- Comes off: ");
    }
    try (LspClient client = client(Clients.PLAIN)) {
      JsonObject hover = client.call("textDocument/hover", at("clean top", 1)).getAsJsonObject();
      assertThat(hover.getAsJsonObject("contents").get("kind").getAsString())
          .isEqualTo("plaintext");
      assertThat(hover.toString()).doesNotContain("**");
    }
  }

  @Test
  void aSilencedRuleShowsItsPage() {
    try (LspClient client = client(Clients.PUSH)) {
      String uri = "untitled:a.plan";
      client.open(uri, 1, "plan \"A\"\n  units mm # ignore overcut: shown\n");
      assertThat(client.call("textDocument/hover", LspClient.at(uri, 1, 15)).toString())
          .contains("below the least size the drawing allows");
    }
  }

  @Test
  void definitionLeadsToTheShopFileOnDisk() {
    try (LspClient client = client(Clients.PUSH)) {
      JsonObject link =
          client
              .call("textDocument/definition", at("in V80", 4))
              .getAsJsonArray()
              .get(0)
              .getAsJsonObject();
      assertThat(link.get("targetUri").getAsString()).isEqualTo(shop);
      assertThat(link.has("originSelectionRange")).isTrue();
    }
    try (LspClient client = client(Clients.PLAIN)) {
      JsonObject location =
          client
              .call("textDocument/definition", at("in V80", 4))
              .getAsJsonArray()
              .get(0)
              .getAsJsonObject();
      assertThat(location.get("uri").getAsString()).isEqualTo(shop);
    }
  }

  @Test
  void referencesReachFilesThatAreNotOpen() throws IOException {
    Files.writeString(folder.resolve("other.plan"), text);
    try (LspClient client = client(Clients.PUSH)) {
      JsonObject params = at("in V80", 4);
      params.add("context", LspClient.object("includeDeclaration", new JsonPrimitive(true)));
      List<String> files = new ArrayList<>();
      client
          .call("textDocument/references", params)
          .getAsJsonArray()
          .forEach(l -> files.add(l.getAsJsonObject().get("uri").getAsString()));
      assertThat(files).contains(shop, plan, folder.resolve("other.plan").toUri().toString());
      assertThat(client.call("textDocument/documentHighlight", at("in V80", 4)).getAsJsonArray())
          .hasSizeGreaterThan(3);
    }
  }

  @Test
  void renameChangesOpenAndClosedFilesOrSaysWhyNot() throws IOException {
    Files.writeString(folder.resolve("other.plan"), text);
    try (LspClient client = client(Clients.PUSH)) {
      JsonObject prepared =
          client.call("textDocument/prepareRename", at("in V80", 4)).getAsJsonObject();
      assertThat(prepared.get("placeholder").getAsString()).isEqualTo("V80");
      JsonObject params = at("in V80", 4);
      params.addProperty("newName", "big-vise");
      JsonArray documents =
          client
              .call("textDocument/rename", params)
              .getAsJsonObject()
              .getAsJsonArray("documentChanges");
      assertThat(documents).hasSize(3);
      for (JsonElement document : documents) {
        JsonObject name = document.getAsJsonObject().getAsJsonObject("textDocument");
        boolean open = name.get("uri").getAsString().equals(plan);
        assertThat(name.get("version")).isEqualTo(open ? new JsonPrimitive(1) : JsonNull.INSTANCE);
      }
      params.addProperty("newName", "two words");
      assertThat(client.callForError("textDocument/rename", params).get("message").getAsString())
          .contains("cannot be a name");
      assertThat(
              client
                  .callForError("textDocument/prepareRename", at("up top", 4))
                  .get("message")
                  .getAsString())
          .contains("faces");
    }
    try (LspClient client = client(Clients.PLAIN)) {
      JsonObject params = at("in V80", 4);
      params.addProperty("newName", "big-vise");
      assertThat(
              client
                  .call("textDocument/rename", params)
                  .getAsJsonObject()
                  .getAsJsonObject("changes")
                  .keySet())
          .hasSize(3);
    }
  }

  @Test
  void symbolsAreATreeOrAList() {
    try (LspClient client = client(Clients.PUSH)) {
      JsonArray tree =
          client.call("textDocument/documentSymbol", LspClient.document(plan)).getAsJsonArray();
      assertThat(tree).hasSize(1);
      assertThat(tree.get(0).getAsJsonObject().getAsJsonArray("children")).hasSize(sections() - 1);
      JsonArray found =
          client
              .call("workspace/symbol", LspClient.object("query", new JsonPrimitive("mic5")))
              .getAsJsonArray();
      assertThat(found.get(0).toString()).contains("mic50").contains("inch-mill.shop");
    }
    try (LspClient client = client(Clients.PLAIN)) {
      JsonArray list =
          client.call("textDocument/documentSymbol", LspClient.document(plan)).getAsJsonArray();
      assertThat(list).hasSizeGreaterThan(20);
      assertThat(list.get(0).getAsJsonObject().has("location")).isTrue();
    }
  }

  @Test
  void hintsFollowTheSettings() {
    try (LspClient client = client(Clients.PUSH)) {
      int all = client.call("textDocument/inlayHint", whole()).getAsJsonArray().size();
      client.notify(
          "workspace/didChangeConfiguration",
          JsonParser.parseString(
              "{\"settings\":{\"handwheel\":{\"hints\":{\"dial\":false,\"direction\":false}}}}"));
      client.awaitMessage("a refresh", m -> m.toString().contains("workspace/inlayHint/refresh"));
      JsonArray sizes = client.call("textDocument/inlayHint", whole()).getAsJsonArray();
      assertThat(sizes.size()).isPositive().isLessThan(all);
      assertThat(sizes.get(0).getAsJsonObject().get("label").getAsString())
          .startsWith("height 23.70 mm");
      client.notify(
          "workspace/didChangeConfiguration", JsonParser.parseString("{\"settings\":[\"odd\"]}"));
      assertThat(client.call("textDocument/inlayHint", whole()).getAsJsonArray())
          .hasSize(sizes.size());
    }
  }

  @Test
  void coloursFoldsSelectionsLinksAndSignatures() {
    try (LspClient client = client(Clients.PUSH)) {
      JsonArray data =
          client
              .call("textDocument/semanticTokens/full", LspClient.document(plan))
              .getAsJsonObject()
              .getAsJsonArray("data");
      assertThat(data.size() % 5).isZero();
      JsonArray part =
          client
              .call("textDocument/semanticTokens/range", whole())
              .getAsJsonObject()
              .getAsJsonArray("data");
      assertThat(part).isEqualTo(data);
      assertThat(
              client.call("textDocument/foldingRange", LspClient.document(plan)).getAsJsonArray())
          .hasSize(sections())
          .allSatisfy(
              fold -> {
                JsonObject lines = fold.getAsJsonObject();
                int hidden = lines.get("endLine").getAsInt() - lines.get("startLine").getAsInt();
                assertThat(lines.get("collapsedText").getAsString())
                    .isEqualTo(hidden == 1 ? "... 1 line" : "... " + hidden + " lines");
              });
      JsonObject positions = LspClient.document(plan);
      JsonArray list = new JsonArray();
      list.add(at("clean top", 1).get("position"));
      positions.add("positions", list);
      assertThat(client.call("textDocument/selectionRange", positions).getAsJsonArray()).hasSize(1);
      JsonArray links =
          client.call("textDocument/documentLink", LspClient.document(plan)).getAsJsonArray();
      assertThat(links.get(0).getAsJsonObject().get("target").getAsString()).isEqualTo(shop);
      JsonObject signature =
          client.call("textDocument/signatureHelp", at("leaving 0.25", 8)).getAsJsonObject();
      assertThat(signature.toString()).contains("rough face to size, leaving allowance");
      assertThat(signature.get("activeParameter").getAsInt()).isEqualTo(2);
    }
  }

  @Test
  void aShopThatMovesTakesThePlansAlong() {
    try (LspClient client = client(Clients.PUSH)) {
      JsonObject edit =
          client
              .call(
                  "workspace/willRenameFiles",
                  JsonParser.parseString(
                      "{\"files\":[{\"oldUri\":\""
                          + shop
                          + "\",\"newUri\":\""
                          + folder.resolve("mill.shop").toUri()
                          + "\"}]}"))
              .getAsJsonObject();
      assertThat(edit.toString()).contains("\"newText\":\"mill.shop\"").contains("block.plan");
    }
  }
}
