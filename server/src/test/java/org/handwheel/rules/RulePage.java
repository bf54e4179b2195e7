package org.handwheel.rules;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;

/**
 * A rule's page, taken apart.
 *
 * <p>Examples are fenced blocks, each a whole file: {@code ```plan bad}, {@code ```plan good},
 * {@code ```shop bad} and {@code ```shop good}. A block {@code ```shop NAME} is a further file that
 * the examples of the page may use. The shops of {@code examples/shop} may be used too.
 *
 * <p>Behind a line of a bad example {@code # expect: RULE} (several with commas between) marks what
 * is found there. The marks are taken off before the example is checked, so that they hide nothing:
 * a comment of the line's own may stand before the mark.
 *
 * @param text the page, with plain line ends
 */
record RulePage(String id, String text) {
  private static final Pattern BLOCK =
      Pattern.compile("^```(plan|shop) (\\S+)\\n(.*?)^```$", Pattern.MULTILINE | Pattern.DOTALL);
  private static final Pattern MARK = Pattern.compile("[ \\t]*# expect: (.+)$");

  /** Read once: what is read from them does not change. */
  private static final Map<String, SyntaxTree> SHOPS = read(Path.of("..", "examples", "shop"));

  /** What an example is meant to show. */
  enum Shows {
    BAD,
    GOOD
  }

  /**
   * An example of the page.
   *
   * @param expected {@code LINE: RULE} for each mark, sorted
   * @param text without the marks
   */
  record Example(
      Shows shows, String path, int number, String text, List<String> expected, RulePage page) {
    Checked check() {
      return new Checker(StandardTables.builtIn()).check(page.workspace(path, text), path);
    }

    /** By one rule alone. */
    Checked check(Rule rule) {
      return new Checker(StandardTables.builtIn(), List.of(rule))
          .check(page.workspace(path, text), path);
    }

    @Override
    public String toString() {
      return page.id() + " " + shows + " " + number;
    }
  }

  static Optional<RulePage> of(String id) {
    try (InputStream page = Rules.class.getResourceAsStream("pages/" + id + ".md")) {
      return page == null
          ? Optional.empty()
          : Optional.of(
              new RulePage(
                  id,
                  new String(page.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  List<Example> examples() {
    List<Example> examples = new ArrayList<>();
    Matcher block = BLOCK.matcher(text);
    while (block.find()) {
      String word = block.group(2);
      if (isExample(word)) {
        Shows shows = word.equals("bad") ? Shows.BAD : Shows.GOOD;
        String path = "example." + block.group(1);
        examples.add(example(shows, path, examples.size() + 1, block.group(3)));
      }
    }
    return examples;
  }

  private Example example(Shows shows, String path, int number, String marked) {
    List<String> expected = new ArrayList<>();
    List<String> plain = new ArrayList<>();
    for (String line : marked.split("\n", -1)) {
      Matcher mark = MARK.matcher(line);
      boolean found = mark.find();
      plain.add(found ? line.substring(0, mark.start()) : line);
      if (found) {
        for (String rule : mark.group(1).split(",", -1)) {
          expected.add(place(plain.size(), rule.strip()));
        }
      }
    }
    expected.sort(null);
    return new Example(shows, path, number, String.join("\n", plain), expected, this);
  }

  private static boolean isExample(String word) {
    return word.equals("bad") || word.equals("good");
  }

  Workspace workspace(String path, String text) {
    TreeMap<String, SyntaxTree> files = new TreeMap<>(shops());
    Matcher block = BLOCK.matcher(this.text);
    while (block.find()) {
      if (!isExample(block.group(2))) {
        files.put(block.group(2), SyntaxTree.parse(block.group(2), block.group(3)));
      }
    }
    files.put(path, SyntaxTree.parse(path, text));
    return new Workspace(files, Map.of());
  }

  /** The shops of the examples, by the path an example uses. */
  static TreeMap<String, SyntaxTree> shops() {
    return new TreeMap<>(SHOPS);
  }

  private static Map<String, SyntaxTree> read(Path folder) {
    TreeMap<String, SyntaxTree> files = new TreeMap<>();
    try (Stream<Path> shops = Files.list(folder)) {
      for (Path shop : shops.toList()) {
        String path = "shop/" + shop.getFileName();
        files.put(path, SyntaxTree.parse(path, Files.readString(shop)));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Map.copyOf(files);
  }

  /** Where a finding lies and which it is, as the marks say it. */
  static String place(SyntaxTree tree, Finding finding) {
    return tree.contains(finding.origin())
        ? place(tree.line(finding.origin()) + 1, finding.rule())
        : "another file: " + finding.rule();
  }

  private static String place(int line, String rule) {
    return "%3d: %s".formatted(line, rule);
  }

  /** The text of a section, by its title; empty if the page has none. */
  String section(String title) {
    return Arrays.stream(text.split("\n## ", -1))
        .filter(part -> part.startsWith(title + "\n"))
        .map(part -> part.substring(title.length()).strip())
        .findFirst()
        .orElse("");
  }

  /** The paragraph below the title. */
  String lead() {
    String[] paragraphs = text.split("\n\n", -1);
    return paragraphs.length < 2 ? "" : paragraphs[1].strip();
  }
}
