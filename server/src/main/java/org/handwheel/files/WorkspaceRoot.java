package org.handwheel.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The folder that workspace paths are relative to, and outside of which nothing is read.
 *
 * @param folder absolute and without {@code .} or {@code ..}
 */
public record WorkspaceRoot(Path folder) {
  private static final List<String> MARKS = List.of(".handwheel", ".git");

  public WorkspaceRoot {
    folder = folder.toAbsolutePath().normalize();
  }

  /**
   * The root for a file: the nearest folder above it that holds {@code .handwheel} or {@code .git};
   * else the current folder if the file is in it; else the file's own folder.
   */
  public static WorkspaceRoot of(Path file, Path workingDirectory) {
    Path from = workingDirectory.toAbsolutePath().normalize();
    Path absolute = from.resolve(file).normalize();
    Path folder = absolute.getParent();
    for (Path at = folder; at != null; at = at.getParent()) {
      Path candidate = at;
      if (MARKS.stream().anyMatch(mark -> Files.exists(candidate.resolve(mark)))) {
        return new WorkspaceRoot(at);
      }
    }
    if (folder == null || absolute.startsWith(from)) {
      return new WorkspaceRoot(from);
    }
    return new WorkspaceRoot(folder);
  }

  /** Whether a file is in this folder or below it, going by its path alone. */
  public boolean holds(Path file) {
    return file.toAbsolutePath().normalize().startsWith(folder);
  }

  /**
   * The workspace path of a file: relative to the root, with forward slashes on every system.
   *
   * @throws IllegalArgumentException if the file is not below the root
   */
  public String workspacePath(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    if (!absolute.startsWith(folder)) {
      throw new IllegalArgumentException(file + " is not in " + folder);
    }
    return slashed(folder.relativize(absolute));
  }

  /**
   * The file that a workspace path means.
   *
   * @throws InvalidPathException if no file of this system can have that name
   */
  public Path file(String workspacePath) {
    return folder.resolve(workspacePath.replace("/", folder.getFileSystem().getSeparator()));
  }

  /** A path with forward slashes. */
  public static String slashed(Path path) {
    List<String> names = new ArrayList<>();
    path.forEach(name -> names.add(name.toString()));
    String joined = String.join("/", names);
    return path.getRoot() == null
        ? joined
        : path.getRoot().toString().replace(path.getFileSystem().getSeparator(), "/") + joined;
  }

  // Written out: what the compiler makes of a record is put together when it is first called, which
  // takes longer than all else an editor's first question needs here.

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof WorkspaceRoot root && folder.equals(root.folder);
  }

  @Override
  public int hashCode() {
    return folder.hashCode();
  }

  /** The root with all links followed, to compare real places with. */
  Path real() throws IOException {
    return folder.toRealPath();
  }
}
