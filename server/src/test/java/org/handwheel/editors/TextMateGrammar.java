package org.handwheel.editors;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A TextMate grammar of single patterns, run as an editor runs it: of all patterns the one that
 * matches first, and of those the one that is written first; each line by itself.
 */
final class TextMateGrammar {
  private record Rule(Pattern pattern, String name, Map<Integer, String> captures) {}

  private final List<Rule> rules;

  private TextMateGrammar(List<Rule> rules) {
    this.rules = rules;
  }

  static TextMateGrammar read(Path file) throws IOException {
    JsonObject grammar = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
    List<Rule> rules = new ArrayList<>();
    for (JsonElement element : grammar.getAsJsonArray("patterns")) {
      JsonObject rule = element.getAsJsonObject();
      Map<Integer, String> captures = new TreeMap<>();
      if (rule.has("captures")) {
        rule.getAsJsonObject("captures")
            .entrySet()
            .forEach(
                entry ->
                    captures.put(
                        Integer.valueOf(entry.getKey()),
                        entry.getValue().getAsJsonObject().get("name").getAsString()));
      }
      String name = rule.has("name") ? rule.get("name").getAsString() : "";
      rules.add(new Rule(Pattern.compile(rule.get("match").getAsString()), name, captures));
    }
    return new TextMateGrammar(rules);
  }

  /**
   * The scope of each character of a line, and a number that differs between neighbouring words.
   */
  record Scopes(List<String> names, List<Integer> words) {}

  Scopes scopes(String line) {
    String[] names = new String[line.length()];
    Integer[] words = new Integer[line.length()];
    Arrays.fill(names, "");
    Arrays.fill(words, -1);
    int at = 0;
    int word = 0;
    while (at < line.length()) {
      Rule first = null;
      Matcher found = null;
      for (Rule rule : rules) {
        Matcher matcher = rule.pattern().matcher(line);
        matcher.useTransparentBounds(true).useAnchoringBounds(false).region(at, line.length());
        if (matcher.find() && (found == null || matcher.start() < found.start())) {
          first = rule;
          found = matcher;
        }
      }
      if (first == null || found == null) {
        break;
      }
      if (found.end() == found.start()) {
        throw new IllegalStateException("matches nothing: " + first.pattern());
      }
      Arrays.fill(names, found.start(), found.end(), first.name());
      Arrays.fill(words, found.start(), found.end(), word++);
      for (Map.Entry<Integer, String> capture : first.captures().entrySet()) {
        if (found.start(capture.getKey()) >= 0) {
          Arrays.fill(
              names,
              found.start(capture.getKey()),
              found.end(capture.getKey()),
              capture.getValue());
        }
      }
      at = found.end();
    }
    return new Scopes(List.of(names), List.of(words));
  }
}
