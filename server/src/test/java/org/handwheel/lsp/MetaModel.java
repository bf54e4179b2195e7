package org.handwheel.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The protocol's machine-readable meta model (version 3.17, as the protocol's owners publish it),
 * and messages checked against it. The file is not part of the repository: it is looked for where
 * the environment variable {@code HANDWHEEL_META_MODEL} says, else beside the repository in {@code
 * shared/lsp}.
 */
final class MetaModel {
  /** Of version 3.18, sent only where the client announced it. */
  private static final Set<String> LATER = Set.of("rangesSupport");

  private final Map<String, JsonObject> structures = new HashMap<>();
  private final Map<String, JsonObject> aliases = new HashMap<>();
  private final Map<String, JsonObject> enumerations = new HashMap<>();
  private final Map<String, JsonObject> requests = new HashMap<>();
  private final Map<String, JsonObject> notifications = new HashMap<>();

  private MetaModel(JsonObject model) {
    index(model, "structures", "name", structures);
    index(model, "typeAliases", "name", aliases);
    index(model, "enumerations", "name", enumerations);
    index(model, "requests", "method", requests);
    index(model, "notifications", "method", notifications);
  }

  private static void index(
      JsonObject model, String list, String key, Map<String, JsonObject> into) {
    for (JsonElement entry : model.getAsJsonArray(list)) {
      into.put(entry.getAsJsonObject().get(key).getAsString(), entry.getAsJsonObject());
    }
  }

  /** The meta model, if its file is at hand. */
  static Optional<MetaModel> find() {
    return path().map(MetaModel::read);
  }

  static Optional<Path> path() {
    String name = System.getenv("HANDWHEEL_META_MODEL");
    Stream<Path> places =
        name != null
            ? Stream.of(Path.of(name))
            : Stream.of("..", ".", "../..", "../../..")
                .map(up -> Path.of(up, "shared", "lsp", "metaModel-3.17.json"));
    return places.filter(Files::isRegularFile).findFirst();
  }

  private static MetaModel read(Path path) {
    try {
      return new MetaModel(JsonParser.parseString(Files.readString(path)).getAsJsonObject());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is wrong with a request or notification of the server. */
  List<String> incoming(JsonObject message) {
    String method = message.get("method").getAsString();
    JsonObject known = message.has("id") ? requests.get(method) : notifications.get(method);
    if (known == null) {
      return List.of("unknown method " + method);
    }
    List<String> problems = new ArrayList<>();
    if (known.has("params")) {
      check(known.getAsJsonObject("params"), message.get("params"), method, problems);
    }
    return problems;
  }

  /** What is wrong with the server's answer to a request. */
  List<String> response(String method, JsonObject message) {
    JsonObject known = method == null ? null : requests.get(method);
    if (known == null || message.has("error")) {
      return message.has("error") ? error(message) : List.of();
    }
    if (!message.has("result")) {
      return List.of(method + ": neither result nor error");
    }
    List<String> problems = new ArrayList<>();
    check(known.getAsJsonObject("result"), message.get("result"), method, problems);
    return problems;
  }

  private static List<String> error(JsonObject message) {
    JsonObject error = message.getAsJsonObject("error");
    return error.has("code") && error.has("message")
        ? List.of()
        : List.of("an error without code or message: " + message);
  }

  // ---- Types
  // ------------------------------------------------------------------------------------------

  private void check(JsonObject type, JsonElement value, String at, List<String> out) {
    if (value == null) {
      out.add(at + ": missing");
      return;
    }
    switch (type.get("kind").getAsString()) {
      case "base" -> base(type.get("name").getAsString(), value, at, out);
      case "reference" -> reference(type.get("name").getAsString(), value, at, out);
      case "array" -> {
        if (!value.isJsonArray()) {
          out.add(at + ": no array: " + value);
          return;
        }
        JsonArray array = value.getAsJsonArray();
        for (int i = 0; i < array.size(); i++) {
          check(type.getAsJsonObject("element"), array.get(i), at + "[" + i + "]", out);
        }
      }
      case "map" -> {
        if (!value.isJsonObject()) {
          out.add(at + ": no map: " + value);
          return;
        }
        value
            .getAsJsonObject()
            .entrySet()
            .forEach(
                entry ->
                    check(
                        type.getAsJsonObject("value"),
                        entry.getValue(),
                        at + "." + entry.getKey(),
                        out));
      }
      case "or" -> or(type.getAsJsonArray("items"), value, at, out);
      case "and" ->
          type.getAsJsonArray("items")
              .forEach(item -> check(item.getAsJsonObject(), value, at, out));
      case "tuple" -> {
        JsonArray items = type.getAsJsonArray("items");
        if (!value.isJsonArray() || value.getAsJsonArray().size() != items.size()) {
          out.add(at + ": no tuple: " + value);
          return;
        }
        for (int i = 0; i < items.size(); i++) {
          check(items.get(i).getAsJsonObject(), value.getAsJsonArray().get(i), at, out);
        }
      }
      case "literal" -> {
        if (!value.isJsonObject()) {
          out.add(at + ": no object: " + value);
          return;
        }
        Map<String, JsonObject> properties = new LinkedHashMap<>();
        type.getAsJsonObject("value")
            .getAsJsonArray("properties")
            .forEach(
                p ->
                    properties.put(
                        p.getAsJsonObject().get("name").getAsString(), p.getAsJsonObject()));
        object(properties, value.getAsJsonObject(), at, out);
      }
      case "stringLiteral", "integerLiteral", "booleanLiteral" -> {
        if (!value.equals(type.get("value"))) {
          out.add(at + ": not " + type.get("value") + ": " + value);
        }
      }
      default -> out.add(at + ": a kind of type this check does not know: " + type.get("kind"));
    }
  }

  private void or(JsonArray items, JsonElement value, String at, List<String> out) {
    List<String> best = null;
    for (JsonElement item : items) {
      List<String> problems = new ArrayList<>();
      check(item.getAsJsonObject(), value, at, problems);
      if (problems.isEmpty()) {
        return;
      }
      if (best == null || problems.size() < best.size()) {
        best = problems;
      }
    }
    out.add(at + ": none of the types allowed; nearest: " + best);
  }

  private static void base(String name, JsonElement value, String at, List<String> out) {
    boolean primitive = value.isJsonPrimitive();
    boolean fits =
        switch (name) {
          case "null" -> value.isJsonNull();
          case "boolean" -> primitive && value.getAsJsonPrimitive().isBoolean();
          case "integer", "uinteger" ->
              isInteger(value, name.equals("uinteger") ? 0 : Integer.MIN_VALUE);
          case "decimal" -> primitive && value.getAsJsonPrimitive().isNumber();
          default -> primitive && value.getAsJsonPrimitive().isString();
        };
    if (!fits) {
      out.add(at + ": no " + name + ": " + value);
    }
  }

  private static boolean isInteger(JsonElement value, long least) {
    if (!value.isJsonPrimitive() || !value.getAsJsonPrimitive().isNumber()) {
      return false;
    }
    double number = value.getAsDouble();
    return number == Math.rint(number) && number >= least && number <= Integer.MAX_VALUE;
  }

  private void reference(String name, JsonElement value, String at, List<String> out) {
    if (name.equals("LSPAny")) {
      return;
    }
    if (name.equals("LSPObject")) {
      if (!value.isJsonObject()) {
        out.add(at + ": no object: " + value);
      }
      return;
    }
    if (aliases.containsKey(name)) {
      check(aliases.get(name).getAsJsonObject("type"), value, at, out);
    } else if (enumerations.containsKey(name)) {
      enumeration(enumerations.get(name), value, at, out);
    } else if (!value.isJsonObject()) {
      out.add(at + ": no " + name + ": " + value);
    } else {
      object(
          properties(name, new HashSet<>()), value.getAsJsonObject(), at + "(" + name + ")", out);
    }
  }

  private void enumeration(JsonObject type, JsonElement value, String at, List<String> out) {
    boolean custom =
        type.has("supportsCustomValues") && type.get("supportsCustomValues").getAsBoolean();
    for (JsonElement entry : type.getAsJsonArray("values")) {
      if (entry.getAsJsonObject().get("value").equals(value)) {
        return;
      }
    }
    if (!custom) {
      out.add(at + ": no " + type.get("name").getAsString() + ": " + value);
    }
  }

  private Map<String, JsonObject> properties(String name, Set<String> seen) {
    Map<String, JsonObject> properties = new LinkedHashMap<>();
    JsonObject structure = structures.get(name);
    if (structure == null || !seen.add(name)) {
      return properties;
    }
    for (String list : List.of("extends", "mixins")) {
      if (structure.has(list)) {
        for (JsonElement base : structure.getAsJsonArray(list)) {
          properties.putAll(properties(base.getAsJsonObject().get("name").getAsString(), seen));
        }
      }
    }
    structure
        .getAsJsonArray("properties")
        .forEach(
            p ->
                properties.put(p.getAsJsonObject().get("name").getAsString(), p.getAsJsonObject()));
    return properties;
  }

  private void object(
      Map<String, JsonObject> properties, JsonObject value, String at, List<String> out) {
    properties.forEach(
        (name, property) -> {
          boolean optional = property.has("optional") && property.get("optional").getAsBoolean();
          if (value.has(name)) {
            check(property.getAsJsonObject("type"), value.get(name), at + "." + name, out);
          } else if (!optional) {
            out.add(at + "." + name + ": missing");
          }
        });
    for (String name : value.keySet()) {
      if (!properties.containsKey(name) && !LATER.contains(name)) {
        out.add(at + "." + name + ": not in the protocol");
      }
    }
  }
}
