package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** From the greeting to the exit, and what an unruly editor may send between. */
@Timeout(300)
final class LifecycleTests {
  private static final int METHOD_NOT_FOUND = -32601;
  private static final int INVALID_REQUEST = -32600;
  private static final int NOT_INITIALIZED = -32002;

  @Test
  void aGoodbyeBeforeTheExitEndsWithZero() {
    LspClient client = LspClient.initialized(Clients.PUSH);
    assertThat(client.call("shutdown", JsonNull.INSTANCE)).isEqualTo(JsonNull.INSTANCE);
    client.notify("exit", JsonNull.INSTANCE);
    assertThat(client.exitCode()).isZero();
  }

  @Test
  void anExitWithoutAGoodbyeEndsWithOne() {
    LspClient client = LspClient.initialized(Clients.PUSH);
    client.notify("exit", JsonNull.INSTANCE);
    assertThat(client.exitCode()).isEqualTo(1);
  }

  @Test
  void anEditorThatDiesEndsTheServer() {
    LspClient client = LspClient.initialized(Clients.PUSH);
    client.hangUp();
    assertThat(client.exitCode()).isEqualTo(1);
  }

  @Test
  void anEditorThatIsGoneAlreadyEndsTheServer() throws Exception {
    String java = ProcessHandle.current().info().command().orElseThrow();
    Process process = new ProcessBuilder(java, "-version").redirectErrorStream(true).start();
    process.getInputStream().readAllBytes();
    process.waitFor();
    LspClient client = LspClient.start();
    JsonObject params = JsonParser.parseString("{\"capabilities\":{}}").getAsJsonObject();
    params.addProperty("processId", process.pid());
    var unused = client.request("initialize", params);
    assertThat(client.exitCode()).isEqualTo(1);
  }

  @Test
  void anEditorThatDiesWithoutClosingItsStreamEndsTheServer() throws Exception {
    String java = ProcessHandle.current().info().command().orElseThrow();
    // It lives for a moment, mostly longer than the greeting takes.
    Process process = new ProcessBuilder(java, "-version").redirectErrorStream(true).start();
    LspClient client = LspClient.start();
    JsonObject params = JsonParser.parseString("{\"capabilities\":{}}").getAsJsonObject();
    params.addProperty("processId", process.pid());
    var unused = client.request("initialize", params);
    process.getInputStream().readAllBytes();
    assertThat(client.exitCode()).isEqualTo(1);
  }

  @Test
  void nothingIsAnsweredBeforeTheGreeting() {
    try (LspClient client = LspClient.start()) {
      JsonObject error =
          client.callForError("textDocument/hover", LspClient.at("file:///a.plan", 0, 0));
      assertThat(error.get("code").getAsInt()).isEqualTo(NOT_INITIALIZED);
      client.open("file:///a.plan", 1, "rubbish");
      client.initialize(Clients.PLAIN, "null");
      assertThat(client.received("textDocument/publishDiagnostics")).isEmpty();
    }
  }

  @Test
  void anExitBeforeTheGreetingEndsTheServer() {
    LspClient client = LspClient.start();
    client.notify("exit", JsonNull.INSTANCE);
    assertThat(client.exitCode()).isEqualTo(1);
  }

  @Test
  void aSecondGreetingIsRefused() {
    try (LspClient client = LspClient.initialized(Clients.PLAIN)) {
      JsonObject params =
          JsonParser.parseString("{\"processId\":null,\"capabilities\":{}}").getAsJsonObject();
      assertThat(client.callForError("initialize", params).get("code").getAsInt())
          .isEqualTo(INVALID_REQUEST);
    }
  }

  @Test
  void nothingIsAnsweredAfterTheGoodbye() {
    LspClient client = LspClient.initialized(Clients.PUSH);
    client.call("shutdown", JsonNull.INSTANCE);
    client.open("file:///a.plan", 1, "rubbish");
    JsonObject error =
        client.callForError("textDocument/hover", LspClient.at("file:///a.plan", 0, 0));
    assertThat(error.get("code").getAsInt()).isEqualTo(INVALID_REQUEST);
    client.notify("exit", JsonNull.INSTANCE);
    assertThat(client.exitCode()).isZero();
  }

  @Test
  void unknownRequestsAndNotificationsDoNoHarm() {
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      JsonObject error = client.callForError("textDocument/unheardOf", new JsonObject());
      assertThat(error.get("code").getAsInt()).isEqualTo(METHOD_NOT_FOUND);
      client.notify("textDocument/unheardOf", new JsonObject());
      client.notify("$/unheardOf", new JsonObject());
      client.open("file:///a.plan", 1, "plan \"A\"\n  units mm\n");
      client.diagnostics("file:///a.plan", 1);
    }
  }

  @Test
  void aFileThatIsNotOpenHasNoAnswersAndNoErrors() {
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      String uri = "file:///never-opened.plan";
      assertThat(client.call("textDocument/hover", LspClient.at(uri, 0, 0)))
          .isEqualTo(JsonNull.INSTANCE);
      assertThat(
              client.call("textDocument/documentSymbol", LspClient.document(uri)).getAsJsonArray())
          .isEmpty();
      client.change(uri, 2, "plan");
      client.close(uri);
    }
  }

  @Test
  void malformedPositionsAreTakenAsTheNearestOnes() {
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      String uri = "untitled:a.plan";
      client.open(uri, 1, "plan \"A\"\n  units mm\npart\n  length 3\n");
      for (int[] position :
          new int[][] {
            {-1, 0}, {0, -7}, {99, 0}, {1, 9999}, {Integer.MAX_VALUE, Integer.MAX_VALUE}
          }) {
        client.call("textDocument/hover", LspClient.at(uri, position[0], position[1]));
        client.call("textDocument/definition", LspClient.at(uri, position[0], position[1]));
        client.call("textDocument/documentHighlight", LspClient.at(uri, position[0], position[1]));
      }
      JsonObject withoutPosition = LspClient.document(uri);
      noStackTrace(LspClient.await(client.request("textDocument/hover", withoutPosition)));
      noStackTrace(LspClient.await(client.request("textDocument/hover", JsonNull.INSTANCE)));
      noStackTrace(
          LspClient.await(client.request("textDocument/hover", JsonParser.parseString("[1]"))));
      client.call("textDocument/hover", LspClient.at(uri, 0, 0));
    }
  }

  @Test
  void whatIsNoJsonIsAnsweredShortly() {
    LspClient client = LspClient.initialized(Clients.PUSH);
    byte[] rubbish = "{\"jsonrpc\": \"2.0\", \"id\": 77, ".getBytes(StandardCharsets.UTF_8);
    client.sendRaw("Content-Length: " + rubbish.length + "\r\n\r\n", rubbish);
    client.open("file:///a.plan", 1, "plan \"A\"\n  units mm\n");
    client.diagnostics("file:///a.plan", 1);
    client.received().forEach(LifecycleTests::noStackTrace);
    client.close();
  }

  @Test
  void oddAddressesCanBeOpened() {
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      for (String uri :
          new String[] {
            "untitled:Untitled-1",
            "file:///%20a%20b.plan",
            "no address",
            "http://host/x.plan",
            "file://host/share/x.plan",
            ""
          }) {
        client.open(uri, 1, "plan \"A\"\n  units mm\n");
        client.diagnostics(uri, 1);
      }
    }
  }

  @Test
  void theMetaModelIsAtHandOrThisIsSkipped() {
    Assumptions.assumeTrue(
        MetaModel.path().isPresent(),
        "the protocol's meta model is not at hand; set HANDWHEEL_META_MODEL to check messages");
    LspClient client = LspClient.start();
    client.initialize(Clients.PUSH, "null");
    assertThat(client.violations()).isEmpty();
    JsonObject wrong =
        JsonParser.parseString(
                "{\"jsonrpc\":\"2.0\",\"id\":1,\"result\":{\"capabilities\":{\"hoverProvider\":\"yes\"}}}")
            .getAsJsonObject();
    assertThat(MetaModel.find().orElseThrow().response("initialize", wrong)).isNotEmpty();
    client.close();
  }

  private static void noStackTrace(JsonObject message) {
    assertThat(message.toString())
        .doesNotContain("\\tat ")
        .doesNotContain("Exception\\n")
        .doesNotContain(".java:");
  }
}
