package org.handwheel.ide;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.handwheel.ide.HintSettings.Kind;
import org.handwheel.ide.Settings.Lens;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.Paper;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.SourceText;

/**
 * The settings file of a project, {@value #FILE_NAME} in its folder: lines {@code key: value},
 * blank lines, and comments from {@code #} to the end of the line. An empty file sets nothing; it
 * only marks the folder.
 *
 * <p>Keys: {@code hints} for all hints at once, {@code hints.size}, {@code hints.dial} and {@code
 * hints.direction} for one of them, which count before {@code hints}, and {@code lens}, all of them
 * {@code on} or {@code off}. For the command line {@code fail-on}, {@code baseline} and {@code
 * skip}. For pictures and sheets {@code projection} and {@code paper}.
 *
 * @param texts values that are more than {@code on} or {@code off}
 * @param problems what could not be read; the rest counts
 */
public record ProjectSettings(
    Map<String, Value> values, Map<String, String> texts, List<Problem> problems) {
  /** The file's name. */
  public static final String FILE_NAME = ".handwheel";

  /** A project without a settings file. */
  public static final ProjectSettings NONE = new ProjectSettings(Map.of(), Map.of(), List.of());

  private static final String HINTS = "hints";
  private static final String LENS = "lens";
  private static final String FAIL_ON = "fail-on";
  private static final String BASELINE = "baseline";
  private static final String SKIP = "skip";
  private static final String PROJECTION = "projection";
  private static final String PAPER = "paper";

  /** The words that a setting takes. */
  private static final Map<String, List<String>> CHOICES =
      Map.of(
          FAIL_ON, List.of("error", "warning", "none"),
          PROJECTION, List.of("first", "third"),
          PAPER, List.of("a4", "letter"));

  public ProjectSettings {
    values = Map.copyOf(values);
    texts = Map.copyOf(texts);
    problems = List.copyOf(problems);
  }

  /** What a key can be set to. */
  public enum Value {
    ON,
    OFF
  }

  /**
   * A place that could not be read.
   *
   * @param start first UTF-16 unit
   * @param end one past the last
   */
  public record Problem(int start, int end, String message) {}

  /** Reads a file's text. */
  public static ProjectSettings parse(String text) {
    return new Parser(new SourceText(text)).parse();
  }

  private static String key(Kind kind) {
    return HINTS + "." + kind.name().toLowerCase(Locale.ROOT);
  }

  private static Set<String> keys() {
    Set<String> keys = new TreeSet<>(Set.of(HINTS, LENS, BASELINE, SKIP));
    keys.addAll(CHOICES.keySet());
    for (Kind kind : Kind.values()) {
      keys.add(key(kind));
    }
    return keys;
  }

  /** The least finding that makes a check fail: error, warning or none. */
  public Optional<String> failOn() {
    return Optional.ofNullable(texts.get(FAIL_ON));
  }

  /** How the views of pictures stand to one another. */
  public Optional<Projection> projection() {
    return Optional.ofNullable(texts.get(PROJECTION))
        .map(word -> Projection.valueOf(word.toUpperCase(Locale.ROOT)));
  }

  /** What sheets are printed on. */
  public Optional<Paper> paper() {
    return Optional.ofNullable(texts.get(PAPER))
        .map(word -> Paper.valueOf(word.toUpperCase(Locale.ROOT)));
  }

  /** The file of known findings, by its path from the settings file. */
  public Optional<String> baseline() {
    return Optional.ofNullable(texts.get(BASELINE));
  }

  /** Folders that are passed over where files are searched, by their paths from the file. */
  public List<String> skip() {
    return texts.containsKey(SKIP) ? paths(texts.get(SKIP)) : List.of();
  }

  private static List<String> paths(String list) {
    return Arrays.stream(list.split(",", -1)).map(String::strip).toList();
  }

  /** These settings, and where they say nothing an editor's. */
  public Settings over(Settings editor) {
    Set<Kind> shown = EnumSet.noneOf(Kind.class);
    for (Kind kind : Kind.values()) {
      Optional<Value> said =
          Optional.ofNullable(values.get(key(kind)))
              .or(() -> Optional.ofNullable(values.get(HINTS)));
      if (said.map(value -> value == Value.ON).orElseGet(() -> editor.hints().shows(kind))) {
        shown.add(kind);
      }
    }
    Lens lens =
        Optional.ofNullable(values.get(LENS))
            .map(value -> value == Value.ON ? Lens.SHOWN : Lens.HIDDEN)
            .orElse(editor.lens());
    return new Settings(new HintSettings(shown), lens);
  }

  /** Whether a path leads below the folder it starts in, by the look of it. */
  private static boolean isBelow(String path) {
    return !path.isEmpty()
        && !path.contains("\\")
        && !path.contains(":")
        && Arrays.stream(path.split("/", -1))
            .noneMatch(name -> name.isEmpty() || name.equals(".") || name.equals(".."));
  }

  private static final class Parser {
    private final SourceText source;
    private final Map<String, Value> values = new HashMap<>();
    private final Map<String, String> texts = new HashMap<>();
    private final Map<String, Integer> lines = new TreeMap<>();
    private final List<Problem> problems = new ArrayList<>();

    Parser(SourceText source) {
      this.source = source;
    }

    ProjectSettings parse() {
      Set<String> keys = keys();
      for (int line = 0; line < source.lineCount(); line++) {
        String text = source.line(line);
        int comment = text.indexOf('#');
        String written = comment < 0 ? text : text.substring(0, comment);
        if (!written.isBlank()) {
          read(line, written, keys);
        }
      }
      return new ProjectSettings(values, texts, problems);
    }

    private void read(int line, String written, Set<String> keys) {
      int colon = written.indexOf(':');
      if (colon < 0) {
        problem(line, written, 0, "a setting is written `key: value`");
        return;
      }
      String key = written.substring(0, colon);
      String name = key.strip().toLowerCase(Locale.ROOT);
      if (!keys.contains(name)) {
        String near =
            Nearest.to(name, keys)
                .map(word -> "; did you mean `" + word + "`?")
                .orElse("; there are `" + String.join("`, `", keys) + "`");
        problem(line, key, 0, "there is no setting `" + key.strip() + "`" + near);
        return;
      }
      Integer before = lines.putIfAbsent(name, line + 1);
      if (before != null) {
        problem(line, key, 0, "`" + name + "` is set on line " + before + " already");
        return;
      }
      String value = written.substring(colon + 1);
      if (CHOICES.containsKey(name) || name.equals(BASELINE) || name.equals(SKIP)) {
        readText(line, name, written, value, colon + 1);
        return;
      }
      switch (value.strip().toLowerCase(Locale.ROOT)) {
        case "on" -> values.put(name, Value.ON);
        case "off" -> values.put(name, Value.OFF);
        default ->
            problem(
                line,
                value.isBlank() ? written : value,
                value.isBlank() ? 0 : colon + 1,
                "`" + name + "` is `on` or `off`");
      }
    }

    private void readText(int line, String name, String written, String value, int column) {
      String text = value.strip();
      List<String> choices = CHOICES.get(name);
      String word = choices == null ? text : text.toLowerCase(Locale.ROOT);
      boolean good =
          choices == null
              ? (name.equals(SKIP) ? paths(text) : List.of(text))
                  .stream().allMatch(ProjectSettings::isBelow)
              : choices.contains(word);
      if (good) {
        texts.put(name, word);
        return;
      }
      String message =
          choices != null
              ? "`" + name + "` is " + words(choices)
              : name.equals(SKIP)
                  ? "`skip` takes folders below this one, parted by commas"
                  : "`baseline` takes a file below this folder";
      boolean blank = text.isEmpty();
      problem(line, blank ? written : value, blank ? 0 : column, message);
    }

    /** For example {@code `error`, `warning` or `none`}. */
    private static String words(List<String> choices) {
      int last = choices.size() - 1;
      return "`"
          + String.join("`, `", choices.subList(0, last))
          + "` or `"
          + choices.get(last)
          + "`";
    }

    /** A problem at what is written from a column on, without the blanks about it. */
    private void problem(int line, String written, int column, String message) {
      int start = source.lineStart(line) + column;
      int blanks = written.length() - written.stripLeading().length();
      problems.add(new Problem(start + blanks, start + written.stripTrailing().length(), message));
    }
  }
}
