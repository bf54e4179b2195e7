package org.handwheel.fuzz;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import org.handwheel.lsp.Serve;

/**
 * A session with a server in this process, over pipes, message by message and without a library's
 * help: what an editor that keeps to nothing could send can be sent.
 */
final class WireSession {
  private static final long MOST_SECONDS = 100;

  private final OutputStream toServer;
  private final PipedOutputStream serverSays;
  private final CompletableFuture<Integer> end = new CompletableFuture<>();
  private final Map<String, JsonObject> published = new HashMap<>();
  private final Map<Integer, JsonObject> answers = new HashMap<>();
  private int lastId;
  private long messages;
  private int faults;

  private WireSession() throws IOException {
    PipedOutputStream pipe = new PipedOutputStream();
    PipedInputStream serverHears = new PipedInputStream(pipe, 1 << 20);
    toServer = new BufferedOutputStream(pipe);
    serverSays = new PipedOutputStream();
    PipedInputStream fromServer = new PipedInputStream(serverSays, 1 << 20);
    daemon("soaked-server", () -> serve(serverHears));
    daemon("soak-reader", () -> read(fromServer));
  }

  /** Starts a server and greets it. */
  static WireSession begin(String rootUri) throws IOException {
    WireSession session = new WireSession();
    JsonObject params = new JsonObject();
    params.addProperty("rootUri", rootUri);
    params.add(
        "capabilities",
        JsonParser.parseString(
            "{\"textDocument\":{\"publishDiagnostics\":{\"relatedInformation\":true}}}"));
    session.answer(session.request("initialize", params));
    session.notify("initialized", new JsonObject());
    return session;
  }

  private static void daemon(String name, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  private void serve(InputStream in) {
    try {
      end.complete(Serve.serve(in, serverSays, "soak"));
    } catch (Throwable e) {
      end.completeExceptionally(e);
    }
  }

  // ---- To the server
  // --------------------------------------------------------------------------------------

  void notify(String method, JsonElement params) throws IOException {
    JsonObject message = new JsonObject();
    message.addProperty("jsonrpc", "2.0");
    message.addProperty("method", method);
    message.add("params", params);
    send(message);
  }

  /** Asks something; the number of the question. */
  int request(String method, JsonElement params) throws IOException {
    JsonObject message = new JsonObject();
    message.addProperty("jsonrpc", "2.0");
    message.addProperty("id", ++lastId);
    message.addProperty("method", method);
    message.add("params", params);
    send(message);
    return lastId;
  }

  private void send(JsonObject message) throws IOException {
    byte[] body = message.toString().getBytes(StandardCharsets.UTF_8);
    toServer.write(
        ("Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
    toServer.write(body);
    toServer.flush();
  }

  /** Bytes as they are, whole messages or not. */
  void sendRaw(byte[] bytes) throws IOException {
    toServer.write(bytes);
    toServer.flush();
  }

  void open(String uri, int version, String text) throws IOException {
    JsonObject item = new JsonObject();
    item.addProperty("uri", uri);
    item.addProperty("languageId", "handwheel");
    item.addProperty("version", version);
    item.addProperty("text", text);
    JsonObject params = new JsonObject();
    params.add("textDocument", item);
    notify("textDocument/didOpen", params);
  }

  /** Puts a text in the place of the one between two offsets of a text without its like. */
  void change(String uri, int version, String before, int start, int end, String text)
      throws IOException {
    JsonObject range = new JsonObject();
    range.add("start", position(before, start));
    range.add("end", position(before, end));
    JsonObject change = new JsonObject();
    change.add("range", range);
    change.addProperty("text", text);
    JsonArray changes = new JsonArray();
    changes.add(change);
    JsonObject file = new JsonObject();
    file.addProperty("uri", uri);
    file.addProperty("version", version);
    JsonObject params = new JsonObject();
    params.add("textDocument", file);
    params.add("contentChanges", changes);
    notify("textDocument/didChange", params);
  }

  void close(String uri) throws IOException {
    JsonObject params = new JsonObject();
    params.add("textDocument", file(uri));
    notify("textDocument/didClose", params);
  }

  static JsonObject file(String uri) {
    JsonObject file = new JsonObject();
    file.addProperty("uri", uri);
    return file;
  }

  static JsonObject position(String text, int offset) {
    int line = 0;
    int start = 0;
    for (int at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) {
      line++;
      start = at + 1;
    }
    JsonObject position = new JsonObject();
    position.addProperty("line", line);
    position.addProperty("character", offset - start);
    return position;
  }

  /** The editor is gone without a word. */
  void breakOff() throws IOException {
    toServer.close();
  }

  /** Says goodbye; the server's exit code. */
  int end() throws IOException, InterruptedException {
    answer(request("shutdown", JsonNull.INSTANCE));
    notify("exit", JsonNull.INSTANCE);
    return exitCode();
  }

  /** Waits for the server to end. */
  int exitCode() throws InterruptedException {
    try {
      return end.get(MOST_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException | ExecutionException e) {
      throw new IllegalStateException("the server did not end well", e);
    }
  }

  // ---- From the server
  // -----------------------------------------------------------------------------------

  private void read(InputStream in) {
    try {
      while (true) {
        int length = 0;
        StringBuilder line = new StringBuilder();
        for (int c = in.read(); ; c = in.read()) {
          if (c < 0) {
            return;
          }
          if (c == '\n') {
            if (line.toString().isBlank()) {
              break;
            }
            String head = line.toString().strip();
            if (head.startsWith("Content-Length:")) {
              length = Integer.parseInt(head.substring(15).strip());
            }
            line.setLength(0);
          } else {
            line.append((char) c);
          }
        }
        byte[] body = in.readNBytes(length);
        take(JsonParser.parseString(new String(body, StandardCharsets.UTF_8)).getAsJsonObject());
      }
    } catch (IOException e) {
      // The server has ended, and its end of the pipe with it.
    }
  }

  private synchronized void take(JsonObject message) {
    messages++;
    if (message.has("method")) {
      if (message.get("method").getAsString().equals("textDocument/publishDiagnostics")) {
        JsonObject params = message.getAsJsonObject("params");
        published.put(params.get("uri").getAsString(), params);
        faults += params.toString().contains("internal error") ? 1 : 0;
      }
    } else if (message.has("id") && !message.get("id").isJsonNull()) {
      answers.put(message.get("id").getAsInt(), message);
    }
    notifyAll();
  }

  /** Waits for the answer to a question; each can be had once. */
  synchronized JsonObject answer(int id) {
    await(() -> answers.containsKey(id), "an answer to " + id);
    return answers.remove(id);
  }

  /** Waits for the findings of a version of a text. */
  synchronized JsonArray findings(String uri, int version) {
    await(
        () -> {
          JsonObject last = published.get(uri);
          return last != null && last.has("version") && last.get("version").getAsInt() == version;
        },
        "findings of version " + version + " of " + uri);
    return published.get(uri).getAsJsonArray("diagnostics");
  }

  /** How often the server could not check a text for a fault of its own. */
  synchronized int faultCount() {
    return faults;
  }

  synchronized long messageCount() {
    return messages;
  }

  private synchronized void await(BooleanSupplier said, String what) {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(MOST_SECONDS);
    while (!said.getAsBoolean()) {
      long left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
      if (left <= 0) {
        throw new IllegalStateException("the server never sent " + what);
      }
      try {
        wait(left);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException(e);
      }
    }
  }
}
