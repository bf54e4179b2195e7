package org.handwheel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.handwheel.files.TextFile;
import org.jspecify.annotations.Nullable;

/** Writes a text file as a whole, so that half a file is never there. */
final class NewText {
  private static final String BYTE_ORDER_MARK = "\ufeff";

  /** Why a file that is to stay is not written. */
  static final String THERE = "it is there already";

  private NewText() {}

  /** What to do where a file of that name is there already. */
  enum Existing {
    KEEP,
    REPLACE
  }

  /**
   * Writes a text as UTF-8.
   *
   * @return nothing if it was written, else a short sentence on why not
   */
  static Optional<String> write(Path file, String text, Existing existing) {
    return write(file, text.getBytes(StandardCharsets.UTF_8), existing);
  }

  /** Writes bytes; the rest as with a text. */
  static Optional<String> write(Path file, byte[] bytes, Existing existing) {
    @Nullable Path beside = null;
    try {
      if (existing == Existing.KEEP && Files.exists(file)) {
        throw new FileAlreadyExistsException(file.toString());
      }
      if (Files.isDirectory(file)) {
        return Optional.of("it is a folder");
      }
      // A link is kept; what it points to is replaced.
      Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
      if (Files.exists(target) && !Files.isWritable(target)) {
        return Optional.of("it is write-protected");
      }
      Path folder = target.getParent();
      if (folder == null || !Files.isDirectory(folder)) {
        return Optional.of("there is no such folder");
      }
      beside = Files.createTempFile(folder, ".handwheel-", ".tmp");
      Files.write(beside, bytes);
      keepPermissions(beside, target);
      move(beside, target);
      return Optional.empty();
    } catch (FileAlreadyExistsException e) {
      return Optional.of(THERE);
    } catch (NoSuchFileException e) {
      return Optional.of("there is no such folder");
    } catch (IOException e) {
      return Optional.of("it cannot be written");
    } finally {
      delete(beside);
    }
  }

  /**
   * Writes a text in place of the one that was read, if the file still says that; a byte order mark
   * stays.
   *
   * @return nothing if it was written, else a short sentence on why not
   */
  static Optional<String> change(Path file, String before, String after) {
    TextFile.Result now = TextFile.read(file);
    if (now instanceof TextFile.Refused refused) {
      return Optional.of(refused.reason());
    }
    if (!((TextFile.Text) now).text().equals(before)) {
      return Optional.of("it has changed meanwhile; nothing was written");
    }
    return write(file, hasMark(file) ? BYTE_ORDER_MARK + after : after, Existing.REPLACE);
  }

  private static boolean hasMark(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] mark = BYTE_ORDER_MARK.getBytes(StandardCharsets.UTF_8);
      return Arrays.equals(in.readNBytes(mark.length), mark);
    } catch (IOException e) {
      return false;
    }
  }

  private static void keepPermissions(Path beside, Path target) throws IOException {
    PosixFileAttributeView view = Files.getFileAttributeView(target, PosixFileAttributeView.class);
    if (view == null) {
      return;
    }
    // A temporary file may be read by its owner only; a new plan may be read by those who may read
    // its folder.
    PosixFileAttributeView model =
        Files.exists(target)
            ? view
            : Files.getFileAttributeView(target.getParent(), PosixFileAttributeView.class);
    Set<PosixFilePermission> permissions = new HashSet<>(model.readAttributes().permissions());
    if (!Files.exists(target)) {
      permissions.removeIf(one -> one.name().endsWith("EXECUTE"));
      permissions.removeIf(
          one -> one.name().equals("GROUP_WRITE") || one.name().equals("OTHERS_WRITE"));
    }
    Files.setPosixFilePermissions(beside, permissions);
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static void delete(@Nullable Path beside) {
    if (beside != null) {
      try {
        Files.deleteIfExists(beside);
      } catch (IOException e) {
        // It stays behind, hidden by its name; the text itself is in its place or reported.
        return;
      }
    }
  }
}
