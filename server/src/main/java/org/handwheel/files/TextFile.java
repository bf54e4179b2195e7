package org.handwheel.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import org.jspecify.annotations.Nullable;

/** Reads a text file whole: UTF-8, at most {@link #MOST_BYTES}; or says why it cannot. */
public final class TextFile {
  /** The largest file that is read, in bytes. */
  public static final int MOST_BYTES = 10 * 1024 * 1024;

  static final String MISSING = "there is no such file";

  private static final String TOO_LARGE = "it is larger than 10 MB";

  private TextFile() {}

  /** A text, or a short sentence on why there is none. */
  public sealed interface Result {}

  /**
   * What the file says.
   *
   * @param text without a byte order mark, line ends as they are
   */
  public record Text(String text) implements Result {}

  /** Why it could not be read, such as "there is no such file". */
  public record Refused(String reason) implements Result {}

  /** Reads a file; follows links. */
  public static Result read(Path file) {
    try {
      BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
      if (attributes.isDirectory()) {
        return new Refused("it is a folder");
      }
      if (!attributes.isRegularFile()) {
        // A pipe or a device might never end.
        return new Refused("it is not an ordinary file");
      }
      if (attributes.size() > MOST_BYTES) {
        return new Refused(TOO_LARGE);
      }
      try (InputStream in = Files.newInputStream(file)) {
        return read(in);
      }
    } catch (IOException e) {
      return new Refused(reason(e));
    }
  }

  /** Reads a stream to its end, or to just beyond the largest size. */
  public static Result read(InputStream in) throws IOException {
    byte[] bytes = in.readNBytes(MOST_BYTES + 1);
    return bytes.length > MOST_BYTES ? new Refused(TOO_LARGE) : decode(bytes);
  }

  /** What to tell a person about a failure to read. */
  static String reason(IOException e) {
    if (e instanceof NoSuchFileException || e instanceof NotDirectoryException) {
      return MISSING;
    }
    if (e instanceof AccessDeniedException) {
      return "it cannot be read: access denied";
    }
    @Nullable String detail =
        e instanceof FileSystemException system ? system.getReason() : e.getMessage();
    if (detail == null || detail.isBlank()) {
      return "it cannot be read";
    }
    if (detail.equals("Not a directory")) {
      return MISSING;
    }
    return "it cannot be read: " + detail.strip().replaceAll("\\s+", " ");
  }

  private static Result decode(byte[] bytes) {
    if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
      return new Refused("it is UTF-16; save it as UTF-8");
    }
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == 0) {
        return new Refused("it is not text (byte " + (i + 1) + " is zero)");
      }
    }
    int mark = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
    ByteBuffer from = ByteBuffer.wrap(bytes, mark, bytes.length - mark);
    CharBuffer to = CharBuffer.allocate(bytes.length - mark);
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CoderResult result = decoder.decode(from, to, true);
    if (result.isError()) {
      int at = from.position();
      return new Refused(
          "it is not UTF-8 (line " + lineOf(bytes, at) + ", byte " + (at + 1) + " of the file)");
    }
    return new Text(to.flip().toString());
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    if (bytes.length < start.length) {
      return false;
    }
    for (int i = 0; i < start.length; i++) {
      if ((bytes[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }

  /** The line, from 1, a byte stands on; what is before it is valid UTF-8. */
  private static int lineOf(byte[] bytes, int at) {
    int line = 1;
    for (int i = 0; i < at; i++) {
      boolean ends =
          bytes[i] == '\n' || (bytes[i] == '\r' && !(i + 1 < bytes.length && bytes[i + 1] == '\n'));
      line += ends ? 1 : 0;
    }
    return line;
  }
}
