package org.handwheel.ide;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;

/**
 * A file with marks in its text: {@code $0} is the cursor, {@code [[...]]} are ranges. Plans may
 * use the example shop by {@code use "shop/inch-mill.shop"}.
 */
final class Fixture {
  static final String SHOP = "shop/inch-mill.shop";

  /** The head of a plan in millimetres that uses the example shop. */
  static final String HEAD =
      """
      language 1
      plan "Rudder stock keep"
        units mm
        use "shop/inch-mill.shop"
      """;

  private final View view;
  private final int cursor;
  private final List<int[]> ranges;

  private Fixture(View view, int cursor, List<int[]> ranges) {
    this.view = view;
    this.cursor = cursor;
    this.ranges = ranges;
  }

  /** The text without marks. */
  record Marked(String text, int cursor, List<int[]> ranges) {}

  static Marked marks(String marked) {
    StringBuilder text = new StringBuilder();
    List<int[]> ranges = new ArrayList<>();
    int cursor = -1;
    int open = -1;
    for (int i = 0; i < marked.length(); ) {
      if (marked.startsWith("$0", i)) {
        cursor = text.length();
        i += 2;
      } else if (marked.startsWith("[[", i)) {
        open = text.length();
        i += 2;
      } else if (marked.startsWith("]]", i) && open >= 0) {
        ranges.add(new int[] {open, text.length()});
        open = -1;
        i += 2;
      } else {
        text.append(marked.charAt(i++));
      }
    }
    return new Marked(text.toString(), cursor, ranges);
  }

  /** A plan file in the root, with the example shop beside it. */
  static Fixture plan(String marked) {
    return of("keep.plan", marked, Map.of());
  }

  /** The example shop as the file looked at, with marks. */
  static Fixture shop(String marked) {
    return of("mine.shop", marked, Map.of());
  }

  static Fixture of(String path, String marked, Map<String, String> others) {
    Marked marks = marks(marked);
    Map<String, SyntaxTree> files = new LinkedHashMap<>();
    files.put(SHOP, SyntaxTree.parse(SHOP, example(SHOP)));
    others.forEach((name, text) -> files.put(name, SyntaxTree.parse(name, text)));
    files.put(path, SyntaxTree.parse(path, marks.text()));
    Workspace workspace = new Workspace(files, Map.of());
    StandardTables tables = StandardTables.builtIn();
    View view = new View(workspace, new Checker(tables).check(workspace, path), tables);
    return new Fixture(view, marks.cursor(), marks.ranges());
  }

  /** An example of the repository. */
  static String example(String name) {
    try {
      return Files.readString(examples().resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The examples' folder, from the module or from the repository's top. */
  static Path examples() {
    Path beside = Path.of("..", "examples");
    return Files.isDirectory(beside) ? beside : Path.of("examples");
  }

  View view() {
    return view;
  }

  int cursor() {
    return cursor;
  }

  /** The marked ranges as their texts' offsets. */
  List<int[]> ranges() {
    return ranges;
  }

  String text() {
    return view.tree().source().text();
  }

  /** The text with ranges marked, to compare with what was written. */
  static String marked(String text, List<int[]> ranges) {
    StringBuilder out = new StringBuilder(text);
    ranges.stream()
        .sorted((a, b) -> Integer.compare(b[0], a[0]))
        .forEach(
            range -> {
              out.insert(range[1], "]]");
              out.insert(range[0], "[[");
            });
    return out.toString();
  }

  static String withoutCursor(String marked) {
    return marked.replace("$0", "");
  }
}
