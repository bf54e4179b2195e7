package org.handwheel.files;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
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
  private final WorkspaceRoot root;
  private final LongSupplier nanoClock;

  /**
   * A loader for one workspace.
   *
   * @param nanoClock a clock for measuring, such as {@link System#nanoTime}
   */
  public WorkspaceLoader(WorkspaceRoot root, LongSupplier nanoClock) {
    this.root = root;
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
        TextFile.Result result = read(path);
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

  private TextFile.Result read(String path) {
    try {
      Path file = root.file(path);
      Path real = file.toRealPath();
      Path realRoot = root.real();
      if (!real.startsWith(realRoot)) {
        return new TextFile.Refused("a link leads outside the workspace");
      }
      String written = WorkspaceRoot.slashed(realRoot.relativize(real));
      if (written.equalsIgnoreCase(path) && !written.equals(path)) {
        // It opens here, but not on a system that tells capitals apart.
        return new TextFile.Refused("on disk its name is written \"" + written + "\"");
      }
      return TextFile.read(file);
    } catch (InvalidPathException e) {
      return new TextFile.Refused("no file can have this name here");
    } catch (IOException e) {
      return new TextFile.Refused(TextFile.reason(e));
    }
  }
}
