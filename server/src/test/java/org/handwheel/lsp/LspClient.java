package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;

/**
 * An editor for tests: it speaks the protocol as JSON over pipes to a server in the same process,
 * and keeps every message it gets. If the protocol's meta model is at hand, every message is
 * checked against it, see {@link MetaModel}.
 */
final class LspClient implements AutoCloseable {
  /** Longer than anything takes, shorter than a person waits. */
  static final Duration PATIENCE = Duration.ofSeconds(100);

  private static final Gson GSON = new GsonBuilder().serializeNulls().create();

  private final OutputStream out;
  private final InputStream in;
  private final CompletableFuture<Integer> exit = new CompletableFuture<>();
  private final AtomicInteger ids = new AtomicInteger();
  private final Map<Integer, CompletableFuture<JsonObject>> waiting = new ConcurrentHashMap<>();
  private final Map<Integer, String> methods = new ConcurrentHashMap<>();
  private final List<JsonObject> received = new ArrayList<>();
  private final List<String> violations = new ArrayList<>();
  private final Optional<MetaModel> model = MetaModel.find();
  private volatile JsonElement configuration = JsonNull.INSTANCE;

  private LspClient(OutputStream out, InputStream in) {
    this.out = out;
    this.in = in;
  }

  /** Starts a server and connects to it; nothing is sent yet. */
  static LspClient start() {
    try {
      Pipe toServer = Pipe.open();
      Pipe toClient = Pipe.open();
      LspClient client =
          new LspClient(
              Channels.newOutputStream(toServer.sink()),
              new BufferedInputStream(Channels.newInputStream(toClient.source())));
      InputStream serverIn = Channels.newInputStream(toServer.source());
      OutputStream serverOut = Channels.newOutputStream(toClient.sink());
      daemon(
          "test-server",
          () -> {
            try {
              client.exit.complete(Serve.serve(serverIn, serverOut, "test"));
            } catch (InterruptedException e) {
              Thread.currentThread().interrupt();
            }
          });
      daemon("test-client", client::read);
      return client;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void daemon(String name, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  /** What the editor answers from now on when it is asked for its settings (JSON). */
  void setConfiguration(String handwheelSection) {
    JsonArray answers = new JsonArray();
    answers.add(JsonParser.parseString(handwheelSection));
    configuration = answers;
  }

  /** Starts a server and introduces an editor with these capabilities (JSON). */
  static LspClient initialized(String capabilities) {
    LspClient client = start();
    client.initialize(capabilities, "null");
    client.notify("initialized", new JsonObject());
    return client;
  }

  /** Sends the introduction; gives back the server's capabilities. */
  JsonObject initialize(String capabilities, String workspaceFolders) {
    JsonObject params = new JsonObject();
    params.add("processId", JsonNull.INSTANCE);
    params.add("rootUri", JsonNull.INSTANCE);
    params.add("capabilities", JsonParser.parseString(capabilities));
    params.add("workspaceFolders", JsonParser.parseString(workspaceFolders));
    return call("initialize", params).getAsJsonObject().getAsJsonObject("capabilities");
  }

  // ---- Sending
  // --------------------------------------------------------------------------------------

  /** Sends a request; the future gives the whole response. */
  CompletableFuture<JsonObject> request(String method, JsonElement params) {
    int id = ids.incrementAndGet();
    CompletableFuture<JsonObject> answer = new CompletableFuture<>();
    waiting.put(id, answer);
    methods.put(id, method);
    // The id stands before what may be unreadable, as editors have it.
    JsonObject message = new JsonObject();
    message.addProperty("jsonrpc", "2.0");
    message.addProperty("id", id);
    message.addProperty("method", method);
    message.add("params", params);
    send(message);
    return answer;
  }

  /** The id of the last request. */
  int lastId() {
    return ids.get();
  }

  /** Sends a request and waits for its result, which must be no error. */
  JsonElement call(String method, JsonElement params) {
    JsonObject response = await(request(method, params));
    assertThat(response.get("error")).as("%s of %s", response, method).isNull();
    return response.get("result");
  }

  /** Sends a request and waits for its error. */
  JsonObject callForError(String method, JsonElement params) {
    JsonObject response = await(request(method, params));
    assertThat(response.get("error")).as("%s", response).isNotNull();
    return response.getAsJsonObject("error");
  }

  void notify(String method, JsonElement params) {
    send(message(method, params));
  }

  private static JsonObject message(String method, JsonElement params) {
    JsonObject message = new JsonObject();
    message.addProperty("jsonrpc", "2.0");
    message.addProperty("method", method);
    message.add("params", params);
    return message;
  }

  private void send(JsonObject message) {
    byte[] body = GSON.toJson(message).getBytes(StandardCharsets.UTF_8);
    sendRaw("Content-Length: " + body.length + "\r\n\r\n", body);
  }

  /** Sends bytes as they are. */
  synchronized void sendRaw(String header, byte[] body) {
    try {
      out.write(header.getBytes(StandardCharsets.US_ASCII));
      out.write(body);
      out.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Ends the stream as an editor that dies does. */
  void hangUp() {
    try {
      out.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  // ---- Receiving
  // --------------------------------------------------------------------------------------

  private void read() {
    try {
      for (JsonObject message = next(); message != null; message = next()) {
        take(message);
      }
    } catch (IOException e) {
      // The server has gone.
    }
  }

  private JsonObject next() throws IOException {
    int length = -1;
    for (String line = line(); ; line = line()) {
      if (line == null) {
        return null;
      }
      if (line.isEmpty()) {
        break;
      }
      if (line.toLowerCase(Locale.ROOT).startsWith("content-length:")) {
        length = Integer.parseInt(line.substring(line.indexOf(':') + 1).strip());
      }
    }
    byte[] body = in.readNBytes(length);
    return body.length < length
        ? null
        : JsonParser.parseString(new String(body, StandardCharsets.UTF_8)).getAsJsonObject();
  }

  private String line() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int c = in.read(); c != '\n'; c = in.read()) {
      if (c < 0) {
        return null;
      }
      if (c != '\r') {
        line.write(c);
      }
    }
    return line.toString(StandardCharsets.US_ASCII);
  }

  private void take(JsonObject message) {
    check(message);
    synchronized (received) {
      received.add(message);
      received.notifyAll();
    }
    boolean hasId = message.has("id") && !message.get("id").isJsonNull();
    if (message.has("method")) {
      if (hasId) {
        JsonObject answer = new JsonObject();
        answer.addProperty("jsonrpc", "2.0");
        answer.add("id", message.get("id"));
        boolean asksSettings = isMethod(message, "workspace/configuration");
        answer.add("result", asksSettings ? configuration : JsonNull.INSTANCE);
        send(answer);
      }
    } else if (hasId) {
      CompletableFuture<JsonObject> answer = waiting.get(message.get("id").getAsInt());
      if (answer != null) {
        answer.complete(message);
      }
    }
  }

  private void check(JsonObject message) {
    if (model.isEmpty()) {
      return;
    }
    List<String> found =
        message.has("method")
            ? model.get().incoming(message)
            : message.has("id") && !message.get("id").isJsonNull()
                ? model.get().response(methods.get(message.get("id").getAsInt()), message)
                : List.of();
    synchronized (violations) {
      violations.addAll(found);
    }
  }

  /** What was sent against the protocol's meta model. */
  List<String> violations() {
    synchronized (violations) {
      return List.copyOf(violations);
    }
  }

  /** What of a part of an answer is against the protocol's meta model. */
  List<String> violationsIn(String method, JsonElement part) {
    JsonObject answer = object("result", part);
    return model.map(known -> known.response(method, answer)).orElse(List.of());
  }

  static <T> T await(CompletableFuture<T> future) {
    try {
      return future.get(PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      throw new AssertionError("no answer in " + PATIENCE, e);
    } catch (ExecutionException | InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  /** Waits for a message that is wanted, also one that has come already. */
  JsonObject awaitMessage(String what, Predicate<JsonObject> wanted) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    synchronized (received) {
      while (true) {
        Optional<JsonObject> found = received.stream().filter(wanted).findFirst();
        if (found.isPresent()) {
          return found.get();
        }
        long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
        if (left <= 0) {
          throw new AssertionError("no " + what + " in " + PATIENCE + "; got " + received);
        }
        try {
          received.wait(left);
        } catch (InterruptedException e) {
          throw new AssertionError(e);
        }
      }
    }
  }

  List<JsonObject> received() {
    synchronized (received) {
      return List.copyOf(received);
    }
  }

  /** All notifications or requests of a method so far. */
  List<JsonObject> received(String method) {
    return received().stream().filter(message -> isMethod(message, method)).toList();
  }

  private static boolean isMethod(JsonObject message, String method) {
    return message.has("method") && message.get("method").getAsString().equals(method);
  }

  /** The server's exit code. */
  int exitCode() {
    return await(exit);
  }

  // ---- Documents
  // ----------------------------------------------------------------------------------------

  void open(String uri, int version, String text) {
    JsonObject document = new JsonObject();
    document.addProperty("uri", uri);
    document.addProperty("languageId", "handwheel");
    document.addProperty("version", version);
    document.addProperty("text", text);
    notify("textDocument/didOpen", object("textDocument", document));
  }

  /** Replaces the whole text. */
  void change(String uri, int version, String text) {
    change(uri, version, object("text", new JsonPrimitive(text)));
  }

  /** Sends changes as they are. */
  void change(String uri, int version, JsonObject... changes) {
    JsonObject document = new JsonObject();
    document.addProperty("uri", uri);
    document.addProperty("version", version);
    JsonArray all = new JsonArray();
    for (JsonObject change : changes) {
      all.add(change);
    }
    JsonObject params = object("textDocument", document);
    params.add("contentChanges", all);
    notify("textDocument/didChange", params);
  }

  static JsonObject edit(int line, int column, int endLine, int endColumn, String text) {
    JsonObject change = object("range", range(line, column, endLine, endColumn));
    change.addProperty("text", text);
    return change;
  }

  void close(String uri) {
    notify("textDocument/didClose", object("textDocument", object("uri", new JsonPrimitive(uri))));
  }

  /** The diagnostics published for a version of a file. */
  JsonArray diagnostics(String uri, int version) {
    return awaitMessage(
            "diagnostics of " + uri + " version " + version,
            message ->
                isMethod(message, "textDocument/publishDiagnostics")
                    && message.getAsJsonObject("params").get("uri").getAsString().equals(uri)
                    && message.getAsJsonObject("params").has("version")
                    && message.getAsJsonObject("params").get("version").getAsInt() == version)
        .getAsJsonObject("params")
        .getAsJsonArray("diagnostics");
  }

  /** The rules of diagnostics, in their order. */
  static List<String> rules(JsonArray diagnostics) {
    List<String> rules = new ArrayList<>();
    diagnostics.forEach(found -> rules.add(found.getAsJsonObject().get("code").getAsString()));
    return rules;
  }

  // ---- JSON
  // -----------------------------------------------------------------------------------------------

  static JsonObject object(String name, JsonElement value) {
    JsonObject object = new JsonObject();
    object.add(name, value);
    return object;
  }

  static JsonObject position(int line, int column) {
    JsonObject position = new JsonObject();
    position.addProperty("line", line);
    position.addProperty("character", column);
    return position;
  }

  static JsonObject range(int line, int column, int endLine, int endColumn) {
    JsonObject range = object("start", position(line, column));
    range.add("end", position(endLine, endColumn));
    return range;
  }

  static JsonObject document(String uri) {
    return object("textDocument", object("uri", new JsonPrimitive(uri)));
  }

  static JsonObject at(String uri, int line, int column) {
    JsonObject params = document(uri);
    params.add("position", position(line, column));
    return params;
  }

  /** Says goodbye, waits for the server to end, and checks what it sent. */
  @Override
  public void close() {
    if (!exit.isDone()) {
      await(request("shutdown", JsonNull.INSTANCE));
      notify("exit", JsonNull.INSTANCE);
      exitCode();
    }
    assertThat(violations()).as("messages against the meta model").isEmpty();
  }
}
