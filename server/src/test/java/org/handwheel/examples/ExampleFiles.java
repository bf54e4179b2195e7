package org.handwheel.examples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;

/** The plans and shops under {@code examples}, as one workspace. */
final class ExampleFiles {
  static final Checker CHECKER = new Checker(StandardTables.load());

  private ExampleFiles() {}

  /**
   * A finding as tests compare it.
   *
   * @param line counted from 1
   */
  record Found(int line, String rule) {}

  /** The text of every file, by its workspace path. */
  static Map<String, String> texts() {
    Map<String, String> texts = new HashMap<>();
    try (Stream<Path> files = Files.walk(ExampleFolder.PATH)) {
      for (Path file : files.filter(ExampleFiles::isOurs).sorted().toList()) {
        String path = ExampleFolder.PATH.relativize(file).toString().replace('\\', '/');
        texts.put(path, Files.readString(file));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return texts;
  }

  private static boolean isOurs(Path file) {
    return file.toString().endsWith(".plan") || file.toString().endsWith(".shop");
  }

  static String text(String path) {
    String text = texts().get(path);
    if (text == null) {
      throw new IllegalArgumentException("no example " + path);
    }
    return text;
  }

  /** The examples with one file's text in place of, or beside, those on disk. */
  static Checked check(String path, String text) {
    Map<String, String> texts = texts();
    texts.put(path, text);
    SyntaxTree[] trees =
        texts.entrySet().stream()
            .map(file -> SyntaxTree.parse(file.getKey(), file.getValue()))
            .toArray(SyntaxTree[]::new);
    return CHECKER.check(Workspace.of(trees), path);
  }

  static Checked check(String path) {
    return check(path, text(path));
  }

  static List<Found> found(Checked checked) {
    List<Found> found = new ArrayList<>();
    for (Finding finding : checked.findings()) {
      found.add(new Found(checked.tree().line(finding.origin()) + 1, finding.rule()));
    }
    return found;
  }

  /** What a failing test shows of the findings. */
  static String words(Checked checked) {
    StringBuilder words = new StringBuilder();
    for (Finding finding : checked.findings()) {
      words
          .append("\n  ")
          .append(checked.tree().line(finding.origin()) + 1)
          .append(' ')
          .append(finding.rule())
          .append(": ")
          .append(finding.message());
    }
    return words.toString();
  }
}
