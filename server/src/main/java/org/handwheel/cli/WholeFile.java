package org.handwheel.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Writes files by way of one beside them, so that no half a file is ever there. */
final class WholeFile {
  private WholeFile() {}

  /** Puts a text in the place of a file, or makes the file; a link's target is replaced. */
  static void write(Path file, String text) throws IOException {
    Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
    Path beside = Files.createTempFile(target.getParent(), ".handwheel-", ".tmp");
    try {
      Files.write(beside, text.getBytes(StandardCharsets.UTF_8));
      PosixFileAttributeView view =
          Files.getFileAttributeView(target, PosixFileAttributeView.class);
      if (view != null) {
        Files.setPosixFilePermissions(
            beside,
            Files.exists(target)
                ? view.readAttributes().permissions()
                : java.nio.file.attribute.PosixFilePermissions.fromString("rw-r--r--"));
      }
      move(beside, target);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
