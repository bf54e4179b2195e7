package org.handwheel.model.build;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Paths of {@code use} lines: relative to the file, with forward slashes, inside the workspace. */
public final class WorkspacePath {
  private WorkspacePath() {}

  /** The workspace path meant, or what is wrong with the one written. */
  public record Result(@Nullable String path, @Nullable String problem) {}

  /**
   * Resolves a path as written in a file.
   *
   * @param from the workspace path of the file with the {@code use} line
   */
  public static Result resolve(String from, String written) {
    if (written.isBlank()) {
      return new Result(null, "name the file to use");
    }
    if (written.indexOf('\\') >= 0) {
      return new Result(null, "write the path with `/`, which works everywhere");
    }
    if (written.startsWith("/") || isOnDrive(written) || written.startsWith("~")) {
      return new Result(null, "write the path relative to this file");
    }
    if (written.chars().anyMatch(c -> c < ' ')) {
      return new Result(null, "the path holds a character that no file name has");
    }
    Deque<String> parts = new ArrayDeque<>(List.of(from.split("/", -1)));
    parts.removeLast();
    for (String part : written.split("/", -1)) {
      if (part.equals("..")) {
        if (parts.isEmpty()) {
          return new Result(null, "the path leads outside the workspace");
        }
        parts.removeLast();
      } else if (!part.isEmpty() && !part.equals(".")) {
        parts.addLast(part);
      }
    }
    return new Result(String.join("/", new ArrayList<>(parts)), null);
  }

  /** Whether a path opens with a drive, such as {@code c:}. */
  private static boolean isOnDrive(String written) {
    char letter = Character.toLowerCase(written.charAt(0));
    return letter >= 'a' && letter <= 'z' && written.startsWith(":", 1);
  }
}
