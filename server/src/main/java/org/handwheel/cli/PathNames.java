package org.handwheel.cli;

import java.nio.file.Path;
import java.util.Objects;
import org.handwheel.files.WorkspaceRoot;

/** How files are named in the output: from the current folder where that is possible. */
record PathNames(Path workingDirectory) {
  PathNames {
    workingDirectory = workingDirectory.toAbsolutePath().normalize();
  }

  /** As this system writes it. */
  String shown(Path file) {
    String name = relative(file).toString();
    return name.isEmpty() ? "." : name;
  }

  /** With forward slashes on every system. */
  String slashed(Path file) {
    return WorkspaceRoot.slashed(relative(file));
  }

  private Path relative(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    return Objects.equals(absolute.getRoot(), workingDirectory.getRoot())
            && (absolute.startsWith(workingDirectory) || sharesFolder(absolute))
        ? workingDirectory.relativize(absolute)
        : absolute;
  }

  /** A file a few folders up is easier to read as {@code ../x} than from the top. */
  private boolean sharesFolder(Path absolute) {
    Path parent = workingDirectory.getParent();
    Path grandparent = parent == null ? null : parent.getParent();
    return (parent != null && parent.getNameCount() > 0 && absolute.startsWith(parent))
        || (grandparent != null
            && grandparent.getNameCount() > 0
            && absolute.startsWith(grandparent));
  }
}
