package org.handwheel.model;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.handwheel.syntax.SyntaxTree;

/**
 * One consistent state of all files an analysis may look at.
 *
 * @param files parsed files by workspace path: relative to the root, with forward slashes
 * @param unreadable why a file that is used could not be read
 */
public record Workspace(Map<String, SyntaxTree> files, Map<String, String> unreadable) {
  public Workspace {
    files = Map.copyOf(files);
    unreadable = Map.copyOf(unreadable);
  }

  public static Workspace of(SyntaxTree... trees) {
    return new Workspace(
        Arrays.stream(trees).collect(Collectors.toMap(SyntaxTree::path, tree -> tree)), Map.of());
  }

  public Optional<SyntaxTree> file(String path) {
    return Optional.ofNullable(files.get(path));
  }
}
