package org.handwheel.editors;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.handwheel.ide.HintSettings;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;

/** What the extension for VS Code says of the server and of the language is so. */
class ExtensionTests {
  private static final Path FOLDER = Path.of("../editor-client/vscode");

  /** A tab stop of a snippet: $1, ${1}, ${1:usual}, ${1|one,other|}. */
  private static final Pattern STOP =
      Pattern.compile("\\$(?:(\\d)|\\{(\\d+)(?::([^}]*)|\\|([^|]*)\\|)?})");

  /** What a snippet stands in to be read; the others are whole sections. */
  private static final Map<String, String> AROUND =
      Map.of(
          "Rough, measure, finish", "setup one\n",
          "Hole", "part\n",
          "Circle of holes", "part\n",
          "Drill, ream", "setup one\n",
          "Silence a rule", "setup one\nlock z  ");

  @Test
  void settingsAreThoseTheServerReads() throws IOException {
    JsonObject properties =
        json("package.json")
            .getAsJsonObject("contributes")
            .getAsJsonObject("configuration")
            .getAsJsonObject("properties");
    Set<String> expected =
        new TreeSet<>(Set.of("handwheel.lens", "handwheel.java.home", "handwheel.trace.server"));
    for (HintSettings.Kind kind : HintSettings.Kind.values()) {
      expected.add("handwheel.hints." + kind.name().toLowerCase(Locale.ROOT));
    }
    assertThat(new TreeSet<>(properties.keySet())).isEqualTo(expected);
    for (HintSettings.Kind kind : HintSettings.Kind.values()) {
      String name = "handwheel.hints." + kind.name().toLowerCase(Locale.ROOT);
      assertThat(properties.getAsJsonObject(name).get("default").getAsBoolean())
          .isEqualTo(HintSettings.ALL.shows(kind));
    }
  }

  @Test
  void snippetsAreRead() throws IOException {
    Map<String, String> wrong = new TreeMap<>();
    for (Map.Entry<String, JsonElement> snippet : json("snippets/handwheel.json").entrySet()) {
      String body =
          snippet.getValue().getAsJsonObject().getAsJsonArray("body").asList().stream()
              .map(JsonElement::getAsString)
              .collect(Collectors.joining("\n"));
      String text = AROUND.getOrDefault(snippet.getKey(), "") + filled(body) + "\n";
      SyntaxTree tree = SyntaxTree.parse("x.plan", text);
      List<Finding> problems =
          tree.sections().stream().flatMap(section -> section.problems().stream()).toList();
      if (!problems.isEmpty()) {
        wrong.put(snippet.getKey(), text + problems);
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void theVersionIsTheServers() throws IOException {
    String pom = Files.readString(Path.of("../pom.xml"));
    assertThat(pom)
        .contains("<version>" + json("package.json").get("version").getAsString() + "</version>");
  }

  /** The snippet as it is where only the proposed values are taken. */
  private static String filled(String body) {
    Map<String, String> values = new HashMap<>();
    return STOP.matcher(body)
        .replaceAll(
            stop -> {
              String number = stop.group(1) != null ? stop.group(1) : stop.group(2);
              String usual =
                  stop.group(3) != null
                      ? stop.group(3)
                      : stop.group(4) != null ? stop.group(4).split(",")[0] : "";
              return Matcher.quoteReplacement(
                  usual.isEmpty() ? values.getOrDefault(number, "") : store(values, number, usual));
            });
  }

  private static String store(Map<String, String> values, String number, String usual) {
    values.put(number, usual);
    return usual;
  }

  private static JsonObject json(String file) throws IOException {
    return JsonParser.parseString(Files.readString(FOLDER.resolve(file))).getAsJsonObject();
  }
}
