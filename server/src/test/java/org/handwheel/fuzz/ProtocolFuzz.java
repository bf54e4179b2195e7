package org.handwheel.fuzz;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.handwheel.lsp.Serve;

/**
 * Sends the server whole sessions with something wrong in them: bytes of the stream, headers, or
 * values of the messages. Whatever comes, the server has to end when its input ends, and all it
 * says has to be messages without a stack trace.
 *
 * <p>As a program it takes how many sessions to try and the first one's number; a session depends
 * on its number alone.
 */
public final class ProtocolFuzz {
  /** Longer than any session takes on a busy machine; more is a hang. */
  private static final long MOST_SECONDS = 100;

  /** The library's own log of what it could not read; held, for loggers are forgotten otherwise. */
  static final Logger LIBRARY = Logger.getLogger("org.eclipse.lsp4j.jsonrpc");

  private static final String URI = "file:///fuzz/a.plan";

  private final List<JsonObject> session;

  ProtocolFuzz(String plan) {
    this.session = session(plan);
  }

  /** A session that went wrong, and how. */
  record Failure(int number, String what) {}

  /** Tries so many sessions; the failures. */
  List<Failure> run(int first, int count) throws InterruptedException {
    LIBRARY.setLevel(Level.OFF);
    List<Failure> failures = new ArrayList<>();
    for (int number = first; number < first + count; number++) {
      String what = tried(mutant(new Random(number)));
      if (!what.isEmpty()) {
        failures.add(new Failure(number, what));
      }
    }
    return failures;
  }

  /** What went wrong with one stream; empty if nothing did. */
  static String tried(byte[] input) throws InterruptedException {
    ByteArrayOutputStream output = new ByteArrayOutputStream();
    CompletableFuture<Integer> end = new CompletableFuture<>();
    Thread server =
        new Thread(
            () -> {
              try {
                end.complete(Serve.serve(new ByteArrayInputStream(input), output, "fuzz"));
              } catch (Throwable e) {
                end.completeExceptionally(e);
              }
            },
            "fuzzed-server");
    server.setDaemon(true);
    server.start();
    try {
      end.get(MOST_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      return "it hangs";
    } catch (java.util.concurrent.ExecutionException e) {
      return "it ends with " + e.getCause();
    }
    return wrong(output.toByteArray());
  }

  /** What is wrong with what the server said; empty if nothing is. */
  private static String wrong(byte[] output) {
    String text = new String(output, StandardCharsets.ISO_8859_1);
    int at = 0;
    while (at < text.length()) {
      int head = text.indexOf("\r\n\r\n", at);
      if (!text.startsWith("Content-Length: ", at) || head < 0) {
        return "no message but: " + text.substring(at, Math.min(text.length(), at + 80));
      }
      int length = Integer.parseInt(text.substring(at + 16, head).strip());
      int end = head + 4 + length;
      if (end > text.length()) {
        // The last message may be cut off: the server ended while a worker was still writing.
        return "";
      }
      String body = text.substring(head + 4, end);
      if (!JsonParser.parseString(body).isJsonObject()) {
        return "no message but: " + body;
      }
      if (body.contains("\\tat ") || body.contains(".java:") || body.contains("Error\"")) {
        return "a stack trace: " + body;
      }
      at = end;
    }
    return "";
  }

  private byte[] mutant(Random random) {
    List<JsonObject> messages = new ArrayList<>();
    session.forEach(message -> messages.add(message.deepCopy()));
    int kind = random.nextInt(4);
    if (kind != 0) {
      for (int i = random.nextInt(3); i >= 0; i--) {
        // The greeting stays whole more often than not, or little else is ever reached.
        int which = random.nextInt(5) == 0 ? 0 : 1 + random.nextInt(messages.size() - 1);
        messages.set(which, spoilt(messages.get(which), random).getAsJsonObject());
      }
    }
    if (kind == 1) {
      java.util.Collections.shuffle(messages.subList(1, messages.size()), random);
    }
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    messages.forEach(message -> stream.writeBytes(frame(message.toString(), random, kind == 2)));
    byte[] bytes = stream.toByteArray();
    if (kind == 0) {
      for (int i = random.nextInt(8); i >= 0; i--) {
        bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
      }
    }
    return random.nextInt(6) == 0
        ? java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length))
        : bytes;
  }

  private static byte[] frame(String body, Random random, boolean oddHeaders) {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    String head = "Content-Length: " + bytes.length + "\r\n\r\n";
    if (oddHeaders && random.nextInt(6) == 0) {
      head =
          switch (random.nextInt(9)) {
            case 0 -> "Content-Length: 2147483647\r\n\r\n";
            case 1 -> "Content-Length: 99999999999999\r\n\r\n";
            case 2 -> "Content-Length: -1\r\n\r\n";
            case 3 -> "Content-Length: many\r\n\r\n";
            case 4 -> "\r\n\r\n";
            case 5 -> "Content-Length: " + (bytes.length / 2) + "\r\n\r\n";
            case 6 -> "Content-Type: x; charset=no-such\r\n" + head;
            case 7 -> "X".repeat(5000) + "\r\n" + head;
            default -> "Content-Length:" + bytes.length + "\n\n";
          };
    }
    ByteArrayOutputStream frame = new ByteArrayOutputStream();
    frame.writeBytes(head.getBytes(StandardCharsets.US_ASCII));
    frame.writeBytes(bytes);
    return frame.toByteArray();
  }

  /** The same with one value somewhere in it changed. */
  private static JsonElement spoilt(JsonElement value, Random random) {
    if (value instanceof JsonObject object && !object.isEmpty()) {
      List<String> keys = new ArrayList<>(object.keySet());
      String key = keys.get(random.nextInt(keys.size()));
      if (random.nextInt(8) == 0) {
        object.remove(key);
      } else {
        object.add(key, inside(object.get(key), random));
      }
      return object;
    }
    if (value instanceof JsonArray array && !array.isEmpty()) {
      int at = random.nextInt(array.size());
      array.set(at, inside(array.get(at), random));
      return array;
    }
    return other(random);
  }

  private static JsonElement inside(JsonElement value, Random random) {
    boolean deeper = !value.isJsonPrimitive() && !value.isJsonNull() && random.nextInt(4) != 0;
    return deeper ? spoilt(value, random) : other(random);
  }

  private static JsonElement other(Random random) {
    return switch (random.nextInt(12)) {
      case 0 -> JsonNull.INSTANCE;
      case 1 -> new JsonPrimitive(-1);
      case 2 -> new JsonPrimitive(Integer.MAX_VALUE);
      case 3 -> new JsonPrimitive(1e300);
      case 4 -> new JsonPrimitive("\ud800\u0000\u202e");
      case 5 -> new JsonPrimitive("x".repeat(20_000));
      case 6 -> new JsonPrimitive(true);
      case 7 -> new JsonArray();
      case 8 -> new JsonObject();
      case 9 -> nested();
      case 10 -> new JsonPrimitive("file:///etc/../../%00%zz");
      default -> new JsonPrimitive("textDocument/didOpen");
    };
  }

  /** Deeper than a reader of JSON allows. */
  private static JsonArray nested() {
    JsonArray inner = new JsonArray();
    for (int i = 0; i < 300; i++) {
      JsonArray outer = new JsonArray();
      outer.add(inner);
      inner = outer;
    }
    return inner;
  }

  private static List<JsonObject> session(String plan) {
    List<JsonObject> messages = new ArrayList<>();
    messages.add(
        message(
            1,
            "initialize",
            "{\"processId\":null,\"rootUri\":null,\"capabilities\":{\"textDocument\":{\"codeAction\":"
                + "{\"codeActionLiteralSupport\":{\"codeActionKind\":{\"valueSet\":[]}}}}}}"));
    messages.add(message(0, "initialized", "{}"));
    JsonObject opened = new JsonObject();
    opened.addProperty("uri", URI);
    opened.addProperty("languageId", "handwheel");
    opened.addProperty("version", 1);
    opened.addProperty("text", plan);
    JsonObject open = new JsonObject();
    open.add("textDocument", opened);
    messages.add(message(0, "textDocument/didOpen", open.toString()));
    String file = "\"textDocument\":{\"uri\":\"" + URI + "\"}";
    String at = file + ",\"position\":{\"line\":8,\"character\":9}";
    String range =
        "\"range\":{\"start\":{\"line\":6,\"character\":2},\"end\":{\"line\":9,\"character\":4}}";
    messages.add(
        message(
            0,
            "textDocument/didChange",
            "{\"textDocument\":{\"uri\":\""
                + URI
                + "\",\"version\":2},\"contentChanges\":[{"
                + range
                + ",\"text\":\"x\\n\"}]}"));
    int id = 2;
    for (String name :
        List.of(
            "hover",
            "completion",
            "definition",
            "documentHighlight",
            "signatureHelp",
            "prepareRename")) {
      messages.add(message(id++, "textDocument/" + name, "{" + at + "}"));
    }
    for (String name :
        List.of("documentSymbol", "foldingRange", "documentLink", "codeLens", "diagnostic")) {
      messages.add(message(id++, "textDocument/" + name, "{" + file + "}"));
    }
    messages.add(message(id++, "textDocument/semanticTokens/full", "{" + file + "}"));
    messages.add(message(id++, "textDocument/inlayHint", "{" + file + "," + range + "}"));
    messages.add(
        message(
            id++,
            "textDocument/codeAction",
            "{" + file + "," + range + ",\"context\":{\"diagnostics\":[]}}"));
    messages.add(
        message(
            id++,
            "textDocument/formatting",
            "{" + file + ",\"options\":{\"tabSize\":2,\"insertSpaces\":true}}"));
    messages.add(message(id++, "textDocument/rename", "{" + at + ",\"newName\":\"other\"}"));
    messages.add(
        message(
            id++,
            "textDocument/selectionRange",
            "{" + file + ",\"positions\":[{\"line\":3,\"character\":3}]}"));
    messages.add(
        message(
            id++,
            "textDocument/references",
            "{" + at + ",\"context\":{\"includeDeclaration\":true}}"));
    messages.add(message(id++, "workspace/symbol", "{\"query\":\"a\"}"));
    messages.add(
        message(
            0,
            "workspace/didChangeWatchedFiles",
            "{\"changes\":[{\"uri\":\"" + URI + "\",\"type\":2}]}"));
    messages.add(message(0, "$/cancelRequest", "{\"id\":3}"));
    messages.add(message(0, "textDocument/didClose", "{" + file + "}"));
    messages.add(message(id, "shutdown", "null"));
    return messages;
  }

  private static JsonObject message(int id, String method, String params) {
    JsonObject message = new JsonObject();
    message.addProperty("jsonrpc", "2.0");
    if (id > 0) {
      message.addProperty("id", id);
    }
    message.addProperty("method", method);
    message.add("params", JsonParser.parseString(params));
    return message;
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    int count = Integer.parseInt(args[0]);
    int first = args.length > 1 ? Integer.parseInt(args[1]) : 0;
    String plan = Files.readString(Path.of("../examples/bearing-block.plan"));
    List<Failure> failures = new ProtocolFuzz(plan).run(first, count);
    failures.forEach(failure -> System.out.println(failure.number() + ": " + failure.what()));
    System.out.println(count + " sessions from " + first + ", " + failures.size() + " went wrong");
  }
}
