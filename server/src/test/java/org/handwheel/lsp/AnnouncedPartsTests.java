package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Parts of answers that only an editor gets that announces them. */
@Timeout(120)
final class AnnouncedPartsTests {
  private static final String ALL =
      """
      {
        "workspace": {
          "workspaceEdit": {
            "documentChanges": true, "changeAnnotationSupport": {"groupsOnLabel": true}
          }
        },
        "textDocument": {
          "completion": {
            "completionItem": {
              "insertReplaceSupport": true, "snippetSupport": true,
              "insertTextModeSupport": {"valueSet": [1, 2]}
            },
            "completionList": {"itemDefaults": ["editRange", "insertTextFormat", "data"]}
          }
        }
      }
      """;

  private static final String INSERTS =
      "{\"textDocument\": {\"completion\": {\"completionItem\": {\"insertReplaceSupport\": true}}}}";

  private static final String PLAN =
      """
      language 1
      plan "Keep"
        units mm
        use "shop/own.shop"

      setup one
        hold in V80, up top, fixed back
        wipe jaws

      inspect
        check height
      """;

  @TempDir private Path folder;
  private String plan = "";

  @BeforeEach
  void files() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.writeString(
        folder.resolve("shop/own.shop"), "language 1\nshop \"S\"\n  units mm\n\nown vise V80\n");
    Files.writeString(folder.resolve("shop/other.shop"), "language 1\nshop \"O\"\n");
    Files.writeString(folder.resolve("a.plan"), PLAN);
    plan = folder.resolve("a.plan").toUri().toString();
  }

  private LspClient client(String capabilities) {
    LspClient client = LspClient.start();
    client.initialize(capabilities, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
    client.notify("initialized", new JsonObject());
    client.open(plan, 1, PLAN);
    return client;
  }

  private JsonObject rename(LspClient client, int line, int column, String name) {
    JsonObject params = LspClient.at(plan, line, column);
    params.addProperty("newName", name);
    return client.call("textDocument/rename", params).getAsJsonObject();
  }

  @Test
  void aRenameThatReachesOtherFilesIsToBeConfirmedThere() {
    try (LspClient client = client(ALL)) {
      JsonObject edit = rename(client, 6, 11, "big-vise");
      JsonObject annotations = edit.getAsJsonObject("changeAnnotations");
      assertThat(annotations.keySet()).containsExactly("elsewhere");
      assertThat(annotations.getAsJsonObject("elsewhere").get("needsConfirmation").getAsBoolean())
          .isTrue();
      JsonArray documents = edit.getAsJsonArray("documentChanges");
      assertThat(documents).hasSize(2);
      for (JsonElement document : documents) {
        JsonObject one = document.getAsJsonObject();
        boolean here =
            one.getAsJsonObject("textDocument").get("uri").getAsString().endsWith("a.plan");
        assertThat(one.getAsJsonArray("edits")).isNotEmpty();
        for (JsonElement change : one.getAsJsonArray("edits")) {
          assertThat(change.getAsJsonObject().has("annotationId")).isEqualTo(!here);
          assertThat(change.getAsJsonObject().get("newText").getAsString()).isEqualTo("big-vise");
        }
      }
      assertThat(rename(client, 5, 7, "first").has("changeAnnotations")).isFalse();
    }
    try (LspClient client = client(Clients.PUSH)) {
      assertThat(rename(client, 6, 11, "big-vise").toString()).doesNotContain("nnotation");
    }
  }

  private JsonObject completion(LspClient client, int line, int column) {
    return client
        .call("textDocument/completion", LspClient.at(plan, line, column))
        .getAsJsonObject();
  }

  private static JsonObject item(JsonObject list, String label) {
    for (JsonElement item : list.getAsJsonArray("items")) {
      if (item.getAsJsonObject().get("label").getAsString().equals(label)) {
        return item.getAsJsonObject();
      }
    }
    throw new AssertionError(label + " is not in " + list);
  }

  @Test
  void whatAllProposalsShareIsSaidOnce() {
    try (LspClient client = client(ALL)) {
      // In the middle of "wipe".
      JsonObject list = completion(client, 7, 4);
      JsonObject range = list.getAsJsonObject("itemDefaults").getAsJsonObject("editRange");
      assertThat(range.getAsJsonObject("insert")).isEqualTo(LspClient.range(7, 2, 7, 4));
      assertThat(range.getAsJsonObject("replace")).isEqualTo(LspClient.range(7, 2, 7, 6));
      assertThat(list.getAsJsonObject("itemDefaults").get("insertTextFormat").getAsInt())
          .isEqualTo(2);
      assertThat(list.get("isIncomplete").getAsBoolean()).isFalse();
      int plain = 0;
      for (JsonElement each : list.getAsJsonArray("items")) {
        JsonObject item = each.getAsJsonObject();
        assertThat(item.has("textEdit")).isFalse();
        if (item.has("insertTextFormat")) {
          assertThat(item.get("insertTextFormat").getAsInt()).isEqualTo(1);
          assertThat(item.has("insertTextMode")).isFalse();
          plain++;
        } else {
          assertThat(item.get("insertTextMode").getAsInt()).isEqualTo(2);
          assertThat(item.get("textEditText").getAsString()).contains("${1:");
        }
      }
      assertThat(plain).isPositive().isLessThan(list.getAsJsonArray("items").size());
    }
  }

  @Test
  void aProposalIsPutInOrReplacesTheWord() {
    try (LspClient client = client(INSERTS)) {
      JsonObject list = completion(client, 7, 4);
      assertThat(list.has("itemDefaults")).isFalse();
      JsonObject edit =
          list.getAsJsonArray("items").get(0).getAsJsonObject().getAsJsonObject("textEdit");
      assertThat(edit.getAsJsonObject("insert")).isEqualTo(LspClient.range(7, 2, 7, 4));
      assertThat(edit.getAsJsonObject("replace")).isEqualTo(LspClient.range(7, 2, 7, 6));
    }
    try (LspClient client = client(Clients.PLAIN)) {
      JsonObject edit =
          completion(client, 7, 4)
              .getAsJsonArray("items")
              .get(0)
              .getAsJsonObject()
              .getAsJsonObject("textEdit");
      assertThat(edit.getAsJsonObject("range")).isEqualTo(LspClient.range(7, 2, 7, 6));
    }
  }

  @Test
  void aCommaGoesBehindTheWordBefore() {
    try (LspClient client = client(Clients.PLAIN)) {
      client.change(plan, 2, LspClient.edit(10, 14, 10, 14, "  "));
      JsonObject width = item(completion(client, 10, 16), "width");
      JsonObject comma = width.getAsJsonArray("additionalTextEdits").get(0).getAsJsonObject();
      assertThat(comma.get("newText").getAsString()).isEqualTo(",");
      assertThat(comma.getAsJsonObject("range")).isEqualTo(LspClient.range(10, 14, 10, 14));
      assertThat(width.getAsJsonObject("textEdit").getAsJsonObject("range"))
          .isEqualTo(LspClient.range(10, 16, 10, 16));
    }
  }

  @Test
  void shopFilesNobodyUsesYetAreProposed() {
    try (LspClient client = client(Clients.PLAIN)) {
      JsonObject list = completion(client, 3, 7);
      assertThat(item(list, "shop/other.shop")).isNotNull();
      assertThat(item(list, "shop/own.shop")).isNotNull();
    }
  }

  @Test
  void severalRangesAreFormattedAtOnce() {
    String ranges = "{\"textDocument\": {\"rangeFormatting\": {\"rangesSupport\": true}}}";
    try (LspClient client = LspClient.start()) {
      JsonObject provider =
          client.initialize(ranges, "null").getAsJsonObject("documentRangeFormattingProvider");
      assertThat(provider.get("rangesSupport").getAsBoolean()).isTrue();
      client.open(plan, 1, "plan \"a\"\n units   mm\n\npart\n  length   5\n  width   6\n");
      JsonObject params = LspClient.document(plan);
      JsonArray list = new JsonArray();
      list.add(LspClient.range(1, 0, 1, 3));
      list.add(LspClient.range(5, 0, 5, 3));
      list.add(LspClient.range(5, 2, 5, 4));
      params.add("ranges", list);
      JsonObject options = new JsonObject();
      options.addProperty("tabSize", 2);
      options.addProperty("insertSpaces", true);
      params.add("options", options);
      JsonArray edits = client.call("textDocument/rangesFormatting", params).getAsJsonArray();
      assertThat(edits).isNotEmpty();
      for (JsonElement edit : edits) {
        int line =
            edit.getAsJsonObject()
                .getAsJsonObject("range")
                .getAsJsonObject("start")
                .get("line")
                .getAsInt();
        assertThat(line).isIn(1, 5);
      }
      assertThat(StreamSupport.stream(edits.spliterator(), false).distinct()).hasSize(edits.size());
    }
    try (LspClient client = LspClient.start()) {
      assertThat(
              client
                  .initialize(Clients.PLAIN, "null")
                  .get("documentRangeFormattingProvider")
                  .getAsBoolean())
          .isTrue();
    }
  }

  @Test
  void aFolderThatMovesTakesThePlansAlong() {
    try (LspClient client = LspClient.start()) {
      JsonObject capabilities =
          client.initialize(ALL, "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      assertThat(
              capabilities
                  .getAsJsonObject("workspace")
                  .getAsJsonObject("fileOperations")
                  .getAsJsonObject("willRename")
                  .toString())
          .contains("\"matches\":\"folder\"");
      client.open(plan, 1, PLAN);
      JsonObject edit =
          client
              .call(
                  "workspace/willRenameFiles",
                  JsonParser.parseString(
                      "{\"files\":[{\"oldUri\":\""
                          + folder.resolve("shop").toUri()
                          + "\",\"newUri\":\""
                          + folder.resolve("shed/iron").toUri()
                          + "\"}]}"))
              .getAsJsonObject();
      JsonArray documents = edit.getAsJsonArray("documentChanges");
      assertThat(documents).hasSize(1);
      assertThat(documents.get(0).toString())
          .contains("\"newText\":\"shed/iron/own.shop\"")
          .contains("a.plan");
    }
  }
}
