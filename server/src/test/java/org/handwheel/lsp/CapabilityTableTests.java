package org.handwheel.lsp;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The table of what the server can do, against what it announces and the tests there are. */
@Timeout(300)
final class CapabilityTableTests {
  /** Announces all that the server asks about. */
  static final String FULL =
      """
      {
        "general": {"positionEncodings": ["utf-16"]},
        "workspace": {
          "configuration": true, "workspaceFolders": true,
          "workspaceEdit": {"documentChanges": true},
          "didChangeConfiguration": {"dynamicRegistration": true},
          "didChangeWatchedFiles": {"dynamicRegistration": true},
          "diagnostics": {"refreshSupport": true},
          "inlayHint": {"refreshSupport": true},
          "codeLens": {"refreshSupport": true}
        },
        "textDocument": {
          "diagnostic": {}, "rename": {"prepareSupport": true},
          "publishDiagnostics": {"codeDescriptionSupport": true, "dataSupport": true},
          "completion": {"completionItem": {"snippetSupport": true}},
          "codeAction": {
            "dataSupport": true, "resolveSupport": {"properties": ["edit"]},
            "codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["quickfix"]}}
          }
        }
      }
      """;

  /** The methods each announcement stands for, by its path. */
  static final Map<String, List<String>> METHODS =
      Map.ofEntries(
          entry("positionEncoding", List.of("initialize")),
          entry(
              "textDocumentSync",
              List.of("textDocument/didOpen", "textDocument/didChange", "textDocument/didClose")),
          entry("textDocumentSync.save", List.of("textDocument/didSave")),
          entry("hoverProvider", List.of("textDocument/hover")),
          entry("completionProvider", List.of("textDocument/completion")),
          entry("completionProvider.resolveProvider", List.of("completionItem/resolve")),
          entry("signatureHelpProvider", List.of("textDocument/signatureHelp")),
          entry("definitionProvider", List.of("textDocument/definition")),
          entry("referencesProvider", List.of("textDocument/references")),
          entry("documentHighlightProvider", List.of("textDocument/documentHighlight")),
          entry("documentSymbolProvider", List.of("textDocument/documentSymbol")),
          entry("workspaceSymbolProvider", List.of("workspace/symbol")),
          entry("codeActionProvider", List.of("textDocument/codeAction")),
          entry("codeActionProvider.resolveProvider", List.of("codeAction/resolve")),
          entry("codeLensProvider", List.of("textDocument/codeLens")),
          entry("documentFormattingProvider", List.of("textDocument/formatting")),
          entry("documentRangeFormattingProvider", List.of("textDocument/rangeFormatting")),
          entry("documentOnTypeFormattingProvider", List.of("textDocument/onTypeFormatting")),
          entry("renameProvider", List.of("textDocument/rename")),
          entry("renameProvider.prepareProvider", List.of("textDocument/prepareRename")),
          entry("documentLinkProvider", List.of("textDocument/documentLink")),
          entry("foldingRangeProvider", List.of("textDocument/foldingRange")),
          entry("selectionRangeProvider", List.of("textDocument/selectionRange")),
          entry("semanticTokensProvider", List.of("textDocument/semanticTokens/full")),
          entry("semanticTokensProvider.range", List.of("textDocument/semanticTokens/range")),
          entry("experimental", List.of("handwheel/picture")),
          entry("inlayHintProvider", List.of("textDocument/inlayHint")),
          entry("diagnosticProvider", List.of("textDocument/diagnostic")),
          entry("diagnosticProvider.workspaceDiagnostics", List.of("workspace/diagnostic")),
          entry("workspace.workspaceFolders", List.of("workspace/didChangeWorkspaceFolders")),
          entry("workspace.fileOperations.willRename", List.of("workspace/willRenameFiles")));

  /** Announcements that only hold others. */
  private static final Set<String> HOLDERS = Set.of("workspace", "workspace.fileOperations");

  private static final Pattern CODE = Pattern.compile("`([^`]+)`");

  private static Path server() {
    Path fromTop = Path.of("server");
    return Files.isDirectory(fromTop.resolve("src")) ? fromTop : Path.of("");
  }

  /** The test classes by the methods of their rows. */
  private static Map<String, Set<String>> table() throws IOException {
    Map<String, Set<String>> table = new TreeMap<>();
    for (String line : Files.readAllLines(server().resolve("README.md"))) {
      String[] cells = line.split("\\|", -1);
      if (cells.length == 6) {
        List<String> tests = codes(cells[4]);
        for (String method : codes(cells[2])) {
          table.computeIfAbsent(method, key -> new TreeSet<>()).addAll(tests);
        }
      }
    }
    return table;
  }

  private static List<String> codes(String cell) {
    List<String> codes = new ArrayList<>();
    Matcher matcher = CODE.matcher(cell);
    while (matcher.find()) {
      codes.add(matcher.group(1));
    }
    return codes;
  }

  private static boolean isAnnounced(JsonElement value) {
    return !value.isJsonNull()
        && !(value.isJsonPrimitive()
            && value.getAsJsonPrimitive().isBoolean()
            && !value.getAsBoolean());
  }

  /** The paths of what is announced: all at the top, and below what stands for a method too. */
  static Set<String> announced(JsonObject capabilities) {
    Set<String> paths = new TreeSet<>();
    collect("", capabilities, paths);
    return paths;
  }

  private static void collect(String prefix, JsonObject object, Set<String> paths) {
    object
        .entrySet()
        .forEach(
            entry -> {
              String path = prefix + entry.getKey();
              boolean asksForARow =
                  prefix.isEmpty() || prefix.startsWith("workspace.") || METHODS.containsKey(path);
              boolean isDetail =
                  prefix.startsWith("workspace.") && METHODS.containsKey(parent(path));
              if (isAnnounced(entry.getValue()) && asksForARow && !isDetail) {
                paths.add(path);
              }
              if (entry.getValue().isJsonObject()) {
                collect(path + ".", entry.getValue().getAsJsonObject(), paths);
              }
            });
  }

  private static String parent(String path) {
    return path.substring(0, path.lastIndexOf('.'));
  }

  @Test
  void whateverIsAnnouncedHasARowWithATest() throws IOException {
    Map<String, Set<String>> table = table();
    Set<String> announced;
    try (LspClient client = LspClient.start()) {
      announced = announced(client.initialize(FULL, "null"));
    }
    announced.removeAll(HOLDERS);
    assertThat(METHODS.keySet()).as("methods known here").containsAll(announced);
    Set<String> methods =
        announced.stream().flatMap(path -> METHODS.get(path).stream()).collect(Collectors.toSet());
    assertThat(methods)
        .contains("textDocument/hover", "workspace/diagnostic")
        .hasSizeGreaterThan(25);
    assertThat(table.keySet()).as("methods with a row in server/README.md").containsAll(methods);
  }

  @Test
  void noRowClaimsWhatIsNotAnnounced() throws IOException {
    Set<String> rows = table().keySet();
    Set<String> announced;
    try (LspClient client = LspClient.start()) {
      announced = announced(client.initialize(FULL, "null"));
    }
    METHODS.forEach(
        (path, methods) -> {
          if (!announced.contains(path)) {
            assertThat(rows)
                .as("rows; %s is not announced", path)
                .doesNotContainAnyElementsOf(methods);
          }
        });
  }

  @Test
  void everyTestNamedExistsAndTests() throws IOException {
    Map<String, Path> classes = new TreeMap<>();
    try (Stream<Path> files = Files.walk(server().resolve("src/test/java"))) {
      files
          .filter(file -> file.toString().endsWith("Tests.java"))
          .forEach(file -> classes.put(file.getFileName().toString().replace(".java", ""), file));
    }
    for (Map.Entry<String, Set<String>> row : table().entrySet()) {
      assertThat(row.getValue()).as(row.getKey()).isNotEmpty();
      for (String test : row.getValue()) {
        assertThat(classes).as(row.getKey()).containsKey(test);
        assertThat(Files.readString(classes.get(test)))
            .containsAnyOf("@Test", "@Property", "@ParameterizedTest");
      }
    }
  }
}
