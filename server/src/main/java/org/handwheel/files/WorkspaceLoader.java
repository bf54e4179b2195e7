package org.handwheel.files;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.LongSupplier;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.UseLines;
import org.handwheel.syntax.SyntaxTree;

/**
 * Loads files and all that they use, directly or through other files, into a {@link Workspace}.
 *
 * <p>A file that cannot be read, lies outside the root (also through a link), or is written in
 * other capitals than on disk is left out, and {@link Workspace#unreadable()} says why.
 */
public final class WorkspaceLoader {
  private final TextSource source;
  private final LongSupplier nanoClock;

  /**
   * A loader for one workspace.
   *
   * @param nanoClock a clock for measuring, such as {@link System#nanoTime}
   */
  public WorkspaceLoader(WorkspaceRoot root, LongSupplier nanoClock) {
    this(new DiskText(root), nanoClock);
  }

  /** A loader of texts that may come from elsewhere than the disk. */
  public WorkspaceLoader(TextSource source, LongSupplier nanoClock) {
    this.source = source;
    this.nanoClock = nanoClock;
  }

  /**
   * A workspace as read.
   *
   * @param reading time spent on reading files
   * @param parsing time spent on parsing them
   */
  public record Loaded(Workspace workspace, Duration reading, Duration parsing) {}

  /**
   * Loads files by their workspace paths.
   *
   * @param open files whose text is known already, such as those open in an editor; their text
   *     counts, not what is on disk
   */
  public Loaded load(Collection<String> paths, Map<String, SyntaxTree> open) {
    return load(paths, open, Map.of());
  }

  /**
   * Loads files, going on from trees of earlier texts of theirs: what has not changed on disk keeps
   * its tree.
   *
   * @param before trees of files read earlier, by their workspace paths
   */
  public Loaded load(
      Collection<String> paths, Map<String, SyntaxTree> open, Map<String, SyntaxTree> before) {
    Map<String, SyntaxTree> files = new HashMap<>();
    Map<String, String> unreadable = new HashMap<>();
    Set<String> seen = new HashSet<>();
    Deque<String> waiting = new ArrayDeque<>(paths);
    long reading = 0;
    long parsing = 0;
    while (!waiting.isEmpty()) {
      String path = waiting.remove();
      if (!seen.add(path)) {
        continue;
      }
      SyntaxTree tree = open.get(path);
      if (tree == null) {
        long start = nanoClock.getAsLong();
        TextFile.Result result = source.read(path);
        long read = nanoClock.getAsLong();
        reading += read - start;
        if (result instanceof TextFile.Refused refused) {
          unreadable.put(path, refused.reason());
          continue;
        }
        String text = ((TextFile.Text) result).text();
        SyntaxTree earlier = before.get(path);
        tree = earlier == null ? SyntaxTree.parse(path, text) : earlier.update(text);
        parsing += nanoClock.getAsLong() - read;
      }
      files.put(path, tree);
      waiting.addAll(UseLines.paths(tree));
    }
    return new Loaded(
        new Workspace(files, unreadable), Duration.ofNanos(reading), Duration.ofNanos(parsing));
  }
}
