package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.handwheel.examples.ExampleFolder;
import org.handwheel.ide.Fixtures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Every request the server announces, asked all over the examples: none is refused or fails, and
 * each answer is as the protocol has it.
 */
@Timeout(600)
final class EveryRequestTests {
  /** Places asked about, in characters from one to the next; no divisor of usual lines. */
  private static final int STRIDE = 97;

  private static final List<String> AT_A_PLACE =
      List.of(
          "textDocument/hover",
          "textDocument/completion",
          "textDocument/signatureHelp",
          "textDocument/definition",
          "textDocument/references",
          "textDocument/documentHighlight",
          "handwheel/picture");

  private static final List<String> OF_A_TEXT =
      List.of(
          "textDocument/documentSymbol",
          "textDocument/codeLens",
          "textDocument/formatting",
          "textDocument/documentLink",
          "textDocument/foldingRange",
          "textDocument/semanticTokens/full",
          "textDocument/diagnostic");

  private static final List<String> OF_A_RANGE =
      List.of(
          "textDocument/rangeFormatting",
          "textDocument/semanticTokens/range",
          "textDocument/inlayHint");

  private final Set<String> asked = new TreeSet<>();

  private JsonElement ask(LspClient client, String method, JsonElement params) {
    asked.add(method);
    return client.call(method, params);
  }

  private static JsonObject with(JsonObject params, String name, JsonElement value) {
    params.add(name, value);
    return params;
  }

  @Test
  void everyAnnouncedRequestIsAnsweredAllOverTheExamples() {
    try (LspClient client = LspClient.start()) {
      String folder = ExampleFolder.PATH.toAbsolutePath().normalize().toUri().toString();
      Set<String> announced =
          CapabilityTableTests.announced(
              client.initialize(
                  CapabilityTableTests.FULL, "[{\"uri\":\"" + folder + "\",\"name\":\"w\"}]"));
      client.notify("initialized", new JsonObject());
      for (Path example : Fixtures.examples()) {
        askAbout(client, example);
      }
      ask(client, "workspace/symbol", LspClient.object("query", new JsonPrimitive("top")));
      ask(client, "workspace/diagnostic", LspClient.object("previousResultIds", new JsonArray()));
      ask(client, "workspace/willRenameFiles", LspClient.object("files", new JsonArray()));
      Set<String> requests =
          announced.stream()
              .flatMap(path -> CapabilityTableTests.METHODS.getOrDefault(path, List.of()).stream())
              .filter(method -> !method.contains("/did") && !method.equals("initialize"))
              .collect(Collectors.toCollection(TreeSet::new));
      assertThat(requests).hasSizeGreaterThan(25);
      assertThat(asked).containsAll(requests);
      assertThat(client.violations()).isEmpty();
    }
  }

  private void askAbout(LspClient client, Path example) {
    String text = Fixtures.read(example);
    String uri = example.toAbsolutePath().normalize().toUri().toString();
    client.open(uri, 1, text);
    for (String method : OF_A_TEXT) {
      JsonObject params = LspClient.document(uri);
      if (method.equals("textDocument/formatting")) {
        params.add("options", options());
      }
      ask(client, method, params);
    }
    String[] lines = text.split("\n", -1);
    JsonObject all = LspClient.range(0, 0, lines.length, 0);
    for (String method : OF_A_RANGE) {
      JsonObject params = with(LspClient.document(uri), "range", all);
      params.add("options", options());
      ask(client, method, params);
    }
    int offset = 0;
    int next = 0;
    for (int line = 0; line < lines.length; line++) {
      for (; next <= offset + lines[line].length(); next += STRIDE) {
        askAt(client, uri, line, next - offset);
      }
      offset += lines[line].length() + 1;
    }
    client.close(uri);
  }

  private static JsonObject options() {
    JsonObject options = new JsonObject();
    options.addProperty("tabSize", 2);
    options.addProperty("insertSpaces", true);
    return options;
  }

  private void askAt(LspClient client, String uri, int line, int column) {
    for (String method : AT_A_PLACE) {
      JsonObject params = LspClient.at(uri, line, column);
      if (method.equals("textDocument/references")) {
        JsonObject context = new JsonObject();
        context.addProperty("includeDeclaration", true);
        params.add("context", context);
      }
      JsonElement answer = ask(client, method, params);
      if (method.equals("textDocument/completion")) {
        JsonArray items = answer.getAsJsonObject().getAsJsonArray("items");
        if (!items.isEmpty()) {
          ask(client, "completionItem/resolve", items.get(line % items.size()));
        }
      }
    }
    JsonArray positions = new JsonArray();
    positions.add(LspClient.position(line, column));
    ask(
        client,
        "textDocument/selectionRange",
        with(LspClient.document(uri), "positions", positions));
    JsonObject typed = with(LspClient.at(uri, line, column), "options", options());
    typed.addProperty("ch", "\n");
    ask(client, "textDocument/onTypeFormatting", typed);
    changes(client, uri, line, column);
    rename(client, uri, line, column);
  }

  private void changes(LspClient client, String uri, int line, int column) {
    JsonObject params = LspClient.document(uri);
    params.add("range", LspClient.range(line, 0, line, column));
    params.add("context", LspClient.object("diagnostics", new JsonArray()));
    List<JsonObject> actions = new ArrayList<>();
    ask(client, "textDocument/codeAction", params)
        .getAsJsonArray()
        .forEach(action -> actions.add(action.getAsJsonObject()));
    // A draft takes its time: tests of its own ask for it.
    for (JsonObject action : actions) {
      if (action.has("data") && !action.get("title").getAsString().startsWith("Draft")) {
        JsonObject resolved = ask(client, "codeAction/resolve", action).getAsJsonObject();
        assertThat(resolved.has("edit")).as(action.toString()).isTrue();
      }
    }
  }

  /** A name can be changed, or there is a reason in words. */
  private void rename(LspClient client, String uri, int line, int column) {
    for (String method : List.of("textDocument/prepareRename", "textDocument/rename")) {
      asked.add(method);
      JsonObject params = LspClient.at(uri, line, column);
      params.addProperty("newName", "another-name");
      JsonObject response = LspClient.await(client.request(method, params));
      if (response.has("error")) {
        JsonObject error = response.getAsJsonObject("error");
        assertThat(error.get("code").getAsInt()).as(response.toString()).isEqualTo(-32803);
        assertThat(error.get("message").getAsString()).contains(" ");
      }
    }
  }
}
