package org.handwheel.ide;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;

/** Texts with a marked cursor, and views of texts beside the examples' shops. */
public final class Fixtures {
  private static final Path EXAMPLES = Path.of("..", "examples");

  private Fixtures() {}

  /** A text and where its {@code $0} was. */
  public record Marked(String text, int offset) {
    public static Marked of(String marked) {
      int at = marked.indexOf("$0");
      if (at < 0) {
        throw new IllegalArgumentException("no $0");
      }
      return new Marked(marked.substring(0, at) + marked.substring(at + 2), at);
    }
  }

  public static List<Path> examples() {
    try (Stream<Path> files = Files.walk(EXAMPLES)) {
      return files
          .filter(file -> file.toString().endsWith(".plan") || file.toString().endsWith(".shop"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static String path(Path example) {
    return EXAMPLES.relativize(example).toString().replace('\\', '/');
  }

  public static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The view of a text that stands at a path beside the examples. */
  public static View view(String path, String text) {
    return view(path, text, Map.of());
  }

  public static View view(String path, String text, Map<String, String> others) {
    TreeMap<String, SyntaxTree> files = new TreeMap<>();
    for (Path example : examples()) {
      files.put(path(example), SyntaxTree.parse(path(example), read(example)));
    }
    others.forEach((name, other) -> files.put(name, SyntaxTree.parse(name, other)));
    files.put(path, SyntaxTree.parse(path, text));
    Workspace workspace = new Workspace(files, Map.of());
    StandardTables tables = StandardTables.builtIn();
    return new View(workspace, new Checker(tables).check(workspace, path), tables);
  }
}
